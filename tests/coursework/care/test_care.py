"""A student erased and exported, a class backed up and restored. The class is invented."""

import csv
import io
import json
import sqlite3
import zipfile
from contextlib import closing

import pytest
from coursework.arriving.arrivals import read_list
from coursework.arriving.take_in import take_in
from coursework.care.archive import ABOUT, back_up, export_student, restore
from coursework.care.erasing import erase_student, still_named
from coursework.classes.course import open_course
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.command import main
from coursework.demo import play
from coursework.errors import CourseError
from coursework.gradebook.points import all_marks, enter_human
from coursework.marking.mark_set import mark_set
from coursework.reports.hand_back import hand_back
from coursework.reports.report import report
from coursework.sets.hand_out import NBGRADER_FILE

from tests.helpers.filled_in import SET, class_copy

ADA = "BH-1001"
NOT_COMPARED = ("gradebook.db", ".at-work", NBGRADER_FILE)  # the last one names the folder


@pytest.fixture(scope="module")
def whole(tmp_path_factory):
    """The demonstration class after one set: marked, handed back and reported."""
    course, places = play(tmp_path_factory.mktemp("care") / "class")
    take_in(course, places)
    mark_set(course, SET)
    enter_human(course, SET, ADA, "q6", 2.5, "Well reasoned.")
    hand_back(course, SET)
    report(course, SET)
    return course


@pytest.fixture
def course(whole, tmp_path):
    return class_copy(whole, tmp_path / "class")


def test_an_erased_student_is_named_nowhere_any_more(course):
    """Referee: every byte of every file of the class, searched for number and name.

    The folder `post` is the demonstration's own letter box, outside of what a class keeps.
    """
    before = {row for row in all_marks(course) if row[1] != ADA}
    rows = _rows_of(course, ADA)
    erased = erase_student(course, ADA)
    after = open_course(course.folder)
    left = [place for place in erased.left if not place.startswith("post/")]

    assert (ADA, "Ada Quill") == (erased.student, erased.name)
    assert [] == left
    assert ADA not in after.roster and 23 == len(after.roster)
    assert before == set(all_marks(after))
    assert 0 < rows == erased.marks
    assert "roster.csv: their line" in erased.gone
    assert f"feedback/{ADA}" in erased.gone


def _rows_of(course, student):
    """Grades and remarks that hang on a student, counted past the kit."""
    theirs = (
        "(SELECT book.id FROM submitted_notebook book JOIN submitted_assignment set_ "
        "ON book.assignment_id = set_.id WHERE set_.student_id = ?)"
    )
    with closing(sqlite3.connect(course.gradebook_file)) as book:
        return sum(
            book.execute(
                f"SELECT count(*) FROM {table} WHERE notebook_id IN {theirs}", [student]
            ).fetchone()[0]
            for table in ("grade", "comment")
        )


def test_nothing_of_the_others_is_lost(course):
    """Their hand-ins still lie where they came in, and the class is marked again as before."""
    others = {one.sha256 for one in read_list(course) if one.student and one.student != ADA}
    erase_student(course, ADA)
    after = open_course(course.folder)
    mark_set(after, SET)

    assert others == {one.sha256 for one in read_list(after) if one.student}
    assert 23 == len({row[1] for row in all_marks(after)})


def test_a_row_that_was_deleted_does_not_stay_in_the_gradebooks_bytes(course):
    """SQLite keeps deleted rows in free pages; the remark to Ada is text that can be found."""
    assert b"Well reasoned." in course.gradebook_file.read_bytes()

    erase_student(course, ADA)

    assert b"Well reasoned." not in course.gradebook_file.read_bytes()


def test_erasing_somebody_unknown_changes_nothing(course):
    files = sorted(course.folder.rglob("*"))
    with pytest.raises(CourseError, match="from BH-9999"):
        erase_student(course, "bh-9999")

    assert files == sorted(course.folder.rglob("*"))


def test_a_number_within_a_longer_one_is_somebody_else(course, tmp_path):
    """BH-100 is not BH-1001."""
    assert [] == still_named(course, "BH-100")
    assert "roster.csv" in still_named(course, ADA)


def test_a_student_takes_everything_along(course, tmp_path):
    """The file as it was handed in, our marked copy, the page, the marks; and of nobody else."""
    file = export_student(course, "bh-1001", tmp_path)
    with zipfile.ZipFile(file) as packed:
        names = packed.namelist()
        marks = list(csv.reader(io.StringIO(packed.read("marks.csv").decode("utf-8-sig"))))
        text = b"".join(packed.read(name) for name in names)

    assert {"person.csv", "marks.csv", f"feedback/{SET}.html", f"marks/{SET}.json"} <= set(names)
    assert any(name.startswith(f"handed-in/{SET}/") for name in names)
    assert [SET, "q6-answer", "", "2.5", ""] in [[*row[:4], row[4] or ""] for row in marks]
    assert not any(other.encode() in text for other in course.roster if other != ADA)


def test_a_backup_restored_elsewhere_is_the_same_class(course, tmp_path):
    """Roster, marks and every file byte for byte; the gradebook as SQLite says it."""
    seen = []
    file = back_up(course, tmp_path, lambda *step: seen.append(step))
    again = restore(file, "elsewhere", tmp_path / "classes")
    kept = [path.relative_to(course.folder) for path in course.folder.rglob("*") if path.is_file()]
    other = [path for path in kept if path.name not in NOT_COMPARED]

    assert course.roster == again.roster
    assert sorted(all_marks(course)) == sorted(all_marks(again))
    assert all((course.folder / one).read_bytes() == (again.folder / one).read_bytes()
               for one in other)  # fmt: skip
    assert ("ok",) == sqlite3.connect(again.gradebook_file).execute(
        "PRAGMA integrity_check"
    ).fetchone()
    assert seen and seen[-1][0] == seen[-1][1]


def test_a_restored_class_works_on(course, tmp_path):
    """Marked again there, nothing is run twice and every mark stands."""
    again = restore(back_up(course, tmp_path), "elsewhere", tmp_path / "classes")

    assert 0 == mark_set(again, SET).run


def test_a_class_is_never_written_over(course, tmp_path):
    file = back_up(course, tmp_path)
    restore(file, "elsewhere", tmp_path / "classes")

    with pytest.raises(CourseError, match="is there already"):
        restore(file, "elsewhere", tmp_path / "classes")


@pytest.mark.parametrize("spoil", ["no zip", "other", "version", "outside", "cut", "name"])
def test_what_is_no_whole_backup_is_refused_and_leaves_nothing(course, tmp_path, spoil):
    """One sentence each, and no half of a class."""
    good = back_up(course, tmp_path)
    bad = tmp_path / "bad.zip"
    about = {"kind": "a class of the kitchen teaching kit", "version": 1, "class": "c"}
    if spoil == "no zip":
        bad.write_text("celeriac")
    elif spoil == "cut":
        bad.write_bytes(good.read_bytes()[:-5000])
    else:
        about |= {"version": 99} if spoil == "version" else {}
        about |= {"class": "../c"} if spoil == "name" else {}
        with zipfile.ZipFile(bad, "w") as packed:
            packed.writestr(ABOUT, "{}" if spoil == "other" else json.dumps(about))
            packed.writestr("class/../../out.txt", "x")

    with pytest.raises(CourseError):
        restore(bad, None, tmp_path / "classes")
    assert not (tmp_path / "out.txt").exists()
    assert not [path for path in tmp_path.glob("classes/*") if not path.name.startswith(".half")]


def test_while_another_step_is_at_work_nothing_is_erased_or_backed_up(course, tmp_path):
    with one_at_a_time(course, "marking"):
        for step in (lambda: erase_student(course, ADA), lambda: back_up(course, tmp_path)):
            with pytest.raises(CourseError, match="at work in this class: marking"):
                step()

    assert (course.folder / "submitted" / ADA).is_dir()
    assert not list(tmp_path.glob("*.zip"))


def test_the_commands_ask_before_they_erase(course, tmp_path, capsys):
    """Without --sure it lists what names the student; with it, what went. Then a backup is made."""
    where = ["--class", str(course.folder)]

    assert 0 == main(["erase", ADA, *where])
    assert "Nothing was erased" in capsys.readouterr().out
    assert ADA in open_course(course.folder).roster

    assert 0 == main(["export", ADA, "--to", str(tmp_path), *where])
    assert 0 == main(["erase", ADA, "--sure", *where])
    assert "Ada Quill (BH-1001) is erased." in capsys.readouterr().out
    assert 0 == main(["back-up", "--to", str(tmp_path / "class.zip"), *where])
    assert zipfile.is_zipfile(tmp_path / "class.zip")
