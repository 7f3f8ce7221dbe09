"""Which drills cannot be half worked, and why: every other one opens with a line left out."""

from kitchenmath.panels.drilling import LESSONS
from kitchenmath.panels.worked_lines import can_be_half_worked

ONE_LINE = "its working is one line: with that left out nothing is worked"
BY_LOOKING = "it is answered by looking down a list, and no sum leads there"
CANNOT = {
    "flour for a dough": ONE_LINE,
    "salt for a dough": ONE_LINE,
    "percent of flour": ONE_LINE,
    "evenness": ONE_LINE,
    "as purchased": ONE_LINE,
    "edible portion": ONE_LINE,
    "menu price": ONE_LINE,
    "foam dose": ONE_LINE,
    "cold by when": ONE_LINE,
    "lines of a record": BY_LOOKING,
    "since when": BY_LOOKING,
    "what can be put right": BY_LOOKING,
    "allergens of a plate": BY_LOOKING,
}
DRILLS = {
    name: drill
    for modules in LESSONS.values()
    for module in modules
    for name, drill in module.DRILLS.items()
}


def test_every_drill_can_be_half_worked_but_those_listed():
    assert CANNOT.keys() == {
        name for name, drill in DRILLS.items() if not can_be_half_worked(drill)
    }


def test_each_reason_is_true():
    """One line is one line; what is found by looking asks for letters, names or a clock time."""
    for name, why in CANNOT.items():
        question = DRILLS[name].question
        if why == ONE_LINE:
            assert 1 == len(question.working), name
        else:
            assert not question.told_in_numbers, name
