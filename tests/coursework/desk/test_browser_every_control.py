"""Every control of the desk is operated once in a browser, by the keyboard, in a term's order.

The class, its hand-ins and its marks are invented. One server, one page, one class of 24.
"""

import base64
import io
import json
import re
import zipfile

import pytest
from coursework.classes.course import open_course
from coursework.deciding_commands import COMMANDS
from coursework.desk.deciding_panel import ALSO, BOXES, KINDS
from coursework.desk.serving import LOOK, PAGE

from tests.helpers.accessible import serious_in
from tests.helpers.browser import (
    DESK,
    NEEDS_CHROMIUM,
    PHONE,
    SCREENSHOTS,
    browse,
    copy_kit,
    serve,
)
from tests.helpers.desk_class import TITLE, care, class_file, new_class
from tests.helpers.desk_page import DeskPage, out_of_view, tab_through

pytestmark = NEEDS_CHROMIUM

SET = "04-buy-enough"
DOT = base64.b64decode(
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJg"
    "gg=="
)
HIGHEST_PANEL = 3000  # px: a picture is empty where it goes past the window


@pytest.fixture(scope="module")
def kit(tmp_path_factory):
    """A copy of the kit without a class, the desk's page on it, and the errors of the page."""
    folder = tmp_path_factory.mktemp("desk")
    copy_kit(folder / "kit")
    found = {"JUPYTER_PATH": str(LOOK), "JUPYTER_CONFIG_PATH": str(LOOK)}
    served = serve(folder / "kit", folder / "home", folder / "kit", environment=found)
    with served as (address, token), browse() as page:
        errors = []
        page.on("pageerror", lambda error: errors.append(str(error)))
        page.goto(f"{address}/voila/render/{PAGE}?token={token}")
        page.get_by_role("button", name="Play the demonstration class").wait_for()  # the last one
        yield folder / "kit", DeskPage(page), errors


@pytest.fixture(scope="module")
def played(kit):
    """All panels used, one after the other; the class as it is then, and the page."""
    folder, desk, errors = kit
    classes = folder / "instructor" / "classes"
    new_class(desk)
    _steps(desk, classes / "demo")
    class_file(desk)
    _inbox(desk)
    _written(desk)
    _decisions(desk, classes / "demo")
    _trays(desk)
    _student(desk)
    _tables(desk)
    _looks(desk)
    care(desk, classes)
    return open_course(classes / "demo"), desk, errors


def test_no_control_is_left_and_none_ends_in_an_error(played):
    """No error of the page, no traceback in it, and no button that says the kit itself failed."""
    course, desk, errors = played

    assert [] == desk.left()
    assert [] == errors
    assert [] == [one for one in desk.said if "the kit itself failed" in one]
    assert "Traceback" not in desk.page.inner_text("body")
    assert 22 == len(course.roster)


@pytest.mark.parametrize("place", ["the desk", "feedback", "class", "skills", "term"])
def test_axe_finds_nothing_serious_in_light_or_dark(played, place):
    """On the desk with all its panels filled, and on each kind of page that it writes."""
    course, desk, _ = played
    pages = {
        "feedback": next(course.folder.glob(f"feedback/*/{SET}/*.html")),
        "class": course.reports / f"{SET}.html",
        "skills": course.reports / "skills.html",
        "term": course.reports / "term-marks.html",
    }
    if place == "the desk":
        assert [] == serious_in(desk.page)
        return
    with desk.page.context.browser.new_context() as window:
        page = window.new_page()
        page.goto(pages[place].as_uri())

        assert [] == serious_in(page)


def test_tab_alone_leads_to_every_control_and_the_focus_is_seen(played):
    """From the top to the end of the page, with all panels filled: no trap, nothing left out."""
    _, desk, _ = played

    assert {"reached": [], "seen": []} == tab_through(desk.page)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [DESK, PHONE], ids=["desk", "phone"])
def test_nothing_is_wider_than_the_page_and_no_words_than_their_place(played, size, scheme):
    """With all panels filled; and a picture of each panel, to look at."""
    _, desk, _ = played
    desk.page.set_viewport_size({**size, "height": HIGHEST_PANEL})
    desk.page.emulate_media(color_scheme=scheme)
    folder = SCREENSHOTS / "instructor" / "desk" / f"{size['width']}-{scheme}"
    folder.mkdir(parents=True, exist_ok=True)
    for name in desk.headings():
        desk.panel(name).screenshot(path=folder / f"{name}.png".replace(" ", "-"))

    assert desk.page.evaluate("() => document.scrollingElement.scrollWidth") <= size["width"]
    assert [] == out_of_view(desk.page)


def _steps(desk, folder):
    """Hand out to report; then a later file comes that only itself says to be a student's."""
    steps = desk.panel("The steps, in order")
    assert "Give this notebook" in desk.press(steps, "Hand out")
    desk.upload(steps, "Or choose files", ("scan of BH-1002.txt", b"celeriac"))
    assert "1 file taken in" in desk.press(steps, "Take in")
    assert "24 hand-ins are marked" in desk.press(steps, "Mark")
    assert "24 pages" in desk.press(steps, "Hand back")
    desk.tick(steps, "In the one file: a folder for each student")
    assert ".zip" in desk.press(steps, "Hand back as one file")
    assert "Mark sheet:" in desk.press(steps, "Report")
    later = folder.parents[3] / "later"
    later.mkdir()
    raw = open_course(folder).submitted(SET, "BH-1010").read_bytes()
    (later / "again.ipynb").write_bytes(raw.replace(b"q1 = ", b"q1 =  "))
    desk.fill(steps, "Folder or zip", str(later))
    assert "waits for your word" in desk.press(steps, "Take in")


def _inbox(desk):
    """Which of two files counts; one file is placed, the others are set aside."""
    box = desk.panel("The inbox")
    assert "1 hand-in waits for your word" in desk.press(box, "Show the inbox")
    for nth in range(box.locator("button.widget-toggle-button").count()):
        desk.turn(box, nth)
    desk.choose(box, "This one counts", 2)
    assert "1 decision is in the journal" in desk.press(box, "Let those chosen count")
    assert "ticked" in desk.press(box, "Tick all that are sure")
    for nth in range(box.get_by_label("It is from", exact=True).count()):
        desk.choose(box, "It is from", 1, nth=nth)
        desk.choose(box, "Set", TITLE, nth=nth)
    while "Press “Place those ticked” again" in desk.press(box, "Place those ticked"):
        pass
    for nth in range(box.get_by_role("checkbox").count()):
        desk.check(box.get_by_role("checkbox").nth(nth))
    desk.fill(box, "Why set aside", "No hand-in.")
    assert "set aside for good" in desk.press(box, "Set those ticked aside")
    assert "24 hand-ins are marked" in desk.press(desk.panel("The steps, in order"), "Mark")


def _written(desk):
    """Two written answers, with a remark that is used again."""
    panel = desk.panel("What waits for you")
    assert "wait" in desk.press(panel, "Show what waits")
    written = panel.get_by_label("Question", exact=True).locator("option").count() - 1
    desk.choose(panel, "Question", written)
    # Its answer comes after the question is shown: what is typed then stays.
    assert "This is the first one" in desk.press(panel, "Back to the one before")
    for remark in ("Say which scale.", ""):
        points = panel.get_by_label(re.compile("^Points, 0 to"))
        desk.type_into(points, "2,5")
        if remark:
            desk.fill(panel, "A word to the student", remark)
        else:
            desk.choose(panel, "Use again", "Say which scale.")
        assert ": 2.5 of " in desk.press(panel, "Enter the points, next")
    desk.press(panel, "Skip this answer")
    desk.press(panel, "Back to the one before")


def _decisions(desk, folder):
    """Every kind of decision, each in the journal; then one is taken back there."""
    panel = desk.panel("What you decide")
    key = folder / "source" / "04-buy-enough" / "04-buy-enough.ipynb"
    text = key.read_text(encoding="utf-8")  # the class's key, as an earlier kit had it
    key.write_text(text.replace("a spoon of celeriac", "a spoonful of celeriac"), encoding="utf-8")
    numbers = folder / "keys" / SET / "as-handed-out.numbers.json"  # and what it asked for
    earlier = json.loads(numbers.read_text(encoding="utf-8"))
    earlier["BH-1008"]["q1"][1] = "another answer"
    numbers.write_text(json.dumps(earlier), encoding="utf-8")
    typed = {
        "question": "q3", "time": "2026-10-04 09:00", "mark": "knife skills", "points": "2,5",
        "out_of": "20", "answer": "3 kg", "step": "", "line": "1",
    }  # fmt: skip
    for kind, wanted in _kinds(desk, panel):
        if "student" in wanted:
            desk.choose(panel, "Student", "Hana Reed (BH-1008)")
        if "file" in wanted:
            desk.choose(panel, "File", 2)
        for name in wanted & BOXES.keys():
            desk.fill(panel, BOXES[name][0], typed[name])
        desk.fill(panel, "Why, or a word to the student", f"Tried: {kind}.")
        desk.press(panel, "Look whose marks change")
        assert "is in the journal" in desk.press(panel, "Decide"), kind
    journal = desk.panel("The journal")
    assert "decisions" in desk.press(journal, "Show the journal")
    desk.choose(journal, "Decision", 0)
    desk.fill(journal, "Why taken back", "Only tried.")
    assert "is taken back" in desk.press(journal, "Take it back")


def _kinds(desk, panel):
    """Choose one kind of decision after the other; each with the boxes that it shows."""
    for _, kind, typed, _ in COMMANDS:
        desk.choose(panel, "Decide", KINDS[kind])
        yield kind, {*typed.split(), *ALSO.get(kind, ())}


def _trays(desk):
    """A picture without a mat is refused in a sentence, and gives no mark."""
    panel = desk.panel("Trays in photos")
    assert "photos came" in desk.press(panel, "Show the hand-ins' photos")
    desk.choose(panel, "Student", "Hana Reed (BH-1008)")
    desk.upload(panel, "Choose the tray's photo", ("tray.png", DOT))
    desk.choose(panel, "Named cut", 1)
    desk.fill(panel, "The mat's two lines (mm)", "100, 100")
    assert "This photo is not measured." in desk.press(panel, "Measure the tray")
    desk.choose(panel, "Practical mark", "knife skills")
    desk.fill(panel, "Points", "14")
    desk.fill(panel, "Why, or a word to the student", "Even dice.")
    assert "it is not measured, so it is not kept" in desk.press(panel, "Keep it and give the mark")
    assert "Trays kept with" in desk.press(panel, "Show the student's trays")


def _student(desk):
    """One student, a file of theirs, and every box for a decision about them."""
    panel = desk.panel("One student")
    desk.choose(panel, "Student", "Jolanta Fisk (BH-1010)")
    assert "Jolanta Fisk: all that is known" in desk.press(panel, "Show the student")
    desk.choose(panel, "Look into", 1)
    panel.get_by_label("What is in the file").wait_for()
    for _, wanted in _kinds(desk, panel):
        for name in wanted & BOXES.keys():
            desk.fill(panel, BOXES[name][0], "1")
    desk.choose(panel, "Decide", KINDS["excused"])
    # Its answer comes after the boxes for this decision are shown.
    assert "changes nothing for anybody else" in desk.press(panel, "Look whose marks change")
    desk.choose(panel, "Student", "Jolanta Fisk (BH-1010)", nth=1)
    panel.get_by_label("File", exact=True).evaluate("one => { one.dataset.used = 'yes' }")
    desk.fill(panel, "Why, or a word to the student", "Ill.")
    assert "is in the journal" in desk.press(panel, "Decide")


def _tables(desk):
    """The grid of practical marks, a table of them, results from elsewhere, the mark book."""
    grid = desk.panel("Practical marks")
    assert "24 students." in desk.press(grid, "Show the grid")
    desk.choose(grid, "Practical mark", 0)
    for nth in range(grid.get_by_role("textbox").count()):
        desk.type_into(grid.get_by_role("textbox").nth(nth), "15,5")
    assert "24 marks are in" in desk.press(grid, "Enter the practical marks")
    term = desk.panel("The term's mark book")
    table = b"student_number,knife skills\nBH-1001,18\n"
    desk.upload(term, "Practical marks (CSV)", ("practical.csv", table))
    assert "Mark book:" in desk.press(term, "Make the mark book")
    desk.upload(term, "Results (OneRoster zip)", ("results.zip", _results()))
    assert "knife skills: 1 mark is in." in desk.press(term, "Take the results in")
    assert "oneroster.zip" in desk.press(term, "Write the OneRoster files")


def _results():
    raw = io.BytesIO()
    with zipfile.ZipFile(raw, "w") as packed:
        packed.writestr("lineItems.csv", "sourcedId,title,resultValueMax\n7,Knife skills,20\n")
        packed.writestr("results.csv",
                        "lineItemSourcedId,studentSourcedId,score\n7,BH-1002,19\n")  # fmt: skip
    return raw.getvalue()


def _looks(desk):
    """The class's page, and what to teach again."""
    assert "beside the mark sheet" in desk.press(desk.panel("How the class did"), "Show the class")
    panel = desk.panel("What to teach again")
    assert "skills.html" in desk.press(panel, "Show what is not got")
    desk.choose(panel, "For whom", 0, 1)
    assert ".ipynb" in desk.press(panel, "Make the re-teach sheets")
