"""Write the page of what each drill draws and what it takes as right.

    .venv/bin/python -m tests.measure.drill_ranges

Run it when a drill's numbers or tolerance were changed on purpose, read the change, and commit
it. A test compares: whoever moves a range changes what every class sees.
"""

import re
from pathlib import Path

from kitchenmath.drills import Round
from kitchenmath.units import Quantity, say
from tests.helpers.asked_drills import DRILLS

PAGE = Path(__file__).parents[1] / "lessons" / "drill_ranges.md"
ADDRESS = re.compile(r" at 0x[0-9a-f]+")
FEW = 4  # so many stand whole where they are no amounts in even steps
HEAD = """\
# What drills draw, and what they take as right

Points of the question and its tolerance, then each number: the first, the second and the last it
may be, and how many there are. Then a first round: its numbers, the right answer, and what each
slip makes of them, with its points. `python -m tests.measure.drill_ranges` writes this page.

"""


def page():
    """Every drill with its tolerance and its ranges."""
    return HEAD + "\n".join(sorted(_drill(drill) for drill in DRILLS))


def _drill(drill):
    question = drill.question
    lines = [f"- **{question.id}** ({question.points:g}; {_tolerance(question)})"]
    for name, choice in drill.choices.items():
        lines.append(f"  - {name}: {_range(choice.values)}{_part(choice)}")
        if choice.us:
            lines.append(f"    in pounds and ounces: {_range(choice.us)}")
    return "\n".join([*lines, *_first_round(drill)]) + "\n"


def _first_round(drill):
    """The numbers of the first round, the right answer, and what each slip makes of them."""
    question, known = drill.question, Round(drill).numbers
    if not hasattr(question, "slip_value"):
        return
    yield f"  - {', '.join(map(_value, known.values()))}: {_value(question.right(known))}"
    for slip in question.slips:
        number = question.slip_value(slip, known)
        points = f" ({slip.worth:g})" if slip.worth else ""
        yield f"    - {slip.name}{points}: {'nothing' if number is None else _value(number)}"


def _tolerance(question):
    tolerance = getattr(question, "tolerance", None)
    if tolerance is None:
        return "no tolerance"
    return f"{tolerance}, to {say(tolerance.to)}" if tolerance.to is not None else str(tolerance)


def _range(values):
    alike = isinstance(values[0], Quantity) or len(values) > FEW
    shown = dict.fromkeys(map(_value, [*values[:2], values[-1]] if alike else values))
    return f"{', '.join(shown)}; {len(values)} in all"


def _value(value):
    return (
        say(value, 6)
        if isinstance(value, Quantity)
        else ADDRESS.sub("", " ".join(repr(value).split()))
    )


def _part(choice):
    if not choice.whole:
        return ""
    us = f", in pounds to {say(choice.us_to)}" if choice.us_to is not None else ""
    return f", of {choice.whole}, to {say(choice.to)}{us}"


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
