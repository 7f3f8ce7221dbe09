"""Lines of the course file changed by a form. The class is invented."""

import tomllib

import pytest
from coursework.classes.course import new_course, open_course
from coursework.classes.course_edit import (
    add_student,
    change_lines,
    remove_student,
    rename_student,
)
from coursework.errors import CourseError

SET = ("sets", "04-buy-enough")


@pytest.fixture
def course(tmp_path):
    return new_course(tmp_path / "class", "Class", "demo", {"BH-1": "Ada Quill"})


def text(course):
    return (course.folder / "course.toml").read_text("utf-8")


def test_a_line_is_written_and_every_comment_stays(course):
    """Each line that began with # before is there after, in the same order."""
    before = [line for line in text(course).splitlines() if line.startswith("#")]
    changed = change_lines(course, {SET: {"due": "2026-10-05 09:00", "weight": 2}})

    assert before == [line for line in text(course).splitlines() if line.startswith("#")]
    assert 2 == changed.policy.rule(SET[1]).weight
    assert changed.policy == open_course(course.folder).policy


def test_a_line_is_taken_out_and_the_usual_holds_again(course):
    change_lines(course, {SET: {"due": "2026-10-05 09:00", "weight": 2}})
    change_lines(course, {SET: {"weight": None}})

    assert {"due": "2026-10-05 09:00"} == tomllib.loads(text(course))["sets"][SET[1]]
    assert 1 == open_course(course.folder).policy.rule(SET[1]).weight


def test_an_odd_line_changes_nothing_and_is_named_with_what_to_write(course):
    before = text(course)
    with pytest.raises(CourseError, match="due: write a date"):
        change_lines(course, {SET: {"due": "5.10.2026"}})

    assert before == text(course)


def test_a_top_line_goes_above_the_tables(course):
    assert "DE" == change_lines(course, {(): {"country": "DE"}}).country
    assert "" == change_lines(open_course(course.folder), {(): {"country": None}}).country


def test_taking_out_what_is_not_there_adds_no_table(course):
    before = text(course)
    change_lines(course, {("mark_book",): {"late_days": None}})

    assert before == text(course)


def test_the_earlier_course_file_is_kept(course):
    before = text(course)
    change_lines(course, {SET: {"weight": 2}})
    [kept] = (course.folder / "kept").glob("course.*.toml")

    assert before == kept.read_text("utf-8")


def test_a_student_is_added_renamed_and_taken_off(course):
    add_student(course, "bh-2", " Zoë   Ferny ")
    course = open_course(course.folder)
    assert {"BH-1": "Ada Quill", "BH-2": "Zoë Ferny"} == course.roster

    rename_student(course, "BH-2", "Zoë Ferny-Pike")
    assert "Zoë Ferny-Pike" == open_course(course.folder).roster["BH-2"]

    remove_student(open_course(course.folder), "BH-2")
    assert {"BH-1": "Ada Quill"} == open_course(course.folder).roster


@pytest.mark.parametrize(("number", "name", "said"), [
    ("BH-1", "Bram", "BH-1 is Ada Quill's already"),
    ("BH-2", "  ", "the student's name: nothing is typed"),
])  # fmt: skip
def test_who_cannot_be_added_is_told_why(course, number, name, said):
    with pytest.raises(CourseError, match=said):
        add_student(course, number, name)


def test_who_has_handed_in_is_not_taken_off_but_erased(course):
    file = course.submitted("04-buy-enough", "BH-1")
    file.parent.mkdir(parents=True)
    file.write_text("{}")
    with pytest.raises(CourseError, match="has handed in work"):
        remove_student(course, "BH-1")
