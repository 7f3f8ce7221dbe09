"""A cook's own measurements: what a bench asks for, what it makes of it, and what is kept.

One bench a lesson: ten cups weighed, the friction of a mixer, ten edges, a yield, a brine, a foam,
an oven, a task timed. What was typed is kept for the lessons after.
"""

from kitchenmath.bench.bench import Bench, Box, Worked
from kitchenmath.bench.benches import BENCHES
from kitchenmath.bench.kept import Kept

__all__ = ["BENCHES", "Bench", "Box", "Kept", "Worked"]
