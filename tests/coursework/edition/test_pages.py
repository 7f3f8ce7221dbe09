"""Set and lesson pages without a browser: the notebook seen as a form, and nothing of a key."""

import io
import json
import re
import shutil
import zipfile

import numpy as np
import pytest
from coursework.classes.course import CourseError
from coursework.edition import compiling
from coursework.edition import runtime as runtime_module
from coursework.edition.checking import LIST, wrong_in
from coursework.edition.runtime import PYODIDE, runtime, sum_of
from coursework.edition.serve import address_of, code_of, server
from coursework.edition.smaller import STDLIB, lessons_apart, without_what_no_page_asks_for
from coursework.edition.student_zip import student_zip
from coursework.edition.wheels import DEPENDS, lock_of, zipped
from coursework.sets.hand_out import ASSIGNMENTS
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key
from coursework.sets.notebooks import LESSONS

from kitchenmath.pages import writing
from kitchenmath.pages.form import Form
from kitchenmath.pages.live import Lesson
from tests.helpers.filled_in import ALL, SET, TYPED, filled, honest, marked, points, raw

SETS = set_ids()


def released(set_id):
    return (ASSIGNMENTS / set_id / f"{set_id}.ipynb").read_bytes()


def typed_of(book_answers):
    """What is typed in the fields, from answers in code: q1 = "3 kg" is 3 kg."""
    return {name: re.sub(r"^q\d+ = \"(.*)\"$", r"\1", text) for name, text in book_answers.items()}


def test_a_photo_that_goes_along_stays_when_a_page_fills_the_rest_in():
    """Old words below other cells go; the picture below set 3's photo cell is part of the work."""
    notebook = json.loads(released("03-cut-to-size"))
    photo = next(cell for cell in notebook["cells"] if cell["id"].endswith("-photo"))
    shown = {"data": {"image/jpeg": "/9j/"}, "metadata": {}, "output_type": "display_data"}
    photo["outputs"] = [shown]
    saved = json.loads(Form(json.dumps(notebook).encode()).filled({"student": "BH-1007"}))

    assert [[shown]] == [cell["outputs"] for cell in saved["cells"] if cell.get("outputs")]


def test_a_page_and_a_notebook_give_the_same_marks():
    """BH-1007 by hand (see `filled_in`): all points, typed in fields or in cells."""
    form = Form(released(SET))
    saved = form.filled({"student": "BH-1007", **typed_of(TYPED)})

    assert ALL == points(marked(saved)) == points(marked(honest()))


@pytest.mark.parametrize("set_id", SETS)
def test_right_answers_typed_in_a_sets_fields_are_all_there(set_id):
    """Of every set: the model answers of one student, as text; each field says that it is there."""
    key = load_key(key_notebook(set_id))
    form = Form(released(set_id))
    typed = {"student": "BH-1007"}
    for question, known in key.sheet.known("BH-1007"):
        right = (one.answer for one in question.played(known) if one.way == "right")
        typed[question.id] = next(answer for answer in right if isinstance(answer, str))
    typed |= {one: "In my own words." for one, kind in form.fields.items() if kind == "written"}
    seen = form.shown(typed)

    assert (seen["of"], seen["of"]) == (seen["there"], len(form.fields))
    assert "BH-1007" == seen["student"]["number"]


@pytest.mark.parametrize("set_id", SETS)
def test_what_was_saved_is_opened_again(set_id):
    """Also on another device: the file holds all that was typed."""
    form = Form(released(set_id))
    typed = {"student": "BH-1007"} | {
        one: "words of mine" if kind == "written" else "3 kg" for one, kind in form.fields.items()
        if kind in ("line", "written")
    }  # fmt: skip
    again = Form(form.filled(typed)).typed()

    assert typed == {name: again[name] for name in typed}


def test_a_cell_that_computes_is_left_alone_by_an_empty_field():
    """Whoever computes in the notebook and opens it on the page loses nothing."""
    book = filled("BH-1007", q1="q1 = one.covers * one.portion / one.yield_")
    form = Form(raw(book))

    assert "q1" not in form.typed()
    assert 3.0 == points(marked(form.filled({"student": "BH-1007", "q1": ""})))["q1"]


@pytest.mark.parametrize("set_id", SETS)
def test_nothing_of_a_key_is_in_a_page(set_id):
    """No slip, sentence or line of working; no hidden mark."""
    page = writing.set_page(released(set_id), version="x")
    key = load_key(key_notebook(set_id))
    for question in key.sheet.questions.values():
        for slip in question.slips:
            assert slip.name not in page
            assert slip.sentence not in page
        assert not [line for line in question.working if line in page]
    assert not [mark for mark in ("HIDDEN", "SOLUTION", "Slip(", "award") if mark in page]


@pytest.mark.parametrize("lesson", sorted(LESSONS.glob("*.ipynb")), ids=lambda file: file.stem)
def test_a_lesson_is_text_at_once_with_its_code_folded(lesson):
    """Before Python is there: the prose, what cells printed, and code behind a summary."""
    page = writing.lesson_page(lesson.read_bytes(), lesson.stem, {}, files={}, version="x")

    assert page.count("Show the computing") >= 3
    assert "<details" in page and "<script>alert" not in page
    assert "http://" not in page.replace("http://www.w3.org", "")
    assert f'href="set-{lesson.stem}.html">set ' in page
    assert "in the folder" not in page


@pytest.mark.parametrize("lesson", sorted(LESSONS.glob("*.ipynb")), ids=lambda file: file.stem)
def test_a_page_shows_every_kind_of_control_that_a_lesson_has(lesson, monkeypatch, tmp_path):
    """Each cell runs and none fails; what its panels say of themselves, `panels.js` can show."""
    script = (writing.STATIC / "panels.js").read_text()
    [listed] = re.findall(r"const KINDS = \{(.*?)\};", script, re.DOTALL)
    known = set(re.findall(r"(\w+):", listed))
    opened = []
    shutil.copytree(LESSONS / "data", tmp_path / "data")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("comm.create_comm", None)
    live = Lesson(lambda message, _: opened.append(message["data"].get("state", {})))
    for source in json.loads(page_data(lesson))["sources"].values():
        live.run(source)
    made = {
        state["_model_name"].removesuffix("Model") for state in opened if "_model_name" in state
    }
    shown = {kind for kind in made if not kind.endswith(("Style", "Layout"))}

    assert {"VBox", "HTML"} <= shown
    assert set() == shown - known


def page_data(lesson):
    """What a lesson's page knows of its cells, as JSON."""
    page = writing.lesson_page(lesson.read_bytes(), lesson.stem, version="x")
    return re.search(r'id="page">(.*?)</script>', page, re.DOTALL)[1]


def test_a_panels_picture_stands_in_the_page_until_it_is_live():
    """Lesson 4's panel with sliders; a drill has no picture, and its place says that it comes."""
    text = lesson_with({"own-yield": "pictures/x.png"})

    assert '<img src="pictures/x.png" loading="lazy" alt="The panel, as it will show' in text
    assert "A panel shows here in a moment." in text


def lesson_with(pictures):
    lesson = LESSONS / f"{SET}.ipynb"
    return writing.lesson_page(lesson.read_bytes(), lesson.stem, pictures, version="x")


def test_students_get_what_they_need_and_no_more():
    """An allow-list: no key, no coursework, no test, no history."""
    with zipfile.ZipFile(io.BytesIO(student_zip({SET: released(SET)}))) as packed:
        names = packed.namelist()
    tops = {name.split("/")[1] if "/" in name else name for name in names}

    assert not [name for name in names if re.search(r"instructor|tests|\.git|keys", name)]
    assert {"kitchenmath", "lessons", "assignments", "pyproject.toml"} <= tops
    assert any(name.endswith("LICENSE") for name in names)


def test_a_changed_missing_or_added_file_is_named(tmp_path):
    (tmp_path / "index.html").write_text("page")
    (tmp_path / "gone.html").write_text("page")
    sums = {name: "0" * 64 for name in ("gone.html",)}
    import hashlib

    sums["index.html"] = hashlib.sha256(b"page").hexdigest()
    (tmp_path / LIST).write_text(json.dumps({"files": sums}))

    assert ["gone.html is another file than the one that was built."] == wrong_in(tmp_path)

    (tmp_path / "gone.html").unlink()
    (tmp_path / "more.html").write_text("x")

    assert ["gone.html is missing.", "more.html does not belong to it."] == wrong_in(tmp_path)
    with pytest.raises(CourseError, match="holds no edition"):
        wrong_in(tmp_path / "nothing")


def test_what_no_page_asks_for_is_left_out_and_the_rest_stays_as_it_was():
    """By `left_out.txt`: tests of every wheel, codes of other alphabets; licences travel along."""
    wheel = zipped({"pint/a.py": "1", "pint/testsuite/a.py": "2", "pint/tests/b.py": "3",
                    "pint-1.dist-info/licenses/LICENSE": "4", "pint/numpy.pyi": "5"})  # fmt: skip
    library = zipped({"encodings/utf_8.py": "1", "encodings/euc_kr.py": "2", "tests/c.py": "3"})
    files = {"pint-1-py3-none-any.whl": wheel, STDLIB: library}
    smaller = without_what_no_page_asks_for(files)
    left = {name: names_in(raw) for name, raw in smaller.items()}

    assert {"pint/a.py", "pint-1.dist-info/licenses/LICENSE"} == left["pint-1-py3-none-any.whl"]
    assert {"encodings/utf_8.py", "tests/c.py"} == left[STDLIB]
    assert smaller == without_what_no_page_asks_for(files)


def test_what_only_lessons_ask_for_lies_in_a_file_of_its_own():
    """By `lessons_only.txt`: a set loads numpy without its chance; nothing is lost, none twice."""
    wheel = zipped({"numpy/a.py": "1", "numpy/random/b.so": "2", "numpy-2.dist-info/METADATA": "3"})
    files = {"numpy-2-cp314-wasm32.whl": wheel, "six-1-any.whl": zipped({"six.py": "4"})}
    apart = lessons_apart(files)
    lock = lock_of(apart, {"packages": {}})["packages"]

    assert {"numpy/random/b.so"} == names_in(apart["numpy_for_lessons-2.zip"])
    assert {"numpy/a.py", "numpy-2.dist-info/METADATA"} == names_in(apart[next(iter(files))])
    assert files["six-1-any.whl"] == apart["six-1-any.whl"]
    assert "2" == lock["numpy-for-lessons"]["version"]
    assert "numpy-for-lessons" in DEPENDS["matplotlib"]
    assert not {"numpy-for-lessons"} & {*DEPENDS["kitchenmath"], *DEPENDS["pint"]}


def test_without_node_a_phone_compiles_for_itself_and_the_builder_says_so(monkeypatch):
    """The pages are the same; only their start takes longer."""
    monkeypatch.setattr(compiling.shutil, "which", lambda name: None)
    files = {"kit-1-py3-none-any.whl": zipped({"kit.py": "1"})}

    assert files == compiling.compiled(files, {})
    assert "Install Node.js" in compiling.NO_NODE


def names_in(raw):
    with zipfile.ZipFile(io.BytesIO(raw)) as packed:
        return set(packed.namelist())


def test_without_the_npm_client_or_with_another_package_it_says_so(tmp_path, monkeypatch):
    monkeypatch.setattr(runtime_module, "PARTS", tmp_path / "parts")
    monkeypatch.setattr(runtime_module.shutil, "which", lambda name: None)
    with pytest.raises(CourseError, match=r"npm client once.*--runtime FOLDER"):
        runtime()
    with pytest.raises(CourseError, match=rf"holds no {re.escape(PYODIDE.archive)}\. Make"):
        runtime(tmp_path)
    (tmp_path / PYODIDE.archive).write_bytes(b"another")
    with pytest.raises(CourseError, match="its sum is another"):
        runtime(tmp_path)


def test_the_sum_of_a_package_is_npms(tmp_path):
    """Referee: hashlib's sha512 of nothing in base64, as published in FIPS 180-4's examples."""
    assert sum_of(b"").startswith("sha512-z4PhNX7vuL3xVChQ1m2AB9Yg5AULVxXcg/SpIdNs6c5H0NE8XYXysP+D")


def test_the_address_is_drawn_as_a_code_that_a_camera_reads(tmp_path):
    """Referee: OpenCV's decoder. A sign is two points: █ both light, ▀ the upper, ▄ the lower."""
    cv2 = pytest.importorskip("cv2")
    made = server(tmp_path)
    address = address_of(made)
    made.server_close()
    lines = [re.sub(r"\x1b\[[\d;]*m", "", line) for line in code_of(address).splitlines()]
    points = [[255 * (sign in light) for sign in line] for line in lines for light in ("█▀", "█▄")]
    seen = np.pad(np.kron(np.array(points, np.uint8), np.ones((8, 8), np.uint8)), 80)

    assert re.fullmatch(r"http://127\.0\.0\.1:\d+/", address)
    assert address == cv2.QRCodeDetector().detectAndDecode(seen)[0]
