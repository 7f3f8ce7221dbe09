"""A decision of a person: one line of a list that only grows. Taking back is another line.

Nothing is read or written here; `gradebook/decision_list.py` keeps the lines.
"""

from dataclasses import dataclass, field

from coursework.errors import CourseError

__all__ = ["FOR_GOOD", "KINDS", "Decision", "refuse_odd"]

# Kind to what a line of it names besides who, when and why; `*` may be left empty.
KINDS = {
    "place": ("file", "student", "set_id"),
    "set aside": ("file",),
    "this one counts": ("file", "student", "set_id"),
    "handed in at": ("file", "student", "set_id", "seconds"),
    "extension": ("set_id", "student*", "seconds"),
    "excused": ("set_id", "student"),
    "on paper": ("set_id", "student", "points", "out_of"),
    "points by hand": ("set_id", "student", "question", "points", "answer*"),
    "back to the machine": ("set_id", "student", "question"),
    "dropped question": ("set_id", "question"),
    "accept this too": ("set_id", "question", "accepted*", "step*"),
    "full marks": ("set_id", "question"),
    "practical mark": ("student", "question", "points", "out_of", "file*"),
    "copies discarded": (),
    "newer key": ("file", "set_id"),
    "own key": ("file", "set_id"),
    "newer numbers": ("file", "set_id"),
    "take back": ("line",),
}
# Their file is a key, or a list of numbers, which nobody knows by its SHA-256.
OF_KEYS = ("newer key", "own key", "newer numbers")
FOR_GOOD = ("copies discarded",)  # no taking back brings a discarded file back


@dataclass(frozen=True)
class Decision:
    """One line.

    Attributes
    ----------
    kind : str
        One of `KINDS`.
    who, when, why : str
        Who decided, the time in UTC ("2026-10-05T09:00:00Z"), and the reason or the remark.
    number : int
        The line's place in the list, from 1; 0 before it is written.
    set_id, student, question, file : str
        What it is about; `file` is a SHA-256. Without a student it is about the whole class. With
        "practical mark", `question` is the mark's name and `file` the tray that it rests on. With
        "newer key" `file` is the kit's key that is taken, with "own key" the one that is declined;
        with "newer numbers" all that the class is asked from then on.
    points, out_of : float or None
        With "points by hand", "on paper" and "practical mark".
    answer : str
        The SHA-256 of the answer that the points are for: another answer reopens the question.
    seconds : float or None
        A time since 1970, with "handed in at" and "extension".
    accepted, step : str
        With "accept this too": an answer as typed, which counts as right from now on; or how far
        from the right answer one may lie, as in "100 g" or "5 %".
    line : int or None
        The line that is taken back.
    """

    kind: str
    who: str
    when: str
    why: str = ""
    number: int = field(default=0, compare=False)
    set_id: str = ""
    student: str = ""
    question: str = ""
    file: str = ""
    points: float | None = None
    out_of: float | None = None
    answer: str = ""
    seconds: float | None = None
    accepted: str = ""
    step: str = ""
    line: int | None = None


def refuse_odd(decision):
    """Refuse a line that lacks what its kind needs, or that says more than its kind can mean.

    Parameters
    ----------
    decision : Decision

    Raises
    ------
    CourseError
    """
    if decision.kind not in KINDS:
        raise CourseError(f"decision: “{decision.kind}” is none of {', '.join(KINDS)}.")
    needed = [name for name in KINDS[decision.kind] if not name.endswith("*")]
    missing = [name for name in needed if getattr(decision, name) in ("", None)]
    if missing:
        raise CourseError(f"{decision.kind}: {missing[0]} is missing.")
    if decision.kind == "accept this too" and bool(decision.accepted) == bool(decision.step):
        raise CourseError("accept this too: name an answer, or a wider step.")
    if decision.points is not None and decision.points < 0:
        raise CourseError(f"points: {decision.points:g} is below 0.")
    if decision.out_of is not None and not 0 < decision.out_of >= decision.points:
        raise CourseError(
            f"points: {decision.points:g} of {decision.out_of:g} is more than there is."
        )
    if not decision.who.strip():
        raise CourseError("decision: say who decides.")
