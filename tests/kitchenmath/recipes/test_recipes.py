"""A dish of one's own: read, scaled, costed, ordered and put on a card. The dishes are invented."""

import json
import re

import pytest

from kitchenmath.errors import KitchenError, OutOfRange, Unreadable, WrongKind
from kitchenmath.recipes import (
    Ingredient,
    Recipe,
    bakers_percents,
    card_as_html,
    card_of,
    card_price,
    dish_cost,
    for_portions,
    for_total,
    order_for,
    read_recipe,
    recipe_as_json_ld,
    recipe_text,
)
from kitchenmath.units import Q_, read, say

DISH = """\
Guinea fowl with celeriac brunoise and cider foam
makes 24 portions of 320 g

6 guinea fowl; $14 each
1.5 kg celeriac; yield 68 %; $3.20 per kg; net of 2.5 kg; contains celery
90 g butter; $9 per kg; pack of 250 g; contains milk
salt to taste

For the foam:
1.2 L cider; bottle of 750 ml at $3.50; contains sulphites
6 g soya lecithin; $48 per kg; tub of 100 g; contains soya

For the rolls:
900 g bread flour; $1.40 per kg; sack of 16 kg; contains gluten
560 g water
18 g salt; contains nothing

Method
1. Brine the birds the day before.
2) Square the celeriac and cut it to brunoise.
"""


@pytest.fixture(name="dish")
def a_dish():
    return read_recipe(DISH)


def of(recipe, name):
    return next(each for each in recipe.ingredients if each.name == name)


def test_a_pasted_recipe_is_read_line_by_line(dish):
    """24 x 320 g = 7.68 kg; every line keeps what is said behind it."""
    celeriac, cider = of(dish, "celeriac"), of(dish, "cider")

    assert (24, "7.68 kg") == (dish.portions, say(dish.total.to("kg")))
    assert ["", "", "", "", "For the foam", "For the foam"] == [
        each.group for each in dish.ingredients[:6]
    ]
    assert ("1.5 kg", "68 %", "2.5 kg") == tuple(
        map(say, (celeriac.amount, celeriac.yield_, celeriac.pack))
    )
    assert ("$3.50", "750 mL") == (say(cider.price), say(cider.price_for))
    assert of(dish, "salt").amount is None
    assert ((), None) == (dish.ingredients[-1].allergens, of(dish, "water").allergens)
    assert "Square the celeriac and cut it to brunoise." == dish.steps[1]


@pytest.mark.parametrize("line", [
    "2 1/2 cups bread flour", "- 200 g of butter", "• 1 lb 4 oz carrots", "½ tsp salt",
    "6 eggs; $0.30 each; tray of 30", "0,75 L cider", "a pinch of nutmeg", "pepper, to taste",
    "2 cans chopped tomatoes; £1.10 a can",
])  # fmt: skip
def test_lines_as_people_write_them(line):
    """Each becomes one ingredient, and comes back the same after it was written and read."""
    recipe = read_recipe(f"A dish\nserves 4\n{line}")
    again = read_recipe(recipe_text(recipe))

    assert 1 == len(recipe.ingredients)
    assert recipe_text(recipe) == recipe_text(again)


def test_what_is_saved_is_read_back(dish):
    """Written, read and written again it is the same text; nothing of the dish is lost."""
    text = recipe_text(dish)

    assert text == recipe_text(read_recipe(text))
    assert [each.cost for each in dish.ingredients] == [
        each.cost for each in read_recipe(text).ingredients
    ]


@pytest.mark.parametrize(("line", "says"), [
    ("butter", "how much of it"),
    ("Cut, blanch, warm in butter.", "“Method” on a line above"),
    ("350 g/12 oz butter", "two amounts"),
    ("2 kg flour; yield 130 %", "at most 100 %"),
    ("2 kg flour; good one", "says nothing that is known"),
    ("2 kg flour; $3", "say what for"),
    ("2 L wine; $3 per kg", "both by weight"),
    ("2 kg flour; $-3 per kg", "at least 0"),
    ("2 kg flour; bag of lots", "lots"),
    ("-2 kg flour", "more than 0"),
    ("serves ten", "how much of it"),
])  # fmt: skip
def test_an_odd_line_is_named_with_what_to_type(line, says):
    with pytest.raises(Unreadable, match=says) as error:
        read_recipe(f"A dish\n1 kg salt\n{line}")

    assert "Line 3" in str(error.value)


@pytest.mark.parametrize("text", ["", "  \n", "A dish", None, "A dish\nserves 4\n\n1. Stir."])
def test_a_recipe_without_ingredients_says_what_is_missing(text):
    with pytest.raises(Unreadable, match=r"goes in|ingredient"):
        read_recipe(text)


def test_all_odd_lines_are_named_at_once():
    """Two lines that cannot be read, and one that can."""
    with pytest.raises(Unreadable) as error:
        read_recipe("A dish\nbutter\n1 kg flour\nsugar")

    assert ["Line 2", "Line 4"] == re.findall(r"Line \d", str(error.value))


def test_more_covers_and_larger_portions_both_count(dish):
    """1.5 kg x 36/24 = 2.25 kg; with 400 g instead of 320 g also x 1.25 = 2.8125 kg."""
    assert "2.25 kg" == say(of(for_portions(dish, 36), "celeriac").amount)
    assert "2.8125 kg" == say(of(for_portions(dish, 36, Q_(400, "g")), "celeriac").amount, 6)


def test_a_total_changes_the_number_of_portions(dish):
    """16 kg at 320 g are 50 portions."""
    assert 50 == pytest.approx(for_total(dish, Q_(16, "kg")).portions)


def test_scaling_there_and_back_is_the_recipe(dish):
    back = for_portions(for_portions(dish, 7), 24)
    amounts = [each.amount for each in dish.ingredients if each.amount is not None]

    assert [a.magnitude for a in amounts] == pytest.approx(
        [each.amount.magnitude for each in back.ingredients if each.amount is not None]
    )


@pytest.mark.parametrize("wanted", [
    lambda dish: for_portions(dish, 0),
    lambda dish: for_portions(dish, float("nan")),
    lambda dish: for_total(dish, Q_(3, "L")),
    lambda dish: for_total(Recipe("x", 4, None, dish.ingredients), Q_(3, "kg")),
    lambda dish: for_portions(Recipe("x", 4, None, dish.ingredients), 8, Q_(100, "g")),
])  # fmt: skip
def test_what_cannot_be_scaled_to_is_refused(dish, wanted):
    with pytest.raises(KitchenError):
        wanted(dish)


def test_the_cost_by_hand(dish):
    """By hand, as purchased.

    Birds 6 x 14 = 84.00; celeriac 1.5 / 0.68 x 3.20 = 7.0588; butter 0.09 x 9 = 0.81; cider
    1.2 / 0.75 x 3.50 = 5.60; lecithin 0.006 x 48 = 0.288; flour 0.9 x 1.40 = 1.26: 99.0168 in all,
    4.1257 a portion. Water and salt have no price.
    """
    cost = dish_cost(dish)

    assert 99.0168 == pytest.approx(cost.total.to("dollar").magnitude, abs=1e-4)
    assert 4.1257 == pytest.approx(cost.portion.to("dollar").magnitude, abs=1e-4)
    assert ("water", "salt") == cost.unpriced


def test_a_weight_is_measured_where_its_cup_is_known():
    """A US cup of honey, 236.6 mL, is 339 g (USDA SR 28): 339 g at $10 a litre are $2.37."""
    honey = read_recipe("x\n339 g honey; $10.00 per litre").ingredients[0]

    assert 2.366 == pytest.approx(honey.cost.magnitude, abs=0.001)


def test_cups_are_weighed_where_the_weight_is_known():
    """A US cup of bread flour is 137 g (USDA SR 28): 2 cups at $1.50 a kilo are 41 cents."""
    flour = read_recipe("x\n2 cups bread flour; $1.50 per kg").ingredients[0]

    assert 0.411 == pytest.approx(flour.cost.magnitude, abs=1e-3)


def test_two_currencies_in_one_recipe_are_refused():
    with pytest.raises(WrongKind, match="one currency"):
        dish_cost(read_recipe("x\n1 kg a; $1 per kg\n1 kg b; €1 per kg"))


def test_food_cost_and_gross_profit_are_two_sides_of_one_price():
    """£2.40 is 30 % of £8.00; with 20 % tax in it the card says £9.60, and without it £8.00."""
    by_cost = card_price(read("£2.40"), food_cost=Q_(30, "percent"), tax=Q_(20, "percent"))
    by_profit = card_price(read("£2.40"), gross_profit=Q_(70, "percent"), tax=Q_(20, "percent"))
    outside = card_price(
        read("£2.40"), food_cost=Q_(30, "percent"), tax=Q_(20, "percent"), tax_in_price=False
    )

    assert ("£8.00", "£9.60") == (say(by_cost.before_tax), say(by_cost.on_card))
    assert say(by_cost.on_card) == say(by_profit.on_card)
    assert "£8.00" == say(outside.on_card)
    assert 100 == pytest.approx((by_cost.food_cost + by_cost.gross_profit).magnitude)


@pytest.mark.parametrize("shares", [
    {}, {"food_cost": Q_(30, "percent"), "gross_profit": Q_(70, "percent")},
    {"gross_profit": Q_(100, "percent")}, {"food_cost": Q_(0, "percent")},
    {"food_cost": Q_(30, "percent"), "tax": Q_(-1, "percent")},
])  # fmt: skip
def test_a_price_needs_one_share_between_nothing_and_all(shares):
    with pytest.raises((WrongKind, OutOfRange)):
        card_price(read("$2.40"), **shares)


def test_whole_packs_of_what_is_bought(dish):
    """1.5 / 0.68 = 2.21 kg is one net of 2.5 kg; 1.2 L is two bottles; the birds have no pack."""
    lines, rest = order_for(dish)
    packs = {line.item: line.packs[0][0] for line in lines}

    assert {"celeriac": 1, "butter": 1, "cider": 2, "soya lecithin": 1, "bread flour": 1} == packs
    assert ["guinea fowl", "salt", "water"] == rest


def test_the_same_item_in_two_groups_is_ordered_once():
    """300 g and 400 g are 700 g: three packs of 250 g, not two and two."""
    dish = read_recipe("x\nA:\n300 g butter; pack of 250 g\nB:\n400 g butter; pack of 250 g")

    assert [3] == [line.packs[0][0] for line in order_for(dish)[0]]


def test_bakers_percents_are_of_the_flour_in_the_same_group(dish):
    """560 / 900 = 62.2 %; the celeriac is in another group and gets none."""
    rolls = [each for each in dish.ingredients if each.group == "For the rolls"]
    rows = dict(card_of(dish).groups)

    assert 62.22 == pytest.approx(bakers_percents(rolls)["water"].magnitude, abs=0.01)
    assert {"100 %", "62.2 %", "2 %"} == {row.percent for row in rows["For the rolls"]}
    assert {""} == {row.percent for row in rows[""]}


def test_the_allergen_row_says_what_nobody_has_said(dish):
    """What is not said is not "none"."""
    words = card_of(dish).allergens

    assert "Contains celery, gluten, milk, soya, sulphites." in words
    assert "guinea fowl, salt, water" in words


def test_the_card_escapes_what_was_typed():
    """A name may hold anything; the page runs none of it and loads nothing."""
    page = card_as_html(card_of(read_recipe("<script>alert(1)</script>\n2 kg <img src=x> b")))

    assert "<script>" not in page and "<img" not in page
    assert "http" not in page


def test_a_scaled_card_says_what_the_factor_does_not_settle(dish):
    """6 birds for 24 are 2.5 for 10: no whole number. Salt in the dough is tasted."""
    card = card_of(for_portions(dish, 10), factor=10 / 24)
    remarks = {row.name: row.remark for _, rows in card.groups for row in rows if row.remark}

    assert {"guinea fowl", "salt"} == set(remarks)
    assert "no whole number" in remarks["guinea fowl"]


def test_the_pdf_is_a5_and_the_same_each_time(dish, tmp_path):
    """ISO 216: A5 is 148 by 210 mm, 419.5 by 595.3 points."""
    from kitchenmath.figures.recipe_card import recipe_card

    first = recipe_card(card_of(dish), tmp_path / "one.pdf").read_bytes()
    again = recipe_card(card_of(dish), tmp_path / "two.pdf").read_bytes()
    boxes = re.findall(rb"/MediaBox \[ 0 0 ([\d.]+) ([\d.]+) \]", first)

    assert first == again
    assert [419.53, 595.28] == pytest.approx([float(side) for side in boxes[0]], abs=0.05)


def test_a_long_recipe_goes_on_on_the_next_page(dish, tmp_path):
    """Eighty lines do not fit on one A5 page, and none is lost over its lower edge."""
    from kitchenmath.figures.recipe_card import A5_MM, MARGIN_MM, _Pages

    lines = tuple(Ingredient(f"thing {i}", Q_(10, "g")) for i in range(80))
    pages = _Pages(card_of(Recipe("Long", 4, None, lines))).figures
    texts = [text for page in pages for text in page.axes[0].texts]

    assert len(pages) >= 3
    assert max(text.get_position()[1] for text in texts) <= A5_MM[1] - MARGIN_MM
    assert {f"thing {i}" for i in range(80)} <= {text.get_text() for text in texts}


def test_the_linked_data_keeps_to_the_standards_words(dish):
    """schema.org's Recipe: the names of its properties, and amounts that our reader reads back."""
    found = json.loads(recipe_as_json_ld(dish))
    celeriac = next(line for line in found["recipeIngredient"] if "celeriac" in line)

    assert ("https://schema.org", "Recipe") == (found["@context"], found["@type"])
    assert {"name", "recipeYield", "recipeIngredient", "recipeInstructions"} <= found.keys()
    assert "HowToStep" == found["recipeInstructions"][0]["@type"]
    assert "1.5 kg" == say(read(celeriac.removesuffix(" celeriac")))
