"""The built edition in Chromium: a set filled in, saved and marked; panels live; no network.

It needs the npm client and the compiled wheels of the browser's Python (KITCHEN_WHEELS names
their folder); where there are none, these tests are left out and say so.
"""

from pathlib import Path

import pytest
from coursework.edition.site import edition, write
from coursework.sets.key_text import set_ids

from tests.helpers.accessible import WIDER, serious_in, wider_at_200_percent
from tests.helpers.browser import PHONE, SCREENSHOTS, WAIT_S, browse, open_predictions
from tests.helpers.edition import NEEDS_WHEELS, WHEELS, listen, outside, shown
from tests.helpers.filled_in import ALL, SET, TYPED, marked, points
from tests.helpers.predictions import say_then_move

# The set with a service plan, whatever its number.
PLAN = next(f"set-{each}" for each in set_ids() if each.endswith("land-the-plate"))
pytestmark = NEEDS_WHEELS


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    """The edition, built; and served until the tests are over."""
    folder = tmp_path_factory.mktemp("edition")
    with shown(folder) as (address, files):
        yield address, folder, files


@pytest.fixture(scope="module")
def page(site):
    with browse() as page:
        page.set_viewport_size(PHONE)
        listen(page)
        yield page


def picture(page, name):
    folder = SCREENSHOTS / "edition"
    folder.mkdir(parents=True, exist_ok=True)
    page.screenshot(path=folder / f"{name}.png", full_page=True)


def test_the_same_inputs_give_the_same_bytes(site):
    *_, files = site

    assert files == edition(wheel_folder=Path(WHEELS))


def test_a_set_filled_in_by_thumb_is_saved_and_earns_all_points(site, page, tmp_path):
    """BH-1007 by hand; the file that the browser saves is taken by the marking as it is."""
    address, *_ = site
    page.goto(f"{address}set-{SET}.html")
    page.locator("html[data-ready=yes]").wait_for()
    page.locator("#student").fill("BH-1007")
    page.keyboard.press("Tab")
    page.get_by_text("55 g", exact=False).first.wait_for()
    for question, text in TYPED.items():
        field = page.locator(f'[data-field="{question}"]')
        field.fill(text.removeprefix(f'{question} = "').removesuffix('"'))
        field.blur()
    page.locator("[data-bar]").filter(has_text="6 of 6 answers are there").wait_for()
    picture(page, "set-filled")
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save my hand-in").click()
    file = tmp_path / "hand-in.ipynb"
    saved.value.save_as(file)

    assert ALL == points(marked(file.read_bytes()))
    assert [] == page.errors
    assert [] == outside(page, address)


def test_what_was_typed_is_still_there_after_the_page_was_closed(site, page):
    address, *_ = site
    page.goto(f"{address}index.html")
    page.goto(f"{address}set-{SET}.html")
    page.locator("html[data-ready=yes]").wait_for()

    assert "3 kg" == page.locator('[data-field="q1"]').input_value()


def test_a_field_without_a_name_is_found(page):
    """Referee: WCAG 2.2, success criterion 4.1.2, Name, Role, Value; axe's rule is `label`."""
    page.goto("about:blank")
    page.set_content("<main><h1>Salt</h1><input></main>")

    assert {"label"} <= {each.split(": ")[1] for each in serious_in(page)}


@pytest.mark.parametrize("name", ["index", f"set-{SET}", PLAN, f"lesson-{SET}"])
def test_axe_finds_nothing_serious_in_light_or_dark(site, page, name):
    """Landing page, a set with fields, one with a board, a lesson with its panels live."""
    address, *_ = site
    page.goto(f"{address}{name}.html")
    if name != "index":
        page.locator("html[data-ready=yes]").wait_for(state="attached")
    open_predictions(page)

    assert [] == serious_in(page)


@pytest.mark.parametrize("name", ["index", "words", *(f"set-{each}" for each in set_ids())])
def test_nothing_is_wider_than_a_phone_also_with_text_twice_as_large(site, page, name):
    address, *_ = site
    page.goto(f"{address}{name}.html")
    if name.startswith("set"):
        page.locator("html[data-ready=yes]").wait_for()
    if name in ("index", f"set-{SET}", PLAN):
        picture(page, name)

    assert 0 == page.evaluate(WIDER)
    assert [0, 0] == wider_at_200_percent(page, PHONE)


def test_a_lessons_panels_are_live_and_its_slider_moves(site, page):
    """The sentence and the picture come from Python in the browser."""
    address, *_ = site
    page.goto(f"{address}lesson-{SET}.html")
    page.locator("html[data-ready=yes]").wait_for(state="attached")
    say_then_move(page)
    picture(page, "lesson-04")

    assert [] == page.errors


def test_a_prediction_is_there_again_after_the_page_was_closed(site, page):
    """3.6 kg said for 4 kg; in the store of the browser, so with the panel that it opened."""
    address, *_ = site
    context = page.context.browser.new_context(viewport=PHONE)
    context.set_default_timeout(WAIT_S * 1000)
    first = context.new_page()
    first.goto(f"{address}lesson-{SET}.html")
    first.locator("html[data-ready=yes]").wait_for(state="attached")
    say_then_move(first)
    first.wait_for_function(IN_STORE)
    first.close()
    second = context.new_page()
    second.goto(f"{address}lesson-{SET}.html")
    asked = second.locator('[data-cell="purchase-say"]')
    try:
        asked.get_by_text("You said 3.6 kg; it is 4 kg: 10 % too little.").wait_for()

        assert "3.6 kg" == asked.get_by_label("I say").input_value()
        assert 3 == asked.locator("input[type=range]").count()
    finally:
        context.close()


# Whether what a bench keeps lies in the browser's own store, and not only in Python's memory.
IN_STORE = """() => new Promise(done => {
  const asked = indexedDB.open("/kept");
  asked.onsuccess = () => {
    const store = asked.result;
    const files = [...store.objectStoreNames].includes("FILE_DATA")
      && store.transaction("FILE_DATA").objectStore("FILE_DATA").getAllKeys();
    if (!files) { store.close(); return done(false); }
    files.onsuccess = () => {
      done(files.result.some(name => name.endsWith(".json")));
      store.close();
    };
  };
})"""


def test_what_was_measured_in_one_lesson_is_there_in_another_after_the_page_was_closed(site, page):
    """Lesson 4's bench keeps 640 g out of 0.91 kg, 70 %; lesson 10 lists what is one's own."""
    address, *_ = site
    context = page.context.browser.new_context(viewport=PHONE)
    context.set_default_timeout(WAIT_S * 1000)
    first = context.new_page()
    first.goto(f"{address}lesson-{SET}.html")
    bench = first.locator('[data-cell="own-yield"]')
    for label, typed in (("As it came", "0,91 kg"), ("Cut", "640")):
        bench.get_by_label(label).fill(typed)
        bench.get_by_label(label).press("Enter")
    bench.get_by_text("Kept as my yield of celeriac").wait_for()
    first.wait_for_function(IN_STORE)
    first.close()
    second = context.new_page()
    second.goto(f"{address}lesson-10-land-the-plate.html")
    mine = second.locator('[data-cell="my-numbers-panel"]')
    try:
        mine.get_by_text("My yield is 70 %").first.wait_for()

        assert "My yield is 70 %" in mine.inner_text().replace("\xa0", " ")
    finally:
        context.close()


def test_after_the_first_visit_a_set_opens_without_a_network(site, page):
    """The server answers nothing any more; the page and its Python come from the browser."""
    address, *_ = site
    page.goto(f"{address}set-{SET}.html")
    page.locator("html[data-ready=yes]").wait_for()
    page.evaluate("() => navigator.serviceWorker.ready")
    page.reload()
    page.locator("html[data-ready=yes]").wait_for()
    page.context.set_offline(True)
    try:
        page.reload()
        page.locator("html[data-ready=yes]").wait_for()

        assert "3 kg" == page.locator('[data-field="q1"]').input_value()
    finally:
        page.context.set_offline(False)


def test_a_newer_edition_is_offered_and_what_was_typed_stays(site, page):
    """The host gets another edition; the page that was kept says so, and shows it when asked."""
    address, folder, files = site
    page.goto(f"{address}set-{SET}.html")
    page.locator("html[data-ready=yes]").wait_for()
    page.evaluate("() => navigator.serviceWorker.ready")
    version = page.locator("meta[name=edition]").get_attribute("content").encode()
    write({name: raw.replace(version, b"another-one") for name, raw in files.items()}, folder)
    try:
        page.reload()

        assert version.decode() == page.locator("meta[name=edition]").get_attribute("content")

        page.get_by_role("button", name="Show it").click()
        page.locator("meta[name=edition][content=another-one]").wait_for(state="attached")
        page.locator("html[data-ready=yes]").wait_for()

        assert "3 kg" == page.locator('[data-field="q1"]').input_value()
    finally:
        write(files, folder)
