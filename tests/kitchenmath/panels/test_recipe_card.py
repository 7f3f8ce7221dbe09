"""The panel for a dish of one's own, without a kernel; and the same on the command line."""

import base64
import html
import json
import re

import pytest

from kitchenmath.figures.card_command import main
from kitchenmath.panels.recipe_card import EXAMPLE, recipe_card_panel
from kitchenmath.recipes import read_recipe


@pytest.fixture
def panel():
    return recipe_card_panel()


def words(panel):
    return html.unescape(re.sub(r"<[^>]+>", " ", panel.words.value))


def test_the_example_makes_a_card_and_four_files(panel):
    """1.8 kg for 24 is 2.7 kg for 36; the linked data says so, and so does the page."""
    panel.boxes["make"].value = "36"
    panel.work.click()
    files = dict(re.findall(r'download="([\w.]+)" href="data:[\w/+]+;base64,([^"]+)"',
                            panel.shown.value))  # fmt: skip
    linked = json.loads(base64.b64decode(files["recipe.jsonld"]))

    assert "Makes 36 portions of 70 g, 2.52 kg in all" in words(panel)
    assert {"card.pdf", "card.html", "recipe.txt", "recipe.jsonld"} == files.keys()
    assert "2.7 kg celeriac" in linked["recipeIngredient"]
    assert base64.b64decode(files["card.pdf"]).startswith(b"%PDF")
    assert 36 == read_recipe(base64.b64decode(files["recipe.txt"]).decode()).portions


@pytest.mark.parametrize(("box", "typed", "says"), [
    ("make", "lots", "make: “lots”"),
    ("make", "0", "above 0"),
    ("make", "5 L", "weight"),
    ("portion", "big", "portion: “big”"),
    ("food_cost", "130 %", "at most 100"),
    ("tax", "none", "tax: "),
])  # fmt: skip
def test_an_odd_box_is_named(panel, box, typed, says):
    panel.boxes["food_cost"].value = "30"
    panel.boxes[box].value = typed
    panel.work.click()

    assert says in words(panel)
    assert "" == panel.shown.value


def test_two_shares_at_once_are_refused(panel):
    panel.boxes["food_cost"].value, panel.boxes["gross_profit"].value = "30 %", "70 %"
    panel.work.click()

    assert "give one" in words(panel)


def test_what_is_typed_runs_nowhere(panel):
    """The card stands in a frame without scripts, and its text is escaped twice."""
    panel.text.value = "<script>alert(1)</script>\n2 kg flour"
    panel.work.click()

    assert "<script" not in panel.shown.value + panel.words.value
    assert " sandbox " in panel.shown.value


def test_the_command_writes_beside_the_recipe(tmp_path, capsys):
    """A card as PDF and page, linked data, and the recipe as made; 0, or 1 and a sentence."""
    dish = tmp_path / "dish.txt"
    dish.write_text(EXAMPLE, encoding="utf-8")

    assert 0 == main([str(dish), "--make", "5 kg", "--food-cost", "30 %", "--tax", "20 %"])
    assert {"dish.txt", "dish-card.pdf", "dish-card.html", "dish.jsonld", "dish-made.txt"} == {
        file.name for file in tmp_path.iterdir()
    }
    assert "Price on the card" in (tmp_path / "dish-card.html").read_text(encoding="utf-8")
    assert 1 == main([str(dish), "--make", "much"])
    assert "make: “much”" in capsys.readouterr().err
    assert 1 == main([str(tmp_path / "none.txt")])
