"""What arrived: each hand-in kept unchanged, and the list that says what became of it.

`arrived/list.json` is the truth. It holds what came and what each file says of itself; what
counts follows from that, from the roster and from the sets handed out, so a mended roster places
what could not be placed before. `arrived/list.csv` is the same for people.
"""

import json
from collections import Counter
from dataclasses import asdict, dataclass, replace

from coursework.arriving.clock import on_the_clock
from coursework.arriving.reading_in import UnreadableNotebook, read_notebook
from coursework.arriving.states import HAND_INS, NOT_PLACED, WAITS
from coursework.arriving.whose import code_of, set_of, student_of
from coursework.csv_sheets import sheet_as_csv
from coursework.errors import CourseError
from coursework.safe_files import clear_halves, digest, write_safely
from coursework.words import UNKNOWN

# Longer than any student number or set may be, and short enough for a list.
LONGEST_SAID = 100
MINUTE = 16  # characters of a time without its seconds


@dataclass(frozen=True)
class Arrival:
    """One file that arrived.

    Attributes
    ----------
    place, name : str
        The folder or zip it came in, and its name there.
    sha256, kept : str
        Of its bytes, and where they are kept below `arrived`; empty when it was not taken.
    seconds : int or None
        The time that counts, in seconds since 1970 (see `clock`); None in old lists only.
    handed_in : str
        The same on the clock of the machine that took it in; empty when unknown.
    says_seconds : int or None
        What the file says of itself: shown, and no more.
    taken : int or None
        When it was first taken in; None in old lists only.
    outer : str
        The name under which a platform keeps it: without what lies in a zip of the student's own.
    says_student, says_set, says_term, says_code : str or None
        What the notebook says of itself.
    trouble : str
        Why it cannot be a hand-in, whatever the roster says; empty when it can.
    told_student, told_set : str
        What the instructor said of it, which counts before what it says itself; empty when nothing.
    student, set_id, became, reason : str
        What became of it, settled anew each time something is taken in.
    sender : str
        The student whom `outer` names, settled anew too; empty where it names none.
    code : str
        "right", "wrong" or "missing", settled anew too; empty where the class has no codes.
    """

    place: str
    name: str
    sha256: str = ""
    kept: str = ""
    seconds: int | None = None
    handed_in: str = ""
    says_seconds: int | None = None
    taken: int | None = None
    outer: str = ""
    says_student: str | None = None
    says_set: str | None = None
    says_term: str | None = None
    says_code: str | None = None
    trouble: str = ""
    told_student: str = ""
    told_set: str = ""
    student: str = ""
    set_id: str = ""
    became: str = NOT_PLACED
    reason: str = ""
    sender: str = ""
    code: str = ""

    @property
    def order(self):
        """What puts one student's hand-ins in order; their own word only where times are equal."""
        return self.seconds or 0, self.says_seconds or 0

    @property
    def came(self):
        """When it was handed in, to the minute; empty when unknown."""
        return self.handed_in[:MINUTE]

    @property
    def own_time(self):
        """What the file says of itself, on this machine's clock; empty where it says nothing."""
        return "" if self.says_seconds is None else on_the_clock(self.says_seconds)

    @property
    def line(self):
        """What makes it the same line of the list when the same place is taken in again."""
        return self.place, self.name, self.sha256


def arrival_of(found, limit, budget=None):
    """The arrival of one found file, with what it says of itself.

    Parameters
    ----------
    found : Found
    limit : int
        Longest file (bytes) that is read.
    budget : Budget, optional
        What reading it may cost; all that came in one hand-in shares one.

    Returns
    -------
    Arrival
    """
    arrival = Arrival(
        writable(found.place), writable(found.name), trouble=found.reason, seconds=found.seconds,
        says_seconds=found.says_seconds, outer=writable(found.outer),
    )  # fmt: skip
    if found.raw is None:
        return arrival
    sha256 = digest(found.raw)
    says, trouble = {}, found.reason
    if not trouble:
        try:
            notebook = read_notebook(found.raw, limit, budget)
            words = (student_of(notebook), *set_of(notebook), code_of(notebook))
            names = ("says_student", "says_set", "says_term", "says_code")
            says = {name: short(one) for name, one in zip(names, words, strict=True)}
        except UnreadableNotebook as error:
            trouble = str(error)
    # Not by its given name, and not as a notebook what is none.
    kept = f"{sha256[:2]}/{sha256}{'.bin' if trouble else '.ipynb'}"
    return replace(arrival, sha256=sha256, kept=kept, trouble=trouble, **says)


def keep(course, arrival, raw):
    """Keep a file's bytes; the same bytes once only.

    Parameters
    ----------
    course : Course
    arrival : Arrival
    raw : bytes
    """
    file = course.arrived / arrival.kept
    if not (file.is_file() and file.read_bytes() == raw):
        clear_halves(file.parent)
        write_safely(file, raw)


def writable(text):
    """Text of a stranger for a list or a screen: line ends and other odd characters written out."""
    return "".join(one if one.isprintable() else ascii(one)[1:-1] for one in text)


def short(said):
    """What a notebook says, for the list; None stays None."""
    return said if said is None else writable(said.strip()[:LONGEST_SAID])


def read_list(course):
    """The list of what arrived, in the order of arrival.

    Parameters
    ----------
    course : Course

    Returns
    -------
    list of Arrival

    Raises
    ------
    CourseError
        When the list was damaged.
    """
    file = course.arrived / "list.json"
    if not file.exists():
        return []
    try:
        return [Arrival(**entry) for entry in json.loads(file.read_bytes())]
    except (OSError, ValueError, TypeError, RecursionError):
        raise CourseError(
            "arrived/list.json is damaged: move it elsewhere and take everything in again. "
            "The hand-ins themselves are kept beside it."
        ) from None


def names_of_files(course):
    """The name under which each file came, by its SHA-256; of two with one name also the time.

    Parameters
    ----------
    course : Course

    Returns
    -------
    dict of str to str
    """
    once = {one.sha256: one for one in read_list(course)}
    alike = Counter(one.name for one in once.values())
    return {
        sha256: f"{one.name} ({one.came})" if alike[one.name] > 1 else one.name
        for sha256, one in once.items()
    }


def hand_ins(course, set_id):
    """Each student's hand-ins for a set, earliest first, without files that came twice.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    dict of str to list of Arrival

    Raises
    ------
    CourseError
        When the list of arrivals was damaged.
    """
    found = {}
    for arrival in read_list(course):
        if arrival.set_id == set_id and arrival.became in HAND_INS:
            found.setdefault(arrival.student, []).append(arrival)
    return {who: sorted(mine, key=lambda one: one.order) for who, mine in found.items()}


def unplaced(course):
    """What arrived and could not be placed, or waits for a person; the same file once.

    Parameters
    ----------
    course : Course

    Returns
    -------
    list of str
    """
    return [said(one) for one in read_list(course) if one.became in (NOT_PLACED, WAITS)]


def said(arrival, roster=UNKNOWN, titles=UNKNOWN):
    """One line about an arrival, for people; by names and titles where they are given."""
    student, set_id = arrival.student, arrival.set_id
    whose = f"{roster.get(student, student)}, {titles.get(set_id, set_id)}, " if set_id else ""
    return f"{arrival.name}: {whose}{arrival.became}. {arrival.reason}"


def write_list(course, arrivals):
    """Write the list, for the kit and for people.

    Parameters
    ----------
    course : Course
    arrivals : list of Arrival
    """
    entries = [asdict(arrival) for arrival in arrivals]
    clear_halves(course.arrived)
    write_safely(
        course.arrived / "list.json",
        json.dumps(entries, indent=1, ensure_ascii=False) + "\n",
    )
    head = ["what became of it", "why", "student number", "name", "set", "handed in",
            "its own file says", "file", "came in", "kept as", "sha256"]  # fmt: skip
    rows = [
        [one.became, one.reason, one.student, course.roster.get(one.student, ""), one.set_id,
         one.handed_in, one.own_time, one.name, one.place, one.kept, one.sha256]
        for one in arrivals
    ]  # fmt: skip
    # With a mark at the front, without which spreadsheets read UTF-8 as something else.
    write_safely(course.arrived / "list.csv", "\ufeff" + sheet_as_csv([head, *rows]))
