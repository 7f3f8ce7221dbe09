"""The door gives back what it let through, and says what it refuses."""

import pytest

from kitchenmath.errors import UnknownName, WrongKind
from kitchenmath.units import Q_, one_of, positive
from kitchenmath.units.currency import in_currency, money_unit
from kitchenmath.units.door import amount, instance, money, plain_number, share


def test_what_is_let_through_comes_back():
    """As the number inside, in the unit that was asked for: 1.5 kg is 1500 g, 35 % is 0.35."""
    assert 1500 == pytest.approx(amount(Q_(1.5, "kg"), "g", "salt"))
    assert 0.35 == pytest.approx(share(Q_(35, "percent"), "yield_"))
    assert 3 == positive(Q_(3, "g"), "salt")
    assert 4 == plain_number(4, "covers", whole=True)
    assert [1] == instance([1], list, "tasks", "a list")
    assert "milk" == one_of("milk", ("milk", "egg"), "allergen")
    assert Q_(3.48, "dollar") == money(Q_(3.48, "dollar"), "cost")


@pytest.mark.parametrize("choice", ["cream", ["milk"], None, Q_(1, "g")])
def test_a_choice_that_is_none_is_refused_with_all_that_there_are(choice):
    with pytest.raises(UnknownName, match=r"allergen: .* is not one of 'milk', 'egg'"):
        one_of(choice, ("milk", "egg"), "allergen")


@pytest.mark.parametrize("cost", [3.48, Q_(1, "g"), "3"])
def test_what_is_no_money_is_refused(cost):
    with pytest.raises(WrongKind, match=r"cost: needs money such as Q_\(3.48"):
        money(cost, "cost")


def test_only_money_changes_its_currency():
    """The number stays; what is no money, or no quantity at all, stays as it is."""
    assert Q_(9.25, "sterling/kg") == in_currency(Q_(9.25, "dollar/kg"), "sterling")
    assert Q_(2, "kg") == in_currency(Q_(2, "kg"), "euro")
    assert "2 kg" == in_currency("2 kg", "euro")
    assert "euro / kilogram" == money_unit("dollar / kilogram", "euro")
