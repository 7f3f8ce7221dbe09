"""Trays in photos at the desk: measured, kept as evidence of a practical mark, and erased.

The class is invented, and its photo is rendered.
"""

import json
import shutil
import zipfile
from dataclasses import replace
from datetime import UTC, datetime

import pytest

pytest.importorskip("cv2", reason="OpenCV is not installed: the extra photo brings it")

from coursework.care.archive import export_student
from coursework.care.erasing import erase_student
from coursework.classes.course import new_course, open_course
from coursework.command import main
from coursework.desk import desk as desk_module
from coursework.desk.desk import Desk
from coursework.gradebook.decision_list import decisions_of
from coursework.records.trays import TRAYS, trays_of
from coursework.sets.hand_out import hand_out
from coursework.terms.term_book import term_book

from tests.helpers.desk import press
from tests.helpers.records import SET, leave, record, verdict
from tests.helpers.rendered import photo
from tests.helpers.trays import tray

ADA, BRAM = "BH-1", "BH-2"
PRACTICAL = '\n[practical."knife skills"]\nout_of = 20\n'


@pytest.fixture(scope="module")
def picture():
    """A photo of eight dice of 5 mm."""
    scene = tray(70_041, "dice 5", "carrot")
    return photo(replace(scene, pieces=scene.pieces[:8]))


@pytest.fixture(scope="module")
def handed_out(tmp_path_factory):
    """A class with one practical mark; handing out takes a while, so it is done once."""
    folder = tmp_path_factory.mktemp("classes") / "autumn"
    new_course(folder, "Brackwater House", "demo", {ADA: "Ada Quill", BRAM: "Bram Oakes"})
    with (folder / "course.toml").open("a", encoding="utf-8") as file:
        file.write(PRACTICAL)
    hand_out(open_course(folder), SET)
    return folder


@pytest.fixture
def course(handed_out, tmp_path):
    """That class, for one test."""
    return open_course(shutil.copytree(handed_out, tmp_path / "classes" / "autumn"))


@pytest.fixture
def panel(course, monkeypatch):
    monkeypatch.setattr(desk_module, "CLASSES", course.folder.parent)
    return Desk().trays()


def measured(panel, picture, student=ADA):
    panel.student.value = student
    panel.upload.value = (
        {"name": "tray.jpg", "type": "image/jpeg", "size": len(picture), "content": picture,
         "last_modified": datetime.now(UTC)},
    )  # fmt: skip
    panel.lines.value = "100, 100"
    return press(panel, "Measure the tray")


def marks_of(course, student):
    return next(one for one in term_book(course).students if one.number == student).marks[-1]


def test_a_measured_tray_becomes_evidence_of_a_mark(course, panel, picture):
    """14 of 20 points is a share of 0.7; the journal's line names the picture that is kept."""
    said = measured(panel, picture)
    panel.mark.value, panel.points.value = "knife skills", "14"
    press(panel, "Keep it and give the mark")
    (kept,), (line,) = trays_of(course, ADA), decisions_of(course)

    assert "8 single pieces" in said
    assert (line.kind, line.student, line.question) == ("practical mark", ADA, "knife skills")
    assert (14, 20, kept.file) == (line.points, line.out_of, line.file)
    assert 8 == len(kept.pieces)
    assert 0.7 == marks_of(course, ADA).share
    assert f"trays/{ADA}" == marks_of(course, ADA).evidence
    assert marks_of(course, BRAM).share is None


def test_a_tray_is_not_given_to_the_student_who_is_chosen_next(course, panel, picture):
    measured(panel, picture)
    panel.student.value, panel.points.value = BRAM, "14"

    assert "Measure this student's tray first" in press(panel, "Keep it and give the mark")
    assert not decisions_of(course)
    assert not (course.folder / TRAYS).exists()


def test_more_points_than_there_are_keep_nothing(course, panel, picture):
    measured(panel, picture)
    panel.points.value = "21"

    assert "more than there is" in press(panel, "Keep it and give the mark")
    assert not decisions_of(course)


def test_what_is_kept_is_shown_with_the_line_that_rests_on_it(panel, picture):
    measured(panel, picture)
    panel.points.value = "14"
    press(panel, "Keep it and give the mark")
    press(panel, "Show the student's trays")

    assert "data:image/jpeg;base64," in panel.shown.value
    assert "14 of 20 points" in panel.shown.value.replace("\u00a0", " ")


def test_a_tray_travels_with_its_student_and_is_erased_with_them(course, panel, picture, tmp_path):
    measured(panel, picture)
    panel.points.value = "14"
    press(panel, "Keep it and give the mark")
    taken = zipfile.ZipFile(export_student(course, ADA, tmp_path)).namelist()
    erase_student(course, ADA)

    assert 2 == sum(name.startswith("trays/") for name in taken)
    assert not (course.folder / TRAYS / ADA).exists()
    assert [] == decisions_of(course)


def test_the_same_is_typed_as_a_command(course, picture, tmp_path, capsys):
    """A mark that is none of the class's is refused by name."""
    file = tmp_path / "tray.jpg"
    file.write_bytes(picture)
    here = ["--class", str(course.folder)]

    assert 0 == main(["practical", BRAM, "knife skills", "12,5", "--photo", str(file), *here])
    assert 12.5 == marks_of(course, BRAM).points
    assert 1 == len(trays_of(course, BRAM))
    assert 0 != main(["practical", BRAM, "speed", "3", *here])
    assert "knife skills" in capsys.readouterr().err


def test_the_journal_goes_before_the_table_and_says_so(course, tmp_path):
    """12 in the table, then 14 in the journal: 14 counts."""
    file = tmp_path / "marks.csv"
    file.write_text(f"student_number,knife skills\n{ADA},12\n{BRAM},9\n", encoding="utf-8")
    main(["practical", ADA, "knife skills", "14", "--class", str(course.folder)])
    main(["term-marks", "--practical", str(file), "--class", str(course.folder)])
    book = term_book(course)

    assert (14, 9) == (marks_of(course, ADA).points, marks_of(course, BRAM).points)
    assert any("The journal's counts" in sentence for sentence in book.to_look_at)


def test_the_photos_of_a_set_are_shown_beside_the_readings_that_were_typed(course, monkeypatch):
    """What stands in our marked copy; a student's own words are shown as letters."""
    monkeypatch.setattr(desk_module, "CLASSES", course.folder.parent)
    data = {"image/jpeg": "AAAA", "text/plain": ""}
    copy = course.autograded(SET, ADA)
    copy.parent.mkdir(parents=True)
    cell = {"id": "q1-photo", "outputs": [{"data": data}]}
    copy.write_text(json.dumps({"cells": [cell]}), encoding="utf-8")
    with_photo = record(ADA, verdict("q1", answer="<b>3.1</b> mm"), photos=("q1",))
    leave(course, with_photo, record(BRAM, verdict("q1")))
    desk = Desk()
    desk.sets.value = SET
    panel = desk.trays()

    assert "1 photo came" in press(panel, "Show the hand-ins' photos")
    assert 'src="data:image/jpeg;base64,AAAA"' in panel.shown.value
    assert "Ada" in panel.shown.value and "Bram" not in panel.shown.value
    assert "&lt;b&gt;3.1" in panel.shown.value


def test_a_damaged_tray_is_left_out(course):
    folder = course.folder / TRAYS / ADA
    folder.mkdir(parents=True)
    (folder / "a.json").write_text(json.dumps({"practical": "knife skills"}), encoding="utf-8")
    (folder / "b.json").write_text("[", encoding="utf-8")

    assert [] == trays_of(course, ADA)
