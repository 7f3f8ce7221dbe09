"""A page as a browser would see it: whole, safe, and no wider than a phone."""

import importlib.util
import re
import shutil
from html.parser import HTMLParser

import pytest

HOSTILE = "<script>alert(1)</script><img src=x onerror=alert(2)>\"'&amp;</p></main>"
VOID = {"meta", "br", "hr", "img", "input", "link"}


class Page(HTMLParser):
    """What a browser would make of a page: its elements, their attributes, and its text."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.elements, self.parts, self.open, self.unclosed = [], [], [], []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag):
        if not self.open or self.open.pop() != tag:
            self.unclosed.append(tag)

    def handle_data(self, data):
        if "style" not in self.open:
            self.parts.append(data)

    @property
    def text(self):
        return " ".join("".join(self.parts).split())

    @property
    def headings(self):
        return [int(tag[1]) for tag, _ in self.elements if re.fullmatch("h[1-6]", tag)]


def assert_sound(text):
    """A page that is whole, loads nothing, runs nothing, and can be found one's way in."""
    page = Page(text)
    tags = {tag for tag, _ in page.elements}
    attributes = [(name, value) for _, attrs in page.elements for name, value in attrs.items()]
    ids = [value for name, value in attributes if name == "id"]
    policy = [a["content"] for _, a in page.elements if a.get("http-equiv")]

    assert text.startswith("<!DOCTYPE html>")
    assert ("html", {"lang": "en-GB"}) in page.elements
    assert [] == page.open == page.unclosed
    assert not tags & {"script", "img", "iframe", "object", "embed", "link", "base", "form"}
    assert not [name for name, _ in attributes if name.startswith("on") or name in ("src", "data")]
    assert all(value.startswith("#") for name, value in attributes if name.endswith("href"))
    assert "default-src 'none'" in policy[0]
    assert "@import" not in text
    assert len(ids) == len(set(ids))
    assert page.headings[0] == 1
    assert page.headings.count(1) == 1
    steps = zip(page.headings, page.headings[1:], strict=False)
    assert all(below <= above + 1 for above, below in steps)
    return page


def chromium():
    """A Chromium to look at pages with, or the test is left out and says so."""
    if importlib.util.find_spec("playwright") is None:
        pytest.skip("playwright is not installed")
    from playwright.sync_api import Error, sync_playwright

    playwright = sync_playwright().start()
    try:
        return playwright, playwright.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox"]
        )
    except Error as error:
        playwright.stop()
        pytest.skip(f"no Chromium starts here: {str(error).splitlines()[0]}")


def assert_fits(file):
    """Nothing sticks out of a phone's width, down to 320 px, and nothing is asked of a network."""
    playwright, browser = chromium()
    try:
        for width in (320, 390, 1200):
            page = browser.new_page(viewport={"width": width, "height": 800})
            asked = []
            page.on("request", lambda request, asked=asked: asked.append(request.url))
            page.goto(file.as_uri())

            assert page.evaluate("document.documentElement.scrollWidth") <= width
            assert [file.as_uri()] == asked
    finally:
        browser.close()
        playwright.stop()
