"""Where to go back to for a skill: its lesson, and the drills with fresh numbers in it.

The table is `go_back.csv`, a line for each drill of a skill, the nearest one first. Whoever adds
a question with a new skill to a key adds a line there; a skill without one is said so on the page.
"""

import csv
import importlib
import re
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from coursework.skills.words import NO_DRILL

TABLE = Path(__file__).with_name("go_back.csv")


@dataclass(frozen=True)
class Place:
    """A drill and where it stands.

    Attributes
    ----------
    lesson : str
        The lesson's file: "04-buy-enough.ipynb".
    drills : str
        The module of `kitchenmath.drills` that holds it: "buying".
    name : str
        The drill's name there: "as purchased".
    """

    lesson: str
    drills: str
    name: str

    @property
    def drill(self):
        """The drill itself."""
        return importlib.import_module(f"kitchenmath.drills.{self.drills}").DRILLS[self.name]


def places(skill):
    """The drills for a skill, the nearest one first.

    Parameters
    ----------
    skill : str
        As a key names it.

    Returns
    -------
    tuple of Place
        Empty where the table does not name the skill.
    """
    return _table().get(skill, ())


def lesson_name(file):
    """A lesson's file as a student knows it: "04-buy-enough.ipynb" is lesson 4, “Buy enough”."""
    found = re.fullmatch(r"0*([0-9]+)-(.+)\.ipynb", file)
    if not found:
        return file
    return f"lesson {found[1]}, “{found[2].replace('-', ' ').capitalize()}”"


def no_place(skill):
    """What to do about a skill that the table does not name."""
    return NO_DRILL.format(skill=skill, table=TABLE.name)


@lru_cache(maxsize=1)
def _table():
    found = {}
    with TABLE.open(encoding="utf-8", newline="") as file:
        for line in csv.DictReader(file):
            place = Place(line["lesson"], line["drills"], line["drill"])
            found[line["skill"]] = (*found.get(line["skill"], ()), place)
    return found
