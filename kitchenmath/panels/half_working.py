"""A half-worked example as a panel: a line is left out, then two, and then the bare drill.

It stands between the example worked by hand in the lesson and the drill with nothing worked.
"""

import ipywidgets as widgets

from kitchenmath.panels.frame import ROW, below_each_other, said, together
from kitchenmath.panels.worked_lines import half_worked
from kitchenmath.practice import in_words

__all__ = ["HalfWorkedPanel"]

MOST_LEFT_OUT = 2
LEFT_OUT = (
    "",
    "Half worked, 1 of 2. One line is left out.",
    "Half worked, 2 of 2. Two lines are left out.",
)
DONE = "That was all of it by yourself. Now the drill, with nothing worked."


class HalfWorkedPanel:
    """The lines of a drill's working, with fields for those that are left out.

    Parameters
    ----------
    drill : Drill
        One that `can_be_half_worked`.
    then : callable
        What comes after both examples, or when the student goes on without them.

    Attributes
    ----------
    box : ipywidgets VBox
    next, bare : ipywidgets Button
        On to the next example, once every line is right; at any time to the bare drill.
    asked, given, words : ipywidgets HTML
        The question, the lines that are there, and what is said of those that are typed.
    fields : list of ipywidgets Text
        One for each line that is left out now.
    """

    def __init__(self, drill, then):
        self._drill, self._then, self._left_out = drill, then, 0
        self.asked, self.given, self.words = widgets.HTML(), widgets.HTML(), widgets.HTML()
        self._place = widgets.VBox()
        self.next, self.bare = (
            widgets.Button(description=name, layout={"width": "auto"})
            for name in ("Leave out two lines", "Without help")
        )
        self.next.on_click(lambda _: self.go_on())
        self.bare.on_click(lambda _: then())
        row = widgets.HBox([self.next, self.bare], layout={"flex_flow": "row wrap"})
        self.fields = []
        self.box = below_each_other([self.asked, self.given, self._place, self.words, row])
        self.go_on()

    def go_on(self):
        """Leave out one line more, with other numbers; after two of them the drill is next."""
        if self._left_out == MOST_LEFT_OUT:
            self._then()
            return
        self._left_out += 1
        text, self._lines = half_worked(self._drill, self._left_out)
        self.asked.value = said(together(f"{LEFT_OUT[self._left_out]}\n{text}"))
        shown = self._lines[: -self._left_out]
        self.given.value = said(together("\n".join(line.whole for line in shown)))
        self._missing = self._lines[-self._left_out :]
        self._right, self._tries = [False] * len(self._missing), [0] * len(self._missing)
        self.fields = [self._field(place) for place in range(len(self._missing))]
        self._place.children = self.fields
        self.words.value, self.next.layout.display = "", "none"

    def _field(self, place):
        field = widgets.Text(
            placeholder="type it, then Enter",
            description=f"{self._missing[place].label} =",
            continuous_update=False,
            style={"description_width": "initial"},
            layout={**ROW, "max_width": "420px"},
        )
        field.observe(lambda change: self._look(place, change["new"]), "value")
        return field

    def _look(self, place, typed):
        if not typed.strip():
            return
        line = self._missing[place]
        verdict = line.judge(typed)
        self._right[place] = verdict.outcome == "right"
        self._tries[place] += verdict.outcome not in ("right", "missing", "unreadable")
        lines = [self._said_of(line, verdict, self._tries[place])]
        if all(self._right):
            last = self._left_out == MOST_LEFT_OUT
            lines.append(DONE if last else "That was the missing line. Next, two are left out.")
            self.next.description = "To the drill" if last else "Leave out two lines"
            self.next.layout.display, self.bare.layout.display = "", "none" if last else ""
        self.words.value = said(together("\n".join(lines)))

    def _said_of(self, line, verdict, tries):
        """What is said of one line: first the sum to do, after a second miss the whole line."""
        if verdict.outcome == "right":
            return f"✓ {line.label}: {line.sum} = {verdict.right}"
        if verdict.outcome == "unreadable":
            return f"{line.label}: {in_words(verdict)}"
        if verdict.slips:
            return f"↺ {line.label}: {in_words(verdict)}"
        help_ = (
            f"Look again: {line.sum}."
            if tries < MOST_LEFT_OUT
            else f"It is {line.sum} = {verdict.right}."
        )
        return f"✗ {line.label}: {verdict.answer} is not it. {help_}"
