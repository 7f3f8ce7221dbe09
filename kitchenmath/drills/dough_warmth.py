"""Drills of lesson 2: the water for a dough of the wanted temperature, and the mixer's friction."""

from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.ratios import friction_factor, water_temperature
from kitchenmath.units import Q_

BY_PROBE = Within(Q_(1, "delta_degC"), "probe and tap are good to 1 °C")


def _c(temperature):
    return temperature.to("degC").magnitude


def _difference_c(difference):
    return difference.to("delta_degC").magnitude


def _point_c(difference):
    """What comes out when a difference is put through the rule for temperatures."""
    return _c(Q_(difference.to("delta_degF").magnitude, "degF"))


DOUGH_WATER = Drill(
    Question(
        "dough water",
        "temperature",
        1,
        BY_PROBE,
        lambda target, flour, room, friction: water_temperature(target, flour, room, friction),
        (
            Slip(
                "friction left out",
                lambda target, flour, room: Q_(3 * _c(target) - _c(flour) - _c(room), "degC"),
                "You left the mixer's friction out. It warms the dough, so the water must be "
                "colder.",
            ),
            Slip(
                "friction added",
                lambda target, flour, room, friction: Q_(
                    3 * _c(target) - _c(flour) - _c(room) + _difference_c(friction), "degC"
                ),
                "You added the friction. The mixer warms the dough: it comes off.",
            ),
            Slip(
                "target once",
                lambda target, flour, room, friction: Q_(
                    _c(target) - _c(flour) - _c(room) - _difference_c(friction), "degC"
                ),
                "You did not multiply the target. Three things make the temperature: flour, room "
                "and water. So it counts three times.",
            ),
            Slip(
                "target twice",
                lambda target, flour, room, friction: Q_(
                    2 * _c(target) - _c(flour) - _c(room) - _difference_c(friction), "degC"
                ),
                "You counted the target twice. Flour, room and water are three.",
            ),
        ),
        working=(
            "the sum that is wanted: 3 × {target} = {in_all}",
            "{in_all} − {flour} − {room} − {friction} = {answer}",
        ),
        on_the_way={
            "in_all": lambda target: Q_(3 * _c(target), "degC"),
        },
    ),
    "The dough is to be {target}. Flour {flour}, room {room}. The mixer adds {friction} to the "
    "sum. How warm must the water be?",
    "Three temperatures make the dough. What must their sum be, friction included?",
    {
        "target": steps(24, 27, 0.5, "degC", "dough wanted"),
        "flour": steps(18, 22, 1, "degC", "flour"),
        "room": steps(19, 24, 1, "degC", "room"),
        "friction": steps(6, 12, 1, "delta_degC", "friction"),
    },
)

MIXER_FRICTION = Drill(
    Question(
        "mixer friction",
        "temperature difference",
        1,
        BY_PROBE,
        lambda dough, water, flour, room: friction_factor(dough, water, flour, room),
        (
            Slip(
                "dough less the mean",
                lambda dough, water, flour, room: Q_(
                    _c(dough) - (_c(water) + _c(flour) + _c(room)) / 3, "delta_degC"
                ),
                "That is how much warmer the dough got. The sum has three temperatures, so the "
                "friction in it is three times that.",
            ),
            Slip(
                "dough not multiplied",
                lambda dough, water, flour, room: Q_(
                    _c(dough) - _c(water) - _c(flour) - _c(room), "delta_degC"
                ),
                "You did not multiply the dough's temperature by three.",
            ),
            Slip(
                "dough four times",
                lambda dough, water, flour, room: Q_(
                    4 * _c(dough) - _c(water) - _c(flour) - _c(room), "delta_degC"
                ),
                "You counted four. Without a preferment there are three: water, flour, room.",
            ),
            Slip(
                "room left out",
                lambda dough, water, flour: Q_(3 * _c(dough) - _c(water) - _c(flour), "delta_degC"),
                "The room is one of the three. Take it off too.",
            ),
        ),
        working=(
            "the sum that came out: 3 × {dough} = {in_all}",
            "{in_all} − {water} − {flour} − {room} = {answer}",
        ),
        on_the_way={
            "in_all": lambda dough: Q_(3 * _c(dough), "degC"),
        },
    ),
    "You knead a dough with water of {water}, flour of {flour}, in a room of {room}. It comes out "
    "at {dough}. What does the mixer add to the sum?",
    "It is the sum of the water temperature, asked backwards.",
    {
        "dough": steps(25.5, 27.5, 0.5, "degC", "dough after kneading"),
        "water": steps(22, 25, 1, "degC", "water"),
        "flour": steps(19, 22, 1, "degC", "flour"),
        "room": steps(20, 23, 1, "degC", "room"),
    },
)

FRICTION_FROM_A_CARD = Drill(
    Question(
        "friction from a card",
        "temperature",
        1,
        BY_PROBE,
        lambda target, bakehouse, friction: water_temperature(
            target, bakehouse, bakehouse, friction
        ),
        (
            Slip(
                "friction as a point",
                lambda target, bakehouse, friction: Q_(
                    3 * _c(target) - 2 * _c(bakehouse) - _point_c(friction), "degC"
                ),
                "You took 32 off. That is for temperatures. Friction is a difference, so divide "
                "by 1.8 and no more.",
            ),
            Slip(
                "°F as °C",
                lambda target, bakehouse, friction: Q_(
                    3 * _c(target) - 2 * _c(bakehouse) - 1.8 * _difference_c(friction), "degC"
                ),
                "The friction is in °F. A step of 1 °C is a step of 1.8 °F: divide it by 1.8.",
            ),
            Slip(
                "friction left out",
                lambda target, bakehouse: Q_(3 * _c(target) - 2 * _c(bakehouse), "degC"),
                "You left the friction out. The dough would come out too warm.",
            ),
            Slip(
                "target once",
                lambda target, bakehouse, friction: Q_(
                    _c(target) - 2 * _c(bakehouse) - _difference_c(friction), "degC"
                ),
                "You did not multiply the target by three.",
            ),
        ),
        working=(
            "the friction in °C: {friction} ÷ 1.8, and nothing taken off = {celsius}",
            "the sum that is wanted: 3 × {target} = {in_all}",
            "{in_all} − 2 × {bakehouse} − {celsius} = {answer}",
        ),
        on_the_way={
            "celsius": lambda friction: friction.to("delta_degC"),
            "in_all": lambda target: Q_(3 * _c(target), "degC"),
        },
    ),
    "The card on the mixer says: friction {friction}. Flour and room are both {bakehouse}. The "
    "dough is to be {target}. How warm must the water be?",
    "Bring the friction to °C first. Is it a temperature, or a difference?",
    {
        "target": steps(24, 27, 0.5, "degC", "dough wanted"),
        "bakehouse": steps(18, 22, 1, "degC", "flour and room"),
        "friction": steps(10, 26, 2, "delta_degF", "friction"),
    },
)

DRILLS = {drill.question.id: drill for drill in (DOUGH_WATER, MIXER_FRICTION, FRICTION_FROM_A_CARD)}
