"""The links at the top of the desk's page: one to each section, in one list."""

import json
import re

from coursework.desk.serving import PAGE
from coursework.desk.showing import KIT

LINK = re.compile(r"\[(?P<words>[^]]+)\]\(#(?P<place>[^)]+)\)")


def test_each_section_has_one_link_at_the_top_and_each_link_a_section():
    """A heading's place is its words with "-" for each blank, in Jupyter's pages."""
    cells = json.loads((KIT / PAGE).read_text("utf-8"))["cells"]
    texts = {cell["id"]: "".join(cell["source"]) for cell in cells}
    headings = [text.splitlines()[0][3:] for text in texts.values() if text.startswith("## ")]
    links = [found.groupdict() for found in LINK.finditer(texts["contents"])]

    assert "contents" == cells[1]["id"]
    assert sorted(headings) == sorted(link["words"] for link in links)
    assert all(link["place"] == link["words"].replace(" ", "-") for link in links)
