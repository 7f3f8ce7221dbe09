"""The desk of a class whose term is played: its panels, and what its invented students hand in."""

import json
import random
import time
import zipfile
from dataclasses import dataclass

from coursework import demo
from coursework.deciding import FOR_ALL
from coursework.desk.desk import Desk
from coursework.sets.class_keys import class_key
from coursework.sets.hand_out import ASSIGNMENTS
from coursework.sets.keys import load_key

from tests.helpers.desk import press

SET, OTHER_SET = "04-buy-enough", "05-season-and-brine"
TERM = "autumn-26"
SURNAMES = ("Quill", "Oakes", "Morrow", "Pane", "Salt", "Brook", "Thatch", "Reed", "Marl", "Fisk")
FIRST = ("Ada", "Bram", "Chidi", "Dolores", "Emre", "Fenna", "Gwil", "Hana", "Idris", "Jolanta")


def people(count):
    """Student numbers that begin with noughts, and invented names, each once."""
    tens = ["", *"BCDEFGHIJKLMNOPQRSTUVWXYZ", *(f"{one}a" for one in "ABCDEFGHIJKLMNOP")]
    return {
        f"{4201 + at:06d}": f"{FIRST[at % 10]} {tens[at // 10]}{'. ' if at > 9 else ''}"
        f"{SURNAMES[(at + at // 10) % 10]}"
        for at in range(count)
    }


@dataclass(frozen=True)
class Played:
    """One step: what was pressed, what the desk said, and how long it took."""

    step: str
    pressed: str
    said: str
    seconds: float


class Term:
    """A class whose term is played step by step.

    Parameters
    ----------
    folder : Path
        Where the classes, the downloads and the home lie.
    students : int
        10 at least: so many have a part of their own.
    tell : callable
        Called with each `Played` as it comes.
    """

    def __init__(self, folder, students, tell):
        self.tell = tell
        self.folder, self.classes, self.mail = folder, folder / "classes", folder / "mail"
        self.roster = people(students)
        self.joiner = f"{4201 + students:06d}"
        self.late, self.ill, self.paper, self.sender, self.lost, self.twice, self.claimed = list(
            self.roster
        )[2:9]
        self.ada, self.erased = list(self.roster)[:2]
        self.rows, self.chance = [], random.Random(7)
        for one in (self.classes, self.mail):
            one.mkdir(parents=True)
        self.desk = Desk()
        self.steps, self.box, self.decide = self.desk.steps(), self.desk.unplaced(), (
            self.desk.decide())  # fmt: skip
        self.form, self.care, self.new = (
            self.desk.class_file(), self.desk.care(), self.desk.new())  # fmt: skip
        self.written, self.grid, self.book = (
            self.desk.written(), self.desk.practical(), self.desk.term())  # fmt: skip
        self.one, self.journal = self.desk.student(), self.desk.journal()

    @property
    def course(self):
        return self.desk.course

    def press(self, step, panel, button):
        """Press a button; keep what it said."""
        begin = time.perf_counter()
        said = press(panel, button)
        seconds = time.perf_counter() - begin
        row = Played(step, button, " ".join(said.split()).replace(str(self.folder), "…"), seconds)
        self.rows.append(row)
        self.tell(row)
        return said

    def decided(self, called, kind, student="", file="", why="", **boxes):
        """One decision: chosen, typed, looked at where it is for all, decided."""
        panel = self.decide
        panel.kind.value = kind
        panel.student.value, panel.file.value, panel.why.value = student, file, why
        for name, text in boxes.items():
            panel.boxes[name].value = text
        if kind in FOR_ALL:
            self.press(called, panel, "Look whose marks change")
        return self.press(called, panel, "Decide")

    def file_of(self, student, latest=True):
        """The SHA-256 of a student's file, as it stands in the desk's list of files."""
        name = self.course.roster[student]
        found = [sha for words, sha in self.decide.file.options if f", {name}," in words]
        return found[-1] if latest else found[0]

    def notebook(self, student, set_id=SET, typed=None):
        """A student's copy, filled in the invented way."""
        released = self.course.release(set_id) if set_id == SET else (
            ASSIGNMENTS / set_id / f"{set_id}.ipynb")  # fmt: skip
        book = json.loads(released.read_bytes())
        if set_id != SET:
            for cell in book["cells"]:
                if cell["id"] == "me":
                    cell["source"] = f'student = "{typed or student}"'
            return json.dumps(book).encode()
        if not hasattr(self, "sheet"):
            self.sheet = load_key(class_key(self.course, SET), TERM, tried=()).sheet
        way = demo.WAYS[self.chance.choice((0, 1, 1, 2))]
        answers = demo._answers(self.sheet, student, way, self.chance)
        wrote = demo._written(student, self.chance) or "Peeled thin, weighed twice."
        return demo._filled(book, typed or student, answers, wrote)

    def as_sent(self, student, raw, when, file="04-buy-enough.ipynb"):
        """A file as the platform's archive names it: the sender's folder, the time of sending."""
        name = f"{self.roster.get(student, 'Yara Holt')}_{student}/{file}"
        moment = time.strptime(when, "%Y-%m-%d %H:%M")
        return zipfile.ZipInfo(name, moment[:6]), raw

    def downloaded(self, name, files):
        """The platform's archive, as it lies among the downloads."""
        place = self.mail / name
        with zipfile.ZipFile(place, "w", zipfile.ZIP_DEFLATED) as packed:
            for info, raw in files:
                packed.writestr(info, raw)
        return place

    def take_in(self, step, place):
        self.steps.place.value = str(place)
        return self.press(step, self.steps, "Take in")
