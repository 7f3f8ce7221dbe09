"""Lesson 6: a base by the scale, a syrup, air in a foam, and how long it stands."""

from kitchenmath.predictions.asked import Amount, Pick
from kitchenmath.sauces import overrun, sugar_for_syrup, syrup_viscosity
from kitchenmath.units import Q_

_FRIDAY_MIN = Q_(6.25, "min")  # half is out, by the lesson's log, of a base of 35 °C


def _thinner(warm_C):
    """How thick the base of 20 °Brix is, against that of 35 °C."""
    thick, as_friday = (syrup_viscosity(Q_(20, "percent"), Q_(t, "degC")) for t in (warm_C, 35))
    return (thick / as_friday).to("").magnitude


PREDICTIONS = {
    "base by the scale": Pick(
        "The card means cups, eight to one. You use the scale: 800 g of cider, 100 g of sugar. "
        "How sweet is that?",
        ("less sweet", "the same", "sweeter"),
        "sweeter",
        "A cup of sugar is full of air between the crystals. So the scale, used for a card in "
        "cups, puts in too much sugar.",
        sides=("not sweet enough", "too sweet"),
    ),
    "syrup": Amount(
        "700 g of water are to become a syrup of 30 °Brix. How much sugar goes in?",
        sugar_for_syrup(Q_(700, "g"), brix=Q_(30, "percent")),
        "Water is the other 70 %: 700 ÷ 0.70 = 1000 g in all, so 300 g of sugar. 210 g would be "
        "30 % of the water, and only 23 °Brix.",
    ),
    "overrun": Amount(
        "A cup of base weighs 270 g, the same cup of foam 90 g. What is the overrun, in percent?",
        overrun(liquid_weight=Q_(270, "g"), foam_weight=Q_(90, "g")),
        "One cup of base makes three cups of foam, so two cups came on top: 200 %. 67 % is the "
        "gas in the foam, and 300 % counts the liquid too.",
    ),
    "whipped longer": Amount(
        "Whipped longer, the cup of foam weighs half, 45 g. What is the overrun now, in percent?",
        overrun(liquid_weight=Q_(270, "g"), foam_weight=Q_(45, "g")),
        "Six cups from one: five came on top.",
    ),
    "twice the half-life": Amount(
        "The plate is eaten after twice the half-life. What percentage of the liquid is out?",
        Q_(75, "percent"),
        "About three quarters: the foam dries, and drains ever more slowly.",
    ),
    "hot base": Amount(
        "At 35 °C half is out after 6.25 minutes. After how many minutes is it at 60 °C?",
        _FRIDAY_MIN * _thinner(60),
        "At 60 °C the liquid is much thinner: 6.25 × 0.835 ÷ 1.34 = 3.9 min.",
    ),
}
