"""Lesson 9: six hours for a pot, readings by night, water that boils in the mountains."""

from kitchenmath.heat import boiling_point
from kitchenmath.predictions.asked import Amount
from kitchenmath.units import Q_

PREDICTIONS = {
    "six hours": Amount(
        "A pot passes 57 °C at 20:00 and is at 21 °C at 21:30. How long may it take from there "
        "to 5 °C?",
        Q_(4.5, "h"),
        "Six hours in all, from 57 °C: an hour and a half of them are gone. They do not begin "
        "anew.",
    ),
    "boil": Amount(
        "A kitchen lies 1500 m above the sea. At how many degrees does water boil there?",
        Q_(round(boiling_point(altitude=Q_(1500, "m")).magnitude, 1), "degC"),
        "About 1 °C less for each 300 m. A sound probe shows that, and is not to blame.",
    ),
}
