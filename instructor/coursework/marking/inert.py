"""Making a student's written answer inert: shown as typed, and nothing else, by whoever shows it.

In a notebook a text cell is Markdown, and Markdown may hold HTML: a script in an answer would run
in the instructor's browser, with every mark within reach, merely because the answer was opened.
"""

import re
import textwrap

ODD = "\N{REPLACEMENT CHARACTER}"
WIDE = 88  # a fenced line is not folded by all that show it, and an answer is often one long line


def fenced(text):
    """A text as a fenced code block of Markdown, which shows its letters as they are.

    Parameters
    ----------
    text : str
        Of a stranger.

    Returns
    -------
    str
        The fence is longer than any run of backticks in the text, so nothing in it ends the block.

    Notes
    -----
    Long lines are folded between words. Whatever ends a line anywhere (a lone carriage return, a
    line separator) becomes an ordinary line end, and control characters give way to the
    replacement character: what reads the block has no other idea of its lines than we have.

    References
    ----------
    CommonMark 0.31.2, 4.5 "Fenced code blocks": a closing fence is at least as long as the
    opening one, and the contents are literal text, not parsed as inlines.

    Examples
    --------
    >>> print(fenced("I weighed <b>900 g</b>."))
    ```
    I weighed <b>900 g</b>.
    ```
    """
    lines = [_folded(_printable(line)) for line in text.splitlines()]
    longest = max(map(len, re.findall("`+", text)), default=0)
    fence = "`" * max(3, longest + 1)
    return "\n".join([fence, *lines, fence])


def _printable(line):
    return "".join(one if one.isprintable() or one == "\t" else ODD for one in line)


def _folded(line):
    if len(line) <= WIDE:
        return line
    return textwrap.fill(
        line, WIDE, replace_whitespace=False, drop_whitespace=False, expand_tabs=False,
        break_on_hyphens=False, break_long_words=True,
    )  # fmt: skip
