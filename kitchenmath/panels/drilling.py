"""Drills as panels: one with fresh numbers as often as wanted, or four of earlier lessons."""

import ast
import json
import random
from pathlib import Path

import ipywidgets as widgets

from kitchenmath.drills import (
    Round,
    brines,
    buying,
    cutting,
    dough_warmth,
    draining,
    foaming,
    keeping,
    landing,
    measuring,
    mixing,
    oven_heat,
    records,
    resting,
    seasoning,
    setting,
    thickening,
    warming,
)
from kitchenmath.errors import OutOfRange
from kitchenmath.panels.frame import ROW, below_each_other, said, together
from kitchenmath.panels.half_working import HalfWorkedPanel
from kitchenmath.panels.worked_lines import can_be_half_worked
from kitchenmath.practice import in_words

__all__ = ["LESSONS", "drill_panel", "recall_panel"]

SIGNS = {"right": "✓ ", "close": "≈ ", "slip": "↺ ", "wrong": "✗ "}
MANY = 4
# The lesson in which each drill is taught.
LESSONS = {
    1: (measuring, oven_heat),
    2: (mixing, dough_warmth),
    3: (cutting,),
    4: (buying,),
    5: (seasoning, brines),
    6: (foaming, draining),
    7: (thickening, setting),
    8: (warming, resting),
    9: (records, keeping),
    10: (landing,),
}


def drill_panel(drill, helped=True):
    """A drill to be worked with mouse, finger or keyboard.

    A drill that can be half worked opens so: a line of its working is left out, then two, then
    nothing is worked. Each click on "Half worked" begins there again.

    Parameters
    ----------
    drill : Drill
    helped : bool
        False where it opens with nothing worked, as when earlier lessons are recalled.

    Returns
    -------
    ipywidgets VBox
        With attributes `round`, `typed`, `check`, `hint`, `working`, `fresh` and `words`; and
        `half`, the button for a half-worked example, None where the drill has none.
    """
    turn = Round(drill)
    asked, words, in_a_row = widgets.HTML(), widgets.HTML(), widgets.HTML()
    typed = widgets.Text(
        placeholder="type your answer, then Enter",
        description="Answer",
        continuous_update=False,
        style={"description_width": "initial"},
        layout={**ROW, "max_width": "360px"},
    )
    check, hint, working, fresh = (
        widgets.Button(description=name, layout={"width": "auto", "min_width": "60px"})
        for name in ("Check", "Hint", "Working", "Fresh numbers")
    )

    def tell(part, text):
        part.value = said(together(text))

    def show():
        tell(asked, turn.text)
        tell(in_a_row, f"Right in a row: {turn.in_a_row}")

    def look(_=None):
        if not typed.value.strip():
            return
        verdict = turn.answer(typed.value)
        sign = SIGNS.get(verdict.outcome, "")
        lines = [f"{sign}{in_words(verdict)}"]
        if verdict.outcome == "right":
            lines[0] += f" {verdict.right}."
        elif verdict.outcome in ("close", "slip", "wrong") and not _alike(
            typed.value, verdict.answer
        ):
            lines.append(f"Your answer was read as {verdict.answer}.")
        tell(words, "\n".join(lines))
        tell(in_a_row, f"Right in a row: {turn.in_a_row}")

    def next_round(_):
        turn.next()
        typed.value, words.value = "", ""
        show()
        typed.focus()  # who works by keyboard types on, without going back

    def tell_hint(_):
        tell(words, drill.hint)

    def tell_working(_):
        turn.counted = True  # who looked it up did not earn a place in the row
        tell(words, "\n".join(turn.working))

    typed.observe(look, "value")
    check.on_click(look)
    hint.on_click(tell_hint)
    working.on_click(tell_working)
    fresh.on_click(next_round)
    show()
    half = widgets.Button(description="Half worked", layout={"width": "auto"})
    halves = can_be_half_worked(drill)
    row = [check, hint, working, fresh, *([half] if halves else [])]
    buttons = widgets.HBox(row, layout={"flex_flow": "row wrap"})
    bare, place = widgets.VBox([asked, typed, buttons, words, in_a_row]), widgets.VBox()
    half.on_click(lambda _: _open_half_worked(drill, place, bare))
    if halves and helped:
        _open_half_worked(drill, place, bare)
    panel = below_each_other([place, bare])
    panel.half, panel.place, panel.bare = half if halves else None, place, bare
    panel.round, panel.typed, panel.words = turn, typed, words
    panel.check, panel.hint, panel.working, panel.fresh = check, hint, working, fresh
    return panel


def _open_half_worked(drill, place, bare):
    """Show a half-worked example in place of the drill, until the student comes to the drill."""

    def close():
        place.children, bare.layout.display = [], ""

    place.panel = HalfWorkedPanel(drill, close)
    place.children, bare.layout.display = [place.panel.box], "none"


def _alike(typed, read_as):
    """Whether an answer was typed as it is written out, blanks aside: then nobody is told twice."""
    return "".join(typed.split()) == "".join(read_as.split())


def recall_panel(lesson, folder=None, chance=None):
    """Four drills of earlier lessons, one at a time.

    Those that the student's own practice sheets hold come first: that is what had not come right
    when a set was marked. The others are drawn at random, anew at each opening.

    Parameters
    ----------
    lesson : int
        From 2; its own drills and those of later lessons are not asked.
    folder : path, optional
        Where practice sheets may lie; the folder in which the lessons are open when left out.
    chance : random.Random, optional

    Returns
    -------
    ipywidgets VBox
        With attributes `names`, the drills to come as (lesson, name), `asked`, the drill's panel,
        `following` and `words`.

    Raises
    ------
    OutOfRange
        For the first lesson, before which there is nothing to recall.
    """
    earlier = [
        (number, name, drill)
        for number, modules in LESSONS.items()
        if number < lesson
        for module in modules
        for name, drill in module.DRILLS.items()
    ]
    if not earlier:
        raise OutOfRange(f"lesson: {lesson} came; before lesson 2 there is nothing to recall.")
    drawn = _drawn(earlier, _on_sheets(Path(folder or Path.cwd())), chance or random.Random())
    words, place = widgets.HTML(), widgets.VBox()
    following = widgets.Button(description="Next question", layout={"width": "auto"})
    row = widgets.HBox([following], layout={"flex_flow": "row wrap"})
    panel = below_each_other([words, place, row])
    turns = []

    def show():
        number, _, drill = drawn[len(turns)]
        panel.asked = drill_panel(drill, helped=False)
        place.children = [panel.asked]
        turns.append(panel.asked.round)
        words.value = said(together(f"{len(turns)} of {len(drawn)}, from lesson {number}."))

    def go_on(_):
        if len(turns) < len(drawn):
            show()
            return
        right = sum(turn.counted and turn.in_a_row > 0 for turn in turns)
        place.children, following.layout.display = [], "none"
        words.value = said(
            together(
                f"{right} of {len(turns)} came right. "
                + ("Go on." if right == len(turns) else "Try the others once more tomorrow.")
            )
        )

    following.on_click(go_on)
    show()
    panel.names, panel.following = [(number, name) for number, name, _ in drawn], following
    panel.words = words
    return panel


def _drawn(earlier, on_sheets, chance):
    """Four of the earlier drills: those on practice sheets first, then one a lesson at random."""
    first = [each for each in earlier if each[1] in on_sheets]
    rest = [each for each in earlier if each[1] not in on_sheets]
    chance.shuffle(first)
    chance.shuffle(rest)
    lessons = set()
    # One of each lesson before a second one of any.
    apart = sorted(rest, key=lambda each: each[0] in lessons or lessons.add(each[0]) or False)
    return [*first, *apart][:MANY]


def _on_sheets(folder):
    """Names of the drills in the practice sheets of a folder; a file that is none is passed by."""
    found = set()
    for file in sorted(folder.glob("*.ipynb")):
        try:
            notebook = json.loads(file.read_text(encoding="utf-8"))
            if notebook["metadata"].get("kitchen", {}).get("practice") != "re-teach":
                continue
            cells = [cell for cell in notebook["cells"] if cell.get("id", "").endswith("-drill")]
            found.update(*(_named("".join(cell["source"])) for cell in cells))
        except (OSError, ValueError, KeyError, TypeError, AttributeError, SyntaxError):
            continue
    return found


def _named(source):
    """The names behind `DRILLS[…]` in a cell."""
    return [
        node.slice.value
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.Subscript) and isinstance(node.slice, ast.Constant)
    ]
