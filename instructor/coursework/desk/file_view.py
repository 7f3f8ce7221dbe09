"""A file of a stranger as HTML that can do nothing: shown as letters, a picture, or a link.

Nothing of it is run, and no markup in it is obeyed. The link saves the file under its own name, so
that its ending says which program opens it.
"""

import base64
import html
import re
from urllib.parse import quote

import ipywidgets as widgets

from coursework.arriving.placing import original
from coursework.arriving.reading_in import UnreadableNotebook, megabytes, read_notebook
from coursework.desk.showing import KIT, SERVED
from coursework.errors import CourseError
from kitchenmath.panels.frame import said

__all__ = ["Look", "file_as_html", "kind_of"]

PICTURES = {
    b"\x89PNG\r\n": "image/png",
    b"\xff\xd8\xff": "image/jpeg",
    b"GIF8": "image/gif",
}
SHOWN_CELLS = 200
SHOWN_LETTERS = 20_000
LINKED_BYTES = 20_000_000
BOX = ('style="white-space:pre-wrap;overflow-wrap:anywhere;max-height:420px;overflow:auto;'
       'border:1px solid;padding:6px;margin:4px 0" tabindex="0"')  # fmt: skip


class Look(widgets.VBox):
    """A button that shows what is in a file that arrived, and takes it out of view again.

    Parameters
    ----------
    course : Course
    arrival : Arrival
    """

    def __init__(self, course, arrival):
        self._course, self._arrival = course, arrival
        self.see = widgets.ToggleButton(
            description="See the file", tooltip=f"See {arrival.name}", layout={"width": "160px"}
        )
        self.shown = widgets.HTML()
        self.see.observe(self._look, "value")
        super().__init__([self.see, self.shown])

    def _look(self, change):
        if not change["new"]:
            self.shown.value = ""
            return
        try:
            raw = original(self._course, self._arrival)
            kept = self._course.arrived / self._arrival.kept
            self.shown.value = file_as_html(raw, self._arrival.name, kept)
        except CourseError as error:
            self.shown.value = said(str(error))


def kind_of(raw):
    """What a file is, by its bytes and not by its name.

    Parameters
    ----------
    raw : bytes

    Returns
    -------
    str
        "picture", "notebook", "text" or "other".
    """
    if _picture(raw):
        return "picture"
    try:
        read_notebook(raw)
        return "notebook"
    except UnreadableNotebook:
        return "text" if _text(raw) else "other"


def file_as_html(raw, name, kept):
    """A file to look at, and a link that saves it under its own name.

    Parameters
    ----------
    raw : bytes
    name : str
        As it arrived.
    kept : Path
        Where it lies, without its own name.

    Returns
    -------
    str
    """
    show = {"picture": _shown_picture, "notebook": _shown_notebook, "text": _shown_text}
    own = name.rpartition("/")[2]
    shown = show.get(kind_of(raw), _not_shown)(raw, own)
    return f"{shown}<div>{_link(raw, own, kept)}</div>"


def _picture(raw):
    return next((kind for mark, kind in PICTURES.items() if raw.startswith(mark)), "")


def _text(raw):
    """The bytes as text, or "" where they are none: a PDF begins like text and is not."""
    if raw.startswith(b"%PDF"):
        return ""
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return ""
    return text if all(one.isprintable() or one in "\t\r\n" for one in text[:SHOWN_LETTERS]) else ""


def _shown_picture(raw, name):
    if len(raw) > LINKED_BYTES:
        return _not_shown(raw, name)
    return (
        f'<img src="data:{_picture(raw)};base64,{base64.b64encode(raw).decode()}" '
        f'alt="{html.escape(name)}" style="max-width:100%;max-height:420px">'
    )


def _shown_notebook(raw, _):
    cells = read_notebook(raw).cells
    cells = [one for one in cells if _answers(one)] or cells
    blocks = [one.source.strip() for one in cells[:SHOWN_CELLS] if one.source.strip()]
    more = f"\n\n… and {len(cells) - SHOWN_CELLS} cells more." if len(cells) > SHOWN_CELLS else ""
    return _box("\n\n———\n\n".join(blocks) + more)


def _answers(cell):
    """Whether a cell of our sets is the student's: who it is from, and each answer."""
    names = (cell.id or "", cell.grade_id or "")
    return any(one == "me" or one.endswith("-answer") for one in names)


def _shown_text(raw, _):
    return _box(_text(raw))


def _not_shown(raw, _):
    return "<p>It cannot be shown here. Save it, and open it with its own program.</p>"


def _box(text):
    cut = text[:SHOWN_LETTERS] + ("\n…" if len(text) > SHOWN_LETTERS else "")
    return f'<div role="group" aria-label="What is in the file" {BOX}>{html.escape(cut)}</div>'


def _link(raw, name, kept):
    """The file itself within the page; a long one by its address at the desk's own server."""
    words = f"Save “{html.escape(name)}” ({megabytes(len(raw))}), to open it"
    safe = html.escape(re.sub(r"[\\/:*?\"<>|]", "_", name))
    if len(raw) <= LINKED_BYTES:
        address = f"data:application/octet-stream;base64,{base64.b64encode(raw).decode()}"
    elif kept.is_relative_to(KIT):
        address = html.escape(SERVED + quote(kept.relative_to(KIT).as_posix()))
    else:
        return f"It is long ({megabytes(len(raw))}). It lies in {html.escape(str(kept))}."
    return f'<a download="{safe}" href="{address}" style="text-decoration:underline">{words}</a>'
