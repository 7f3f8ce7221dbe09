"""Drill of lesson 9 on what a plate holds: the allergen row of a menu."""

from kitchenmath.drills import Drill
from kitchenmath.practice import ListedQuestion, Slip
from kitchenmath.practice.choices import Choices, Drawn
from kitchenmath.safety import menu_dishes, plate_allergens


class Dish(str, Drawn):
    """A dish that says what it is made of; `list_of` is the country whose list a class goes by."""

    list_of = "EU and UK"

    def in_college(self, college):
        """The same dish by a class's list of allergens."""
        dish = Dish(self[:])
        dish.list_of = "US" if college.allergens == "US allergens" else "EU and UK"
        return dish

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
    """What the plate holds, by the class's list."""
    return set(plate_allergens(items_of(main, side, extra), main.list_of).holds)


def held_by_each(main, side, extra):
    """Each item of the plate that surely holds something, with what it holds."""
    items = items_of(main, side, extra)
    held = {item: plate_allergens([item], main.list_of).holds for item in items}
    return "; ".join(f"{item}: {', '.join(names)}" for item, names in held.items() if names)


def without(*hidden):
    """The same where nobody thinks of some items."""

    def slip(main, side, extra):
        seen = [item for item in items_of(main, side, extra) if item not in hidden]
        return set(plate_allergens(seen, main.list_of).holds)

    return slip


def by_the_list_of_nine(main, side, extra):
    """Without what the list of the US leaves out."""
    return plate_holds(main, side, extra) - {"celery", "mustard", "sulphites", "lupin", "molluscs"}


def with_the_labels(main, side, extra):
    """With what only a label can tell."""
    found = plate_allergens(items_of(main, side, extra), main.list_of)
    return {*found.holds, *found.read_the_label_for}


PLATE_SLIPS = (
    Slip(
        "named the main part only",
        lambda main: set(plate_allergens(items_of(main), main.list_of).holds),
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
        working=("item by item: {held}", "{answer}"),
        on_the_way={"held": held_by_each},
    ),
    "A plate: {main}; {side}; {extra}. What does it hold, by the "
    "{{ by_its_list: list of fourteen of the EU and the UK | list of nine of the US }}? "
    "Name only what is sure without a label.",
    "Item by item. {{ by_its_list: Celeriac is celery; flour is gluten | Flour is wheat }}; "
    "lecithin is mostly {{ by_its_list: soya | soy }}.",
    {
        "main": menu(MAINS, "main part"),
        "side": menu(SIDES, "beside it"),
        "extra": menu(EXTRAS, "with it"),
    },
)

DRILLS = {"allergens of a plate": PLATE}
