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
from kitchenmath.panels.frame import ROW, Panel, said, together
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
    return DrillPanel(drill, helped)


class DrillPanel(Panel):
    """See `drill_panel`."""

    def __init__(self, drill, helped):
        self._drill, self.round = drill, Round(drill)
        self._asked, self.words, self._in_a_row = (widgets.HTML() for _ in range(3))
        self.typed = widgets.Text(
            placeholder="type your answer, then Enter",
            description="Answer",
            continuous_update=False,
            style={"description_width": "initial"},
            layout={**ROW, "max_width": "360px"},
        )
        self.typed.observe(self._look, "value")
        self.check = _button("Check", self._look)
        self.hint = _button("Hint", lambda _: _tell(self.words, self.round.hint))
        self.working = _button("Working", self._tell_working)
        self.fresh = _button("Fresh numbers", self._next_round)
        halves = can_be_half_worked(drill)
        self.half = _button("Half worked", self._half_worked) if halves else None
        buttons = [self.check, self.hint, self.working, self.fresh, self.half]
        row = widgets.HBox([one for one in buttons if one], layout={"flex_flow": "row wrap"})
        self.bare = widgets.VBox([self._asked, self.typed, row, self.words, self._in_a_row])
        self.place = widgets.VBox()
        self._show()
        if halves and helped:
            self._half_worked()
        super().__init__([self.place, self.bare])

    def _half_worked(self, _=None):
        """Show a half-worked example in place of the drill, until a student comes to the drill."""
        self.place.panel = HalfWorkedPanel(self._drill, self._close)
        self.place.children, self.bare.layout.display = [self.place.panel.box], "none"

    def _close(self):
        self.place.children, self.bare.layout.display = [], ""

    def _show(self):
        _tell(self._asked, self.round.text)
        _tell(self._in_a_row, f"Right in a row: {self.round.in_a_row}")

    def _look(self, _):
        typed = self.typed.value
        if not typed.strip():
            return
        verdict = self.round.answer(typed)
        lines = [f"{SIGNS.get(verdict.outcome, '')}{in_words(verdict)}"]
        if verdict.outcome == "right":
            lines[0] += f" {verdict.right}."
        elif verdict.outcome in ("close", "slip", "wrong") and not _alike(typed, verdict.answer):
            lines.append(f"Your answer was read as {verdict.answer}.")
        _tell(self.words, "\n".join(lines))
        _tell(self._in_a_row, f"Right in a row: {self.round.in_a_row}")

    def _next_round(self, _):
        self.round.next()
        self.typed.value, self.words.value = "", ""
        self._show()
        self.typed.focus()  # who works by keyboard types on, without going back

    def _tell_working(self, _):
        self.round.counted = True  # who looked it up did not earn a place in the row
        _tell(self.words, "\n".join(self.round.working))


def _button(name, do):
    button = widgets.Button(description=name, layout={"width": "auto", "min_width": "60px"})
    button.on_click(do)
    return button


def _tell(part, text):
    part.value = said(together(text))


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
    drawn = _drawn(
        _before(lesson), _on_sheets(Path(folder or Path.cwd())), chance or random.Random()
    )
    return RecallPanel(drawn)


class RecallPanel(Panel):
    """See `recall_panel`."""

    def __init__(self, drawn):
        self._to_come, self._turns = drawn, []
        self.names = [(number, name) for number, name, _ in drawn]
        self.words, self._place = widgets.HTML(), widgets.VBox()
        self.following = widgets.Button(description="Next question", layout={"width": "auto"})
        self.following.on_click(self._go_on)
        row = widgets.HBox([self.following], layout={"flex_flow": "row wrap"})
        self._show()
        super().__init__([self.words, self._place, row])

    def _show(self):
        number, _, drill = self._to_come[len(self._turns)]
        self.asked = drill_panel(drill, helped=False)
        self._place.children = [self.asked]
        self._turns.append(self.asked.round)
        _tell(self.words, f"{len(self._turns)} of {len(self._to_come)}, from lesson {number}.")

    def _go_on(self, _):
        if len(self._turns) < len(self._to_come):
            self._show()
            return
        right = sum(turn.counted and turn.in_a_row > 0 for turn in self._turns)
        self._place.children, self.following.layout.display = [], "none"
        _tell(
            self.words,
            f"{right} of {len(self._turns)} came right. "
            + ("Go on." if right == len(self._turns) else "Try the others once more tomorrow."),
        )


def _before(lesson):
    """Lesson, name and drill of all that lessons before this one teach."""
    earlier = [
        (number, name, drill)
        for number, modules in LESSONS.items()
        if number < lesson
        for module in modules
        for name, drill in module.DRILLS.items()
    ]
    if not earlier:
        raise OutOfRange(f"lesson: {lesson} came; before lesson 2 there is nothing to recall.")
    return earlier


def _drawn(earlier, on_sheets, chance):
    """Four of the earlier drills: those on practice sheets first, then one a lesson at random."""
    first = [each for each in earlier if each[1] in on_sheets]
    rest = [each for each in earlier if each[1] not in on_sheets]
    chance.shuffle(first)
    chance.shuffle(rest)
    lessons = {number for number, *_ in first}
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
