"""Drills of lesson 9 on limits: cold by when, what is thrown away, what a probe must show."""

from kitchenmath.conventions.class_limits import class_limit
from kitchenmath.drills import Drill, allergen_rows
from kitchenmath.heat import boiling_point
from kitchenmath.practice import ClockQuestion, Question, Slip, Within, steps
from kitchenmath.practice.choices import Choices, Drawn
from kitchenmath.practice.clock_question import clock_time
from kitchenmath.practice.drawn_logs import tubs
from kitchenmath.safety import cooling_rules
from kitchenmath.units import Q_, say


def stages():
    """The two stages as the code prints them: how warm at most, after how many hours."""
    return tuple((float(row["to_C"]), float(row["hours"])) for row in cooling_rules("two-stage"))


class Moment(float):
    """Minutes from midnight that say themselves as a clock does."""

    def __repr__(self):
        return str(clock_time(self))

    __str__ = __repr__


def moments(first, last, step, label):
    """Moments to draw one from, in minutes from midnight."""
    return Choices(tuple(Moment(each) for each in range(first, last + 1, step)), label)


def cold_by(fell):
    """The last moment at which the pot must be through both stages."""
    return fell + 60 * stages()[1][1]


COLD_BY = Drill(
    ClockQuestion(
        "keeping, cold by when",
        1,
        cold_by,
        (
            Slip(
                "added six hours to the first two",
                lambda fell: cold_by(fell) + 60 * stages()[0][1],
                "You counted the six hours after the first two. They are six in all.",
            ),
            Slip(
                "stopped after the first stage",
                lambda fell: fell + 60 * stages()[0][1],
                "That is when it must be at 21 °C (70 °F). At 5 °C (41 °F) it must be later.",
            ),
            Slip(
                "took four hours",
                lambda fell: fell + 60 * (stages()[1][1] - stages()[0][1]),
                "Four hours are what is left after the first two. Count all from the start.",
            ),
        ),
        earlier_min=15,
        working=("{fell} + 6 h in all = {answer}",),
    ),
    "A pot of velouté fell through 57 °C (135 °F) at {fell}. {{ by: cooling }}, by when must it be "
    "at 5 °C (41 °F)?",
    "Six hours in all, from 57 °C (135 °F). Rounded down to a quarter of an hour is right too.",
    {"fell": moments(17 * 60, 22 * 60, 10, "fell through 57 °C (135 °F)")},
)


def weight_of(sauce, goes):
    """The weight of the tubs for which `goes` is true, of the degrees after two and six hours."""
    return sum(
        (each.weight for each in sauce.lines
         if goes(each.after_two.magnitude, each.after_six.magnitude)),
        start=Q_(0, "kg"),
    )  # fmt: skip


def _first_broken(two, six):
    return two > stages()[0][0]


def _second_broken(two, six):
    return six > stages()[1][0]


def thrown_away(sauce):
    """The weight of the tubs that broke a stage."""
    return weight_of(sauce, lambda *each: _first_broken(*each) or _second_broken(*each))


def thrown_away_in_steps():
    """The weights of the tubs that broke each stage, for the lines of working."""

    def late(two, six):
        return _second_broken(two, six) and not _first_broken(two, six)

    def added(sauce, goes):
        weights = [say(each.weight) for each in sauce.lines
                   if goes(each.after_two.magnitude, each.after_six.magnitude)]  # fmt: skip
        return " + ".join(weights) or "none"

    return {
        "warm": lambda sauce: added(sauce, _first_broken),
        "late": lambda sauce: added(sauce, late),
        "first": lambda sauce: weight_of(sauce, _first_broken),
        "then": lambda sauce: weight_of(sauce, late),
    }


def tub_slips(worth=(0, 0, 0, 0, 0)):
    """The slips of what goes away, with what each is worth."""
    end, start, edge, kept, everything = worth
    return (
        Slip(
            "looked at the end only",
            lambda sauce: weight_of(sauce, _second_broken),
            "You looked at the last reading only. A tub that was too warm after two hours goes "
            "too, however cold it is now.",
            worth=end,
        ),
        Slip(
            "looked at the first two hours only",
            lambda sauce: weight_of(sauce, _first_broken),
            "You looked at the first stage only. What is not at 5 °C (41 °F) after six hours "
            "goes too.",
            worth=start,
        ),
        Slip(
            "threw away what stands on the limit",
            lambda sauce: weight_of(
                sauce, lambda two, six: two >= stages()[0][0] or six > stages()[1][0]
            ),
            "One tub was at 21 °C (70 °F) and at 5 °C (41 °F) just in time: that is in order.",
            worth=edge,
        ),
        Slip(
            "gave what is kept",
            lambda sauce: weight_of(sauce, lambda *_: True) - thrown_away(sauce),
            "That is what may be kept.",
            worth=kept,
        ),
        Slip(
            "threw everything away",
            lambda sauce: weight_of(sauce, lambda *_: True),
            "Nobody is hurt by that; but some of it was in order.",
            worth=everything,
        ),
    )


TUBS = Drill(
    Question(
        "keeping, tubs to throw away",
        "weight",
        1,
        Within(Q_(50, "g"), "the store's scale shows it"),
        thrown_away,
        tub_slips(),
        working=(
            "above 21 °C (70 °F) after 2 h: {warm} = {first}",
            "above 5 °C (41 °F) only after 6 h: {late} = {then}",
            "{first} + {then} = {answer}",
        ),
        on_the_way=thrown_away_in_steps(),
    ),
    "Five tubs of velouté cooled from 57 °C (135 °F):{sauce}\n{{ by: cooling }}, how much goes "
    "away?",
    "Each tub has two limits to keep: 21 °C (70 °F) after 2 h, 5 °C (41 °F) after 6 h in all.",
    {"sauce": tubs("tubs of velouté, invented")},
)


def boils_C(height):
    """Where water boils at a height, in °C."""
    return boiling_point(altitude=height).magnitude


class CoreLimit(Drawn):
    """The limit for a bird's core that a class works with."""

    def in_college(self, college):
        """That of a class's own food code, or the house's, as a temperature."""
        return class_limit("poultry", college).printed


def bird_core(label):
    """The limit for a bird's core, as each class has it."""
    return Choices((CoreLimit(),), label)


def off(height, shows):
    """By how much a probe shows too much in boiling water."""
    return shows - Q_(boils_C(height), "degC")


def must_show(height, shows, core):
    """What a probe must show at the limit of poultry, off by as much as in boiling water."""
    return core + off(height, shows)


def probe_slips(worth=(0, 0, 0)):
    """The slips of a probe's correction, with what each is worth."""
    turned, sea, none = worth
    return (
        Slip(
            "took the error off",
            lambda height, shows, core: core - off(height, shows),
            "You took the error off. A probe that shows too much must show that much more.",
            worth=turned,
        ),
        Slip(
            "held it against 100 °C",
            lambda shows, core: core + (shows - Q_(100, "degC")),
            "You compared it with 100 °C (212 °F). Up here water boils sooner.",
            worth=sea,
        ),
        Slip(
            "left the error out",
            lambda core: core,
            "That is the limit as it is printed. This probe does not show what is true.",
            worth=none,
        ),
    )


def shown_in_boiling(first, last):
    """Readings in boiling water to draw from, as a probe shows them."""
    fahrenheit = (209, 212, 1, "degF")
    return steps(first, last, 0.5, "degC", "the probe shows in boiling water", us=fahrenheit)


def height_above_the_sea():
    """Heights of mountain kitchens to draw from."""
    feet = (2000, 5000, 1000, "ft")
    return steps(600, 1500, 300, "m", "height above the sea", us=feet)


def _boils(height, shows):
    """Where water boils there, in the probe's scale."""
    point = Q_(boils_C(height), "degC").to(shows.units)
    return Q_(round(point.magnitude, 1), point.units)


PROBE_STEPS = {
    "boils": _boils,
    "off": lambda height, shows: shows - _boils(height, shows),
}
PROBE = Drill(
    Question(
        "keeping, what a probe must show",
        "temperature",
        1,
        Within(Q_(0.2, "delta_degC"), "a probe shows no more", "up", Q_(1, "delta_degC")),
        must_show,
        probe_slips(),
        working=(
            "water boils: 100 °C (212 °F) less 1 °C (1.8 °F) for each 300 m (984 ft) of {height} = "
            "{boils}",
            "too much: {shows} − {boils} = {off}",
            "{core} + {off} = {answer}",
        ),
        on_the_way=PROBE_STEPS,
    ),
    "A kitchen lies {height} above the sea. A probe shows {shows} in boiling water there, and it "
    "is off by as much at {core}. {{ by: poultry }}, that is a bird's limit. What must it show "
    "before a bird is truly there?",
    "Where does water boil up there? About 1 °C (1.8 °F) less for each 300 m (1000 ft).",
    {
        "height": height_above_the_sea(),
        "shows": shown_in_boiling(98.5, 100),
        "core": bird_core("limit for its core"),
    },
)


DRILLS = {
    "cold by when": COLD_BY,
    "tubs to throw away": TUBS,
    "what a probe must show": PROBE,
} | allergen_rows.DRILLS
