"""Money as people type it, in a class that counts in dollars, pounds or euros."""

import re

import pytest

from kitchenmath.conventions.college import conventions_of
from kitchenmath.errors import KitchenError
from kitchenmath.practice.kinds import as_kind
from kitchenmath.practice.typed_amount import read_as
from kitchenmath.units import say

COUNTRY = {"dollar": "US", "sterling": "UK", "euro": "EU"}


def read_in(currency, typed, kind="money"):
    """As a question of a class reads it, and says it back."""
    college = conventions_of(COUNTRY[currency])
    assert currency == college.currency

    return str(say(as_kind(read_as(typed, kind, college), kind, "", currency))).replace("\xa0", " ")


@pytest.mark.parametrize(
    ("currency", "typed", "said"),
    [
        ("sterling", "50p", "£0.50"),
        ("sterling", "50 p", "£0.50"),
        ("sterling", "150 pence", "£1.50"),
        ("sterling", "24.40 pounds", "£24.40"),
        ("sterling", "24,40 pounds", "£24.40"),
        ("sterling", "1 pound 50", "£1.50"),
        ("sterling", "1 pound 5 pence", "£1.05"),
        ("sterling", "£1 50p", "£1.50"),
        ("sterling", "£1.50p", "£1.50"),
        ("sterling", "= 24.40 pounds", "£24.40"),
        ("sterling", "£21.13", "£21.13"),
        ("sterling", "16.67", "£16.67"),
        ("dollar", "50 cents", "$0.50"),
        ("dollar", "50c", "$0.50"),
        ("dollar", "50¢", "$0.50"),
        ("dollar", "24.40 dollars", "$24.40"),
        ("dollar", "1 dollar 50", "$1.50"),
        ("dollar", "1,250.50 dollars", "$1250.50"),
        ("euro", "50 cents", "€0.50"),
        ("euro", "24,40 euros", "€24.40"),
        ("euro", "24.40 €", "€24.40"),
    ],
)
def test_money_is_read_in_the_classs_currency(currency, typed, said):
    assert said == read_in(currency, typed)


@pytest.mark.parametrize(
    ("currency", "typed", "said"),
    [
        ("sterling", "21.13 per kg", "£21.13 per kg"),
        ("sterling", "£21.13 per kg", "£21.13 per kg"),
        ("sterling", "21.13/kg", "£21.13 per kg"),
        ("sterling", "21.13 pounds per kg", "£21.13 per kg"),
        ("sterling", "3 pounds per pound", "£3.00 per lb"),
        ("sterling", "2113p a kilo", "£21.13 per kg"),
        ("sterling", "2.11 per 100 g", "£21.10 per kg"),
        ("dollar", "9.25 a lb", "$9.25 per lb"),
        ("dollar", "9.25 dollars per pound", "$9.25 per lb"),
        ("euro", "20.33 euros per kg", "€20.33 per kg"),
        ("euro", "20,33 € / kg", "€20.33 per kg"),
    ],
)
def test_a_price_is_read_in_the_classs_currency(currency, typed, said):
    assert said == read_in(currency, typed, "money per weight")


@pytest.mark.parametrize(
    ("currency", "typed", "kind", "words"),
    [
        ("dollar", "24.40 pounds", "money", "pounds of money or pounds of weight"),
        ("euro", "1 pound 50", "money", "pounds of money or pounds of weight"),
        ("sterling", "24 pounds", "money per weight", "pounds of money or pounds of weight"),
        ("dollar", "24 pounds per kg", "money per weight", "pounds of money or pounds of weight"),
        ("dollar", "50p", "money", "£0.50 is other money: this set counts in dollars"),
        ("sterling", "50 cents", "money", "$0.50 is other money: this set counts in pounds"),
        ("sterling", "€3", "money", "other money"),
        ("sterling", "£50p", "money", "two units on one number"),
        ("sterling", "£3 dollars", "money", "two units on one number"),
        ("sterling", "24.40 lb", "money", "is a weight: money is asked for"),
        ("sterling", "21.13", "money per weight", "has no unit"),
        ("sterling", "1,250 pounds", "money", "can be read in two ways"),
    ],
)
def test_what_may_mean_two_things_or_is_other_money_is_asked(currency, typed, kind, words):
    with pytest.raises(KitchenError, match=re.escape(words)):
        read_in(currency, typed, kind)


def test_where_a_weight_is_asked_pounds_are_a_weight():
    assert "24.4 lb" == read_in("sterling", "24.40 pounds", "weight")
