"""Backward plans against hand-made ones and against a plain search through all of them.

The referee here knows nothing of the library's search or of its check: it tries every start in
whole minutes and looks at every minute of the day.
"""

import datetime
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitchenmath.errors import OutOfRange, UnknownName, Unreadable, WrongKind
from kitchenmath.service import Task, check_plan, plan_back, read_tasks
from kitchenmath.service.clock import read_clock, say_clock
from kitchenmath.units.registry import Q_

CREW = ("roast", "sauce", "larder")
KIT = {"burner": 4, "oven shelf": 2, "stick blender": 1}


def minutes(number):
    return Q_(number, "min")


def task(name, duration, **more):
    """A task with its times in minutes, as the examples below give them."""
    times = {key: minutes(more.pop(key)) for key in ("hold", "rest") if more.get(key) is not None}
    return Task(name, minutes(duration), **times, **more)


def brackwater(**more):
    return plan_back("19:30", read_tasks(), cooks=CREW, equipment=KIT, **more)


# By hand


def test_a_chain_is_planned_backward_from_the_service():
    """By hand: carve 15 before 19:30, rest 15, roast 60, sear 25: 19:15, 18:00, 17:35."""
    plan = plan_back("19:30", [
        task("sear", 25),
        task("roast", 60, hands=0, after="sear", rest=15, equipment="oven"),
        task("carve", 15, after="roast"),
    ])  # fmt: skip

    assert {"sear": "17:35", "roast": "18:00", "carve": "19:15"} == plan.starts
    assert ("sear", "roast", "carve") == plan.critical_chain
    assert plan.feasible


def test_one_cook_takes_last_what_holds_least():
    """By hand: foam (holds 6) 19:25, sauce (holds 2 h) before it at 19:05."""
    plan = plan_back("19:30", [task("foam", 5, hold=6), task("sauce", 20, hold=120)])

    assert {"sauce": "19:05", "foam": "19:25"} == plan.starts
    assert minutes(5) == plan.waits["sauce"]


def test_a_step_is_brought_forward_so_that_its_forerunner_can_stand():
    """By hand: the one cook plates from 19:15, so the base is done by then; it cannot wait, so
    the dish begins at 19:15 and not at 19:20, and waits 5 min itself."""
    tasks = [
        task("base", 5, hold=0),
        task("dish", 10, hands=0, after="base", hold=30),
        task("plate", 15, hold=0),
    ]

    plan = plan_back("19:30", tasks)

    assert {"base": "19:10", "dish": "19:15", "plate": "19:15"} == plan.starts
    assert plan.feasible


def test_two_dishes_share_one_oven_by_turns():
    """By hand: 30 and 40 min in one oven; the one that may wait goes first."""
    dishes = [
        task("gratin", 30, hands=0, equipment="oven", hold=10),
        task("tart", 40, hands=0, equipment="oven", hold=60),
    ]

    assert {"tart": "18:20", "gratin": "19:00"} == plan_back("19:30", dishes).starts
    both = plan_back("19:30", dishes, equipment={"oven": 2})
    assert {"tart": "18:50", "gratin": "19:00"} == both.starts


def test_of_two_orders_the_one_that_waits_less_is_taken():
    """By hand, two cooks: the dish for both hands first leaves two tasks of 30 min beside each
    other at 19:00; last, it would push both to 18:40."""
    plan = plan_back("19:30", [task("soup", 30), task("pie", 20, hands=2), task("sauce", 30)],
                     cooks=2)  # fmt: skip

    assert {"pie": "18:40", "soup": "19:00", "sauce": "19:00"} == plan.starts


def test_an_opening_changes_the_order_where_that_keeps_it():
    """By hand, two cooks: the stew would go before two small tasks at 18:55; open from 19:00 it
    takes one cook to the end, and the other does both small ones by turns."""
    tasks = [task("foam", 5, hold=10), task("garnish", 5), task("stew", 30)]

    assert "18:55" == plan_back("19:30", tasks, cooks=2).starts["stew"]
    opened = plan_back("19:30", tasks, cooks=2, opens="19:00")
    assert {"stew": "19:00", "garnish": "19:20", "foam": "19:25"} == opened.starts
    assert opened.feasible


def test_a_rest_is_over_before_the_next_step_and_before_the_service():
    """By hand: 60 min roast, 15 rest: out of the oven at 19:15."""
    assert {"roast": "18:15"} == plan_back("19:30", [task("roast", 60, rest=15)]).starts


def test_slack_is_how_much_earlier_a_task_could_start():
    """By hand: from 19:00 the foam can go to 19:19 (it holds 6), the sauce to 19:00."""
    plan = plan_back("19:30", [task("foam", 5, hold=6), task("sauce", 20, hold=120)], cooks=2,
                     opens="19:00")  # fmt: skip

    assert {"foam": minutes(6), "sauce": minutes(10)} == plan.slack


def test_slack_stops_where_the_cook_is_busy():
    """By hand: one cook; the foam cannot move into the sauce, the sauce can go to the opening."""
    plan = plan_back("19:30", [task("foam", 5, hold=6), task("sauce", 20, hold=120)],
                     opens="19:00")  # fmt: skip

    assert {"foam": minutes(0), "sauce": minutes(5)} == plan.slack


def test_a_plan_past_midnight_keeps_its_order():
    """Service at 00:30 after an evening: 45 min begin at 23:45."""
    plan = plan_back("00:30", [task("soup", 45)])

    assert {"soup": "23:45"} == plan.starts
    assert [] == check_plan(plan.starts, [task("soup", 45)], serve_at="00:30")


def test_a_brine_of_a_day_begins_the_day_before():
    """By hand: 24 h of brine and 2 h of work before 19:30: 17:30 the day before."""
    tasks = [task("brine", 24 * 60, hands=0), task("roast", 120, after="brine")]

    plan = plan_back(datetime.time(19, 30), tasks)

    assert "17:30 the day before" == plan.starts["brine"]
    assert [] == check_plan(plan.starts, tasks, serve_at="7:30 pm")


# Conflicts, in words


def test_too_few_hands_are_named_with_their_time():
    """Two foams of 15 min that cannot wait, and one cook: 19:15 to 19:30."""
    foams = [task("cider foam", 15, hold=0), task("sea foam", 15, hold=0)]

    plan = plan_back("19:30", foams)

    assert not plan.feasible
    assert ("Too few hands between 19:15 and 19:30: 'cider foam' and 'sea foam' need 2, "
            "and there is 1 cook.",) == plan.conflicts  # fmt: skip
    assert plan.tried_all


def test_a_kitchen_that_opens_too_late_is_named():
    """By hand: 120 min of work before 19:30 and doors at 18:00: 30 min too early."""
    plan = plan_back("19:30", [task("stew", 120)], opens="18:00")

    assert ("'stew' starts at 17:30, 30 min before the kitchen opens at 18:00.",) == plan.conflicts


def test_an_early_start_is_taken_before_too_few_hands():
    """Two hours of work for one cook, an hour and a half of opening: the plan begins early."""
    stews = [task("stew", 60, hold=120), task("soup", 60, hold=120)]

    plan = plan_back("19:30", stews, opens="18:00")

    assert 1 == len(plan.conflicts)
    assert "before the kitchen opens" in plan.conflicts[0]


def test_a_hold_limit_that_the_tasks_themselves_break_is_named():
    """The base holds 5 min, and is wanted both at the sauce's start and 40 min later."""
    plan = plan_back("19:30", [
        task("base", 10, hold=5),
        task("sauce", 40, after="base"),
        task("garnish", 5, after=("base", "sauce")),
    ], cooks=3)  # fmt: skip

    assert ("'base' waits 40 min until 'garnish' and holds 5 min: 35 min too long.",) == (
        plan.conflicts
    )


def test_more_hands_than_there_are_cooks_is_named():
    """Plating for 24 takes three, and two are there."""
    plan = plan_back("19:30", [task("plate", 10, hands=3)], cooks=2)

    assert ("Too few hands between 19:20 and 19:30: 'plate' needs 3, and there are 2 cooks.",) == (
        plan.conflicts
    )


def test_a_named_cook_in_two_places_is_named():
    """Both are the sauce cook's, and neither can wait, though another cook is free."""
    plan = plan_back(
        "19:30",
        [task("foam", 5, hold=0, cook="sauce"), task("glaze", 5, hold=0, cook="sauce")],
        cooks=["sauce", "larder"],
    )

    assert (
        "the cook “sauce” is wanted in two places between 19:25 and 19:30: 'foam' and 'glaze'.",
    ) == (plan.conflicts)


def test_equipment_that_is_short_is_named():
    """Two soufflés for one oven, and neither can wait."""
    souffles = [task(name, 12, hands=0, equipment="oven", hold=0) for name in ("large", "small")]

    assert ("Not enough of 'oven' between 19:18 and 19:30: 'large' and 'small' need 2, "
            "and there is 1.",) == plan_back("19:30", souffles).conflicts  # fmt: skip


# Checking any plan


def test_a_students_plan_is_checked_start_by_start():
    """Each slip once, in words; the right plan gives no finding."""
    tasks = [
        task("sear", 25),
        task("roast", 60, hands=0, after="sear", rest=15),
        task("carve", 15, after="roast", hold=2),
    ]
    right = {"sear": "17:35", "roast": "18:00", "carve": "19:15"}
    slips = {
        "sear": ("17:36", "'roast' starts at 18:00, but 'sear' is ready only at 18:01."),
        "roast": ("18:01", "'carve' starts at 19:15, but 'roast' is rested only at 19:16."),
        "carve": (
            "19:16",
            "'carve' is ready at 19:31, 1 min after the service at 19:30.",
        ),
    }

    assert [] == check_plan(right, tasks, serve_at="19:30")
    for name, (start, words) in slips.items():
        assert [words] == check_plan(right | {name: start}, tasks, serve_at="19:30")


def test_a_hold_limit_is_measured_to_the_last_use():
    """By hand: carved at 19:05, holds 2 min, served at 19:30: 25 min, 23 too long."""
    findings = check_plan({"carve": "18:50"}, [task("carve", 15, hold=2)], serve_at="19:30")

    assert ["'carve' waits 25 min until the service and holds 2 min: 23 min too long."] == findings


def test_what_must_not_wait_is_told_so():
    """By hand: done at 19:20 for 19:30."""
    findings = check_plan({"soufflé": "19:10"}, [task("soufflé", 10, hold=0)], serve_at="19:30")

    assert ["'soufflé' waits 10 min until the service and must not wait at all."] == findings


def test_missing_unknown_and_unreadable_starts_are_findings():
    """A student's sheet is read to its end, whatever stands on it."""
    tasks = [task("soup", 10), task("bread", 10), task("salad", 10)]

    findings = check_plan({"soup": "half seven", "bred": "19:00", "salad": "19:20"}, tasks,
                          serve_at="19:30", cooks=3)  # fmt: skip

    assert 3 == len(findings)
    assert "The start of 'soup': 'half seven' is no clock time" in findings[0]
    assert "No start is given for 'bread'." == findings[1]
    assert "'bred' is no task of this service." == findings[2]


def test_a_start_after_the_service_is_late_and_not_the_day_before():
    """19:45 for 19:30 is a quarter of an hour late, and 10 min of work more."""
    findings = check_plan({"soup": "19:45"}, [task("soup", 10, hold=5)], serve_at="19:30")

    assert ["'soup' is ready at 19:55, 25 min after the service at 19:30."] == findings


def test_neighbouring_overloads_are_told_once():
    """By hand: three tasks of one hand, two cooks; short from 19:10 to 19:20 only."""
    tasks = [task("a", 20), task("b", 20), task("c", 10)]
    starts = {"a": "19:00", "b": "19:10", "c": "19:10"}

    assert ["Too few hands between 19:10 and 19:20: 'a', 'b' and 'c' need 3, "
            "and there are 2 cooks."] == check_plan(starts, tasks, "19:30", cooks=2)  # fmt: skip


def test_a_plan_brings_its_own_crew_to_the_check():
    """The same plan checked with fewer cooks is short of hands."""
    plan = brackwater(opens="14:00")

    assert [] == check_plan(plan, read_tasks())
    assert any(
        "oven shelf" in finding
        for finding in check_plan(
            plan, read_tasks(), equipment={"oven shelf": 1, "burner": 4, "stick blender": 1},
        )
    ) is False  # fmt: skip
    assert any("burner" in each for each in check_plan(plan, read_tasks(), equipment=KIT | {
        "burner": 1}))  # fmt: skip


# Brackwater House


def test_the_model_service_is_planned_without_conflict():
    """Foam within its 6 min of the plate, all rolls rested, work from 16:22."""
    plan = brackwater(opens="14:00")

    assert plan.feasible
    assert plan.tried_all
    assert "19:20" == plan.starts["plate for 24"]
    assert plan.waits["aerate the cider foam"] <= minutes(6)
    assert "16:22" == next(iter(plan.starts.values()))
    assert ("knead the dough", "shape the rolls", "bake the rolls") == plan.critical_chain


def test_the_running_sheet_and_the_lists_name_every_task():
    """Nothing falls off the paper, and the caution stands below."""
    plan = brackwater()
    sheet, lists = str(plan), plan.cook_lists()

    for name in plan.starts:
        assert name in sheet
        assert name in lists
    assert "Every limit is kept." in sheet
    assert "a probe decides when food is done, and the local food code" in sheet
    assert ["roast:", "sauce:", "larder:", "on its own:"] == [
        line for line in lists.splitlines() if not line.startswith(" ")
    ]


def test_a_sheet_with_conflicts_lists_them():
    """The conflict stands on the sheet, not the all-clear."""
    sheet = str(plan_back("19:30", [task("stew", 120)], opens="18:00"))

    assert "- 'stew' starts at 17:30" in sheet
    assert "Every limit is kept" not in sheet


def test_a_cook_hands_over_when_called_to_a_task_of_her_own():
    """By hand: two cooks; both do their own for 10 min, one at each end of a task of 20."""
    plan = plan_back("19:30", [
        task("ana's", 10, cook="ana", hold=0),
        task("ben's", 10, cook="ben", hold=10),
        task("long", 20, hold=0),
    ], cooks=["ana", "ben"])  # fmt: skip

    assert plan.feasible
    on_long = [(cook, piece[0]) for cook, pieces in plan.by_cook.items() for piece in pieces
               if piece[2] == "long"]  # fmt: skip
    assert 2 == len(on_long)


def test_the_same_tasks_give_the_same_plan():
    """Deterministic, run after run."""
    assert str(brackwater()) == str(brackwater())


# Referee: every plan in whole minutes, looked at minute by minute


def feasible_plans(tasks, cooks, kit, horizon):
    """Every choice of starts (minutes before the service) that keeps all limits, found plainly."""
    by_name = {each.name: each for each in tasks}
    order = []
    while len(order) < len(tasks):
        order += [
            each
            for each in tasks
            if each not in order
            and all(later in order for later in tasks if each.name in later.after)
        ]

    def extend(i, starts):
        if i == len(order):
            yield dict(starts)
            return
        each = order[i]
        for start in range(-horizon, 1):
            starts[each.name] = start
            if keeps_times(each, by_name, starts) and keeps_counts(by_name, starts, cooks, kit):
                yield from extend(i + 1, starts)
            del starts[each.name]

    yield from extend(0, {})


def whole(quantity):
    return 0 if quantity is None else round(quantity.to("min").magnitude)


def keeps_times(each, by_name, starts):
    """The item is ready for its use and has not waited too long; uses are placed already."""
    ready = starts[each.name] + whole(each.duration) + whole(each.rest)
    uses = [starts[name] for name, other in by_name.items() if each.name in other.after]
    if any(ready > use for use in uses) or ready > 0:
        return False
    wait = max(uses, default=0) - ready
    return each.hold is None or wait <= whole(each.hold)


def keeps_counts(by_name, starts, cooks, kit):
    """Hands, each named cook and each piece of equipment, minute by minute."""
    for minute in range(min(starts.values()), 1):
        at_work = [
            by_name[name]
            for name, start in starts.items()
            if start <= minute < start + whole(by_name[name].duration)
        ]
        if sum(each.hands for each in at_work) > len(cooks):
            return False
        for cook in cooks:
            if sum(each.cook == cook and each.hands > 0 for each in at_work) > 1:
                return False
        for item, number in kit.items():
            if sum(each.equipment.count(item) for each in at_work) > number:
                return False
    return True


COOKS, OVEN = ("ana", "ben"), {"oven": 1}


@st.composite
def services(draw, most=3):
    """Up to a few short tasks with all that a task can have."""
    names = "abcd"[: draw(st.integers(1, most))]
    return [
        task(
            name,
            draw(st.integers(1, 3)),
            hands=draw(st.integers(0, 2)),
            after=tuple(sorted(draw(st.sets(st.sampled_from(names[:i]))))) if i else (),
            hold=draw(st.sampled_from([None, 0, 1, 3])),
            rest=draw(st.sampled_from([None, None, 1])),
            equipment=draw(st.sampled_from([(), "oven"])),
            cook=draw(st.sampled_from([None, "ana"])),
        )
        for i, name in enumerate(names)
    ]


def longest(tasks):
    return sum(whole(each.duration) + whole(each.rest) for each in tasks)


def before_service(plan):
    """The plan's starts in minutes before the service."""
    return {name: (start_s - plan.serve_s) / 60 for name, start_s in plan.starts_s.items()}


@settings(deadline=None, max_examples=150)
@given(services(), st.sampled_from([COOKS, COOKS[:1]]))
def test_a_plan_is_found_exactly_when_there_is_one_and_it_is_the_latest(tasks, cooks):
    """Three tasks: the search through all plans finds one if and only if the planner does, and
    none whose starts add up to later."""
    all_of_them = list(feasible_plans(tasks, cooks, OVEN, longest(tasks)))

    plan = plan_back("19:30", tasks, cooks=cooks, equipment=OVEN)

    assert plan.tried_all
    assert bool(all_of_them) == plan.feasible, plan.conflicts
    if plan.feasible:
        assert before_service(plan) in all_of_them
        assert sum(before_service(plan).values()) == max(sum(p.values()) for p in all_of_them)


@settings(deadline=None, max_examples=30)
@given(services(most=4), st.integers(1, 8))
def test_the_opening_is_kept_when_some_plan_keeps_it(tasks, open_for):
    """Four tasks and a kitchen that opens some minutes before the service."""
    opens = say_clock(read_clock("19:30", "serve_at") - 60 * open_for)
    fits = next(feasible_plans(tasks, COOKS, OVEN, open_for), None)

    plan = plan_back("19:30", tasks, cooks=COOKS, equipment=OVEN, opens=opens)

    assert (fits is not None) == plan.feasible, plan.conflicts
    if fits is not None:
        assert min(before_service(plan).values()) >= -open_for


@settings(deadline=None, max_examples=300)
@given(services(), st.data())
def test_the_check_finds_fault_exactly_where_the_referee_does(tasks, data):
    """A plan with starts moved a little: no finding if and only if the minute-by-minute look
    finds none."""
    by_name = {each.name: each for each in tasks}
    planned = before_service(plan_back("19:30", tasks, cooks=COOKS, equipment=OVEN))
    starts = {name: round(planned[name]) + data.draw(st.integers(-2, 2)) for name in by_name}
    right = all(keeps_times(each, by_name, starts) for each in tasks)
    right = right and keeps_counts(by_name, starts, COOKS, OVEN)
    serve_s = read_clock("19:30", "serve_at")
    said = {name: say_clock(serve_s + 60 * start) for name, start in starts.items()}

    findings = check_plan(said, tasks, serve_at="19:30", cooks=COOKS, equipment=OVEN)

    assert right == (not findings), findings


@settings(deadline=None, max_examples=100)
@given(services(most=4))
def test_every_hand_that_is_needed_is_handed_out(tasks):
    """In a feasible plan each minute of work has its cooks, each cook one task, her own first."""
    plan = plan_back("19:30", tasks, cooks=COOKS, equipment=OVEN)
    if not plan.feasible:
        return
    for minute in range(-longest(tasks), 0):
        at_s = plan.serve_s + 60 * minute
        doing = {cook: [name for begin_s, end_s, name in pieces if begin_s <= at_s < end_s]
                 for cook, pieces in plan.by_cook.items()}  # fmt: skip

        assert all(len(names) <= 1 for names in doing.values())
        for each in tasks:
            busy = plan.starts_s[each.name] <= at_s < plan.ends_s(each.name)[0]
            cooks = [cook for cook, names in doing.items() if each.name in names]
            assert (each.hands if busy else 0) == len(cooks)
            if busy and each.cook and each.hands:
                assert each.cook in cooks


@settings(deadline=None, max_examples=60)
@given(services(), st.data())
def test_a_task_can_use_its_slack_and_not_a_minute_more(tasks, data):
    """Moved earlier by its slack the plan still holds; slack is bounded by the plan's beginning."""
    plan = plan_back("19:30", tasks, cooks=COOKS, equipment=OVEN)
    if not plan.feasible:
        return
    name = data.draw(st.sampled_from(list(plan.starts)))
    slack_s = round(plan.slack[name].to("s").magnitude)

    def findings(earlier_s):
        starts = plan.starts | {name: say_clock(plan.starts_s[name] - earlier_s)}
        begin = say_clock(min(plan.starts_s.values()))
        return check_plan(starts, tasks, "19:30", COOKS, OVEN, opens=begin)

    assert [] == findings(slack_s)
    assert findings(slack_s + 60)


def test_a_large_service_that_is_not_searched_to_the_end_says_so():
    """By hand: 16 loaves take 280 min of one oven and hold 200 at most, so the first is too old;
    but there are 16! orders."""
    loaves = [task(f"loaf {n}", 10 + n, hands=0, equipment="oven", hold=200) for n in range(16)]

    plan = plan_back("19:30", loaves)

    assert not plan.feasible
    assert not plan.tried_all
    assert "a plan without conflict may exist" in str(plan)


# What comes in


@pytest.mark.parametrize(
    ("text", "moment"),
    [
        ("19:30", 70200),
        ("19.30", 70200),
        ("7:30 pm", 70200),
        ("12:15 am", 86400 + 900),
        ("12:00 pm", 43200),
        ("03:00", 10800),
        ("02:59:30", 86400 + 10770),
        ("22:00 the day before", 79200 - 86400),
        ("22:00 2 days before", 79200 - 2 * 86400),
    ],
)
def test_clock_times_as_they_are_typed(text, moment):
    """Seconds from the midnight before the service, by hand."""
    assert moment == read_clock(text, "serve_at")


@given(st.integers(-3 * 86400, 86400))
def test_a_moment_is_said_and_read_back(moment):
    """There and back, over the days before."""
    assert moment == read_clock(say_clock(moment), "serve_at") or moment >= 86400 + 10800


def test_durations_in_any_unit_of_time_give_one_plan():
    """Half an hour is 30 min is 1800 s."""
    plans = [
        plan_back("19:30", [Task("soup", duration)])
        for duration in (Q_(0.5, "h"), Q_(30, "min"), Q_(1800, "s"))
    ]

    assert all({"soup": "19:00"} == plan.starts for plan in plans)


def test_a_task_list_is_read_from_a_file(tmp_path):
    """Names parted by semicolons; an empty field is none."""
    file = tmp_path / "menu.csv"
    file.write_text(
        "task,duration_min,hands,after,rest_min,hold_min,equipment,cook\n"
        "bread,20,0,,10,,oven,\nsoup,30,,,,60,burner;large pan,sauce\n"
        "serve,5,2,bread; soup,,0,,\n"
    )

    tasks = read_tasks(file)

    assert tasks[0] == task("bread", 20.0, hands=0, rest=10.0, equipment="oven")
    assert ("burner", "large pan") == tasks[1].equipment
    assert ("bread", "soup") == tasks[2].after
    assert plan_back("19:30", tasks, cooks=["sauce", "larder"]).feasible


@pytest.mark.parametrize(
    ("text", "error", "words"),
    [
        ("task,duration_min\nsoup,long\n", Unreadable, "line 2: duration_min “long” is no number"),
        ("task,duration_min\nsoup,10\nbread,\n", Unreadable, "line 3: duration_min is empty"),
        ("task\nsoup\n", Unreadable, "needs a line of heads .* Line 1 is “task”"),
        ("task,duration_min,hands\nsoup,10,1.5\n", OutOfRange, "hands, soup: needs a whole number"),
    ],
)
def test_a_bad_line_of_a_task_list_is_named(tmp_path, text, error, words):
    """By its number in the file."""
    file = tmp_path / "menu.csv"
    file.write_text(text)

    with pytest.raises(error, match=words):
        read_tasks(file)


SOUP = task("soup", 10)


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: Task("soup", 10), WrongKind, "duration, soup: needs a quantity"),
        (lambda: Task("soup", minutes(0)), OutOfRange, "duration, soup: needs more than 0"),
        (lambda: Task("soup", minutes(10), hold=Q_(1, "g")), WrongKind, "hold, soup"),
        (lambda: Task("soup", minutes(10), rest=minutes(-1)), OutOfRange, "rest, soup"),
        (lambda: Task("soup", minutes(10), hands=-1), OutOfRange, "hands, soup"),
        (lambda: Task("", minutes(10)), WrongKind, "name: needs a name"),
        (lambda: plan_back("noon", [SOUP]), Unreadable, "serve_at: 'noon' is no clock time"),
        (lambda: plan_back("25:10", [SOUP]), Unreadable, "from 00:00 to 23:59"),
        (lambda: plan_back("13:10 pm", [SOUP]), Unreadable, "am and pm go from 1 to 12"),
        (lambda: plan_back(19.5, [SOUP]), WrongKind, "serve_at: needs a clock time"),
        (lambda: plan_back("19:30", []), OutOfRange, "at least one task"),
        (lambda: plan_back("19:30", ["soup"]), WrongKind, "tasks: needs Task"),
        (lambda: plan_back("19:30", [SOUP, SOUP]), OutOfRange, "'soup' is in the list twice"),
        (lambda: plan_back("19:30", [task("a", 5, after="b")]), UnknownName, "after, a: 'b'"),
        (lambda: plan_back("19:30", [task("a", 5, after="b"), task("b", 5, after="a")]), OutOfRange,
         "'a', 'b' wait for each other"),
        (lambda: plan_back("19:30", [SOUP], cooks=0), OutOfRange, "cooks: needs at least 1"),
        (lambda: plan_back("19:30", [SOUP], cooks=[]), OutOfRange, "cooks: needs at least one"),
        (lambda: plan_back("19:30", [task("a", 5, cook="ana")], cooks=["ben"]), UnknownName,
         "cook: 'ana' is not one of the cooks ben"),
        (lambda: plan_back("19:30", [task("a", 5, equipment="ovn")], equipment={"oven": 1}),
         UnknownName, "equipment: 'ovn'"),
        (lambda: plan_back("19:30", [SOUP], equipment={"oven": 0}), OutOfRange, "equipment, oven"),
        (lambda: plan_back("19:30", [SOUP], opens="dawn"), Unreadable, "opens: 'dawn'"),
        (lambda: check_plan({"soup": "19:00"}, [SOUP]), OutOfRange, "serve_at: "),
        (lambda: read_tasks("no such file.csv"), Unreadable, "cannot be read"),
    ],
)  # fmt: skip
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()


# preparation


def test_preparation_stands_early_and_the_finish_late():
    """By hand: ana 18:00–19:10 makes a stew; ben cuts 20 min: 18:00 early, 19:10 at the latest."""
    tasks = [task("stew", 70, cook="ana", hold=0), task("cut", 20, cook="ben")]
    late = plan_back("19:30", [*tasks, task("plate", 20, hands=2, after=("stew", "cut"))])
    early = plan_back("19:30", [tasks[0], replace(tasks[1], early=True),
                                task("plate", 20, hands=2, after=("stew", "cut"))])  # fmt: skip

    assert ("18:00", "18:50") == (late.starts["stew"], late.starts["cut"])
    assert "18:00" == early.starts["cut"]
    assert "19:10" == early.starts["plate"]
    assert early.critical_chain == late.critical_chain


def test_preparation_waits_no_longer_than_it_holds():
    """By hand: used at 19:10, holds 30 min, takes 20: not before 18:20."""
    plan = plan_back("19:30", [
        task("stew", 70, cook="ana", hold=0),
        Task("cut", minutes(20), hold=minutes(30), cook="ben", early=True),
        task("plate", 20, hands=2, after=("stew", "cut")),
    ])  # fmt: skip

    assert "18:20" == plan.starts["cut"]
    assert () == plan.conflicts


def test_preparation_goes_past_a_time_without_hands():
    """By hand: one cook; dough 18:00–18:10 rests an hour, is baked by 19:30; cutting from 18:10."""
    plan = plan_back("19:30", [
        Task("dough", minutes(10), rest=minutes(60)),
        Task("bake", minutes(20), after="dough", hold=minutes(0)),
        Task("cut", minutes(15), early=True),
    ])  # fmt: skip

    assert {"dough": "18:00", "cut": "18:10", "bake": "19:10"} == plan.starts
    assert ("dough", "bake") == plan.critical_chain


def test_preparation_brings_nobody_in_before_the_door_opens():
    """By hand: the long roast starts at 16:30, before 17:00; cutting waits for the opening."""
    plan = plan_back("19:30", [
        Task("roast", minutes(180), hands=0),
        Task("cut", minutes(15), early=True),
    ], opens="17:00")  # fmt: skip

    assert "17:00" == plan.starts["cut"]


def test_a_task_list_says_what_is_preparation(tmp_path):
    """`yes` under `early`, nothing for the rest; a third word is named with its line."""
    path = tmp_path / "tasks.csv"
    path.write_text("task,duration_min,early\ncut,10,yes\nfoam,5,\n", encoding="utf-8")
    assert [True, False] == [each.early for each in read_tasks(path)]
    path.write_text("task,duration_min,early\ncut,10,perhaps\n", encoding="utf-8")

    with pytest.raises(Unreadable, match=r"line 2: early .*'perhaps' came"):
        read_tasks(path)
