"""The desk's panel for decisions: choose one, and say what it is about."""

import ipywidgets as widgets

from coursework.arriving.arrivals import read_list
from coursework.deciding import FOR_ALL, about_of, changed_in_words, decide, looked_at
from coursework.deciding_commands import COMMANDS
from coursework.desk.parts import BESIDE
from coursework.desk.showing import NO_FILE, PAGE, WIDE, people, refill
from coursework.errors import CourseError
from kitchenmath.panels.frame import Panel

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
    "points by hand": "Give points for any answer",
    "back to the machine": "Take points by hand away",
    "dropped question": "Let a question count nowhere",
    "full marks": "Full marks of a question for all",
    "accept this too": "Accept another answer or wider step",
    "newer numbers": "Take the numbers the kit asks for now",
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
    return DecidingPanel(desk, after)


class DecidingPanel(Panel):
    """See `deciding_panel`."""

    def __init__(self, desk, after):
        self._desk, self._after, self._looked_at = desk, after, None
        self.kind = widgets.Dropdown(
            options=[(words, kind) for kind, words in KINDS.items()],
            description="Decide",
            style=BESIDE,
            layout=WIDE,
        )
        self.student = widgets.Dropdown(description="Student", style=BESIDE, layout=WIDE)
        self.file = widgets.Dropdown(description="File", style=BESIDE, layout=WIDE)
        self.boxes = {
            name: widgets.Text(description=label, placeholder=f"such as {example}", style=BESIDE)
            for name, (label, example) in BOXES.items()
        }
        self.why = widgets.Text(
            description="Why, or a word to the student", style=BESIDE, layout=WIDE
        )
        self.kind.observe(self._show_boxes, "value")
        self._show_boxes()
        desk.keep_filled(self._fill)
        look = desk.step("Look whose marks change", self._look)
        enter = desk.step("Decide", self._enter)
        typed = [self.file, self.student, *self.boxes.values(), self.why]
        super().__init__([self.kind, *typed, look, enter], PAGE)

    @property
    def _wanted(self):
        """What this kind of decision asks for."""
        typed = next(names for _, one, names, _ in COMMANDS if one == self.kind.value)
        return {*typed.split(), *ALSO.get(self.kind.value, ())}

    def _show_boxes(self, _=None):
        shown = {"student": self.student, "file": self.file, **self.boxes}
        for name, box in shown.items():
            box.layout.display = None if name in self._wanted else "none"

    def _fill(self, course):
        refill(self.student, [EVERYBODY, *people(course.roster)])
        once = {one.sha256: one for one in read_list(course) if one.sha256}
        named = [(_file_line(one, course.roster), sha) for sha, one in once.items()]
        refill(self.file, [NO_FILE, *named])

    def _typed(self):
        there = {name: box.value.strip() for name, box in self.boxes.items()}
        there |= {"student": self.student.value or "", "file": self.file.value or "",
                  "set": self._desk.sets.value}  # fmt: skip
        wanted = self._wanted
        if "student" in wanted and not there["student"] and self.kind.value not in ALSO:
            raise CourseError("Choose the student.")
        if "file" in wanted and not there["file"]:
            raise CourseError("Choose the file. Take it in first, where it is not in the list.")
        return {"why": self.why.value.strip(), **{name: there.get(name, "") for name in wanted}}

    def _look(self, progress):
        course, kind = self._desk.course, self.kind.value
        if kind not in FOR_ALL:
            return "This decision changes nothing for anybody else. Press “Decide”."
        about = about_of(course, kind, self._typed())
        words = looked_at(course, kind, about, progress)
        self._looked_at = kind, self._desk.classes.value, about
        return words

    def _enter(self, _):
        course, kind = self._desk.course, self.kind.value
        about = about_of(course, kind, self._typed())
        seen, self._looked_at = self._looked_at, None
        if kind in FOR_ALL and seen != (kind, self._desk.classes.value, about):
            raise CourseError("Look first whose marks change.")
        made = decide(course, kind, **about)
        for box in (*self.boxes.values(), self.why):
            box.value = ""  # nothing stays armed after a click
        if self._after is not None:
            self._after()
        line = f"Decision {made.number} is in the journal. It can be taken back there."
        return "\n".join(filter(None, (line, changed_in_words(course, made))))


def _file_line(arrival, roster):
    """A file among those that arrived: its name, whose it is, when it came, what became of it."""
    whose = roster.get(arrival.student, "")
    told = ", ".join(filter(None, (arrival.name, whose, arrival.came)))
    return f"{told}: {arrival.became}"
