"""Drill of lesson 7: a sauce that got too thick on the stove, let down with hot stock."""

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_


def _ratio(one, other):
    return (one / other).to("").magnitude


LET_DOWN = Drill(
    Question(
        "stock to let a sauce down",
        "volume",
        1,
        Within(Q_(0.1, "L"), "a stock pot's mark shows no less"),
        lambda left, now, wanted: left * (_ratio(now, wanted) - 1),
        (
            Slip(
                "all the sauce",
                lambda left, now, wanted: left * _ratio(now, wanted),
                "That is all the sauce in the end. Take off what is in the pot already.",
            ),
            Slip(
                "of the thick sauce",
                lambda left, now, wanted: left * (1 - _ratio(wanted, now)),
                "You took the difference as a share of the thick sauce. The flour must be enough "
                "for the thin one: divide by what the card wants.",
            ),
            Slip(
                "turned round",
                lambda left, now, wanted: left * _ratio(wanted, now),
                "Less sauce than before? The ratio is turned round: the same flour goes into more "
                "litres.",
            ),
        ),
        working=(
            "flour in the pot: {left} × {now} = {flour}",
            "litres for that flour: {flour} ÷ {wanted} = {whole}",
            "{whole} − {left} = {answer}",
        ),
        on_the_way={
            "flour": lambda left, now: (left * now).to("g"),
            "whole": lambda left, now, wanted: left * _ratio(now, wanted),
        },
    ),
    "{left} of velouté is left in the pot and holds {now} of flour. The card wants {wanted}. How "
    "much hot stock do you stir in?",
    "The flour stays. How many litres is it enough for?",
    {
        "left": steps(4, 8, 0.5, "L", "velouté"),
        "now": steps(76, 84, 2, "g/L", "flour in a litre now"),
        "wanted": steps(55, 60, 5, "g/L", "flour in a litre, wanted"),
    },
)

DRILLS = {LET_DOWN.question.id: LET_DOWN}
