"""A library that draws other numbers from the same key marks nobody in silence.

The class, and what the newer library draws, are invented.
"""

import shutil
import subprocess
import sys

import pytest
from coursework.care.erasing import erase_student
from coursework.classes.course import open_course
from coursework.classes.course_edit import change_lines
from coursework.deciding import about_of, decide, looked_at
from coursework.desk.next_steps import class_state, in_words
from coursework.errors import CourseError
from coursework.gradebook.points import all_marks
from coursework.marking import mark_set as mark_set_module
from coursework.marking.another_key import what_numbers_change
from coursework.marking.mark_set import mark_set
from coursework.records.reading import usable_records
from coursework.sets import drawn_numbers
from coursework.sets.drawn_numbers import handed_out_numbers, other_numbers
from coursework.sets.hand_out import hand_out

import kitchenmath.practice.sheet as sheet_module
from kitchenmath.practice.own_numbers import given
from tests.helpers.browser import KIT, copy_kit
from tests.helpers.filled_in import SET
from tests.helpers.small_class import SMALL

SAID = "Nothing is marked, and no points are changed"


@pytest.fixture(scope="module")
def marked(small_class, tmp_path_factory):
    """Seven of 24 handed in, all of them marked with the library that the set went out with."""
    folder = tmp_path_factory.mktemp("marked") / "class"
    made = open_course(shutil.copytree(small_class.folder, folder))
    mark_set(made, SET)
    return folder


@pytest.fixture
def course(marked, tmp_path):
    return open_course(shutil.copytree(marked, tmp_path / "class"))


@pytest.fixture
def newer_library(monkeypatch):
    """From now on q1's numbers are drawn in another way; its digest is another one, as it is."""

    def other_way(term, student, question, **choices):
        again = "again" if question.endswith("/q1") else ""
        return given(term + again, student, question, **choices)

    monkeypatch.setattr(sheet_module, "given", other_way)
    for module in (drawn_numbers, mark_set_module):
        monkeypatch.setattr(module, "library", lambda: b"a newer library")


def take(course):
    about = about_of(course, "newer numbers", {"set": SET, "why": "agreed with the class"})
    return decide(course, "newer numbers", **about)


def test_what_the_class_was_asked_is_remembered_when_a_set_goes_out(course):
    """The numbers on record and those in the marked work have two sources: they say the same."""
    kept = handed_out_numbers(course, SET)
    records, _ = usable_records(course, SET)

    assert set(course.roster) == set(kept)
    assert set(SMALL) == {one.student for one in records}
    for record in records:
        for answered in record.answered:
            assert answered.given == kept[record.student][answered.question][0]


def test_with_the_same_library_nothing_is_asked(course):
    assert "" == other_numbers(course, SET)
    with pytest.raises(CourseError, match="the numbers that “04-buy-enough” went out with"):
        take(course)


def test_a_newer_library_changes_no_points_in_silence(course, newer_library):
    """Neither marking nor handing out again; the desk says it, and a look changes nothing."""
    marks = sorted(all_marks(course))
    with pytest.raises(CourseError, match=SAID):
        mark_set(course, SET)
    hand_out(course, SET)
    with pytest.raises(CourseError, match=SAID):
        mark_set(course, SET)
    said = "\n".join(in_words(class_state(course, {SET: "Buy enough"}), course.roster, 0))

    assert marks == sorted(all_marks(course))
    assert "Buy enough: the kit asks for other numbers" in said


def test_whose_numbers_would_change_is_said_by_name_and_what_is_shown_is_what_follows(
    course, newer_library
):
    other = what_numbers_change(course, SET)
    about = about_of(course, "newer numbers", {"set": SET, "why": ""})
    words = looked_at(course, "newer numbers", about)
    shown = {
        (student, one.question): one.points
        for student, those in other.moved.items()
        for one in those
        if one.points_differ
    }
    take(course)
    changed = mark_set(course, SET).changes

    assert "With the numbers that the kit asks for now, of 24 students on the roster:" in words
    assert all(f"{course.roster[one]} ({one})" in words for one in other.moved)
    assert {"q1"} == {one.question for those in other.moved.values() for one in those
                      if one.numbers_differ}  # fmt: skip
    assert shown == {(one.student, one.question): (one.before, one.after) for one in changed}
    assert shown
    assert "" == other_numbers(course, SET)


def test_taken_back_the_numbers_that_went_out_hold_again(course, newer_library):
    """Marking waits then, until the kit is the earlier one again or the newer is taken."""
    made = take(course)
    assert "" == other_numbers(course, SET)

    decide(course, "take back", line=made.number)
    with pytest.raises(CourseError, match=SAID):
        mark_set(course, SET)


def test_another_term_in_the_classs_file_is_held_back_too(course):
    """All numbers are drawn from the term: a slip of the pen there would mark everybody wrong."""
    change_lines(course, {(): {"term": "another-term"}})
    other = open_course(course.folder)

    assert other.term == "another-term"
    with pytest.raises(CourseError, match="asks 24 students for other numbers"):
        mark_set(other, SET)


def test_a_class_from_before_this_was_remembered_goes_by_its_marked_work(course, newer_library):
    """Its records say what the seven were asked, so a newer library does not pass there either."""
    for file in course.folder.glob("keys/*/*.numbers.json"):
        file.unlink()

    with pytest.raises(CourseError, match="asks 7 students for other numbers"):
        mark_set(course, SET)


def test_a_late_joiner_is_remembered_from_then_on(course):
    with (course.folder / "roster.csv").open("a", encoding="utf-8") as roster:
        roster.write("BH-1999,Yara Holt\n")
    later = open_course(course.folder)

    assert "BH-1999" not in handed_out_numbers(later, SET)
    mark_set(later, SET)
    assert "BH-1999" in handed_out_numbers(later, SET)


def test_who_is_erased_stands_in_no_list_of_numbers(course):
    erased = erase_student(course, SMALL[0])

    assert f"keys/{SET}: their numbers" in erased.gone
    assert () == erased.left
    assert SMALL[0] not in handed_out_numbers(course, SET)


def test_a_copied_kit_whose_drawing_was_changed_refuses_to_mark(course, tmp_path):
    """The file itself is changed there, in a process of its own: no test's patch stands between."""
    kit = tmp_path / "kit"
    copy_kit(kit)
    shutil.copy(KIT / "pyproject.toml", kit)
    file = kit / "kitchenmath" / "practice" / "own_numbers.py"
    text = file.read_text(encoding="utf-8")
    assert 1 == text.count("place % len(choice.values)")
    changed = text.replace("place % len(choice.values)", "(place + 1) % len(choice.values)")
    file.write_text(changed, encoding="utf-8")
    marks = sorted(all_marks(course))
    run = subprocess.run(
        [sys.executable, "instructor", "mark", SET, "--class", str(course.folder)],
        cwd=kit, capture_output=True, text=True, encoding="utf-8", stdin=subprocess.DEVNULL,
    )  # fmt: skip

    assert 0 != run.returncode
    assert "asks 24 students for other numbers" in run.stderr + run.stdout
    assert marks == sorted(all_marks(course))
