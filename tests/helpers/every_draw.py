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
    _check(question, every_draw(choices))


def _check(question, draws):
    for known in draws:
        assert nearest(question, known) > 2, known
        assert question.judge(say(question.right(known), 3), known).outcome == "right", known


def check_every_draw_of_a_set(sheet, question):
    """The same for a question of a set, which may build on the right answer to an earlier one."""
    asked = sheet.questions[question]
    earlier = next((name for name in inspect.signature(asked.formula).parameters
                    if name in sheet.questions), None)  # fmt: skip
    for before in every_draw(sheet.choices[earlier]) if earlier else ({},):
        built_on = {earlier: sheet.questions[earlier].right(before)} if earlier else {}
        _check(asked, [{**before, **known, **built_on} for known in
                       every_draw(sheet.choices[question])])  # fmt: skip
