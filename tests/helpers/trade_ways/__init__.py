"""Ways in which cooks work each question out, with the rounding on the way that each brings along.

Each is *common practice*: by a factor, by percent, by the unit (a litre, a roll, a degree), in the
other system, or with the round measure that the question allows. `of("q1", "g")` is a number of the
student's in a unit; a way returns what is typed. Where a question has a safe side, a cook rounds to
it at the end, as its text asks.
"""

from tests.helpers.trade_ways import sets_1_to_5, sets_6_to_10
from tests.helpers.trade_ways.numbers import Of

WAYS = sets_1_to_5.WAYS | sets_6_to_10.WAYS


def refused(sheet, ways, student):
    """What is not right of every question worked out in every way, and how many were tried.

    Returns
    -------
    int
    list of (str, str, str, str, str)
        Question, way, what was typed, what is right, the outcome.
    """
    tried, found = 0, []
    for question, known in sheet.known(student):
        if not question.told_in_numbers:
            continue
        right = question.right(known)
        for name, way in ways.get(question.id, {}).items():
            typed = way(Of(known, right))
            verdict = question.judge(typed, known)
            tried += 1
            if verdict.outcome != "right":
                found.append((question.id, name, typed, verdict.right, verdict.outcome))
    return tried, found
