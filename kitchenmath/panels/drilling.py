"""The drill as a panel: a question, a place to type, and what to do next."""

import ipywidgets as widgets

from kitchenmath.drills import Round
from kitchenmath.panels.frame import ROW, below_each_other, said, together
from kitchenmath.practice import in_words

SIGNS = {"right": "✓ ", "close": "≈ ", "slip": "↺ ", "wrong": "✗ "}


def drill_panel(drill):
    """A drill to be worked with mouse, finger or keyboard.

    Parameters
    ----------
    drill : Drill

    Returns
    -------
    ipywidgets VBox
        With attributes `round`, `typed`, `check`, `hint`, `working`, `fresh` and `words`.
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
    buttons = widgets.HBox([check, hint, working, fresh], layout={"flex_flow": "row wrap"})
    panel = below_each_other([asked, typed, buttons, words, in_a_row])
    panel.round, panel.typed, panel.words = turn, typed, words
    panel.check, panel.hint, panel.working, panel.fresh = check, hint, working, fresh
    return panel


def _alike(typed, read_as):
    """Whether an answer was typed as it is written out, blanks aside: then nobody is told twice."""
    return "".join(typed.split()) == "".join(read_as.split())
