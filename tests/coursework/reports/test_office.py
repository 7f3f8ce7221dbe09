"""Tables for the office, as spreadsheets of each country read them. The rows are invented."""

import csv
import io

import openpyxl
import pytest
from coursework.care.erasing import still_named
from coursework.classes.course import new_course, open_course
from coursework.csv_sheets import unguarded
from coursework.errors import CourseError
from coursework.reports.office import as_csv, as_xlsx, save_xlsx

ROWS = [["student number", "name", "q1 of 3", "notes"], ["004238", "Ada Quill", "2.5", "=1+1"]]


def test_in_germany_a_semicolon_parts_columns_and_a_comma_decimals():
    assert "student number;name;q1 of 3;notes\r\n" in as_csv(ROWS, "DE")
    assert ";2,5;" in as_csv(ROWS, "DE")
    assert ",2.5," in as_csv(ROWS, "GB") and ",2.5," in as_csv(ROWS)


@pytest.mark.parametrize("number", ["004238", "4E21", "123456789012345", "3-4", "01/02/2026"])
def test_a_number_that_a_spreadsheet_would_change_is_written_as_text_and_read_back(number):
    """Leading zeros, powers of ten, more figures than it keeps, and dates."""
    text = as_csv([["student number"], [number]])
    cell = list(csv.reader(io.StringIO(text)))[1][0]

    assert f'="{number}"' == cell
    assert number == unguarded(cell)


def test_in_the_workbook_points_are_numbers_and_all_else_is_text():
    """Read back by the library that wrote it: no cell is a formula, zeros stay."""
    sheet = openpyxl.load_workbook(io.BytesIO(as_xlsx(ROWS, "04-buy-enough"))).active
    cells = [(one.value, one.data_type) for one in sheet[2]]

    assert [("004238", "s"), ("Ada Quill", "s"), (2.5, "n"), ("=1+1", "s")] == cells
    assert "@" == sheet["A2"].number_format


def test_a_student_named_in_a_workbook_is_found_when_they_are_erased(tmp_path):
    """Its text is packed: a search of the bytes alone would miss it."""
    course = new_course(tmp_path / "class", "Class", "demo", {"BH-1": "Bram Oakes"})
    file = save_xlsx(course.reports / "04.csv", ROWS, "04")

    assert ["reports/04.xlsx"] == still_named(course, "004238")
    assert b"004238" not in file.read_bytes()


@pytest.mark.parametrize("written", ['"Germany"', '"XX"', "49"])
def test_an_unknown_country_is_refused_with_what_to_write(tmp_path, written):
    folder = new_course(tmp_path / "class", "Class", "demo", {"BH-1": "Ada"}).folder
    file = folder / "course.toml"
    file.write_text(file.read_text().replace('# country = "GB"', f"country = {written}"))
    with pytest.raises(CourseError, match="country: write the two letters"):
        open_course(folder)


def test_the_country_of_the_course_file_is_the_classs(tmp_path):
    folder = new_course(tmp_path / "class", "Class", "demo", {"BH-1": "Ada"}).folder
    file = folder / "course.toml"
    file.write_text(file.read_text().replace('# country = "GB"', 'country = "FR"'))

    assert "FR" == open_course(folder).country
