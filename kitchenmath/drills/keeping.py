"""Drills of lesson 9 on limits: cold by when, what is thrown away, a probe, a plate's allergens."""

from kitchenmath.drills import Drill
from kitchenmath.heat import boiling_point
from kitchenmath.practice import ClockQuestion, ListedQuestion, Question, Slip, Within, steps
from kitchenmath.practice.choices import Choices
from kitchenmath.practice.clock_question import clock_time
from kitchenmath.practice.drawn_days import tubs
from kitchenmath.safety import cooling_rules, limit, menu_dishes, plate_allergens
from kitchenmath.units import Q_


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
                "That is when it must be at 21 °C. At 5 °C it must be later.",
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
    "A pot of velouté fell through 57 °C (135 °F) at {fell}. By when must it be at 5 °C (41 °F)?",
    "Six hours in all, from 57 °C. Rounded down to a quarter of an hour is right too.",
    {"fell": moments(17 * 60, 22 * 60, 10, "fell through 57 °C")},
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
            "You looked at the first stage only. What is not at 5 °C after six hours goes too.",
            worth=start,
        ),
        Slip(
            "threw away what stands on the limit",
            lambda sauce: weight_of(
                sauce, lambda two, six: two >= stages()[0][0] or six > stages()[1][0]
            ),
            "One tub was at 21 °C and at 5 °C just in time: that is in order.",
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
            "too warm after 2 h: all tubs above 21 °C = {first}",
            "too warm only after 6 h: the others above 5 °C = {then}",
            "{first} + {then} = {answer}",
        ),
        on_the_way={
            "first": lambda sauce: weight_of(sauce, _first_broken),
            "then": lambda sauce: thrown_away(sauce) - weight_of(sauce, _first_broken),
        },
    ),
    "Five tubs of velouté cooled from 57 °C (135 °F):{sauce}\nHow much goes away?",
    "Each tub has two limits to keep: 21 °C (70 °F) after 2 h, 5 °C (41 °F) after 6 h in all.",
    {"sauce": tubs("tubs of velouté, invented")},
)


def boils_C(height):
    """Where water boils at a height, in °C."""
    return boiling_point(altitude=height).magnitude


def must_show(height, shows):
    """What a probe must show at the limit of poultry, off by as much as in boiling water."""
    off_C = shows.magnitude - boils_C(height)
    return Q_(limit("poultry").temperature.magnitude + off_C, "degC")


def probe_slips(worth=(0, 0, 0)):
    """The slips of a probe's correction, with what each is worth."""
    turned, sea, none = worth
    poultry_C = limit("poultry").temperature.magnitude
    return (
        Slip(
            "took the error off",
            lambda height, shows: Q_(2 * poultry_C, "delta_degC") - (
                must_show(height, shows) - Q_(0, "degC")
            ) + Q_(0, "degC"),
            "You took the error off. A probe that shows too much must show that much more.",
            worth=turned,
        ),
        Slip(
            "held it against 100 °C",
            lambda height, shows: Q_(poultry_C + shows.magnitude - 100, "degC"),
            "You compared it with 100 °C. Up here water boils sooner.",
            worth=sea,
        ),
        Slip(
            "left the error out",
            lambda: Q_(poultry_C, "degC"),
            "That is the limit as it is printed. This probe does not show what is true.",
            worth=none,
        ),
    )  # fmt: skip


def shown_in_boiling(first, last):
    """Readings in boiling water to draw from, as a probe shows them."""
    return steps(first, last, 0.5, "degC", "the probe shows in boiling water")


PROBE = Drill(
    Question(
        "keeping, what a probe must show",
        "temperature",
        1,
        Within(Q_(0.2, "delta_degC"), "a probe shows no more", "up", Q_(1, "delta_degC")),
        must_show,
        probe_slips(),
        working=(
            "water boils: 100 °C less 1 °C for each 300 m of {height} = {boils}",
            "too much: {shows} − {boils} = {off}",
            "74 °C + {off} = {answer}",
        ),
        on_the_way={
            "boils": lambda height: boiling_point(altitude=height),
            "off": lambda height, shows: Q_(shows.magnitude - boils_C(height), "delta_degC"),
        },
    ),
    "A kitchen lies {height} above the sea. A probe shows {shows} in boiling water there, and it "
    "is off by as much at 74 °C. What must it show before a bird is at 74 °C?",
    "Where does water boil up there? About 1 °C less for each 300 m.",
    {
        "height": steps(600, 1500, 300, "m", "height above the sea"),
        "shows": shown_in_boiling(98.5, 100),
    },
)


class Dish(str):
    """A dish that says what it is made of."""

    def __str__(self):
        return f"{self[:]} (of {', '.join(menu_dishes()[self])})"

    __repr__ = __str__

    def __format__(self, spec):
        return str(self)


def menu(names, label):
    """Dishes of the invented menu to draw one from."""
    return Choices(tuple(Dish(name) for name in names), label)


MAINS = ("guinea fowl with mustard velouté", "cod with mustard mayonnaise")
SIDES = ("celeriac brunoise", "carrots in broth", "beetroot salad")
EXTRAS = ("cider foam", "honey custard", "bread roll")


def items_of(*dishes):
    """Every item of some dishes."""
    return [item for dish in dishes for item in menu_dishes()[dish]]


def plate_holds(main, side, extra):
    """What the plate holds, by the list of the EU and the UK."""
    return set(plate_allergens(items_of(main, side, extra)).holds)


def without(*hidden):
    """The same where nobody thinks of some items."""

    def slip(main, side, extra):
        seen = [item for item in items_of(main, side, extra) if item not in hidden]
        return set(plate_allergens(seen).holds)

    return slip


def by_the_list_of_nine(main, side, extra):
    """Without what the list of the US leaves out."""
    return plate_holds(main, side, extra) - {"celery", "mustard", "sulphites", "lupin", "molluscs"}


def with_the_labels(main, side, extra):
    """With what only a label can tell."""
    found = plate_allergens(items_of(main, side, extra))
    return {*found.holds, *found.read_the_label_for}


PLATE_SLIPS = (
    Slip(
        "named the main part only",
        lambda main: set(plate_allergens(items_of(main)).holds),
        "You named what the main part holds. Everything on the plate counts.",
    ),
    Slip(
        "went by the list of nine",
        by_the_list_of_nine,
        "You went by the list of the US. Celery and mustard are on that of the EU and the UK.",
    ),
    Slip(
        "left out what gives no taste",
        without("flour", "lecithin", "egg yolk", "butter"),
        "Flour, butter, egg yolk or lecithin in a sauce is not seen. It is in it all the same.",
    ),
    Slip(
        "did not know celeriac for celery",
        without("celeriac"),
        "Celeriac is celery's root, and is on the list as celery.",
    ),
    Slip(
        "added what only a label tells",
        with_the_labels,
        "You named what such an item often holds too. Ask its label: then it is in or out.",
    ),
)
PLATE = Drill(
    ListedQuestion(
        "keeping, allergens of a plate",
        "allergens",
        3,
        plate_holds,
        left_out=1,
        too_many=0.5,
        slips=PLATE_SLIPS,
        working=("{main}, {side}, {extra}: item by item", "{answer}"),
    ),
    "A plate: {main}; {side}; {extra}. What does it hold, by the list of fourteen of the EU and "
    "the UK? Name only what is sure without a label.",
    "Item by item. Celeriac is celery; flour is gluten; lecithin is mostly soya.",
    {
        "main": menu(MAINS, "main part"),
        "side": menu(SIDES, "beside it"),
        "extra": menu(EXTRAS, "with it"),
    },
)

DRILLS = {
    "cold by when": COLD_BY,
    "tubs to throw away": TUBS,
    "what a probe must show": PROBE,
    "allergens of a plate": PLATE,
}
