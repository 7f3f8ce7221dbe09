"""The desk in a real browser, from the demonstration class to its marks; and nbgrader's own page.

All tests share one class, which is played and marked once, by pressing the buttons.
"""

import re

import pytest
from coursework.classes.course import open_course
from coursework.gradebook.points import human_marks
from coursework.records.reading import usable_records

from tests.helpers.browser import DESK, NEEDS_CHROMIUM, open_lab, serve
from tests.helpers.desk_page import press

pytestmark = NEEDS_CHROMIUM

SET = "04-buy-enough"


@pytest.fixture(scope="module")
def lab(tmp_path_factory):
    with open_lab(tmp_path_factory.mktemp("lab")) as lab:
        yield lab


@pytest.fixture(scope="module")
def desk(lab):
    """The desk, after Run All Cells, as its first lines say."""
    with lab.notebook("instructor/desk.ipynb") as notebook:
        assert notebook.run_all() == []
        yield notebook


@pytest.fixture(scope="module")
def marked(lab, desk):
    """The demonstration class, played and marked by pressing the desk's buttons."""
    choose = desk.panel("choose")
    choose.get_by_text("There is no class yet").wait_for()
    said = press(desk, "new", "Play the demonstration class", "has handed in set")
    assert f"An invented class of 24 has handed in set {SET}." in said
    choose.get_by_label("Set").select_option("4. Buy enough")
    choose.get_by_text("Set “Buy enough”: handed out, 24 handed in, 0 marked.").wait_for()
    assert press(desk, "steps", "Mark", "marked").endswith("24 hand-ins are marked.")
    return open_course(lab.kit / "instructor" / "classes" / "demo")


def test_the_desk_says_how_far_the_demonstration_class_is(desk, marked):
    """Chosen by itself after it was played, with its 24 hand-ins marked."""
    choose = desk.panel("choose")
    choose.get_by_text("Set “Buy enough”: handed out, 24 handed in, 24 marked.").wait_for()
    desk.picture("choose", choose)
    desk.picture("new", desk.panel("new"))

    chosen = choose.get_by_label("Class").locator("option:checked").text_content()
    name = chosen.replace("\u00a0", " ")  # in a list a blank does not break
    assert name == "Brackwater House, demonstration class (invented)"
    assert [found.student for found in usable_records(marked, SET)[0]] == list(marked.roster)


def test_points_for_a_written_answer_reach_the_gradebook(desk, marked):
    """Typed at the desk, found under nbgrader."""
    found = press(desk, "written", "Show what waits", "answers wait")
    waiting = int(re.search(r"(\d+) answers wait", found)[1])
    panel = desk.panel("written")
    shown = panel.locator("[role=status]").all_text_contents()
    [student] = re.findall(r"BH-\d{4}", " ".join(shown))
    title = panel.get_by_label("Question").locator("option:checked").text_content()
    question = f"q{title.partition('.')[0]}"
    desk.picture("written", panel)
    assert any("Mark scheme" in words for words in shown)

    panel.get_by_label("Points, 0 to").fill("2.5")
    panel.get_by_label("A word to the student").fill("Say which scale you used.")
    enter = "Enter the points, next"
    said = press(desk, "written", enter, f"{waiting - 1} answers wait")

    assert f" {waiting - 1} answers wait" in said
    expected = (2.5, "Say which scale you used.")
    assert human_marks(marked, SET)[student, question] == expected


def test_handing_back_and_reporting_write_their_pages(desk, marked):
    """A page for each student, the mark sheet, and the class's page at the desk."""
    assert "24 pages" in press(desk, "steps", "Hand back", "pages")
    assert "Mark sheet:" in press(desk, "steps", "Report", "Mark sheet")
    desk.picture("steps", desk.panel("steps"))
    with desk.page.expect_popup() as opened:
        desk.panel("steps").get_by_role("link", name=f"reports/{SET}.html").click()
    opened.value.get_by_role("heading", name="how the class did").wait_for()
    opened.value.close()
    press(desk, "picture", "Show the class", "beside the mark sheet")
    page = desk.panel("picture").frame_locator("iframe")
    page.get_by_role("heading").first.wait_for()
    desk.picture("picture", desk.panel("picture"))

    assert len(list(marked.folder.glob(f"feedback/*/{SET}/*.html"))) == 24
    assert page.get_by_role("img").count() > 0


def test_nbgraders_own_page_marks_the_same_class(lab, desk, marked, tmp_path):
    """Its server opens in the class's folder; a point typed there is found by the kit."""
    served = serve(marked.folder, tmp_path / "home", lab.kit)
    browser = lab.page.context.browser
    with served as (address, token), browser.new_context(viewport=DESK) as window:
        page = window.new_page()
        page.goto(f"{address}/formgrader?token={token}")
        page.goto(f"{address}/formgrader/gradebook/{SET}/{SET}")
        page.get_by_role("link", name="Submission #2", exact=True).click()
        box = page.locator("input.score#q6-answer")
        box.scroll_into_view_if_needed()
        page.screenshot(path=desk.pictures / "nbgrader.png")
        shown = page.locator("a.name-shown").text_content().replace(",", " ").split()
        with page.expect_response(lambda answer: answer.request.method == "PUT") as saved:
            box.fill("3")
            box.press("Tab")
        assert saved.value.ok

    student = next(one for one, name in marked.roster.items() if set(name.split()) == set(shown))
    assert human_marks(marked, SET)[student, "q6"][0] == 3.0
