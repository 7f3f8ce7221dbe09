"""Each step that writes in a class holds it: beside another it is refused and writes nothing."""

import ast
from pathlib import Path

import coursework
import pytest
from coursework.arriving.inbox import Placing, place_many, set_aside_many
from coursework.arriving.placing_by_hand import place_by_hand
from coursework.arriving.take_in import take_in
from coursework.care.archive import back_up, export_student
from coursework.care.discarding import discard
from coursework.care.erasing import erase_student
from coursework.classes.course import new_course
from coursework.classes.course_edit import add_student, change_lines
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.deciding import decide
from coursework.errors import CourseError
from coursework.marking.mark_set import mark_set
from coursework.reports.term_marks import term_marks
from coursework.sets.hand_out import hand_out

from tests.helpers.records import ROSTER, SET

FILE = "0" * 64  # the SHA-256 of no file
# Each by the module that holds the class; where one holds it in two places, both.
STEPS = {
    "arriving/inbox": lambda course: place_many(course, [Placing(FILE, "BH-1", SET)]),
    "arriving/inbox, aside": lambda course: set_aside_many(course, [FILE]),
    "arriving/placing_by_hand": lambda course: place_by_hand(course, FILE, "BH-1", SET),
    "arriving/take_in": lambda course: take_in(course, Path(__file__).parent),
    "care/archive": lambda course: back_up(course, course.folder.parent),
    "care/archive, one student": lambda course: export_student(course, "BH-1"),
    "care/discarding": lambda course: discard(course, None, "Tried."),
    "care/erasing": lambda course: erase_student(course, "BH-1"),
    "classes/course_edit": lambda course: change_lines(course, {"mark_book": {"pass": 40}}),
    "classes/course_edit, roster": lambda course: add_student(course, "BH-9", "Yara Pike"),
    "deciding": lambda course: decide(course, "set aside", file=FILE),
    "marking/mark_set": lambda course: mark_set(course, SET, executor=object()),
    "reports/term_marks": lambda course: term_marks(course),
    "sets/hand_out": lambda course: hand_out(course, SET),
}


@pytest.fixture(name="course")
def a_class(tmp_path):
    """A class to which a set was handed out."""
    made = new_course(tmp_path / "class", "Brackwater House (invented)", "demo", ROSTER)
    made.release(SET).parent.mkdir(parents=True)
    made.release(SET).write_text("{}")
    return made


@pytest.mark.parametrize("step", STEPS)
def test_a_step_takes_the_lock_of_the_class_and_writes_nothing_beside_another(course, step):
    with one_at_a_time(course, "marking"):
        before = _files(course)
        with pytest.raises(CourseError, match="at work in this class: marking since"):
            STEPS[step](course)

    assert before == _files(course)


def test_every_module_that_holds_the_class_is_tried_here():
    """As often as it does; so a step whose lock is taken out, or a new one, is missed here."""
    held = []
    code = Path(coursework.__file__).parent
    for file in code.rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "one_at_a_time":
                held.append(file.relative_to(code).with_suffix("").as_posix())

    assert sorted(held) == sorted(step.partition(",")[0] for step in STEPS)


def _files(course):
    """What stands in the class and beside it, but for the lock itself."""
    found = course.folder.parent.rglob("*")
    return {file: file.read_bytes() for file in found if file.is_file() and file.name != ".at-work"}
