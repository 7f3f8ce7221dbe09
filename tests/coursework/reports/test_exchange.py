"""OneRoster files of an invented class: the fields of the 1EdTech standard 1.1, in its order."""

import csv
import io
import re
import shutil
import zipfile

import pytest
from coursework.classes.course import new_course, open_course
from coursework.classes.course_edit import change_lines
from coursework.classes.oneroster import read_any_roster
from coursework.gradebook.decision_list import add_decision
from coursework.reports.exchange import export_exchange, source_id
from coursework.sets.hand_out import hand_out
from coursework.terms.practical import enter_practicals, practical_marks
from coursework.terms.results_in import take_results

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


ODD_TERM = "Frühjahr 2026/27"
MARKS = {"fish/filleting à la crème": 20, "crème & mousse": 10, "Обслуживание": 5}
# From memory: what may stand in a GUID of OneRoster 1.1 is ASCII letters, figures and . - _ / @.
GUID = re.compile(r"[A-Za-z0-9._/@-]{1,255}")
IDS = ("sourcedId", "classSourcedId", "userSourcedId", "lineItemSourcedId", "studentSourcedId")


@pytest.fixture
def odd_class(tmp_path):
    """A term with a slash, and practical marks in letters and signs that no id may have."""
    course = new_course(tmp_path / "class", "Köche", ODD_TERM, ROSTER)
    for name, out_of in MARKS.items():
        course = change_lines(course, {("practical", name): {"out_of": out_of, "weight": 1}})
    enter_practicals(course, {("BH-1", name): at + 1.5 for at, name in enumerate(MARKS)})
    return course


def test_every_id_is_one_of_the_standards_and_without_a_slash(odd_class):
    file = export_exchange(odd_class)
    ids = [line[one] for name in ("users", "enrollments", "lineItems", "results")
           for line in table(file, name) for one in IDS if line.get(one)]  # fmt: skip

    assert 40 < len(ids)
    assert [] == [one for one in ids if not GUID.fullmatch(one) or "/" in one]


def test_names_that_look_alike_without_their_odd_signs_have_ids_of_their_own():
    names = ["a/b", "a b", "ä b", "服务", "厨房", "a" * 300, "a" * 301]

    assert len(names) == len({source_id(one) for one in names})
    assert "04-buy-enough-BH-1" == source_id("04-buy-enough", "BH-1")


def test_odd_names_travel_as_titles_and_everything_points_to_what_is_there(odd_class):
    """Each result points to a line item that is there, each enrolment to the one class."""
    file = export_exchange(odd_class)
    items = {line["sourcedId"]: line["title"] for line in table(file, "lineItems")}

    assert sorted(MARKS) == sorted(items.values())
    assert set(items) == {line["lineItemSourcedId"] for line in table(file, "results")}
    assert {source_id(ODD_TERM)} == {line["classSourcedId"] for line in table(file, "enrollments")}
    assert file.read_bytes() and items == {
        line["sourcedId"]: line["title"] for line in table(export_exchange(odd_class), "lineItems")
    }


def test_results_of_odd_names_come_back_as_they_went(odd_class, tmp_path):
    """There and back: into a class of the same file and roster that has no marks yet."""
    file = export_exchange(odd_class)
    empty = tmp_path / "again"
    empty.mkdir()
    for name in ("course.toml", "roster.csv"):
        shutil.copy2(odd_class.folder / name, empty / name)
    again = open_course(empty)
    take_results(again, file)

    assert {("BH-1", name): at + 1.5 for at, name in enumerate(MARKS)} == practical_marks(
        again
    ).marks
