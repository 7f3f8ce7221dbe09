"""Lesson 4: what to buy, a worse yield, legs that are worth nothing."""

from kitchenmath.predictions.asked import Amount, Pick
from kitchenmath.units import Q_
from kitchenmath.yields import as_purchased

PREDICTIONS = {
    "celeriac": Amount(
        "Forty plates of 60 g are 2.4 kg of trimmed celeriac. The yield is 68 %. "
        "How much do you buy?",
        as_purchased(edible=Q_(2.4, "kg"), yield_=Q_(68, "percent")),
        "2.4 ÷ 0.68 = 3.53 kg. Of that, 68 % is 2.4 kg again.",
    ),
    "order": Amount(
        "2.4 kg must be on the plates. At a yield of 80 % you buy 3 kg. What at 60 %?",
        as_purchased(edible=Q_(2.4, "kg"), yield_=Q_(60, "percent")),
        "From 80 % to 60 % the order grows by a third, not by a fifth. The worse the yield, the "
        "faster the order grows.",
    ),
    "legs": Pick(
        "Nobody orders the terrine, so the legs are worth nothing. What does a kilo of breast "
        "cost, in place of $25.00?",
        ("$19.00", "$25.00", "$30.00", "$50.00"),
        "$30.00",
        "The credit of $18 is gone: $108 ÷ 3.6 kg = $30 a kilo.",
    ),
}
