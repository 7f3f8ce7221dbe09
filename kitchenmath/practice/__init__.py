"""A set's sheet: it gives each student their numbers, looks at answers and awards points.

This page is also the door to what a question is made of: `given` and `steps` (numbers of one's
own), `Question`, `Slip` and `Within` (how an answer is judged).
"""

from kitchenmath.practice.choices import part_of, steps
from kitchenmath.practice.clock_question import (
    ClockQuestion,
)
from kitchenmath.practice.last_look import (
    last_look,
)
from kitchenmath.practice.listed import (
    ListedQuestion,
)
from kitchenmath.practice.measured import (
    Measured,
    MeasuredSlip,
)
from kitchenmath.practice.own_numbers import Given, beside, given, student_number
from kitchenmath.practice.plan_lines import (
    PlanKind,
)
from kitchenmath.practice.probe_log import (
    invented_logs,
)
from kitchenmath.practice.questions import (
    Question,
)
from kitchenmath.practice.readings import (
    invented_readings,
)
from kitchenmath.practice.sheet import (
    Sheet,
    open_set,
)
from kitchenmath.practice.verdicts import (
    Found,
    Slip,
    Verdict,
    Within,
)
from kitchenmath.practice.words import (
    in_words,
    sentences,
)

__all__ = [
    "ClockQuestion",
    "Found",
    "Given",
    "ListedQuestion",
    "Measured",
    "MeasuredSlip",
    "PlanKind",
    "Question",
    "Sheet",
    "Slip",
    "Verdict",
    "Within",
    "beside",
    "given",
    "in_words",
    "invented_logs",
    "invented_readings",
    "last_look",
    "open_set",
    "part_of",
    "sentences",
    "steps",
    "student_number",
]
