"""Lesson 2: flour in a dough, a wetter dough, cups against weights, warm and cool doughs."""

from kitchenmath.predictions.asked import Amount, Pick
from kitchenmath.ratios import water_temperature
from kitchenmath.units import Q_

PREDICTIONS = {
    "flour in a dough": Amount(
        "Forty rolls of 70 g are 2.8 kg of dough, and the percents add up to 175 %. How much of "
        "the dough is flour?",
        Q_(2800, "g") / 1.75,
        "The dough is 175 parts, the flour is 100 of them: 2800 g ÷ 1.75 = 1600 g.",
    ),
    "wetter dough": Pick(
        "You want the same 2.8 kg of dough, only wetter: water 80 % in place of 62 %. "
        "Where does the flour go?",
        ("down", "it stays", "up"),
        "down",
        "The dough is the same, so more water leaves less room: 2800 g ÷ 1.93 = 1451 g.",
    ),
    "closest mix": Pick(
        "Parts by weight and parts by cups: in which mix do they come closest?",
        ("flour and water", "sugar and water", "honey and water", "oil and vinegar"),
        "oil and vinegar",
        "A cup of oil weighs 216 g, one of vinegar 238 g: nearly alike.",
        sides=None,
    ),
    "dough water": Amount(
        "A dough of 25 °C. Flour and room get 2 °C warmer: 23 °C. Friction counts 9 °C, as before. "
        "How warm must the water be?",
        water_temperature(Q_(25, "degC"), Q_(23, "degC"), Q_(23, "degC"), Q_(9, "delta_degC")),
        "Three times 25 is the sum; flour, room and friction are taken from it. Two things got "
        "2 °C warmer, so the water is 4 °C colder than the 24 °C of before.",
    ),
    "cooler dough": Pick(
        "You want the dough 1 °C cooler. How much colder must the water be?",
        ("1 °C", "2 °C", "3 °C"),
        "3 °C",
        "The dough's temperature counts three times in the sum.",
    ),
}
