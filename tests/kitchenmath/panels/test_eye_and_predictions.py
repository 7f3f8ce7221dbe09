"""By eye, and predicting: what was said is kept before what is right can be seen."""

import pytest

from kitchenmath.errors import UnknownName
from kitchenmath.panels.looking import PIECES_PERCENT, SUBJECTS, TRAYS_MM, Eye, eye_panel
from kitchenmath.panels.predicting import PREDICTIONS, how_far_off, predict_panel
from kitchenmath.units import Q_
from tests.helpers.panels import words


def test_an_eye_leans_by_the_mean_and_is_off_by_the_mean_distance():
    """By hand: +0.3, -0.3 and +0.6 of 3 mm: leans +0.2 mm, off 0.4 mm: 6.7 % and 13.3 %."""
    eye = Eye()
    for guess in (3.3, 2.7, 3.6):
        eye.say(guess, 3.0)

    assert pytest.approx(0.2) == eye.lean
    assert pytest.approx(0.4) == eye.off
    expected = "After 3 looks you are 13.3 % off; on average 6.7 % too much."
    assert expected == eye.in_words("mm", whole=3.0)


@pytest.mark.parametrize("subject", SUBJECTS)
def test_the_measure_opens_only_after_the_answer(subject):
    """And then there is nothing to say again until the next one."""
    panel = eye_panel(subject)
    assert "measured" not in words(panel)
    assert panel.fresh.disabled
    panel.told.click()

    assert "You said" in words(panel) and "measured, it is" in words(panel)
    assert panel.told.disabled
    panel.fresh.click()
    assert "measured" not in words(panel)


def test_a_piece_is_measured_in_millimetres():
    """By hand, piece 1: 3 x 1.15 = 3.45 mm; 1.15³ = 1.52; 1.15² = 1.32; 3 mm is 15 % off."""
    panel = eye_panel("cube")
    panel.guess.value = 3.1
    assert words(panel).endswith("I say 3.1 mm.")
    panel.guess.value = 3.0
    panel.told.click()

    for said in ("it is 3.45 mm: 0.45 mm too little", "1.52 times as much", "1.32 times as long",
                 "After 1 look you are 15.0 % off"):  # fmt: skip
        assert said in words(panel)


def test_the_pieces_are_too_large_too_small_and_on_size():
    assert min(PIECES_PERCENT) < 100 < max(PIECES_PERCENT)
    assert 100 in PIECES_PERCENT


def test_some_trays_pass_and_some_do_not():
    """By hand: 3.7 and 2.4 are off on the first tray; none on the second; 3.6 on the fourth."""
    truths = SUBJECTS["tray"]().truths

    assert len(TRAYS_MM) == len(truths)
    assert (2, 0, 1) == (truths[0], truths[1], truths[3])


@pytest.mark.parametrize("name", PREDICTIONS)
def test_a_prediction_opens_the_answer_once(name):
    """The why is not there before; then what was typed stays as it was."""
    panel = predict_panel(name)
    assert PREDICTIONS[name].why not in words(panel)
    panel.told.click()
    assert words(panel) == ""
    panel.typed.value = "rubbish"
    assert PREDICTIONS[name].why not in words(panel)
    panel.typed.value = str(PREDICTIONS[name].right.magnitude) + {
        "degC": " °C", "degree_Celsius": " °C", "percent": " %",
    }.get(str(PREDICTIONS[name].right.units), f" {PREDICTIONS[name].right.units:~}")  # fmt: skip

    assert "just right" in words(panel)
    assert PREDICTIONS[name].why in words(panel)
    assert panel.typed.disabled


def test_how_far_off_a_prediction_is():
    """24 of 48 min is half of it; 24 °C for 20 °C is 4 °C, never a percent."""
    assert "50 % too little" == how_far_off(Q_(24, "min"), Q_(48, "min"))
    assert "4 °C too warm" == how_far_off(Q_(24, "degC"), Q_(20, "degC"))
    assert "just right" == how_far_off(Q_(0.8, "h"), Q_(48, "min"))


def test_the_predictions_by_hand():
    """3000 / 240 = 12.5; 75 - 55 = 20; 2.4 / 0.6 = 4; 1090.9 - 960 = 130.9; 225/45; 12 x 4;
    20 √(250 / 160) = 25; 6 - 1.5 = 4.5; at 1500 m steam tables give 845.6 hPa, so 95.0 °C."""
    right = {name: each.right.magnitude for name, each in PREDICTIONS.items()}
    expected = {"factor": 12.5, "dough water": 20, "dice": 8, "order": 4, "two percents": 130.9,
                "overrun": 500, "another Bloom": 25, "thickness": 48, "six hours": 4.5,
                "boil": 95.0, "nets": 3}  # fmt: skip

    assert expected == pytest.approx(right, rel=1e-3)


def test_an_unknown_subject_is_refused():
    with pytest.raises(UnknownName, match="subject: 'soup'"):
        eye_panel("soup")
    with pytest.raises(UnknownName, match="name: 'soup'"):
        predict_panel("soup")
