"""Decisions typed as commands, in a class with a real gradebook. The class is invented."""

import csv

import pytest
from coursework.classes.course import new_course
from coursework.command import main
from coursework.decisions.holding import live
from coursework.gradebook.decision_list import decisions_of
from coursework.reports.in_lines import marks_in_lines
from coursework.reports.report import report
from coursework.sets.hand_out import hand_out
from coursework.terms.term_book import term_book

from tests.helpers.records import SET, leave, record, verdict, written

ROSTER = {"BH-1": "Ada Quill", "BH-2": "Bram Oakes"}


@pytest.fixture(scope="module")
def ground(tmp_path_factory):
    """Two hand-ins: Ada has q1 and not q2, Bram the other way round."""
    made = new_course(tmp_path_factory.mktemp("class") / "autumn", "Brackwater", "demo", ROSTER)
    hand_out(made, SET)
    leave(
        made,
        record("BH-1", verdict("q1"), verdict("q2", "wrong", 0.0)),
        record("BH-2", verdict("q1", "slip", 1.0), verdict("q2")),
    )
    return made


@pytest.fixture
def course(ground):
    """The class; every test takes back what it decided."""
    yield ground
    for one in live(decisions_of(ground)):
        main(["take-back", str(one.number), "--class", str(ground.folder)])


def typed(course, *words):
    return main([*words, "--class", str(course.folder)])


def test_a_dropped_question_is_shown_before_it_counts(course, capsys):
    before = len(decisions_of(course))
    assert 0 == typed(course, "drop", SET, "q2")

    told = capsys.readouterr().out
    assert "BH-1, q2: 0 → open" in told
    assert "with --sure" in told
    assert before == len(decisions_of(course))


def test_a_dropped_question_counts_nowhere_on_sheet_terminal_and_in_the_mark_book(course):
    typed(course, "drop", SET, "q2", "--sure", "--why", "The text was wrong.")
    sheet, _ = report(course, SET)
    head, *rows = csv.reader(sheet.read_text("utf-8-sig").splitlines())
    book = term_book(course)

    assert "q2 of 3" not in head
    assert ["3", "1"] == [row[head.index("total so far")] for row in rows]
    assert "q2" not in marks_in_lines(course, SET)
    assert [1.0, pytest.approx(1 / 3)] == [one.marks[0].share for one in book.students]


def test_taking_back_lets_the_marks_stand_as_they_were(course, capsys):
    before = marks_in_lines(course, SET)
    typed(course, "full-marks", SET, "q1", "--sure")
    during = marks_in_lines(course, SET)
    typed(course, "take-back", str(decisions_of(course)[-1].number))

    assert before == marks_in_lines(course, SET) != during
    assert 0 == typed(course, "journal")
    assert "full marks: 04-buy-enough, q1" in capsys.readouterr().out


def test_an_excused_student_has_neither_an_open_mark_nor_a_nought(course):
    typed(course, "excuse", SET, "BH-1", "--why", "ill, with a note")
    ada = next(one for one in term_book(course).students if one.number == "BH-1")

    assert ((), None) == (ada.open, ada.total.percent)
    assert 0 == ada.total.all_weights


def test_marks_on_paper_are_typed_with_a_decimal_comma(course):
    """12,5 of 20 is a share of 0.625."""
    typed(course, "on-paper", SET, "BH-2", "12,5", "20")
    bram = next(one for one in term_book(course).students if one.number == "BH-2")

    assert (0.625, 12.5) == (bram.marks[0].share, bram.marks[0].points)


@pytest.mark.parametrize(
    ("words", "told"),
    [(("excuse", SET, "BH-9"), "BH-9 is not on the roster"),
     (("excuse", "09-none", "BH-1"), "“09-none” is not handed out"),
     (("on-paper", SET, "BH-1", "much", "20"), "points: type a number"),
     (("on-paper", SET, "BH-1", "21", "20"), "21 of 20 is more than there is"),
     (("extend", SET, "Monday"), "write a date and a time"),
     (("accept", SET, "q1", "--sure"), "name an answer, or a wider step"),
     (("take-back", "99"), "there is no decision 99"),
     (("place", "list.txt", "BH-1", SET), "“list.txt” is not among the files")],
)  # fmt: skip
def test_what_cannot_be_decided_is_refused_in_a_sentence(course, capsys, words, told):
    before = len(decisions_of(course))

    assert 1 == typed(course, *words)
    assert told in capsys.readouterr().err
    assert before == len(decisions_of(course))


def test_what_waits_is_listed_by_question(ground, capsys):
    """One written answer of Ada's; nothing of Bram's."""
    file = ground.marks(SET, "BH-1")
    before = file.read_bytes()
    leave(ground, record("BH-1", verdict("q1"), human=[written("q6", "I peeled\nthin.")]))
    main(["waiting", SET, "--class", str(ground.folder)])
    file.write_bytes(before)

    assert "q6: 6. From your bench, 0 to 4 points\n  BH-1: I peeled thin.\n" == (
        capsys.readouterr().out
    )
