"""What it takes to warm water, to melt ice, and to boil a stock down."""

from kitchenmath.errors import OutOfRange
from kitchenmath.heat.boiling import boiling_point, latent_heat
from kitchenmath.heat.steam import latent_kJ_kg
from kitchenmath.units.door import amount, share
from kitchenmath.units.registry import Q_, Quantity, kind_of
from kitchenmath.units.saying import say

__all__ = [
    "energy_to_boil_away",
    "energy_to_heat",
    "energy_to_melt",
    "energy_to_reduce",
    "time_at_power",
]

WATER_KJ_KGK = 4.19  # specific heat of water and thin stock, 0-100 °C within 0.6 % (IAPWS-95)
MELTING_KJ_KG = 334  # latent heat of melting ice at 0 °C (OpenStax University Physics, table)


def energy_to_heat(weight, start, end, specific_heat=None, vessel=None):
    """The heat that warms a weight of water or stock, and its pan, from start to end.

    Parameters
    ----------
    weight : Quantity [weight]
    start, end : Quantity [temperature]
    specific_heat : Quantity [kJ/kg/K], optional
        4.19, water's, unless said otherwise; `Food.specific_heat` gives that of food.
    vessel : Quantity [kJ/K], optional
        What the pan itself takes for a degree.

    Returns
    -------
    Quantity [kJ]
        Below nought where it is cooled.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    3 kg of water from 20 to 100 °C: 3 x 4.2 x 80 = 1008 kJ.

    >>> print(say(energy_to_heat(Q_(3, "kg"), Q_(20, "degC"), Q_(100, "degC"),
    ...                          specific_heat=Q_(4.2, "kJ/kg/K"))))
    1008 kJ
    """
    specific_heat = Q_(WATER_KJ_KGK, "kJ/kg/K") if specific_heat is None else specific_heat
    weight_kg = amount(weight, "kg", "weight", above=0)
    held_kJ_K = weight_kg * amount(specific_heat, "kJ/kg/K", "specific_heat", above=0)
    if vessel is not None:
        held_kJ_K += amount(vessel, "kJ/K", "vessel", least=0)
    return Q_(held_kJ_K * (amount(end, "degC", "end") - amount(start, "degC", "start")), "kJ")


def energy_to_melt(weight, latent_heat=None):
    """The heat that melts a weight of ice at 0 °C.

    Parameters
    ----------
    weight : Quantity [weight]
    latent_heat : Quantity [kJ/kg], optional
        334 unless said otherwise.

    Returns
    -------
    Quantity [kJ]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    >>> print(say(energy_to_melt(Q_(500, "g"))))
    167 kJ
    """
    latent_heat = Q_(MELTING_KJ_KG, "kJ/kg") if latent_heat is None else latent_heat
    weight_kg = amount(weight, "kg", "weight", above=0)
    return Q_(weight_kg * amount(latent_heat, "kJ/kg", "latent_heat", above=0), "kJ")


def energy_to_boil_away(weight, latent_heat=None):
    """The heat that turns a weight of boiling water into steam.

    Parameters
    ----------
    weight : Quantity [weight]
        What is to leave the pan, not what is in it.
    latent_heat : Quantity [kJ/kg], optional
        2256.4 at the boil at sea level, unless said otherwise.

    Returns
    -------
    Quantity [kJ]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    Half a kilo: 0.5 x 2256 = 1128 kJ.

    >>> print(say(energy_to_boil_away(Q_(500, "g"))))
    1128 kJ
    """
    latent_heat = Q_(latent_kJ_kg(100.0), "kJ/kg") if latent_heat is None else latent_heat
    weight_kg = amount(weight, "kg", "weight", above=0)
    return Q_(weight_kg * amount(latent_heat, "kJ/kg", "latent_heat", above=0), "kJ")


def energy_to_reduce(weight, left, start=None, altitude=None, specific_heat=None):
    """The heat that brings a stock to the boil and reduces it to what shall be left.

    Parameters
    ----------
    weight : Quantity [weight]
        Of the stock as it is.
    left : Quantity [weight, or percent of it]
        What remains in the pan.
    start : Quantity [temperature], optional
        Already at the boil when left out.
    altitude : Quantity [length], optional
        Sea level when left out.
    specific_heat : Quantity [kJ/kg/K], optional
        4.19, water's, unless said otherwise.

    Returns
    -------
    Quantity [kJ]
        What gets into the stock. A pan without a lid loses as much again to the room: give
        `time_at_power` the share that gets in.

    Raises
    ------
    WrongKind
    OutOfRange
        When more is to be left than there is.

    Examples
    --------
    A kilo at the boil down to half: 0.5 x 2256 = 1128 kJ, at 1.5 kW 12.5 min.

    >>> energy = energy_to_reduce(Q_(1, "kg"), left=Q_(50, "percent"))
    >>> print(say(energy), "in", say(time_at_power(energy, Q_(1.5, "kW")), 3))
    1128 kJ in 12.5 min
    """
    weight_kg = amount(weight, "kg", "weight", above=0)
    if isinstance(left, Quantity) and kind_of(left) == "percent":
        left = weight * share(left, "left")
    left_kg = amount(left, "kg", "left", above=0)
    if left_kg >= weight_kg:
        raise OutOfRange(f"left: {say(left)} is not less than the {say(weight)} there is.")
    boil = boiling_point(altitude=altitude)
    away = Q_(weight_kg - left_kg, "kg")
    energy = energy_to_boil_away(away, latent_heat=latent_heat(boil))
    if start is not None:
        energy = energy + energy_to_heat(weight, start, boil, specific_heat=specific_heat)
    return energy


def time_at_power(energy, power, efficiency=None):
    """How long a hob takes to deliver a heat: energy / (power x share that gets in).

    Parameters
    ----------
    energy : Quantity [energy]
    power : Quantity [W]
    efficiency : Quantity [percent], optional
        The share of the hob's power that reaches the food; 100 % when left out. Gas flames give
        30-45 %, electric plates and induction 70-90 % (common practice).

    Returns
    -------
    Quantity [min]

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    >>> print(say(time_at_power(Q_(1008, "kJ"), Q_(3, "kW"))))
    5.6 min
    """
    got_in = 1.0 if efficiency is None else share(efficiency, "efficiency")
    energy_kJ = amount(energy, "kJ", "energy", least=0)
    return Q_(energy_kJ / (amount(power, "kW", "power", above=0) * got_in) / 60, "min")
