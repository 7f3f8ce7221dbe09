"""Making a brine of a stated strength.

"Strength" here is always salt over the finished brine, by weight, in percent: 50 g in 950 g of
water is 5 %. Table salt (NaCl) is meant; sea salt and coarse salts hold other things and water.
What a brine weighs, where it freezes, what a salometer says and where the salt goes in the end
lie in modules of their own and can be had from here. Curing salts (nitrite) are not dosed: see
`curing`.
"""

from kitchenmath.brine.curing import (
    CURING_CAUTION,
    above_curing_limit,
    curing_limit,
)
from kitchenmath.brine.density import (
    brine_density,
    brine_gravity,
    strength_from_density,
    strength_from_gravity,
    water_density,
)
from kitchenmath.brine.making import (
    BrineParts,
    brine_parts,
    salt_for_brine,
    salt_per_litre_of_brine,
    salt_per_litre_of_water,
    strength,
)
from kitchenmath.brine.points import (
    SALT_MOLAR_MASS,
    brine_boiling_point,
    freezing_point,
    molality,
    saturation,
    sodium_in,
    strength_from_molality,
)
from kitchenmath.brine.salometer_scale import (
    SALOMETER_SCALES,
    salometer,
    strength_from_salometer,
)
from kitchenmath.brine.salt_balance import (
    equilibrium_strength,
    salt_for_equilibrium,
    salt_to_strengthen,
    strength_after_reduction,
    water_phase_salt,
)
from kitchenmath.units.scales import (
    baume_from_gravity,
    gravity_from_baume,
)

__all__ = [
    "CURING_CAUTION",
    "SALOMETER_SCALES",
    "SALT_MOLAR_MASS",
    "BrineParts",
    "above_curing_limit",
    "baume_from_gravity",
    "brine_boiling_point",
    "brine_density",
    "brine_gravity",
    "brine_parts",
    "curing_limit",
    "equilibrium_strength",
    "freezing_point",
    "gravity_from_baume",
    "molality",
    "salometer",
    "salt_for_brine",
    "salt_for_equilibrium",
    "salt_per_litre_of_brine",
    "salt_per_litre_of_water",
    "salt_to_strengthen",
    "saturation",
    "sodium_in",
    "strength",
    "strength_after_reduction",
    "strength_from_density",
    "strength_from_gravity",
    "strength_from_molality",
    "strength_from_salometer",
    "water_density",
    "water_phase_salt",
]
