"""Numbers of one's own for each student.

They are drawn from term, student number and question by SHA-256: the same on every machine, in
every Python and in the browser, with nothing to store.
"""

import hashlib
import re
import unicodedata

from kitchenmath.errors import KitchenError
from kitchenmath.practice import look_words
from kitchenmath.units.measures import in_other_system
from kitchenmath.units.registry import Q_, Quantity, unit_name
from kitchenmath.units.saying import say
from kitchenmath.units.typed_words import UNSEEN

# Letters, figures and . _ @ -; a number becomes a folder's name, so nothing else may pass. Windows
# drops a dot at a name's end: "BH-1007." would be the folder of "BH-1007".
STUDENT_NUMBER = re.compile(r"[A-Za-z0-9_@-]([A-Za-z0-9._@-]{0,62}[A-Za-z0-9_@-])?")

# What is turned round in a class that has pounds and °F first.
METRIC_FIRST = ("gram", "kilogram", "degree_Celsius", "liter", "milliliter")


def student_number(text):
    """A student number in its one spelling: without spaces around it, in capitals.

    Parameters
    ----------
    text : str
        Letters, figures and . _ @ -, at most 64; no dot at its start or end.

    Returns
    -------
    str

    Raises
    ------
    KitchenError
        With what to type instead.

    Examples
    --------
    >>> student_number(" bh-1007 ")
    'BH-1007'
    """
    number = unicodedata.normalize("NFKC", UNSEEN.sub("", str(text))).strip()
    if not number:
        raise KitchenError('there is no student number yet: type it in quotes, as in "BH-1007".')
    if not STUDENT_NUMBER.fullmatch(number):
        raise KitchenError(
            f"“{number[:30]}” is no student number: it has 1 to 64 letters, figures or . _ @ - "
            "and no dot at its start or end."
        )
    return number.upper()


def unlike(number, example):
    """What to say of a student number that is not written like the class's; "" where it is.

    Parameters
    ----------
    number : str
        As `student_number` gives it.
    example : str
        One of the class's numbers: figures stand for any figure, all else for itself. "" where the
        class gave none.

    Returns
    -------
    str

    Examples
    --------
    >>> unlike("BH-1007", "BH-1001")
    ''
    >>> unlike("BH1007", "BH-1001").partition("? ")[0]
    'BH1007 is not written like the numbers of your class, such as BH-1001. Did you mean BH-1007'
    """
    if not example or _any_figure(number) == _any_figure(example.upper()):
        return ""
    signs = re.sub(r"[^A-Z0-9]", "", number)
    start = look_words.UNLIKE.format(number=number, example=example.upper())
    meant = ""
    if _any_figure(signs) == _any_figure(re.sub(r"[^A-Z0-9]", "", example.upper())):
        left = iter(signs)
        place = re.sub(r"[A-Z0-9]", lambda _: next(left), example.upper())
        meant = f" Did you mean {place}?"
    return f"{start}{meant}{look_words.OTHER_NUMBERS}"


def _any_figure(text):
    return re.sub(r"\d", "0", text)


def given(term, student, question, **choices):
    """A student's own numbers for one question.

    Parameters
    ----------
    term : str
        The course's term; another term means other numbers.
    student : str
        Student number.
    question : str
        Question id, unique within the term: "04-buy-enough/q1".
    **choices : Choices
        What each number may be, from `steps`.

    Returns
    -------
    dict of str to Quantity

    Raises
    ------
    KitchenError
        For a student number that is none.

    Notes
    -----
    The place in the list is the first eight bytes of
    SHA-256("term|student|question|name") modulo its length: whole numbers only, so no platform
    can differ.

    Examples
    --------
    Ten steps from 1.2 kg to 3 kg; the digest of "demo|BH-1007|q1|need" points at the last.

    >>> from kitchenmath.practice import steps
    >>> mine = given("demo", "BH-1007", "q1", need=steps(1.2, 3, 0.2, "kg", "needed"))
    >>> print(say(mine["need"]))
    3 kg
    """
    number = student_number(student)
    drawn = {}
    for name, choice in choices.items():
        text = unicodedata.normalize("NFC", f"{term}|{number}|{question}|{name}")
        place = int.from_bytes(hashlib.sha256(text.encode()).digest()[:8], "big")
        value = choice.values[place % len(choice.values)]
        drawn[name] = _part(value, choice, drawn) if choice.whole else value
    return drawn


def _part(share, choice, drawn):
    """A share of a number drawn before, as a scale shows it."""
    if choice.whole not in drawn:
        raise KitchenError(f"part_of: “{choice.whole}” must be given before “{choice.label}”.")
    marks = round((drawn[choice.whole] * share / choice.to).to("").magnitude)
    return Q_(round(marks * choice.to.magnitude, 9), choice.to.units)


class Given:
    """One question's numbers: `one.need` for each, and all of them in words when shown."""

    def __init__(self, title, numbers, labels, variable="", units_first="metric"):
        self.__dict__.update(numbers)
        self._title, self._lines = (
            title,
            [f"  {labels[name]}: {beside(value, units_first)}" for name, value in numbers.items()],
        )
        # Whoever computes need not unfold the cell to see what each number is called.
        self._names = [f"{variable}.{name}" for name in numbers] if variable else []

    def __getattr__(self, name):
        known = ", ".join(each for each in self.__dict__ if not each.startswith("_"))
        raise AttributeError(
            f"there is no number called {name} here; there are: {known}."
            if known
            else "there are no numbers here yet: type your student number first, and run all again."
        )

    def __repr__(self):
        names = [f"  To compute with them: {', '.join(self._names)}"] if self._names else []
        return "\n".join([self._title, *self._lines, *names])


def beside(quantity, units_first="metric"):
    """A quantity with the other system beside it: 2.4 kg (5.29 lb).

    Parameters
    ----------
    quantity : Quantity, Readings or ProbeLog
        A sample that was drawn says itself.
    units_first : str
        "us" puts °F, pounds and ounces first; a length stays in mm, as rulers of cuts show it.

    Returns
    -------
    str
    """
    if not isinstance(quantity, Quantity):
        return str(quantity)
    other = in_other_system(quantity)
    if not other:
        return say(quantity)
    metric = unit_name(quantity.units) in METRIC_FIRST
    turned = units_first == "us" and metric
    return f"{other} ({say(quantity)})" if turned else f"{say(quantity)} ({other})"


def practice_numbers(question, round_, choices):
    """Numbers for practice: round 1, 2, 3… of a drill draw fresh ones, the same for everybody.

    Parameters
    ----------
    question : str
    round_ : int
    choices : dict of str to Choices

    Returns
    -------
    dict of str to Quantity
    """
    return given("practice", f"round-{round_}", question, **choices)
