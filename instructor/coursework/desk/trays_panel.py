"""The desk's panel for trays in photos: those of a set's hand-ins, and one at the station."""

import base64
import html

import ipywidgets as widgets

from coursework.deciding import about_of, decide
from coursework.desk.parts import BESIDE
from coursework.desk.showing import PAGE, WIDE, people, refill
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.records.photos import photos_of
from coursework.records.reading import usable_records
from coursework.records.trays import keep_tray, trays_of
from kitchenmath.cuts import CUTS
from kitchenmath.errors import OutOfRange
from kitchenmath.panels.frame import below_each_other, said
from kitchenmath.panels.photo import ruled
from kitchenmath.photo import board_evidence, sizes_seen
from kitchenmath.photo.opening import LARGEST_BYTES
from kitchenmath.photo.words import CAUTIONS, RENDERED

MEASURABLE = tuple(name for name in CUTS if sizes_seen(name))
ALT = "A tray on the printed mat, with an outline and a number on each piece"
KEPT = (
    "The photo itself is not kept: a small copy with the outlines, and the sizes, stay with the "
    f"student's practical mark.\n{CAUTIONS}\n{RENDERED}"
)


def trays_panel(desk):
    """Look at the photos of a set's hand-ins; measure a tray at the station, and give the mark.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With attributes `student`, `mark`, `upload`, `cut`, `lines`, `points`, `why`, `picture`,
        `table`, `shown` and `steps`, the four buttons by name.
    """
    return _Panel(desk).widget


class _Panel:
    """The panel's parts, and what its buttons do."""

    def __init__(self, desk):
        self.desk, self.found = desk, None
        self.student = widgets.Dropdown(description="Student", style=BESIDE, layout=WIDE)
        self.mark = widgets.Dropdown(description="Practical mark", style=BESIDE, layout=WIDE)
        self.upload = widgets.FileUpload(
            accept=".jpg,.jpeg,.png", multiple=False, description="Choose the tray's photo",
            layout={"width": "260px"},
        )  # fmt: skip
        self.cut = widgets.Dropdown(
            options=[("no cut, sizes only", ""), *((each, each) for each in MEASURABLE)],
            description="Named cut", style=BESIDE, layout=WIDE,
        )  # fmt: skip
        self.lines = _text("The mat's two lines (mm)", "100, 99.5")
        self.points, self.why = _text("Points", "14"), _text("Why, or a word to the student", "")
        self.picture, self.table, self.shown = widgets.HTML(), widgets.HTML(), widgets.HTML()
        desk.classes.observe(self._forget, "value")
        desk.keep_filled(self._fill)
        self.steps = {
            "photos": desk.step("Show the hand-ins' photos", self.photos),
            "measure": desk.step("Measure the tray", self.measure, of_set=False),
            "give": desk.step("Keep it and give the mark", self.give, of_set=False),
            "kept": desk.step("Show the student's trays", self.kept, of_set=False),
        }
        self.widget = below_each_other(self._parts(), PAGE)
        for name in ("student", "mark", "upload", "cut", "lines", "points", "why", "picture",
                     "table", "shown", "steps"):  # fmt: skip
            setattr(self.widget, name, getattr(self, name))

    def _parts(self):
        steps = self.steps
        return [
            steps["photos"], widgets.HTML(said(KEPT)), self.student, self.upload, self.cut,
            self.lines, steps["measure"], self.picture, self.table, self.mark, self.points,
            self.why, steps["give"], steps["kept"], self.shown,
        ]  # fmt: skip

    def _fill(self, course):
        refill(self.student, people(course.roster))
        refill(self.mark, [(name, name) for name in course.policy.practical])

    def _forget(self, _=None):
        """A picture of the last tray must not stand over the next one's mark."""
        self.found, self.picture.value, self.table.value, self.shown.value = None, "", "", ""

    def photos(self, _):
        """The photos that came with a set's hand-ins, each with the readings that were typed."""
        course, set_id = self.desk.course, self.desk.sets.value
        records, _ = usable_records(course, set_id)
        parts = [
            _figure(address, f"{_named(course, one)}, {question}: {_typed(one, question)}")
            for one in records
            for question, address in photos_of(course, one).items()
        ]
        self.shown.value = "".join(parts)
        return f"{len(parts)} photos came with this set." if len(parts) != 1 else "1 photo came."

    def measure(self, _):
        """Measure the chosen photo and show it; nothing is kept yet."""
        self._forget()
        if not self.student.value:
            raise CourseError("Choose the student first.")
        if not self.upload.value:
            raise CourseError("Choose the tray's photo first.")
        data = bytes(self.upload.value[0]["content"])
        if len(data) > LARGEST_BYTES:
            raise OutOfRange("photo: over 9 MB. Save it smaller.")
        found = board_evidence(data, self.cut.value or None, ruler_mm=ruled(self.lines.value))
        self.picture.value = _figure(_jpeg(found.small_jpeg), "")
        self.table.value = f"<pre>{html.escape(chr(10).join(found.table))}</pre>"
        self.found = found, self.student.value
        return "\n".join(found.sentences)

    def give(self, _):
        """Keep what was measured with the student, and enter the mark as a decision."""
        course, who = self.desk.course, self.student.value
        if self.found is None or self.found[1] != who:
            raise CourseError("Measure this student's tray first.")
        typed = {"student": who, "mark": self.mark.value or "", "points": self.points.value,
                 "why": self.why.value.strip()}  # fmt: skip
        about = about_of(course, "practical mark", typed)
        about["file"] = keep_tray(course, who, about["question"], self.found[0])
        made = decide(course, "practical mark", **about)
        self._forget()
        self.points.value = self.why.value = ""
        return f"Decision {made.number} is in the journal. The tray is kept with {who}."

    def kept(self, _):
        """The trays that are kept with the chosen student."""
        course, who = self.desk.course, self.student.value
        given = {one.file: one for one in decisions_of(course) if one.kind == "practical mark"}
        trays = trays_of(course, who)
        self.shown.value = "".join(
            _figure(_jpeg(tray.picture_jpeg), "\n".join([_of(tray, given), *tray.sentences]))
            for tray in trays
        )
        return f"Trays kept with {who}: {len(trays)}."


def _of(tray, given):
    """Which mark a tray is evidence of, and the line of the journal that rests on it."""
    one = given.get(tray.file)
    return f"{tray.practical}. " + (
        f"Decision {one.number}, {one.points:g} of {one.out_of:g} points." if one else ""
    )


def _text(label, example):
    more = {"placeholder": f"such as {example}"} if example else {}
    return widgets.Text(description=label, style=BESIDE, layout=WIDE, **more)


def _named(course, record):
    who = record.student
    return f"{course.roster.get(who, who)} ({who})"


def _typed(record, question):
    """What the student typed as readings beside the photo."""
    found = (each.answer for each in record.questions if each.question == question)
    return next(found, "") or "no readings"


def _jpeg(raw):
    return f"data:image/jpeg;base64,{base64.b64encode(raw).decode()}"


def _figure(address, words):
    """A picture with words below; the address is the kit's own making."""
    return (
        f'<figure style="margin:0 0 12px"><img src="{address}" alt="{ALT}" '
        f'style="max-width:100%;height:auto"><figcaption>{said(words)}</figcaption></figure>'
    )
