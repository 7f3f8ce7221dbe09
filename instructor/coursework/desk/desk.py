"""The desk: panels over the commands, for an instructor who does not program."""

import os
import tempfile
import traceback
from pathlib import Path

import ipywidgets as widgets

from coursework import demo
from coursework.arriving.take_in import take_in
from coursework.classes.course import CLASSES, new_course, open_course, read_roster
from coursework.desk.by_hand_panels import unplaced_panel, written_panel
from coursework.desk.reteach_panel import reteach_panel
from coursework.desk.showing import PAGE, WIDE, page_in_a_frame, told
from coursework.desk.term_panel import term_panel
from coursework.errors import CourseError
from coursework.marking.mark_set import mark_set
from coursework.marking.room.door import not_held_back
from coursework.reports.hand_back import hand_back
from coursework.reports.report import report
from coursework.sets.hand_out import hand_out
from coursework.sets.key_text import set_ids
from kitchenmath.errors import KitchenError
from kitchenmath.panels.frame import below_each_other, said

BESIDE = {"description_width": "initial"}


class Desk:
    """One class at a time: choose it, then go through the steps.

    Each method returns a panel to show in a cell of its own. They share the chosen class and set.
    """

    def __init__(self):
        alike = {"style": {"description_width": "40px"}, "layout": WIDE}
        self.classes = widgets.Dropdown(description="Class", **alike)
        self.sets = widgets.Dropdown(options=set_ids(), description="Set", **alike)
        self.state = widgets.HTML()
        self._list_classes()
        for chooser in (self.classes, self.sets):
            chooser.observe(self._tell_state, "value")
        self._tell_state()

    @property
    def course(self):
        """The chosen class.

        Raises
        ------
        CourseError
            When none is chosen, or its files need mending.
        """
        if not self.classes.value:
            raise CourseError("There is no class yet. Make one below, or play the demonstration.")
        return open_course(Path(self.classes.value))

    def choose(self):
        """Class, set, and how far the set has come."""
        return below_each_other([self.classes, self.sets, self.state], PAGE)

    def new(self):
        """A new class from a roster."""
        name = widgets.Text(description="Name", placeholder="autumn", style=BESIDE)
        term = widgets.Text(description="Term", placeholder="autumn-26", style=BESIDE)
        roster = widgets.FileUpload(description="Roster (CSV)", accept=".csv", multiple=False)

        def make(progress):
            if not roster.value:
                raise CourseError("Choose the roster first: a CSV with student_number and name.")
            if not name.value.strip() or Path(name.value).name != name.value:
                raise CourseError("Name: type one plain word for the class's folder.")
            with tempfile.TemporaryDirectory() as folder:
                file = Path(folder) / "roster.csv"
                file.write_bytes(bytes(roster.value[0]["content"]))
                students = read_roster(file)
            course = new_course(CLASSES / name.value, name.value, term.value, students)
            self._list_classes(course.folder)
            return f"The class has {len(students)} students."

        def play(progress):
            course, places = demo.play(progress=progress)
            self._list_classes(course.folder)
            self.sets.value = demo.SET
            take_in(course, places, progress)
            return f"An invented class of 24 has handed in set {demo.SET}. Mark it above."

        return below_each_other(
            [
                widgets.HBox([name, term, roster], layout={"flex_flow": "row wrap"}),
                self.step("Make the class", make),
                self.step("Play the demonstration class", play),
            ],
            PAGE,
        )

    def steps(self):
        """Hand out, take in, mark, hand back, report: a button and a progress bar each."""
        place = widgets.Text(
            description="Folder or zip",
            placeholder="as downloaded, such as Downloads/hand-ins.zip",
            style=BESIDE,
            layout=WIDE,
        )
        upload = widgets.FileUpload(description="Or choose files", multiple=True)
        self.place, self.upload = place, upload

        def do_hand_out(progress):
            return f"Give this notebook to the class: {hand_out(self.course, self.sets.value)}"

        def do_take_in(progress):
            with tempfile.TemporaryDirectory() as folder:
                typed = place.value.strip()
                # Named as one sees it from home; the kernel stands in the kit's own folder.
                places = [Path.home() / Path(typed).expanduser()] if typed else []
                for number, file in enumerate(upload.value):
                    saved = Path(folder) / str(number) / Path(file["name"]).name
                    saved.parent.mkdir()
                    saved.write_bytes(bytes(file["content"]))
                    stamp = file["last_modified"].timestamp()
                    os.utime(saved, (stamp, stamp))
                if upload.value:
                    places.append(Path(folder))
                if not places:
                    raise CourseError(
                        "Say where the hand-ins are: a folder or a zip, or choose files."
                    )
                return str(take_in(self.course, places, progress))

        def do_mark(progress):
            marked = mark_set(self.course, self.sets.value, progress)
            return "\n".join(each for each in (str(marked), not_held_back()) if each)

        def do_hand_back(progress):
            pages = hand_back(self.course, self.sets.value, progress)
            where = self.course.folder / "feedback"
            return f"{len(pages)} pages are in {where}\nThe first: {pages[0]}"

        def do_report(progress):
            sheet, page = report(self.course, self.sets.value, progress)
            return f"Mark sheet: {sheet}\nThe class's page: {page}"

        return below_each_other(
            [
                self.step("Hand out", do_hand_out),
                place,
                upload,
                self.step("Take in", do_take_in),
                self.step("Mark", do_mark),
                self.step("Hand back", do_hand_back),
                self.step("Report", do_report),
            ],
            PAGE,
        )

    def picture(self):
        """The class's page, as the last report made it."""
        shown = widgets.HTML()

        def show(progress):
            _, page = report(self.course, self.sets.value, progress)
            shown.value = page_in_a_frame(page, "The class's page")
            return "This page lies beside the mark sheet too."

        return below_each_other([self.step("Show the class", show), shown], PAGE)

    def term(self):
        """The term's mark book."""
        return term_panel(self)

    def reteach(self):
        """What was not got over all sets, and the sheets to practise it again."""
        return reteach_panel(self)

    def unplaced(self):
        """Files that could not be placed: say whose they are."""
        return unplaced_panel(self, PAGE)

    def written(self):
        """What waits for a person: written answers, and hand-ins that cannot be read."""
        return written_panel(self, PAGE)

    def step(self, name, do):
        """A button with its progress bar and a place for what happened, in plain words."""
        button = widgets.Button(description=name, layout={"width": "260px"})
        bar = widgets.IntProgress(description="", layout={"width": "200px", "visibility": "hidden"})
        words = widgets.HTML()

        def progress(done, total, text):
            bar.max, bar.value, bar.description = max(total, 1), done, f"{done} of {total}"
            bar.layout.visibility = "visible"

        def run(_):
            button.disabled, bar.value, bar.layout.visibility = True, 0, "hidden"
            words.value = said(f"{name} …")
            try:
                words.value = told(do(progress) or "Done.")
                bar.value = bar.max
            except KitchenError as error:
                words.value = said(f"Not done. {error}")
                bar.layout.visibility = "hidden"
            except Exception as error:  # an error of the kit's own: say it, and keep what helps
                note = Path(tempfile.gettempdir()) / "kitchen-desk-error.txt"
                note.write_text(traceback.format_exc(), encoding="utf-8")
                words.value = said(f"Not done: the kit itself failed ({error}). See {note}")
                bar.layout.visibility = "hidden"
            finally:
                button.disabled = False
                self._tell_state()

        button.on_click(run)
        row = widgets.HBox([button, bar], layout={"flex_flow": "row wrap"})
        step = widgets.VBox([row, words], layout={"margin": "0 0 6px"})
        step.button, step.words, step.bar = button, words, bar
        return step

    def _list_classes(self, choose=None):
        found = sorted(path.parent for path in CLASSES.glob("*/course.toml"))
        self.classes.options = [(path.name, str(path)) for path in found]
        if found:  # a list that is filled later chooses nothing by itself
            self.classes.value = str(choose or found[0])

    def _tell_state(self, _=None):
        try:
            course, set_id = self.course, self.sets.value
        except KitchenError as error:
            self.state.value = said(str(error))
            return
        handed_in = len(list((course.folder / "submitted").glob(f"*/{set_id}/*.ipynb")))
        marked = len(list((course.folder / "marks" / set_id).glob("*.json")))
        out = "handed out" if course.release(set_id).is_file() else "not handed out yet"
        self.state.value = said(
            f"{course.name}: {len(course.roster)} students, term {course.term}. "
            f"Set {set_id}: {out}, {handed_in} handed in, {marked} marked."
        )
