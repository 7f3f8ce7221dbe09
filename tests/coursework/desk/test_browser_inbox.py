"""The inbox in a browser: each kind of file looked at and saved, many settled at once.

The class and its files are invented. The document is a zip, as a word processor writes it.
"""

import base64
import io
import json
import zipfile

import pytest
from coursework.arriving.arrivals import read_list
from coursework.arriving.states import SET_ASIDE
from coursework.arriving.take_in import take_in
from coursework.classes.course import new_course, open_course
from coursework.desk.serving import LOOK, PAGE
from coursework.sets.hand_out import hand_out

from tests.helpers.browser import NEEDS_CHROMIUM, browse, copy_kit, serve
from tests.helpers.desk_page import DeskPage
from tests.helpers.filled_in import filled
from tests.helpers.folders import put

pytestmark = NEEDS_CHROMIUM

SET, TITLE, OTHER = "04-buy-enough", "4. Buy enough", "01-measure-and-scale"
ROSTER = {"BH-1001": "Ada Quill", "BH-1002": "Bram Oakes", "BH-1003": "Zoë Ferny"}
DOT = base64.b64decode(
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJg"
    "gg=="
)
PDF = b"%PDF-1.4\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n"


def document():
    raw = io.BytesIO()
    with zipfile.ZipFile(raw, "w") as packed:
        packed.writestr("[Content_Types].xml", "<Types/>")
        packed.writestr("word/document.xml", "<w:document/>")
    return raw.getvalue()


def notebook(student, **answers):
    return json.dumps(filled(student, **answers)).encode()


FILES = {
    "Zoë Ferny/menu für 24.pdf": PDF,
    "Ada Quill/set 4.docx": document(),
    "Bram Oakes/notes.txt": b"3 kg <b>celeriac</b>",
    "Ada Quill/tray.png": DOT,
    "stranger.ipynb": notebook("BH-9999", q1="q1 = '<img src=x onerror=alert(1)> 3 kg'"),
    "set 1 of somebody.txt": b"another set",
    "Thumbs.db": b"\xd0\xcf\x11\xe0" + bytes(600),
}


@pytest.fixture(scope="module")
def inbox(tmp_path_factory):
    """The inbox as it is shown first: its panel, the page, the class's folder."""
    folder = tmp_path_factory.mktemp("inbox")
    kit = folder / "kit"
    copy_kit(kit)
    course = new_course(kit / "instructor/classes/class", "Class", "demo", ROSTER)
    hand_out(course, OTHER)
    hand_out(course, SET)
    take_in(course, put(folder / "post", FILES))
    found = {"JUPYTER_PATH": str(LOOK), "JUPYTER_CONFIG_PATH": str(LOOK)}
    served = serve(kit, folder / "home", kit, environment=found)
    with served as (address, token), browse() as page:
        page.goto(f"{address}/voila/render/{PAGE}?token={token}")
        page.get_by_role("button", name="Play the demonstration class").wait_for()  # the last one
        desk = DeskPage(page)
        desk.choose(desk.panel("Class and set"), "Set", TITLE)
        desk.panel("Class and set").get_by_text(f"Set “{TITLE[3:]}”: handed out").wait_for()
        box = desk.panel("The inbox")
        assert "6 files have no place." in desk.press(box, "Show the inbox")
        yield desk, box, course.folder


def row_of(box, name):
    """The innermost box that has this file's tick and its button."""
    tick = box.page.get_by_role("checkbox", name=name, exact=True)
    look = box.page.get_by_role("button", name="See the file")
    return box.locator(".widget-vbox").filter(has=tick).filter(has=look).last


def opened(box, name):
    """A file's row with what is in the file; a second press would close it again."""
    row = row_of(box, name)
    link = row.get_by_role("link", name="Save")
    if not link.count():
        row.get_by_role("button", name="See the file").click()
    link.wait_for()
    return row


@pytest.mark.parametrize("name", [name for name in FILES if name != "Thumbs.db"])
def test_every_kind_opens_from_a_link_under_its_own_name_and_ending(inbox, name):
    """What is saved is, byte for byte, what came in."""
    _, box, _ = inbox
    row = opened(box, name)
    with box.page.expect_download() as saved:
        row.get_by_role("link", name="Save").click()

    assert name.rpartition("/")[2] == saved.value.suggested_filename
    with open(saved.value.path(), "rb") as file:
        assert FILES[name] == file.read()


def test_a_picture_is_seen(inbox):
    _, box, _ = inbox
    picture = opened(box, "Ada Quill/tray.png").get_by_role("img", name="tray.png")

    assert 1 == picture.evaluate("one => one.decode().then(() => one.naturalWidth)")


def test_a_text_is_read_as_it_was_typed(inbox):
    _, box, _ = inbox
    shown = opened(box, "Bram Oakes/notes.txt").get_by_role("group", name="What is in the file")

    assert "3 kg <b>celeriac</b>" == shown.inner_text()


def test_a_notebook_is_read_only_and_nothing_of_it_runs(inbox):
    """Its answers as letters, without a box to type into; its picture tag is no picture."""
    _, box, _ = inbox
    shown = opened(box, "stranger.ipynb").get_by_role("group", name="What is in the file")

    assert "<img src=x onerror=alert(1)> 3 kg" in shown.inner_text()
    assert 0 == shown.locator("input, textarea, img, [contenteditable=true]").count()


@pytest.mark.parametrize("name", ["Zoë Ferny/menu für 24.pdf", "Ada Quill/set 4.docx"])
def test_what_only_another_program_shows_says_so(inbox, name):
    _, box, _ = inbox

    assert "open it with its own program" in opened(box, name).inner_text()


def test_a_file_of_another_set_than_the_chosen_one_is_said_aloud(inbox):
    _, box, _ = inbox
    words = row_of(box, "set 1 of somebody.txt").inner_text()

    assert "Another set: its name says “1. Measure and scale”" in words


def test_what_a_computer_makes_by_itself_is_set_aside_for_good(inbox):
    """It is in no row, also after everything is settled anew."""
    _, box, folder = inbox
    [made] = [one for one in read_list(open_course(folder)) if one.name == "Thumbs.db"]

    assert SET_ASIDE == made.became
    assert 0 == box.get_by_text("Thumbs.db").count()


def test_many_are_placed_at_once_and_many_set_aside(inbox):
    """Last, for it empties the inbox. Two of Ada's meet: that is asked about, then done."""
    desk, box, folder = inbox
    assert "4 files are ticked" in desk.press(box, "Tick all that are sure")
    assert "Nothing is placed yet." in desk.press(box, "Place those ticked")
    assert "4 files are placed." in desk.press(box, "Place those ticked")
    course = open_course(folder)
    assert PDF == course.submitted(SET, "BH-1003").read_bytes()

    for name in ("stranger.ipynb", "set 1 of somebody.txt"):
        desk.tick(box, name)
    desk.fill(box, "Why set aside", "Nobody's.")

    said = desk.press(box, "Set those ticked aside")
    assert "2 files are set aside for good. Every file has its place." in said
    assert "Every file has its place." in desk.press(box, "Show the inbox")
