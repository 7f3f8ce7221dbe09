"""Limits quoted from food codes, what a log is worth, and whether a pot cooled in time.

Quoted limits decide here. A model's time is an estimate for learning, never a limit, and no
function declares food safe: every verdict says so and defers to the local food code. The parts
lie in modules of their own and can be had from here.
"""

from kitchenmath.safety.allergens import PlateAllergens, allergen_names, plate_allergens
from kitchenmath.safety.cooling import CoolingStage, CoolingVerdict, cooling_rules, cooling_verdict
from kitchenmath.safety.day_record import (
    ReadingVerdict,
    control_points,
    point_limit,
    reading_verdict,
    what_is_read,
)
from kitchenmath.safety.death_times import (
    DeathTimeLine,
    death_time_line,
    log_target,
    published_d_values,
)
from kitchenmath.safety.general_method import (
    d_value_at,
    equivalent_time,
    lethal_rate,
    lethality,
    log_reduction,
)
from kitchenmath.safety.hold_times import (
    roast_hold_time,
    roast_oven_limit,
    roast_tables_with,
    uk_equivalent,
)
from kitchenmath.safety.logs import read_log, time_at_or_above
from kitchenmath.safety.menu_matrix import allergen_matrix, menu_dishes
from kitchenmath.safety.quoted import Limit, limit, limits, not_covered
from kitchenmath.safety.verdicts import (
    CAUTION,
    Verdict,
    core_verdict,
    holding_verdict,
    parasite_verdict,
)

__all__ = [
    "CAUTION",
    "CoolingStage",
    "CoolingVerdict",
    "DeathTimeLine",
    "Limit",
    "PlateAllergens",
    "ReadingVerdict",
    "Verdict",
    "allergen_matrix",
    "allergen_names",
    "control_points",
    "cooling_rules",
    "cooling_verdict",
    "core_verdict",
    "d_value_at",
    "death_time_line",
    "equivalent_time",
    "holding_verdict",
    "lethal_rate",
    "lethality",
    "limit",
    "limits",
    "log_reduction",
    "log_target",
    "menu_dishes",
    "not_covered",
    "parasite_verdict",
    "plate_allergens",
    "point_limit",
    "published_d_values",
    "read_log",
    "reading_verdict",
    "roast_hold_time",
    "roast_oven_limit",
    "roast_tables_with",
    "time_at_or_above",
    "uk_equivalent",
    "what_is_read",
]
