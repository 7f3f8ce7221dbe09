"""Three thousand students a set: no number that a kitchen cannot have.

The bounds are common practice: what a person lifts, what an oven reaches, how long a shift lasts.
"""

import math

import pytest
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

from kitchenmath.practice import Question
from kitchenmath.practice.kinds import as_kind
from kitchenmath.units import kind_of, read
from kitchenmath.units.registry import Quantity

pytestmark = pytest.mark.slow
STUDENTS = [f"SWEEP-{number}" for number in range(3000)]
# By kind: the unit, and the least and the most that a number drawn or an answer may be.
BOUNDS = {
    "weight": ("kg", 0.001, 26),  # two people lift more; 25 kg is a sack
    "volume": ("L", 0.001, 40),
    "time": ("min", 0, 24 * 60),
    "length": ("mm", 0.1, 600),
    "height": ("m", 0, 3000),  # of a kitchen above the sea
    "temperature": ("degC", -25, 300),
    "money": ("dollar", 0.5, 100),
    "money per weight": ("dollar/kg", 0.5, 100),
    "number": ("", 0.1, 10_000),  # a root gives some thousand brunoise
    "percent": ("percent", 0.1, 600),  # overrun goes beyond a hundred
}


@pytest.fixture(scope="module", params=set_ids())
def drawn(request):
    """For each student all numbers by question and name, the right answers under "answer"."""
    sheet = load_key(key_notebook(request.param), tried=()).sheet
    students = {}
    for student in STUDENTS:
        numbers = students[student] = {}
        for question, known in sheet.known(student):
            own = {name: known[name] for name in sheet.choices.get(question.id, {})}
            numbers[question.id] = own | {"answer": question.right(known)}
    return request.param, sheet, students


def test_every_number_is_one_that_a_kitchen_has(drawn):
    """Within the bounds of its kind; a time of nought only where a service is not moved."""
    _, _, students = drawn
    odd = [
        (student, question, name, str(value))
        for student, numbers in students.items()
        for question, named in numbers.items()
        for name, value in named.items()
        if isinstance(value, Quantity) and not _sensible(value, name)
    ]

    assert [] == odd[:5]


def test_every_right_answer_is_plausible_by_the_sets_own_look(drawn):
    """The look may not doubt what is right."""
    _, sheet, students = drawn
    odd = []
    for question in sheet.questions.values():
        plausible = sheet.looked[question.id][1]
        if not isinstance(question, Question) or not plausible:
            continue
        low, high = (as_kind(read(bound), question.kind) for bound in plausible)
        answers = ((who, numbers[question.id]["answer"]) for who, numbers in students.items())
        odd += [(who, question.id, str(a)) for who, a in answers if not low <= a <= high]

    assert [] == odd[:5]


def test_the_parts_of_a_whole_are_not_more_than_it():
    """Set 4: breast, legs and carcasses are 80 to 95 % of the birds; cutting loses the rest."""
    sheet = load_key(key_notebook("04-buy-enough"), tried=()).sheet
    shares = [
        float((own["breast"] + own["legs"] + own["bones"]) / own["bought"])
        for own in (_of(sheet, student, "q4") for student in STUDENTS)
    ]

    assert 0.79 < min(shares)
    assert max(shares) < 0.96


def test_a_price_is_above_its_cost():
    """Set 4 and set 10: a card's price covers the food on the plate."""
    for set_id, cost, price in (("04-buy-enough", "q4", "q5"), ("10-land-the-plate", "q4", "q5")):
        sheet = load_key(key_notebook(set_id), tried=()).sheet
        for student in STUDENTS[:300]:
            right = {one.id: one.right(known) for one, known in sheet.known(student)}
            food = right[cost] * right["q3"] if set_id.startswith("04") else right[cost]

            assert right[price] > food


def test_a_trimmed_breast_costs_more_than_the_bird():
    """A kilo of what is best cannot be cheaper than a kilo of the whole."""
    sheet = load_key(key_notebook("04-buy-enough"), tried=()).sheet
    for student in STUDENTS:
        question, known = next(pair for pair in sheet.known(student) if pair[0].id == "q4")

        assert question.right(known) > known["price"]


def _of(sheet, student, wanted):
    return next(known for question, known in sheet.known(student) if question.id == wanted)


def _sensible(value, name):
    kind = name if name in BOUNDS else kind_of(value)
    if kind not in BOUNDS:
        return math.isfinite(value.magnitude) and value.magnitude > 0
    unit, least, most = BOUNDS[kind]
    number = float(value.to(unit).magnitude)
    return math.isfinite(number) and least <= number <= most
