"""After a key was corrected: whose points changed, told, listed, and kept through every stop."""

from datetime import datetime

import pytest
from coursework import class_commands, command
from coursework.errors import CourseError
from coursework.gradebook.points import all_marks
from coursework.marking import mark_set as module
from coursework.marking.changes import Change, ChangeList
from coursework.marking.mark_set import mark_set
from coursework.marking.words import marked_in_words
from coursework.sets.class_keys import kits_key

from tests.helpers.filled_in import SET, class_copy, record_of
from tests.helpers.small_class import SMALL, correct_key, listed, slips_worth

PLACE = f"reports/{SET}-changes.csv"


@pytest.fixture
def corrected(small_class, tmp_path):
    """The class, all marked; then the key was corrected. With it what must change, by hand.

    Slips that were worth 1 point are worth 1.5: +0.5 for who made one.
    """
    course = class_copy(small_class, tmp_path / "class")
    mark_set(course, SET)
    expected = sorted([*each, "1", "1.5"] for each in slips_worth(course, 1.0))
    correct_key(course)
    assert len(expected) >= 2
    return course, expected


def test_a_corrected_key_keeps_human_marks_and_says_what_changed_for_whom(corrected):
    course, expected = corrected
    human = {row[1:3]: row[4] for row in all_marks(course) if row[4] is not None}
    marked = mark_set(course, SET)
    after = {row[1:3]: row for row in all_marks(course)}

    assert [Change(*each[:2], 1.0, 1.5) for each in expected] == marked.changes
    assert len(SMALL) == marked.run
    assert len(human) == 2
    assert human == {place: row[4] for place, row in after.items() if row[4] is not None}
    for student, question, *_ in expected:
        assert 1.5 == after[student, f"{question}-check"][3]
        assert f"\n  {student}, {question}: 1 → 1.5\n" in marked_in_words(marked)
    assert marked_in_words(marked).endswith(f"These and all earlier changes stand in {PLACE}.")


def test_the_list_holds_each_change_with_its_time_as_a_sheet(corrected):
    """Of now, to the second; with the mark and the line ends that spreadsheets look for."""
    course, expected = corrected
    start = datetime.now().replace(microsecond=0)
    mark_set(course, SET)
    lines = listed(course)

    assert expected == sorted(line[1:] for line in lines)
    assert all(start <= datetime.fromisoformat(line[0]) <= datetime.now() for line in lines)


def test_a_first_marking_and_a_new_hand_in_change_nothing_for_anybody(corrected):
    """BH-1021 hands in again: its points are of another file."""
    course, expected = corrected
    assert [] == listed(course)
    again = course.submitted(SET, expected[0][0])
    again.write_bytes(again.read_bytes().replace(b"q1 = ", b"q1 =  "))
    mark_set(course, SET)

    others = [each for each in expected if each[0] != expected[0][0]]
    assert others == sorted(line[1:] for line in listed(course))


def test_stopped_at_the_first_change_the_list_is_whole_in_the_end(corrected):
    """Ctrl-C as soon as there is a list; the next marking finds the rest, and none twice."""
    course, expected = corrected

    def stop(*_):
        if listed(course):
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt) as stopped:
        mark_set(course, SET, stop, workers=1)
    first = listed(course)
    marked = mark_set(course, SET)

    assert 1 <= len(first) < len(expected)
    assert [f"Points changed for some students already: see {PLACE}."] == stopped.value.__notes__
    assert len(marked.changes) < len(expected)  # what it cannot know any more is in the list
    assert first == listed(course)[: len(first)]
    assert expected == sorted(line[1:] for line in listed(course))


@pytest.mark.parametrize("instant", ["before", "after"])
def test_stopped_right_beside_a_record_a_change_is_listed_once(corrected, monkeypatch, instant):
    """The two worst instants for a kill: before and after the record of a changed hand-in is there.

    Before it the next marking finds the change again; after it, it cannot find it any more.
    """
    course, expected = corrected
    student, real = expected[0][0], module.write_safely

    def write(path, *words, **more):
        if path.name != f"{student}.json":
            real(path, *words, **more)
            return
        if instant == "after":
            real(path, *words, **more)
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(module, "write_safely", write)
        with pytest.raises(KeyboardInterrupt):
            mark_set(course, SET)
    assert student in [line[1] for line in listed(course)]
    mark_set(course, SET)

    assert expected == sorted(line[1:] for line in listed(course))


def test_the_same_change_another_day_is_listed_again(corrected):
    """1 → 1.5 by a correction that was taken back and made again: three lines for each."""
    course, expected = corrected
    mark_set(course, SET)
    corrected_key = course.key(SET).read_bytes()
    course.key(SET).write_bytes(kits_key(course, SET))  # the kit's own again
    mark_set(course, SET)
    course.key(SET).write_bytes(corrected_key)
    mark_set(course, SET)
    back = [[*each[:2], "1.5", "1"] for each in expected]

    assert sorted([*expected, *back, *expected]) == sorted(line[1:] for line in listed(course))


def test_the_command_says_where_the_changes_stand_when_it_is_stopped(
    corrected, monkeypatch, capsys
):
    course, _ = corrected

    class Stops(class_commands.Progress):
        def __call__(self, *_):
            if listed(course):
                raise KeyboardInterrupt

    monkeypatch.setattr(class_commands, "Progress", Stops)

    assert 130 == command.main(["mark", SET, "--class", str(course.folder)])
    said = capsys.readouterr().err.splitlines()
    assert "Stopped. Nothing is lost: the same command goes on from here." in said
    assert f"Points changed for some students already: see {PLACE}." == said[-1]


def test_a_half_line_of_a_power_cut_does_not_swallow_the_next(small_class, tmp_path):
    """The half stays as it is; the next change has a line of its own."""
    course = class_copy(small_class, tmp_path / "class")
    changes = ChangeList(course, SET)
    changes.add([Change("BH-1001", "q1", 1.0, 1.5)], since=0)
    changes.file.write_bytes(changes.file.read_bytes()[:-6])
    changes.add([Change("BH-1002", "q2", 2.0, None)], since=0)

    assert ["BH-1001", "q1", "1"] == listed(course)[0][1:]
    assert ["BH-1002", "q2", "2", "open"] == listed(course)[1][1:]


def test_a_student_number_in_the_list_is_no_formula(small_class, tmp_path):
    """A number may begin with @ or -: a quote keeps a spreadsheet from running it."""
    course = class_copy(small_class, tmp_path / "class")
    for _ in range(2):
        ChangeList(course, SET).add([Change("@SUM", "q1", 1.0, 2.0)], since=0)

    assert [["'@SUM", "q1", "1", "2"]] == [line[1:] for line in listed(course)]


def test_a_list_that_cannot_be_written_stops_before_the_record_changes(corrected):
    """A folder stands in its place, as a file that is open elsewhere would on Windows."""
    course, expected = corrected
    (course.folder / PLACE).mkdir(parents=True)
    with pytest.raises(CourseError, match=f"{PLACE} cannot be written .*then mark again"):
        mark_set(course, SET, workers=1)
    student, question = expected[0][:2]
    record = record_of(course, student)

    assert 1.0 in [each.points for each in record.answered if each.question == question]
    (course.folder / PLACE).rmdir()
    mark_set(course, SET)
    assert expected == sorted(line[1:] for line in listed(course))
