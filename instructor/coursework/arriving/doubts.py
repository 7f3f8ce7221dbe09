"""Hand-ins that wait until a person says which one counts, beside the marked one that stands."""

from dataclasses import dataclass

from coursework.arriving.arrivals import read_list
from coursework.arriving.states import COUNTS, WAITS

__all__ = ["Doubt", "doubts", "in_words"]


@dataclass(frozen=True)
class Doubt:
    """A marked hand-in, and what would take its place if a person said so.

    Attributes
    ----------
    student, set_id : str
    stands : Arrival
        The one that counts as long as nobody says another.
    waits : tuple of Arrival
        Those that came later and that only themselves say to be this student's.
    """

    student: str
    set_id: str
    stands: object
    waits: tuple

    @property
    def files(self):
        """All of them, the one that stands first."""
        return (self.stands, *self.waits)


def doubts(course):
    """What waits for a person's word, in the order of arrival.

    Parameters
    ----------
    course : Course

    Returns
    -------
    list of Doubt
    """
    arrivals, waits = read_list(course), {}
    for one in arrivals:
        if one.became == WAITS and one.kept:  # what is past its time can count no more
            waits.setdefault((one.student, one.set_id), []).append(one)
    stand = {(one.student, one.set_id): one for one in arrivals if one.became == COUNTS}
    return [Doubt(*key, stand[key], tuple(those)) for key, those in waits.items() if key in stand]


def in_words(arrival, doubt, roster):
    """One file of a doubt: its name, its time, who sent it, whether it is the marked one.

    Parameters
    ----------
    arrival : Arrival
    doubt : Doubt
    roster : dict of str to str

    Returns
    -------
    str
    """
    time = arrival.came or "no time is known"
    sender = f"sent by {_named(arrival.sender, roster)}" if arrival.sender else "no sender is known"
    stands = "it is marked" if arrival is doubt.stands else "it waits"
    return f"“{arrival.name}”, {time}, {sender}: {stands}"


def _named(student, roster):
    return f"{roster.get(student, student)} ({student})"
