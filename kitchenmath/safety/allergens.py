"""What a plate holds that can hurt a guest: worked out from its items, never typed.

Each item of the trade carries its own in data/allergens.csv; data/allergen_lists.csv says under
which name a country's list has it. A label decides: suppliers change what is in a pack.
"""

from dataclasses import dataclass

from kitchenmath.data.tables import table
from kitchenmath.errors import UnknownName
from kitchenmath.units.door import instance, one_of

LISTS = {"EU and UK": "eu_and_uk", "US": "us"}


@dataclass(frozen=True)
class PlateAllergens:
    """What a plate holds, by the names of one list.

    Attributes
    ----------
    holds : dict of str to tuple of str
        Each allergen, and the items that bring it.
    read_the_label_for : dict of str to tuple of str
        What an item of that kind often holds: only its own label tells.
    """

    holds: dict
    read_the_label_for: dict

    def __str__(self):
        words = f"Holds {_spoken(self.holds)}." if self.holds else "Holds nothing of the list."
        if self.read_the_label_for:
            words += f" Read the label for {_spoken(self.read_the_label_for)}."
        return words


def allergen_names(country="EU and UK"):
    """The names on a list of allergens that must be told: 14 in the EU and the UK, 9 in the US.

    Parameters
    ----------
    country : str
        "EU and UK" or "US".

    Returns
    -------
    tuple of str

    Raises
    ------
    UnknownName

    Examples
    --------
    >>> len(allergen_names()), len(allergen_names("US"))
    (14, 9)

    References
    ----------
    Regulation (EU) No 1169/2011, Annex II, which the UK keeps; FALCPA 2004 and FASTER Act 2021.
    """
    column = LISTS[one_of(country, LISTS, "country")]
    return tuple(dict.fromkeys(row[column] for row in table("allergen_lists.csv") if row[column]))


def plate_allergens(items, country="EU and UK"):
    """What a plate, a dish or an order list holds, worked out from its items.

    Likely confusion: an item that holds none may still have touched one. This knows what an item
    is made of, and nothing of boards, fryers and flour in the air.

    Parameters
    ----------
    items : sequence of str
        As a cook writes them: "butter", "cider (pressed apple juice)".
    country : str
        As in `allergen_names`.

    Returns
    -------
    PlateAllergens

    Raises
    ------
    UnknownName
        For an item that the table does not know: nothing is taken for free of allergens unasked.

    Examples
    --------
    Lecithin is mostly made from soya. Celery is on the list of the EU, not on that of the US.

    >>> plate = ("celeriac", "butter", "lecithin powder")
    >>> print(plate_allergens(plate))
    Holds soya (lecithin powder), milk (butter), celery (celeriac).
    >>> print(plate_allergens(plate, "US"))
    Holds soybeans (lecithin powder), milk (butter).
    """
    names = allergen_names(country)
    instance(items, list | tuple | dict | set, "items", 'a list such as ["celeriac", "butter"]')
    rows = {item: _row_of(item) for item in items}

    def bringing(column):
        listed = {item: _listed(row[column], country) for item, row in rows.items()}
        by_name = {name: tuple(item for item in listed if name in listed[item]) for name in names}
        return {name: found for name, found in by_name.items() if found}

    return PlateAllergens(bringing("holds"), bringing("read_the_label_for"))


def _row_of(item):
    """The row whose name the item begins with; of several the longest."""
    words = str(item).casefold().replace("(", " ").replace(",", " ").split()
    rows = [row for row in table("allergens.csv") if _begins(words, row["item"])]
    if not rows:
        raise UnknownName(
            f"items: nobody has said what {str(item)!r} holds. Read its label, and add it to "
            "data/allergens.csv."
        )
    return max(rows, key=lambda row: len(row["item"]))


def _begins(words, name):
    begin = name.split()
    return words[: len(begin)] == begin


def _listed(substances, country):
    """What one list calls these substances; none of it stays silent but what it leaves out."""
    listed = {row["substance"]: row[LISTS[country]] for row in table("allergen_lists.csv")}
    return [listed[each] for each in substances.split(";") if each and listed[each]]


def _spoken(bringing):
    return ", ".join(f"{name} ({', '.join(items)})" for name, items in bringing.items())
