"""Tables as spreadsheets of all countries and programs save them. All data are invented."""

import io

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import Workbook

from kitchenmath.cuts import judge
from kitchenmath.cuts.tray import measured_mm
from kitchenmath.errors import Unreadable
from kitchenmath.safety import read_log
from kitchenmath.service import read_tasks
from kitchenmath.typed.log_lines import read_file
from kitchenmath.typed.numbers import typed_number
from kitchenmath.typed.opened import as_text, decoded
from kitchenmath.typed.spreadsheet import plain_head, read_spreadsheet
from kitchenmath.units import Q_

COLUMNS = {"student_number": ("student number", "student id"), "name": ("name",), "mark": ("mark",)}


def table(raw, needed=("student_number",)):
    return read_spreadsheet(("marks.csv", raw), COLUMNS, needed, "student_number,mark")


def office_file(rows):
    book = Workbook()
    for row in rows:
        book.active.append(row)
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()


@pytest.mark.parametrize("between", [",", ";", "\t"])
@pytest.mark.parametrize("code", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "cp1252"])
@pytest.mark.parametrize("ends", ["\n", "\r\n"])
@pytest.mark.parametrize("title", [[], ["Knife skills, week 3; hall B"], ["", "sep=;", ""]])
def test_a_table_is_one_table_however_it_was_saved(between, code, ends, title):
    """Signs between columns, codes, ends of lines, and what stands above the heads."""
    lines = [*title, "Student ID|Name|Mark", 'BH-1|Zoë Ferny|"12,5"', "||", "BH-2|Søren|7"]
    raw = ends.join(one.replace("|", between) for one in lines).encode(code)
    found = table(raw)
    first = len(title) + 2

    assert found.rows == (
        (first, {"student_number": "BH-1", "name": "Zoë Ferny", "mark": "12,5"}),
        (first + 2, {"student_number": "BH-2", "name": "Søren", "mark": "7"}),
    )
    assert (between != ",", first - 1) == (found.decimal_comma, found.head_line)


def test_an_office_file_is_read_as_the_csv_that_it_would_be_saved_as():
    """Numbers without a nought behind the point; an empty cell is empty."""
    raw = office_file([["Knife skills"], ["Student ID", "Name", "Mark"],
                       ["BH-1", "Zoë", 12.5], [4238, None, 7.0]])  # fmt: skip

    assert [
        {"student_number": "BH-1", "name": "Zoë", "mark": "12.5"},
        {"student_number": "4238", "name": "", "mark": "7"},
    ] == [cells for _, cells in table(raw).rows]


def test_lines_of_two_codes_are_both_read():
    """As where one file was pasted below another."""
    assert "Zoë,Søren\nZoë,Søren\n" == decoded(2 * "Zoë,Søren\n".encode()).replace("", "")
    assert "Zoë\nSøren\n" == decoded("Zoë\n".encode() + "Søren\n".encode("cp1252"))


@pytest.mark.parametrize(("head", "plain"), [
    ("Student_Number", "student number"), ("studentID", "student id"),
    (" STUDENT-ID ", "student id"),
    ("Core (°C)", "core c"), ("Time/min", "time min"), ("“Name”", "name"),
])  # fmt: skip
def test_a_column_is_known_by_its_words(head, plain):
    assert plain == plain_head(head)


def test_of_two_columns_that_would_do_the_likeliest_is_taken():
    """“Student number” before “Student ID”, wherever they stand."""
    found = table(b"Student ID,Student number\nu17,BH-1\n")

    assert ("student id", "student_number") == found.heads
    assert "BH-1" == found.rows[0][1]["student_number"]


@pytest.mark.parametrize(("raw", "said"), [
    (b"", "It is empty"),
    (b"a;b\n1;2", "Line 1 is “a;b”"),
    (b"\n\nKnives\n1,2", "Line 3 is “Knives”"),
    (b"PK\x03\x04broken", "save it as CSV"),
    (b"\xff\xd8\xff\xe0\0\x10JFIF\0", "is no text"),
    (b"x" * 20_000_001, "too much for a table"),
])  # fmt: skip
def test_what_is_no_such_table_is_refused_with_what_was_found(raw, said):
    with pytest.raises(Unreadable, match=f"^marks.csv .*{said}"):
        table(raw)


@given(st.binary(max_size=300))
def test_whatever_is_in_a_file_is_a_table_or_refused_in_words(raw):
    """Never another error."""
    for read in (table, lambda raw: read_file("log.csv", raw), lambda raw: as_text("a.csv", raw)):
        try:
            read(raw)
        except ValueError as error:
            assert str(error)


@pytest.mark.parametrize(("typed", "decimal_comma", "number"), [
    ("2.5", False, 2.5), ("2,5", False, 2.5), (" +3 ", False, 3), (",5", False, 0.5),
    ("1,250", True, 1.25), ("0,125", False, 0.125), ("1250", False, 1250), ("-0", False, 0),
])  # fmt: skip
def test_a_number_has_a_point_or_a_comma(typed, decimal_comma, number):
    assert number == typed_number(typed, decimal_comma)


@pytest.mark.parametrize("typed", ["", "1,250", "nan", "inf", "1e3", "٣", "1.2.3", "12 %", "1 000"])
def test_a_number_is_never_guessed(typed):
    with pytest.raises(Unreadable, match=r"is no number|two ways"):
        typed_number(typed)


def saved(folder, text, code="utf-16"):
    file = folder / "file.csv"
    file.write_bytes(text.encode(code))
    return file


def test_trays_plans_and_logs_go_through_the_one_reader(tmp_path):
    """A title above the heads, heads in other words, UTF-16, decimal commas."""
    tray = saved(tmp_path, "Brunoise\nPiece;Edge\n1;3,1\n2;2,9 mm\n")

    assert [3.1, 2.9] == pytest.approx(measured_mm(tray, "edge", "mm"))
    assert 2 == judge(tray, "brunoise", Q_(0.5, "mm"), column="Edge", unit="mm").count

    plan = saved(tmp_path, "Service\nTask;Minutes;Cooks\nfoam;2,5;1\n")

    assert [("foam", 2.5)] == [(one.name, one.duration.m) for one in read_tasks(plan)]

    log = saved(tmp_path, "Pot 3\nElapsed time (h);Core (°C)\n0;57,5\n2;20,5\n")
    times, temperatures = read_log(log)

    assert ([0, 2], [57.5, 20.5]) == (list(times.m), list(temperatures.m))


def test_an_office_file_is_a_log_too(tmp_path):
    file = tmp_path / "pot.xlsx"
    file.write_bytes(office_file([["time_min", "temperature_F"], [0, 135], [120, 70.5]]))

    assert [135, 70.5] == list(read_log(file)[1].magnitude)


def test_a_probe_that_writes_the_date_is_read_past_midnight(tmp_path):
    """From 23:50 to 0:10 are 20 min."""
    log = read_file("pot.csv", "Date/Time,Temp (C)\n2026-10-05 23:50:00,57\n2026-10-06 00:10:00,40")

    assert ("23:50", [0, 20]) == (log.began, [time.to("min").m for time, _ in log.pairs])


def test_two_columns_that_may_be_meant_are_asked_about():
    with pytest.raises(Unreadable, match="needs one temperature column, and time, core temp, oven"):
        read_file("pot.csv", "time,core temp,oven temp\n0,5,180\n")
