"""Files without a place, settled many at a time. The class is invented."""

import shutil

import pytest
from coursework.arriving.arrivals import read_list
from coursework.arriving.inbox import (
    Placing,
    in_words,
    inbox,
    place_many,
    replaced_by,
    set_aside_many,
    sure_placings,
)
from coursework.arriving.states import SET_ASIDE
from coursework.arriving.take_in import take_in
from coursework.classes.course import new_course, open_course
from coursework.command import main
from coursework.errors import CourseError
from coursework.sets.hand_out import hand_out

from tests.helpers.folders import put

SET = "04-buy-enough"
ROSTER = {"BH-1001": "Ada Quill", "BH-1002": "Bram Oakes", "BH-1003": "Zoë Ferny"}


@pytest.fixture(scope="module")
def handed_out(tmp_path_factory):
    """The class with its set, made once: each test has a copy."""
    course = new_course(tmp_path_factory.mktemp("made") / "class", "Class", "demo", ROSTER)
    hand_out(course, SET)
    return course.folder


@pytest.fixture
def course(handed_out, tmp_path):
    """Two documents in folders named after students, a scan of nobody, and a system's file."""
    course = open_course(shutil.copytree(handed_out, tmp_path / "class"))
    files = {"Quill Ada_1/work.pdf": b"%PDF-1", "BH-1002/notes.txt": b"3 kg", "scan.jpg": b"\xff",
             "Quill Ada_1/Thumbs.db": b"\xd0\xcf", "~$work.docx": b"."}  # fmt: skip
    take_in(course, put(tmp_path / "post", files))
    return course


def test_what_a_system_leaves_in_a_folder_is_set_aside_by_itself(course):
    """A picture cache and a word processor's lock: never asked about."""
    aside = {one.name for one in read_list(course) if one.became == SET_ASIDE}

    assert {"Quill Ada_1/Thumbs.db", "~$work.docx"} == aside
    assert 3 == len(inbox(course, SET))


def test_all_that_is_sure_is_placed_at_once(course):
    place_many(course, sure_placings(inbox(course, SET)))

    assert b"%PDF-1" == course.submitted(SET, "BH-1001").read_bytes()
    assert b"3 kg" == course.submitted(SET, "BH-1002").read_bytes()
    assert ["scan.jpg"] == [one.arrival.name for one in inbox(course, SET)]


def test_nothing_is_placed_where_one_of_many_is_odd(course):
    waiting = {one.arrival.name: one.arrival.sha256 for one in inbox(course, SET)}
    good = Placing(waiting["scan.jpg"], "BH-1003", SET)
    with pytest.raises(CourseError, match="BH-7 is not on the roster"):
        place_many(course, [good, Placing(waiting["BH-1002/notes.txt"], "BH-7", SET)])

    assert 3 == len(inbox(course, SET))


def test_a_file_that_meets_another_hand_in_is_said(course):
    """The one that is there, and the second of two for one student."""
    files = [one.arrival.sha256 for one in inbox(course, SET)]
    twice = [Placing(one, "BH-1003", SET) for one in files[:2]]

    assert twice[1:] == replaced_by(course, twice)

    place_many(course, twice[:1])

    assert twice[1:] == replaced_by(course, twice[1:])


def test_what_is_set_aside_stays_aside_when_it_comes_again(course, tmp_path):
    set_aside_many(course, [one.arrival.sha256 for one in inbox(course)], "Not ours.")
    take_in(course, tmp_path / "post")
    take_in(course, put(tmp_path / "again", {"scan 2.jpg": b"\xff"}))

    assert [] == inbox(course)


def test_the_words_name_the_student_and_why(course):
    [pdf] = [one for one in inbox(course, SET) if one.arrival.name.endswith("pdf")]

    assert any("the name stands in “Quill Ada_1”" in line for line in in_words(pdf, ROSTER))


def test_the_command_lists_and_places_what_is_sure(course, capsys):
    where = ["--class", str(course.folder)]

    assert 0 == main(["inbox", *where])
    assert "the number stands in “BH-1002”" in capsys.readouterr().out
    assert 0 == main(["inbox", "--set", SET, "--place-sure", *where])
    assert capsys.readouterr().out.startswith("2 files are placed, 1 left.")
