"""Named cuts, judging a tray of them, squaring off, and pieces out of a block.

The millimetres are a teaching convention: sources disagree, and each says its own beside it.
Knives: a sharp one, a board that does not slip, fingertips curled behind the knuckles, and
vegetables with a flat side down; follow the rules of the kitchen you stand in.
"""

from kitchenmath.cuts.dicing import (
    Pieces,
    cooking_time_factor,
    pieces,
    pieces_in,
    pieces_in_ball,
    surface_per_volume,
)
from kitchenmath.cuts.judging import Judgement, judge
from kitchenmath.cuts.named import (
    CUTS,
    Band,
    Cut,
    cut_named,
    published_bands,
    sizes_printed,
)
from kitchenmath.cuts.sampling import chance_to_pass, pieces_to_show
from kitchenmath.cuts.squaring import Squared, rounded_yield, squared_yield, turned_yield
from kitchenmath.cuts.steadiness import (
    Limits,
    PieceLimits,
    capability,
    fault_limits,
    off_size_limits,
    piece_limits,
    sd_from_ranges,
)
from kitchenmath.cuts.tray import measured_mm

__all__ = [
    "CUTS",
    "Band",
    "Cut",
    "Judgement",
    "Limits",
    "PieceLimits",
    "Pieces",
    "Squared",
    "capability",
    "chance_to_pass",
    "cooking_time_factor",
    "cut_named",
    "fault_limits",
    "judge",
    "measured_mm",
    "off_size_limits",
    "piece_limits",
    "pieces",
    "pieces_in",
    "pieces_in_ball",
    "pieces_to_show",
    "published_bands",
    "rounded_yield",
    "sd_from_ranges",
    "sizes_printed",
    "squared_yield",
    "surface_per_volume",
    "turned_yield",
]
