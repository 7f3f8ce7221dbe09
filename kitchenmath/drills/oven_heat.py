"""Drills of lesson 1: the heat on an American card, a warm oven, and an oven with a fan."""

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.units import Q_

OVEN = Drill(
    Question(
        "how far the oven must rise",
        "temperature difference",
        1,
        Within(Q_(5, "delta_degC"), "the dial has a mark every 10 °C"),
        lambda now, card: card.to("degC") - now,
        (
            Slip(
                "°F as °C",
                lambda now, card: Q_(card.magnitude - now.magnitude, "delta_degC"),
                "You took the card's °F for °C. Nobody roasts at that heat.",
            ),
            Slip(
                "forgot the 32",
                lambda now, card: Q_(card.magnitude / 1.8 - now.magnitude, "delta_degC"),
                "Take 32 off first: ice melts at 32 °F, and at 0 °C.",
            ),
            Slip(
                "32 off last",
                lambda now, card: Q_(card.magnitude / 1.8 - 32 - now.magnitude, "delta_degC"),
                "You divided first and took 32 off then. The 32 are °F: off they come before "
                "you divide.",
            ),
            Slip(
                "all the way from zero",
                lambda card: card.to("degC") - Q_(0, "degC"),
                "That is where the oven must get to. It is warm already: take off what it shows.",
            ),
        ),
        working=(
            "the card's heat in °C: ({card} − 32) ÷ 1.8 = {celsius}",
            "{celsius} − {now} = {answer}",
        ),
        on_the_way={
            "celsius": lambda card: card.to("degC"),
        },
    ),
    "An American card says {card}. Your oven stands at {now}. How many °C must it still rise?",
    "The card's heat in °C first: take off 32, then divide by 1.8.",
    {
        "now": steps(60, 120, 10, "degC", "oven now"),
        "card": steps(325, 450, 25, "degF", "on the card"),
    },
    alone=("card",),
)

FAN_C = 20  # a fan oven's dial stands so much lower: common practice, as the lesson says

FAN = Drill(
    Question(
        "fan oven for a still one",
        "temperature",
        1,
        Within(Q_(5, "delta_degC"), "the dial has a mark every 10 °C"),
        lambda card: card.to("degC") - Q_(FAN_C, "delta_degC"),
        (
            Slip(
                "fan forgotten",
                lambda card: card.to("degC"),
                "That is right for a still oven. The fan brings the heat on faster: set it lower.",
            ),
            Slip(
                "20 °F lower",
                lambda card: card.to("degC") - Q_(FAN_C, "delta_degF"),
                "You took 20 off the °F. The step is 20 °C, which is 36 °F.",
            ),
            Slip(
                "higher",
                lambda card: card.to("degC") + Q_(FAN_C, "delta_degC"),
                "You went up. Moving air browns faster than still air: go down.",
            ),
            Slip(
                "°F as °C",
                lambda card: Q_(card.magnitude - FAN_C, "degC"),
                "You took the card's °F for °C. First turn them over.",
            ),
        ),
        working=(
            "the card's heat in °C: ({card} − 32) ÷ 1.8 = {celsius}",
            "{celsius} − 20 °C = {answer}",
        ),
        on_the_way={"celsius": lambda card: card.to("degC")},
    ),
    "An American card bakes at {card} in a still oven. Yours has a fan, and this kitchen sets it "
    "20 °C (36 °F) lower. What does your dial show, in °C?",
    "The card's heat in °C first. Then the fan.",
    {"card": steps(325, 450, 25, "degF", "on the card")},
    alone=("card",),
)

DRILLS = {drill.question.id: drill for drill in (OVEN, FAN)}
