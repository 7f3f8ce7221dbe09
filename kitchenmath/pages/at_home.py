"""The pages on a computer that has the kit: one file of answers, seen as a page or as a notebook.

What is typed on a set's page goes into the set's own notebook in assignments/, the file to hand
in. What was read and what to repeat lies in one small file beside the lessons.
"""

import contextlib
import json
import mimetypes
import os
import re
from pathlib import Path

from kitchenmath.errors import KitchenError
from kitchenmath.pages import writing
from kitchenmath.pages.form import Form
from kitchenmath.practice.set_file import asked_in, read_set

__all__ = ["Home"]

TYPES = {".js": "text/javascript", ".mjs": "text/javascript", ".ipynb": "application/json"}
NOTES = re.compile(r"(?:read|again)/[\w-]+")


class Home:
    """The lessons and sets in a kit's folder.

    Parameters
    ----------
    kit : Path
    """

    def __init__(self, kit):
        self.kit = Path(kit)
        self.lessons = self.kit / "lessons"
        self._notes = self.lessons / "my-progress.json"

    def page(self, name):
        """What stands at an address.

        Parameters
        ----------
        name : str
            "index.html", "lesson-04-buy-enough.html", "kitchen.css".

        Returns
        -------
        bytes or None
            None where there is nothing.
        str
            Its content type.
        """
        if name in ("", "index.html"):
            return self._start().encode(), "text/html"
        if name == writing.WORDS:
            return writing.words_page(version="").encode(), "text/html"
        kind, _, stem = name.removesuffix(".html").partition("-")
        file = self._file(kind, stem) if name.endswith(".html") else None
        if file:
            write = self._lesson if kind == "lesson" else self._set
            return write(file).encode(), "text/html"
        file = self._named().get(name)
        if not file:
            return None, ""
        return file.read_bytes(), TYPES.get(file.suffix) or mimetypes.guess_type(file.name)[0]

    def set_file(self, set_id):
        """Where a set's notebook lies.

        Parameters
        ----------
        set_id : str

        Returns
        -------
        Path
        """
        return self.kit / "assignments" / set_id / f"{set_id}.ipynb"

    def keep(self, set_id, raw, seen):
        """Write answers into a set's notebook; what somebody else put there meanwhile is kept.

        Parameters
        ----------
        set_id : str
        raw : bytes
            The notebook with the answers.
        seen : bytes
            The notebook as the page last knew it.

        Returns
        -------
        str
            What to say: where it is saved, and where other answers went.
        """
        file = self.set_file(set_id)
        words = f"Saved. Hand in this file: {file.relative_to(self.kit).as_posix()}"
        now = file.read_bytes() if file.is_file() else seen
        if _sources(now) != _sources(seen):
            earlier = _free(file.parent / "earlier" / file.name)
            earlier.parent.mkdir(exist_ok=True)
            earlier.write_bytes(now)
            words += f". What stood in it before is kept as {earlier.name}, in the folder earlier"
        if now != raw:
            _write(file, raw)
        return words

    def note(self, name, value):
        """Remember what was read, or what to repeat.

        Parameters
        ----------
        name : str
            "read/04-buy-enough", "again/04-buy-enough"
        value : str
        """
        if NOTES.fullmatch(name):
            _write(self._notes, json.dumps(self.notes() | {name: value}, indent=1).encode())

    def notes(self):
        """What is remembered.

        Returns
        -------
        dict of str to str
        """
        with contextlib.suppress(OSError, ValueError, TypeError):
            return dict(json.loads(self._notes.read_bytes()))
        return {}

    def _file(self, kind, stem):
        """The notebook of a lesson or a set, or None."""
        files = self.lessons.glob("*.ipynb") if kind == "lesson" else self._sets()
        return next((file for file in files if file.stem == stem), None)

    def _sets(self):
        folders = sorted((self.kit / "assignments").iterdir())
        return [file for file in (self.set_file(one.name) for one in folders) if file.is_file()]

    def _named(self):
        """What a page may ask for by its name, and no other file."""
        static = {file.name: file for file in writing.STATIC.iterdir()}
        return static | {f"notebooks/{file.name}": file for file in self._sets()}

    def _start(self):
        lessons = {file.stem: file.read_bytes() for file in sorted(self.lessons.glob("*.ipynb"))}
        sets = [file.read_bytes() for file in self._sets()]
        return writing.start_page(
            [writing.lesson_card(raw, name) for name, raw in lessons.items()],
            [writing.set_card(raw) for raw in sets],
            home={
                "notes": self.notes(),
                "sets": {file.stem: self._state(file.stem) for file in self._sets()},
            },
            version="",
        )

    def _state(self, set_id):
        """How far a set is; nothing of it is run."""
        file = self.set_file(set_id)
        named, _ = read_set(file.read_bytes())
        looks = [asked.look() for asked in asked_in(named)]
        return {
            "there": sum(look.can_be_used for look in looks),
            "student": self._typed(file).get("student", ""),
            "file": file.relative_to(self.kit).as_posix(),
        }

    def _lesson(self, file):
        return writing.lesson_page(file.read_bytes(), file.stem, home=self._home(file), version="")

    def _set(self, file):
        home = self._home(file) | {"typed": self._known(file)}
        return writing.set_page(file.read_bytes(), home=home, version="")

    def _home(self, file):
        return {"notebook": file.relative_to(self.kit).as_posix(), "notes": self.notes()}

    def _known(self, file):
        """What is typed in a set; the student number also from another set."""
        typed = self._typed(file)
        if not typed.get("student"):
            others = map(self._typed, self._sets())
            typed["student"] = next((one["student"] for one in others if one.get("student")), "")
        return typed

    def _typed(self, file):
        with contextlib.suppress(OSError, KitchenError):
            return Form(file.read_bytes()).typed()
        return {}


def _sources(raw):
    """The text of a notebook's cells: that another program saved it again changes no answer."""
    cells = json.loads(raw)["cells"]
    return [(cell.get("id"), "".join(cell["source"])) for cell in cells]


def _free(file):
    """A name beside a file that nothing has yet."""
    places = (file.with_name(f"{file.stem} {number}{file.suffix}") for number in range(1, 10_000))
    return next(place for place in places if not place.exists())


def _write(file, raw):
    """Write a file whole or not at all."""
    half = file.with_name(f".half-{file.name}")
    half.write_bytes(raw)
    os.replace(half, file)
