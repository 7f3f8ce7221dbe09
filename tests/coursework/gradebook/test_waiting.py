"""Which answers a person reads, in which order, and what still waits. All of it is invented."""

from dataclasses import replace

import pytest
from coursework.decisions.holding import holding
from coursework.decisions.kinds import Decision
from coursework.gradebook.waiting import answers_in, by_question, remarks_on, still_open
from coursework.records.record import HumanMark

from tests.helpers.records import SET, record, verdict, written

ADA, BRAM, CHIDI = "BH-1", "BH-2", "BH-3"
NOBODY = holding([])


@pytest.fixture(name="records")
def three_hand_ins():
    """Each with an answer that the key judged and two that a person reads; the last ones first."""
    return [
        record(who, verdict("q1"), human=[written("q10"), written("q9")])
        for who in (CHIDI, BRAM, ADA)
    ]


def apart(kind, **about):
    return holding([Decision(kind, "chef", "2026-10-05T09:00:00Z", set_id=SET, **about)])


def test_a_person_reads_question_by_question_and_student_by_student(records):
    """What the key judged is not among them; q9 comes before q10."""
    found = answers_in(records, SET, {}, NOBODY)

    assert [(question, who) for question in ("q9", "q10") for who in (ADA, BRAM, CHIDI)] == [
        (one.question, one.student) for one in found
    ]
    assert [3, 3] == [len(those) for those in by_question(found).values()]


@pytest.mark.parametrize(
    "holds",
    [
        apart("excused", student=BRAM),
        apart("on paper", student=BRAM, points=12.0, out_of=20.0),
    ],
    ids=["excused", "on paper"],
)
def test_nobody_reads_the_file_of_whom_it_does_not_count_for(records, holds):
    """Bram's mark does not come from his file: two of three wait."""
    found = answers_in(records, SET, {}, holds)

    assert {ADA, CHIDI} == {one.student for one in found}


def test_what_has_no_points_yet_is_still_open(records):
    """Six answers, one with 2.5 points and one with none of its four, which are points too."""
    given = {(ADA, "q9"): HumanMark(2.5), (BRAM, "q9"): HumanMark(0.0)}

    assert 4 == still_open(answers_in(records, SET, given, NOBODY))


def test_remarks_come_with_the_most_used_first_and_each_once(records):
    given = {
        (ADA, "q9"): HumanMark(2.0, "Say which scale."),
        (BRAM, "q9"): HumanMark(3.0, "Show the sum."),
        (CHIDI, "q9"): HumanMark(1.0, "Show the sum."),
    }

    assert ["Show the sum.", "Say which scale."] == remarks_on(
        answers_in(records, SET, given, NOBODY)
    )


def test_an_answer_brings_its_points_and_its_remark(records):
    given = {(ADA, "q9"): HumanMark(2.5, "Well reasoned.")}
    [read] = [one for one in answers_in(records, SET, given, NOBODY) if one.points is not None]

    assert replace(read, points=None, remark="") == replace(
        next(one for one in answers_in(records, SET, {}, NOBODY) if one.question == "q9"),
        student=ADA,
    )
    assert (ADA, "q9", 2.5, "Well reasoned.") == (
        read.student, read.question, read.points, read.remark,
    )  # fmt: skip
