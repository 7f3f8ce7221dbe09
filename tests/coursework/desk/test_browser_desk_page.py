"""The desk as a page of its own, as `python3 instructor` opens it: no cells, nothing to run."""

import pytest
from coursework.desk.serving import LOOK, PAGE

from tests.helpers.browser import (
    DESK,
    NEEDS_CHROMIUM,
    PHONE,
    SCREENSHOTS,
    browse,
    copy_kit,
    serve,
)
from tests.helpers.desk_page import out_of_view

pytestmark = NEEDS_CHROMIUM


@pytest.fixture(scope="module")
def desk(tmp_path_factory):
    """The page, its address, and every request that it made for another machine."""
    folder = tmp_path_factory.mktemp("desk")
    copy_kit(folder / "kit")
    found = {"JUPYTER_PATH": str(LOOK), "JUPYTER_CONFIG_PATH": str(LOOK)}
    served = serve(folder / "kit", folder / "home", folder / "kit", environment=found)
    with served as (address, token), browse() as page:
        outside = []
        page.on("requestfinished", lambda asked: outside.append(asked.url))
        page.goto(f"{address}/voila/render/{PAGE}?token={token}")
        page.get_by_role("button", name="Hand out").wait_for()
        yield page, [url for url in outside if not url.startswith((address, "data:", "blob:"))]


def test_the_panels_are_there_without_a_key_pressed(desk):
    """No cell, no prompt, no menu of a notebook; and nothing of the page comes from outside."""
    page, outside = desk

    assert page.get_by_role("button", name="Mark", exact=True).is_visible()
    assert 0 == page.locator(".jp-CodeCell .jp-InputArea:visible, .jp-InputPrompt:visible").count()
    assert "Run All" not in page.inner_text("body")
    assert [] == outside


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [DESK, PHONE], ids=["desk", "phone"])
def test_nothing_is_wider_than_the_page_and_every_box_is_in_view(desk, size, scheme):
    page, _ = desk
    page.set_viewport_size(size)
    page.emulate_media(color_scheme=scheme)
    wide = page.evaluate("() => document.scrollingElement.scrollWidth")
    folder = SCREENSHOTS / "instructor" / "desk"
    folder.mkdir(parents=True, exist_ok=True)
    page.screenshot(path=folder / f"page-{size['width']}-{scheme}.png", full_page=True)

    assert wide <= size["width"]
    assert [] == out_of_view(page)


def test_a_button_answers(desk):
    """Without a class each button says what to do first; the sentence is read out."""
    page, _ = desk
    page.set_viewport_size(DESK)
    page.get_by_role("button", name="Hand out", exact=True).click()
    page.locator("[role=status]").filter(has_text="Not done.").first.wait_for()

    assert "There is no class yet" in page.inner_text("body")


def test_every_link_at_the_top_leads_to_its_section_by_the_keyboard(desk):
    """Enter on the link brings the heading into view; nothing else needs to be pressed."""
    page, _ = desk
    page.set_viewport_size(DESK)
    links = page.locator('a[href^="#"]:not(.anchor-link)')
    for place in range(links.count()):
        link = links.nth(place)
        link.focus()
        page.keyboard.press("Enter")
        page.wait_for_function(
            """words => [...document.querySelectorAll('h2')].some(one =>
                one.textContent.replace('¶', '').trim() === words &&
                one.getBoundingClientRect().top >= 0 &&
                one.getBoundingClientRect().top < innerHeight)""",
            arg=link.inner_text(),
        )

    assert 15 == links.count()
