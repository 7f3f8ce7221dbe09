"""The words that a typed amount may hold: units, measures by country, and what is no measure."""

import re

# Words that mean the same everywhere.
WORDS = {
    "g": "g", "gr": "g", "gm": "g", "gms": "g", "gram": "g", "gramme": "g", "mg": "mg",
    "milligram": "mg", "kg": "kg", "kgs": "kg", "kilo": "kg", "kilogram": "kg", "kilogramme": "kg",
    "lb": "lb", "lbs": "lb", "pound": "lb", "oz": "oz", "ounce": "oz",
    "ml": "mL", "millilitre": "mL", "milliliter": "mL", "cc": "mL", "cl": "cL", "centilitre": "cL",
    "dl": "dL", "decilitre": "dL", "l": "L", "litre": "L", "liter": "L", "ltr": "L",
    "mm": "mm", "millimetre": "mm", "millimeter": "mm", "cm": "cm", "centimetre": "cm",
    "centimeter": "cm", "m": "m", "metre": "m", "meter": "m", "in": "in", "inch": "in",
    "inches": "in", '"': "in", "ft": "ft", "foot": "ft", "feet": "ft",
    "s": "s", "sec": "s", "second": "s", "min": "min", "mins": "min", "minute": "min", "h": "h",
    "hr": "h", "hrs": "h", "hour": "h", "d": "d", "day": "d",
    "°c": "degC", "degc": "degC", "celsius": "degC", "degrees celsius": "degC",
    "degrees c": "degC", "deg c": "degC", "° c": "degC", "centigrade": "degC",
    "°f": "degF", "degf": "degF", "f": "degF", "fahrenheit": "degF", "degrees fahrenheit": "degF",
    "degrees f": "degF", "deg f": "degF", "° f": "degF", "kelvin": "K",
    "°brix": "percent", "brix": "percent", "° brix": "percent", "degrees brix": "percent",
    "°bx": "percent", "%": "percent", "percent": "percent", "per cent": "percent", "pct": "percent",
    "piece": "count", "pcs": "count", "portion": "count", "cover": "count", "pack": "count",
    "bag": "count", "box": "count", "boxes": "count", "case": "count", "tray": "count",
    "tin": "count", "can": "count", "bottle": "count", "bunch": "count", "bunches": "count",
    "each": "count", "serving": "count", "jar": "count", "sack": "count", "bird": "count",
    "hand": "count", "cook": "count",
    "$": "dollar", "dollar": "dollar", "usd": "dollar", "cent": "cent", "¢": "cent",
    "£": "sterling", "gbp": "sterling", "€": "euro", "eur": "euro", "euro": "euro",
    "kj": "kJ", "kilojoule": "kJ", "kcal": "kcal", "cal": "kcal", "calorie": "kcal",
    "w": "W", "watt": "W", "kw": "kW", "kpa": "kPa", "pa": "Pa", "psi": "psi",
}  # fmt: skip

# Lengths, and with them areas and solids: "cm^2" and "square cm" are one.
LENGTHS = [word for word, unit in WORDS.items() if unit in ("mm", "cm", "m", "in", "ft")]
WORDS |= {
    written.format(word=word): f"{WORDS[word]}**{power}"
    for word in LENGTHS
    for power, forms in {
        2: ("{word}^2", "square {word}", "sq {word}", "sq. {word}", "{word} squared"),
        3: ("{word}^3", "cubic {word}", "cu {word}", "cu. {word}", "{word} cubed"),
    }.items()
    for written in forms
}
# What is made of two or three units, as a book of heat writes it.
WORDS |= {
    "g/ml": "g/mL", "g per ml": "g/mL", "kg/l": "kg/L", "kg per l": "kg/L", "g/l": "g/L",
    "g per l": "g/L", "kg/m^3": "kg/m**3", "w/m^2k": "W/m**2/K", "w/(m^2 k)": "W/m**2/K",
    "w/m^2/k": "W/m**2/K", "w/mk": "W/m/K", "w/(m k)": "W/m/K", "w/m/k": "W/m/K",
    "m^2/s": "m**2/s", "mm^2/s": "mm**2/s", "kj/kgk": "kJ/kg/K", "kj/(kg k)": "kJ/kg/K",
    "kj/kg/k": "kJ/kg/K",
}  # fmt: skip

# Words that mean another measure in each country; the system says which.
MEASURES = {
    "cup": "cup", "tbsp": "tablespoon", "tbs": "tablespoon", "tblsp": "tablespoon",
    "tablespoon": "tablespoon", "tsp": "teaspoon", "teaspoon": "teaspoon",
    "fl oz": "fluid_ounce", "floz": "fluid_ounce", "fl. oz": "fluid_ounce",
    "fluid ounce": "fluid_ounce", "pt": "pint", "pint": "pint", "qt": "quart", "quart": "quart",
    "gal": "gallon", "gallon": "gallon", "gill": "gill", "go": "go", "gō": "go", "bushel": "bushel",
    "bu": "bushel", "peck": "peck", "pk": "peck", "dry quart": "dry_quart",
    "dry pint": "dry_pint",
}  # fmt: skip
OF_SYSTEM = {
    "us": ("cup", "tablespoon", "teaspoon", "fluid_ounce", "pint", "quart", "gallon", "bushel",
           "peck", "dry_quart", "dry_pint"),
    "uk": ("cup", "tablespoon", "teaspoon", "fluid_ounce", "pint", "quart", "gallon", "gill"),
    "au": ("cup", "tablespoon", "teaspoon"),
    "metric": ("cup", "tablespoon", "teaspoon"),
    "jp": ("cup", "tablespoon", "teaspoon", "go"),
    "label": ("cup", "tablespoon", "teaspoon", "fluid_ounce"),
}  # fmt: skip

# Words that look like a measure and are none, with what to do about it.
NOT_MEASURES = {
    "pinch": "a pinch is no fixed amount: weigh it, or type it in tsp",
    "smidgen": "a smidgen is no fixed amount: weigh it, or type it in tsp",
    "handful": "a handful is no fixed amount: weigh it",
    "knob": "a knob is no fixed amount: weigh it",
    "splash": "a splash is no fixed amount: weigh it, or type it in mL",
    "dash": "a dash is no fixed amount: weigh it, or type it in tsp",
    "c": "c could be a cup or °C: type cup, or °C",
    "t": "t could be a tablespoon or a teaspoon: type tbsp or tsp",
    "°": "a degree needs its scale: type °C or °F",
    "deg": "a degree needs its scale: type °C or °F",
    "degree": "a degree needs its scale: type °C or °F",
    "k": "type kg for kilograms",
}

# What stands around an amount and changes nothing.
UNSEEN = re.compile("[\u200b-\u200f\u2060\ufeff\u00ad]")  # signs that a copied text brings along
POWER = re.compile(r"\d\s*[⁰¹²³⁴-⁹₀-₉]")  # 10³ would become 103, and 3₂ would become 32
# cm², cm2 and cm^2 are one; a power of a number is refused above.
SMALL = str.maketrans("²³", "23")
POWER_OF_LENGTH = re.compile(
    r"(?<![a-z])(mm|cm|m|in|inch|ft|metre|meter) ?"
    r"(?:\^ ?([23])|([²³])|(?<! )([23])(?!/\d))(?!\d|[.,]\d)",
    re.IGNORECASE,
)
FAN = re.compile(r"(?<=[CF]) ?(?:\(?fan\)?|fan oven|convection)$", re.IGNORECASE)


def powers_spelt(text):
    """A text with cm² and cm2 as "cm^2", before normal form glues a plain 2 to it."""
    return POWER_OF_LENGTH.sub(
        lambda found: f"{found[1]}^{(found[2] or found[3] or found[4]).translate(SMALL)}", text
    )
