"""OneRoster files of an invented class: the fields of the 1EdTech standard 1.1, in its order."""

import csv
import io
import zipfile

import pytest
from coursework.classes.course import new_course
from coursework.classes.oneroster import read_any_roster
from coursework.gradebook.decision_list import add_decision
from coursework.reports.exchange import export_exchange
from coursework.sets.hand_out import hand_out

from tests.helpers.records import ROSTER, SET, leave, record, verdict, written


@pytest.fixture(scope="module")
def exported(tmp_path_factory):
    """Ada has a written answer open, Bram is excused, Chidi handed in nothing."""
    course = new_course(tmp_path_factory.mktemp("x") / "class", "Class", "demo", ROSTER)
    hand_out(course, SET)
    leave(course, record("BH-1", verdict("q1"), human=[written()]))
    add_decision(course, "excused", "chef", set_id=SET, student="BH-2")
    return export_exchange(course)


def table(exported, name):
    text = zipfile.ZipFile(exported).read(f"{name}.csv").decode()
    return list(csv.DictReader(io.StringIO(text, newline="")))


def test_the_roster_comes_back_as_it_was(exported):
    """There and back."""
    assert ROSTER == read_any_roster(exported)


def test_the_first_line_of_users_has_the_standards_fields_in_its_order(exported):
    first = zipfile.ZipFile(exported).read("users.csv").decode().partition("\r\n")[0]

    assert first.startswith("sourcedId,status,dateLastModified,enabledUser,orgSourcedIds,role,")


def test_each_mark_has_a_result_with_its_status(exported):
    """Open is partly graded, excused exempt, nothing not submitted: no 0 for any of them."""
    found = {one["studentSourcedId"]: one for one in table(exported, "results")}

    assert ("partially graded", "3") == (found["BH-1"]["scoreStatus"], found["BH-1"]["score"])
    assert ("exempt", "") == (found["BH-2"]["scoreStatus"], found["BH-2"]["score"])
    assert ("not submitted", "") == (found["BH-3"]["scoreStatus"], found["BH-3"]["score"])
    assert {SET} == {one["lineItemSourcedId"] for one in found.values()}


def test_the_manifest_says_which_files_are_there(exported):
    said = {one["propertyName"]: one["value"] for one in table(exported, "manifest")}
    names = {one.removesuffix(".csv") for one in zipfile.ZipFile(exported).namelist()}

    assert names - {"manifest"} == {
        key.removeprefix("file.") for key, value in said.items() if value == "bulk"
    }
    assert "1.1" == said["oneroster.version"]
