"""The desk's panel for decisions: choose one, and say what it is about."""

import ipywidgets as widgets

from coursework.arriving.arrivals import read_list
from coursework.deciding import FOR_ALL, about_of, decide, looked_at
from coursework.deciding_commands import COMMANDS
from coursework.desk.parts import BESIDE
from coursework.desk.showing import NO_FILE, PAGE, WIDE, people, refill
from coursework.errors import CourseError
from kitchenmath.panels.frame import below_each_other

MINUTE = 16  # characters of a time without its seconds
EVERYBODY = ("the whole class", "")
# What a box is called, by the name under which a command takes it.
BOXES = {
    "question": ("Question", "q3"),
    "time": ("Time", "2026-10-05 09:00"),
    "mark": ("Practical mark", "knife skills"),
    "points": ("Points", "2,5"),
    "out_of": ("out of", "4"),
    "answer": ("Accept this answer", "3 kg"),
    "step": ("or within", "100 g"),
    "line": ("Number in the journal", "7"),
}
# Each kind in the list; on a phone about 40 letters stand beside the list's name.
KINDS = {
    "place": "Say whose a file is",
    "set aside": "Leave a file aside for good",
    "this one counts": "Say which hand-in counts",
    "handed in at": "Say when a file was handed in",
    "extension": "Move the due time",
    "excused": "Excuse a student from the set",
    "on paper": "Enter marks for work on paper",
    "practical mark": "Give a practical mark",
    "back to the machine": "Take points by hand away",
    "dropped question": "Let a question count nowhere",
    "full marks": "Full marks of a question for all",
    "accept this too": "Accept another answer or wider step",
    "own key": "Stay with the class's own key",
    "newer key": "Take the kit's newer key of the set",
    "take back": "Take a decision back",
}
ALSO = {"extension": ("student",), "accept this too": ("answer", "step")}


def deciding_panel(desk, after=None):
    """Every decision of an instructor, each a line of a list that is never written over.

    What changes marks for several students must be looked at first; looked at for anything else
    than what then stands in the boxes, it does not count.

    Parameters
    ----------
    desk : Desk
    after : callable, optional
        Called once a decision is made, to show what follows from it.

    Returns
    -------
    ipywidgets VBox
        With attributes `kind`, `student`, `file`, `boxes` and `why`.
    """
    kind = widgets.Dropdown(
        options=[(words, kind) for kind, words in KINDS.items()],
        description="Decide",
        style=BESIDE,
        layout=WIDE,
    )
    student = widgets.Dropdown(description="Student", style=BESIDE, layout=WIDE)
    file = widgets.Dropdown(description="File", style=BESIDE, layout=WIDE)
    boxes = {
        name: widgets.Text(description=label, placeholder=f"such as {example}", style=BESIDE)
        for name, (label, example) in BOXES.items()
    }
    why = widgets.Text(description="Why, or a word to the student", style=BESIDE, layout=WIDE)
    looked_at_last = {}

    def wanted():
        typed = next(names for _, one, names, _ in COMMANDS if one == kind.value)
        return {*typed.split(), *ALSO.get(kind.value, ())}

    def show_boxes(_=None):
        shown = {"student": student, "file": file, **boxes}
        for name, box in shown.items():
            box.layout.display = None if name in wanted() else "none"

    def fill(course):
        refill(student, [EVERYBODY, *people(course.roster)])
        once = {one.sha256: one for one in read_list(course) if one.sha256}
        named = [(_file_line(one, course.roster), sha) for sha, one in once.items()]
        refill(file, [NO_FILE, *named])

    def typed():
        there = {name: box.value.strip() for name, box in boxes.items()}
        there |= {"student": student.value or "", "file": file.value or "", "set": desk.sets.value}
        needed = wanted()
        if "student" in needed and not there["student"] and kind.value not in ALSO:
            raise CourseError("Choose the student.")
        if "file" in needed and not there["file"]:
            raise CourseError("Choose the file. Take it in first, where it is not in the list.")
        return {"why": why.value.strip(), **{name: there.get(name, "") for name in needed}}

    def look(progress):
        course = desk.course
        if kind.value not in FOR_ALL:
            return "This decision changes nothing for anybody else. Press “Decide”."
        about = about_of(course, kind.value, typed())
        words = looked_at(course, kind.value, about, progress)
        looked_at_last["is"] = kind.value, desk.classes.value, about
        return words

    def enter(_):
        course = desk.course
        about = about_of(course, kind.value, typed())
        seen = looked_at_last.pop("is", None)
        if kind.value in FOR_ALL and seen != (kind.value, desk.classes.value, about):
            raise CourseError("Look first whose marks change.")
        made = decide(course, kind.value, **about)
        for box in (*boxes.values(), why):
            box.value = ""  # nothing stays armed after a click
        if after is not None:
            after()
        return f"Decision {made.number} is in the journal. It can be taken back there."

    kind.observe(show_boxes, "value")
    show_boxes()
    desk.keep_filled(fill)
    panel = below_each_other(
        [
            kind, file, student, *boxes.values(), why,
            desk.step("Look whose marks change", look),
            desk.step("Decide", enter),
        ],
        PAGE,
    )  # fmt: skip
    panel.kind, panel.student, panel.file, panel.boxes = kind, student, file, boxes
    panel.why = why
    return panel


def _file_line(arrival, roster):
    """A file among those that arrived: its name, whose it is, when it came, what became of it."""
    whose = roster.get(arrival.student, "")
    told = ", ".join(filter(None, (arrival.name, whose, arrival.handed_in[:MINUTE])))
    return f"{told}: {arrival.became}"
