"""The panel for a dish of one's own: type or paste it, scale it, cost it, take its card along."""

import base64
import html
import tempfile
from pathlib import Path

import ipywidgets as widgets

from kitchenmath.errors import KitchenError, Unreadable
from kitchenmath.figures.recipe_card import recipe_card
from kitchenmath.panels.frame import TEXT, WIDE, below_each_other, said
from kitchenmath.recipes import card_as_html, read_recipe, recipe_as_json_ld, recipe_text
from kitchenmath.recipes.wanted import worked

# Invented; whoever has none of their own begins here.
EXAMPLE = """\
Celeriac brunoise with cider foam
makes 24 portions of 70 g

1.8 kg celeriac; yield 68 %; $3.20 per kg; net of 2.5 kg; contains celery
90 g butter; $9 per kg; pack of 250 g; contains milk
salt to taste

For the foam:
1 L cider; bottle of 750 mL at $3.50; contains sulphites
5 g soya lecithin; $48 per kg; tub of 100 g; contains soya

1. Square the celeriac and cut it to brunoise; warm it in the butter.
2. Warm the cider with the lecithin, and aerate it at the pass.
"""
SIDE = "description_width"
MIME = {"card.pdf": "application/pdf", "card.html": "text/html", "recipe.txt": "text/plain",
        "recipe.jsonld": "application/ld+json"}  # fmt: skip
LABELS = {"card.pdf": "The card, to print (PDF, A5)", "card.html": "The card, as a page",
          "recipe.txt": "The recipe, to open again",
          "recipe.jsonld": "For other programs (JSON-LD)"}  # fmt: skip


def recipe_card_panel(text=EXAMPLE):
    """A recipe to type, paste or open; for how many; its card, its cost and its files.

    Parameters
    ----------
    text : str
        What stands in the box at first.

    Returns
    -------
    ipywidgets VBox
        With attributes `text`, `boxes`, `work`, `opened`, `words` and `shown`.
    """
    typed = widgets.Textarea(text, layout={"width": "auto", "max_width": WIDE, "height": "280px"})
    typed.add_class("recipe")
    opened = widgets.FileUpload(description="Open a recipe", accept=".txt", multiple=False)
    boxes = {
        "make": _box("Make", "36, or 5 kg"),
        "portion": _box("Portion of", "150 g"),
        "food_cost": _box("Food cost", "30 %"),
        "gross_profit": _box("or gross profit", "70 %"),
        "tax": _box("Tax", "20 %"),
    }
    tax_in = widgets.Checkbox(True, description="The card's price has the tax in it", indent=False)
    work = widgets.Button(description="Make the card", layout={"width": "220px"})
    words, shown = widgets.HTML(), widgets.HTML()

    def make(_=None):
        asked = {name: box.value for name, box in boxes.items()}
        try:
            made = worked(read_recipe(typed.value), **asked, tax_in_price=tax_in.value)
        except KitchenError as error:
            words.value, shown.value = said(str(error)), ""
            return
        words.value = said(f"{made.card.title}: {made.card.makes}.")
        shown.value = _frame(made) + _files(made)

    def take(_):
        if opened.value:
            try:
                typed.value = bytes(opened.value[0]["content"]).decode("utf-8-sig")
            except UnicodeDecodeError:
                words.value = said(str(Unreadable("this file is no text: open a recipe.txt.")))
                return
            make()

    work.on_click(make)
    opened.observe(take, "value")
    row = widgets.HBox(list(boxes.values()), layout={"flex_flow": "row wrap"})
    panel = below_each_other([typed, opened, row, tax_in, work, words, shown])
    panel.text, panel.boxes, panel.work, panel.opened = typed, boxes, work, opened
    panel.words, panel.shown = words, shown
    return panel


def _box(label, example):
    return widgets.Text(
        description=label,
        placeholder=f"such as {example}",
        style={SIDE: "initial"},
        layout={"width": "200px"},
    )


def _frame(made):
    """The card in a frame of its own, where nothing that was typed can run."""
    page = html.escape(card_as_html(made.card), quote=True)
    return (
        f'<iframe srcdoc="{page}" title="The card" sandbox '
        'style="width:100%;height:420px;border:1px solid"></iframe>'
    )


def _files(made):
    """What can be taken along: links that hold their files, so nothing is written anywhere."""
    with tempfile.TemporaryDirectory() as folder:
        pdf = recipe_card(made.card, Path(folder) / "card.pdf").read_bytes()
    files = {
        "card.pdf": pdf,
        "card.html": card_as_html(made.card).encode(),
        "recipe.txt": recipe_text(made.recipe).encode(),
        "recipe.jsonld": recipe_as_json_ld(made.recipe).encode(),
    }
    links = "".join(
        f'<li><a download="{name}" href="data:{MIME[name]};base64,'
        f'{base64.b64encode(raw).decode()}">{LABELS[name]}</a></li>'
        for name, raw in files.items()
    )
    return f'<div style="{TEXT}">Take it along:<ul>{links}</ul></div>'
