"""Each lesson in a real browser: it runs, its sliders answer, its drills tell right from slip.

The words that a drill must show are computed here, apart from the kernel that shows them.
"""

import pytest

from kitchenmath.drills import Round
from kitchenmath.practice import in_words
from tests.helpers.asked_drills import asked_by
from tests.helpers.browser import DESK, KIT, NEEDS_CHROMIUM, PHONE, open_lab
from tests.helpers.typed_answers import as_typed

pytestmark = NEEDS_CHROMIUM

LESSONS = sorted(path.name for path in (KIT / "lessons").glob("*.ipynb"))
TOO_LONG_MS = 60_000  # no measure of speed: a broken panel never answers, a busy machine does

# From the key's own time stamp to the frame in which the new picture is there. A slider may
# change the words only: then it is the words that count, once no picture has followed them.
WATCH = """(panel, tooLong) => {
    const images = [...panel.querySelectorAll('img')];
    const pictures = () => images.map(image => image.src).join();
    const words = () => [...panel.querySelectorAll('[role=status]')]
        .map(part => part.textContent).join();
    const before = {pictures: pictures(), words: words()};
    window.answered = new Promise(resolve => addEventListener('keydown', key => {
        let saidAt = null;
        const look = () => {
            const now = performance.now();
            if (words() !== before.words) saidAt ??= now;
            if (pictures() !== before.pictures && images.every(image => image.complete))
                resolve(now - key.timeStamp);
            else if (saidAt && now - saidAt > 500) resolve(saidAt - key.timeStamp);
            else if (now - key.timeStamp > tooLong) resolve(null);
            else requestAnimationFrame(look);
        };
        requestAnimationFrame(look);
    }, {capture: true, once: true}));
}"""
# Everything in a panel that reaches beyond its right edge, or has to be scrolled sideways.
STICKS_OUT = """panel => [panel, ...panel.querySelectorAll('*')]
    .filter(part => part.scrollWidth > part.clientWidth + 1 && part.clientWidth > 0
        && getComputedStyle(part).overflowX !== 'visible'
        || part.getBoundingClientRect().right > panel.getBoundingClientRect().right + 1)
    .map(part => part.className || part.tagName)"""
# Controls without a line around them.
UNSEEN = """panel => [...panel.querySelectorAll('.noUi-target, button, input, select, textarea')]
    // A file's button is what is seen; a tick box is drawn by the system, in its own colours.
    .filter(part => !['file', 'checkbox'].includes(part.type))
    .filter(part => {
        const {borderTopStyle: style, borderTopWidth: width} = getComputedStyle(part);
        return style === 'none' || parseFloat(width) === 0;
    })
    .map(part => part.className || part.outerHTML.slice(0, 120))"""


@pytest.fixture(scope="module")
def lab(tmp_path_factory):
    with open_lab(tmp_path_factory.mktemp("lab")) as lab:
        yield lab


@pytest.fixture(scope="module", params=LESSONS)
def lesson(request, lab):
    """A lesson, open and run; the wrongs it met are kept for the test that looks at them."""
    with lab.notebook(f"lessons/{request.param}") as notebook:
        notebook.wrongs = notebook.run_all()
        yield notebook


def test_a_lesson_runs_to_its_end_without_an_error(lesson):
    """Every cell, in the order of the page."""
    assert lesson.wrongs == []


def test_every_slider_answers_a_key(lesson):
    """One step by keyboard on each slider, and the picture or the words change."""
    lesson.at(DESK)
    steps = {}
    for cell in lesson.panel_ids():
        panel = lesson.panel(cell)
        for slider in panel.locator(".widget-slider").all():
            label = slider.locator(".widget-label").text_content()
            steps[f"{cell}: {label}"] = one_step(lesson.page, panel, slider)
        if panel.locator("img").count():
            lesson.picture(f"{cell}-desk", panel)

    assert [name for name, taken in steps.items() if taken is None] == []
    if steps:
        slowest = max(steps, key=steps.get)
        words = (
            f"{lesson.path}: slowest of {len(steps)} sliders {steps[slowest]:.0f} ms ({slowest})"
        )
        print(words)
        (lesson.pictures / "slowest.txt").write_text(words + "\n", encoding="utf-8")


def one_step(page, panel, slider):
    """Milliseconds from one arrow key to the changed picture; None where nothing answers."""
    handle = slider.locator(".noUi-handle")
    high, now = (float(handle.get_attribute(f"aria-value{end}")) for end in ("max", "now"))
    panel.evaluate(WATCH, TOO_LONG_MS)
    handle.focus()
    page.keyboard.press("ArrowRight" if now < high else "ArrowLeft")
    return page.evaluate("() => window.answered")


def test_every_drill_knows_right_from_slip(lesson):
    """The right answer by Enter, then on fresh numbers a slip by the button."""
    from playwright.sync_api import expect

    lesson.at(DESK)
    for cell in lesson.panel_ids():
        panel, check = lesson.panel(cell), lesson.panel(cell).get_by_role("button", name="Check")
        # A drill opens half worked; the drill itself is one click away.
        if (bare := panel.get_by_role("button", name="Without help")).count():
            bare.click()
            check.wait_for()
        if not check.count():
            continue
        if panel.get_by_role("button", name="Next question").count():
            continue  # drills of earlier lessons, others at each opening: tried there
        typed, asked = panel.get_by_role("textbox"), panel.locator("[role=status]").first
        turn = Round(asked_by(asked.text_content()))
        question = turn.drill.question

        typed.fill(as_typed(question.right(turn.numbers)))
        typed.press("Enter")
        panel.get_by_text("✓ Right.").wait_for()
        panel.get_by_text("Right in a row: 1").wait_for()

        turn.next()
        panel.get_by_role("button", name="Fresh numbers").click()
        # A drill may have lines: a browser's own text has a blank where a line ends.
        expect(asked).to_have_text(turn.text, use_inner_text=True)
        answer = a_slip(question, turn.numbers)
        verdict = question.judge(answer, turn.numbers)
        assert verdict.outcome == "slip"
        typed.fill(answer)
        check.click()
        panel.get_by_text(in_words(verdict)).wait_for()
        panel.get_by_text("Right in a row: 0").wait_for()
        lesson.picture(f"{cell}-desk", panel)


def a_slip(question, numbers):
    """What a student types who makes the first slip that changes the number."""
    for slip in question.slips:
        value = question.slip_value(slip, numbers)
        if value is not None:
            return as_typed(value)
    raise AssertionError(f"{question.id} has no slip with these numbers")


def test_a_phone_scrolls_no_panel_sideways(lesson):
    """At 390 x 844, with words in every drill."""
    lesson.at(PHONE)
    for cell in lesson.panel_ids():
        panel = lesson.panel(cell)
        panel.scroll_into_view_if_needed()
        lesson.picture(f"{cell}-phone", panel)

        assert panel.evaluate(STICKS_OUT) == []


def test_forced_colours_leave_every_control_to_be_seen(lesson):
    """Grounds go where a reader's own colours are forced, so that a line must be there."""
    lesson.at(DESK)
    lesson.page.emulate_media(forced_colors="active")
    try:
        for cell in lesson.panel_ids():
            panel = lesson.panel(cell)
            assert panel.evaluate(UNSEEN) == []
            if panel.locator("img").count():
                lesson.picture(f"{cell}-forced-colours", panel)
        lesson.picture("forced-colours")
    finally:
        lesson.page.emulate_media(forced_colors="none")
