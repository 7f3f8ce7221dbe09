"""Drill of lesson 5: a card that counts salt in cups, and a salt that lies loose."""

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_, weight_of


def _table_salt(cups):
    return cups.magnitude * weight_of(Q_(1, "us_cup"), "table salt")


def _number(part):
    return Q_(part.to("").magnitude, "count")


FLAKES = Drill(
    Question(
        "cups of flakes",
        "count",
        1,
        Within(Q_(0.05, "count"), "a hand fills a cup no better"),
        lambda cups, flakes: _number(_table_salt(cups) / flakes),
        (
            Slip(
                "cup for cup",
                lambda cups: cups,
                "You filled cup for cup. Flakes lie loose: the brine would be about half as strong "
                "as the card says.",
            ),
            Slip(
                "upside down",
                lambda cups, flakes: _number(
                    cups.magnitude * flakes / weight_of(Q_(1, "us_cup"), "table salt")
                ),
                "Fewer cups of the lighter salt? The same weight takes more room.",
            ),
            Slip(
                "for one cup",
                lambda cups, flakes: (
                    _number(_table_salt(Q_(1, "count")) / flakes) if cups.magnitude > 1 else None
                ),
                "That stands for one cup of table salt. The card has more of them.",
            ),
        ),
        working=(
            "the card's salt: {cups} × 292 g = {salt}",
            "{salt} ÷ {flakes} = {answer}",
        ),
        on_the_way={"salt": _table_salt},
    ),
    "A card for a brine has {cups} US cups of table salt; a cup of it holds 292 g. You have light "
    "flakes, and one level cup of yours weighs {flakes}. How many cups of them bring as much salt?",
    "What does the card's salt weigh? The same weight of flakes is wanted.",
    {
        "cups": steps(1.5, 4, 0.5, "count", "cups of table salt"),
        "flakes": steps(120, 160, 5, "g", "a cup of your flakes"),
    },
)

DRILLS = {FLAKES.question.id: FLAKES}
