"""Points of a record added up, its questions in order, and what is kept beside it."""

import dataclasses
import json

import pytest
from coursework.classes.course import new_course
from coursework.records.copies import fingerprint
from coursework.records.photos import photos_of
from coursework.records.points import HumanMark, earned, heading_of, in_order, total
from coursework.records.reading import answer_to, marked_bytes, marked_students
from coursework.records.record import Answered, Written

from tests.helpers.records import ROSTER, SET, leave, record, verdict, written


@pytest.fixture
def course(tmp_path):
    return new_course(tmp_path / "class", "Brackwater House (invented)", "demo", ROSTER)


def test_what_is_open_counts_neither_for_nor_against():
    """By hand: 1.2 of 3 points are marked, 4 more wait; 1.2 / 3 is 0.4."""
    mine = record("BH-1", verdict("q2", "slip", 1.2), human=[written("q10")])
    found = total(earned(mine, {}))

    assert (1.2, 3, 7, ("q10",)) == (found.points, found.marked, found.out_of, found.open)
    assert 0.4 == found.share


def test_nothing_marked_has_no_share():
    assert total(earned(record("BH-1", human=[written()]), {})).share is None


def test_what_a_person_gave_counts_before_what_marking_gave():
    mine = record("BH-1", verdict("q1", "wrong", 0.0))
    cells = earned(mine, {("BH-1", "q1"): HumanMark(2.5, " Read it again. ")})

    assert (2.5, "Read it again.") == (cells["q1"].points, cells["q1"].comment)


def test_question_2_stands_before_question_10():
    assert ["q1", "q2", "q10"] == sorted(["q10", "q2", "q1"], key=in_order)


@pytest.mark.parametrize(("asked", "heading"), [
    ("## 1. Celeriac to buy (3 points)\n\nHow much?", ("1. Celeriac to buy", "\n\nHow much?")),
    ("No heading.", ("Question q1", "No heading.")),
])  # fmt: skip
def test_a_heading_is_said_without_its_points(asked, heading):
    assert heading == heading_of(asked, "q1")


def test_kinds_of_question_are_told_by_a_field_and_nothing_changes_one():
    """What a person reads, and what a key judges."""
    assert (False, True) == (Answered.read_by_a_person, Written.read_by_a_person)
    for each in (verdict("q1"), written(), record("BH-1"), total({})):
        with pytest.raises(dataclasses.FrozenInstanceError):
            setattr(each, dataclasses.fields(each)[0].name, None)


def test_the_same_answers_are_known_again_by_their_bytes():
    """Blanks aside; two filled in are too few to say anything."""
    mine = {"q1-answer": "4 kg", "q2-answer": " 5  nets ", "q3-answer": "$3", "mine": "x"}
    other = mine | {"q2-answer": "5 nets", "mine": "y"}

    assert fingerprint(mine) == fingerprint(other) != fingerprint(mine | {"q1-answer": "4.1 kg"})
    assert 3 == fingerprint(mine).filled
    assert fingerprint(mine | {"q3-answer": ""}) is None


def test_a_marked_hand_in_is_known_by_its_bytes_and_its_answers(course):
    assert "" == marked_bytes(course, SET, "BH-1")
    assert answer_to(course, SET, "BH-1", "q1") is None

    leave(course, record("BH-1", verdict("q1", answer="4.2 kg")))

    assert "0" * 64 == marked_bytes(course, SET, "BH-1")
    assert {"BH-1"} == marked_students(course, SET)
    assert "4.2 kg" == answer_to(course, SET, "BH-1", "q1")


def test_photos_of_a_copy_that_is_gone_or_broken_are_none(course):
    """And those of a whole one are pictures for a page; what is no base64 is left out."""
    mine = record("BH-1", photos=("q1", "q2"))
    copy = course.autograded(SET, "BH-1")

    assert {} == photos_of(course, mine)

    def cell(question, text):
        return {"id": f"{question}-photo", "outputs": [{"data": {"image/jpeg": text}}]}

    copy.parent.mkdir(parents=True)
    copy.write_text(json.dumps({"cells": [cell("q1", "/9j/4AA="), cell("q2", '"><script>')]}))

    assert {"q1": "data:image/jpeg;base64,/9j/4AA="} == photos_of(course, mine)

    copy.write_text("{")

    assert {} == photos_of(course, mine)
