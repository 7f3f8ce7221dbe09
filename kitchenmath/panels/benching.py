"""The bench as a panel: type what you measured, see what it was read as, find it again later."""

import ipywidgets as widgets

from kitchenmath.bench import BENCHES, Kept
from kitchenmath.errors import KitchenError, Unreadable
from kitchenmath.panels.frame import ROW, WIDE, below_each_other, said, together
from kitchenmath.panels.landing import MENU
from kitchenmath.ratios import water_temperature
from kitchenmath.service import read_tasks
from kitchenmath.typed.opened import as_text
from kitchenmath.units import Q_, say
from kitchenmath.units.door import one_of
from kitchenmath.yields import as_purchased, order

WRAP = {"flex_flow": "row wrap"}
COVERS = 24
NARROW = {"style": {"description_width": "initial"}, "layout": {**ROW, "max_width": "440px"}}


def bench_panel(name, folder=None):
    """A place to type what was measured at the bench.

    Parameters
    ----------
    name : str
        A key of `BENCHES`.
    folder : path, optional
        Where the numbers are kept; see `Kept`.

    Returns
    -------
    ipywidgets VBox
        With attributes `boxes` by name, `words` and `empty`.

    Raises
    ------
    UnknownName
    """
    bench, kept = BENCHES[one_of(name, BENCHES, "name")], Kept(folder)
    boxes = {key: _widget(box) for key, box in bench.boxes.items()}
    words = widgets.HTML()
    empty = widgets.Button(description="Empty the boxes", layout={"width": "auto"})

    def tell(sentence):
        words.value = said(together(sentence))

    def look(_=None, keep=True):
        typed = {key: box.value for key, box in boxes.items()}
        try:
            worked = bench.worked(typed)
            lines = [] if worked is None else [worked.sentence]
            if keep and worked is not None:
                kept.keep(name, typed)
                lines.append(f"Kept as {bench.title}, for the lessons after.")
        except KitchenError as error:
            lines = [str(error)]
        tell("\n".join(lines))

    def clear(_):
        for key, box in boxes.items():
            box.value = box.options[0] if bench.boxes[key].options else ""
        try:
            kept.keep(name, {})
            tell("Emptied, and nothing is kept.")
        except KitchenError as error:
            tell(str(error))

    try:
        for key, text in kept.typed(name).items():
            if key in boxes and (not bench.boxes[key].options or text in boxes[key].options):
                boxes[key].value = text
        look(keep=False)
    except KitchenError as error:
        tell(str(error))
    for box in boxes.values():
        box.observe(look, "value")
    empty.on_click(clear)
    opened = _file_for(bench, boxes, tell)
    panel = below_each_other([*boxes.values(), widgets.HBox([*opened, empty], layout=WRAP), words])
    panel.boxes, panel.words, panel.empty = boxes, words, empty
    return panel


def _widget(box):
    if box.kind == "choice":
        return widgets.Dropdown(options=box.options, description=box.label, **NARROW)
    if box.kind == "log":
        return widgets.Textarea(
            description=box.label,
            placeholder=box.example.replace("; ", "\n"),
            continuous_update=False,
            style={"description_width": "initial"},
            layout={**ROW, "max_width": WIDE},
            rows=7,
        )
    return widgets.Text(
        description=box.label,
        placeholder=f"such as {box.example}" + ("" if box.wanted else ", or nothing"),
        continuous_update=False,
        **NARROW,
    )


def _file_for(bench, boxes, tell):
    """A button that puts a probe's file into its box, where the bench has one; else nothing."""
    logs = [key for key, box in bench.boxes.items() if box.kind == "log"]
    if not logs:
        return []
    opened = widgets.FileUpload(
        description="Or open the probe's file", accept=".csv,.txt,.xlsx", multiple=False
    )

    def take(_):
        if opened.value:
            file = opened.value[0]
            try:
                boxes[logs[0]].value = as_text(file["name"], bytes(file["content"]))
            except Unreadable as error:
                tell(str(error))

    opened.observe(take, "value")
    return [opened]


def my_numbers_panel(folder=None):
    """What was measured in the lessons before, and what it changes in tonight's service.

    Parameters
    ----------
    folder : path, optional

    Returns
    -------
    ipywidgets VBox
        With attributes `words` and `fresh`.
    """
    words = widgets.HTML()
    fresh = widgets.Button(description="Look again", layout={"width": "auto"})

    def look(_=None):
        try:
            words.value = said(together("\n".join(_mine(Kept(folder)))))
        except KitchenError as error:
            words.value = said(str(error))

    fresh.on_click(look)
    look()
    panel = below_each_other([words, widgets.HBox([fresh], layout=WRAP)])
    panel.words, panel.fresh = words, fresh
    return panel


def _mine(kept):
    """A line for each number that is kept, and for those that the menu takes, what follows."""
    lines = []
    for name, bench in BENCHES.items():
        typed = kept.typed(name)
        worked = bench.worked(typed) if typed else None
        if worked is None:
            continue
        lines.append(worked.sentence)
        if name in FOLLOWS and worked.number is not None:
            lines.append("→ " + FOLLOWS[name](worked.number))
    if lines:
        return lines
    return [
        "Nothing of yours is kept yet. "
        "What you type at the benches of the lessons before stands here."
    ]


def _nets(share):
    item, portion, book, net, _ = next(line for line in MENU if line[0] == "celeriac")
    edible = COVERS * portion
    mine, theirs = (
        order({item: as_purchased(edible=edible, yield_=yield_)}, {item: net})[0]
        for yield_ in (share, Q_(book, "percent"))
    )
    return (
        f"{COVERS} plates of {say(portion)} are {say(edible)}. At my yield I order {mine}. "
        f"At the book's {book:g} % it is {theirs}."
    )


def _water(friction):
    water = water_temperature(
        Q_(25, "degC"), Q_(23, "degC"), Q_(23, "degC"), friction.to("delta_degC")
    )
    return f"For rolls at 25 °C, with flour and room at 23 °C, my water has {say(water, 3)}."


def _foam_holds(half):
    longest = next(task.hold for task in read_tasks() if task.name == "aerate the cider foam")
    word = "holds" if half >= longest else "does not hold"
    return (
        f"Tonight's plan lets the foam wait {say(longest)}: mine {word}, "
        "if half may be out by then."
    )


FOLLOWS = {"yield": _nets, "friction": _water, "foam": _foam_holds}
