"""A roster in OneRoster's users.csv. Persons are invented; fields are those of the standard."""

import zipfile

import pytest
from coursework.classes.oneroster import read_any_roster
from coursework.errors import CourseError

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
    ("sourcedId,familyName,givenName\n", "there is no student in it"),
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
