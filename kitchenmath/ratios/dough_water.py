"""How warm the water must be for a dough of the wanted temperature, and how much of it is ice.

Yeast lives by temperature: a dough two degrees too warm is ready long before the oven is.
"""

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity, kind_of, registry
from kitchenmath.units.saying import say

# Yeast bears 45 °C for the minutes that flour takes to cool the water; common practice.
HOTTEST = Q_(45, "degC")
COLDEST_C, WARMEST_C = -30, 50  # frozen flour to a hot bakehouse; beyond it a °F was meant
WATER_KJ_PER_KG_C = 4.19  # 0 to 30 °C within 0.5 %, IAPWS
ICE_KJ_PER_KG_C = 2.0  # Choi and Okos (1986): 2.06 at 0 °C, 1.95 at -18 °C
MELTING_KJ_PER_KG = 333.5  # at 0 °C; IAPWS 333.4, school tables 333 to 334


def water_temperature(target, flour, room, friction, preferment=None, hottest=HOTTEST):
    """The water temperature for a dough of the wanted temperature: the baker's sum.

    Friction is a difference: how much the mixer adds to the sum. 8 °F of friction are 4.4 °C,
    and never -13 °C, which is what 8 °F is as a temperature.

    Parameters
    ----------
    target : Quantity [temperature]
        Of the mixed dough.
    flour, room : Quantity [temperature]
    friction : Quantity [temperature difference]
        Of your mixer, this dough and this time, from `friction_factor`. It is counted on the
        sum: 9 °C of friction warm a dough of three temperatures by 9 / 3 = 3 °C.
    preferment : Quantity [temperature], optional
        Of a sponge, poolish or sourdough. Then four temperatures count, and a friction that was
        found with four.
    hottest : Quantity [temperature], optional
        The hottest water to accept. Raise it for a dough without yeast.

    Returns
    -------
    Quantity [temperature]
        In the unit of `target`.

    Raises
    ------
    WrongKind
        When friction comes as a temperature.
    OutOfRange
        When water would have to be below 0 °C or above `hottest`.

    Examples
    --------
    75 °F wanted, flour and room 65 °F, friction 8 °F: 3 · 75 - (65 + 65 + 8) = 87 °F.

    >>> print(say(water_temperature(Q_(75, "degF"), flour=Q_(65, "degF"), room=Q_(65, "degF"),
    ...                             friction=Q_(8, "delta_degF"))))
    87 °F

    Notes
    -----
    n · target - (flour + room + friction [+ preferment]), n counting water, flour, room and
    preferment. The rule of thumb weighs all alike, whatever their amounts, so it holds for the
    kind of dough that the friction was found with. Water colder than the tap: see `ice_for`.

    References
    ----------
    A baker's page on the three-factor method of a baking school (host withheld); 45 °C is
    common practice.
    """
    friction_C = _friction_c(friction)
    others_C = _celsius(flour=flour, room=room, preferment=preferment)
    target_C = amount(target, "degC", "target", least=COLDEST_C, most=WARMEST_C)
    water_C = (len(others_C) + 1) * target_C - sum(others_C) - friction_C
    hottest_C = amount(hottest, "degC", "hottest", above=0, most=100)
    if not 0 <= water_C <= hottest_C:
        raise OutOfRange(_impossible(Q_(water_C, "degC").to(target.units), water_C < 0, hottest))
    return Q_(water_C, "degC").to(target.units)


def _friction_c(friction):
    """Friction as a difference in °C; a temperature is refused with what to type instead."""
    if isinstance(friction, Quantity) and kind_of(friction) == "temperature":
        raise WrongKind(
            f"friction: needs a difference, how much the mixer adds, and the temperature "
            f"{say(friction)} came; type it as "
            f'Q_({friction.magnitude:g}, "{_difference_unit(friction)}").'
        )
    return amount(friction, "delta_degC", "friction", least=0, most=60)


def _difference_unit(temperature):
    """The unit of a difference in the degrees of a temperature."""
    return "delta_degF" if temperature.units == registry.degF else "delta_degC"


def _celsius(**temperatures):
    """The temperatures that are given, in °C."""
    return [
        amount(each, "degC", name, least=COLDEST_C, most=WARMEST_C)
        for name, each in temperatures.items()
        if each is not None
    ]


def _impossible(water, too_cold, hottest):
    """What to do when no water is as cold or as hot as the sum asks."""
    if too_cold:
        return (
            f"target: the sum asks for water of {say(water)}, and there is none below 0 °C; "
            "chill the flour, mix for less time, or accept a warmer dough."
        )
    return (
        f"target: the sum asks for water of {say(water)}, and yeast is sure of {say(hottest)} only "
        "(`hottest`); warm the flour or the bowl, or let the dough come up slowly."
    )


def friction_factor(dough, water, flour, room, preferment=None):
    """What a mixer adds, from one batch whose temperatures were measured.

    Parameters
    ----------
    dough : Quantity [temperature]
        After mixing.
    water, flour, room : Quantity [temperature]
        Before mixing.
    preferment : Quantity [temperature], optional

    Returns
    -------
    Quantity [temperature difference]
        In degrees of the unit of `dough`. For this mixer, dough and mixing time.

    Raises
    ------
    WrongKind
    OutOfRange
        When the dough came out colder than what went in: a thermometer is wrong.

    Examples
    --------
    A dough of 26 °C from water 24, flour 22, room 23 °C: 3 · 26 - 69 = 9 °C.

    >>> print(say(friction_factor(dough=Q_(26, "degC"), water=Q_(24, "degC"),
    ...                           flour=Q_(22, "degC"), room=Q_(23, "degC"))))
    9 °C
    """
    others_C = _celsius(water=water, flour=flour, room=room, preferment=preferment)
    dough_C = amount(dough, "degC", "dough", least=COLDEST_C, most=WARMEST_C)
    friction_C = len(others_C) * dough_C - sum(others_C)
    if friction_C < -1e-9:
        raise OutOfRange(
            f"dough: {say(dough)} is colder than the mean of what went in; measure once more."
        )
    return Q_(friction_C, "delta_degC").to(_difference_unit(dough))


def ice_for(water, wanted, tap, ice=None):
    """How much of the water to weigh as ice, so that it is as cold as wanted when all has melted.

    Ice counts as water: it is part of the recipe's weight, not an extra. Crush it; cubes
    outlast the mixing.

    Parameters
    ----------
    water : Quantity [weight]
        All the water of the recipe.
    wanted : Quantity [temperature], at least 0 °C
    tap : Quantity [temperature]
    ice : Quantity [temperature], optional
        Of the ice, at most 0 °C; -18 °C straight from the freezer, 0 °C (taken without it) once
        it is wet.

    Returns
    -------
    dict of str to Quantity
        "ice" and "water", in the unit of `water`.

    Raises
    ------
    WrongKind
    OutOfRange
        When the tap is already colder than wanted.

    Examples
    --------
    1 kg from 20 to 5 °C: 4.19 · 15 / (333.5 + 4.19 · 20) = 62.9 / 417.3 = 0.151 kg.

    >>> parts = ice_for(Q_(1, "kg"), wanted=Q_(5, "degC"), tap=Q_(20, "degC"))
    >>> print(say(parts["ice"].to("g"), 3), say(parts["water"].to("g"), 3))
    151 g 849 g

    Notes
    -----
    ice · (2.0 · |ice temperature| + 333.5 + 4.19 · wanted) = tap water · 4.19 · (tap - wanted),
    in kJ, kg and °C. What the bowl and the air give is left out, so the water comes out a little
    warmer. The bakers' rule water · (tap - wanted)/(tap + 112) in °F is the same sum within
    0.5 %.

    References
    ----------
    Latent heat and specific heat of water: IAPWS; of ice: Choi and Okos (1986). The bakers'
    rule: common practice.
    """
    amount(water, "g", "water", above=0)
    wanted_C = amount(wanted, "degC", "wanted", least=0, most=WARMEST_C)
    tap_C = amount(tap, "degC", "tap", least=0, most=WARMEST_C)
    ice_C = 0.0 if ice is None else amount(ice, "degC", "ice", least=COLDEST_C, most=0)
    if wanted_C > tap_C:
        raise OutOfRange(f"wanted: {say(wanted)} is warmer than the tap's {say(tap)}: warm it.")
    warms_kj = ICE_KJ_PER_KG_C * -ice_C + MELTING_KJ_PER_KG + WATER_KJ_PER_KG_C * tap_C
    ice_share = WATER_KJ_PER_KG_C * (tap_C - wanted_C) / warms_kj
    return {"ice": water * ice_share, "water": water * (1 - ice_share)}
