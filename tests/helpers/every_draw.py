"""All the numbers that a question may ask for, and how near its slips come to the right answer."""

import inspect
import itertools

from kitchenmath.units import Q_, say


def every_draw(choices):
    """Each possible draw, by name; a part of another number is rounded as its scale shows it."""
    for values in itertools.product(*(choice.values for choice in choices.values())):
        known = {}
        for (name, choice), value in zip(choices.items(), values, strict=True):
            known[name] = _part(known[choice.whole], value, choice) if choice.whole else value
        yield known


def _part(whole, share, choice):
    marks = round((whole * share / choice.to).to("").magnitude)
    return Q_(marks * choice.to.magnitude, choice.to.units)


def nearest(question, known):
    """How near any slip comes to the right answer, in tolerances."""
    right = question.right(known)
    allowed = question.tolerance.around(right, of_percent=question.kind == "percent")
    distances = []
    for slip in question.slips:
        number = question.slip_value(slip, known)
        if number is not None:
            distances.append(abs(number.to(right.units).magnitude - right.magnitude) / allowed)
    return min(distances)


def check_every_draw(question, choices):
    """More than twice the tolerance apart, and the right answer in three figures is right."""
    for known in every_draw(choices):
        assert nearest(question, known) > 2, known
        assert question.judge(say(question.right(known), 3), known).outcome == "right", known


def check_every_draw_of_a_set(sheet, question):
    """The same for a question of a set, which may build on the first one's right answer."""
    asked, first = sheet.questions[question], sheet.questions["q1"]
    builds_on_q1 = "q1" in inspect.signature(asked.formula).parameters
    choices = {**(sheet.choices["q1"] if builds_on_q1 else {}), **sheet.choices[question]}
    for known in every_draw(choices):
        known = {**known, "q1": first.right(known)} if builds_on_q1 else known
        assert nearest(asked, known) > 2, known
        assert asked.judge(say(asked.right(known), 3), known).outcome == "right", known
