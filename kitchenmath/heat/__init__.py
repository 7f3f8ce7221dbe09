"""How long until it is done, and what the core does afterwards.

Pieces and their exact heating, stages with a wet or dry surface and the carry-over, boiling and
reducing, Newton's law, and what a probe's log tells. Each lies in a module of its own and can be
had from here. Every time and temperature is a model's estimate; a probe decides, and for safety
the food code's limits do, which `kitchenmath.safety` quotes.
"""

from kitchenmath.heat.boiling import air_pressure, boiling_point, latent_heat
from kitchenmath.heat.coefficients import CoefficientBand, surface_coefficient, surface_situations
from kitchenmath.heat.conduction import series_terms, theta
from kitchenmath.heat.cooked import Cooked
from kitchenmath.heat.newton import NewtonCooling, newton_cooling
from kitchenmath.heat.pieces import Piece, biot, fourier
from kitchenmath.heat.probe import (
    FittedCoefficient,
    fit_surface_coefficient,
    surface_coefficient_from_reading,
)
from kitchenmath.heat.probe_check import ProbeCheck, check_probe
from kitchenmath.heat.reducing import (
    energy_to_boil_away,
    energy_to_heat,
    energy_to_melt,
    energy_to_reduce,
    time_at_power,
)
from kitchenmath.heat.stages import Stage, cook
from kitchenmath.heat.timing import heat_taken_up, temperature_after, time_to_core
from kitchenmath.heat.wet import WetSurface, wet_bulb

__all__ = [
    "CoefficientBand",
    "Cooked",
    "FittedCoefficient",
    "NewtonCooling",
    "Piece",
    "ProbeCheck",
    "Stage",
    "WetSurface",
    "air_pressure",
    "biot",
    "boiling_point",
    "check_probe",
    "cook",
    "energy_to_boil_away",
    "energy_to_heat",
    "energy_to_melt",
    "energy_to_reduce",
    "fit_surface_coefficient",
    "fourier",
    "heat_taken_up",
    "latent_heat",
    "newton_cooling",
    "series_terms",
    "surface_coefficient",
    "surface_coefficient_from_reading",
    "surface_situations",
    "temperature_after",
    "theta",
    "time_at_power",
    "time_to_core",
    "wet_bulb",
]
