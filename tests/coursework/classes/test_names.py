"""Names with any letters, from the course file to a set's first cell. The class is invented."""

import json

import pytest
from coursework.classes.course import new_course, open_course
from coursework.classes.names import name_for_files, typed_name, typed_term
from coursework.classes.roster import read_roster
from coursework.errors import CourseError
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from kitchenmath.practice import given, steps

TERMS = ["2026/27", "Frühjahr", "Frühjahr 2026/27", "秋学期", "फ़सल", "осень 26"]


@pytest.mark.parametrize("term", TERMS)
def test_a_term_of_any_letters_comes_back_from_the_course_file(tmp_path, term):
    course = new_course(tmp_path / "class", "Köche “früh” / Cooks", term, {"BH-1": "Zoë Čapek"})

    assert (typed_term(term), "Köche “früh” / Cooks") == (course.term, course.name)
    assert course == open_course(course.folder)


@pytest.mark.parametrize("name", ['The "best" of 26/27', "back\\slash", "Chef's class"])
def test_quotes_and_backslashes_of_a_name_are_kept(tmp_path, name):
    assert name == new_course(tmp_path / "class", name, "demo", {"BH-1": "Ada"}).name


def test_a_set_of_such_a_term_says_it_in_its_first_cell_and_draws_by_it(tmp_path):
    """The key still earns full marks with the numbers that this term gives."""
    raw = key_notebook("04-buy-enough")
    notebook = json.loads(released(raw, "Frühjahr 2026/27"))
    cells = {cell.get("id"): "".join(cell["source"]) for cell in notebook["cells"]}

    assert 'term="Frühjahr 2026/27"' in cells["open-set"]
    assert "Frühjahr 2026/27" == load_key(raw, "Frühjahr 2026/27").sheet.term


def test_two_ways_to_write_one_letter_draw_the_same_numbers():
    """Unicode's composed and decomposed form, as keyboards of two systems make them."""
    choice = steps(1.2, 3, 0.2, "kg", "needed")
    drawn = [given(typed_term(term), "BH-1", "q1", need=choice)
             for term in ("Fr\u00fchjahr", "Fru\u0308hjahr")]  # fmt: skip

    assert drawn[0] == drawn[1]


@pytest.mark.parametrize("odd", ["bell\a", "nul\x00", "escape\x1b[31m", "turned\u202eadA"])
def test_a_character_that_nobody_sees_is_refused_with_its_number(odd):
    with pytest.raises(CourseError, match=r"name: .*control character .*\(U\+[0-9A-F]{4}"):
        typed_name(odd)


@pytest.mark.parametrize("term", ["", "/27", "a|b", 'a"b', "a\\b", "a{b}", "x" * 41])
def test_a_term_that_a_set_could_not_carry_is_refused(term):
    with pytest.raises(CourseError, match="term: "):
        typed_term(term)


def test_a_roster_names_the_line_with_a_control_character(tmp_path):
    file = tmp_path / "roster.csv"
    file.write_text("student_number,name\nBH-1,Ada Quill\nBH-2,Bram\aOakes\n", encoding="utf-8")
    with pytest.raises(CourseError, match=r"line 3: name: .*control character"):
        read_roster(file)


@pytest.mark.parametrize(
    ("name", "folder"),
    [("Frühjahr 2026/27", "Frühjahr 2026-27"), ("../up", "-up"), ("what?", "what-"),
     ("con", "con-"), ("ends. ", "ends")],
)  # fmt: skip
def test_a_folder_has_a_name_that_every_system_takes(name, folder):
    """Windows refuses < > : " / \\ | ? *, a dot or blank at the end, and names of devices.

    Source: "Naming Files, Paths, and Namespaces", the Windows documentation; from memory.
    """
    assert folder == name_for_files(name)


def test_a_name_of_which_no_folder_can_be_made_is_refused():
    with pytest.raises(CourseError, match="needs a letter or a figure"):
        name_for_files("..")
