"""What a phone puts around an amount is no part of it; how people type is common practice."""

import pytest

from kitchenmath.errors import Unreadable
from kitchenmath.units import read


@pytest.mark.parametrize(
    "typed",
    ["3 Kg", "3kg.", "3 KG", "3\u00a0kg", "3\u202fkg", "３ｋｇ", "3,0kg ", "3 kg 👍🏽", "3️⃣ kg",
     "about three kilos", "Three kilos", "3-ish kg", "3kg-ish", "~3kg", "ca. 3 kg", "3 kg!!",
     "3 kilo’s", "It’s 3 kg", "(3 kg)", "3 kg?", "3 kg (rounded)", "= about 3 kg, please"],
)  # fmt: skip
def test_three_kilos_from_a_phone_are_three_kilos(typed):
    assert 3 == read(typed).to("kg").magnitude


@pytest.mark.parametrize(
    ("typed", "kilos"), [("½ kg", 0.5), ("half a kilo", 0.5), ("1½ kg", 1.5), ("Twelve kg", 12)]
)
def test_a_part_and_a_number_in_words_are_read(typed, kilos):
    assert kilos == read(typed).to("kg").magnitude


@pytest.mark.parametrize(
    ("typed", "asked"),
    [
        ("3 kg or 4 kg", "two amounts"),
        ("3 or 4 kg", "two amounts"),
        ("O,5 kg", "the letter O"),
        ("l.5 kg", "the letter l"),
        ("one or two kg", "does not start with a number"),
        ("one and a half kg", "does not start with a number"),
        ("3 kg 👍 4 kg", "same unit twice"),
        ("👍", "nothing is typed yet"),
        ("3 (kg or lb)", "unit"),
    ],
)
def test_what_could_mean_two_amounts_or_none_is_asked_back(typed, asked):
    with pytest.raises(Unreadable, match=asked):
        read(typed)


def test_below_zero_stays_below_zero():
    """A freezer's -18 °C keeps its sign, also with a space behind it."""
    assert [-18, -18] == [read(typed).magnitude for typed in ("-18 °C", "- 18 °C")]
