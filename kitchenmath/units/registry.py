"""The one registry of kitchen units, made from units.txt. Nobody else makes one."""

from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from pathlib import Path

import numpy as np
import pint

from kitchenmath.errors import UnknownName, WrongKind

# "°C" times a number must mean the point, so pint may go through kelvin by itself.
registry = pint.UnitRegistry(
    Path(__file__).with_name("units.txt"), autoconvert_offset_to_baseunit=True
)
Quantity = registry.Quantity

# What a cook calls each kind of quantity, an example to type, and a unit of that kind.
KINDS = {
    "weight": ("g", "4.2 kg"),
    "volume": ("mL", "1.5 L"),
    "length": ("mm", "3 mm"),
    "area": ("cm**2", "25 cm²"),
    "time": ("min", "2 h 15 min"),
    "temperature": ("degC", "63 °C"),
    "temperature difference": ("delta_degC", "10 °C"),
    "percent": ("percent", "35 %"),
    "count": ("count", "12"),
    "money": ("dollar", "$3.48"),
    "money per weight": ("dollar/kg", "$3.48 per kg"),
    "density": ("g/mL", "1.03 g/mL"),
    "energy": ("kJ", "250 kJ"),
    "power": ("W", "1500 W"),
    "pressure": ("kPa", "101.3 kPa"),
    "surface coefficient": ("W/m**2/K", "20 W/m²K"),
    "conductivity": ("W/m/K", "0.5 W/mK"),
    "diffusivity": ("m**2/s", "1.4e-7 m²/s"),
    "specific heat": ("kJ/kg/K", "3.6 kJ/kgK"),
}


def Q_(number, unit):
    """A quantity: a number (or a list of them) with a kitchen unit.

    Parameters
    ----------
    number : float or sequence of float
    unit : str
        A unit of `units.txt`, such as "g", "mL", "degC", "percent", "us_cup", "dollar/kg".
        Measures that differ between countries carry the country: "us_cup", "au_tablespoon".

    Returns
    -------
    Quantity

    Raises
    ------
    UnknownName
        When `unit` is no unit of the kit.
    WrongKind
        When `number` is text or something else that is no number; `read` reads text.

    Examples
    --------
    A US cup is 8 of 128 parts of 231 cubic inches, 236.6 mL.

    >>> round(Q_(1, "us_cup").to("mL").magnitude, 1)
    236.6
    """
    if isinstance(number, Decimal | Fraction):
        number = float(number)
    if isinstance(number, Quantity) or np.asarray(number).dtype.kind not in "iuf":
        raise WrongKind(
            f"number: needs a number, and {number!r} came; read({number!r}) reads text."
        )
    if not isinstance(unit, str | registry.Unit) or str(unit).strip().isnumeric():
        raise WrongKind(f'unit: needs a unit such as "kg", and {unit!r} came.')
    try:
        return Quantity(number, _unit(unit) if isinstance(unit, str) else unit)
    except (pint.UndefinedUnitError, pint.DefinitionSyntaxError, AttributeError):
        hint = "name the country, as in us_cup" if f"us_{unit}" in registry else "see units.txt"
        raise UnknownName(f"unit: there is no unit {unit!r} here; {hint}.") from None


@lru_cache(maxsize=256)
def _unit(text):
    """A unit by its name, parsed once: a set makes some two hundred quantities of ten units."""
    return registry.Unit(text)


@lru_cache(maxsize=256)
def unit_name(units):
    """A unit's name as pint writes it, which takes it a while: "dollar / kilogram"."""
    return str(units)


def kind_of(quantity):
    """The word a cook has for this kind of quantity, such as "weight"; else its dimensions."""
    return _kind_of(quantity.units)


@lru_cache(maxsize=256)
def _kind_of(units):
    quantity = Quantity(1, units)
    if quantity.units == registry.percent:
        return "percent"
    if quantity.check("[temperature]"):
        return "temperature difference" if "delta_" in str(quantity.units) else "temperature"
    if any(quantity.check(f"[{money}]") for money in ("sterling", "euros")):
        return "money"
    if any(quantity.check(f"[{money}]/[mass]") for money in ("sterling", "euros")):
        return "money per weight"
    for kind, (example_unit, _) in KINDS.items():
        if quantity.check(registry.get_dimensionality(example_unit)):
            return "number" if kind in ("percent", "count") else kind
    return str(quantity.dimensionality)


def same_kind(quantity, unit):
    """Whether the quantity can be counted in `unit`; a temperature is no temperature difference."""
    if quantity.dimensionality != registry.get_dimensionality(unit):
        return False
    is_difference = "delta_" in unit_name(quantity.units)
    return not quantity.check("[temperature]") or is_difference == unit.startswith("delta_")
