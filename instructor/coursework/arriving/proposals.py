"""Whose a file without a place may be: what its names and its typed number say, and why.

Nothing is decided here. A proposal is sure where all that speaks clearly speaks for one student;
a number that is only similar is never sure, because a similar number is often another student's.
"""

import difflib
import re
from dataclasses import dataclass

from kitchenmath.errors import KitchenError
from kitchenmath.practice import student_number
from kitchenmath.typed.bare_words import bare_words

__all__ = ["Proposal", "SetProposal", "proposals", "same_name", "set_proposal", "sure",
           "without_zeros"]  # fmt: skip

TYPED, NUMBER, NAME, ZEROS, SIMILAR = "typed", "number", "name", "zeros", "similar"
ALIKE = 0.75  # of a number's signs
SAID, NAMED, CHOSEN = "said", "named", "chosen"


@dataclass(frozen=True)
class Proposal:
    """A student whose file it may be.

    Attributes
    ----------
    student : str
    because : str
        "typed" (the number is typed in it), "number" or "name" (in the name of the file or of a
        folder around it), "zeros" (a number that lost its leading zeros), "similar".
    seen : str
        What was seen, as it stood there.
    """

    student: str
    because: str
    seen: str


@dataclass(frozen=True)
class SetProposal:
    """A set that it may be; `because` is "said" (by the file), "named" or "chosen" (expected)."""

    set_id: str
    because: str


def proposals(arrival, roster):
    """Students whose file it may be, the best reason first, each student once.

    Parameters
    ----------
    arrival : Arrival
    roster : dict of str to str
        Student number to name.

    Returns
    -------
    list of Proposal

    Examples
    --------
    >>> from coursework.arriving.arrivals import Arrival
    >>> found = Arrival("post.zip", "Quill Ada_42/my work.pdf")
    >>> [(one.student, one.because) for one in proposals(found, {"0042": "Ada Quill"})]
    [('0042', 'name')]
    """
    found = [*_typed(arrival, roster), *_in_names(arrival, roster), *_similar(arrival, roster)]
    first = {}
    for one in found:
        first.setdefault(one.student, one)
    return list(first.values())


def sure(found):
    """The one student for whom all clear reasons speak, or None.

    Parameters
    ----------
    found : list of Proposal

    Returns
    -------
    Proposal or None
    """
    clear = [one for one in found if one.because != SIMILAR]
    return clear[0] if len(clear) == 1 else None


def set_proposal(arrival, sets, chosen=""):
    """The set that it may be: what the file says, what its name says, else the one expected.

    Parameters
    ----------
    arrival : Arrival
    sets : list of str
        Those handed out.
    chosen : str
        The set that the instructor is at work on.

    Returns
    -------
    SetProposal or None
        None also for a file that says a set which is not handed out.
    """
    if arrival.says_set:  # a file that says another set is never taken for the one expected
        return SetProposal(arrival.says_set, SAID) if arrival.says_set in sets else None
    text = _words(arrival.name)
    named = [one for one in sets if f" {_words(one).strip()} " in text or _by_figure(one, text)]
    if len(named) == 1:
        return SetProposal(named[0], NAMED)
    return SetProposal(chosen, CHOSEN) if chosen in sets else None


def _by_figure(set_id, text):
    """Whether a name says "set 4" of "04-buy-enough", or "review 1" of "05r-review-1"."""
    figures = re.match(r"0*(?P<set>[0-9]+)-|.*-review-(?P<review>[0-9]+)$", set_id)
    if not figures:
        return False
    kind, number = next((kind, one) for kind, one in figures.groupdict().items() if one)
    return bool(re.search(rf" {kind} 0*{number} ", text))


def _typed(arrival, roster):
    """The number that is typed in the file, as it is or without its leading zeros."""
    try:
        typed = student_number(arrival.says_student or "")
    except KitchenError:
        return []
    if typed in roster:
        return [Proposal(typed, TYPED, typed)]
    return [
        Proposal(one, ZEROS, typed) for one in roster if without_zeros(one) == without_zeros(typed)
    ]


def _in_names(arrival, roster):
    """A student's number or name in the name of the file, or of a folder around it."""
    parts = arrival.name.split("/")
    texts = {part: _words(part) for part in reversed(parts)}
    found = []
    for student, name in roster.items():
        number, words = _words(student), set(bare_words(name))
        for part, text in texts.items():
            if number in text:
                found.append(Proposal(student, NUMBER, part))
            elif len(words) > 1 and words <= set(text.split()):
                found.append(Proposal(student, NAME, part))
            elif _has_figures(student) and without_zeros(number) in without_zeros(text):
                found.append(Proposal(student, ZEROS, part))
    order = (NUMBER, NAME, ZEROS)
    return sorted(found, key=lambda one: order.index(one.because))


def _similar(arrival, roster):
    typed = (arrival.says_student or "").strip()
    near = difflib.get_close_matches(typed, roster, n=2, cutoff=ALIKE)
    return [Proposal(one, SIMILAR, typed) for one in near]


def _words(text):
    """Its letters and figures, small and without accents, with a blank around each run."""
    return f" {' '.join(bare_words(text))} "


def same_name(one, other):
    """Whether two spellings are one name: order, accents, capitals and commas aside.

    Parameters
    ----------
    one, other : str

    Returns
    -------
    bool

    Examples
    --------
    >>> same_name("Ferny, Zoe", "Zoë Ferny")
    True
    """
    return bool(one.strip()) and sorted(bare_words(one)) == sorted(bare_words(other))


def without_zeros(text):
    """Each run of figures without the zeros in front of it.

    Parameters
    ----------
    text : str

    Returns
    -------
    str

    Examples
    --------
    >>> without_zeros("BH-0042")
    'bh-42'
    """
    return re.sub(r"(?<![0-9])0+(?=[0-9])", "", text.casefold())


def _has_figures(student):
    """Whether the number is long enough to be one: a lone 7 stands in many names."""
    return len(re.sub(r"\D", "", student)) > 1 and len(without_zeros(student)) > 1
