"""Set 10, land the plate: one student's answers worked by hand, and rubbish typed everywhere.

The numbers of BH-274485: roast 75, rest 18, carve 12, plate 10; the sauce cook is free from 130,
velouté 30, season 12, foam 6 minutes; 24 covers of 40 mL base, cider reduced by 40 %; bottles of
1 L at $6.00, all else $3.30; food cost 36 %; service 30 min after 19:00, rolls 21 min.

By hand: q1 75 + 18 + 12 + 10 = 115 min. q2 130 - (30 + 12 + 6 + 10) = 72 min. q3 24 x 40 = 960
mL of base; 960 / 0.60 = 1.6 L. q4 two bottles, 12.00 / 24 + 3.30 = $3.80. q5 3.80 / 0.36 =
$10.56.

q6, backward from 19:30: plate 19:20; foam 19:14, season 19:02, velouté 18:32; warm 9 min, 19:11,
cut 40 min, 18:31; carve 19:08; roast 19:08 - 18 - 75 = 17:35, sear 20 min, 17:15; the oven is
cooled 10 min before, 17:25, the rolls are baked by then, 17:04, and it is heated from 16:44. The
rolls are cool at 17:45, and wait 89 of 120 min until they are warmed, 6 min, from 19:14.
"""

import itertools
import json
import re

import pytest
from coursework.sets.hand_out import ASSIGNMENTS
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key

from kitchenmath.practice import in_words
from kitchenmath.units import Q_, say
from tests.helpers.filled_in import marked_with_copy

SET, STUDENT = "10-land-the-plate", "BH-274485"  # who draws the plan worked by hand
KEY = key_notebook(SET)
SHEET = load_key(KEY).sheet
PLAN = SHEET.questions["q6"]
RIGHT = {"q1": "115 min", "q2": "1 h 12 min", "q3": "1.6 L", "q4": "$3.80", "q5": "$10.56"}
BY_HAND = {
    "heat the oven": "16:44",
    "bake the rolls": "17:04",
    "cool the oven": "17:25",
    "warm the rolls": "19:14",
    "sear the birds": "17:15",
    "roast the birds": "17:35",
    "cut the brunoise": "18:31",
    "cook the velouté": "18:32",
    "season the cider base": "19:02",
    "carve the birds": "19:08",
    "warm the brunoise": "19:11",
    "whip the cider foam": "19:14",
    "plate the covers": "19:20",
}
TYPED = "\n".join(f"{name} {start}" for name, start in BY_HAND.items())


@pytest.fixture(scope="module")
def known():
    return dict(list(SHEET.known(STUDENT))[-1][1])


def test_the_numbers_are_those_of_the_hand_calculation(known):
    """As the page shows them."""
    said = [say(known[name]) for name in ("roast", "rest", "free", "cut", "bottle", "rolls")]

    assert ["75 min", "18 min", "130 min", "40 %", "1 L", "21 min"] == said


def test_the_answers_worked_by_hand_earn_everything():
    """The calculation at the top of this page."""
    verdicts = SHEET.mark(STUDENT, RIGHT | {"q6": TYPED})

    assert {"q1": 2, "q2": 2, "q3": 2, "q4": 3, "q5": 2, "q6": 6} == {
        name: verdict.points for name, verdict in verdicts.items()
    }


@pytest.mark.parametrize(
    ("changed", "slip", "points"),
    [
        # Rested at 19:08: three minutes too few. Carved at 19:17, they wait 3 of 4.
        ({"carve the birds": "19:05"}, "forgot the rest", 5.5),
        # In the oven six minutes later, rested at 19:14: six too few.
        ({"roast the birds": "17:41"}, "forgot the rest", 4),
        # Seared at 17:40, in the oven from 17:35: five minutes, and then six.
        ({"sear the birds": "17:20"}, "began before what it waits for was done", 5.5),
        ({"sear the birds": "17:21"}, "began before what it waits for was done", 4),
        # Done at 19:31; the foam then waits 1 of 6, the carved birds 1 of 4.
        ({"plate the covers": "19:21"}, "plated too late", 5.5),
        # Ready at 19:12, it waits 8 of 6; base and velouté go before it.
        (
            {
                "whip the cider foam": "19:06",
                "season the cider base": "18:50",
                "cook the velouté": "18:20",
            },
            "held the foam too long",
            5.5,
        ),
        # All about the birds ten minutes sooner: carved at 19:10, they wait 10 of 4, 6 too long.
        (
            {
                "carve the birds": "18:58",
                "roast the birds": "17:25",
                "sear the birds": "17:05",
                "cool the oven": "17:15",
                "bake the rolls": "16:54",
                "heat the oven": "16:34",
            },
            "carved too early",
            4.5,
        ),
        # From 19:02 to 19:10 the sauce cook has velouté and base: eight minutes.
        ({"cook the velouté": "18:40"}, "a cook in two places", 5),
        # The rolls come out at 17:33, the oven is to cool from 17:25; hot at 17:04, it waits 8.
        ({"bake the rolls": "17:12"}, "two things in one oven", 5),
        # Half an hour before the opening; cut at 15:40, it waits 3 h 31 min of 4 h.
        ({"cut the brunoise": "15:00"}, "began before the door was open", 5.5),
        # Twelve of thirteen tasks: 6 x 12 / 13 = 5.54, in halves 5.5.
        ({"season the cider base": None}, "left a task out", 5.5),
    ],
)
def test_each_broken_rule_is_named_and_costs_its_points(changed, slip, points, known):
    """Nothing else is lost."""
    starts = {name: start for name, start in (BY_HAND | changed).items() if start}
    verdict = PLAN.judge(starts, known)

    assert (verdict.slips, verdict.points) == ((slip,), points)


def test_all_five_minutes_sooner_is_plated_too_early(known):
    """The covers wait 5 of 2 minutes, 3 too long; all else is as it was."""
    sooner = {
        name: f"{hour}:{minute - 5:02d}" if minute >= 5 else f"{hour - 1}:{minute + 55}"
        for name, (hour, minute) in (
            (name, map(int, start.split(":"))) for name, start in BY_HAND.items()
        )
    }
    verdict = PLAN.judge(sooner, known)

    assert (verdict.slips, verdict.points) == (("plated too early",), 5.5)


def test_two_broken_rules_are_both_named_and_both_cost(known):
    """A rest three minutes short (half a point) and the oven full for eight (1)."""
    verdict = PLAN.judge(BY_HAND | {"carve the birds": "19:05", "bake the rolls": "17:12"}, known)

    assert verdict.slips == ("forgot the rest", "two things in one oven")
    assert verdict.points == 4.5
    assert re.match(
        r"\(1\) A rest is left off.*\(2\) More goes in than there is", in_words(verdict)
    )


def test_a_plan_is_possible_with_all_numbers_that_may_be_drawn():
    """The longest and the shortest of each, in every combination, and the hand's own way of it."""
    names = ("late", "roast", "rest", "carve", "plate", "veloute", "season", "foam", "rolls")
    choices = {name: each for some in SHEET.choices.values() for name, each in some.items()}
    ends = [(choices[name].values[0], choices[name].values[-1]) for name in names]
    for drawn in itertools.product(*ends):
        assert PLAN.kitchen(**dict(zip(names, drawn, strict=True))).plan.feasible


def test_the_text_says_what_it_is_judged_by_and_names_every_task(known):
    """Points of each part, tasks in the table, in the answer cell and in the look."""
    cells = {cell["id"]: "".join(cell["source"]) for cell in json.loads(KEY)["cells"]}
    tasks = [task.name for task in PLAN.kitchen_of(known).tasks]
    text = cells["q6-text"]

    assert tasks == re.findall(r"^\| ([a-z][^|]*?) \|", text, re.MULTILINE)[1:]
    assert tasks == list(SHEET.looked["q6"][1])
    assert tasks == cells["q6-answer"].split('"""')[1].strip().splitlines()
    assert ["6 points", "2 points", "1.5", "1", "1", "0.5"] == re.findall(
        r"\(([\d.]+(?: points)?)\)", text
    )
    assert [2, 1.5, 1, 1, 0.5] == list(PLAN.worth.values())


@pytest.mark.parametrize(
    "rubbish",
    ["", "?", "half seven", "19:30", "1e999", "-3 kg", "∞", "q1", "<b>1</b>", "5 %", "$",
     "x" * 9999,
     3, float("nan"), float("inf"), 10**400, None, [], {}, {"foam": "soon"}, object(), Q_(3, "kg"),
     Q_([1, 2], "min"), "the birds 19:00\nthe birds 18:00"],
)  # fmt: skip
def test_rubbish_typed_everywhere_is_marked_and_earns_nothing(rubbish):
    """Every question, no error, a sentence for each."""
    verdicts = SHEET.mark(STUDENT, dict.fromkeys(SHEET.questions, rubbish))

    assert 0 == sum(verdict.points for verdict in verdicts.values())
    assert all(len(in_words(verdict)) > 15 for verdict in verdicts.values())


def marked(**cells):
    """The record of the student's hand-in whose answer cells hold these texts."""
    released = (ASSIGNMENTS / SET / f"{SET}.ipynb").read_bytes()
    notebook = json.loads(released)
    for cell in notebook["cells"]:
        name = cell["metadata"].get("nbgrader", {}).get("grade_id", "").removesuffix("-answer")
        cell["source"] = {"me": f'student = "{STUDENT}"', **cells}.get(name, cell["source"])
    return marked_with_copy(notebook, STUDENT, of=(KEY, released), seconds=60)[0]


@pytest.mark.parametrize(
    "cell",
    [f"q6 = '''\n{TYPED}\n'''", f'q6 = """{TYPED}\n{" " * 900}"""', f"q6 = {BY_HAND!r}"],
    ids=["lines", "long", "dict"],
)
def test_a_plan_crosses_from_the_students_room_as_it_was_typed(cell):
    """Lines, more than a page of them, or a dict; it comes back earliest first."""
    verdict = marked(q6=cell).answered[-1]

    assert (verdict.outcome, verdict.points) == ("right", 6)
    assert verdict.answer.startswith(
        "16:44 heat the oven; 17:04 bake the rolls; 17:15 sear the birds"
    )
    assert verdict.given[0] == "the service is this much later than 19:00: 30 min"


def test_an_untouched_sheet_is_missing_and_a_broken_one_says_so():
    """The names of the tasks alone are no plan; a quote that is missing ends the cell."""
    untouched = marked().answered[-1]
    broken = marked(q6="q6 = dict('''\nfoam 19:14").answered[-1]

    assert (untouched.outcome, untouched.points) == ("missing", 0)
    assert (broken.outcome, broken.points) == ("unreadable", 0)
    assert "SyntaxError" in " ".join(broken.notes)
