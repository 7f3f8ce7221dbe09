"""The stated policy of a course file: what each line does, and what is refused."""

import math
import re
import time
from datetime import datetime
from zoneinfo import ZoneInfo

import pytest
from coursework.classes.course import new_course, open_course
from coursework.classes.policy import POLICY_LINES, Policy, Practical, SetRule
from coursework.errors import CourseError
from coursework.reports.term_page import in_words

HEAD = 'name = "C"\nterm = "demo"\n'


def opened(tmp_path, text):
    """The policy of a class with these lines in its course file."""
    (tmp_path / "roster.csv").write_text("student_number,name\nBH-1,Ann\n", encoding="utf-8")
    (tmp_path / "course.toml").write_text(HEAD + text, encoding="utf-8")
    return open_course(tmp_path).policy


@pytest.fixture
def london(monkeypatch):
    """A machine whose clock is London's."""
    if not hasattr(time, "tzset"):
        pytest.skip("this system's clock cannot be set to another zone")
    monkeypatch.setenv("TZ", "Europe/London")
    time.tzset()
    yield ZoneInfo("Europe/London")
    monkeypatch.undo()
    time.tzset()


def test_without_a_line_everything_counts_alike_and_nothing_is_taken_off(tmp_path):
    policy = opened(tmp_path, "")

    assert Policy() == policy
    assert SetRule(1.0, None, None) == policy.rule("04-buy-enough")
    assert (0, 100, math.inf) == (policy.late_percent, policy.late_percent_most, policy.late_days)
    assert ("latest", "open", False) == (
        policy.second_attempt, policy.nothing_handed_in, policy.wait_for_open_marks
    )  # fmt: skip


def test_a_new_course_file_explains_each_line_and_changes_nothing(tmp_path):
    course = new_course(tmp_path / "class", "Class", "demo", {"BH-1": "Ann"})
    text = (course.folder / "course.toml").read_text(encoding="utf-8")

    assert POLICY_LINES in text
    assert Policy() == course.policy


def test_the_lines_of_a_new_course_file_may_be_used_as_they_stand(tmp_path):
    """With the # taken off its 16 lines and 4 heads. What is not the usual is in the last line."""
    lines, count = re.subn(r"(?m)^# (?=\[|\w+ = )", "", POLICY_LINES)
    policy = opened(tmp_path, lines)

    assert {"04-buy-enough"} == set(policy.sets)
    assert {"knife skills": Practical("knife skills", 20, 1)} == policy.practical
    assert 16 + 4 == count
    assert Policy(sets=policy.sets, practical=policy.practical, late_days=7, pass_line=40,
                  grades={"A": 80, "B": 65, "C": 40}) == policy  # fmt: skip


def test_every_line_is_taken(tmp_path):
    policy = opened(
        tmp_path,
        "[mark_book]\nlate_percent = 10\nlate_percent_most = 50\nlate_days = 0\n"
        'second_attempt = "first"\nsecond_attempt_up_to = 60\nnothing_handed_in = "zero"\n'
        'wait_for_open_marks = true\npass_line = 50\n[grades]\nB = 70\n"A+" = 92.5\n'
        '[sets.05-season-and-brine]\nweight = 0\n[practical." Knife  skills "]\nout_of = 12.5\n',
    )

    assert policy == Policy(
        10, 50, 0, "first", 60, "zero", True, 50,
        {"05-season-and-brine": SetRule(weight=0)},
        {"Knife skills": Practical("Knife skills", 12.5, 1)},
        {"A+": 92.5, "B": 70},
    )  # fmt: skip
    assert ["A+", "B"] == list(policy.grades)


@pytest.mark.parametrize(
    "written",
    ['"2026-07-06 09:00"', '"2026-07-06T09:00:00"', "2026-07-06 09:00:00", "2026-07-06T09:00:00",
     '"2026-07-06 09:00+01:00"', '"2026-07-06 08:00Z"', "2026-07-06T10:00:00+02:00"],
)  # fmt: skip
def test_a_due_time_is_on_the_machines_clock_or_in_its_own_zone(tmp_path, london, written):
    """Referee: `zoneinfo`. In July London is an hour before UTC: all seven are 08:00 UTC."""
    policy = opened(tmp_path, f"[sets.04-buy-enough]\ndue = {written}\n")

    expected = datetime(2026, 7, 6, 9, tzinfo=london).timestamp()
    assert expected == policy.rule("04-buy-enough").due
    assert expected == datetime.fromisoformat("2026-07-06T08:00:00+00:00").timestamp()


def test_in_the_hour_that_comes_twice_the_later_one_is_due(tmp_path, london):
    """On 25 October 2026 London's clock shows 01:30 at 00:30 and again at 01:30 UTC."""
    policy = opened(tmp_path, '[sets.04-buy-enough]\ndue = "2026-10-25 01:30"\n')

    expected = datetime.fromisoformat("2026-10-25T01:30:00+00:00").timestamp()
    assert expected == policy.rule("04-buy-enough").due


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("mark_book = 3", r"mark_book has lines of its own, below a line \[mark_book\]\."),
        ("sets = 3", r"sets has lines of its own, below a line such as \[sets\.04-buy-enough\]\."),
        ("practical = 3", r'practical has .* below a line such as \[practical\."knife skills"\]\.'),
        ("[markbook]", r"\[markbook\]: did you mean \[mark_book\]\?"),
        ("[set.04-buy-enough]", r"\[set\]: did you mean \[sets\]\?"),
        ("[practicals.service]", r"\[practicals\]: did you mean \[practical\]\?"),
        ("[mark_book]\nlate = 3", r"\[mark_book\]: “late” is none of late_percent, late_percent"),
        ("[mark_book]\nsets = 3", r"\[mark_book\]: “sets” is none of late_percent"),
        ('[mark_book]\nlate_percent = "5"', r"late_percent: needs a number from 0 to 100 \(perc"),
        ("[mark_book]\nlate_percent = -1", r"late_percent: needs a number from 0 to 100"),
        ("[mark_book]\nlate_percent = true", r"late_percent: needs a number from 0 to 100"),
        ("[mark_book]\nlate_percent = nan", r"late_percent: needs a number from 0 to 100"),
        ("[mark_book]\nlate_percent_most = 101", r"late_percent_most: needs a number from 0 to 10"),
        ("[mark_book]\nlate_days = 1.5", "late_days: needs a whole number from 0 up"),
        ("[mark_book]\nlate_days = -1", "late_days: needs a whole number from 0 up"),
        ("[mark_book]\nlate_days = true", "late_days: needs a whole number from 0 up"),
        ('[mark_book]\nsecond_attempt = "last"', 'one of "latest", "best", "mean", "first"'),
        ("[mark_book]\nsecond_attempt = [1]", 'second_attempt: write one of "latest"'),
        ("[mark_book]\nsecond_attempt_up_to = 60", 'it goes with second_attempt = "first"'),
        (
            '[mark_book]\nsecond_attempt = "first"\nsecond_attempt_up_to = 160',
            "second_attempt_up_to: needs a number from 0 to 100",
        ),
        ("[mark_book]\nnothing_handed_in = 0", 'nothing_handed_in: write one of "open", "zero"'),
        ("[mark_book]\nwait_for_open_marks = 1", "wait_for_open_marks: write true or false"),
        ("[sets]\n04-buy-enough = 2", r"write “04-buy-enough” as a section: a line \[sets\.04"),
        ("[sets.04-x]\nweigth = 2", r"\[sets\.04-x\]: “weigth” is none of weight, due, second_due"),
        ("[sets.04-x]\nweight = -1", r"\[sets\.04-x\], weight: needs a number from 0 up"),
        ("[sets.04-x]\nweight = inf", r"\[sets\.04-x\], weight: needs a number from 0 up"),
        ("[sets.04-x]\ndue = 2026-10-05", r'due: write a date and a time, as in "2026-10-05 09:00'),
        ("[sets.04-x]\ndue = 09:00:00", "due: write a date and a time"),
        ('[sets.04-x]\ndue = "5 October"', "due: write a date and a time"),
        ('[sets.04-x]\ndue = "2026-13-05 09:00"', "due: write a date and a time"),
        ('[sets.04-x]\ndue = "0001-01-01 00:00"', "due: write a date and a time"),
        ('[sets.04-x]\nsecond_due = "2026-10-05 09:00"', "second_due: needs a line due with an"),
        (
            '[sets.04-x]\ndue = "2026-10-05 09:00"\nsecond_due = "2026-10-05 09:00"',
            "second_due: needs a line due with an earlier time",
        ),
        ("[mark_book]\npass_line = 101", "pass_line: needs a number from 0 to 100"),
        ("grades = 3", r"grades has lines of its own, below a line \[grades\]"),
        ('[grades]\nA = "80"', r"\[grades\], A: needs a number from 0 to 100"),
        ("[grades]\nA = 80\nB = 80", r"\[grades\]: A and B begin at the same percent"),
        ('[grades]\n" " = 80', r"\[grades\]: a grade needs a name"),
        ("[practical]\nservice = 10", r'write “service” as a section: a line \[practical'),
        ('[practical."knife skills"]', r'\[practical\."knife skills"\]: needs a line out_of'),
        ("[practical.service]\nout_of = 0", r"out_of: needs a number above 0"),
        ("[practical.service]\nout_of = 10\nweight = -2", "weight: needs a number from 0 up"),
        ("[practical.service]\nout_off = 10", "“out_off” is none of out_of, weight"),
        ("[practical.Name]\nout_of = 10", "that is no name of a practical mark"),
        ('[practical." "]\nout_of = 10', "that is no name of a practical mark"),
        ("[practical.a]\nout_of = 1\n[practical.A]\nout_of = 1", "the name “A” stands twice"),
    ],
)  # fmt: skip
def test_an_odd_line_is_refused_with_its_section_and_what_it_needs(tmp_path, text, words):
    with pytest.raises(CourseError, match=words) as caught:
        opened(tmp_path, text)

    assert str(caught.value).startswith("course.toml")


def test_an_unknown_table_or_line_is_refused_by_name(tmp_path):
    """Taken in silence, an instructor's [extensions] extended nothing. All are named at once."""
    with pytest.raises(CourseError) as caught:
        opened(tmp_path, 'telephone = "none"\n[extensions]\nann = 3\n[mark_book]\nlate = 1\n')

    said = str(caught.value)
    assert "[extensions]: there is no such table" in said
    assert "“telephone” is none of name, term" in said
    assert "[mark_book]: “late” is none of" in said


@pytest.mark.parametrize(
    ("policy", "words"),
    [
        (Policy(), "No set has a due time in the course file, so nothing is late."),
        (Policy(sets={"a": SetRule(due=0)}), "Late work costs nothing. Due times are on"),
        (
            Policy(sets={"a": SetRule(due=0)}, late_percent=10, late_percent_most=50, late_days=7),
            "Late work: each day started after the due time takes 10 % of the set's points off, "
            "50 % at most, and no mark goes below 0. After 7 days it does not count.",
        ),
        (Policy(sets={"a": SetRule(due=0)}, late_days=1), "After 1 day it does not count."),
        (Policy(), "Of several attempts the latest counts."),
        (Policy(second_attempt="best"), "the best counts"),
        (Policy(second_attempt="mean"), "the mean of all counts"),
        (Policy(second_attempt="first"), "the first counts."),
        (
            Policy(second_attempt="first", second_attempt_up_to=60),
            "the first counts, and a later one may lift the mark, up to 60 % of the points.",
        ),
        (Policy(second_attempt="best"), "A written answer is marked once"),
        (Policy(), "Nothing handed in leaves the mark open."),
        (Policy(nothing_handed_in="zero"), "open until the set was due, and 0 from then on."),
        (Policy(), "An open mark counts nowhere: the total is so far, and the rest is named."),
        (Policy(wait_for_open_marks=True), "A student with an open mark has no total yet."),
    ],
)
def test_a_policy_is_said_in_words(policy, words):
    assert words in " ".join(in_words(policy))
