"""The allergens of a whole menu, a row a dish: worked out from what each dish is made of."""

from kitchenmath.data.tables import table
from kitchenmath.errors import WrongKind
from kitchenmath.safety.allergens import allergen_names, plate_allergens


def menu_dishes():
    """The invented dishes of Brackwater House, each with its items.

    Returns
    -------
    dict of str to tuple of str

    Examples
    --------
    >>> menu_dishes()["cider foam"]
    ('cider', 'lecithin')
    """
    return {row["dish"]: tuple(row["items"].split(";")) for row in table("dishes.csv")}


def allergen_matrix(dishes, country="EU and UK"):
    """Which dish holds which allergen of a country's list.

    Likely confusion: an empty field says what the dish is made of, and not what else touched it.

    Parameters
    ----------
    dishes : dict of str to sequence of str
        The items of each dish, as `plate_allergens` takes them.
    country : str
        "EU and UK" or "US".

    Returns
    -------
    dict of str to dict of str to str
        By dish and by allergen: "holds", "label" (an item of that kind often does: read its
        label) or "". Allergens that no dish meets are left out.

    Raises
    ------
    UnknownName
    WrongKind

    Examples
    --------
    >>> allergen_matrix({"sauce": ("butter", "cider"), "foam": ("lecithin",)}, "US")
    {'sauce': {'soybeans': '', 'milk': 'holds'}, 'foam': {'soybeans': 'holds', 'milk': ''}}
    """
    names = allergen_names(country)
    if not isinstance(dishes, dict) or not dishes:
        raise WrongKind('dishes: needs a menu such as {"cider foam": ["cider", "lecithin"]}, and '
                        f"{dishes!r} came.")  # fmt: skip
    plates = {dish: plate_allergens(items, country) for dish, items in dishes.items()}
    met = [
        name
        for name in names
        if any(name in plate.holds or name in plate.read_the_label_for for plate in plates.values())
    ]
    return {dish: {name: _field(plate, name) for name in met} for dish, plate in plates.items()}


def _field(plate, name):
    if name in plate.holds:
        return "holds"
    return "label" if name in plate.read_the_label_for else ""
