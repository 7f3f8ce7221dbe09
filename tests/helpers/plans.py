"""The plan of an invented service that tests judge; it is worked by hand in test_planned."""

from kitchenmath.practice.plan_kitchen import Kitchen, begins_at_opening, one_by_one
from kitchenmath.practice.planned import PlanQuestion, PlanSlip
from kitchenmath.service import Task
from kitchenmath.units import Q_

WORTH = {"order": 2, "holding": 1.5, "hands": 1, "equipment": 1, "opening": 0.5}
BY_HAND = {
    "bake the bread": "17:35",
    "roast the birds": "17:55",
    "carve the birds": "19:10",
    "whip the foam": "19:15",
    "plate": "19:20",
}


def minutes(number):
    return Q_(number, "min")


def kitchen(roast):
    return Kitchen(
        serve_at="19:30",
        tasks=(
            Task("roast the birds", roast, 0, rest=minutes(15), hold=minutes(10), equipment="oven"),
            Task("carve the birds", minutes(10), after="roast the birds", hold=minutes(5),
                 cook="A"),
            Task("bake the bread", minutes(20), 0, rest=minutes(10), hold=minutes(120),
                 equipment="oven"),
            Task("whip the foam", minutes(5), hold=minutes(6), cook="B"),
            Task("plate", minutes(10), 2, hold=minutes(2),
                 after=("carve the birds", "bake the bread", "whip the foam")),
        ),
        cooks=("A", "B"),
        equipment={"oven": 1},
        opens="17:00",
    )  # fmt: skip


QUESTION = PlanQuestion(
    "q1",
    kitchen=kitchen,
    worth=WORTH,
    slips=(
        PlanSlip("counted forward", ("hold",), "You began at the opening.", one_by_one,
                 tasks=("plate",), looks=begins_at_opening),
        PlanSlip("forgot the rest", ("rest",), "A rest is left off.",
                 lambda kitchen: kitchen.without_rests()),
        PlanSlip("held the foam", ("hold",), "The foam falls.",
                 lambda kitchen: {**BY_HAND, "whip the foam": "19:00"}, tasks=("whip the foam",)),
        PlanSlip("one oven", ("equipment",), "The oven is full.",
                 lambda kitchen: kitchen.with_more("oven")),
        PlanSlip("left out", ("missing",), "The sheet is not whole.",
                 lambda kitchen: {n: s for n, s in BY_HAND.items() if n != "whip the foam"}),
    ),
)  # fmt: skip
KNOWN = {"roast": minutes(60)}


def judged(plan):
    return QUESTION.judge(plan, KNOWN)


def typed(starts):
    return "\n".join(f"{name} {start}" for name, start in starts.items())
