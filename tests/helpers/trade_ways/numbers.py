"""What a student's numbers are called in a trade way, and roundings done by hand."""

import math

OZ_G, LB_OZ = 28.35, 16


def whole_up(number, step):
    """The next mark of a scale."""
    return math.ceil(number / step - 1e-9) * step


def half_up(number, figures):
    """A number as one rounds by hand: a five goes up."""
    return math.floor(number * 10**figures + 0.5 + 1e-9) / 10**figures


def pounds(grams):
    """Pounds and ounces, to the quarter of an ounce that a scale shows."""
    ounces = round(4 * grams / OZ_G) / 4
    return f"{ounces // LB_OZ:.0f} lb {ounces % LB_OZ:g} oz"


def dough(of):
    """All rolls [g]."""
    return of("rolls") * of("piece", "g")


def total(of):
    """The formula's total percent."""
    parts = ("water", "butter", "sugar", "salt", "yeast")
    return 100 + sum(of(part, "percent") for part in parts)


def in_f(celsius):
    """A point of °C in °F."""
    return 1.8 * celsius + 32


def credit(of):
    """What legs and bones are worth."""
    legs = of("legs", "kg") * of("legs_price", "dollar/kg")
    return legs + of("bones", "kg") * of("bones_price", "dollar/kg")


def whole_cost(of):
    """What the birds cost."""
    return of("bought", "kg") * of("price", "dollar/kg")


def plate_cost(of):
    """Meat and garnish."""
    return half_up(of("q3", "kg") * of("q4", "dollar/kg"), 2) + of("garnish", "dollar")


def menu_price(cost):
    """The ways from what a plate costs to its price: by the cost factor, or by one percent."""

    def by_a_factor(of):
        return f"${whole_up(cost(of) * half_up(100 / of('food_cost', 'percent'), 2), 0.5):.2f}"

    def by_one_percent(of):
        return f"${whole_up(cost(of) / of('food_cost', 'percent') * 100, 0.05):.2f}"

    return {"by a factor": by_a_factor, "by one percent": by_one_percent}


def corrected(of):
    """Degrees of a warm brine, corrected."""
    return of("shown") + (of("warmth", "degC") - 15.6) / 5.6


def everything(of):
    """Birds and water [g]."""
    return of("birds", "g") + of("water", "g")


def cider_g(of):
    """The cider [g]."""
    return of("cider", "L") * of("cider_litre", "g/L")


def bottles(of):
    """Whole bottles."""
    return math.ceil(of("q3", "L") / of("bottle", "L") - 1e-9)


def before(of, *names):
    """Minutes added up."""
    return sum(of(name, "min") for name in names)


def left_share(of):
    """What is left of a reduction, as a share."""
    return 1 - of("cut", "percent") / 100


def clock(minutes):
    """A span in hours and minutes."""
    return f"{minutes // 60:.0f} h {minutes % 60:.0f} min"


class Of:
    """A student's numbers in the units that a way asks for, and what is read off a list of them."""

    def __init__(self, known, right):
        self.known, self._right = known, right

    def __call__(self, name, unit="count"):
        return self.known[name].to(unit).magnitude

    @property
    def right(self):
        """What is counted off a list that was drawn."""
        return self._right.magnitude

    @property
    def right_min(self):
        """What is read off a log or a table."""
        return self._right.to("min").magnitude

    @property
    def right_kg(self):
        """What is read off a record."""
        return self._right.to("kg").magnitude

    @property
    def sizes_mm(self):
        """The student's ten readings."""
        return [float(size) for size in self.known["q1"].lengths.to("mm").magnitude]

    @property
    def mean_mm(self):
        """Their mean."""
        return sum(self.sizes_mm) / len(self.sizes_mm)

    @property
    def largest_mm(self):
        """The largest of them."""
        return max(self.sizes_mm)

    def diced_percent(self, root_of_two, pi):
        """Dice of 6 mm out of a round carrot."""
        wide = math.floor(self("across", "mm") / root_of_two / 6 + 1e-9)
        dice = wide * wide * math.floor(self("long", "mm") / 6 + 1e-9)
        return 100 * dice * 216 / (pi * (self("across", "mm") / 2) ** 2 * self("long", "mm"))

    @property
    def nets(self):
        """Nets laid side by side until they weigh enough."""
        count = 0
        while count * self("net", "g") < self("q1", "g") - 1e-6:
            count += 1
        return count

    @property
    def litre_g(self):
        """A litre of brine, as the text prints it."""
        return {6: 1041, 8: 1056, 10: 1071}[round(self("wanted", "percent"))]

    @property
    def by_the_minute(self):
        """Half out, by what runs out in a minute."""
        pace = half_up((self("after", "mL") - self("before", "mL")) / 3, 1)
        over = (self("base", "mL") / 2 - self("before", "mL")) / pace
        return f"{self('minute', 'min'):.0f} min {60 * over:.0f} s" if over < 1 else (
            f"{self('minute', 'min') + over:.2f} min"
        )  # fmt: skip

    @property
    def pace(self):
        """Degrees a minute between the last two readings of a log."""
        return self("more", "delta_degC") / self.right_min
