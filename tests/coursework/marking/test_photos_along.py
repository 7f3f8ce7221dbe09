"""A photo that comes with a hand-in: marked copy, page and record hold it, and nothing more."""

import base64
import io
import json
from dataclasses import asdict

import pytest

from tests.helpers.records import record

pytest.importorskip("PIL", reason="Pillow is not installed: the extra photo brings it")

from coursework.arriving.photos import inert_jpeg
from coursework.classes.course import Bounds, new_course
from coursework.marking.mark_one import mark
from coursework.records.photos import photos_of
from coursework.reports.hand_back import student_page
from coursework.sets.hand_out import ASSIGNMENTS
from coursework.sets.key_text import key_notebook
from PIL import Image

from tests.helpers.filled_in import STUDENT
from tests.helpers.pages import assert_sound

SET = "03-cut-to-size"
RELEASED = (ASSIGNMENTS / SET / f"{SET}.ipynb").read_bytes()
TYPED = {
    "me": f'student = "{STUDENT}"',
    "q1-answer": 'q1 = "3.1, 2.9, 3.2, 2.8, 3.0, 3.3, 2.7, 3.0, 3.1, 2.9 mm ± 0.2 mm"',
    "q1-photo": 'tray_for_hand_in(photo="/home/somebody/tray.jpg", line_across="100")',
}


def jpeg():
    file = io.BytesIO()
    Image.new("RGB", (30, 20), (60, 105, 190)).save(file, "JPEG", comment=b"<script>")
    return file.getvalue()


def handed_in(picture, beside=()):
    """Set 3 with readings and, below its photo cell, a picture."""
    book = json.loads(RELEASED)
    for cell in book["cells"]:
        cell["source"] = TYPED.get(cell["id"], cell["source"])
        if cell["id"] in ("q1-photo", *beside):
            data = {"image/jpeg": picture, "text/html": "<script>alert(1)</script>"}
            cell["outputs"] = [{"output_type": "display_data", "data": data, "metadata": {}}]
    return json.dumps(book).encode()


def marked(raw):
    return mark(
        {"key": key_notebook(SET), "released": RELEASED, "hand_in": raw, "term": "demo",
         "student": STUDENT, "bounds": asdict(Bounds())}
    )  # fmt: skip


def below(notebook, name):
    cells = {cell["id"]: cell for cell in json.loads(notebook)["cells"]}
    return cells[name]


@pytest.fixture(scope="module")
def with_photo():
    """One hand-in with a picture below the photo cell, and below two that bring none."""
    picture = base64.b64encode(jpeg()).decode()
    return marked(handed_in(picture, beside=("q1-given", "title")))


def test_the_marked_copy_holds_the_photo_and_nothing_else_that_stood_there(with_photo):
    """What a person who marks sees: our cell, and below it a picture without its comment."""
    _, notebook = with_photo
    cell = below(notebook, "q1-photo")
    data = cell["outputs"][0]["data"]

    assert {"image/jpeg", "text/plain"} == set(data)
    assert inert_jpeg(jpeg()) == base64.b64decode(data["image/jpeg"])
    assert "somebody" not in notebook
    assert "alert(1)" not in notebook


def test_a_photo_below_another_cell_comes_nowhere(with_photo):
    """Only the cell that was handed out for it brings one."""
    made, notebook = with_photo

    assert ("q1",) == made.photos
    assert 1 == notebook.count("image/jpeg")


def test_the_readings_of_a_photo_earn_what_they_would_have_earned(with_photo):
    """Ten readings with a unit, to a tenth of a millimetre: all 3 points of question 1."""
    first = next(one for one in with_photo[0].answered if one.question == "q1")

    assert 3 == first.points


def test_the_page_shows_it_and_still_loads_nothing(with_photo, tmp_path):
    """The page's own rule for the browser: pictures out of the page, and from nowhere else."""
    course = new_course(tmp_path / "class", "Brackwater House", "demo", {STUDENT: "Ada Quill"})
    copy = course.autograded(SET, STUDENT)
    copy.parent.mkdir(parents=True)
    made, notebook = with_photo
    copy.write_text(notebook, encoding="utf-8")
    photos = photos_of(course, made)
    text = student_page(course, made, {}, photos=photos)

    assert 'src="data:image/jpeg;base64,' in text
    assert "default-src 'none'; style-src 'unsafe-inline'; img-src data:;" in text
    assert "img-src" not in student_page(course, made, {})
    assert_sound(student_page(course, made, {}))


def test_a_picture_that_cannot_be_shown_is_said_to_the_instructor_only():
    found, _ = marked(handed_in(base64.b64encode(b"GIF89a").decode()))

    assert ["q1: a photo came along and is not shown: it is no JPEG."] == list(found.to_do)
    assert () == found.photos
    assert not any("photo" in each for each in found.findings)


def test_a_record_from_before_there_were_photos_has_none(tmp_path):
    course = new_course(tmp_path / "class", "Brackwater House", "demo", {STUDENT: "Ada Quill"})

    assert {} == photos_of(course, record(STUDENT))
    assert {} == photos_of(course, record(STUDENT, photos=("q1",)))
