"""The inbox: files without a place, each with whose it may be, settled many at a time."""

from dataclasses import dataclass

from coursework.arriving import words
from coursework.arriving.arrivals import read_list
from coursework.arriving.placing_by_hand import settle_again, without_place
from coursework.arriving.proposals import proposals, set_proposal, sure
from coursework.arriving.states import COUNTS
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.errors import CourseError
from coursework.gradebook.decision_list import add_decision

__all__ = ["Placing", "Waiting", "in_words", "inbox", "place_many", "replaced_by", "set_aside_many",
           "sure_placings"]  # fmt: skip


@dataclass(frozen=True)
class Waiting:
    """A file without a place.

    Attributes
    ----------
    arrival : Arrival
    proposals : tuple of Proposal
        Whose it may be.
    set_proposal : SetProposal or None
    """

    arrival: object
    proposals: tuple
    set_proposal: object

    @property
    def sure(self):
        """The one student for whom all clear reasons speak, or None."""
        return sure(self.proposals)


@dataclass(frozen=True)
class Placing:
    """A file (its SHA-256), and whose it is to be."""

    file: str
    student: str
    set_id: str


def inbox(course, chosen=""):
    """What waits for a place.

    Parameters
    ----------
    course : Course
    chosen : str
        The set that the instructor is at work on.

    Returns
    -------
    list of Waiting
    """
    sets = course.sets_handed_out()
    return [
        Waiting(one, tuple(proposals(one, course.roster)), set_proposal(one, sets, chosen))
        for one in without_place(course)
    ]


def sure_placings(waiting):
    """Where those go of which one student is sure and a set is known.

    Parameters
    ----------
    waiting : list of Waiting

    Returns
    -------
    list of Placing
    """
    return [
        Placing(one.arrival.sha256, one.sure.student, one.set_proposal.set_id)
        for one in waiting
        if one.sure and one.set_proposal
    ]


def replaced_by(course, placings):
    """Which of these meet a hand-in that is there already, so that one of both is not counted.

    Parameters
    ----------
    course : Course
    placings : list of Placing

    Returns
    -------
    list of Placing
        Also the second of two that are for the same student and set.
    """
    there = {(one.student, one.set_id) for one in read_list(course) if one.became == COUNTS}
    found = []
    for one in placings:
        if (one.student, one.set_id) in there:
            found.append(one)
        there.add((one.student, one.set_id))
    return found


def place_many(course, placings):
    """Place files by hand, all or none.

    Parameters
    ----------
    course : Course
    placings : list of Placing

    Raises
    ------
    CourseError
        When a student is not on the roster, a set is not handed out, or another step is at work.
    """
    sets = course.sets_handed_out()
    for one in placings:
        if one.student not in course.roster:
            raise CourseError(f"student: {one.student or 'nobody'} is not on the roster.")
        if one.set_id not in sets:
            raise CourseError(f"set: “{one.set_id}” is not handed out in this class.")
    with one_at_a_time(course, "placing"):
        for one in placings:
            add_decision(course, "place", file=one.file, student=one.student, set_id=one.set_id)
        settle_again(course)


def set_aside_many(course, files, why=""):
    """Set files aside for good.

    Parameters
    ----------
    course : Course
    files : list of str
        SHA-256 of each.
    why : str

    Raises
    ------
    CourseError
        When another step is at work in this class.
    """
    with one_at_a_time(course, "placing"):
        for one in files:
            add_decision(course, "set aside", file=one, why=why)
        settle_again(course)


def in_words(waiting, roster, chosen="", labels=None):
    """Why a file has no place, who it may be from and why, and where its set is not the chosen one.

    Parameters
    ----------
    waiting : Waiting
    roster : dict of str to str
    chosen : str
        The set that the instructor is at work on; "" where none is.
    labels : dict of str to str, optional
        What each set is called; its id by default.

    Returns
    -------
    list of str
    """
    lines = [waiting.arrival.reason]
    lines += [
        words.BECAUSE[one.because].format(
            name=f"{roster[one.student]} ({one.student})", seen=one.seen
        )
        for one in waiting.proposals
    ] or [words.NOBODYS]
    proposed = waiting.set_proposal
    if chosen and proposed and proposed.set_id != chosen:
        whence = "it" if proposed.because == "said" else "its name"
        said = (labels or {}).get(proposed.set_id, proposed.set_id)
        lines.append(words.OTHER_SET.format(whence=whence, said=said))
    return lines
