"""By eye: what was said is kept before what is right can be seen."""

import pytest

from kitchenmath.errors import UnknownName
from kitchenmath.panels.looking import PIECES_PERCENT, SUBJECTS, TRAYS_MM, Eye, eye_panel
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


def test_an_unknown_subject_is_refused():
    with pytest.raises(UnknownName, match="subject: 'soup'"):
        eye_panel("soup")
