"""A recipe read from what a cook types or pastes, and written so that it can be read again.

The text is the file: what can be typed into the box is what is saved.

    Celeriac brunoise
    makes 24 portions of 60 g

    1.5 kg celeriac; yield 68 %; $3.20 per kg; net of 2.5 kg; contains celery
    90 g butter; $9 per kg; pack of 250 g; contains milk
    salt to taste

    1. Square the celeriac and cut it to brunoise.
    2. Warm it in the butter.
"""

import re
from dataclasses import replace

from kitchenmath.errors import KitchenError, Unreadable
from kitchenmath.recipes.recipe import ALL_OF_IT, Ingredient, Recipe
from kitchenmath.units.reading import read
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import figures, say

LONGEST = 20_000  # characters; a recipe fits on a few pages
MAKES = re.compile(
    r"(?:makes|serves|yields|for)\s+(?P<portions>[\d.,]+)\s*"
    r"(?:portions?|covers?|people|pieces|rolls)?\s*(?:of\s+(?P<portion>.+?)(?:\s+each)?)?\s*\.?$",
    re.IGNORECASE,
)
MAKES_TOTAL = re.compile(r"(?:makes|yields)\s+(?P<total>.+?)\s*\.?$", re.IGNORECASE)
HEADING = re.compile(r"(ingredients|method|steps)\s*:?$", re.IGNORECASE)
GROUP = re.compile(r"([^;\d][^;]*):$")
STEP = re.compile(r"(?:step\s+)?\d{1,2}\s*[.)]\s+(?P<step>.+)$", re.IGNORECASE)
BULLET = re.compile(r"[-*•·]\s+")
TO_TASTE = re.compile(
    r"(?:a |some )?(?:pinch(?:es)? of |dash of )?(.+?),?\s+to taste$"
    r"|(?:a |some )(?:pinch|dash|little)(?: of)? (.+)$",
    re.IGNORECASE,
)
YIELD = re.compile(r"yield\s+(?P<yield>.+)$", re.IGNORECASE)
PACK = re.compile(
    r"(?:pack|net|bag|tin|can|box|case|bottle|sack|tub|tray|bunch)\s+of\s+(?P<pack>.+?)"
    r"(?:\s+(?:at|for)\s+(?P<price>.+))?$",
    re.IGNORECASE,
)
CONTAINS = re.compile(r"(?:contains|allergens?:?)\s+(?P<allergens>.+)$", re.IGNORECASE)
PRICE = re.compile(r"(?P<money>.*[$£€¢].*?)\s*(?:(?:per|/|an?|each)\s*(?P<per>.*))?$")
MOST_WORDS = 6  # of an amount: "1 lb 4 1/2 oz" has five
NAME = re.compile(r"[^\W\d_]")
TWO_AMOUNTS = re.compile(r"\d\s*[^\W\d_]+\s*[/(]\s*\d")  # 350 g/12 oz


def read_recipe(text):
    """The recipe that a text means.

    Parameters
    ----------
    text : str
        The title; a line such as "makes 10 portions of 120 g" or "serves 10"; an ingredient a
        line, with what is known of it after semicolons (yield, price, pack, allergens); steps
        with a number in front.

    Returns
    -------
    Recipe

    Raises
    ------
    Unreadable
        With the number of each line that cannot be read, what came and what to type.

    Examples
    --------
    >>> roll = read_recipe('''Bread roll
    ... makes 24 portions of 60 g
    ... 900 g bread flour; $1.40 per kg; sack of 16 kg; contains gluten
    ... 560 g water
    ... 1. Mix, rest, shape, bake.''')
    >>> print(say(roll.total.to("kg")), "from", [each.name for each in roll.ingredients])
    1.44 kg from ['bread flour', 'water']
    """
    if not isinstance(text, str) or not text.strip():
        raise Unreadable('the recipe is empty: type its name, then "serves 10", then what goes in.')
    if len(text) > LONGEST:
        raise Unreadable(f"{len(text)} characters came: one recipe has {LONGEST} at most.")
    found = _Found()
    for number, line in enumerate(text.splitlines(), start=1):
        try:
            found.take(line.strip())
        except KitchenError as error:
            found.odd.append(f"Line {number}, “{line.strip()[:60]}”: {error}")
    if not found.ingredients and not found.odd:
        found.odd.append("There is no ingredient: type one a line, such as “2 kg celeriac”.")
    if found.odd:
        raise Unreadable("\n".join(found.odd))
    return Recipe(
        found.title, found.portions, found.portion, tuple(found.ingredients), tuple(found.steps)
    )


class _Found:
    """What the lines so far have said."""

    def __init__(self):
        self.title, self.portions, self.portion, self.group = "", 1.0, None, ""
        self.ingredients, self.steps, self.odd, self.method = [], [], [], False

    def take(self, line):
        if not line:
            return
        if not self.title:
            self.title = line
        elif heading := HEADING.match(line):
            self.method = heading[1].lower() != "ingredients"
        elif not self.ingredients and (makes := MAKES.match(line)):
            self.portions = read(makes["portions"]).magnitude
            self.portion = read(makes["portion"]) if makes["portion"] else None
        elif not self.ingredients and (makes := MAKES_TOTAL.match(line)):
            self.portions, self.portion = 1.0, read(makes["total"])
        elif step := STEP.match(line):
            self.method = True
            self.steps.append(step["step"])
        elif self.method:
            self.steps.append(BULLET.sub("", line, count=1))
        elif group := GROUP.match(line):
            self.group = group[1].strip()
        else:
            self.ingredients.append(replace(ingredient(BULLET.sub("", line)), group=self.group))


def ingredient(line):
    """One ingredient as a cook writes it.

    Parameters
    ----------
    line : str
        Such as "1.5 kg celeriac; yield 68 %; $3.20 per kg; net of 2.5 kg; contains celery".

    Returns
    -------
    Ingredient

    Raises
    ------
    Unreadable

    Examples
    --------
    >>> celeriac = ingredient("1.5 kg celeriac; yield 68 %; $3.20 per kg")
    >>> print(celeriac.name, say(celeriac.to_buy, 3), say(celeriac.cost))
    celeriac 2.21 kg $7.06
    """
    what, *parts = [part.strip() for part in line.split(";")]
    amount, name = _amount_and_name(what)
    said = {"yield_": ALL_OF_IT, "price": None, "price_for": None, "pack": None, "allergens": None}
    for part in filter(None, parts):
        for key, value in _said(part).items():
            said[key] = value
    if said["price"] is not None and said["price_for"] is None:
        said["price_for"] = said["pack"]
    return Ingredient(name, amount, **said)


def _amount_and_name(what):
    """The longest beginning that is an amount, and the name behind it."""
    if to_taste := TO_TASTE.match(what):
        return None, (to_taste[1] or to_taste[2]).strip()
    if TWO_AMOUNTS.search(what):
        raise Unreadable("two amounts stand here: keep one of them.")
    words = what.split()
    for count in range(min(MOST_WORDS, len(words) - 1), 0, -1):
        try:
            amount = read(" ".join(words[:count]))
        except KitchenError:
            continue
        name = re.sub(r"^of\s+", "", " ".join(words[count:]))
        if NAME.match(name):
            return amount, name
    first = words[0].rstrip(",;:") if words else ""
    if first and not any(letter.isdigit() for letter in first):
        raise Unreadable(
            f"how much of it? Type an amount in front, such as “200 g {first}”, or “to taste” "
            "behind it. Is it a step? Type “Method” on a line above the steps."
        )
    raise Unreadable("type an amount and a name, such as “200 g butter”.")


def _said(part):
    """What one part behind a semicolon says."""
    if found := YIELD.match(part):
        return {"yield_": read(found["yield"])}
    if found := CONTAINS.match(part):
        names = re.split(r"\s*,\s*|\s+and\s+", found["allergens"].strip().rstrip("."))
        nothing = [name.casefold() for name in names] in (["nothing"], ["none"])
        return {"allergens": () if nothing else tuple(filter(None, names))}
    if found := PACK.match(part):
        pack = {"pack": read(found["pack"])}
        return pack | ({"price": read(found["price"]), "price_for": pack["pack"]}
                       if found["price"] else {})  # fmt: skip
    if found := PRICE.match(part):
        return {"price": read(found["money"]), "price_for": _one(found["per"], part)}
    raise Unreadable(
        f"“{part}” says nothing that is known here. Known are “yield 68 %”, “$3.20 per kg”, "
        "“net of 2.5 kg” and “contains celery”."
    )


def _one(per, part):
    """What a price is for: one of a measure, one piece, or None where nothing is said."""
    if per is None:
        return None
    if per.strip().lower() in ("", "piece", "each", "one"):
        return Q_(1, "count") if re.search(r"each|piece|one|\ba\b", part) else None
    return read(per if per.strip()[0].isdigit() else f"1 {per}")


def recipe_text(recipe):
    """A recipe as text that `read_recipe` reads back.

    Parameters
    ----------
    recipe : Recipe

    Returns
    -------
    str
    """
    portion = f" portions of {say(recipe.portion, 6)}" if recipe.portion is not None else ""
    lines = [recipe.title, f"makes {figures(recipe.portions, 6)}{portion or ' portions'}", ""]
    group = ""
    for each in recipe.ingredients:
        if each.group != group:
            group = each.group
            lines.append(f"{group}:")
        lines.append(_line(each))
    lines += ["", *(f"{place}. {step}" for place, step in enumerate(recipe.steps, start=1))]
    return "\n".join(lines).rstrip() + "\n"


def _line(each):
    parts = [
        f"{each.name} to taste" if each.amount is None else f"{say(each.amount, 6)} {each.name}"
    ]
    if each.yield_ != ALL_OF_IT:
        parts.append(f"yield {say(each.yield_, 6)}")
    if each.price is not None:
        per = "each" if str(each.price_for.units) == "count" else f"per {say(each.price_for, 6)}"
        parts.append(f"{say(each.price)} {re.sub(r'^per 1 ', 'per ', per)}")
    if each.pack is not None:
        parts.append(f"pack of {say(each.pack, 6)}")
    if each.allergens is not None:
        parts.append(f"contains {', '.join(each.allergens) or 'nothing'}")
    return "; ".join(parts)
