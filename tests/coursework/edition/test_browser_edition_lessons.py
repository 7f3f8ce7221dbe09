"""Every lesson of the built edition in Chromium: all panels live, a slider moved, a drill answered.

One load of a page a lesson, looked at on a desk and on a phone. It needs what
`test_browser_edition` needs.
"""

from types import SimpleNamespace

import pytest

from kitchenmath.drills import Round
from tests.helpers.accessible import WIDER, wider_at_200_percent
from tests.helpers.asked_drills import asked_by
from tests.helpers.browser import DESK, KIT, PHONE, browse, open_predictions
from tests.helpers.edition import NEEDS_WHEELS, listen, outside, shown
from tests.helpers.typed_answers import as_typed

pytestmark = NEEDS_WHEELS
LESSONS = sorted(path.stem for path in (KIT / "lessons").glob("*.ipynb"))
# Not the one that asks of earlier lessons, which draws another drill at each opening.
DRILL = (
    "[data-cell]:visible:has(button:text-is('Check')):not(:has(button:text-is('Next question')))"
)
SAYS_OTHER = """([panel, was]) => [...panel.querySelectorAll('[role=status]')]
    .map(part => part.innerText).join() !== was"""
SAYS = "panel => [...panel.querySelectorAll('[role=status]')].map(part => part.innerText).join()"


@pytest.fixture(scope="module")
def browser(tmp_path_factory):
    """A browser with the edition, and what it can be asked about."""
    folder = tmp_path_factory.mktemp("edition")
    with shown(folder, pictures={}) as (address, _), browse() as page:
        listen(page)
        yield SimpleNamespace(page=page, address=address)


def move_slider(page):
    """One step by keyboard on the first slider, until its panel says something else."""
    panel = page.locator("[data-cell]:has(input[type=range])").first
    panel.wait_for()
    handle = panel.locator("input[type=range]").first
    before = panel.evaluate(SAYS)
    low, high, now = (float(handle.evaluate(f"it => it.{end}")) for end in ("min", "max", "value"))
    handle.focus()
    page.keyboard.press("ArrowRight" if now < (low + high) / 2 else "ArrowLeft")
    page.wait_for_function(SAYS_OTHER, arg=[panel.element_handle(), before])


def answer_drill(page):
    """The right answer to the first drill, past the example that it opens with."""
    panel = page.locator(DRILL).first
    if (bare := panel.get_by_role("button", name="Without help")).count():
        bare.click()
        panel.get_by_role("button", name="Check").wait_for()
    turn = Round(asked_by(panel.locator("[role=status]:visible").first.text_content()))
    panel.get_by_label("Answer").fill(as_typed(turn.drill.question.right(turn.numbers)))
    panel.get_by_label("Answer").press("Enter")
    panel.get_by_text("✓ Right.").wait_for()


@pytest.mark.parametrize("lesson", LESSONS)
def test_a_lesson_is_live_at_both_widths_and_its_slider_and_drill_answer(lesson, browser):
    """At 1280 and 390 px, there also with text at 200 %, nothing reaches beyond the page.

    Nothing fails, and nothing comes from outside.
    """
    page = browser.page
    page.set_viewport_size(DESK)
    page.goto(f"{browser.address}lesson-{lesson}.html")
    page.locator("html[data-ready=yes]").wait_for(state="attached")
    said = page.locator("#ready").inner_text()
    answer_drill(page)
    open_predictions(page)
    wider = []
    for size in (DESK, PHONE):
        page.set_viewport_size(size)
        move_slider(page)
        wider.append(page.evaluate(WIDER))
    wider += wider_at_200_percent(page, PHONE)

    assert "All panels can be moved." == said
    assert [0, 0, 0, 0] == wider
    assert ([], []) == (page.errors, outside(page, browser.address))
