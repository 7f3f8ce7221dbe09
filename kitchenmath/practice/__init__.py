"""A set's sheet: it gives each student their numbers, looks at answers and awards points.

This page is also the door to what a question is made of: `given` and `steps` (numbers of one's
own), `Question`, `Slip` and `Within` (how an answer is judged).
"""

from kitchenmath.practice.own_numbers import (
    Given,
    beside,
    given,
    steps,
    student_number,
)
from kitchenmath.practice.questions import (
    Question,
    Slip,
    Verdict,
    Within,
)
from kitchenmath.practice.sheet import (
    Sheet,
    open_set,
)

__all__ = [
    "Given",
    "Question",
    "Sheet",
    "Slip",
    "Verdict",
    "Within",
    "beside",
    "given",
    "open_set",
    "steps",
    "student_number",
]
