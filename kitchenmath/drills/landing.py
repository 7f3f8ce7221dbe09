"""Drills of lesson 10: working back from the service, slack, hands, holding, and the order."""

from kitchenmath.drills import Drill, menu_order
from kitchenmath.practice import Question, Slip, Within
from kitchenmath.practice.choices import steps
from kitchenmath.units.registry import Q_

WHOLE = Within(Q_(0.05, "count"), "hands are whole")
TO_THE_MINUTE = Within(Q_(0.5, "min"), "the sheet is written in minutes")
ROLLS = Q_(20, "min")  # how long two cooks shape the rolls

LATEST_START = Drill(
    Question(
        "latest start",
        "time",
        1,
        TO_THE_MINUTE,
        lambda roast, rest, carve, plate: roast + rest + carve + plate,
        (
            Slip(
                "rest forgotten",
                lambda roast, carve, plate: roast + carve + plate,
                "The bird rests before it is carved. Nobody works then, but the clock runs.",
            ),
            Slip(
                "plating forgotten",
                lambda roast, rest, carve: roast + rest + carve,
                "The bird would be carved at the serving time. Plating comes before it.",
            ),
            Slip(
                "longest task only",
                lambda roast: roast,
                "That is the oven alone. Tasks in a chain are added.",
            ),
        ),
        working=(
            "carving begins, before the service: {plate} + {carve} = {carving}",
            "the birds come out: {carving} + {rest} = {out}",
            "{out} + {roast} = {answer}",
        ),
        on_the_way={
            "carving": lambda carve, plate: plate + carve,
            "out": lambda rest, carve, plate: plate + carve + rest,
        },
    ),
    "The birds roast for {roast} and rest for {rest}. Carving takes {carve}, then plating takes "
    "{plate}. How long before the service do they go into the oven, at the latest?",
    "Stand at the serving time and walk backward, one task at a time.",
    {
        "roast": steps(50, 80, 5, "min", "in the oven"),
        "rest": steps(10, 20, 5, "min", "rest"),
        "carve": steps(8, 16, 2, "min", "carving"),
        "plate": steps(6, 12, 2, "min", "plating"),
    },
)

SLACK = Drill(
    Question(
        "slack of a task",
        "time",
        1,
        TO_THE_MINUTE,
        lambda free, work, needed: free - needed - work,
        (
            Slip(
                "work forgotten",
                lambda free, needed: free - needed,
                "Part of that time is the work itself. Slack is what is left after it.",
            ),
            Slip(
                "until the service",
                lambda free, work: free - work,
                "You counted to the service. It is needed earlier, when plating starts.",
            ),
            Slip(
                "the latest start",
                lambda needed, work: needed + work,
                "That is the latest start. Slack is the room before it.",
            ),
        ),
        working=(
            "its latest start, before the service: {needed} + {work} = {latest}",
            "{free} − {latest} = {answer}",
        ),
        on_the_way={"latest": lambda needed, work: needed + work},
    ),
    "The sauce cook is free from {free} before the service. The velouté takes {work} and is needed "
    "{needed} before the service. How much slack has it?",
    "When could it start at the earliest, and when must it start at the latest?",
    {
        "free": steps(110, 150, 10, "min", "free"),
        "work": steps(25, 37, 3, "min", "work"),
        "needed": steps(8, 14, 2, "min", "needed"),
    },
)


def _on(rolls, moment):
    """Whether the rolls are being shaped at that moment."""
    return rolls - ROLLS < moment <= rolls


HANDS = Drill(
    Question(
        "hands at a minute",
        "count",
        1,
        WHOLE,
        lambda rolls, moment: 3 if _on(rolls, moment) else 1,
        (
            Slip(
                "tasks counted",
                lambda rolls, moment: 2 if _on(rolls, moment) else None,
                "Those are tasks. The rolls take two hands, so they count twice.",
            ),
            Slip(
                "oven counted",
                lambda rolls, moment: 4 if _on(rolls, moment) else 2,
                "The oven works by itself. A roast in it takes no hands.",
            ),
            Slip(
                "whole list counted",
                lambda rolls, moment: None if _on(rolls, moment) else 3,
                "Nobody shapes rolls at that minute. Count what runs now.",
            ),
        ),
        working=(
            "the rolls end, before the service: {rolls} − 20 min = {end}",
            "hands on the rolls: 2 if they run at {moment}, else 0 = {shaping}",
            "1 for the velouté + {shaping} = {answer}",
        ),
        on_the_way={
            "end": lambda rolls: rolls - ROLLS,
            "shaping": lambda rolls, moment: Q_(2 if _on(rolls, moment) else 0, "count"),
        },
    ),
    "Shaping the rolls takes 2 hands, from {rolls} before the service, for 20 min. The velouté "
    "takes 1 hand, from 60 to 25 min before it. The roast stands in the oven from 100 to 30 min "
    "before it. How many hands are busy {moment} before the service?",
    "When do the rolls end? And who holds the oven door?",
    {
        "rolls": steps(45, 75, 5, "min", "rolls begin"),
        "moment": steps(33, 58, 5, "min", "moment"),
    },
)

HOLD_BROKEN = Drill(
    Question(
        "hold limit broken",
        "time",
        1,
        TO_THE_MINUTE,
        lambda done, plating, hold: done - plating - hold,
        (
            Slip(
                "plating forgotten",
                lambda done, hold: done - hold,
                "You let it wait until the service. Plating starts earlier, and uses it then.",
            ),
            Slip(
                "whole wait",
                lambda done, plating: done - plating,
                "That is the whole wait. Some of it is allowed: take the limit off.",
            ),
            Slip(
                "plating added",
                lambda done, plating, hold: done + plating - hold,
                "Plating starts before the service, so its time comes off the wait.",
            ),
        ),
        working=(
            "how long it waits: {done} − {plating} = {waits}",
            "{waits} − {hold} = {answer}",
        ),
        on_the_way={
            "waits": lambda done, plating: done - plating,
        },
    ),
    "The cider foam is ready {done} before the service. Plating starts {plating} before it, and "
    "the foam goes on then. It stands {hold}. By how much is its limit broken?",
    "First how long it waits. Then how much of that is too long.",
    {
        "done": steps(20, 30, 1, "min", "ready"),
        "plating": steps(8, 12, 1, "min", "plating"),
        "hold": steps(3, 6, 1, "min", "limit"),
    },
)


CLEAN_DOWN = Drill(
    Question(
        "last start before clean-down",
        "time",
        1,
        TO_THE_MINUTE,
        lambda lesson, clean, taste, work: lesson - clean - taste - work,
        (
            Slip(
                "clean-down left out",
                lambda lesson, taste, work: lesson - taste - work,
                "The dish is tasted when the time is over, and the benches are still dirty. "
                "Clean-down is a task with minutes of its own.",
            ),
            Slip(
                "tasting left out",
                lambda lesson, clean, work: lesson - clean - work,
                "Nobody has tasted it. That takes its minutes before the cleaning.",
            ),
            Slip(
                "both left out",
                lambda lesson, work: lesson - work,
                "The dish would be ready as the bell rings. Tasting and cleaning come after it.",
            ),
            Slip(
                "from the end",
                lambda clean, taste, work: clean + taste + work,
                "That is how long before the end it begins. Count it from the first bell.",
            ),
        ),
        working=(
            "clean-down begins at: {lesson} − {clean} = {cleaning}",
            "the dish is ready at: {cleaning} − {taste} = {ready}",
            "{ready} − {work} = {answer}",
        ),
        on_the_way={
            "cleaning": lambda lesson, clean: lesson - clean,
            "ready": lambda lesson, clean, taste: lesson - clean - taste,
        },
    ),
    "A practical lasts {lesson}. The dish takes {work}, tasting {taste}, and clean-down {clean}. "
    "How long after the first bell may the last bench begin?",
    "Walk back from the end: what is the very last task?",
    {
        "lesson": steps(165, 195, 15, "min", "the whole practical"),
        "work": steps(41, 61, 5, "min", "the dish"),
        "taste": steps(10, 15, 5, "min", "tasting"),
        "clean": steps(20, 35, 5, "min", "clean-down"),
    },
)

DRILLS = {
    drill.question.id: drill for drill in (LATEST_START, SLACK, HANDS, HOLD_BROKEN, CLEAN_DOWN)
} | menu_order.DRILLS
