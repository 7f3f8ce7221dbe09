"""Half-worked examples: a line left out, then two, fed from the drills' own steps by hand."""

import pytest

from kitchenmath.drills.buying import DRILLS as BUYING
from kitchenmath.panels.drilling import LESSONS, drill_panel, recall_panel
from kitchenmath.panels.half_working import HalfWorkedPanel
from kitchenmath.panels.worked_lines import can_be_half_worked, half_worked
from kitchenmath.units import say
from tests.helpers.panels import words

DRILLS = {
    (lesson, name): drill
    for lesson, modules in LESSONS.items()
    for module in modules
    for name, drill in module.DRILLS.items()
    if can_be_half_worked(drill)
}
BY_NAME = {"ids": [name for _, name in DRILLS]}


def said_of(panel):
    return words(panel.words)


def test_every_lesson_has_one():
    assert set(LESSONS) == {lesson for lesson, _ in DRILLS}


def test_the_lines_of_the_butchers_test_by_hand():
    """4.5 kg at $14.50 are $65.25; 1.4 kg of trim at $5 are $7; the rest over 2.6 kg, $22.40."""
    _, lines = half_worked(BUYING["butcher's test"], 2)
    bought, price, trim, worth, usable = (
        lines[0].numbers[name].magnitude for name in ("bought", "price", "trim", "worth", "usable")
    )
    cost, credit = bought * price, trim * worth

    assert [f"${cost:.2f}", f"${credit:.2f}"] == [
        line.whole.rpartition(" = ")[2] for line in lines[:2]
    ]
    assert f"${(cost - credit) / usable:.2f} per kg" == lines[2].whole.rpartition(" = ")[2]
    assert ["the cost", "the credit", "the answer"] == [line.label for line in lines]


@pytest.mark.parametrize("drill", DRILLS.values(), **BY_NAME)
def test_one_line_is_left_out_then_two_then_all(drill):
    """Whoever types each line as the working has it comes through, and the example closes."""
    ended = []
    panel = HalfWorkedPanel(drill, lambda: ended.append(True))
    for left_out in (1, 2):
        _, lines = half_worked(drill, left_out)
        assert left_out == len(panel.fields)
        for field, line in zip(panel.fields, lines[-left_out:], strict=True):
            assert line.whole not in words(panel.given)
            field.value = say(line.question.right(line.numbers))
            assert f"✓ {line.label}: {line.sum} = " in said_of(panel)
        panel.next.click()

    assert [True] == ended


@pytest.mark.parametrize("drill", DRILLS.values(), **BY_NAME)
def test_the_three_rounds_have_three_kinds_of_numbers(drill):
    """With one line out, with two, and in the drill's first round; most numbers differ."""
    texts = {half_worked(drill, 1)[0], half_worked(drill, 2)[0], drill_panel(drill).round.text}

    assert 3 == len(texts)


def test_a_wrong_line_is_said_then_its_sum_then_the_whole_line():
    """What is left of 100 % less the loss; the loss itself is no such line."""
    panel = HalfWorkedPanel(BUYING["raw for cooked"], print)
    _, (_, answer) = half_worked(BUYING["raw for cooked"], 1)
    panel.fields[0].value = say(answer.question.right(answer.numbers))
    panel.next.click()
    _, (left, _) = half_worked(BUYING["raw for cooked"], 2)
    panel.fields[0].value = "3 %"
    assert f"✗ what is left: 3 % is not it. Look again: {left.sum}." == said_of(panel)
    panel.fields[0].value = "4 %"

    assert f"✗ what is left: 4 % is not it. It is {left.whole.partition(': ')[2]}." == said_of(
        panel
    )


def test_a_usual_slip_in_the_last_line_is_named_as_in_the_drill():
    """The loss put on top of the cooked weight."""
    panel = HalfWorkedPanel(BUYING["raw for cooked"], print)
    _, (_, answer) = half_worked(BUYING["raw for cooked"], 1)
    cooked, loss = (answer.numbers[name].magnitude for name in ("cooked", "loss"))
    panel.fields[0].value = f"{cooked * (1 + loss / 100):.0f} g"

    assert said_of(panel).startswith("↺ the answer: You added the loss to the cooked weight.")


def test_what_cannot_be_read_is_asked_for_again():
    panel = HalfWorkedPanel(BUYING["raw for cooked"], print)
    panel.fields[0].value = "lots"

    assert "does not start with a number" in said_of(panel)


@pytest.mark.parametrize("drill", DRILLS.values(), **BY_NAME)
def test_a_drill_opens_half_worked_and_goes_on_to_the_bare_one(drill):
    """From the example worked by hand to the drill: a line out, two out, nothing worked."""
    panel = drill_panel(drill)
    assert ("none", 1) == (panel.bare.layout.display, len(panel.place.children))
    half = panel.place.panel
    for left_out in (1, 2):
        assert f"{left_out} of 2" in words(half.asked)
        _, lines = half_worked(drill, left_out)
        for field, line in zip(half.fields, lines[-left_out:], strict=True):
            field.value = say(line.question.right(line.numbers))
        half.next.click()

    assert ("", ()) == (panel.bare.layout.display, panel.place.children)


def test_who_needs_no_help_is_one_click_from_the_drill_and_one_from_the_help():
    panel = drill_panel(BUYING["raw for cooked"])
    panel.place.panel.bare.click()
    assert ("", ()) == (panel.bare.layout.display, panel.place.children)
    panel.half.click()

    assert "One line is left out." in words(panel.place.panel.asked)
    assert "none" == panel.bare.layout.display


def test_recalled_drills_and_those_of_one_line_open_bare():
    """What is recalled is worked without help; and of one line nothing can be left out."""
    one_line = drill_panel(BUYING["as purchased"])

    assert one_line.half is None
    assert "" == (one_line.bare.layout.display or "")
    for _ in range(8):
        assert () == recall_panel(9).asked.place.children
