"""Answers as an instrument, a jug, a clock or a card shows them, for each question with a number.

The steps are *common practice*: what such a scale, stem or ruler is marked in. On a question with a
safe side an answer is rounded to that side; on all others to the nearest mark.
"""

import math

from kitchenmath.units import Q_, say

# By set: what the tool of each question is marked in; several tools are tried one by one.
SHOWN = {
    "01-measure-and-scale": {
        "q1": ["5 g", "10 g"],
        "q2": ["5 g", "10 g"],
        "q3": ["1 g", "5 g"],
        "q4": ["5 mL", "10 mL"],  # a jug
        "q5": ["1 degC", "5 degC", "10 degC"],  # the oven's dial
        "q6": ["0.5 mm", "1 mm"],  # a ruler
    },
    "02-mix-by-ratio": {
        "q1": ["5 g", "10 g"],
        "q2": ["0.5 g", "1 g"],
        "q3": ["0.1 percent", "0.5 percent"],
        "q4": ["1 g", "5 g"],
        "q5": ["0.1 delta_degC", "0.5 delta_degC", "1 delta_degC"],
        "q6": ["0.1 degC", "0.5 degC", "1 degC"],  # a probe, or the stem in the bucket
    },
    "03-cut-to-size": {
        "q2": ["0.05 mm", "0.1 mm"],  # the mean of ten halves of a millimetre
        "q5": ["0.5 percent", "1 percent"],
        "q6": ["1 s"],
    },
    "04-buy-enough": {
        "q1": ["50 g", "100 g"],
        "q3": ["1 g", "5 g"],
        "q4": ["0.05 price", "0.10 price"],
        "q5": ["0.05 dollar", "0.10 dollar", "0.25 dollar", "0.50 dollar"],  # the card
    },
    "05-season-and-brine": {
        "q1": ["1 g", "3 g"],  # 3 g: half a teaspoon
        "q2": ["50 g", "100 g"],
        "q3": ["1 g", "5 g"],
        "q4": ["0.1 percent", "0.132 percent", "0.264 percent"],  # half a degree on the stem, one
        "q5": ["1 g", "5 g"],
        "q6": ["0.1 percent"],
    },
    "06-foam": {
        "q1": ["1 g", "5 g"],
        "q2": ["0.1 percent", "0.5 percent", "1 percent"],  # half a degree Brix, one
        "q3": ["0.1 g"],
        "q4": ["1 percent", "5 percent", "10 percent"],
        "q5": ["5 s", "15 s", "30 s"],
        "q6": ["10 mL", "20 mL"],
    },
    "07-thicken-and-set": {
        "q1": ["1 g", "5 g"],
        "q2": ["1 g", "5 g"],
        "q3": ["10 g", "20 g"],
        "q4": ["0.1 g", "0.5 g"],
        "q5": ["0.25 count"],
        "q6": ["0.1 L"],
    },
    "08-heat-gently": {
        "q2": ["15 s", "30 s", "1 min"],
        "q3": ["30 s", "1 min"],
        "q4": ["30 s", "1 min"],
        "q5": ["0.1 degC", "0.5 degC", "1 degC", "1 degF"],  # a probe
        "q6": ["1 min"],
    },
    "09-keep-it-safe": {
        "q3": ["10 g", "50 g"],
        "q5": ["0.1 degC", "0.5 degC", "1 degC"],  # a probe
    },
    "10-land-the-plate": {
        "q1": ["1 min", "5 min"],
        "q2": ["1 min", "5 min"],
        "q3": ["10 mL", "50 mL", "100 mL"],
        "q4": ["0.01 dollar"],
        "q5": ["0.05 dollar", "0.10 dollar", "0.25 dollar", "0.50 dollar"],  # the card
    },
}


def step_of(words, sheet):
    """A step as a number and the unit in which an answer is typed."""
    number, unit = words.split()
    return float(number), sheet.college.price_unit if unit == "price" else unit


def rounded(right, words, sheet, safe=""):
    """An answer at a mark: the nearest, or the next one to the safe side.

    Returns
    -------
    str
        As it is typed.
    """
    step, unit = step_of(words, sheet)
    marks = right.to(unit).magnitude / step
    whole = {
        "up": math.ceil(marks - 1e-9), "down": math.floor(marks + 1e-9), "": math.floor(marks + 0.5)
    }[safe]  # fmt: skip
    return say(Q_(round(whole * step, 6), unit), 6)


def refused(sheet, steps, student):
    """What is refused of a whole hand-in with every answer at its mark, and how many were tried.

    Returns
    -------
    int
    list of (str, str, str)
        Question, what was typed, what is right.
    """
    known = {question.id: before for question, before in sheet.known(student)}
    tried, found = 0, []
    for place in range(max(map(len, steps.values()))):
        typed = {}
        for question_id, marks in steps.items():
            question = sheet.questions[question_id]
            words = marks[min(place, len(marks) - 1)]
            right = question.right(known[question_id])
            typed[question_id] = rounded(right, words, sheet, question.tolerance.safe)
        verdicts = sheet.mark(student, typed)
        tried += len(typed)
        found += [
            (question_id, typed[question_id], verdicts[question_id].right)
            for question_id in typed
            if verdicts[question_id].outcome != "right"
        ]
    return tried, found


__all__ = ["SHOWN", "refused", "rounded"]
