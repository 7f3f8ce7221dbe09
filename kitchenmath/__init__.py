"""Kitchen arithmetic with units: what a cook measures, mixes, buys, seasons, heats and serves.

Every function takes and gives quantities: `Q_(4.2, "kg")`, or `read("4 1/2 lb")` for text.
This import loads pint and numpy only; figures and panels ask for more when they are used.
"""

from kitchenmath.units import Q_, KitchenError, read, say

__all__ = ["Q_", "KitchenError", "read", "say"]
