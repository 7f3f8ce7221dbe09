"""Drills of lesson 4: what to buy, what is left, whole packs, and the price."""

import math

from kitchenmath.drills import Drill, card_price, labels
from kitchenmath.practice import Question, Slip, Within
from kitchenmath.practice.choices import steps
from kitchenmath.units.registry import Q_


def _part(percent):
    return percent.to("").magnitude


AS_PURCHASED = Drill(
    Question(
        "as purchased",
        "weight",
        1,
        Within(Q_(20, "g"), "the scale shows 20 g"),
        lambda edible, yield_: edible / yield_,
        (
            Slip(
                "multiplied",
                lambda edible, yield_: edible * yield_,
                "That is less than you need to serve. Trim comes off what you buy, so you must "
                "buy more: divide by the yield.",
            ),
            Slip(
                "loss on top",
                lambda edible, yield_: edible * (2 - _part(yield_)),
                "Close, and too little. You took the loss as a share of what you serve; it is a "
                "share of what you buy.",
            ),
            Slip(
                "by the loss",
                lambda edible, yield_: edible / (1 - _part(yield_)),
                "You divided by what goes into the bin. Divide by what is left.",
            ),
            Slip("same again", lambda edible: edible, "Nothing was added for the trim."),
        ),
        working=("{edible} ÷ {yield_} = {answer}",),
    ),
    "You need {edible} of trimmed carrots. Carrots yield {yield_}. What weight do you buy?",
    "Ask yourself first: must it be more or less than what you serve?",
    {
        "edible": steps(1.5, 6, 0.25, "kg", "needed"),
        "yield_": steps(70, 84, 2, "percent", "yield"),
    },
)

EDIBLE_PORTION = Drill(
    Question(
        "edible portion",
        "weight",
        1,
        Within(Q_(20, "g"), "the scale shows 20 g"),
        lambda bought, yield_: bought * yield_,
        (
            Slip(
                "divided",
                lambda bought, yield_: bought / yield_,
                "That is more than you bought. Trimming takes away: multiply by the yield.",
            ),
            Slip(
                "the trim",
                lambda bought, yield_: bought * (1 - _part(yield_)),
                "That is the trim. What is left is the rest of it.",
            ),
            Slip("same again", lambda bought: bought, "Nothing was taken off."),
        ),
        working=("{bought} × {yield_} = {answer}",),
    ),
    "{bought} of leeks came in. Leeks yield {yield_}. What weight can you serve?",
    "The yield is the share that is left.",
    {
        "bought": steps(2, 8, 0.5, "kg", "bought"),
        "yield_": steps(38, 46, 2, "percent", "yield"),
    },
)

RAW_FOR_COOKED = Drill(
    Question(
        "raw for cooked",
        "weight",
        1,
        Within(Q_(4, "g"), "the portion scale shows 5 g"),
        lambda cooked, loss: cooked / (1 - _part(loss)),
        (
            Slip(
                "loss on top",
                lambda cooked, loss: cooked * (1 + _part(loss)),
                "You added the loss to the cooked weight. It is a share of the raw weight: "
                "divide by what is left.",
            ),
            Slip(
                "loss off",
                lambda cooked, loss: cooked * (1 - _part(loss)),
                "Raw must be heavier than cooked. The loss has gone already: divide.",
            ),
            Slip(
                "by the loss",
                lambda cooked, loss: cooked / _part(loss),
                "You divided by the loss. Divide by 100 % less the loss.",
            ),
        ),
        working=(
            "what is left: 100 % − {loss} = {left}",
            "{cooked} ÷ {left} = {answer}",
        ),
        on_the_way={"left": lambda loss: Q_(100, "percent") - loss},
    ),
    "A plate needs {cooked} of roast guinea fowl. It loses {loss} in the oven. "
    "What must the portion weigh raw?",
    "How much of the raw weight is left when it is done?",
    {
        "cooked": steps(100, 160, 10, "g", "cooked"),
        "loss": steps(24, 35, 1, "percent", "loss"),
    },
)

WHOLE_PACKS = Drill(
    Question(
        "whole packs",
        "count",
        1,
        Within(Q_(0.05, "count"), "packs are whole"),
        lambda need, pack: math.ceil(_ratio(need, pack) - 1e-9),
        (
            Slip(
                "rounded down",
                lambda need, pack: (
                    math.floor(_ratio(need, pack)) if _ratio(need, pack) % 1 > 1e-9 else None
                ),
                "You rounded down, and now it is short. A part of a pack means one more.",
            ),
            Slip(
                "part of a pack",
                lambda need, pack: (
                    _ratio(need, pack) if 0.15 < _ratio(need, pack) % 1 < 0.85 else None
                ),
                "Nobody opens a pack for you: round up to whole packs.",
            ),
            Slip(
                "one too many",
                lambda need, pack: math.ceil(_ratio(need, pack) - 1e-9) + 1,
                "One pack too many. Round up once; do not add another to be safe.",
            ),
        ),
        working=(
            "how many bags: {need} ÷ {pack} = {bags}",
            "{bags}, rounded up = {answer}",
        ),
        on_the_way={
            "bags": lambda need, pack: Q_(_ratio(need, pack), "count"),
        },
    ),
    "You need {need} of flour. It comes in bags of {pack}. How many bags do you order?",
    "Divide, then think about the part of a bag.",
    {
        "need": steps(3.1, 18.5, 0.7, "kg", "needed"),
        "pack": steps(1.5, 3, 0.5, "kg", "a bag"),
    },
)

TRIM_TEST = Drill(
    Question(
        "butcher's test",
        "money per weight",
        1,
        Within(Q_(0.10, "dollar/kg"), "prices are kept to ten cents"),
        lambda bought, price, usable, trim, worth: (bought * price - trim * worth) / usable,
        (
            Slip(
                "no credit",
                lambda bought, price, usable: bought * price / usable,
                "The trimmings are worth something elsewhere: take that off the cost first.",
            ),
            Slip(
                "added",
                lambda bought, price, usable, trim, worth: (bought * price + trim * worth) / usable,
                "The trimmings' value is a credit. It comes off the cost.",
            ),
            Slip(
                "over the whole",
                lambda bought, price, trim, worth: (bought * price - trim * worth) / bought,
                "You shared the cost over everything bought. The usable part carries it alone.",
            ),
        ),
        working=(
            "the cost: {bought} × {price} = {cost}",
            "the credit: {trim} × {worth} = {credit}",
            "({cost} − {credit}) ÷ {usable} = {answer}",
        ),
        on_the_way={
            "cost": lambda bought, price: bought * price,
            "credit": lambda trim, worth: trim * worth,
        },
    ),
    "{bought} of loin at {price} gives {usable} trimmed. {trim} of trimmings is worth {worth}. "
    "What does a kilo of trimmed loin cost? Type it as a price, such as {{ price: 21.40 }}.",
    "Cost first, then what the trimmings are worth, then share it out.",
    {
        "bought": steps(4, 9, 0.5, "kg", "bought"),
        "price": steps(8, 16, 0.5, "dollar/kg", "price"),
        "usable": steps(2.4, 3.2, 0.2, "kg", "usable"),
        "trim": steps(0.8, 1.4, 0.2, "kg", "trimmings"),
        "worth": steps(2, 5, 0.5, "dollar/kg", "worth"),
    },
)

MENU_PRICE = Drill(
    Question(
        "menu price",
        "money",
        1,
        Within(Q_(0.10, "dollar"), "menus are priced to ten cents"),
        lambda cost, food_cost: cost / food_cost,
        (
            Slip(
                "mark-up",
                lambda cost, food_cost: cost * (1 + _part(food_cost)),
                "You added the percent to the cost. Food cost is a share of the price: divide.",
            ),
            Slip(
                "margin",
                lambda cost, food_cost: cost / (1 - _part(food_cost)),
                "You divided by what is left after the food. Divide by the food's share.",
            ),
            Slip(
                "multiplied",
                lambda cost, food_cost: cost * food_cost,
                "That is less than the plate costs. Divide by the food cost.",
            ),
        ),
        working=("{cost} ÷ {food_cost} = {answer}",),
    ),
    "A plate costs {cost}. The food is to be {food_cost} of the price. What does it sell for?",
    "The price is the whole, the cost is a part of it.",
    {
        "cost": steps(3.2, 8, 0.2, "dollar", "cost"),
        "food_cost": steps(25, 38, 1, "percent", "food cost"),
    },
)


def _ratio(need, pack):
    return (need / pack).to("").magnitude


DRILLS = (
    {
        drill.question.id: drill
        for drill in (
            AS_PURCHASED,
            EDIBLE_PORTION,
            RAW_FOR_COOKED,
            WHOLE_PACKS,
            TRIM_TEST,
            MENU_PRICE,
        )
    }
    | labels.DRILLS
    | card_price.DRILLS
)
