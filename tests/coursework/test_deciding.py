"""Decisions typed as commands, in a class with a real gradebook. The class is invented."""

import csv
import re
import time
from datetime import datetime

import pytest
from coursework.classes.course import new_course
from coursework.command import main
from coursework.decisions.holding import live
from coursework.decisions.kinds import Decision
from coursework.desk import desk as desk_module
from coursework.desk.desk import Desk
from coursework.desk.next_steps import _last_decided, _page_is_old
from coursework.gradebook.decision_list import decisions_of
from coursework.reports.hand_back import hand_back
from coursework.reports.in_lines import marks_in_lines
from coursework.reports.report import report
from coursework.sets.hand_out import hand_out
from coursework.skills.skill_table import skill_table
from coursework.terms.term_book import term_book

from tests.helpers.desk import press
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


CORRECTIONS = [
    # Ada had 0 of 3 in q2; in q1 Bram's slip had 1 of 3.
    (("drop", SET, "q2"), ["Ada Quill (BH-1), q2: 0 → counts nowhere",
                           "Bram Oakes (BH-2), q2: 3 → counts nowhere"]),
    (("full-marks", SET, "q1"), ["Bram Oakes (BH-2), q1: 1 → 3"]),
    (("accept", SET, "q2", "--answer", "4.2 kg"), ["Ada Quill (BH-1), q2: 0 → 3"]),
]  # fmt: skip


def names_in(said):
    return [one.strip() for one in said.splitlines() if "→" in one]


@pytest.mark.parametrize(("correction", "changes"), CORRECTIONS)
def test_after_a_correction_counts_the_list_by_name_says_whose_marks_it_changed(
    course, capsys, correction, changes
):
    """By hand; the same list as before it counted, and turned round when it is taken back."""
    typed(course, *correction)
    before = capsys.readouterr().out
    typed(course, *correction, "--sure")
    after = capsys.readouterr().out
    typed(course, "take-back", str(decisions_of(course)[-1].number))
    back = capsys.readouterr().out

    assert changes == names_in(before) == names_in(after)
    assert "changed:" in after and "changed:" not in before
    turned = [re.sub(r": (.*) → (.*)", r": \2 → \1", one) for one in changes]
    assert turned == names_in(back)


def test_the_desk_shows_that_list_after_deciding_and_after_taking_back(course, monkeypatch):
    monkeypatch.setattr(desk_module, "CLASSES", course.folder.parent)
    desk = Desk()
    desk.sets.value = SET
    panel, journal = desk.decide(), desk.journal()
    panel.kind.value, panel.boxes["question"].value = "full marks", "q1"
    press(panel, "Look whose marks change")

    said = press(panel, "Decide")
    assert "1 mark is changed:" in said and "Bram Oakes (BH-2), q1: 1 → 3" in said

    press(journal, "Show the journal")
    journal.line.value = journal.line.options[0][1]

    assert "Bram Oakes (BH-2), q1: 3 → 1" in press(journal, "Take it back")


def test_a_correction_that_changes_nobody_says_so_and_an_excuse_says_nothing_of_it(course, capsys):
    typed(course, "drop", SET, "q2", "--sure")
    capsys.readouterr()
    typed(course, "full-marks", SET, "q2", "--sure")

    assert "Nobody's points are changed." in capsys.readouterr().out

    typed(course, "excuse", SET, "BH-1")

    assert "points" not in capsys.readouterr().out


def test_a_dropped_question_is_shown_before_it_counts(course, capsys):
    before = len(decisions_of(course))
    assert 0 == typed(course, "drop", SET, "q2")

    told = capsys.readouterr().out
    assert "Ada Quill (BH-1), q2: 0 → counts nowhere" in told
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
     (("on-paper", SET, "BH-1", "much", "20"), "points: “much” is no number. Type a number"),
     (("on-paper", SET, "BH-1", "21", "20"), "21 of 20 is more than there is"),
     (("extend", SET, "Monday"), "write a date and a time"),
     (("accept", SET, "q1", "--sure"), "name an answer, or a wider step"),
     (("take-back", "99"), "there is no decision 99"),
     (("place", "list.txt", "BH-1", SET), "“list.txt” is not among the files")],
)  # fmt: skip
def test_what_cannot_be_decided_is_refused_as_came(course, capsys, words, told):
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


def sheet_row(course, student):
    report(course, SET)
    rows = csv.DictReader((course.reports / f"{SET}-marks.csv").read_text("utf-8-sig").splitlines())
    return next(row for row in rows if row["student number"] == student)


def test_excused_is_one_truth_on_page_sheet_skills_and_book(course):
    """Ada has a file; excused, it counts nowhere and waits for nobody."""
    main(["excuse", SET, "BH-1", "--why", "was ill", "--class", str(course.folder)])
    pages = hand_back(course, SET)
    row = sheet_row(course, "BH-1")

    assert ("", "", "Excused: it counts nowhere.") == (row["q1 of 3"], row["total so far"],
                                                       row["notes"])  # fmt: skip
    assert "Excused" in pages[0].read_text("utf-8")
    assert "6 of" not in pages[0].read_text("utf-8").partition("At a glance")[0]
    assert not skill_table(course).was_asked("BH-1")
    assert "Excused: Ada Quill." in (course.reports / f"{SET}.html").read_text("utf-8")
    assert term_book(course).students[0].marks[0].excused


def test_marks_on_paper_are_one_truth_on_page_sheet_and_book(course):
    """12 of 20 on paper stand in place of Bram's file, with the remark."""
    main(["on-paper", SET, "BH-2", "12", "20", "--why", "A neat card.",
          "--class", str(course.folder)])  # fmt: skip
    page = hand_back(course, SET)[1].read_text("utf-8")
    row = sheet_row(course, "BH-2")

    assert "12 of 20 points, on paper" in page and "A neat card." in page
    assert ("12", "20", "0", "On paper.") == (row["total so far"], row["out of"], row["open"],
                                              row["notes"])  # fmt: skip
    assert 12 == term_book(course).students[1].marks[0].points


def test_who_is_excused_without_a_file_gets_a_page(ground, course):
    """Ada's hand-in is away for a moment: her page says the excuse and asks nothing."""
    file = ground.marks(SET, "BH-1")
    before = file.read_bytes()
    file.unlink()
    main(["excuse", SET, "BH-1", "--class", str(course.folder)])
    pages = hand_back(course, SET)
    file.write_bytes(before)

    assert course.feedback(SET, "BH-1") in pages
    assert "At a glance" not in course.feedback(SET, "BH-1").read_text("utf-8")


def test_a_page_from_before_a_decision_waits_to_be_handed_back_again(course):
    """A decision about Bram, or about the whole class; none about Ada."""
    hand_back(course, SET)
    soon = time.time() + 60

    assert not _page_is_old(course, SET, "BH-2", {"BH-1": soon})
    assert _page_is_old(course, SET, "BH-2", {"BH-2": soon})
    assert _page_is_old(course, SET, "BH-2", {"": soon})


def test_taking_back_is_about_what_was_taken_back():
    """The line itself names no student."""
    made = Decision("excused", "chef", "2026-10-05T09:00:00Z", number=1, set_id=SET, student="BH-1")
    back = Decision("take back", "chef", "2026-10-06T09:00:00Z", number=2, line=1)
    day = 24 * 60 * 60

    assert day == _last_decided([made, back], SET)["BH-1"] - _last_decided([made], SET)["BH-1"]


def test_the_journal_has_a_heading_for_each_day_and_says_what_is_taken_back(course, capsys):
    main(["excuse", SET, "BH-1", "--class", str(course.folder)])
    made = live(decisions_of(course))[-1]
    main(["take-back", str(made.number), "--class", str(course.folder)])
    capsys.readouterr()
    main(["journal", "--class", str(course.folder)])
    lines = capsys.readouterr().out.splitlines()

    assert datetime.now().strftime("%Y-%m-%d") == lines[0]
    mine = next(line for line in lines if line.startswith(f"  {made.number}. "))
    assert mine.endswith("excused: 04-buy-enough, Ada Quill. Taken back.")


def test_points_for_an_answer_are_typed_with_a_point_or_a_comma(course, capsys):
    """What is no number is said in a sentence, and not by the parser of commands."""
    assert 1 == typed(course, "points", SET, "BH-1", "q1", "two")
    assert "points: “two” is no number" in capsys.readouterr().err
