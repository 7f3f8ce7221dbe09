"""What a lesson asks before it shows: a question, its answer and the why, a topic a module.

Data only. `panels/predicting.py` takes the answer of a cook and says how far off it was; the
answers that a formula gives in one line are worked out here, and the tests work out all of them.
"""

from kitchenmath.predictions import (
    buying,
    cutting,
    foaming,
    keeping,
    landing,
    measuring,
    mixing,
    seasoning,
    thickening,
    warming,
)
from kitchenmath.predictions.asked import Amount, Pick

__all__ = ["PREDICTIONS", "Amount", "Pick"]

_TOPICS = (
    *(measuring, mixing, cutting, buying, seasoning),
    *(foaming, thickening, warming, keeping, landing),
)
PREDICTIONS = {name: each for topic in _TOPICS for name, each in topic.PREDICTIONS.items()}
