"""`python3 lessons` in a browser: one page for all, live on this computer's own Python."""

import json
import shutil
from dataclasses import replace

import pytest

from kitchenmath.pages.form import Form
from kitchenmath.pages.here import options
from tests.helpers.browser import KIT, NEEDS_CHROMIUM, PHONE, SCREENSHOTS, browse, serve
from tests.helpers.predictions import say_then_move

pytestmark = [*NEEDS_CHROMIUM, pytest.mark.slow]
SET = "04-buy-enough"


@pytest.fixture(scope="module")
def kit(tmp_path_factory):
    """A copy of what students have."""
    folder = tmp_path_factory.mktemp("kit")
    for name in ("kitchenmath", "lessons", "assignments"):
        shutil.copytree(KIT / name, folder / name)
    return folder


@pytest.fixture(scope="module")
def page(kit, tmp_path_factory):
    """The start page, as it opens."""
    home = tmp_path_factory.mktemp("home") / "home"
    own = options(kit, "index.html")[1:3]  # `serve` has the others already
    with serve(kit, home, kit, own) as (address, token), browse() as page:
        page.set_viewport_size(PHONE)
        page.set_default_timeout(40_000)
        page.errors = []
        page.on("pageerror", lambda error: page.errors.append(str(error)))
        page.goto(f"{address}/?token={token}")
        yield page


def picture(page, name):
    folder = SCREENSHOTS / "home"
    folder.mkdir(parents=True, exist_ok=True)
    page.screenshot(path=folder / f"{name}.png", full_page=True)


def test_a_student_reads_practises_answers_and_sees_what_is_next(page, kit):
    """From the start page by links only: a lesson, a drill gone wrong, a set, and back."""
    assert page.url.partition("?")[0].endswith("/kitchen/index.html")
    assert page.locator("#next").inner_text() == "Next: Lesson 1, Measure and scale."

    page.get_by_role("link", name="Lesson 4").click()
    page.locator("html[data-ready=yes]").wait_for()
    drill = page.locator('[data-cell="drill-as-purchased"]')
    drill.get_by_label("Answer").fill("1 g")
    drill.get_by_label("Answer").press("Enter")
    drill.get_by_text("This number is not right").wait_for()
    page.locator("#end").scroll_into_view_if_needed()
    picture(page, "lesson-04")
    page.get_by_role("link", name="Go on to the set").click()

    page.locator("html[data-ready=yes]").wait_for()
    page.get_by_label("First, your student number").fill("BH-1007")
    page.locator('[data-field="q1"]').fill("3 kg")
    page.locator('[data-field="q1"]').blur()
    page.locator("[data-bar]").filter(has_text="1 of 6 answers are there").wait_for()
    page.get_by_role("button", name="Save my hand-in").click()
    file = f"assignments/{SET}/{SET}.ipynb"
    page.locator("[data-bar]").filter(has_text=f"Hand in this file: {file}").wait_for()

    assert Form((kit / file).read_bytes()).typed()["q1"] == "3 kg"

    page.get_by_role("link", name="All lessons and sets").click()
    picture(page, "start")
    card = page.locator("li", has=page.get_by_role("link", name="Set 4"))
    card.filter(has_text="Lesson read. Set: 1 of 6 answers are there, and saved.").wait_for()

    assert card.get_by_role("link", name="drill 1").count() == 1
    assert page.errors == []


def test_a_photo_is_chosen_on_a_sets_page_and_lies_in_the_file_to_hand_in(page, kit, tmp_path):
    """Set 3 on a phone: asked first; measured by this computer; out again without the tick."""
    pytest.importorskip("cv2", reason="OpenCV is not installed: the extra photo brings it")
    from tests.helpers.rendered import photo
    from tests.helpers.trays import tray

    scene = tray(70_020, "dice 3", "carrot")
    taken = tmp_path / "tray.jpg"
    taken.write_bytes(photo(replace(scene, pieces=scene.pieces[:12])))
    page.goto(f"{page.url.partition('/kitchen/')[0]}/kitchen/set-03-cut-to-size.html")
    page.locator("html[data-ready=yes]").wait_for()
    field = page.locator('[data-photo="q1"]')
    assert not field.get_by_text("Choose a photo").is_visible()

    field.get_by_label("My instructor may see a photo of my tray").check()
    for line in field.locator("[data-line]").all():
        line.fill("100")
    field.locator("input[type=file]").set_input_files(taken)
    field.get_by_text("12 single pieces").wait_for()
    field.locator("img").wait_for()
    picture(page, "set-03-photo")
    wide = page.evaluate(
        "[document.documentElement.scrollWidth, document.documentElement.clientWidth]"
    )
    file = kit / "assignments" / "03-cut-to-size" / "03-cut-to-size.ipynb"

    assert wide[0] <= wide[1]
    assert "12 single pieces" in Form(file.read_bytes()).photos["q1"]["words"]

    page.reload()
    page.locator("html[data-ready=yes]").wait_for()
    field.locator("img").wait_for()
    field.get_by_label("My instructor may see a photo of my tray").uncheck()
    field.locator("img").wait_for(state="hidden")
    page.wait_for_function("document.querySelector('[data-photo] .words').textContent === ''")

    assert page.errors == []


def test_a_prediction_opens_its_panel_is_kept_over_a_reload_and_can_be_emptied(page):
    """By keyboard alone: typed, Enter, on by Tab to the slider, an arrow; then asked again."""
    page.goto(f"{page.url.partition('/kitchen/')[0]}/kitchen/index.html")
    page.get_by_role("link", name="Lesson 4").click()
    page.locator("html[data-ready=yes]").wait_for()
    say_then_move(page)
    page.reload()
    page.locator("html[data-ready=yes]").wait_for()
    asked = page.locator('[data-cell="purchase-say"]')
    asked.get_by_text("You said 3.6 kg; it is 4 kg: 10 % too little.").wait_for()
    asked.get_by_role("button", name="Ask me again").press("Enter")
    asked.locator("input[type=range]").first.wait_for(state="detached")
    page.reload()
    page.locator("html[data-ready=yes]").wait_for()

    assert "" == asked.get_by_label("I say").input_value()
    assert 0 == asked.locator("input[type=range]").count()
    assert page.errors == []


def test_a_lesson_opens_with_four_questions_and_those_of_the_re_teach_sheet_first(page, kit):
    """A sheet that trains whole packs (lesson 4) lies beside the lessons; three others follow."""
    drill = "drill_panel(buying.DRILLS['whole packs'])"
    cell = {"id": "skill-1-drill", "cell_type": "code", "metadata": {}, "outputs": [],
            "source": [drill]}  # fmt: skip
    sheet = {"cells": [cell], "metadata": {"kitchen": {"practice": "re-teach", "round": 1}}}
    (kit / "lessons" / "practise.ipynb").write_text(json.dumps(sheet), encoding="utf-8")
    page.goto(f"{page.url.partition('/kitchen/')[0]}/kitchen/lesson-06-foam.html")
    recall = page.locator('[data-cell="recall-panel"]')
    recall.get_by_text("1 of 4, from lesson 4.").wait_for()
    recall.get_by_text("How many bags do you order?").wait_for()
    for place in (2, 3, 4):
        recall.get_by_role("button", name="Next question").click()
        recall.get_by_text(f"{place} of 4, from lesson").wait_for()
    recall.get_by_role("button", name="Next question").click()
    recall.get_by_text("0 of 4 came right.").wait_for()

    assert page.errors == []
