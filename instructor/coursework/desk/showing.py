"""How the desk shows what was written: files as links, pages in a frame."""

import html
import os
import re
from urllib.parse import quote

from coursework.classes.course import INSTRUCTOR
from kitchenmath.panels.frame import said

PAGE = "760px"
WIDE = {"width": "auto", "max_width": PAGE}
KIT = INSTRUCTOR.parent
# JupyterLab, which shows the desk, serves the kit's folder from here.
SERVED = "/files/"
LINE = 'style="text-decoration:underline"'  # JupyterLab takes it off in a notebook


def told(words):
    """Words of a step as HTML: each file below the kit, at the end of a line, can be clicked.

    Parameters
    ----------
    words : str
        Plain text; it is escaped.

    Returns
    -------
    str
    """
    kit = re.escape(html.escape(f"{KIT}{os.sep}"))
    return re.sub(
        rf"{kit}([^<]+\.(?:html|csv|ipynb|zip|xlsx|pdf))(?=<br>|</div>)", _link, said(words)
    )


def _link(found):
    parts = html.unescape(found[1]).split(os.sep)
    address = SERVED + quote("/".join(parts))
    return f'<a href="{address}" target="_blank" {LINE}>{html.escape("/".join(parts))}</a>'


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
