"""A question's text as HTML: markdown in, nothing loaded, and tables that fit a phone."""

import re
from functools import lru_cache

import mistune

__all__ = ["in_html"]

WIDE = 4  # columns; from here on a table is read row by row on a phone


# A class shares its questions: 10,000 pages render each text once.
@lru_cache(maxsize=256)
def in_html(text):
    """A question's text as HTML, with raw HTML escaped.

    Parameters
    ----------
    text : str
        Markdown.

    Returns
    -------
    str
    """
    html = mistune.create_markdown(renderer=_Asked(escape=True), plugins=["table"])(text)
    return re.sub(r"<table>.*?</table>", _stacked, html, flags=re.DOTALL)


class _Asked(mistune.HTMLRenderer):
    """Markdown without headings of its own (they would break the page's order) or pictures."""

    def heading(self, text, level, **attrs):
        return f"<p><strong>{text}</strong></p>\n"

    def image(self, text, url, title=None):
        return text


def _stacked(found):
    """A wide table whose cells carry the heads of their columns, for the page's narrow layout."""
    table = found[0]
    heads = re.findall(r"<th\b[^>]*>(.*?)</th>", table, re.DOTALL)
    if len(heads) < WIDE:
        return table
    labels = [re.sub(r"<[^>]*>", "", head).replace('"', "&quot;") for head in heads]

    def row(cells):
        names = iter(labels)
        return re.sub(r"<td", lambda _: f'<td data-label="{next(names, "")}"', cells[0])

    table = re.sub(r"<tr>.*?</tr>", row, table, flags=re.DOTALL)
    return table.replace("<table>", '<table class="stack">')
