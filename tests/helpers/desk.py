"""The desk without a browser: press a button, read what is said."""

import html
import re


def words(widget):
    return html.unescape(re.sub(r"<[^>]+>", " ", widget.value))


def press(panel, name):
    """Press the button of that name in a panel and give back what was said."""
    for step in panel.children:
        button = getattr(step, "button", None)
        if button is not None and button.description == name:
            button.click()
            return words(step.words)
    raise AssertionError(f"no button {name!r}")
