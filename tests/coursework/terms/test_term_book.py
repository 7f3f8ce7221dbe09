"""The term's mark book. All students, answers and marks here are invented.

Totals are worked by hand in the docstrings; the sheet is read with the standard library's `csv`.
"""

import csv
import io
from dataclasses import replace
from datetime import UTC, datetime

import pytest
from coursework.arriving.arrivals import (
    on_the_clock,
)
from coursework.classes.course import new_course, open_course
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.command import main
from coursework.desk.desk import Desk
from coursework.errors import CourseError
from coursework.records.record import HumanMark
from coursework.reports.sheet import mark_sheet
from coursework.reports.term_marks import said, term_marks
from coursework.reports.term_page import rows
from coursework.terms.mark_words import NO_WEIGHT, in_words
from coursework.terms.term_book import term_book

from tests.helpers.desk import press
from tests.helpers.pages import HOSTILE, assert_fits, assert_sound
from tests.helpers.records import ROSTER, written
from tests.helpers.term import (
    BRINE,
    BUY,
    DAY,
    DUE,
    PRACTICAL,
    arrive,
    leave,
    of,
    points,
    practical,
    stated,
)


def test_a_whole_term_by_hand(course, human, marked, tmp_path):
    """Weights 3, 1, 2, 2; 10 % a day started; the best attempt; one open mark of 4 points.

    Ada: 17 of 20 = 0.85; 6 of 8 marked = 0.75 so far, q9 open; 15 of 20 = 0.75; 8 of 10 = 0.8.
    3 x 0.85 + 1 x 0.75 + 2 x 0.75 + 2 x 0.8 = 6.4 of weight 8: 80 % so far.
    Bram: 12 of 20 in time = 0.6; then 18 of 20 = 0.9, two days started late: 0.9 - 0.2 = 0.7, or 14
    of 20, the best; no brine; knife skills 12.5 of 20 = 0.625; service is blank.
    3 x 0.7 + 2 x 0.625 = 3.35 of weight 5: 67 % so far.
    Chidi: nothing at all, so no total, and never 0.
    """
    course = stated(
        course,
        '\n[mark_book]\nlate_percent = 10\nlate_percent_most = 50\nsecond_attempt = "best"\n'
        f"[sets.{BUY}]\nweight = 3\ndue = DUE\n" + PRACTICAL,
    )
    arrive(course, BUY, "BH-1", ada=DUE)
    arrive(course, BUY, "BH-2", first=DUE - 60, second=DUE + DAY + 1)
    marked.got[b"first"] = 12
    leave(course, BUY, points("BH-1", 17, raw=b"ada"), points("BH-2", 18, raw=b"second"))
    leave(course, BRINE, points("BH-1", 6, 8.0, human=[written("q9", out_of=4.0)]))
    file = practical(tmp_path, "student_number;Knife Skills;service", "BH-1;15;8", "bh-2;12,5;")
    sheet, _, book = term_marks(course, file)

    ada, bram, chidi = (of(book, student) for student in ROSTER)
    assert (80, 8, 8) == (ada.total.percent, ada.total.weight, ada.total.all_weights)
    assert (f"{BRINE} q9",) == ada.open
    assert (67, 5, 8) == (bram.total.percent, bram.total.weight, bram.total.all_weights)
    assert (BRINE, "service") == bram.open
    assert (14, 20) == (bram.marks[0].points, bram.marks[0].out_of)
    assert (
        "Attempt 1: 12 of 20.",
        "Attempt 2: 18 of 20, 2 days late: 20 % is taken off, which leaves 14.",
        "Attempt 2, the best, counts.",
    ) == in_words(bram.marks[0])
    assert (None, (BUY, BRINE, "knife skills", "service")) == (chidi.total.percent, chidi.open)
    text = sheet.read_bytes().decode("utf-8-sig")
    table = list(csv.DictReader(io.StringIO(text, newline="")))
    assert [f"{BUY} of 20", f"{BRINE} of 12", "knife skills of 20", "service of 10"] == [
        head for head in table[0] if " of " in head and head != "of weight"
    ]
    assert ["17", "14", ""] == [row[f"{BUY} of 20"] for row in table]
    assert ["6", "", ""] == [row[f"{BRINE} of 12"] for row in table]
    assert ["80", "67", ""] == [row["total so far in percent"] for row in table]
    assert ["15", "12.5", ""] == [row["knife skills of 20"] for row in table]
    assert f"{BUY}: Attempt 1: 12 of 20." in table[1]["notes"]


def test_without_a_policy_every_set_weighs_the_same_and_the_latest_counts(course, human, marked):
    """By hand: 10 of 20 = 0.5 and 9 of 10 = 0.9, mean 0.7. No earlier attempt is marked."""
    arrive(course, BUY, "BH-1", early=DUE, late=DUE + 100 * DAY)
    leave(course, BUY, points("BH-1", 10, raw=b"late"))
    leave(course, BRINE, points("BH-1", 9, 10.0))
    ada = of(term_book(course), "BH-1")

    assert (70, ()) == (ada.total.percent, ada.open)
    assert ("Attempt 2: 10 of 20.", "Attempt 2, the latest, counts.") == in_words(ada.marks[0])
    assert [] == marked.seen


def test_nothing_handed_in_is_open_or_nought_as_stated(course, human):
    """By hand, where it is 0 once the set was due: 18 of 20 and 0 make 45 %."""
    leave(course, BUY, points("BH-1", 18))
    usual = term_book(course)
    text = f'\n[mark_book]\nnothing_handed_in = "zero"\n[sets.{BRINE}]\ndue = DUE\n'
    course = stated(course, text)
    before, after = term_book(course, now=DUE), term_book(course, now=DUE + 1)

    assert [90, 90, 45] == [of(book, "BH-1").total.percent for book in (usual, before, after)]
    assert "nothing" == of(usual, "BH-1").marks[1].state
    assert "nothing, so 0" == of(after, "BH-1").marks[1].state
    assert [(BRINE,), (BRINE,), ()] == [of(book, "BH-1").open for book in (usual, before, after)]
    assert 0 == of(after, "BH-2").total.percent and (BUY,) == of(after, "BH-2").open


def test_too_late_to_count_is_as_good_as_nothing_handed_in(course, human):
    late = f"\n[sets.{BUY}]\ndue = DUE\n[mark_book]\nlate_days = 2\n"
    arrive(course, BUY, "BH-1", only=DUE + 3 * DAY)
    leave(course, BUY, points("BH-1", 18, raw=b"only"))
    course = stated(course, late)
    left_open = of(term_book(course), "BH-1")
    nought = of(term_book(stated(course, 'nothing_handed_in = "zero"\n')), "BH-1")

    assert (None, 0) == (left_open.marks[0].points, nought.marks[0].points)
    assert BUY in left_open.open and BUY not in nought.open
    assert ("18 of 20, 3 days late: after 2 it does not count.",) == in_words(nought.marks[0])


def test_a_total_may_wait_for_open_marks(course, human):
    leave(course, BUY, points("BH-1", 18), points("BH-2", 18, human=[written(out_of=4.0)]))
    leave(course, BRINE, points("BH-1", 20), points("BH-2", 20))
    course = stated(course, "\n[mark_book]\nwait_for_open_marks = true\n")
    book = term_book(course)

    assert [95, None] == [of(book, student).total.percent for student in ("BH-1", "BH-2")]
    human[BUY]["BH-2", "q9"] = HumanMark(2.0, "")
    # 20 of 24 is 0.8333, and with 1 the mean is 0.91667.
    assert 91.6666667 == of(term_book(course), "BH-2").total.percent


def test_a_weight_of_0_is_shown_and_does_not_count(course, human):
    leave(course, BUY, points("BH-1", 18))
    course = stated(course, f"\n[sets.{BRINE}]\nweight = 0\n")
    ada = of(term_book(course), "BH-1")

    assert (90, 1, ()) == (ada.total.percent, ada.total.all_weights, ada.open)
    course = stated(course, f"[sets.{BUY}]\nweight = 0\n")
    book = term_book(course)
    assert NO_WEIGHT in book.to_look_at
    assert of(book, "BH-1").total.percent is None


def test_who_is_not_marked_yet_is_named(course, human):
    """Handed in and never marked; handed in again since; on no roster; a set not handed out."""
    course.submitted(BUY, "BH-3").parent.mkdir(parents=True)
    course.submitted(BUY, "BH-3").write_text("{}")
    arrive(course, BUY, "BH-2", old=DUE, new=DUE + 1)
    leave(course, BUY, points("BH-2", 9, raw=b"old"), points("BH-9", 5))
    course = stated(course, "\n[sets.06-foam]\nweight = 1\n")
    book = term_book(course)

    assert "waits" == of(book, "BH-3").marks[0].state
    assert "latest waits" == of(book, "BH-2").marks[0].state
    assert of(book, "BH-2").marks[0].share is None
    assert "BH-9 has marks and is not on the roster." in book.to_look_at
    assert 25 == of(book, "BH-9").total.percent
    assert f"{BUY}: there are hand-ins that are not marked yet: mark the set." in book.to_look_at
    assert "not out" == of(book, "BH-1").marks[2].state


def test_a_damaged_list_or_record_is_said_and_stops_nothing(course, human):
    leave(course, BUY, points("BH-1", 18), points("BH-2", 18))
    leave(course, BRINE, points("BH-1", 18))
    course.marks(BUY, "BH-2").write_text("{")
    course.arrived.mkdir()
    (course.arrived / "list.json").write_text("[")
    book = term_book(course)

    assert 18 == of(book, "BH-1").marks[0].points
    assert f"marks/{BUY}/BH-2.json cannot be used" in " ".join(book.to_look_at)
    assert 1 == " ".join(book.to_look_at).count("arrived/list.json is damaged")


def test_a_set_that_there_is_not_is_refused(course, human):
    course = stated(course, "\n[sets.4-buy-enough]\nweight = 2\n")

    with pytest.raises(CourseError, match=r"\[sets\.4-buy-enough\]: there is no such set"):
        term_book(course)


def test_a_class_without_a_set_or_practical_marks_has_no_mark_book(tmp_path):
    course = new_course(tmp_path / "new", "New", "demo", ROSTER)

    with pytest.raises(CourseError, match="hand out a set first"):
        term_marks(course)


def test_no_earlier_state_is_lost(course, human, tmp_path):
    """Sheet, page and practical marks: each earlier one lies in `kept`, byte for byte, once."""
    course = stated(course, PRACTICAL)
    states = []
    for mark in (5, 5, 6, 7):
        file = practical(tmp_path, "student_number,service", f"BH-1,{mark}")
        sheet, page, _ = term_marks(course, file)
        now = [each.read_bytes() for each in (sheet, page, course.folder / "practical.csv")]
        if now not in states:
            states.append(now)
    kept = [each.read_bytes() for each in (course.folder / "kept").rglob("*") if each.is_file()]

    assert 3 == len(states)
    assert sorted(kept) == sorted(each for state in states[:2] for each in state)


def test_the_sheet_runs_no_formula_and_comes_back_as_it_was(course, human):
    """There and back through `csv`; a name is a student's own to choose."""
    file = course.folder / "roster.csv"
    file.write_text('student_number,name\nBH-1,"=1+1"\nBH-2,"Oakes; Bram ""Bo"", jun."\nBH-3,Zoë\n',
                    encoding="utf-8")  # fmt: skip
    course = open_course(course.folder)
    leave(course, BUY, points("BH-2", 7.5))
    sheet, _, book = term_marks(course)
    raw = sheet.read_bytes()
    back = list(csv.reader(io.StringIO(raw.decode("utf-8-sig"), newline="")))

    assert raw.startswith(b"\xef\xbb\xbf")
    assert back[1][1] == "'=1+1"
    assert rows(book)[2:] == back[2:]
    assert back[2][1:3] == ['Oakes; Bram "Bo", jun.', "7.5"]


def test_the_page_is_sound_and_says_the_policy_and_the_marks(course, human, tmp_path):
    course = stated(
        course,
        f'\n[mark_book]\nlate_percent = 10\nsecond_attempt = "mean"\n[sets.{BUY}]\nweight = 3\n'
        "due = DUE\n" + PRACTICAL,
    )
    arrive(course, BUY, "BH-1", only=DUE + 1)
    leave(course, BUY, points("BH-1", 15, raw=b"only"))
    file = practical(tmp_path, "student_number,service,<b>", "BH-1,8,1", f'BH-2,"{HOSTILE}",')
    page = assert_sound(term_marks(course, file)[1].read_text(encoding="utf-8"))

    # 0.75 - 0.1 = 0.65 of weight 3 and 0.8 of weight 2: 3.55 / 5.
    assert "71 % so far, of weight 5 of 8" in page.text
    assert "Buy enough: 13 of 20. 15 of 20, 1 day late: 10 % is taken off" in page.text
    assert "Of several attempts the mean of all counts." in page.text
    assert on_the_clock(DUE)[:16] in page.text
    assert "<script>" in page.text, "said, as text"
    [dot] = [a for tag, a in page.elements if tag == "circle"]
    assert 4 + 2 * 71 == float(dot["cx"])


def test_a_mark_book_without_any_mark_is_a_sound_page(course, human):
    page = assert_sound(term_marks(course)[1].read_text(encoding="utf-8"))

    assert "No total is whole yet." in page.text
    assert page.text.count("no total yet") == 3


@pytest.mark.browser
def test_the_page_fits_a_phone(course, human, tmp_path):
    """In a real Chromium, with a long name and a long sentence."""
    (course.folder / "roster.csv").write_text("student_number,name\nBH-1," + "Ann" * 40)
    course = stated(open_course(course.folder), PRACTICAL)
    leave(course, BUY, points("BH-1", 15))
    file = practical(tmp_path, "student_number,service," + "x" * 200, "BH-1,8,1")

    assert_fits(term_marks(course, file)[1])


def test_a_late_hand_in_is_said_on_the_mark_sheet(course):
    course = stated(course, f"\n[sets.{BUY}]\ndue = DUE\n")
    arrive(course, BUY, "BH-1", only=DUE + DAY + 1)
    arrive(course, BUY, "BH-2", other=DUE)
    records = [points("BH-1", 9, raw=b"only"), points("BH-2", 9, raw=b"other")]
    head, *lines = mark_sheet(course, BUY, [replace(each, set_id=BUY) for each in records], {})

    assert ["Handed in 2 days late.", ""] == [line[head.index("notes")] for line in lines[:2]]


def test_the_command_writes_the_mark_book_and_says_what_to_look_at(course, human, tmp_path, capsys):
    course = stated(course, PRACTICAL)
    file = practical(tmp_path, "student_number,service", "BH-1,8", "BH-7,1")

    arguments = ["term-marks", "--class", str(course.folder), "--practical", str(file)]
    assert 0 == main(arguments)
    _, _, told = capsys.readouterr().out.partition("\n")  # the first line holds the time it took
    assert f"Mark book: {course.reports / 'term-marks.csv'}" in told
    assert "line 3: BH-7 is not on the roster" in told
    assert 0 == main(arguments[:3])
    assert capsys.readouterr().out.endswith(f"\n{told}")

    assert 1 == main([*arguments[:3], "--practical", str(tmp_path / "gone.csv")])
    assert "gone.csv” cannot be read" in capsys.readouterr().err


def test_the_desk_takes_the_practical_marks_and_shows_the_page(
    course, human, monkeypatch, tmp_path
):
    """Wherever the file's name points, nothing is written there."""
    course = stated(course, PRACTICAL)
    before = {path.name for path in tmp_path.iterdir()}
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    monkeypatch.setattr(Desk, "course", property(lambda self: course))
    panel = Desk().term()
    content = b"student_number,service\nBH-1,8\n"
    panel.practical.value = [
        {"name": "../marks.csv", "type": "text/csv", "size": len(content), "content": content,
         "last_modified": datetime.fromtimestamp(DUE, UTC)}
    ]  # fmt: skip
    told = press(panel, "Make the mark book")

    assert "term-marks.csv" in told and "knife skills”: there is no such column" in told
    assert content == (course.folder / "practical.csv").read_bytes()
    assert before == {path.name for path in tmp_path.iterdir()}
    assert "sandbox" in panel.shown.value and "mark book" in panel.shown.value


def test_the_desk_says_what_is_missing(human, monkeypatch, tmp_path):
    course = new_course(tmp_path / "new", "New", "demo", ROSTER)
    monkeypatch.setattr(Desk, "course", property(lambda self: course))

    assert "nothing for a mark book yet" in press(Desk().term(), "Make the mark book")


def test_what_was_written_is_said(course, human):
    assert said(*term_marks(course)).startswith("Mark book: ")


def test_term_marks_takes_the_lock_of_the_class_and_writes_no_mark_book_beside_another_step(
    course, human
):
    with one_at_a_time(course, "marking"), pytest.raises(CourseError, match="marking since"):
        term_marks(course)

    assert not (course.reports / "term-marks.csv").exists()
