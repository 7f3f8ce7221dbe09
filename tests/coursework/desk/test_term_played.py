"""A short term, played at the desk from the roster to the archive. All of it is invented.

`tests/measure/term_of_thirty.py` plays the same with 30 and with 300.
"""

import re

import pytest
from coursework.classes.course import open_course
from coursework.decisions.holding import holding
from coursework.gradebook.decision_list import decisions_of
from coursework.records.reading import usable_records

from tests.helpers.desk import words
from tests.helpers.term_desk import SET
from tests.helpers.term_played import played

CHANGED = re.compile(r"(\d{6}), (q\d): ([\d.]+) → ([\d.]+)")


@pytest.fixture(scope="module")
def term(tmp_path_factory):
    return played(tmp_path_factory.mktemp("term"), 10)


def said(term, step):
    return " ".join(row.said for row in term.rows if row.step == step)


def test_no_step_fails_and_none_is_refused(term):
    refused = [row for row in term.rows if "Not done" in row.said or "kit itself" in row.said]

    assert [] == refused


@pytest.mark.parametrize(
    ("step", "expected"),
    [
        ("roster with a title row", "The class has 10 students."),
        ("take in the platform's archive", "Did you mean 004207?"),
        ("take in the platform's archive", "Set “05-season-and-brine” is not handed out"),
        ("take in the platform's archive", "broken.ipynb: not placed."),
        ("inbox: place", "1 file is placed."),
        ("mark", "8 hand-ins are marked."),
        ("written answer, comma", "2.5 of 4"),
        ("take back", "is taken back"),
        ("late joiner's file", "Yara Holt_004211/04-buy-enough.ipynb: Yara Holt, 4. Buy enough"),
        ("a file that would displace a marked one", "waits for your word"),
        ("practical marks", "5 marks are in"),
        ("newer kit: marking", "0 of them this time"),
        ("newer kit: handing out", "the class keeps its key"),
        ("erase a student", "Nothing in the class's folder names them any more."),
        ("archive", "it brings back every file, mark and decision"),
        ("restore", "“Cooks 2026/27” with 10 students is back."),
        ("mark again after restoring", "0 of them this time."),
    ],
)
def test_what_the_desk_says(term, step, expected):
    assert expected in said(term, step)


def test_a_file_that_says_another_set_is_never_ticked_as_sure(term):
    """Of the four without a place only the number without its noughts is sure."""
    assert "1 file is ticked." in said(term, "inbox")


def test_practical_marks_whose_numbers_lost_their_noughts_are_matched_by_name(term):
    """Five were typed in the grid and stay; the table has the last five; the late joiner waits."""
    told = said(term, "practical marks, noughts lost")

    assert "4206 lost its zeros; by the name, Fenna Brook, it is 004206." in told
    assert "not on the roster" not in told
    assert "so as they were: Ada Quill-Thorne (004201)" in told
    assert "so open: Yara Holt" in told


def test_the_newer_keys_preview_names_each_student_whose_points_it_changed(term):
    """What was shown, what then happened, and what taking back undid: the same students."""
    lines = re.findall(r"points q1 [\d.]+ → [\d.]+: (.*?\))\.", said(term, "newer key taken"))
    shown = sorted(re.findall(r"\((\d{6})\)", " ".join(lines)))
    changed = CHANGED.findall(said(term, "newer key: mark"))
    back = CHANGED.findall(said(term, "first key again: mark"))

    assert shown
    assert shown == [student for student, *_ in changed]
    assert changed == [(student, one, new, old) for student, one, old, new in back]


def test_points_by_hand_for_what_the_machine_marked_are_given_at_the_desk(term):
    """1,5 for q2 of the third student, as the journal has it."""
    holds = holding(decisions_of(term.course))
    one = holds.points[SET, term.late, "q2"]

    assert (1.5, "Right by another way.") == (one.points, one.why)


def test_after_erasing_no_file_of_the_class_names_the_student(term):
    """Every byte of the restored class, searched for number and name."""
    theirs = (term.erased.encode(), term.roster[term.erased].encode())
    files = [one for one in term.course.folder.rglob("*") if one.is_file()]

    assert len(files) > 50
    assert [] == [one.name for one in files if any(word in one.read_bytes() for word in theirs)]


def test_the_restored_class_has_every_record_and_decision_as_before(term):
    folder = term.course.folder

    assert term.before == {
        one.relative_to(folder): one.read_bytes() for one in folder.rglob("*.json")
    }
    assert 8 == len(usable_records(open_course(folder), SET)[0])


def test_the_journal_names_files_as_they_came_and_no_figures_of_them(term):
    """The file whose number had lost its noughts, as it was called; a key by no name at all."""
    term.press("journal at the end", term.journal, "Show the journal")
    lines = words(term.journal.list)

    assert "place: 4. Buy enough, Gwil Thatch, 04-buy-enough (3).ipynb." in lines
    assert "newer key: 4. Buy enough. “to see it” Taken back." in lines
    assert not re.search(r"\b[0-9a-f]{8}\b", lines)
