"""Reading an amount as a cook types it: "1 1/2 cup", "9 lb 4 oz", "63 °C", "$3.48".

Typed text never reaches pint's own parser, to which a pinch is a pico-inch and a plain cup
silently American. Every word it may hold stands in the tables of `typed_words`.
"""

import difflib
import re
import unicodedata
from fractions import Fraction

from kitchenmath.errors import Unreadable
from kitchenmath.units.around import bare_amount
from kitchenmath.units.door import one_of
from kitchenmath.units.number_text import NUMBER, number_in
from kitchenmath.units.ovens import oven_temperature
from kitchenmath.units.registry import Q_, same_kind, unit_name
from kitchenmath.units.saying import MONEY, SYSTEMS, say
from kitchenmath.units.typed_words import (
    FAN,
    MEASURES,
    NOT_MEASURES,
    OF_SYSTEM,
    POWER,
    UNSEEN,
    WORDS,
    powers_spelt,
)

LONGEST = 200  # characters; an amount is short, and a page of text is not one

# A currency's code, as ISO 4217 has it, in front of a sum.
SIGNS = {"USD": "$", "GBP": "£", "EUR": "€"}
CODE_IN_FRONT = re.compile(rf"^({'|'.join(SIGNS)}) ?(?=[\d.])", re.IGNORECASE)
# Oven marks are a scale of their own: mark 4 is 177 °C (see ovens.py).
MARK = re.compile(
    r"(?:gas ?(?:mark|regulo)?|mark|regulo) ?(1/4|1/2|\d{1,2})$|(\d{1,2}) ?gas$", re.IGNORECASE
)
SAME = 0.02  # share within which the amounts on both sides of an equals sign are one

# A price: an amount of money for one measure of something.
PRICE = re.compile(r"([^/]*[$£€¢][^/]*?) ?(?:per|/|a) ?([a-z][a-z. ]*)$", re.IGNORECASE)

TWO = re.compile(r"\d[^=]* or [^=]*\d", re.IGNORECASE)  # 3 kg or 4 kg
LETTER = re.compile(r"[ol](?=[.,\d])", re.IGNORECASE)  # O,5 kg: a letter where a digit is meant

ANY_AMOUNT = ': type one, such as "4.2 kg" or "1/2 tsp".'

UNIT = re.compile(r"(?:\^[23]|[^\d+\-=~≈,;])*")


def read(text, system="us"):
    """The amount that a typed text means.

    Parameters
    ----------
    text : str
        Such as "4.2 kg", "1 1/2 cup", "9 lb 4 oz", "½ tsp", "63 °C", "35 %", "2 h 15 min",
        "$3.48", "4,2 kg", "gas mark 4".
    system : str
        Whose cups and spoons: "us", "uk", "au", "metric", "jp", or "label" for the round
        measures of US food labels (where 1 oz is 28 g).

    Returns
    -------
    Quantity

    Raises
    ------
    Unreadable
        With a sentence that says which part could not be read and what to type.
    UnknownName
        For an unknown `system`.

    Notes
    -----
    A comma is the decimal sign where it can be nothing else ("4,2"; "1,25"). "1,250" can be
    read in two ways and is refused. Several parts of one kind are added: 9 lb 4 oz is 148 oz.
    A temperature is read as a point; who wants a difference asks for one.

    Examples
    --------
    Nine pounds of 16 oz and four more are 148 oz.

    >>> read("9 lb 4 oz").to("oz").magnitude
    148.0
    >>> print(say(read("1 1/2 cup", system="au").to("mL")))
    375 mL
    """
    one_of(system, SYSTEMS, "system")
    line = plain_line(text)
    if TWO.search(line):
        raise Unreadable(f"“{line[:40]}” has two amounts: type one.")
    if "=" in line:
        return _worked_out(line, system)
    if mark := MARK.match(line):
        return oven_temperature(float(Fraction(mark[1] or mark[2])))
    if price := PRICE.match(line):
        return read(price[1], system) / Q_(1, _unit(price[2], system, line))
    parts = _terms(line)
    terms = [_quantity(number, unit, system, line) for number, unit in parts]
    return _added(_with_last_unit(terms), line)


def plain_line(text):
    """One line in plain characters: fractions, spaces, dashes and signs in their simple form.

    Parameters
    ----------
    text : str

    Returns
    -------
    str

    Raises
    ------
    Unreadable
        For what is no text, too long, on several lines, or nothing.

    Examples
    --------
    >>> plain_line("= 1½ cups, please.")
    '1 1/2 cups'
    """
    if not isinstance(text, str):
        raise Unreadable(f'{text!r} is no text: type the amount in quotes, such as "4.2 kg".')
    if len(text) > LONGEST:
        raise Unreadable(f'{len(text)} characters came: type one amount, such as "4.2 kg".')
    text = UNSEEN.sub("", text).replace("º", "°")  # before normal form makes an o of it
    if POWER.search(text):
        raise Unreadable(f"“{text.strip()[:40]}” has a power in it: type the number in full.")
    if len([row for row in text.splitlines() if row.strip()]) > 1 and "=" not in text:
        raise Unreadable(f"“{text.strip()[:40]}” is more than one line: type one amount.")
    text = powers_spelt(text)
    # ½ must become " 1/2" before normal form would glue it to a whole number (1½ is not 11/2).
    spread = "".join(_fraction_spread(character) for character in text)
    line = unicodedata.normalize("NFKC", spread).replace("⁄", "/").replace("−", "-")
    line = line.replace("–", "-").replace("’", "'").replace("”", '"')
    line = re.sub(r"\s+", " ", line).strip().strip("'").strip()
    line = FAN.sub("", bare_amount(line)).strip()
    if not line:
        raise Unreadable('nothing is typed yet: type a number with its unit, such as "4.2 kg".')
    return line


def _worked_out(line, system):
    """What stands behind the last equals sign; an amount before it must not be another."""
    *before, last = (part.strip() for part in line.split("="))
    value = read(last, system)
    for part in before:
        try:
            other = read(part, system)
        except Unreadable:
            continue  # the working: 36 x 55 g / 0.66
        if unit_name(other.units) == "count" or not same_kind(other, unit_name(value.units)):
            continue
        target = value.to(other.units).magnitude
        if abs(other.magnitude - target) > SAME * abs(target):
            raise Unreadable(
                f"“{line[:40]}” has two amounts, {say(other)} and {say(value)}: type one."
            )
    return value


def _fraction_spread(character):
    name = unicodedata.name(character, "")
    if (
        not name.startswith("VULGAR FRACTION")
        or not unicodedata.normalize("NFKC", character)[-1].isdigit()
    ):
        return character
    return f" {unicodedata.normalize('NFKC', character).replace('⁄', '/')} "


def _terms(line):
    """Pairs of number text and unit text: "9 lb 4 oz" is ("9", "lb"), ("4", "oz")."""
    line = CODE_IN_FRONT.sub(lambda code: SIGNS[code[1].upper()], line)
    rest = re.sub(r"^([-+]?) ?([$£€]) ?(-?)(?=[\d.])", r"\1\3\2", line)
    front = re.match(r"([-+]?)([$£€])(.*)$", rest)
    if front:  # money is written in front: "$3.48"
        rest = f"{front[1]}{front[3]} {front[2]}"
    sign = "-" if rest.startswith("-") else ""
    rest = rest.lstrip("+-").strip()
    found = []
    while rest or not found:
        number = NUMBER.match(rest)
        if not number:
            raise Unreadable(_no_number(rest, line, found))
        unit = UNIT.match(rest, number.end())
        found.append((sign + number[0], unit[0].strip()))
        rest = re.sub(r"^(,|;|and |\+)\s*", "", rest[unit.end() :].strip())
        sign = ""
    return found


def _no_number(rest, line, found):
    if found:
        return f'“{line}”: I could read as far as “{rest[:20]}”. Type one amount, such as "4.2 kg".'
    if LETTER.match(rest):
        return f"“{line[:40]}” begins with the letter {rest[0]}: type the digit that you mean."
    return f"“{line[:40]}” does not start with a number{ANY_AMOUNT}"


def without_example(sentence):
    """A refusal of `read` without its example, for whoever knows a nearer one.

    Parameters
    ----------
    sentence : str

    Returns
    -------
    str

    Examples
    --------
    >>> without_example("“lots” is no number" + ANY_AMOUNT)
    '“lots” is no number.'
    """
    return sentence.replace(ANY_AMOUNT, ".")


def _quantity(number, unit_text, system, line):
    return Q_(number_in(number), _unit(unit_text, system, line))


def _unit(text, system, line):
    """The registry's name for a unit as typed; a bare number is a count."""
    if text in ("C", "C.", "K"):  # capitals only: c and k mean other things in kitchens
        return {"K": "K"}.get(text, "degC")
    word = text.casefold().rstrip(".").strip()
    if not word:
        return "count"
    unit = _unit_named(word, system)
    if unit is None and word.endswith("s"):
        unit = _unit_named(word[:-1].rstrip(".'"), system)
    if unit is None:
        raise Unreadable(_unknown_unit(word, line))
    return unit


def _unit_named(word, system):
    """The registry's name for a word, or None; a measure that the system lacks is refused."""
    if system == "label" and WORDS.get(word) == "oz":
        return "label_ounce"
    for country in SYSTEMS:
        if word.startswith(f"{country} "):
            system, word = country, word.removeprefix(f"{country} ")
    if word in NOT_MEASURES:
        raise Unreadable(f"{NOT_MEASURES[word]}.")
    if word not in MEASURES:
        return WORDS.get(word)
    measure = MEASURES[word]
    if measure not in OF_SYSTEM[system]:
        having = " or ".join(each for each in SYSTEMS if measure in OF_SYSTEM[each])
        raise Unreadable(
            f"there is no {measure.replace('_', ' ')} among the {system} measures: "
            f"type it in mL, or say whose it is ({having}), as in “{having.split()[0]} {word}”."
        )
    return f"{system}_{measure}"


def _unknown_unit(word, line):
    near = difflib.get_close_matches(word, [*WORDS, *MEASURES], n=1, cutoff=0.6)
    guess = f"did you mean “{near[0]}”?" if near else "type a unit such as g, kg, mL, °C or %."
    return f"“{line[:40]}”: I do not know the unit “{word[:20]}”; {guess}"


def _with_last_unit(terms):
    """In "8 min 45" and "2 h 15" the last number is counted in the next smaller unit of time."""
    smaller = {"minute": "s", "hour": "min"}
    if len(terms) == 2 and unit_name(terms[1].units) == "count" and 0 <= terms[1].magnitude < 60:
        unit = smaller.get(unit_name(terms[0].units), "count")
        return [terms[0], Q_(terms[1].magnitude, unit)]
    return terms


def _added(terms, line):
    """Parts of one kind added up; a temperature or a percent has only one part."""
    total, *more = terms
    units = [unit_name(term.units) for term in terms]
    if len(set(units)) < len(units) and not re.search(r"\+|\band\b", line):
        raise Unreadable(f"“{line}” has the same unit twice: type one amount.")
    for term in more:
        if unit_name(term.units) == "count":
            raise Unreadable(f"“{line}”: {term.magnitude:g} of what? Give each number its unit.")
        if not same_kind(term, unit_name(total.units)) or total.check("[temperature]"):
            raise Unreadable(
                f"“{line}”: {say(total)} and {say(term)} cannot be added: type one amount."
            )
        total = total + term.to(total.units)
    return total


__all__ = ["MONEY", "SYSTEMS", "read"]
