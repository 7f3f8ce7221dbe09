"""One writer of tables, one guard: what a spreadsheet would run is text. Invented rows."""

import csv
import io

import pytest
from coursework.arriving.arrivals import Arrival, write_list
from coursework.classes.course import new_course, open_course
from coursework.csv_sheets import sheet_as_csv, unguarded

RUN_BY_SPREADSHEETS = ["=1+1", " =1+1", "＝1+1", "x;=1+1", "+1+1", "-1+1", "@A1", "\t=1+1", "a\n=1"]


@pytest.mark.parametrize("cell", RUN_BY_SPREADSHEETS)
def test_no_cell_begins_a_formula_and_it_comes_back_as_it_was(cell):
    back = next(csv.reader(io.StringIO(sheet_as_csv([[cell]]), newline="")))[0]

    assert cell != back
    assert cell == unguarded(back)


@pytest.mark.parametrize("cell", ["-2.5", "3", "BH-1001", "café", ""])
def test_numbers_and_plain_words_stay_as_they_are(cell):
    assert [cell] == next(csv.reader([sheet_as_csv([[cell, "x"]])]))[:1]


@pytest.mark.parametrize("name", RUN_BY_SPREADSHEETS[:4])
def test_the_list_of_arrivals_runs_nothing_that_a_student_named(tmp_path, name):
    course = new_course(tmp_path / "class", "Brackwater", "demo", {"BH-1": "Ada"})
    write_list(course, [Arrival("post", name)])
    text = (course.arrived / "list.csv").read_text("utf-8-sig")
    [row] = csv.DictReader(io.StringIO(text, newline=""))

    assert unguarded(row["file"]) == name != row["file"]


def test_a_roster_with_an_odd_name_is_read_as_it_was_given(tmp_path):
    roster = {"BH-1": "=Ada", "BH-2": "-Bram"}
    course = new_course(tmp_path / "class", "Brackwater", "demo", roster)

    assert roster == open_course(course.folder).roster
