"""Baker's percentages, parts, scaling, pans, and the water that brings a dough to temperature."""

from kitchenmath.ratios.dough_water import friction_factor, ice_for, water_temperature
from kitchenmath.ratios.formula import Formula
from kitchenmath.ratios.pans import Pan, pan_factor
from kitchenmath.ratios.scaling import Scaled, conversion_factor, scale, split

__all__ = [
    "Formula",
    "Pan",
    "Scaled",
    "conversion_factor",
    "friction_factor",
    "ice_for",
    "pan_factor",
    "scale",
    "split",
    "water_temperature",
]
