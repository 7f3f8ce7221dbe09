"""How the desk shows what was written: files as links, pages in a frame."""

import html
import os
import re
from urllib.parse import quote

from coursework.classes.course import INSTRUCTOR
from coursework.sets.key_text import set_labels
from kitchenmath.panels.frame import said

PAGE = "760px"
WIDE = {"width": "auto", "max_width": PAGE}
KIT = INSTRUCTOR.parent
# JupyterLab, which shows the desk, serves the kit's folder from here.
SERVED = "/files/"
LINE = 'style="text-decoration:underline"'  # JupyterLab takes it off in a notebook
IN_A_CLASS = 3  # instructor, classes, the class's folder: what follows lies in it
NO_FILE = ("– choose a file –", "")
NOBODY = ("– choose –", "")  # the first line of a list in which nothing is chosen by itself


def people(roster, first=()):
    """Students as the lines of a list to choose from.

    Parameters
    ----------
    roster : dict of str to str
        Student number to name.
    first : sequence of str
        Numbers that stand before the others.

    Returns
    -------
    list of (str, str)
        Words and student number.

    Examples
    --------
    >>> people({"BH-1": "Ada Quill", "BH-2": "Bram Oakes"}, first=["BH-2"])
    [('Bram Oakes (BH-2)', 'BH-2'), ('Ada Quill (BH-1)', 'BH-1')]
    """
    order = [*first, *(one for one in roster if one not in first)]
    return [(f"{roster[one]} ({one})", one) for one in order]


def sets_to_choose(sets):
    """Sets as the lines of a list to choose from, as they are called.

    Parameters
    ----------
    sets : iterable of str
        Ids.

    Returns
    -------
    list of (str, str)
        Words and id.

    Examples
    --------
    >>> sets_to_choose(["04-buy-enough", "05r-review-1"])
    [('4. Buy enough', '04-buy-enough'), ('Review 1. Back over lessons 1 to 5', '05r-review-1')]
    """
    labels = set_labels()
    return [(labels.get(one, one), one) for one in sets]


def refill(chooser, options):
    """Give a list other lines, and keep what is chosen where it is still among them.

    Parameters
    ----------
    chooser : ipywidgets Dropdown
    options : sequence of (str, str)
    """
    if tuple(chooser.options) == tuple(options):
        return
    chosen, there = chooser.value, [value for _, value in options]
    chooser.options = options
    chooser.value = chosen if chosen in there else next(iter(there), None)


def told(words):
    """Words of a step as HTML: each file below the kit, at the end of a line, can be clicked.

    A file is said from its class's folder on, and any other place from the kit's: the path of the
    whole machine is long, and means nothing to who reads it.

    Parameters
    ----------
    words : str
        Plain text; it is escaped.

    Returns
    -------
    str
    """
    kit = re.escape(html.escape(f"{KIT}{os.sep}"))
    linked = re.sub(
        rf"{kit}([^<]+\.(?:html|csv|ipynb|zip|xlsx|pdf))(?=<br>|</div>)", _link, said(words)
    )
    return re.sub(kit, "", linked)


def _link(found):
    parts = html.unescape(found[1]).split(os.sep)
    address = SERVED + quote("/".join(parts))
    in_class = parts[:2] == ["instructor", "classes"] and len(parts) > IN_A_CLASS
    called = "/".join(parts[IN_A_CLASS:] if in_class else parts)
    return f'<a href="{address}" target="_blank" {LINE}>{html.escape(called)}</a>'


def page_in_a_frame(page, title, height_px=720):
    """A written page as HTML for a cell; no script in it may run.

    Parameters
    ----------
    page : Path
    title : str
        For who cannot see it.
    height_px : int

    Returns
    -------
    str
    """
    return text_in_a_frame(page.read_text(encoding="utf-8"), title, height_px)


def text_in_a_frame(text, title, height_px=720):
    """The same for a page that stands in no file.

    Parameters
    ----------
    text : str
        The page's HTML.
    title : str
    height_px : int

    Returns
    -------
    str
    """
    return (
        f'<iframe srcdoc="{html.escape(text, quote=True)}" title="{html.escape(title)}" sandbox '
        f'style="width:100%;height:{height_px}px;border:1px solid"></iframe>'
    )
