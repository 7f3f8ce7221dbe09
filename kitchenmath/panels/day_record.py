"""A form for a day's record: limit, reading, verdict, what was done; kept, and a page to print."""

import base64
import html

import ipywidgets as widgets

from kitchenmath.bench import Kept
from kitchenmath.conventions import college_here
from kitchenmath.conventions.class_limits import own_limit, sources_of_record
from kitchenmath.errors import KitchenError, Unreadable, WrongKind
from kitchenmath.panels.frame import ROW, TEXT, Panel, said, together
from kitchenmath.safety import control_points, reading_verdict, what_is_read
from kitchenmath.units import Q_, kind_of, read, say

NAME = "day record"
LOOKS = {"style": {"description_width": "110px"}, "layout": {**ROW, "max_width": "440px"}}
NOT_COVERED = "not covered here: ask your food code"
STATES = {True: "in order", False: "OUT OF LIMITS", None: "no limit here"}


def day_record_panel(folder=None):
    """A line for each control point: type the reading, see the verdict, type what was done.

    Parameters
    ----------
    folder : path, optional
        Where the record is kept; see `Kept`.

    Returns
    -------
    ipywidgets VBox
        With attributes `boxes` ("cold room" and "cold room, done", and "day"), `told` by point,
        `words`, `empty` and `page`, the link to the page to print.
    """
    return DayRecordPanel(folder)


class DayRecordPanel(Panel):
    """See `day_record_panel`."""

    def __init__(self, folder):
        self._kept = Kept(folder)
        self.boxes = {"day": _box("Day, who")}
        self.told, parts = {}, [self.boxes["day"]]
        for point in control_points():
            reading = _box("Reading", placeholder="such as 4.5 °C")
            done, told = _box("What was done"), widgets.HTML()
            self.boxes |= {point: reading, f"{point}, done": done}
            self.told[point] = told
            parts += [_head(point), reading, told, done]
        self.words, self.page = widgets.HTML(), widgets.HTML()
        self.empty = widgets.Button(description="Empty the record", layout={"width": "auto"})
        self.empty.on_click(self._clear)
        self._show()
        self._fill_in()
        for box in self.boxes.values():
            box.observe(self._look, "value")
        super().__init__([*parts, self.words, self.page, self.empty])

    @property
    def _typed(self):
        return {name: box.value for name, box in self.boxes.items()}

    def _fill_in(self):
        """What was kept, and what is to be said of it."""
        try:
            kept = self._kept.typed(NAME)
        except KitchenError as error:
            self.words.value = said(str(error))
            return
        for name in kept.keys() & self.boxes.keys():
            self.boxes[name].value = kept[name]
        self._show()

    def _show(self):
        lines = record_lines(self._typed)
        for point, line in lines.items():
            self.told[point].value = said(together(line["words"])) if line["words"] else ""
        self.page.value = _link(self.boxes["day"].value, lines)
        self.words.value = said(together(summary(lines)))

    def _look(self, _=None):
        self._show()
        try:
            self._kept.keep(NAME, self._typed)
        except KitchenError as error:
            self.words.value = said(str(error))

    def _clear(self, _):
        for box in self.boxes.values():
            box.unobserve(self._look, "value")
            box.value = ""
            box.observe(self._look, "value")
        self._look()


def _box(description, placeholder=""):
    return widgets.Text(
        description=description, placeholder=placeholder, continuous_update=False, **LOOKS
    )


def record_lines(typed):
    """Each line of a record: its limit, the reading, its state, what to say, what was done.

    Parameters
    ----------
    typed : dict of str to str

    Returns
    -------
    dict of str to dict
        By control point; `there` says whether there is a reading, and `state` whether it keeps the
        limit: None where there is none, or where this kit has not read the class's food code.
    """
    return {point: _line(point, typed) for point in control_points()}


def _line(point, typed):
    text = typed.get(point, "").strip()
    line = {"limit": limit_words(point), "reading": text, "state": None, "there": False,
            "words": "", "done": typed.get(f"{point}, done", "").strip()}  # fmt: skip
    if not text:
        return line
    try:
        reading = _reading(text)
    except KitchenError as error:
        return line | {"words": f"{error} Type it such as 4.5 °C.", "reading": f"{text} (?)"}
    row = _own(point)
    verdict = reading_verdict(point, reading)
    meets = bool(row.reached_by(reading)) if row else None
    words = f"{STATES[meets]}: {say(reading)}."
    if meets is False:
        words += f" Usual: {verdict.if_out}."
    return line | {"state": meets, "there": True, "words": words, "reading": say(reading)}


def _own(point):
    """The limit of the class's own food code, or None where none was read for this kit."""
    try:
        return own_limit(what_is_read(point), college_here())
    except KitchenError:
        return None


def _reading(text):
    """A reading; a bare number is in °C."""
    found = read(text)
    if kind_of(found) == "number":
        found = Q_(found.magnitude, "degC")
    if kind_of(found) != "temperature":
        raise WrongKind(f"{say(found)} is a {kind_of(found)}.")
    if not -60 <= found.to("degC").magnitude <= 200:
        raise Unreadable(f"{say(found)} is nothing that a kitchen's probe shows.")
    return found


def limit_words(point):
    """A control point's limit in few words."""
    row = _own(point)
    if not row:
        return NOT_COVERED
    time = f" {row.time_sense} {say(row.time)}" if row.time_sense else ""
    return f"{row.sense} {say(row.temperature)} ({say(row.fahrenheit)}){time}"


def summary(lines):
    """What the record says as a whole."""
    out = [point for point, line in lines.items() if line["state"] is False]
    undone = [point for point in out if not lines[point]["done"]]
    there = sum(line["there"] for line in lines.values())
    text = f"{there} of {len(lines)} readings are there; {len(out)} out of limits."
    if undone:
        text += f"\nSay what was done about: {', '.join(undone)}."
    return text


def record_page(day, lines):
    """The record as a page to print.

    Parameters
    ----------
    day : str
    lines : dict of str to dict
        As `record_lines` gives them.

    Returns
    -------
    str
        HTML with everything escaped.
    """
    rows = "".join(
        "<tr>" + "".join(
            f"<td>{html.escape(text)}</td>"
            for text in (point, line["limit"], line["reading"],
                         STATES[line["state"]] if line["there"] else "", line["done"])
        ) + "</tr>"
        for point, line in lines.items()
    )  # fmt: skip
    heads = "".join(f"<th>{head}</th>" for head in
                    ("", "limit", "reading", "verdict", "what was done"))  # fmt: skip
    return (
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>A day\'s record</title>'
        "<style>body{font:12pt sans-serif;margin:15mm}table{border-collapse:collapse;width:100%}"
        "td,th{border:1px solid;padding:2mm;text-align:left;vertical-align:top}</style>"
        f"<h1>A day's record</h1><p>{html.escape(day) or 'Day, who:'}</p>"
        f"<table><tr>{heads}</tr>{rows}</table><p>{html.escape(_sources())} Your local food code "
        "comes first.</p></html>"
    )


def _sources():
    """Whose limits the record has."""
    own = sources_of_record(college_here())
    told = "; ".join(f"{source} ({', '.join(points)})" for source, points in own.items())
    return f"Limits, as quoted: {told}." if told else "No limit of your country was read here."


def _link(day, lines):
    data = base64.b64encode(record_page(day, lines).encode()).decode("ascii")
    return (
        f'<div style="{TEXT}"><a download="day-record.html" href="data:text/html;base64,{data}">'
        "The record, as a page to print</a></div>"
    )


def _head(point):
    words = html.escape(f"{point}: {limit_words(point)}")
    return widgets.HTML(f'<div style="{TEXT};font-weight:bold;margin-top:6px">{words}</div>')
