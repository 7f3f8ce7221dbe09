"""A roster in OneRoster's users.csv. Persons are invented; fields are those of the standard."""

import zipfile

import pytest
from coursework.classes.oneroster import read_any_roster
from coursework.errors import CourseError
from openpyxl import Workbook

USERS = (
    "status,sourcedId,role,familyName,givenName,identifier,username\r\n"
    ",u1,student,Quill,Ada,004238,aquill\r\n"
    ",u2,teacher,Pike,Ewan,,epike\r\n"
    "tobedeleted,u3,student,Gone,Long,1,lgone\r\n"
    ",u4,student,Ferny,Zoë,,zferny\r\n"
)
EXPECTED = {"004238": "Ada Quill", "ZFERNY": "Zoë Ferny"}


def test_students_are_read_by_the_number_that_the_college_prints(tmp_path):
    """Columns in any order; no teacher, and nobody who left."""
    file = tmp_path / "users.csv"
    file.write_text(USERS, "utf-8-sig")

    assert EXPECTED == read_any_roster(file)


def test_the_zip_as_it_is_given_out_is_read_too(tmp_path):
    with zipfile.ZipFile(tmp_path / "all.zip", "w") as packed:
        packed.writestr("export/users.csv", USERS)

    assert EXPECTED == read_any_roster(tmp_path / "all.zip")


def test_our_own_roster_is_read_as_before(tmp_path):
    file = tmp_path / "roster.csv"
    file.write_text("student_number,name\nBH-1,Ada Quill\n")

    assert {"BH-1": "Ada Quill"} == read_any_roster(file)


@pytest.mark.parametrize(("text", "said"), [
    ("sourcedId,familyName\nu1,Quill\n", "the column givenName is missing"),
    ("sourcedId,familyName,givenName\n", "no line for a student"),
    ("sourcedId,familyName,givenName\nu1,Q,A\nu1,P,B\n", "line 3: U1 stands twice"),
])  # fmt: skip
def test_what_is_missing_or_odd_is_named(tmp_path, text, said):
    file = tmp_path / "users.csv"
    file.write_text(text)
    with pytest.raises(CourseError, match=said):
        read_any_roster(file)


def test_a_zip_without_users_is_refused(tmp_path):
    with zipfile.ZipFile(tmp_path / "all.zip", "w") as packed:
        packed.writestr("orgs.csv", "")
    with pytest.raises(CourseError, match=r"no users\.csv in it"):
        read_any_roster(tmp_path / "all.zip")


@pytest.mark.parametrize("text", [
    "Student ID;Full name\nBH-1;Ada Quill\n",
    "Class of 24, term 1\nFamily name,Given name,Student number\nQuill,Ada,bh-1\n",
    "Line\tstudentNumber\tLast Name\tFirst Name\n1\tBH-1\tQuill\tAda\n",
])  # fmt: skip
@pytest.mark.parametrize("code", ["utf-8", "utf-16", "cp1252"])
def test_a_roster_is_read_however_its_columns_are_headed(tmp_path, text, code):
    file = tmp_path / "students.csv"
    file.write_bytes(text.encode(code))

    assert {"BH-1": "Ada Quill"} == read_any_roster(file)


def test_a_roster_in_an_office_file_is_read(tmp_path):
    book = Workbook()
    for row in (["Student ID", "Name"], ["004238", "Ada Quill"]):
        book.active.append(row)
    book.save(tmp_path / "students.xlsx")

    assert {"004238": "Ada Quill"} == read_any_roster(tmp_path / "students.xlsx")
