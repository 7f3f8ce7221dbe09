"""What a plate holds, by hand from its items."""

import pytest

from kitchenmath.data.tables import table
from kitchenmath.errors import UnknownName
from kitchenmath.panels.landing import MENU
from kitchenmath.safety import allergen_names, plate_allergens

PLATE = tuple(item for item, *_ in MENU)


def test_the_lists_are_as_long_as_the_laws_that_made_them():
    """Annex II of Regulation (EU) No 1169/2011: 14; FALCPA 2004: 8; FASTER 2021 adds sesame."""
    assert len(allergen_names("EU and UK")) == 14
    assert set(allergen_names("US")) == {
        "milk", "egg", "fish", "crustacean shellfish", "tree nuts", "peanuts", "wheat",
        "soybeans", "sesame",
    }  # fmt: skip


def test_the_plate_of_the_house_holds_five_of_the_list_soya_among_them():
    """By hand: flour, lecithin, butter, celeriac, mustard; birds, salt, sugar, yeast none."""
    assert {
        "gluten": ("flour",),
        "soya": ("lecithin powder",),
        "milk": ("butter",),
        "celery": ("celeriac",),
        "mustard": ("mustard",),
    } == plate_allergens(PLATE).holds


def test_the_american_list_has_neither_celery_nor_mustard_and_says_wheat():
    """Three of the nine on the plate."""
    assert {"wheat", "soybeans", "milk"} == set(plate_allergens(PLATE, "US").holds)


def test_what_only_a_label_tells_is_said_apart():
    """A stock holds celery or not, as its maker pleases."""
    found = plate_allergens(["chicken stock"])

    assert {} == found.holds
    assert ("chicken stock",) == found.read_the_label_for["celery"]
    assert str(found).startswith("Holds nothing of the list. Read the label for gluten")


def test_the_longest_name_wins_and_brackets_are_no_name():
    """Egg yolk is no "egg" row of its own, milk (glaze) is milk, coarse salt is no cocoa."""
    assert ("egg yolk, pasteurised",) == plate_allergens(["egg yolk, pasteurised"]).holds["egg"]
    assert ("milk (glaze)",) == plate_allergens(["milk (glaze)"]).holds["milk"]
    assert {} == plate_allergens(["coarse salt"]).holds


def test_what_nobody_knows_is_not_free_of_allergens():
    """An unknown item stops the list and names itself; part of a word is no match."""
    with pytest.raises(UnknownName, match="what 'pesto' holds"):
        plate_allergens(["butter", "pesto"])
    with pytest.raises(UnknownName, match="buttermilk"):
        plate_allergens(["buttermilk"])
    with pytest.raises(UnknownName, match="country"):
        plate_allergens(["butter"], "Mars")


def test_each_substance_of_the_items_is_on_a_list():
    """A slip of the pen in the table would leave an allergen out in silence."""
    known = {row["substance"] for row in table("allergen_lists.csv")}
    used = {
        each
        for row in table("allergens.csv")
        for column in ("holds", "read_the_label_for")
        for each in row[column].split(";")
        if each
    }

    assert used <= known
