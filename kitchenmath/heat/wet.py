"""The moist surface: evaporation holds it far below the air that heats it."""

from dataclasses import dataclass

import numpy as np

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.heat.boiling import boiling_point
from kitchenmath.heat.pieces import celsius
from kitchenmath.heat.steam import (
    MASS_RATIO,
    SEA_LEVEL_PA,
    boiling_C,
    humid_heat_kJ_kgK,
    latent_kJ_kg,
    moisture,
    moisture_from_wet_bulb,
    settled_C,
    vapour_pressure_Pa,
)
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import figures, say

__all__ = ["WetSurface", "wet_bulb"]


@dataclass(frozen=True)
class WetSurface:
    """A surface that stays wet, and how moist the air at it is. Give one of the first three.

    Easily confused: "humidity" here is the share of what the air could hold at its own
    temperature. Kitchen air of 50 % brought to 180 °C has 0.1 %. For an oven `steam` or a
    wet-bulb reading is the plainer way.

    Parameters
    ----------
    humidity : Quantity [percent], optional
        Relative humidity at the surroundings' temperature.
    steam : Quantity [percent], optional
        The share of steam in the oven's air, by volume. Kitchen air has 1-2 %; an oven with a
        roast in it and its vent shut has 20-50 % (common practice).
    wet_bulb : Quantity [temperature], optional
        What a thermometer in a wet sock shows in that air.
    radiant : Quantity [percent], optional
        The share of the surface coefficient that is radiation, nought when left out. Radiation
        heats but carries no steam away. Baking ovens: 75-80 % (Baik and others 1999).
    pressure : Quantity [pressure], optional
        The air's; at sea level when left out.

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    Heat by air goes with steam by air (Lewis, with a Lewis number of 1 for 0.87 in truth):
    inward flux = h (Ta - T) - (1 - radiant) h / c [w(T) - w] L(T), w in kilos of steam for a
    kilo of dry air and c its humid heat. Without radiation the surface settles at the wet-bulb
    temperature, with it above. That the surface dries, browns and then gets hotter is not in it.

    References
    ----------
    Bengtsson, Jakobsson and Dagerskog (1976), J. Food Sci. 41: a roast's surface follows the
    oven's wet bulb while wet. Baik and others (1999), J. Food Sci. 64:688.
    """

    humidity: Quantity = None
    steam: Quantity = None
    wet_bulb: Quantity = None
    radiant: Quantity = None
    pressure: Quantity = None

    def __post_init__(self):
        given = [
            name for name in ("humidity", "steam", "wet_bulb") if getattr(self, name) is not None
        ]
        if len(given) != 1:
            came = " and ".join(given) or "none of them"
            raise WrongKind(
                f'humidity: give one of humidity=Q_(40, "percent"), steam=Q_(30, "percent") or '
                f'wet_bulb=Q_(60, "degC"), and {came} came.'
            )
        if self.humidity is not None:
            amount(self.humidity, "percent", "humidity", least=0, most=100)
        if self.steam is not None:
            amount(self.steam, "percent", "steam", least=0, most=95)
        if self.wet_bulb is not None:
            celsius(self.wet_bulb, "wet_bulb")
        if self.radiant is not None:
            amount(self.radiant, "percent", "radiant", least=0, below=100)
        if self.pressure is not None:
            boiling_point(pressure=self.pressure)

    def moist_air(self, air_C):
        """The air's moisture [kg/kg] and pressure [Pa], looked at in air of this temperature.

        Raises
        ------
        OutOfRange
            For moisture that air of this temperature cannot have.
        """
        pressure_Pa = SEA_LEVEL_PA if self.pressure is None else amount(self.pressure, "Pa", "")
        if self.wet_bulb is not None:
            return _from_wet_bulb(air_C, celsius(self.wet_bulb, "wet_bulb"), pressure_Pa)
        if self.steam is not None:
            vapour_Pa = pressure_Pa * amount(self.steam, "percent", "steam") / 100
            limit_Pa = min(vapour_pressure_Pa(air_C), pressure_Pa)
            name = "steam"
        else:
            vapour_Pa = vapour_pressure_Pa(air_C) * amount(self.humidity, "percent", "") / 100
            limit_Pa = 0.95 * pressure_Pa
            name = "humidity"
        if vapour_Pa > limit_Pa:
            most = 100 * limit_Pa / (pressure_Pa if name == "steam" else vapour_pressure_Pa(air_C))
            raise OutOfRange(
                f"{name}: air of {figures(air_C)} °C holds at most {figures(most, 3)} %, and "
                f"{say(getattr(self, name))} came."
            )
        return moisture(vapour_Pa, pressure_Pa), pressure_Pa


def _from_wet_bulb(air_C, wet_bulb_C, pressure_Pa):
    """The air's moisture [kg/kg] and pressure [Pa] from a wet-bulb reading."""
    driest_C = settled_C(air_C, 0.0, pressure_Pa)
    highest_C = min(air_C, boiling_C(pressure_Pa) - 1)
    if not driest_C <= wet_bulb_C <= highest_C:
        raise OutOfRange(
            f"wet_bulb: in air of {figures(air_C)} °C it lies between {figures(driest_C, 3)} °C "
            f"(dry air) and {figures(highest_C, 3)} °C, and {figures(wet_bulb_C)} °C came."
        )
    return max(0.0, moisture_from_wet_bulb(air_C, wet_bulb_C, pressure_Pa)), pressure_Pa


class SurfaceLaw:
    """The heat that goes in through a surface, by its temperature: plain numbers, for stepping."""

    def __init__(self, air_C, coefficient_W_m2K, wet=None):
        self.air_C = air_C
        self.coefficient_W_m2K = coefficient_W_m2K
        self.wet = wet is not None
        if self.wet:
            self.moisture_kg_kg, self.pressure_Pa = wet.moist_air(air_C)
            radiant = 0.0 if wet.radiant is None else amount(wet.radiant, "percent", "") / 100
            self.by_air = 1 - radiant
            self.steaming = self.by_air * coefficient_W_m2K / humid_heat_kJ_kgK(self.moisture_kg_kg)
            self.highest_C = boiling_C(self.pressure_Pa) - 0.01

    def settled_C(self):
        """Where the surface settles in the end."""
        if not self.wet:
            return self.air_C
        return settled_C(self.air_C, self.moisture_kg_kg, self.pressure_Pa, self.by_air)

    def evaporation(self, surface_C):
        """The heat that evaporation takes [W/m2] and, within a fiftieth, its slope [W/m2/K]."""
        latent = latent_kJ_kg(surface_C)
        vapour_Pa = vapour_pressure_Pa(surface_C)
        air_Pa = self.pressure_Pa - vapour_Pa
        excess = MASS_RATIO * vapour_Pa / air_Pa - self.moisture_kg_kg
        # Clausius and Clapeyron: dp/dT = p L / (R T^2), R = 0.4615 kJ/kg/K; and L falls by about
        # 2.4 kJ/kg for each degree.
        steeper_Pa = vapour_Pa * latent / (0.4615 * (surface_C + 273.15) ** 2)
        more = MASS_RATIO * self.pressure_Pa * steeper_Pa / air_Pa**2
        return self.steaming * latent * excess, self.steaming * (latent * more - 2.4 * excess)

    def surface_C(self, inside_C, gain_K_m2_W, guess_C):
        """The surface temperature T with T = inside + gain x inward flux(T).

        The loss rises ever more steeply with T, so Newton's steps come down on the answer from
        above; from below a step may reach past boiling, and is cut short there.
        """
        gain = gain_K_m2_W
        opened = gain * self.coefficient_W_m2K
        if not self.wet:
            return (inside_C + opened * self.air_C) / (1 + opened)
        surface = min(guess_C, self.highest_C)
        for _ in range(60):
            loss, steeper = self.evaporation(surface)
            excess = surface - inside_C - opened * (self.air_C - surface) + gain * loss
            step = surface - excess / (1 + opened + gain * steeper)
            step = step if step < self.highest_C else (surface + self.highest_C) / 2
            if abs(step - surface) < 1e-7:
                break
            surface = step
        return step

    def surfaces_C(self, insides_C, gain_K_m2_W, guesses_C):
        """The same for many places at once, from guesses that are close (the last step's)."""
        opened = gain_K_m2_W * self.coefficient_W_m2K
        if not self.wet:
            return (insides_C + opened * self.air_C) / (1 + opened)
        surfaces = np.minimum(guesses_C, self.highest_C)
        for _ in range(3):
            loss, steeper = self.evaporation(surfaces)
            excess = surfaces - insides_C - opened * (self.air_C - surfaces) + gain_K_m2_W * loss
            steps = surfaces - excess / (1 + opened + gain_K_m2_W * steeper)
            surfaces = np.where(steps < self.highest_C, steps, (surfaces + self.highest_C) / 2)
        return surfaces

    def inward(self, surface_C):
        """The flux into the piece [W/m2] at a surface temperature."""
        loss = self.evaporation(surface_C)[0] if self.wet else 0.0
        return self.coefficient_W_m2K * (self.air_C - surface_C) - loss


def wet_bulb(air, humidity=None, steam=None, pressure=None):
    """What a thermometer in a wet sock shows in moving air: the lowest a wet surface can settle.

    Parameters
    ----------
    air : Quantity [temperature], 0 to 300 °C
    humidity : Quantity [percent], optional
        Relative humidity at that temperature.
    steam : Quantity [percent], optional
        The share of steam by volume, instead.
    pressure : Quantity [pressure], optional
        Sea level when left out.

    Returns
    -------
    Quantity [degC]

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    c (Ta - T) = L(T) [w(T) - w], solved for T; c is the humid heat of the air. The thermodynamic
    wet bulb within 0.15 K; a sock in still air reads higher.

    Examples
    --------
    An oven at 180 °C with nothing but kitchen air keeps a wet surface at 45 °C; with a third of
    steam at 75 °C.

    >>> print(say(wet_bulb(Q_(180, "degC"), steam=Q_(1, "percent")), 3),
    ...       say(wet_bulb(Q_(180, "degC"), steam=Q_(33, "percent")), 3))
    44.7 °C 74.8 °C

    References
    ----------
    ASHRAE *Handbook - Fundamentals*, psychrometrics.
    """
    air_C = amount(air, "degC", "air", least=0, most=300)
    surface = WetSurface(humidity=humidity, steam=steam, pressure=pressure)
    return Q_(settled_C(air_C, *surface.moist_air(air_C)), "degC")
