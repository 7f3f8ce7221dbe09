"""Drills of lesson 9 on records: which lines are out, since when, and what can be put right."""

from kitchenmath.drills import Drill
from kitchenmath.practice import ClockQuestion, ListedQuestion, Slip
from kitchenmath.practice.drawn_days import COLD, HOT, cases, days
from kitchenmath.practice.drawn_logs import nights
from kitchenmath.units import Q_

HOT_LINES, COLD_LINES = frozenset(HOT), frozenset(COLD)
ALL_LINES = tuple(sorted(HOT + COLD))
CASES = tuple("ABCDEFGH")


def out_of_limits(day):
    """The letters of the lines on the wrong side of their quoted limit."""
    return {each.letter for each in day.lines if not each.keeps}


def on_the_limit(day):
    """The letters of the lines whose reading is the limit itself."""
    return {each.letter for each in day.lines if each.on_its_limit}


def scale_missed(day):
    """What is out where the one number in the other scale is taken for one in the page's."""
    misread = {
        each.letter
        for each in day.lines
        if not each.limit.reached_by(Q_(each.reading.magnitude, day.scale))
    }
    return out_of_limits(day) | misread


def one_hot_limit(day):
    """What is out where all hot food is held against the highest limit among them."""
    hot = [each for each in day.lines if each.letter in HOT_LINES]
    highest = max((each.limit for each in hot), key=lambda row: row.temperature.magnitude)
    below = {each.letter for each in hot if not highest.reached_by(each.reading)}
    return out_of_limits(day) | below


RECORD_SLIPS = (
    Slip(
        "counted a reading on the limit",
        lambda day: out_of_limits(day) | on_the_limit(day),
        "You named a line that stands just on its limit. At most 5 °C (41 °F) takes that number "
        "in.",
    ),
    Slip(
        "took °F for °C",
        scale_missed,
        "One reading is in the other scale: 38 °F are 3.3 °C, and 78 °C are 172 °F. Look at the "
        "scale before you look at the number.",
    ),
    Slip(
        "held all hot food against one limit",
        one_hot_limit,
        "You asked 74 °C (165 °F) of everything hot. Each line has its own limit beside it; pork "
        "and what is held hot have lower ones.",
    ),
    Slip(
        "looked at the cold food only",
        lambda day: out_of_limits(day) & COLD_LINES,
        "You stopped after the fridge. Hot food has a limit too, from below.",
    ),
    Slip(
        "looked at the hot food only",
        lambda day: out_of_limits(day) & HOT_LINES,
        "You looked at the hot food. Half of the record is cold.",
    ),
    Slip(
        "named those in order",
        lambda day: set(ALL_LINES) - out_of_limits(day),
        "These are the lines that are in order. Name the others.",
    ),
)
RECORD = Drill(
    ListedQuestion(
        "keeping, lines of a record",
        "letters",
        3,
        out_of_limits,
        left_out=1,
        too_many=0.5,
        slips=RECORD_SLIPS,
        working=("cold food: what is above its limit; hot food: what is below", "{answer}"),
    ),
    "A day's record has three faults:{day}\n{{ record_sources }}\nWhich lines are out of "
    "limits? Type their letters.",
    "Line by line: cold is at most, hot is at least. The limit itself is in order.",
    {"day": days("a day's record, invented")},
)


def last_in_order(night):
    """The place of the last reading that keeps the limit for cold holding."""
    return max(place for place, reading in enumerate(night.degrees) if reading <= night.limit)


def since_when(night):
    """Minutes from midnight of the last reading in order: after it nobody can vouch."""
    return night.minutes[last_in_order(night)]


def shared_step(night):
    """Where a straight line between two readings passes the limit."""
    place = last_in_order(night)
    before, after = night.degrees[place : place + 2]
    share = (night.limit - before) / (after - before)
    first, second = night.minutes[place : place + 2]
    return first + share * (second - first) if share else None


def limit_taken_for_out(night):
    """The reading before, where the last one in order stands on the limit."""
    place = last_in_order(night)
    return night.minutes[place - 1] if night.degrees[place] == night.limit else None


def since_slips(worth=(0, 0, 0, 0)):
    """The slips of since when, with what each is worth."""
    first, shared, edge, found = worth
    return (
        Slip(
            "took the first reading that is out",
            lambda night: night.minutes[last_in_order(night) + 1],
            "This is the first reading that is out. It went over before that, and nobody saw when.",
            worth=first,
        ),
        Slip(
            "shared the step out",
            shared_step,
            "You took a straight line between two readings. Nobody read it: count from the last "
            "reading that was in order.",
            worth=shared,
        ),
        Slip(
            "took the limit itself for out",
            limit_taken_for_out,
            "The reading after this one stands just on the limit, and that is in order.",
            worth=edge,
        ),
        Slip(
            "took the time when it was found",
            lambda night: night.minutes[-1],
            "That is when somebody looked. The food was too warm before.",
            worth=found,
        ),
    )


SINCE = Drill(
    ClockQuestion(
        "keeping, since when",
        1,
        since_when,
        since_slips(),
        working=(
            "the last reading at 5 °C (41 °F) or below is that of {answer}: count from there",
        ),
    ),
    "A cold room at night:{night}\n{{ by: cold holding }}, its limit is at most "
    "{{ house: cold holding }}. Since when can nobody vouch for the food?",
    "After the last reading that is in order nobody knows.",
    {"night": nights("a cold room's night, invented")},
)


def can_be_put_right(found):
    """The letters of the cases where no limit of time is broken and nothing raw came on."""
    return {each.letter for each in found.lines if each.state == "right"}


def _with(found, why):
    return {each.letter for each in found.lines if each.why == why}


CASE_SLIPS = (
    Slip(
        "heated what had stood too long",
        lambda found: can_be_put_right(found) | _with(found, "stood"),
        "You would heat or chill what stood too long. Some germs leave poisons that no heat takes "
        "away: time that is gone cannot be cooked back.",
    ),
    Slip(
        "threw away what only needs more heat",
        lambda found: can_be_put_right(found) - _with(found, "core"),
        "You threw away what is on its way to its limit. It goes back on the heat.",
    ),
    Slip(
        "took the delivery in",
        lambda found: can_be_put_right(found) | _with(found, "delivery"),
        "You would chill the delivery. Nobody knows how long it was warm: it goes back.",
    ),
    Slip(
        "washed what raw food has touched",
        lambda found: can_be_put_right(found) | _with(found, "touched"),
        "You would keep what raw poultry has dripped on. Washing spreads it.",
    ),
    Slip(
        "named what goes",
        lambda found: set(CASES) - can_be_put_right(found),
        "These are the ones that go. Name those that can still be put right.",
    ),
)
PUT_RIGHT = Drill(
    ListedQuestion(
        "keeping, what can be put right",
        "letters",
        3,
        can_be_put_right,
        left_out=0.5,
        too_many=1,
        among=CASES,
        slips=CASE_SLIPS,
        working=("a core too low, or a time not yet over, can be put right", "{answer}"),
    ),
    "Found on the round:{found}\nReheating and the first stage of cooling may take 2 h. "
    "{{ record_sources }} Which can still be put right, so that it may be served? Type their "
    "letters.",
    "Is a limit of time broken? Then it goes. Is only the heat still missing? Then heat it on.",
    {"found": cases("what was found, invented")},
)

DRILLS = {
    "lines of a record": RECORD,
    "since when": SINCE,
    "what can be put right": PUT_RIGHT,
}
