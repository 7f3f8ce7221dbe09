"""A newer kit's key is seen, offered by name, and taken by a person only. The class is invented."""

import json
import shutil

import pytest
from coursework.classes.course import open_course
from coursework.classes.course_edit import change_lines
from coursework.command import main
from coursework.deciding import about_of, decide
from coursework.desk.next_steps import class_state, in_words
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import all_marks
from coursework.marking.another_key import what_changes
from coursework.marking.key_words import in_words as key_in_words
from coursework.marking.mark_set import mark_set
from coursework.records.reading import usable_records
from coursework.sets import hand_out as hand_out_module
from coursework.sets import key_text
from coursework.sets.class_keys import class_key, kits_key, newer_key
from coursework.sets.hand_out import hand_out

from tests.helpers.filled_in import SET
from tests.helpers.small_class import SMALL

OLD_RANGE, NEW_RANGE = "covers=steps(32, 60, 4,", "covers=steps(36, 64, 4,"


@pytest.fixture(scope="module")
def marked(small_class, tmp_path_factory):
    """Seven of 24 handed in, all of them marked with the class's own key."""
    folder = tmp_path_factory.mktemp("marked") / "class"
    made = open_course(shutil.copytree(small_class.folder, folder))
    mark_set(made, SET)
    return folder


@pytest.fixture
def course(marked, tmp_path):
    return open_course(shutil.copytree(marked, tmp_path / "class"))


@pytest.fixture
def newer_kit(tmp_path, monkeypatch):
    """A kit whose key draws 36 to 64 covers in q1, where the class's draws 32 to 60."""
    keys = shutil.copytree(key_text.KEYS, tmp_path / "keys")
    file = keys / f"{SET}.py"
    text = file.read_text(encoding="utf-8")
    assert text.count(OLD_RANGE) == 1
    file.write_text(text.replace(OLD_RANGE, NEW_RANGE), encoding="utf-8")
    monkeypatch.setattr(key_text, "KEYS", keys)
    return file


def marks_of(course):
    return sorted(all_marks(course))


def about_keys(course):
    """The decisions about keys; the class has some about points as well."""
    return [one for one in decisions_of(course) if one.kind in ("newer key", "own key")]


def take(course, why=""):
    return decide(course, "newer key", **about_of(course, "newer key", {"set": SET, "why": why}))


def test_a_class_with_the_kits_own_key_is_offered_nothing(course):
    assert "" == newer_key(course, SET)
    with pytest.raises(CourseError, match="no newer key"):
        about_of(course, "newer key", {"set": SET, "why": ""})


def test_a_changed_range_of_drawn_numbers_changes_no_mark_in_silence(course, newer_kit):
    """Marking again, and handing out again, go on with the key that the class has."""
    marks, key, notebook = (
        marks_of(course), class_key(course, SET), course.release(SET).read_bytes(),
    )  # fmt: skip
    hand_out(course, SET)
    marked = mark_set(course, SET)

    assert ([], 0) == (marked.changes, marked.run)
    assert (marks, key) == (marks_of(course), class_key(course, SET))
    assert notebook == course.release(SET).read_bytes()
    assert [] == about_keys(course)


def test_the_desk_says_that_there_is_a_newer_key(course, newer_kit):
    state = class_state(course, {SET: "Buy enough"})
    said = "\n".join(in_words(state, course.roster, 0))

    assert state.sets[0].newer_key
    assert "Buy enough: the kit has a newer key, or the class has other settings" in said


def test_whose_numbers_answers_and_points_would_change_is_known_before(course, newer_kit):
    """36 to 64 in place of 32 to 60, in the same eight steps: each draw is 4 covers more.

    So q1 is another number for all 24; of q2's to q5's own numbers none is touched.
    """
    before = marks_of(course)
    other = what_changes(course, SET, kits_key(course, SET))
    first = other.moved[SMALL[0]][0]

    assert set(course.roster) == set(other.moved)
    assert {"q1"} == {one.question for those in other.moved.values() for one in those
                      if one.numbers_differ}  # fmt: skip
    assert (set(SMALL), set(SMALL)) == (other.handed_in, other.marked)
    assert ("q1",) == other.texts
    covers = [int(side[0].split()[1]) for side in first.given]
    assert 4 == covers[1] - covers[0]
    assert marks_of(course) == before and [] == about_keys(course)


def test_the_points_that_marked_work_would_get_are_those_that_it_then_gets(course, newer_kit):
    """What was shown is what follows, student by student and question by question."""
    other = what_changes(course, SET, kits_key(course, SET))
    shown = {
        (student, one.question): one.points
        for student, those in other.moved.items()
        for one in those
        if one.points_differ
    }
    take(course)
    changed = mark_set(course, SET).changes

    assert shown == {(one.student, one.question): (one.before, one.after) for one in changed}
    assert {"q1"} <= {question for _, question in shown}


def test_it_is_said_by_name_with_how_far_their_work_has_come(course, newer_kit):
    lines = key_in_words(what_changes(course, SET, kits_key(course, SET)), course.roster)

    assert "– other numbers drawn: 24 students" in lines
    marked, waiting = [
        [line for line in lines.splitlines() if line.startswith(f"  {words}; other numbers in q1")]
        for words in ("Marked", "Nothing handed in")
    ]
    assert 1 == sum("Ada Quill (BH-1001)" in line for line in marked)
    assert 1 == sum("Dolores Pane (BH-1004)" in line for line in waiting)
    for student, name in course.roster.items():
        assert 1 == lines.count(f"{name} ({student})")
    assert "For example, Ada Quill, q1: " in lines
    assert "Other words, tolerance, points or slips: q1." in lines


def test_taking_it_is_a_line_in_the_journal_and_taking_back_brings_all_of_it_back(
    course, newer_kit
):
    key, notebook, marks = (
        class_key(course, SET), course.release(SET).read_bytes(), marks_of(course),
    )  # fmt: skip
    made = take(course, "the new menu")
    during = class_key(course, SET)

    assert kits_key(course, SET) == during != key
    assert "36" in json.dumps(json.loads(course.release(SET).read_bytes())["cells"])
    assert ("newer key", "the new menu") == (made.kind, about_keys(course)[-1].why)
    assert "" == newer_key(course, SET)
    assert mark_set(course, SET).changes

    decide(course, "take back", line=made.number)
    assert (key, notebook) == (class_key(course, SET), course.release(SET).read_bytes())
    mark_set(course, SET)
    assert marks == marks_of(course)
    assert newer_key(course, SET)


def test_who_stays_with_the_own_key_is_asked_again_only_by_a_key_newer_still(course, newer_kit):
    """Declining is about one key of the kit."""
    decide(course, "own key", **about_of(course, "own key", {"set": SET, "why": "mid-term"}))

    assert "" == newer_key(course, SET)
    text = newer_kit.read_text(encoding="utf-8")
    newer_kit.write_text(text.replace(NEW_RANGE, "covers=steps(40, 68, 4,"), encoding="utf-8")
    assert newer_key(course, SET)


def test_who_declined_a_key_may_take_it_after_all(course, newer_kit):
    decide(course, "own key", **about_of(course, "own key", {"set": SET, "why": ""}))
    take(course, "for the second half of the term")

    assert class_key(course, SET) == kits_key(course, SET)


def test_a_key_that_changed_after_the_look_is_not_taken(course, newer_kit):
    about = about_of(course, "newer key", {"set": SET, "why": ""})
    text = newer_kit.read_text(encoding="utf-8")
    newer_kit.write_text(text.replace(NEW_RANGE, "covers=steps(40, 68, 4,"), encoding="utf-8")

    with pytest.raises(CourseError, match="Look again first"):
        decide(course, "newer key", **about)
    assert [] == about_keys(course)


def test_a_stop_between_the_decision_and_its_files_is_mended_by_the_next_marking(
    course, newer_kit, monkeypatch
):
    """The list of decisions is the truth; the files follow."""

    def stopped(*_):
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(hand_out_module, "_put_out", stopped)
        with pytest.raises(KeyboardInterrupt):
            take(course)
    assert class_key(course, SET) != kits_key(course, SET)
    mark_set(course, SET)

    assert class_key(course, SET) == kits_key(course, SET)


def test_on_the_command_line_it_is_shown_first_and_counts_with_sure(course, newer_kit, capsys):
    key = class_key(course, SET)
    place = ["--class", str(course.folder)]

    assert 0 == main(["hand-out", SET, *place])
    assert "whose numbers would change: newer-key 04-buy-enough" in capsys.readouterr().out
    assert 0 == main(["newer-key", SET, *place])
    told = capsys.readouterr().out
    assert "Ada Quill (BH-1001)" in told and "with --sure" in told
    assert key == class_key(course, SET)

    assert 0 == main(["newer-key", SET, "--sure", "--why", "agreed with the class", *place])
    assert "newer key: 04-buy-enough" in capsys.readouterr().out
    assert key != class_key(course, SET)


def test_where_nobodys_numbers_change_that_is_said(course, newer_kit):
    """A word of the text only."""
    text = newer_kit.read_text(encoding="utf-8").replace(NEW_RANGE, OLD_RANGE)
    newer_kit.write_text(text.replace("a spoon of celeriac", "a spoonful of celeriac", 1), "utf-8")
    other = what_changes(course, SET, kits_key(course, SET))

    assert {} == other.moved
    assert (
        "With the kit's newer key nobody's numbers, right answers or points change.\n"
        "Other words, tolerance, points or slips: q1."
    ) == key_in_words(other, course.roster)


def test_records_are_left_as_they_were_by_a_look(course, newer_kit):
    before = usable_records(course, SET)
    what_changes(course, SET, kits_key(course, SET))

    assert before == usable_records(course, SET)


def test_other_conventions_after_handing_out_are_offered_like_a_newer_key(course):
    """Money in pounds where the set went out in dollars: q4 and q5 have other numbers."""
    key = class_key(course, SET)
    change_lines(course, {("college",): {"country": "UK"}})
    british = open_course(course.folder)
    hand_out(british, SET)
    other = what_changes(british, SET, kits_key(british, SET))

    assert newer_key(british, SET)
    assert key == class_key(british, SET)
    assert {"q4", "q5"} <= {one.question for those in other.moved.values() for one in those
                            if one.numbers_differ}  # fmt: skip
