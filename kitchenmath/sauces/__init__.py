"""Foams, emulsions, thickening, gels, syrups and reduction: the numbers behind a sauce.

This page is the door; the work is done in modules of one idea each. Where hands meet a risk the
module says so: hot sugar in `sugar`, gas under pressure in `foams`, allergens in `thickening`.
"""

from kitchenmath.sauces.emulsions import (
    Vinaigrette,
    oil_volume_fraction,
    oil_weight_fraction,
    packing_marks,
    packing_of,
    vinaigrette,
)
from kitchenmath.sauces.foam_life import drainage_half_life, volume_half_life
from kitchenmath.sauces.foams import (
    foam_volume,
    foam_weight,
    gas_fraction,
    liquid_for_foam,
    mix_density,
    overrun,
    overrun_from_volumes,
)
from kitchenmath.sauces.gels import (
    GELATIN_RULES,
    GelPoints,
    Leaf,
    gel_points,
    gel_strength,
    gelatin_for,
    leaf_gelatins,
)
from kitchenmath.sauces.juices import JuiceFoam, brix_acid_ratio, citric_acid, juice_foam_base
from kitchenmath.sauces.reduction import dilute_to, reduce_to
from kitchenmath.sauces.sugar import (
    StageBand,
    altitude_drop,
    brix_from_boiling_point,
    sugar_stage,
    sugar_stages,
    syrup_boiling_point,
)
from kitchenmath.sauces.syrups import (
    GRAVITY_FORMULAS,
    brix,
    brix_from_gravity,
    sugar_for_syrup,
    syrup_density,
    syrup_gravity,
)
from kitchenmath.sauces.thickening import (
    Dose,
    Roux,
    Slurry,
    dose,
    per_litre,
    roux_for,
    slurry_for,
    usual_dose,
)
from kitchenmath.sauces.viscosity import syrup_viscosity
from kitchenmath.units.scales import baume_from_gravity, gravity_from_baume

__all__ = [
    "GELATIN_RULES",
    "GRAVITY_FORMULAS",
    "Dose",
    "GelPoints",
    "JuiceFoam",
    "Leaf",
    "Roux",
    "Slurry",
    "StageBand",
    "Vinaigrette",
    "altitude_drop",
    "baume_from_gravity",
    "brix",
    "brix_acid_ratio",
    "brix_from_boiling_point",
    "brix_from_gravity",
    "citric_acid",
    "dilute_to",
    "dose",
    "drainage_half_life",
    "foam_volume",
    "foam_weight",
    "gas_fraction",
    "gel_points",
    "gel_strength",
    "gelatin_for",
    "gravity_from_baume",
    "juice_foam_base",
    "leaf_gelatins",
    "liquid_for_foam",
    "mix_density",
    "oil_volume_fraction",
    "oil_weight_fraction",
    "overrun",
    "overrun_from_volumes",
    "packing_marks",
    "packing_of",
    "per_litre",
    "reduce_to",
    "roux_for",
    "slurry_for",
    "sugar_for_syrup",
    "sugar_stage",
    "sugar_stages",
    "syrup_boiling_point",
    "syrup_density",
    "syrup_gravity",
    "syrup_viscosity",
    "usual_dose",
    "vinaigrette",
    "volume_half_life",
]
