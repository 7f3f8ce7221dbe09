"""A class is backed up, and restored under another HOME in another folder of the kit.

Everything there is done by the commands, in processes of their own that know nothing of here.
The class is invented.
"""

import os
import shutil
import subprocess
import sys

import pytest
from coursework.arriving.take_in import take_in
from coursework.care import putting_away
from coursework.care.archive import back_up
from coursework.care.putting_away import archive, what_differs
from coursework.classes.course import open_course
from coursework.command import main
from coursework.deciding import decide
from coursework.demo import play
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import all_marks, enter_human
from coursework.marking.mark_set import mark_set
from coursework.reports.report import report
from coursework.sets.class_keys import class_key

from tests.helpers.browser import KIT, copy_kit
from tests.helpers.filled_in import SET, class_copy

ADA, BRAM = "BH-1001", "BH-1002"


@pytest.fixture(scope="module")
def whole(tmp_path_factory):
    """A class with everything that has to come along: a key of its own, settings, decisions."""
    course, places = play(tmp_path_factory.mktemp("here") / "autumn")
    key = course.key(SET)
    key.write_text(key.read_text("utf-8").replace("a spoon of", "a spoonful of"), "utf-8")
    take_in(course, places)
    mark_set(course, SET)
    enter_human(course, SET, ADA, "q6", 2.5, "Well reasoned.")
    decide(course, "excused", set_id=SET, student=BRAM, why="ill")
    report(course, SET)
    return course


@pytest.fixture(scope="module")
def elsewhere(whole, tmp_path_factory):
    """The class as it was restored by another kit, and what its commands said there."""
    ground = tmp_path_factory.mktemp("there")
    kit, home = ground / "kit", ground / "home"
    copy_kit(kit)
    shutil.copy(KIT / "pyproject.toml", kit)
    home.mkdir()
    backup = back_up(whole, home)
    said = [
        _typed(kit, home, "restore", str(backup)),
        _typed(kit, home, "mark", SET),
        _typed(kit, home, "report", SET),
        _typed(kit, home, "journal"),
        _typed(kit, home, "newer-key", SET),
    ]
    return open_course(kit / "instructor" / "classes" / "autumn"), said


def _typed(kit, home, *words):
    """One command there, with nothing of this machine's account but where Python's packages lie."""
    kept = {name: os.environ[name] for name in ("PATH", "LANG", "SYSTEMROOT") if name in os.environ}
    run = subprocess.run(
        [sys.executable, "instructor", *words],
        cwd=kit,
        env=kept | {"HOME": str(home), "USERPROFILE": str(home)},
        capture_output=True,
        text=True,
        encoding="utf-8",
        stdin=subprocess.DEVNULL,
    )
    assert 0 == run.returncode, run.stderr
    return run.stdout


def test_marks_decisions_settings_key_and_hand_ins_are_the_same_there(whole, elsewhere):
    """Marked again and reported there before the look, so a difference had its chance."""
    there, _ = elsewhere

    assert sorted(all_marks(whole)) == sorted(all_marks(there))
    assert decisions_of(whole) == decisions_of(there)
    assert (whole.roster, whole.policy, whole.term) == (there.roster, there.policy, there.term)
    assert class_key(whole, SET) == class_key(there, SET)
    for place in ("course.toml", "roster.csv"):
        assert (whole.folder / place).read_bytes() == (there.folder / place).read_bytes()
    for folder in ("arrived", "submitted", "marks", "autograded", "source", "release"):
        assert _files(whole, folder) == _files(there, folder)


def _files(course, folder):
    """Every file below a folder of the class, but the kit's own notes on what it knows already."""
    place = course.folder / folder
    files = (one for one in place.rglob("*") if one.is_file() and not one.name.startswith("."))
    return {one.relative_to(place).as_posix(): one.read_bytes() for one in files}


def test_marking_again_there_runs_nothing_and_changes_nothing(elsewhere):
    _, said = elsewhere

    assert "24 hand-ins are marked, 0 of them this time." in said[1]
    assert "changed" not in said[1]


def test_the_mark_sheet_there_is_the_one_from_here(whole, elsewhere):
    there, _ = elsewhere
    sheet = f"{SET}-marks.csv"

    assert (whole.reports / sheet).read_bytes() == (there.reports / sheet).read_bytes()


def test_the_journal_there_names_who_decided_here(whole, elsewhere):
    _, said = elsewhere

    assert "excused: 04-buy-enough, Bram Oakes. “ill”" in said[3]
    assert decisions_of(whole)[0].who in said[3]


def test_the_newer_key_of_the_kit_there_is_offered_and_not_taken(elsewhere):
    """The class's own key has another word in its text."""
    _, said = elsewhere

    assert "nobody's numbers, right answers or points change" in said[4]
    assert "Nothing is decided yet." in said[4]


def test_nothing_there_names_the_folder_from_which_it_came(whole, elsewhere):
    """A path of the other machine would send nbgrader's pages to a folder that is not there.

    The list of arrivals goes on saying from where each file was taken in: that is its record.
    """
    there, _ = elsewhere
    path = str(whole.folder).encode()
    files = [one for one in there.folder.rglob("*") if one.is_file() and one.stem != "list"]

    assert path in (whole.folder / "nbgrader_config.py").read_bytes()
    assert [] == [one.name for one in files if path in one.read_bytes()]


def test_an_archived_class_leaves_the_list_and_its_file_brings_all_of_it_back(whole, tmp_path):
    course = class_copy(whole, tmp_path / "classes" / "autumn")
    file = archive(course, tmp_path)

    assert not course.folder.exists() and [] == list((tmp_path / "classes").iterdir())
    again = putting_away.restore(file, "back", tmp_path / "classes")
    assert [] == what_differs(whole, again)


@pytest.mark.parametrize(
    ("spoil", "named"),
    [
        (lambda again: (again.folder / "roster.csv").unlink(), "roster.csv"),
        (lambda again: again.marks(SET, ADA).write_text("{}"), f"marks/{SET}/{ADA}.json"),
        (lambda again: enter_human(again, SET, ADA, "q6", 1), "marks"),
        (lambda again: decide(again, "excused", set_id=SET, student=ADA), "decisions"),
    ],
)
def test_a_file_that_does_not_bring_back_the_same_class_takes_nothing_away(
    whole, tmp_path, monkeypatch, spoil, named
):
    """As a full or failing disk would spoil what is read back."""
    course = class_copy(whole, tmp_path / "autumn")
    real = putting_away.restore

    def spoiled(*words):
        again = real(*words)
        spoil(again)
        return again

    monkeypatch.setattr(putting_away, "restore", spoiled)
    with pytest.raises(CourseError, match=f"the same class \\({named}"):
        archive(course, tmp_path)

    assert [] == what_differs(whole, open_course(course.folder))


def test_the_command_says_first_what_archiving_does(whole, tmp_path, capsys):
    course = class_copy(whole, tmp_path / "autumn")

    assert 0 == main(["archive", "--class", str(course.folder)])
    assert "Type it again with --sure." in capsys.readouterr().out
    assert 0 == main(["archive", "--sure", "--to", str(tmp_path), "--class", str(course.folder)])
    assert "demonstration class (invented)” is off the list." in capsys.readouterr().out
    assert not course.folder.exists()
