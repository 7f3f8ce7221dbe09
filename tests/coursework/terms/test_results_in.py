"""Results of another program in the OneRoster form. The class, its marks and ids are invented.

1EdTech OneRoster 1.1, CSV binding: the columns are taken by name, whatever their order.
"""

import zipfile
from datetime import UTC, datetime

import pytest
from coursework.classes.course import open_course
from coursework.command import main
from coursework.desk import desk as desk_module
from coursework.desk.desk import Desk
from coursework.errors import CourseError
from coursework.reports.exchange import export_exchange
from coursework.terms.practical import practical_marks
from coursework.terms.results_in import take_results

from tests.helpers.desk import press
from tests.helpers.term import PRACTICAL, stated

ITEMS = """title,sourcedId,resultValueMax,resultValueMin
Knife  Skills,item-7,100,0
Service,item-8,10,
Hygiene talk,item-9,5,0
"""
USERS = """sourcedId,identifier
guid-1,bh-1
guid-2,BH-2
guid-3,BH-3
"""
RESULTS = """lineItemSourcedId,studentSourcedId,scoreStatus,score
item-7,guid-1,fully graded,75
item-7,guid-2,not submitted,
item-7,guid-9,fully graded,50
item-8,guid-1,fully graded,8.5
item-8,guid-2,exempt,3
item-8,guid-3,fully graded,11
item-9,guid-1,fully graded,5
"""


def packed(folder, **files):
    file = folder / "results.zip"
    with zipfile.ZipFile(file, "w") as made:
        for name, text in files.items():
            made.writestr(f"{name}.csv", text)
    return file


@pytest.fixture
def stating(course):
    """A class of three with knife skills out of 20 and service out of 10."""
    return stated(course, PRACTICAL)


def test_results_become_practical_marks_and_the_rest_is_named(stating, tmp_path):
    """By hand: 75 of 100 is 15 of 20. Service: 8.5; exempt and 11 of 10 stay open."""
    file = packed(tmp_path, lineItems=ITEMS, results=RESULTS, users=USERS)
    taken = take_results(stating, file)

    assert {("BH-1", "knife skills"): 15, ("BH-1", "service"): 8.5} == (
        practical_marks(stating).marks
    )
    assert {"knife skills": 1, "service": 1} == taken.given

    odd = " ".join(taken.odd)

    assert "“Knife  Skills” is out of 100 there: each result is converted to points out of" in odd
    assert "“Hygiene talk” is no practical mark of this class, so it is left out." in odd
    assert "results.csv, line 4: “guid-9” is not on the roster" in odd
    assert "line 6: BH-2 is exempt there" in odd
    assert "line 7: “11” is no number from 0 to 10" in odd


def test_marks_that_were_there_stay_and_a_result_that_stands_twice_is_not_used(stating, tmp_path):
    take_results(stating, packed(tmp_path, lineItems=ITEMS, results=RESULTS, users=USERS))
    twice = RESULTS.splitlines()[0] + "\nitem-8,BH-2,fully graded,4\n" * 2
    taken = take_results(stating, packed(tmp_path, lineItems=ITEMS, results=twice))

    assert 8.5 == practical_marks(stating).marks["BH-1", "service"]
    assert ({}, True) == (taken.given, "there are 2 results" in taken.odd[-1])


def test_what_the_kit_exports_it_takes_in_again(stating, tmp_path):
    """There and back, practical marks only: sets are counted from their hand-ins."""
    take_results(stating, packed(tmp_path, lineItems=ITEMS, results=RESULTS, users=USERS))
    before = practical_marks(stating).marks
    file = export_exchange(stating)
    (stating.folder / "practical.csv").unlink()

    assert {"knife skills": 1, "service": 1} == take_results(stating, file).given
    assert before == practical_marks(stating).marks


@pytest.mark.parametrize(("files", "words"), [
    ({"results": RESULTS}, "there is no lineItems.csv in it"),
    ({"lineItems": "sourcedId,title\n"}, "the column resultValueMax is missing"),
    ({"lineItems": ITEMS, "results": "score\n3\n"}, "the column lineItemSourcedId, studentSourc"),
    ({"lineItems": "title,sourcedId,resultValueMax\nHygiene,9,5\n", "results": RESULTS},
     "There are: knife skills, service. “Hygiene” is no practical mark"),
])  # fmt: skip
def test_what_is_missing_is_named(stating, tmp_path, files, words):
    with pytest.raises(CourseError, match=words):
        take_results(stating, packed(tmp_path, **files))


def test_another_file_is_refused(stating, tmp_path):
    file = tmp_path / "results.zip"
    file.write_text("no zip")
    with pytest.raises(CourseError, match="is no zip of OneRoster files"):
        take_results(stating, file)


def test_the_desk_and_the_command_take_them(stating, tmp_path, monkeypatch, capsys):
    file = packed(tmp_path, lineItems=ITEMS, results=RESULTS, users=USERS)
    monkeypatch.setattr(desk_module, "CLASSES", stating.folder.parent)
    panel = Desk().term()

    assert "Choose the zip" in press(panel, "Take the results in")

    panel.results.value = [{"name": "results.zip", "content": file.read_bytes(), "size": 1,
                            "type": "", "last_modified": datetime.now(UTC)}]  # fmt: skip

    assert "knife skills: 1 mark is in." in press(panel, "Take the results in")
    assert () == panel.results.value

    main(["oneroster", "--class", str(stating.folder), "--take", str(file)])

    assert "service: 1 mark is in." in capsys.readouterr().out
    assert open_course(stating.folder).roster
