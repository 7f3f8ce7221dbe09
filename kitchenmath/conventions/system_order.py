"""Pairs of the two systems in a text, turned round for a class that has pounds and °F first.

A text is written with grams and °C first and the other system in brackets; so it is one text.
"""

import re
from dataclasses import replace

_NUMBER = r"[-−]?\d[\d.,]*(?:(?: to |–)\d[\d.,]*)?"
PAIR = re.compile(
    rf"(?P<metric>{_NUMBER} (?:°C|kg|g|L|mL|m)) "
    rf"\((?P<other>{_NUMBER} (?:°F|lb|oz|qt|fl oz|ft))(?P<more>[^()]*)\)"
)


def first_system_first(text, college):
    """A text with its pairs in a class's order: "57 °C (135 °F)" is "135 °F (57 °C)" in the US.

    Parameters
    ----------
    text : str
    college : Conventions

    Returns
    -------
    str

    Examples
    --------
    >>> from kitchenmath.conventions import conventions_of
    >>> first_system_first("from 57 °C (135 °F) to 21 °C (70 °F)", conventions_of("US"))
    'from 135 °F (57 °C) to 70 °F (21 °C)'
    """
    if college.units_first == "metric":
        return text
    return PAIR.sub(r"\g<other> (\g<metric>\g<more>)", text)


def in_its_words(question, college):
    """A question with its slips and lines of working in a class's order.

    Parameters
    ----------
    question : dataclass
        With `slips` and `working`.
    college : Conventions

    Returns
    -------
    dict
        What of it changes.
    """
    if college.units_first == "metric":
        return {}
    slips = tuple(
        replace(slip, sentence=first_system_first(slip.sentence, college))
        for slip in question.slips
    )
    return {
        "slips": slips,
        "working": tuple(first_system_first(line, college) for line in question.working),
    }
