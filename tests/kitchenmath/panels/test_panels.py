"""Panels and drills without a kernel: set a value, read the sentence."""

import itertools
import re

import pytest

import kitchenmath.drills
import kitchenmath.panels
from kitchenmath.drills import Round
from kitchenmath.drills.buying import DRILLS as BUYING
from kitchenmath.drills.dough_warmth import DRILLS as DOUGH_WARMTH
from kitchenmath.panels.buying import breast_price_panel, purchase_panel
from kitchenmath.panels.drilling import drill_panel
from kitchenmath.panels.frame import together
from kitchenmath.panels.seasoning import strength_panel
from kitchenmath.panels.thickening import gelatin_panel
from kitchenmath.practice import in_words
from kitchenmath.practice.own_numbers import beside, practice_numbers
from kitchenmath.units import say
from tests.helpers.every_panel import PANELS, modules
from tests.helpers.panels import words
from tests.helpers.typed_answers import as_typed

# Every drill of every module of drills.
BOOK = {
    f"{module.__name__.rpartition('.')[2]}: {name}": drill
    for module in modules(kitchenmath.drills)
    for name, drill in module.DRILLS.items()
}
DRILLS = list(BOOK.values())


@pytest.mark.parametrize("panel", PANELS.values(), ids=PANELS)
def test_every_step_of_every_slider_gives_a_sentence_and_a_picture(panel):
    """From one end to the other; the picture changes, nothing fails."""
    shown = panel()
    for control in shown.controls.values():
        options = getattr(control, "options", None)
        pictures = set()
        for value in options or (control.min, control.max):
            control.value = value[1] if isinstance(value, tuple) else value
            pictures.add(shown.picture.value)
            assert len(words(shown.words)) > 40
        assert len(pictures) >= 2


def ends(panel):
    """Move each control to its ends, or through its choices, and back to where it stood."""
    for control in panel.controls.values():
        start = control.value
        for value in getattr(control, "options", None) or (control.min, control.max):
            control.value = value[1] if isinstance(value, tuple) else value
            yield
        control.value = start


@pytest.mark.parametrize("panel", PANELS.values(), ids=PANELS)
def test_a_slider_moves_what_is_drawn_and_draws_nothing_anew(panel):
    """Once everything was seen, going through it again leaves as many lines, bars and words."""
    shown = panel()
    axes = shown.drawing.figure.axes
    for _ in ends(shown):
        pass
    made = [len(each.get_children()) for each in axes]
    for _ in ends(shown):
        assert [len(each.get_children()) for each in axes] == made


def corners(panel):
    """Each control at its ends with the others as they stand, then all low and all high."""
    yield from ends(panel)
    for end in (0, -1):
        for control in panel.controls.values():
            options = getattr(control, "options", None) or (control.min, control.max)
            value = options[end]
            control.value = value[1] if isinstance(value, tuple) else value
        yield


@pytest.mark.parametrize("panel", [purchase_panel, gelatin_panel])
def test_what_is_drawn_fills_the_width_however_little_it_is(panel):
    """At the start and at both ends: the longest row of roots or leaves reaches across."""
    shown = panel()
    wide = shown.drawing.figure.bbox.width
    for _ in itertools.chain([None], corners(shown)):
        [axes] = shown.drawing.figure.axes
        ends = [each.get_window_extent().x1 for each in axes.patches if each.get_visible()]
        assert 0.85 * wide < max(ends) <= wide


def test_a_heap_of_salt_is_as_wide_as_the_third_root_of_its_weight():
    """Half of the water halves the salt: 0.5 to the power of 1/3 is 0.794 of the width."""
    panel = strength_panel()
    [axes] = panel.drawing.figure.axes
    wide = [each.get_window_extent().width for each in axes.patches]
    panel.controls["water_kg"].value = 4
    small = [each.get_window_extent().width for each in axes.patches]

    assert 3 == len(wide)
    assert [0.794] * 3 == pytest.approx([b / a for a, b in zip(wide, small, strict=True)], rel=2e-2)


def texts_of(picture):
    """Every text that is seen in a picture, the numbers along its axes too, with its box."""
    figure = picture.figure
    texts = list(figure.texts)
    for axes in figure.axes:
        texts += axes.texts
        if axes.axison:
            texts += [axes.xaxis.label, axes.yaxis.label]
            for axis in (axes.xaxis, axes.yaxis):
                low, high = sorted(axis.get_view_interval())
                texts += [tick.label1 for tick in axis.get_major_ticks()
                          if low <= tick.get_loc() <= high]  # fmt: skip
    return [
        (text.get_text(), text.get_window_extent())
        for text in texts
        if text.get_visible() and text.get_text().strip()
    ]


@pytest.mark.parametrize("panel", PANELS.values(), ids=PANELS)
def test_at_the_ends_of_every_slider_words_are_whole_and_apart(panel):
    """All texts lie within the picture, and none on another; a box of letters may touch."""
    shown = panel()
    picture = shown.drawing.figure.bbox
    for _ in corners(shown):
        boxes = texts_of(shown.drawing)
        for text, box in boxes:
            assert picture.x0 <= box.x0 + 1, text
            assert box.x1 <= picture.x1 + 1, text
            assert picture.y0 <= box.y0 + 1, text
            assert box.y1 <= picture.y1 + 1, text
        for (one, first), (other, second) in itertools.combinations(boxes, 2):
            assert not first.padded(-2).overlaps(second.padded(-2)), (one, other)


@pytest.mark.parametrize("panel", PANELS.values(), ids=PANELS)
def test_who_cannot_see_the_picture_hears_what_stands_in_it(panel):
    """The alternative text changes with every control, as the picture does."""
    shown = panel()
    for control in shown.controls.values():
        said = set()
        for value in getattr(control, "options", None) or (control.min, control.max):
            control.value = value[1] if isinstance(value, tuple) else value
            [alt] = re.findall(r'<img alt="Picture: ([^"]+)"', shown.picture.value)
            said.add(alt + words(shown))
        assert 2 <= len(said)
        assert 20 < len(alt)


@pytest.mark.parametrize("panel", PANELS.values(), ids=PANELS)
def test_a_panel_has_at_most_three_controls_with_units_in_their_labels(panel):
    """House style; a bare count needs no unit."""
    controls = panel().controls.values()

    assert len(controls) <= 3
    bare = ("Covers",)  # a count needs no unit, and neither does a choice of words
    assert all(
        "(" in c.description or c.description in bare or hasattr(c, "options") for c in controls
    )


def test_the_purchase_panel_says_the_hand_calculation():
    """By hand: 40 x 60 g = 2.4 kg; / 0.60 = 4 kg; 4 - 2.4 = 1.6 kg trim; 2.4 x 0.6 = 1.44 kg.

    1.44 kg bought leaves 0.864 kg, which is 14 portions of 60 g.
    """
    panel = purchase_panel()
    panel.controls["yield_percent"].value = 60

    said = words(panel.words)
    assert "40 covers of 60 g are 2.4 kg on the plates." in said
    assert "you buy 4 kg (8.82 lb); 1.6 kg is trim" in said
    assert "buys 1.44 kg, and feeds 14 of 40" in said


def test_the_breast_panel_says_the_hand_calculation():
    """By hand: 10 kg at $9 = $90; credit 2.5 x 6 + 2.8 x 1.5 = $19.20; 70.80 / 3 kg = $23.60."""
    said = words(breast_price_panel().words)

    assert "worth $19.20, so the breast carries $70.80: $23.60 per kg" in said
    assert "Without the credit it would look like $30.00 per kg. Cost factor: 2.62." in said


@pytest.mark.parametrize("drill", DRILLS, ids=BOOK)
def test_a_right_answer_is_right_and_counts_in_the_row(drill):
    """Typed as a cook would, in the first twenty rounds."""
    turn = Round(drill)
    for number in range(1, 21):
        right = drill.question.right(turn.numbers)
        assert turn.answer(as_typed(right)).outcome == "right"
        assert turn.in_a_row == number
        turn.next()


@pytest.mark.parametrize("drill", DRILLS, ids=BOOK)
def test_no_slip_passes_for_the_right_answer_in_any_round(drill):
    """300 rounds: a student who makes the slip is told so."""
    turn = Round(drill)
    for number in range(1, 301):
        numbers = practice_numbers(turn.question.id, number, turn.choices)
        assert turn.question.collisions(numbers) == []


@pytest.mark.parametrize("drill", DRILLS, ids=BOOK)
def test_every_slip_is_named(drill):
    """Each slip's own number, typed back to four figures, gets the slip's sentence."""
    turn = Round(drill)
    for number in range(1, 31):
        numbers = practice_numbers(turn.question.id, number, turn.choices)
        for slip in turn.question.slips:
            value = turn.question.slip_value(slip, numbers)
            if value is None:
                continue
            typed = as_typed(value)
            assert slip.name in turn.question.judge(typed, numbers).slips


@pytest.mark.parametrize(
    "drill", [drill for drill in DRILLS if drill.alone], ids=lambda drill: drill.question.id
)
def test_a_number_that_is_to_be_turned_over_stands_alone(drill):
    """Who is asked for °C is not told them; the other numbers keep both systems beside them."""
    turn = Round(drill)
    for name, number in turn.numbers.items():
        assert (beside(number) in turn.text) == (name not in drill.alone)
        assert say(number) in turn.text


def test_fresh_numbers_differ_from_round_to_round():
    """Twenty rounds of one drill show more than ten different questions."""
    turn = Round(DRILLS[0])
    seen = set()
    for _ in range(20):
        seen.add(turn.text)
        turn.next()

    assert len(seen) > 10


def test_a_slip_ends_the_row_and_only_the_first_try_counts():
    """Right, slip, then right in the same round: the row stays at nought."""
    turn = Round(BUYING["as purchased"])
    turn.answer(say(turn.drill.question.right(turn.numbers)))
    turn.next()
    turn.answer(say(turn.numbers["edible"] * turn.numbers["yield_"].to("").magnitude))
    turn.answer(say(turn.drill.question.right(turn.numbers)))

    assert turn.in_a_row == 0


def test_an_unreadable_answer_costs_no_place_in_the_row():
    """A missing unit is no slip."""
    turn = Round(BUYING["as purchased"])
    turn.answer("4")

    assert not turn.counted


def test_a_number_that_cannot_be_is_asked_back_and_costs_no_place_in_the_row():
    """Nobody buys -5 kg; a core of -5 °C can be, and is judged."""
    turn = Round(BUYING["as purchased"])
    verdict = turn.answer("-5 kg")

    assert ("unreadable", False) == (verdict.outcome, turn.counted)
    assert "-5 kg cannot be" in in_words(verdict)


def test_a_number_rounded_too_far_is_close_and_the_step_is_said():
    """The step of the drill stands in the sentence, as a set says it."""
    turn = Round(BUYING["as purchased"])
    while not (rounded := _rounded_too_far(turn)):
        turn.next()
    told = in_words(turn.answer(rounded))

    assert "rounded too far" in told
    assert f"Answer {turn.drill.question.tolerance}" in told


def _rounded_too_far(turn):
    """The right answer to one figure, where that is close and no more."""
    typed = say(turn.drill.question.right(turn.numbers), digits=1)
    outcome = turn.drill.question.judge(typed, turn.numbers).outcome
    return typed if outcome == "close" else ""


@pytest.mark.parametrize(
    ("times", "told"),
    [
        (0.001, "a thousandth of it. Look at the unit"),
        (1000, "a thousand times too much. Look at the unit"),
        (7.3, "none of the usual slips gives it. Read the hint"),
    ],
)
def test_a_number_that_no_slip_gives_is_told_where_to_look(times, told):
    """4.29 kg typed as 4.29 g is a thousandth; after any other number the hint comes next."""
    turn = Round(BUYING["as purchased"])
    kilos = turn.drill.question.right(turn.numbers).to("kg").magnitude

    verdict = turn.answer(f"{times * kilos:.6f} kg")
    assert (verdict.outcome, turn.in_a_row) == ("wrong", 0)
    assert told in in_words(verdict)


def test_ten_times_as_many_degrees_is_no_slip_of_the_point():
    """24 °C typed as 240 °C is a wrong reading; nobody is told that its figures are right."""
    turn = Round(DOUGH_WARMTH["dough water"])
    water = turn.drill.question.right(turn.numbers).magnitude

    assert "none of the usual slips" in in_words(turn.answer(f"{10 * water:.0f} °C"))


@pytest.mark.parametrize("drill", DRILLS, ids=BOOK)
def test_the_drill_panel_goes_through_all_it_offers(drill):
    """Check, hint, working, fresh numbers: with the keyboard's and the mouse's own events."""
    panel = drill_panel(drill)
    panel.typed.value = "rubbish"
    amount = drill.question.told_in_numbers
    assert ("does not start with a number" if amount else "rubbish") in words(panel.words)
    panel.hint.click()
    assert words(panel.words) == panel.round.hint
    panel.working.click()
    assert words(panel.words) == "\n".join(panel.round.working)
    asked = panel.round.text
    panel.fresh.click()
    assert (panel.typed.value, words(panel.words)) == ("", "")
    panel.typed.value = as_typed(drill.question.right(panel.round.numbers))
    assert words(panel.words).startswith("✓ Right.")
    assert panel.round.in_a_row == 1
    assert asked != panel.round.text or panel.round.number == 2


def test_what_a_student_types_is_escaped():
    """Typed HTML is shown, not obeyed."""
    panel = drill_panel(DRILLS[0])
    panel.typed.value = "<script>alert(1)</script>"

    assert "<script>" not in panel.words.value


@pytest.mark.parametrize("drill", DRILLS, ids=BOOK)
def test_a_drill_knows_three_slips_at_least(drill):
    """One usual slip is a coincidence; three are what a class really does."""
    assert len(drill.question.slips) >= 3


def test_an_answer_is_told_back_only_where_it_was_read_as_something_else():
    """9 lb 4 oz are read as 9.25 lb; who typed 9.25 lb knows that already."""
    panel = drill_panel(BUYING["as purchased"])
    panel.typed.value = "9 lb 4 oz"
    assert words(panel).endswith("\nYour answer was read as 9.25 lb.")
    panel.typed.value = " 9.25lb"

    assert "was read as" not in words(panel)


@pytest.mark.parametrize(
    ("written", "kept"),
    [
        ("Buy 2.4 kg, about 68 % of it", "Buy 2.4~kg, about 68~% of it"),
        ("a bath of 60 °C for 1 h 15 min", "a bath of 60~°C for 1~h 15~min"),
        ("within ± 0.5 mm", "within ±~0.5~mm"),
        ("3 × 25 = 75, and no more", "3 × 25 = 75, and no more"),
    ],
)
def test_a_number_and_its_unit_stay_on_one_line(written, kept):
    """~ stands for the blank at which no line ends; a sum may break at its signs."""
    assert together(written) == kept.replace("~", "\u00a0")


def test_panels_and_drills_keep_numbers_and_units_together():
    """As the page gets them, before `words` makes them plain."""
    assert "2.4\u00a0kg" in purchase_panel().words.value
    assert " kg" not in drill_panel(BUYING["as purchased"]).bare.children[0].value
