"""A student's written answer in our copy: read by programs that know nothing of how it is made."""

import json
from html.parser import HTMLParser

import pytest
from coursework.marking.inert import WIDE, fenced
from hypothesis import given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from nbconvert.filters.markdown import markdown2html

from tests.helpers.filled_in import WRITTEN, filled, marked_with_copy
from tests.helpers.scripts import SCRIPTS

# What Markdown and HTML give a meaning to, and what ends a line for one reader and not for another.
PIECES = ["`", "```", "~~~", "<script>", "</pre>", "<!--", "-->", "$$", "\\(", "[a](javascript:b)",
          "![a](b)", "\n", "\r", "\r\n", "\x0b", "\x0c", "\x85", "\u2028", "\x00", "\x1b[2J",
          "    ", "\t", "- ", "> ", "# ", "| a | b |", "&lt;", "word", "ä"]  # fmt: skip
texts = st.lists(st.sampled_from(PIECES) | st.text(max_size=4), max_size=40).map("".join)


class Elements(HTMLParser):
    """Names of the elements that a browser would make."""

    def __init__(self, page):
        super().__init__()
        self.names = set()
        self.feed(page)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.names.add(tag)

    def handle_comment(self, data):
        self.names.add("comment")


def by_the_standard(text):
    """Referee: markdown-it-py, which passes CommonMark's own examples."""
    return [token.type for token in MarkdownIt("commonmark").parse(text)]


@pytest.mark.parametrize("text", [WRITTEN, *SCRIPTS.values()], ids=["honest", *SCRIPTS])
def test_an_answer_is_one_block_of_code_to_those_who_show_it(text):
    """Referees: CommonMark's parser, and nbconvert's Markdown, which nbgrader's page uses."""
    assert ["fence"] == by_the_standard(fenced(text))
    assert Elements(markdown2html(fenced(text))).names <= {"pre", "code", "div", "span"}


@given(texts)
@settings(max_examples=300, deadline=None)
def test_whatever_is_written_stays_one_block_of_code(text):
    assert ["fence"] == by_the_standard(fenced(text))
    assert Elements(markdown2html(fenced(text))).names <= {"pre", "code", "div", "span"}


@given(texts)
@settings(max_examples=300, deadline=None)
def test_no_printable_letter_is_lost(text):
    """Spaces apart, as long lines are folded; what cannot be printed keeps its place."""
    inside = fenced(text).split("\n")[1:-1]
    kept = "".join("".join(inside).split())
    printable = [one for one in "".join(text.splitlines()) if one.isprintable() and one != " "]

    assert [one for one in kept if one != "\N{REPLACEMENT CHARACTER}"] == [
        one for one in printable if not one.isspace() and one != "\N{REPLACEMENT CHARACTER}"
    ]


def test_a_long_line_is_folded_between_words():
    """40 words of five letters with spaces are 239 letters: three lines of at most 88."""
    lines = fenced(" ".join(["gluts"] * 40)).split("\n")[1:-1]

    assert 3 == len(lines)
    assert WIDE >= max(map(len, lines))
    assert {"gluts"} == set(" ".join(lines).split())


def test_the_copy_that_is_marked_holds_it_fenced_and_the_record_as_typed():
    """The record goes to our own pages, which escape it; the copy to programs that render it."""
    record, notebook = marked_with_copy(filled(q6=SCRIPTS["script"]))
    written = next(
        "".join(cell["source"])
        for cell in json.loads(notebook)["cells"]
        if cell["id"] == "q6-answer"
    )

    assert ["fence"] == by_the_standard(written)
    assert SCRIPTS["script"] == record.written[0].answer


def test_an_unanswered_text_stays_ours():
    """What the set says there is Markdown of our own."""
    _, notebook = marked_with_copy(filled())
    written = next(c for c in json.loads(notebook)["cells"] if c["id"] == "q6-answer")

    assert not "".join(written["source"]).startswith("```")
