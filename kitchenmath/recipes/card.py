"""A recipe's card for the wall: what stands on it, and the card as a page to print (A5)."""

import html
from dataclasses import dataclass

from kitchenmath.recipes.costing import CardPrice, dish_cost, order_for
from kitchenmath.recipes.recipe import Recipe, bakers_percents
from kitchenmath.recipes.scaled import look_again
from kitchenmath.units.measures import in_other_system
from kitchenmath.units.registry import kind_of
from kitchenmath.units.saying import figures, say

ALLERGENS = (
    "Read the label of each pack: a supplier may change what is in it. "
    "Your local rules on allergens come first."
)


@dataclass(frozen=True)
class Row:
    """One line of the card.

    Attributes
    ----------
    amount, name : str
    other : str
        The same in the other system; "" where there is none.
    percent : str
        Of the flour; "" where the dish has none.
    remark : str
        What the factor alone does not settle.
    """

    amount: str
    name: str
    other: str = ""
    percent: str = ""
    remark: str = ""


@dataclass(frozen=True)
class Card:
    """What stands on a card, in the order in which it stands there.

    Attributes
    ----------
    title, makes : str
    groups : tuple of (str, tuple of Row)
        "" heads the lines that stand in no group.
    steps : tuple of str
    allergens : str
    costs : tuple of (str, str)
        What it is, and the amount.
    orders : tuple of str
    """

    title: str
    makes: str
    groups: tuple
    steps: tuple
    allergens: str
    costs: tuple = ()
    orders: tuple = ()


def card_of(recipe: Recipe, factor=1.0, price: CardPrice | None = None):
    """The card of a recipe.

    Parameters
    ----------
    recipe : Recipe
        As scaled.
    factor : float
        By which it was scaled; lines that need a second look say so.
    price : CardPrice, optional

    Returns
    -------
    Card
    """
    remarks, groups = look_again(recipe, factor), {}
    for each in recipe.ingredients:
        groups.setdefault(each.group, []).append(each)
    portion = f" of {say(recipe.portion)}" if recipe.portion is not None else ""
    total = f", {shown(recipe.total)} in all" if recipe.total is not None else ""
    return Card(
        title=recipe.title,
        makes=f"Makes {figures(recipe.portions)} portions{portion}{total}",
        groups=tuple((name, _rows(lines, remarks)) for name, lines in groups.items()),
        steps=recipe.steps,
        allergens=_allergens(recipe),
        costs=_costs(recipe, price),
        orders=_orders(recipe),
    )


def card_as_html(card):
    """A card as one page of HTML that loads nothing and prints on A5.

    Parameters
    ----------
    card : Card

    Returns
    -------
    str
        All that was typed is escaped.
    """
    parts = [f"<h1>{_safe(card.title)}</h1>", f"<p>{_safe(card.makes)}</p>"]
    for heading, rows in card.groups:
        parts += [f"<h2>{_safe(heading)}</h2>"] if heading else []
        parts.append(f"<table>{''.join(map(_row, rows))}</table>")
    if card.steps:
        steps = "".join(f"<li>{_safe(step)}</li>" for step in card.steps)
        parts.append(f"<h2>Method</h2><ol>{steps}</ol>")
    parts.append(f"<h2>Allergens</h2><p>{_safe(card.allergens)}</p><p>{_safe(ALLERGENS)}</p>")
    if card.costs:
        rows = "".join(
            f"<tr><th scope=row>{_safe(what)}</th><td class=number>{_safe(cost)}</td></tr>"
            for what, cost in card.costs
        )
        parts.append(f"<h2>Cost</h2><table>{rows}</table>")
    if card.orders:
        lines = "".join(f"<li>{_safe(line)}</li>" for line in card.orders)
        parts.append(f"<h2>To order</h2><ul>{lines}</ul>")
    return PAGE.replace("TITLE", _safe(card.title)).replace("BODY", "\n".join(parts))


PAGE = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>TITLE</title>
<meta name="viewport" content="width=device-width">
<style>
@page { size: A5; margin: 12mm }
:root { color-scheme: light dark }
body { font: 15px/1.45 system-ui, sans-serif; max-width: 34em; margin: 1em auto; padding: 0 1em }
h1 { font-size: 1.5em; margin: 0 } h2 { font-size: 1.05em; margin: 1em 0 .2em }
table { border-collapse: collapse; width: 100% }
td, th { padding: .15em .5em .15em 0; vertical-align: top; text-align: left; font-weight: normal;
  border-bottom: 1px solid color-mix(in srgb, currentColor 25%, transparent) }
td.number { text-align: right; white-space: nowrap }
td.number:first-child { width: 6.5em; padding-right: 1em }
small { display: block; opacity: .8 } ol, ul { margin: .2em 0; padding-left: 1.4em }
@media print { body { font-size: 10pt; margin: 0; padding: 0 } h2, tr, li { break-inside: avoid } }
</style></head>
<body>
BODY
</body></html>
"""


def _row(row):
    remark = f"<small>{_safe(row.remark)}</small>" if row.remark else ""
    other = f"<small>{_safe(row.other)}</small>" if row.other else ""
    percent = f"<td class=number>{_safe(row.percent)}</td>" if row.percent else ""
    return (
        f"<tr><td class=number>{_safe(row.amount)}{other}</td>"
        f"<th scope=row>{_safe(row.name)}{remark}</th>{percent}</tr>"
    )


def _safe(text):
    return html.escape(text)


def _rows(lines, remarks):
    """The lines of one group; in percent of the flour too, where there is some."""
    percents = bakers_percents(lines)
    return tuple(
        Row(
            "to taste" if each.amount is None else shown(each.amount),
            each.name,
            _other(each.amount),
            say(percents[each.name], 3) if each.name in percents and each.amount else "",
            "" if each.amount is None else remarks.get(each.name, ""),
        )
        for each in lines
    )


def _other(amount):
    """The amount in the other system; a country's cups and spoons in millilitres."""
    if amount is None:
        return ""
    if kind_of(amount) == "volume" and str(amount.units) not in ("liter", "milliliter"):
        return say(amount.to("mL"), 3)
    return in_other_system(amount)


def shown(amount):
    """An amount as it stands on a card: from a thousand grams on in kilos, millilitres in litres.

    Examples
    --------
    >>> from kitchenmath.units import Q_
    >>> shown(Q_(1350, "g"))
    '1.35 kg'
    """
    larger = {"gram": "kg", "milliliter": "L"}.get(str(amount.units))
    return say(amount.to(larger) if larger and amount.magnitude >= 1000 else amount)


def _allergens(recipe):
    """The dish's allergens: of every line that says them, and whether any says nothing."""
    named = sorted({name for each in recipe.ingredients for name in each.allergens or ()})
    silent = dict.fromkeys(each.name for each in recipe.ingredients if each.allergens is None)
    words = f"Contains {', '.join(named)}." if named else "Nothing is named."
    return f"{words} Nothing is said of {', '.join(silent)}." if silent else words


def _costs(recipe, price):
    """Cost in all and of a portion, and the price where one is asked for."""
    cost = dish_cost(recipe)
    if cost.total is None:
        return ()
    rows = [("Food, in all", say(cost.total)), ("Food, one portion", say(cost.portion))]
    if cost.unpriced:
        rows.append(("Without a price, and not in it", ", ".join(cost.unpriced)))
    if price is not None:
        rows += [
            ("Price before tax", say(price.before_tax)),
            ("Food cost", say(price.food_cost, 3)),
            ("Gross profit", say(price.gross_profit, 3)),
            ("Price on the card", say(price.on_card)),
        ]
    return tuple(rows)


def _orders(recipe):
    lines, rest = order_for(recipe)
    rows = [str(line) for line in lines]
    if rows and rest:
        rows.append(f"No pack is known for {', '.join(rest)}.")
    return tuple(rows)
