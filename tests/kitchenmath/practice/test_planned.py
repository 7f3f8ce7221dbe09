"""A question whose answer is a plan: reading what was typed, and judging it by its rules.

The kitchen of these tests, worked by hand. Service 19:30, opening 17:00, cooks A and B, one oven.

    roast   60 min, no hands, oven, rests 15, holds 10
    carve   10 min, A, after roast, holds 5
    bread   20 min, no hands, oven, rests 10, holds 120
    foam     5 min, B, holds 6
    plate   10 min, both, after carve, bread, foam, holds 2

Backward: plate 19:20; foam 19:15; carve 19:10; roast 19:10 - 15 - 60 = 17:55, out at 18:55. The
bread has to be cool at 19:20, so in at 18:50, when the oven is not free yet. It goes in before the
roast, at 17:35, is cool at 18:05 and waits 75 of its 120 minutes. Or the roast goes in 5 minutes
sooner, at 17:50, and waits 5 of its 10 minutes: the kit takes that one, as it begins later.
"""

import datetime

import pytest
from hypothesis import given as each
from hypothesis import strategies as st

from kitchenmath.errors import KitchenError, OutOfRange, Unreadable, WrongKind
from kitchenmath.practice import in_words
from kitchenmath.practice.answer_look import look_over
from kitchenmath.practice.plan_kitchen import later, one_by_one
from kitchenmath.practice.plan_lines import placed, read_plan
from kitchenmath.practice.planned import PlanQuestion, PlanSlip
from kitchenmath.service import check_plan
from kitchenmath.units import Q_
from tests.helpers.plans import BY_HAND, KNOWN, QUESTION, WORTH, judged, kitchen, minutes, typed

TASKS = ["roast the birds", "carve the birds", "bake the bread", "whip the foam", "plate"]


# Reading


@pytest.mark.parametrize(
    "line",
    [
        "cider foam 19:20", "19:20 cider foam", "Cider Foam - 19.20", "cider foam: 7.20 pm",
        "  • cider foam — 7:20 P.M.", "1. cider foam at 19h20", "cider foam = 7:20pm",
        "cider foam 1920", "cider\u00a0foam\t19：20", "- Cider  FOAM | 19:20 h", "19,20 cider foam",
    ],
)  # fmt: skip
def test_a_line_is_read_however_a_cook_writes_it(line):
    """Clock of 24 hours or half days, dots, dashes, order and case."""
    plan = read_plan(line)

    assert [("cider foam", "19:20")] == [(n.casefold(), s) for n, s in plan.starts.items()]
    assert plan.odd == ()


def test_a_name_may_hold_figures_and_a_whole_hour_may_do():
    """The time is what looks like one; 24 covers are none."""
    assert {"plate for 24": "19:20"} == read_plan("plate for 24: 19:20").starts
    assert {"soup": "19:00"} == read_plan("soup 7 pm").starts
    assert {"dough": "22:00 the day before"} == read_plan("dough 22:00 the day before").starts


def test_a_dict_says_the_same_as_lines():
    """Times as text or as a time of day."""
    starts = read_plan({"foam": "7:20 pm", "plate": datetime.time(19, 25)}).starts

    assert {"foam": "19:20", "plate": "19:25"} == starts


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("foam soon", "line 2, “foam soon”, has no clock time"),
        ("foam 19:10, or 19:20", "has more than one time: its start is wanted"),
        ("19:20", "has a time and no task"),
        ("foam 25:70", "'25:70' is no clock time"),
        ("foam 13:20 pm", "am and pm go from 1 to 12"),
    ],
)
def test_a_line_that_cannot_be_read_is_told_and_spoils_no_other(line, words):
    """The sentence says which line."""
    plan = placed(read_plan(f"plate 19:20\n{line}"), TASKS)

    assert {"plate": "19:20"} == plan.starts
    assert words in " ".join(plan.odd)


def test_a_task_without_a_time_in_a_sheet_that_is_begun_is_said_once():
    """It is not filled in yet, so it is among those without a start, and not odd besides."""
    sheet = "\n".join(f"{name} 19:20" if name == "plate" else name for name in TASKS)
    look = look_over(sheet, "plan", tuple(TASKS))

    assert look.to_do == "again"
    assert "clock time" not in look.sentence
    assert 1 == look.sentence.count("whip the foam")
    assert "has no clock time" in look_over(f"{sheet}\nfoam soon", "plan", tuple(TASKS)).sentence


@pytest.mark.parametrize("nothing", ["soon", "foam soon\nplate later", {}, {"foam": 3}, "19:30"])
def test_without_one_start_there_is_no_plan(nothing):
    """The sentence says what to type."""
    with pytest.raises(Unreadable, match='such as "cider foam 19:20"'):
        read_plan(nothing)


@pytest.mark.parametrize("thing", [3, None, [("foam", "19:20")], minutes(3), object()])
def test_what_is_no_plan_is_refused(thing):
    """A number, a list, a quantity."""
    with pytest.raises(WrongKind, match="is no plan"):
        read_plan(thing)


def test_a_page_of_text_is_refused():
    """Four thousand characters are a page."""
    with pytest.raises(Unreadable, match="longer than 4000 characters"):
        read_plan("foam 19:20\n" * 400)


@each(st.text(max_size=80) | st.dictionaries(st.text(max_size=9), st.text(max_size=9), max_size=3))
def test_rubbish_is_read_or_refused_with_a_sentence(rubbish):
    """Never another error, and every start is a clock time again."""
    try:
        plan = read_plan(rubbish)
    except KitchenError as error:
        assert len(str(error)) > 20
    else:
        assert plan.starts and read_plan(plan.starts).starts == plan.starts


@pytest.mark.parametrize("name", ["foam", "Whip Foam", "the foam, whipped", "whipp the foan"])
def test_a_task_is_known_by_a_part_of_its_name(name):
    """As long as it means one task only; a slip of the finger is forgiven."""
    found = placed(read_plan(f"{name} 19:15"), TASKS)

    assert ({"whip the foam": "19:15"} == found.starts) is (name != "the foam, whipped")


def test_a_name_that_may_mean_two_tasks_is_asked_about():
    """Birds are roasted and carved."""
    found = placed(read_plan("birds 18:00; soup 18:00"), TASKS)

    assert found.starts == {}
    assert found.odd == (
        "“birds” may be roast the birds or carve the birds: type more of its name.",
        "“soup” is no task of this service.",
    )


def test_a_task_that_stands_twice_counts_with_its_last_time_and_says_so():
    """Nothing is chosen in silence."""
    for text in ("foam 19:10\nfoam 19:20", "foam 19:10\nwhip the foam 19:20"):
        found = placed(read_plan(text), TASKS)

        assert {"whip the foam": "19:20"} == found.starts
        assert "stands twice, at 19:10 and at 19:20" in found.odd[0]


def test_the_look_names_what_is_missing_before_it_is_marked():
    """And says nothing of what is right."""
    look = look_over("foam 19:15; soup 18:00", "plan", tuple(TASKS))

    assert look.state == "doubtful"
    assert look.sentence == (
        "read as 19:15 whip the foam. “soup” is no task of this service. "
        "Look again: no start yet for roast the birds, carve the birds, bake the bread, plate."
    )
    assert look_over(typed(BY_HAND), "plan", tuple(TASKS)).sentence.endswith(
        "Every task has a start."
    )


def test_names_without_a_time_are_an_empty_sheet():
    """As it was handed out, in any case and order, or with lines taken out; words are no names."""
    sheet = "\n".join(TASKS)
    for empty in (sheet, f"\n{sheet.upper()}\n", "plate\n- whip the foam:\n"):
        look = look_over(empty, "plan", tuple(TASKS))

        assert (look.state, look.to_do) == ("empty", "empty")
        assert "nothing is typed yet" in look.sentence
    for begun in (f"{sheet} 19:20", f"{sheet}\nat half past seven", "plate at seven"):
        assert look_over(begun, "plan", tuple(TASKS)).to_do == "again"


def test_a_check_says_how_a_left_out_half_day_is_read():
    """7:20 is 19:20 where the kitchen opens later; with pm, or am said, there is nothing to say."""
    words = "07:20 is read as 19:20 (plate)"

    for typed_ in ("foam 7:15; plate 7:20", "foam 7:15 pm; plate 7:20"):
        assert words in look_over(typed_, "plan", tuple(TASKS)).sentence
    for typed_ in ("foam 7:15 pm; plate 7:20 pm", "foam 7:15 am; plate 7:20"):
        assert "is read as" not in look_over(typed_, "plan", tuple(TASKS)).sentence


# Judging


def test_the_plans_worked_by_hand_are_right_and_one_is_what_the_kit_plans():
    """The calculation at the top of this page."""
    verdict = judged(typed(BY_HAND))

    assert (verdict.outcome, verdict.points, verdict.out_of) == ("right", 6, 6)
    assert {**BY_HAND, "roast the birds": "17:50", "bake the bread": "18:50"} == (
        QUESTION.right(KNOWN).starts
    )
    assert verdict.right == "one plan that works begins at 17:50 with “roast the birds”, as shown"
    assert "17:50–18:50 roast the birds (oven, rests until 19:05)" in verdict.working
    assert verdict.answer.startswith("17:35 bake the bread; 17:55 roast the birds; 19:10 carve")


def test_another_plan_that_keeps_everything_is_as_right():
    """Carving 5 minutes sooner waits 5 of 5, with the roast sooner too; the foam 1 of 6."""
    sooner = {"roast the birds": "17:50", "carve the birds": "19:05", "whip the foam": "19:14"}

    assert (judged({**BY_HAND, **sooner, "bake the bread": "17:30"}).points) == 6


@pytest.mark.parametrize(
    ("changed", "slips", "points", "words"),
    [
        # Carved at 19:05: the birds are rested at 19:10. Carved meat then waits 5 of 5 minutes.
        ({"carve the birds": "19:05"}, ("forgot the rest",), 5.5, "is rested only at 19:10"),
        # A minute sooner the rest is six short, and the carved birds wait 6 of 5.
        ({"carve the birds": "19:04"}, ("forgot the rest",), 3.5, "is rested only at 19:10"),
        ({"whip the foam": "19:00"}, ("held the foam",), 4.5, "9 min too long"),
        ({"bake the bread": "17:40"}, ("one oven",), 5.5, "between 17:55 and 18:00"),
        ({"bake the bread": "17:41"}, ("one oven",), 5, "between 17:55 and 18:01"),
        ({"bake the bread": "16:50"}, (), 5.5, "10 min before the kitchen opens at 17:00"),
        # Plated at 19:21, so done at 19:31; the foam waits 1 of 6, the carved birds 1 of 5.
        ({"plate": "19:21"}, (), 5.5, "1 min after the service at 19:30"),
        # Plated at 19:15: birds and foam are ready at 19:20, A and B still at work on them, and
        # the covers wait 5 of 2 minutes. Each of the three rules is five minutes off at most.
        ({"plate": "19:15"}, (), 4.5, "'plate' starts at 19:15, but 'carve the birds'"),
        # The foam is ready at 19:17 and waits 3 of 6 minutes.
        ({"whip the foam": "19:12"}, (), 6, "Right"),
    ],
    ids=["rest", "long", "hold", "oven", "longer", "opening", "late", "order", "none"],
)
def test_each_broken_rule_costs_its_points_and_says_what_clashes(changed, slips, points, words):
    """2 for order, 1.5 for holding, 1 each for hands and oven, 0.5 for the opening.

    What is broken by five minutes or less costs half a point.
    """
    verdict = judged({**BY_HAND, **changed})

    assert (verdict.slips, verdict.points) == (slips, points)
    assert words in in_words(verdict)


def test_a_cook_in_two_places_costs_the_hands():
    """Foam in A's hands as carving is: A is wanted twice from 19:15 to 19:20."""
    one_cook = PlanQuestion(
        "q1",
        kitchen=lambda roast: kitchen(roast).with_task("whip the foam", cook="A"),
        worth=WORTH,
        slips=(PlanSlip("two places", ("cook", "hands"), "Hands twice.", lambda kitchen: BY_HAND),),
    )
    verdict = one_cook.judge(BY_HAND, KNOWN)

    assert (verdict.slips, verdict.points) == (("two places",), 5.5)
    assert "between 19:15 and 19:20" in in_words(verdict)


def test_a_plan_made_forward_is_named_and_keeps_what_it_keeps():
    """By hand from 17:00: roast, out 18:00, rested 18:15; foam 17:00; carve 18:15 to 18:25; bread
    in at 18:00, cool at 18:30; plate 18:30 to 18:40, 50 minutes before the service."""
    starts = one_by_one(kitchen(minutes(60)))
    verdict = judged(starts)

    assert {
        "roast the birds": "17:00",
        "whip the foam": "17:00",
        "bake the bread": "18:00",
        "carve the birds": "18:15",
        "plate": "18:30",
    } == starts
    assert (verdict.slips, verdict.points) == (("counted forward",), 4.5)
    assert in_words(verdict).startswith(
        "You began at the opening. 'whip the foam' waits 1 h 25 min"
    )
    assert in_words(verdict).endswith(
        "'plate' waits 50 min until the service and holds 2 min: 48 min too long."
    )


def test_a_task_left_out_costs_its_share_in_halves():
    """Four of five tasks, all rules kept: 6 x 4/5 = 4.8, so 4.5."""
    verdict = judged("\n".join(typed(BY_HAND).splitlines()[:3]) + "\nplate 19:20")

    assert (verdict.slips, verdict.points) == (("left out",), 4.5)
    assert "for 'whip the foam'" in in_words(verdict)


@pytest.mark.parametrize("at", ["19:20", "17:00", "10:00", "23:00", "19:00 the day before"])
def test_one_time_for_all_earns_next_to_nothing(at):
    """It breaks order, hands and oven at least: at most holding and opening are left."""
    assert judged(dict.fromkeys(TASKS, at)).points <= 2


@pytest.mark.parametrize("nothing", [None, "", "  \n", "\n".join(TASKS)])
def test_a_sheet_that_was_not_filled_in_is_missing(nothing):
    """Also where the names of the tasks stand there already."""
    verdict = judged(nothing)

    assert (verdict.outcome, verdict.points) == ("missing", 0)


@pytest.mark.parametrize("rubbish", ["at 7", "19:30", 3, {"foam": 3}, [1], object(), float("nan")])
def test_rubbish_is_unreadable_with_a_sentence(rubbish):
    """And earns nothing."""
    verdict = judged(rubbish)

    assert (verdict.outcome, verdict.points) == ("unreadable", 0)
    assert len(in_words(verdict)) > 30


@each(st.dictionaries(st.sampled_from([*TASKS, "soup"]), st.times(), min_size=1))
def test_a_plan_is_right_only_where_check_plan_finds_nothing(starts):
    """The same rules as for everybody else's plans."""
    said = {name: f"{at:%H:%M}" for name, at in starts.items()}
    here = kitchen(minutes(60))
    known = {name: at for name, at in said.items() if name in TASKS}
    found = check_plan(known, here.tasks, "19:30", here.cooks, here.equipment, here.opens)
    verdict = judged(said)

    assert (verdict.outcome == "right") is (found == [] and bool(known))
    assert 0 <= verdict.points <= 6


def test_many_findings_of_one_kind_are_told_in_three_sentences():
    """Five tasks without a start, one with."""
    sentence = in_words(judged("plate 19:20"))

    assert sentence.count("No start is given") == 3
    assert "And 1 more of this kind." in sentence


def test_a_slip_that_does_not_show_is_a_collision():
    """The plan of this slip is right, so nobody could be told of it."""
    slip = PlanSlip("none", ("hold",), "Nothing.", lambda kitchen: BY_HAND)
    question = PlanQuestion("q1", kitchen, WORTH, (slip,))

    assert question.slip_value(slip, KNOWN) is None
    assert QUESTION.collisions(KNOWN) == []


def test_a_slip_that_another_one_takes_over_is_a_collision():
    """The wider slip stands first and takes the narrower one's finding."""
    wide = PlanSlip("waits", ("hold",), "It waits.", lambda kitchen: None)
    question = PlanQuestion("q1", kitchen, WORTH, (wide, QUESTION.slips[2]))

    assert question.collisions(KNOWN) == ["held the foam"]


def test_numbers_without_a_plan_are_refused():
    """A roast of five hours does not fit between 17:00 and 19:30."""
    with pytest.raises(OutOfRange, match="q1: no plan works here"):
        QUESTION.right({"roast": minutes(300)})


def test_points_are_given_for_each_part():
    """A part without points would be a rule that does not count."""
    with pytest.raises(KitchenError, match=r"worth: .* order, holding"):
        PlanQuestion("q1", kitchen, {"order": 2})


def test_every_played_answer_is_found_as_it_was_played():
    """Right in every spelling and with every task as early as its slack allows; each slip named."""
    ways = [each.way for each in QUESTION.played(KNOWN)]
    for answer, way, slips in QUESTION.played(KNOWN):
        verdict = judged(answer)

        assert way != "right" or verdict.outcome == "right"
        assert way != "slip" or slips[0] in verdict.slips
        assert way != "noise" or verdict.outcome == "unreadable" or verdict.outcome == "missing"
    assert {"right", "slip", "two slips", "noise"} == set(ways)


def test_a_clock_time_later_and_a_span_that_is_none():
    """19:00 and 45 min; a weight is no span."""
    assert later("19:00", minutes(45)) == "19:45"
    with pytest.raises(WrongKind, match="span: needs a time"):
        later("19:00", Q_(45, "g"))
