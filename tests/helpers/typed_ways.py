"""Right answers as people type them on phones and cards, by kind of question; and doubtful ones.

Collected from how people write (common practice). A right answer comes from the key; here it is
only said in other words, so nothing in this list knows what is right.
"""

import re

from kitchenmath.units import say

# An amount's own number, then what people put behind or before it. {n} has a point, {c} a comma.
UNITS = {
    "gram": ("{n} g", "{n}g", "{c} g", "{n} grams", "{n} gr", "{n} G", "= {n} g", "ca. {n} g"),
    "kilogram": ("{n} kg", "{n}kg", "{c} kg", "{n} kilos", "{n} Kg", "{n} KG", "about {n} kg",
                 "{n} kilograms"),
    "milliliter": ("{n} ml", "{n}mL", "{c} ml", "{n} ML", "{n} millilitres", "~ {n} ml"),
    "liter": ("{n} l", "{n}L", "{c} litres", "{n} liter", "approx. {n} L"),
    "percent": ("{n} %", "{n}%", "{c} %", "{n} percent", "{n} per cent", "{n} pct", "ca {n} %"),
    "degree_Celsius": ("{n} °C", "{n}°C", "{n}C", "{n} C", "{c} °C", "{n} º C", "{n} degrees C",
                       "{n} celsius", "{n} c", "{n} deg C"),
    "degree_Fahrenheit": ("{n} °F", "{n}F", "{n} F", "{n} degrees F", "{n} fahrenheit", "{n} f"),
    "delta_degree_Celsius": ("{n} °C", "{n} C", "{n} degrees C"),
    "second": ("{n} s", "{n} sec", "{n} seconds", "{n}s", "{c} s"),
    "minute": ("{n} min", "{n} minutes", "{n}min", "{c} min", "{n} mins", "about {n} minutes"),
    "millimeter": ("{n} mm", "{n}mm", "{c} mm", "{n} MM", "{n} millimetres"),
    "dollar": ("${n}", "$ {n}", "{n} $", "{n} dollars", "USD {n}", "$ {c}", "{n}$"),
    "sterling": ("£{n}", "£ {n}", "{n} £", "{n} pounds", "GBP {n}", "{c} £"),
    "euro": ("€{n}", "{n} €", "{c} €", "{n} euros", "EUR {n}"),
    "dollar / kilogram": ("${n} per kg", "${n}/kg", "{n} $/kg", "$ {n} a kilo", "${n} a kg",
                          "{c} $/kg"),
    "sterling / kilogram": ("£{n} per kg", "£{n}/kg", "{n} £/kg", "£{n} a kilo"),
    "count": ("{n}", "{n} pieces", "{n} pcs", "{n} whole", "about {n}", "{n}."),
}  # fmt: skip
# What a phone's keyboard and a hurried thumb put around an amount, or in place of it.
PHONE = ("{said} 👍", "✅ {said}", "{said}.", "{said}!!", "{said}…", "{said}?", " {said} ",
         "({said})", "*{said}*", "• {said}", "→ {said}", "It’s {said}", "it's about {said}",
         "Answer: {said}",
         "I’d say {said}", "Around {said}", "Roughly {said}", "exactly {said}", "{said} approx.",
         "{said} (rounded)", "Q1: {said}", "{said} :)", "{thin}", "{wide}")  # fmt: skip
FULL_WIDTH = {ord(digit): ord(digit) - ord("0") + ord("０") for digit in "0123456789"}
# The same amount in another unit that a cook would take: from, to.
OTHER = {
    "gram": ("kilogram", "ounce"), "kilogram": ("gram", "pound"), "milliliter": ("liter",),
    "liter": ("milliliter",), "second": ("minute",), "minute": ("second", "hour"),
    "millimeter": ("centimeter", "inch"), "degree_Celsius": ("degree_Fahrenheit",),
    "degree_Fahrenheit": ("degree_Celsius",),
}  # fmt: skip

# What stands for two answers or for none, by the kind of the right one; never right.
DOUBTFUL = {
    "weight": (
        "3 kg or 4 kg",
        "3-4 kg",
        "O,5 kg",
        "l.5 kg",
        "one or two kg",
        "kg",
        "3 L",
        "3 min",
        "lots",
        "3 kg; 4 kg",
        "3 stone",
    ),
    "volume": ("1 L or 2 L", "3 kg", "a jug", "2-3 L"),
    "percent": ("35 % or 36 %", "35 kg", "a third or so", "30-40 %", "? %"),
    "temperature": ("180 or 190 °C", "hot", "180 K", "160-180 °C"),
    "temperature difference": ("10-12 °C", "cold", "10 kg"),
    "time": ("10 min or 12 min", "soon", "10 kg", "5-6 h", "min"),
    "length": ("3 mm or 4 mm", "small", "3 kg", "3-4 mm"),
    "count": ("2 or 3", "2-3", "some", "2.5", "2 kg"),
    "money": ("$20 or $21", "20 kg", "cheap", "$20-21"),
    "money per weight": ("$24 or $25 per kg", "$24 per L", "dear", "24 kg"),
    "clock time": ("1 or 2", "13:00 or 14:00", "noonish", "25:70", "late"),
    "letters": ("A, B, C, D, E, F, G, H, I, J", "none", "?", "Q", "all of them"),
    "allergens": ("gluten", "none", "?", "gluten or milk", "see the menu"),
    "readings": ("3", "3 mm or so", "small ones", "3, 4, x mm"),
    "probe log": ("0 min", "hot", "0 min 8 kg", "63 °C all the time"),
    "plan": ("all at 19:00", "later", "roast the birds 25:70", "as in the book"),
}


def amounts(right):
    """A right amount as people type it.

    Parameters
    ----------
    right : Quantity

    Returns
    -------
    list of str
    """
    said = say(right, 6)
    thin, wide = re.sub(r"\s", "\u202f", said), said.translate(FULL_WIDTH)
    found = [said, *(way.format(said=said, thin=thin, wide=wide) for way in PHONE)]
    units = [str(right.units), *OTHER.get(str(right.units), ())]
    for unit in units:
        number = f"{right.to(unit).magnitude:.7g}"
        comma = number.replace(".", ",")
        if re.search(r",\d{3}$", comma):  # 1,875 may be thousands: a zero behind makes it plain
            comma += "0"
        for way in UNITS.get(unit, ()):
            found.append(way.format(n=number, c=comma))
    return found


def clocks(text):
    """A clock time, told as 19:05, as people type it."""
    hours, minutes = map(int, text.split(":"))
    half, twelve = ("am", "pm")[hours >= 12], (hours - 1) % 12 + 1
    return [f"{hours:02}:{minutes:02}", f"{hours}:{minutes:02}", f"{hours}.{minutes:02}",
            f"{twelve}:{minutes:02} {half}", f"{twelve}:{minutes:02}{half.upper()}",
            f"at {hours:02}:{minutes:02}", f"{hours:02}:{minutes:02} (by the log)",
            f"{hours:02}:{minutes:02}h"]  # fmt: skip


def lists(text):
    """Names out of a list as people type them: in any order, with any sign between."""
    names = text.split(", ")
    return [text, ";".join(names), ", ".join(reversed(names)), text.lower(), "\n".join(names),
            " and ".join(names), " + ".join(names), f"{text}."]  # fmt: skip


def readings(text):
    """Lengths as people type them off a ruler."""
    bare = text.removesuffix(" mm").split(", ")
    return [text, "; ".join(bare) + " mm", "\n".join(f"{each} mm" for each in bare),
            " ".join(f"{each}mm" for each in bare), ", ".join(f"{each} mm" for each in bare),
            "; ".join(each.replace(".", ",") for each in bare) + " mm"]  # fmt: skip


# fmt: off
def logs(text):
    """A probe's log as people type it, or copy it out of a table."""
    lines = [line.split() for line in text.splitlines()]
    return [text, "\n".join(f"{minute} {core}°C" for minute, _, core, _ in lines),
            "\n".join(f"{minute}\t{core} °C" for minute, _, core, _ in lines),
            "\n".join(f"{minute} min; {core} C" for minute, _, core, _ in lines),
            "\n".join(f"{minute} min: {core}°C" for minute, _, core, _ in lines),
            "\n".join(f"{minute}; {core} °C".replace(".", ",") for minute, _, core, _ in lines)]
# fmt: on


def plans(text):
    """A plan as people type it: the time before or behind, with am and pm, with a dash."""
    tasks = [line.rpartition(" ")[::2] for line in text.splitlines()]
    afternoon = [(task, f"{int(clock[:2]) - 12}:{clock[3:]} pm") for task, clock in tasks]
    return [text, "\n".join(f"{clock} {task}" for task, clock in tasks),
            "\n".join(f"{task}: {clock}" for task, clock in tasks),
            "\n".join(f"{task} - {clock}" for task, clock in tasks),
            "\n".join(f"{task} at {clock}" for task, clock in tasks),
            "\n".join(f"{task} {clock}" for task, clock in afternoon),
            "\n".join(f"{task.upper()} {clock}" for task, clock in reversed(tasks))]  # fmt: skip


WAYS = {"clock time": clocks, "letters": lists, "allergens": lists, "readings": readings,
        "probe log": logs, "plan": plans}  # fmt: skip


def ways_of(question, known):
    """Every way of typing the right answer of one question.

    Parameters
    ----------
    question : AskedQuestion
    known : dict
        A student's numbers and right earlier answers.

    Returns
    -------
    list of str
    """
    if question.kind not in WAYS:
        return amounts(question.right(known))
    right = (one.answer for one in question.played(known) if one.way == "right")
    return WAYS[question.kind](next(each for each in right if isinstance(each, str)))
