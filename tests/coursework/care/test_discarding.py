"""Copies of students' work kept for a stated time, and discarded. The class is invented.

How long is the class's own rule; the days are worked out by hand beside each test.
"""

from dataclasses import replace
from datetime import date

import pytest
from coursework.arriving.arrivals import read_list
from coursework.arriving.take_in import take_in
from coursework.care import discarding
from coursework.care.archive import back_up
from coursework.care.discarded_words import counted, in_words
from coursework.care.discarding import discard, kept_until, past_their_time
from coursework.classes.copy_time import CopyLines
from coursework.classes.course import open_course
from coursework.classes.course_edit import change_lines
from coursework.command import main
from coursework.deciding import decide, journal
from coursework.demo import play
from coursework.desk.next_steps import class_state
from coursework.desk.next_steps import in_words as next_in_words
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import all_marks, enter_human
from coursework.marking.mark_set import mark_set
from coursework.reports.exchange import export_exchange
from coursework.reports.hand_back import hand_back
from coursework.reports.pack import pack
from coursework.reports.report import report
from coursework.reports.student_view import student_view
from coursework.terms.term_book import term_book

from tests.helpers.filled_in import SET, class_copy

ADA = "BH-1001"
LATER = date(2026, 8, 1)


@pytest.fixture(scope="module")
def whole(tmp_path_factory):
    """The demonstration class, due on 20 July 2025, marked, handed back, packed and backed up."""
    course, places = play(tmp_path_factory.mktemp("kept") / "class")
    take_in(course, places)
    course = change_lines(course, {
        ("sets", SET): {"due": "2025-07-20 09:00"}, ("mark_book",): {"second_attempt": "best"},
    })  # fmt: skip
    mark_set(course, SET)
    enter_human(course, SET, ADA, "q6", 2.5, "Well reasoned.")
    hand_back(course, SET)
    report(course, SET)
    pack(course, SET)
    return course


@pytest.fixture
def course(whole, tmp_path):
    return class_copy(whole, tmp_path / "classes" / "class")


def files_below(course, *tops):
    return [path for top in tops for path in (course.folder / top).rglob("*") if path.is_file()]


@pytest.mark.parametrize(("lines", "until", "because"), [
    ({}, date(2026, 7, 20), "due"),
    ({"months": 7}, date(2026, 2, 20), "due"),
    ({"months": 6, "until": date(2027, 8, 31)}, date(2027, 8, 31), "day"),
])  # fmt: skip
def test_copies_are_kept_by_the_classes_own_rule(course, lines, until, because):
    """12 months after 20 July 2025 unless the class says otherwise; a named day goes before."""
    kept = kept_until(replace(course, copies=CopyLines(**lines)))

    assert (until, because) == (kept.until, kept.because)


def test_a_second_due_time_and_an_extension_move_the_day(course):
    """The last of all due times counts: 3 August 2025, then Ada's 31 August."""
    course = change_lines(course, {("sets", SET): {"second_due": "2025-08-03 09:00"}})

    assert date(2026, 8, 3) == kept_until(course).until

    decide(course, "extension", set_id=SET, student=ADA, seconds=1756641600.0)  # 31 August, noon

    assert date(2026, 8, 31) == kept_until(course).until


def test_without_a_due_time_the_last_file_that_came_in_counts(course):
    course = change_lines(course, {("sets", SET): {"due": None}})
    came = max(one.taken for one in read_list(course))

    assert "came" == kept_until(course).because
    assert date.fromtimestamp(came).replace(day=1) < kept_until(course).until


def test_nothing_is_past_on_the_last_day_and_all_is_on_the_next(course):
    assert past_their_time(course, date(2026, 7, 20)) is None

    past = past_their_time(course, date(2026, 7, 21))

    assert {"arrived", "submitted", "autograded", "feedback", "kept", "packed"} == {
        kind for kind, _ in past.files
    }
    assert 48 == sum(kind == "submitted" for kind, _ in past.files)  # a file and its time each
    assert 24 == sum(kind == "feedback" for kind, _ in past.files)


def test_a_backup_beside_the_class_is_past_too_and_another_classes_is_not(course):
    mine = back_up(course, course.folder.parent)
    other = class_copy(course, course.folder.parent / "other")
    back_up(other, course.folder.parent / "theirs.zip")
    (course.folder.parent / "recipes.zip").write_bytes(b"no zip at all")
    past = past_their_time(course, LATER)

    assert [mine] == [file for kind, file in past.files if kind == "backups"]


def test_what_was_discarded_is_gone_and_every_mark_stands(course):
    """Referee: marks, the mark book, a student's view and what is next, before and after."""
    # The second attempt of a student who handed in twice is marked when the book first asks.
    unasked = class_copy(course, course.folder.parent / "unasked")
    before = term_book(unasked).students, sorted(all_marks(course))
    past = past_their_time(course, LATER)
    line = discard(course, past, counted(past), LATER)
    after = open_course(course.folder)

    assert [] == files_below(after, "submitted", "autograded", "feedback", "kept")
    assert {"list.json", "list.csv"} == {path.name for path in files_below(after, "arrived")}
    assert not list(after.folder.glob("reports/*.zip"))
    assert not (after.folder / "submitted" / ADA).exists()
    assert before == (term_book(after).students, sorted(all_marks(after)))
    assert ("copies discarded", 24) == (line.kind, len(list(after.folder.glob("marks/*/*.json"))))
    assert f"{line.number}. " in journal(after) and "24 pages that went back" in journal(after)


def test_after_it_the_class_goes_on(course):
    """Nobody is said to be missing, no page is asked for, and each page and sheet can be made."""
    before = class_state(course, {SET: "Buy enough"})
    past = past_their_time(course, LATER)
    discard(course, past, counted(past), LATER)
    after = class_state(course, {SET: "Buy enough"})

    assert before.sets == after.sets
    assert 0 == after.unplaced
    assert 24 == len(hand_back(course, SET))
    assert report(course, SET)[0].is_file() and export_exchange(course).is_file()
    assert SET in str(student_view(course, ADA))

    decide(course, "excused", set_id=SET, student=ADA)
    made = decide(course, "handed in at", file=read_list(course)[0].sha256, student=ADA,
                  set_id=SET, seconds=1752994800.0)  # fmt: skip

    assert "handed in at" == made.kind
    with pytest.raises(CourseError, match="nothing is taken in"):
        mark_set(course, SET)
    assert past_their_time(course, date(2026, 7, 20)) is None


def test_it_is_said_and_never_done_by_itself(course, monkeypatch):
    """What is next says it, with the day; opening the class and marking change nothing."""
    monkeypatch.setattr(discarding, "date", FIRST_OF_AUGUST)
    count = len(files_below(course, "submitted", "arrived"))
    state = class_state(course, {SET: "Buy enough"})
    said = [one for one in next_in_words(state, course.roster, 0) if "Copies" in one]
    mark_set(course, SET)

    assert 1 == len(said) and "kept until 2026-07-20: " in said[0]
    assert count == len(files_below(course, "submitted", "arrived"))
    assert [] == [one for one in decisions_of(course) if one.kind == "copies discarded"]


def test_what_was_not_seen_is_not_discarded(course):
    """A page written since the look is another file than those that were shown."""
    past = past_their_time(course, LATER)
    new = course.folder / "feedback" / ADA / SET / "extra.html"
    new.write_text("x")

    with pytest.raises(CourseError, match="others are past their time now"):
        discard(course, past, counted(past), LATER)
    assert new.is_file() and files_below(course, "submitted")

    with pytest.raises(CourseError, match="none is past its time"):
        discard(course, past, counted(past), date(2026, 1, 1))


def test_discarding_cannot_be_taken_back(course):
    past = past_their_time(course, LATER)
    line = discard(course, past, counted(past), LATER).number

    with pytest.raises(CourseError, match="is for good"):
        decide(course, "take back", line=line)


def test_what_is_not_settled_is_said_in_the_preview(course):
    """The demonstration has files without a place; one student's record is taken away."""
    course.marks(SET, ADA).unlink()
    past = past_their_time(course, LATER)
    words = in_words(past.kept, past)

    assert 1 == past.unsettled.to_mark
    assert "– 1 hand-in is not marked" in words
    assert f"– {past.unsettled.no_place} file" in words
    assert "24 pages that went back (" in words


def test_the_command_shows_first(course, monkeypatch, capsys):
    monkeypatch.setattr(discarding, "date", FIRST_OF_AUGUST)
    where = ["--class", str(course.folder)]

    assert 0 == main(["discard", *where])
    assert "Nothing is discarded yet." in capsys.readouterr().out
    assert files_below(course, "submitted")

    assert 0 == main(["discard", "--sure", *where])
    assert "Discarded; decision" in capsys.readouterr().out
    assert [] == files_below(course, "submitted")

    assert 0 == main(["discard", *where])
    assert "None is past its time." in capsys.readouterr().out


@pytest.mark.parametrize(("line", "said"), [
    ("months = 0", "copies], months: needs a whole number of months, 1 to 600"),
    ("months = 2.5", "copies], months: needs a whole number of months, 1 to 600"),
    ('until = "31.8.2027"', 'copies], until: write a day, as in "2027-08-31"'),
    ('until = "2027-02-31"', 'copies], until: write a day, as in "2027-08-31"'),
    ("until = 2027-08-31T10:00:00", 'copies], until: write a day, as in "2027-08-31"'),
    ("years = 2", "“years” is none of months, until"),
])  # fmt: skip
def test_an_odd_line_of_the_file_is_said_by_its_name(course, line, said):
    text = (course.folder / "course.toml").read_text("utf-8")

    with pytest.raises(CourseError) as refused:
        open_course(course.folder, f"{text}\n[copies]\n{line}\n")
    assert said in str(refused.value)


def test_a_day_of_the_file_may_stand_without_quotes(course):
    text = (course.folder / "course.toml").read_text("utf-8")
    found = open_course(course.folder, f"{text}\n[copies]\nuntil = 2027-08-31\n")

    assert date(2027, 8, 31) == found.copies.until


class FIRST_OF_AUGUST(date):
    """A clock that stands."""

    @classmethod
    def today(cls):
        return cls(2026, 8, 1)
