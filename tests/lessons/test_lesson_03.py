"""Lesson 3: its numbers worked by hand, what its panels say, and every draw of its drills."""

import itertools
import json
from pathlib import Path

import numpy as np
import pytest

from kitchenmath.cuts import (
    CUTS,
    chance_to_pass,
    cooking_time_factor,
    judge,
    pieces,
    pieces_in_ball,
    pieces_to_show,
    published_bands,
    sizes_printed,
    squared_yield,
)
from kitchenmath.drills.cutting import DRILLS
from kitchenmath.panels.cutting import SPREAD, tray_panel
from kitchenmath.panels.predicting import PREDICTIONS
from kitchenmath.panels.squaring import squaring, squaring_panel, times, times_panel
from kitchenmath.units import Q_, read, say
from tests.helpers.lessons import predictions_of
from tests.helpers.panels import words

KIT = Path(__file__).parents[2]
LESSON = json.loads((KIT / "lessons/03-cut-to-size.ipynb").read_text(encoding="utf-8"))
PROSE = "\n".join("".join(c["source"]) for c in LESSON["cells"] if c["cell_type"] == "markdown")
PROSE += predictions_of(LESSON)
GUIDE = (KIT / "instructor/guide/03-cut-to-size.md").read_text(encoding="utf-8")
TRAY = KIT / "lessons/data/invented_brunoise_tray.csv"


def edge(cut):
    return CUTS[cut].thinnest


def test_what_is_printed_for_brunoise_runs_from_1_to_3_mm():
    """Five sources of the kit's table, read again here."""
    ends = [end.magnitude for of in CUTS["brunoise"].printed.values() for end in of["edge"]]

    assert (min(ends), max(ends), len(sizes_printed("brunoise"))) == (1, 3, 5)
    assert "from 1 mm to 3 mm" in PROSE


def test_each_of_the_first_three_is_half_of_the_next_and_eight_make_one():
    """By hand: 1.5, 3, 6; 6 / 3 = 2 and 2 x 2 x 2 = 8."""
    sizes = [edge(name).magnitude for name in ("fine brunoise", "brunoise", "small dice")]

    assert sizes == [1.5, 3, 6]
    assert pieces([read("6 mm")] * 3, "brunoise").number == 8
    assert "2 × 2 × 2 = 8." in PREDICTIONS["dice"].why


def test_a_brunoise_is_a_julienne_cut_across():
    """Both are 3 mm in section by the convention."""
    assert edge("brunoise") == edge("julienne")


def test_ten_percent_on_the_edge_is_a_third_of_the_weight():
    """By hand: 1.1 x 1.1 x 1.1 = 1.331."""
    assert 1.1 * 1.1 * 1.1 == pytest.approx(1.331)
    assert "1.1 × 1.1 × 1.1 = 1.33: a third more weight" in PROSE


def test_the_square_in_a_carrot_of_40_mm_by_hand():
    """By hand: 40 / 1.414 = 28.3; 28.3 x 28.3 = 801; 0.785 x 1600 = 1256; 801 / 1256 = 64 %."""
    carrot = squared_yield("cylinder", diameter=read("40 mm"))

    assert say(carrot.side, 3) == "28.3 mm"
    assert say(carrot.yield_, 2) == "64 %"
    assert (round(28.3 * 28.3), round(0.785 * 40 * 40)) == (801, 1256)
    for line in ("40 ÷ 1.414 = 28.3 mm", "28.3 × 28.3 = 801 mm²", "801 ÷ 1256 = 64 %"):
        assert line in PROSE


def test_a_thin_end_half_as_wide_leaves_under_thirty_percent():
    """By hand: (d²/2) / (π/12 (4d² + 2d² + d²)) = 6 / 7π = 27.3 %."""
    found = squared_yield("cone", read("40 mm"), small_diameter=read("20 mm")).yield_

    assert found.magnitude == pytest.approx(100 * 6 / (7 * np.pi))
    assert "27 % is left" in PROSE


def test_one_cut_across_keeps_44_percent_instead_of_27():
    """By hand: a cone's volume goes with a² + ab + b², so 3700 and 1900 of 5600: 66 and 34 %."""
    whole, thick, thin = (
        squared_yield("cone", Q_(wide, "mm"), small_diameter=Q_(narrow, "mm")).yield_.magnitude
        for wide, narrow in ((40, 20), (40, 30), (30, 20))
    )

    assert "0.66 × 46 + 0.34 × 40 = 44 %" in PROSE
    assert (round(whole), round(thick), round(thin)) == (27, 46, 40)
    assert (3700 * thick + 1900 * thin) / 5600 == pytest.approx(44, abs=0.5)


def test_fifteen_millimetres_by_hand():
    """By hand: 0.75² = 0.5625; 16 x 0.5625 = 9; 16 x 0.75 = 12 minutes."""
    now = read("16 min")

    assert say(now * cooking_time_factor(read("20 mm"), read("15 mm"))) == "9 min"
    assert say(now * cooking_time_factor(read("20 mm"), read("15 mm"), power=1)) == "12 min"
    for line in ("0.75 × 0.75 = 0.5625", "16 × 0.5625 = 9 minutes", "16 × 0.75 = 12 minutes"):
        assert line in PROSE


def test_half_the_size_takes_a_quarter_of_the_time():
    """Dickerson and Read (1973): doubling the smallest dimension takes four times as long."""
    assert cooking_time_factor(read("20 mm"), read("10 mm")) == 0.25


def test_the_invented_tray_by_hand():
    """By hand: the edges add to 30.4, so the mean is 3.04; 3.6 alone lies outside 2.5 to 3.5."""
    tray = judge(TRAY, "brunoise", read("0.5 mm"), column="edge", unit="mm")

    assert say(tray.mean) == "3.04 mm"
    assert (tray.within, tray.count) == (9, 10)
    assert "Nine of ten sounds like 90 %." in PROSE
    assert "`lessons/data/invented_brunoise_tray.csv`" in PROSE


def test_the_words_of_uniformity_come_from_a_standard_for_processed_fruit():
    """7 CFR 52.1029: practically uniform is at most 10 % off."""
    band = published_bands()["processed fruit, practically uniform"]

    assert (say(band.share), band.source) == ("10 %", "7 CFR 52.1029")
    assert "7 CFR 52.1029" in PROSE


def test_a_cook_with_ten_percent_off_fails_one_time_in_four():
    """By hand: 0.9^10 + 10 x 0.1 x 0.9^9 = 0.349 + 0.387 = 0.736; and 36 pieces to show it."""
    by_hand = 0.9**10 + 10 * 0.1 * 0.9**9
    found = chance_to_pass(pieces=10, allowed=1, off=read("10 %"))

    assert found.to("").magnitude == pytest.approx(by_hand)
    assert say(found, 2) == "74 %"
    assert "still fails one time in four" in GUIDE
    assert pieces_to_show(read("10 %")) == 36
    assert "36 pieces, all of them on size" in GUIDE


def test_the_ten_draws_have_mean_nought_and_standard_deviation_one():
    """numpy as referee: the sliders' mean and spread are then what the verdict says."""
    assert np.mean(SPREAD) == pytest.approx(0, abs=1e-9)
    assert np.std(SPREAD, ddof=1) == pytest.approx(1, abs=1e-3)


def test_the_tray_panel_does_not_call_ten_good_pieces_proof():
    """At 3 mm and a spread of 0.2 mm all are on size; the interval begins at 0.025^(1/10)."""
    panel = tray_panel()
    panel.controls["sd_mm"].value = 0.2

    assert say(Q_(100 * 0.025**0.1, "percent"), 2) == "69 %"
    assert "10 of 10 lie within ± 0.5 mm: 100 % (95 % interval 69 to 100 %)" in words(panel)
    assert "cannot settle it" in words(panel)


def test_the_squaring_panel_says_the_hand_calculation():
    """By hand, 40 to 30 mm: 30/√2 = 21.2; 450 / (π/12 x 3700) = 46.5 %; 500 g x 0.465 = 232 g."""
    said = words(squaring_panel())

    assert "a square of 21.2 mm fits all the way" in said
    assert "46.5 % is left: 232 g of 500 g. 268 g is trim" in said


def test_the_times_panel_says_the_hand_calculation():
    """By hand: half the size, 16 / 4 = 4 and 16 / 2 = 8 minutes."""
    panel = times_panel()
    assert "20 mm takes 16 min. At 10 mm expect between 4 min and 8 min." in words(panel)
    panel.controls["new_mm"].value = 20

    assert "At 20 mm expect about 16 min." in words(panel)


def test_the_bars_and_the_square_are_drawn_at_the_sizes_that_are_said():
    """By hand: 16, 16 / 4 and 16 / 2 minutes; 40, 30 and 30/√2 = 21.2 mm."""
    assert times(20, 10, 16)["minutes"] == pytest.approx((16, 4, 8))
    assert squaring(40, 75, 500)["sizes_mm"] == pytest.approx((40, 30, 21.213), abs=1e-3)


def test_the_carrot_of_the_guide_by_hand():
    """By hand: 63.7 % of 300 g is 191 g, and 300 - 191 = 109 g."""
    kept = 300 * squared_yield("cylinder", read("40 mm")).yield_.to("").magnitude

    assert (round(kept), round(300 - kept)) == (191, 109)
    assert "300 g leave 191 g, and 109 g" in GUIDE


@pytest.mark.parametrize("drill", DRILLS.values(), ids=DRILLS)
def test_no_slip_of_any_draw_comes_near_the_right_answer(drill):
    """Every number that a drill can draw: right and slip lie two tolerances apart or more."""
    question = drill.question
    for drawn in itertools.product(*(choice.values for choice in drill.choices.values())):
        numbers = dict(zip(drill.choices, drawn, strict=True))
        right = question.right(numbers)
        allowed = question.tolerance.around(right, of_percent=question.kind == "percent")
        for slip in question.slips:
            value = question.slip_value(slip, numbers)
            if value is not None:
                gap = abs(value.to(right.units).magnitude - right.magnitude)
                assert gap >= 2 * allowed


def test_the_cut_card_goes_beside_the_lesson_and_must_be_printed_true():
    """A relative name, so the file lands in the folder where the student's notebook runs."""
    code = "\n".join("".join(c["source"]) for c in LESSON["cells"] if c["cell_type"] == "code")

    assert 'cut_card(paper="A4", path="cut-card.pdf")' in code
    assert 'never "fit to page"' in PROSE


def test_each_share_of_a_celeriac_says_which_cutting_gives_it():
    """By hand: a cube in its ball is 2 / (√3 π) = 36.8 %; 0.92³ = 0.779; 0.779 x 0.867 = 67.5 %."""
    one_cube = squared_yield("sphere", read("100 mm")).yield_.magnitude
    brunoise = pieces_in_ball(read("92 mm"), "brunoise").used.magnitude

    assert one_cube == pytest.approx(100 * 2 / (3**0.5 * np.pi))
    assert 0.92**3 * brunoise == pytest.approx(68, abs=0.6)
    for line in ("37 % of the round", "0.78 × 0.87 = 0.68", "68 % of the whole root"):
        assert line in PROSE


def test_a_brunoise_by_the_square_is_22_seconds_so_the_square_does_not_hold_there():
    """By hand: 3 / 20 = 0.15; 16 min x 0.0225 = 0.36 min = 21.6 s."""
    time = read("16 min") * cooking_time_factor(read("20 mm"), read("3 mm"))

    assert time.to("s").magnitude == pytest.approx(21.6)
    assert "it says 22 seconds for a brunoise" in PROSE
