"""What honest people type, compute and paste, on the real marker: it costs them no point.

BH-1007 needs 3 kg of celeriac and 2 nets; the arithmetic stands in `filled_in.py`.
"""

import pytest

from kitchenmath.practice import in_words
from tests.helpers.filled_in import ALL, COMPUTED, STUDENT, TYPED, filled, marked, points

TYPED_Q1, BY_FORMULA = TYPED["q1"], COMPUTED["q1"]

TO_THE_MACHINE = [
    f"{line}\n{answer}"
    for line in ("%matplotlib widget", "%matplotlib inline", "!ls", "!pip list", "%cd ..",
                 "%cd /", "%pip list", "%unknown", "files = !ls", "%config InlineBackend.rc = {}")
    for answer in (TYPED_Q1, BY_FORMULA)
]  # fmt: skip
WITH_TIME = ["%%time\n" + BY_FORMULA, "%time " + BY_FORMULA]
DECIMAL, FRACTION = "from decimal import Decimal", "from fractions import Fraction"
COMPUTED_OTHERWISE = [
    "import pint\nq1 = 3 * pint.UnitRegistry().kg",
    "import pint\nq1 = pint.Quantity(3000, 'g')",
    f"import pint\n{DECIMAL}\nq1 = pint.UnitRegistry(non_int_type=Decimal)('3 kg')",
    f"{DECIMAL}\nfrom kitchenmath.units import Q_\nq1 = Q_(Decimal('3'), 'kg')",
    f"{FRACTION}\nfrom kitchenmath.units import Q_\nq1 = Q_(Fraction(6, 2), 'kg')",
    "import numpy as np\nq1 = np.float64(1) * one.covers * one.portion / one.yield_",
]
# Zero width space, byte order mark, joiner, word joiner, marks of direction, soft hyphen.
UNSEEN = "\u200b\ufeff\u200d\u2060\u200e\u00ad"
PASTED = [
    *(f'q1 = "3{sign} kg"' for sign in UNSEEN),
    *(f'{sign}q1 = "3 k{sign}g"' for sign in UNSEEN),
    *(f"q1 ={sign} one.covers * one.portion{sign} / one.yield_" for sign in UNSEEN),
    *(f"3{sign} kg" for sign in UNSEEN),
    *(f"q1 ={blank}one.covers * one.portion / one.yield_" for blank in "\u00a0\u202f\u3000"),
    'q1 = "3\u00a0kg"',
]


@pytest.mark.parametrize("q1", TO_THE_MACHINE + WITH_TIME + COMPUTED_OTHERWISE + PASTED)
def test_an_honest_answer_keeps_its_points(q1):
    """All 16 of 16: the cell itself, and what is built on it."""
    assert ALL == points(marked(filled(**TYPED | {"q1": q1})))


@pytest.mark.parametrize(
    "q2",
    [
        f"{DECIMAL}\nq2 = Decimal(2)",
        f"{FRACTION}\nq2 = Fraction(4, 2)",
        "import numpy as np\nq2 = np.int64(2)",
        "import pint\nq2 = pint.Quantity(2)",
    ],
)
def test_a_count_keeps_its_points_whatever_kind_of_number_it_is(q2):
    assert ALL == points(marked(filled(**TYPED | {"q2": q2})))


@pytest.mark.parametrize("typed", ["3³ kg", "10³ g", "2² kg", "3₀₀₀ g", "30 ⁰ g"])
def test_a_power_is_refused_and_never_read_as_figures(typed):
    """10³ g is no 103 g, and 3₀₀₀ g no 3000: the student is asked to type the number in full."""
    verdict = marked(filled(**TYPED | {"q1": f'q1 = "{typed}"'})).answered[0]

    assert ("unreadable", 0) == (verdict.outcome, verdict.points)
    assert "type the number in full" in in_words(verdict)


def test_a_pasted_student_number_is_the_same_student():
    """A number with a zero width space in it is drawn the same questions."""
    book = filled(STUDENT.replace("-", "-\u200b"), **TYPED)

    assert ALL == points(marked(book))
