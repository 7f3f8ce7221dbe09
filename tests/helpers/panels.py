"""What a panel says, as plain text."""

import html
import re


def words(widget):
    """The sentence of a panel, or of one of its parts, without HTML and with plain blanks."""
    value = getattr(widget, "words", widget).value
    text = re.sub(r"</?div[^>]*>", "", value).replace("<br>", "\n").replace("\u00a0", " ")
    return html.unescape(text)


def moved(panel, **values):
    """A panel's sentence after its controls were moved."""
    for name, value in values.items():
        panel.controls[name].value = value
    return words(panel)
