"""Trays kept with a student, read back from their files. Pieces and pictures are invented."""

import json
from types import SimpleNamespace

import pytest
from coursework.classes.course import new_course
from coursework.errors import CourseError
from coursework.records.trays import TRAYS, keep_tray, trays_of
from coursework.safe_files import digest

from tests.helpers.records import ROSTER

PICTURE = b"\xff\xd8 an invented picture"
PIECE = SimpleNamespace(
    number=1, width_mm=3.00049, length_mm=3.1, width_within_mm=0.2, length_within_mm=0.25049,
    doubts=("touches another",),
)  # fmt: skip


@pytest.fixture
def course(tmp_path):
    return new_course(tmp_path / "class", "Brackwater House (invented)", "demo", ROSTER)


def found(refused=False):
    board = SimpleNamespace(refused=refused, pieces=[PIECE])
    return SimpleNamespace(
        board=board, sentences=("1 piece.", "The mat is not in the picture."), small_jpeg=PICTURE
    )


def test_a_tray_is_read_back_as_it_was_measured(course):
    """By hand: 3.00049 mm is kept to a micrometre, 3.0 mm, and 0.25049 mm as 0.25 mm."""
    name = keep_tray(course, "BH-1", "knife skills", found())
    [tray] = trays_of(course, "BH-1")

    assert digest(PICTURE) == name == tray.file
    assert ("knife skills", PICTURE) == (tray.practical, tray.picture_jpeg)
    assert ("1 piece.", "The mat is not in the picture.") == tray.sentences
    assert {"number": 1, "width_mm": 3.0, "length_mm": 3.1, "width_within_mm": 0.2,
            "length_within_mm": 0.25, "doubts": ["touches another"]} == tray.pieces[0]  # fmt: skip
    assert [] == trays_of(course, "BH-2")


def test_a_refused_photo_is_evidence_of_nothing_and_says_why(course):
    with pytest.raises(CourseError, match="not in the picture"):
        keep_tray(course, "BH-1", "knife skills", found(refused=True))

    assert not (course.folder / TRAYS).exists()


@pytest.mark.parametrize("broken", ["{", "[]", "{}", json.dumps({"practical": "x", "pieces": []})])
def test_a_damaged_tray_is_left_out_and_the_others_stay(course, broken):
    name = keep_tray(course, "BH-1", "knife skills", found())
    (course.folder / TRAYS / "BH-1" / "damaged.json").write_text(broken, encoding="utf-8")

    assert [name] == [tray.file for tray in trays_of(course, "BH-1")]


def test_a_tray_without_its_picture_is_left_out(course):
    name = keep_tray(course, "BH-1", "knife skills", found())
    (course.folder / TRAYS / "BH-1" / f"{name}.jpg").unlink()

    assert [] == trays_of(course, "BH-1")
