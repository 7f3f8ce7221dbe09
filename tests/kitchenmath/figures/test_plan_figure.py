"""The drawing of a plan: bars against its numbers, labels clear of each other, words that match."""

import itertools
import subprocess
import sys

import pytest

from kitchenmath.errors import UnknownName
from kitchenmath.figures.frame import Picture
from kitchenmath.figures.plan import LOOKS, PlanChart
from kitchenmath.figures.plan_rows import plan_in_words, plan_rows
from kitchenmath.service import Task, plan_back, read_tasks
from kitchenmath.units.registry import Q_


def minutes(number):
    return Q_(number, "min")


def brackwater():
    return plan_back(
        "19:30",
        read_tasks(),
        cooks=["roast", "sauce", "larder"],
        equipment={"burner": 4, "oven shelf": 2, "stick blender": 1},
    )


def drawn(rows, clock_min=None):
    """The picture of some rows, as high as they need, and its chart."""
    height = 0.27 * (len(rows.rows) + len({row.lane for row in rows.rows})) + 1.2
    picture = Picture(6.4, height)
    chart = PlanChart(picture, clock_min)
    chart.show(rows)
    picture.png()
    return picture, chart


AFTERNOON = (15 * 60, 19 * 60 + 30)
ROAST = [
    Task("sear", minutes(20), cook="ana"),
    Task("roast", minutes(50), hands=0, after="sear", rest=minutes(10), equipment="oven"),
    Task("sauce", minutes(30), hold=minutes(60), cook="ben"),
    Task("plate", minutes(5), hands=2, after=("roast", "sauce")),
    Task("foam", minutes(4), hold=minutes(8), cook="ben", after="sauce"),
]


def test_every_bar_stands_where_the_plan_says():
    """By hand: plate 19:25; roast 18:25 to 19:15 rests till then; sear 18:05; all in minutes."""
    _, chart = drawn(plan_rows(plan_back("19:30", ROAST, cooks=["ana", "ben"])))

    def spans(look):
        return sorted((bar.get_x(), bar.get_x() + bar.get_width()) for bar in chart.bars[look])

    assert [(1105, 1155)] == spans("on its own")
    assert [(1155, 1165)] == spans("rests")
    # ana: sear, plate; ben: sauce, foam and plate, one before the other.
    assert (1085, 1105) in spans("at work")
    assert 2 == spans("at work").count((1165, 1170))
    assert 1170 == chart.service.get_xdata()[0]


def test_a_plan_short_of_hands_shows_whom_nobody_is_free_for():
    """By hand: two work the dough, one cook is there; the sauce of 19:15 finds nobody either.

    Dough 19:00 to 19:10 wants two hands, one short. Sauce and stock both fill 19:10 to 19:30.
    """
    tasks = [
        Task("dough", minutes(10), hands=2, hold=minutes(20)),
        Task("sauce", minutes(20)),
        Task("stock", minutes(20), after="dough", cook="ana"),
    ]
    plan = plan_back("19:30", tasks, cooks=["ana"])
    rows = plan_rows(plan)
    _, chart = drawn(rows)
    words = plan_in_words(rows)

    assert not plan.feasible
    assert "nobody is free: " in words
    short = [
        (row.name, row.start_min, row.work_min) for row in rows.rows if row.look == "nobody is free"
    ]
    assert [("dough", 1140, 10), ("sauce", 1150, 20)] == sorted(short)
    assert {"xxxx"} == {bar.get_hatch() for bar in chart.bars["nobody is free"]}
    assert 2 == len(chart.bars["nobody is free"])


def test_a_cook_called_away_leaves_a_gap_that_is_drawn():
    """By hand: the stew wants ana from 19:00 to 19:30, her own sauce from 19:10 to 19:20."""
    tasks = [
        Task("stew", minutes(30), hold=minutes(0)),
        Task("sauce", minutes(10), hold=minutes(10), cook="ana"),
        Task("plate", minutes(10), hold=minutes(0), cook="ana", after="sauce"),
    ]
    words = plan_in_words(plan_rows(plan_back("19:30", tasks, cooks=["ana"])))

    assert "ana: stew 19:00–19:10; sauce 19:10–19:20; plate 19:20–19:30." in words
    assert "nobody is free: stew 19:10–19:30." in words


def test_a_pair_of_hands_that_is_missing_all_along_is_one_bar():
    """By hand: of two hands for the stew one is there, first ben's and from 19:15 on ana's."""
    tasks = [
        Task("stew", minutes(30), hands=2, hold=minutes(0)),
        Task("sauce", minutes(15), hold=minutes(0), cook="ana"),
        Task("garnish", minutes(15), hold=minutes(0), cook="ben", after="sauce"),
    ]
    words = plan_in_words(plan_rows(plan_back("19:30", tasks, cooks=["ana", "ben"])))

    assert "ben: stew 19:00–19:15; garnish 19:15–19:30." in words
    assert "nobody is free: stew 19:00–19:30." in words


def test_a_plan_with_hands_enough_has_nobody_missing():
    """The invented service with its own cooks."""
    assert "nobody is free" not in {row.look for row in plan_rows(brackwater()).rows}


def test_bars_moved_to_another_plan_stand_as_if_drawn_for_it():
    """From long to short and back, on one clock axis; what is not needed is hidden."""
    few = plan_rows(plan_back("19:30", ROAST, cooks=["ana", "ben"]))
    many = plan_rows(brackwater())
    looks = [*LOOKS]
    _, chart = drawn(many, AFTERNOON)
    ax = chart.ax
    made = len(ax.get_children())
    for rows in (few, many, few, many):
        chart.show(rows)
        _, fresh = drawn(rows, AFTERNOON)

        for look in looks:
            assert as_drawn(fresh.bars[look]) == as_drawn(chart.bars[look])
        for words in ("labels", "lanes"):
            assert as_written(getattr(fresh, words)) == as_written(getattr(chart, words))
        seen = [part for part in (*ax.patches, *ax.texts) if part.get_visible()]
        assert len(seen) == sum(map(len, (*chart.bars.values(), chart.labels, chart.lanes)))
    assert made == len(ax.get_children())


def as_drawn(bars):
    """Where bars stand, and how they are filled."""
    return [(bar.get_bbox().bounds, bar.get_hatch(), bar.get_facecolor()) for bar in bars]


def as_written(texts):
    """What texts say, and where."""
    return [(text.get_text(), text.get_position(), text.get_ha()) for text in texts]


def test_the_opening_is_a_line_of_its_own_and_said():
    """16:00 is 960 min from midnight; without an opening there is no line."""
    rows = plan_rows(plan_back("19:30", ROAST, cooks=["ana", "ben"], opens="16:00"))
    _, chart = drawn(rows)

    assert 960 == chart.opens.get_xdata()[0]
    assert "The kitchen opens at 16:00." in plan_in_words(rows)
    assert not drawn(plan_rows(brackwater()))[1].opens.get_visible()


def test_a_wait_is_hatched_a_rest_dotted_and_both_are_told_apart_without_colour():
    """Work is darker than unwatched work; rest and wait carry different hatches."""
    _, chart = drawn(plan_rows(brackwater()))

    def lightness(bar):
        red, green, blue, _ = bar.get_facecolor()
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    hatches = {chart.bars[look][0].get_hatch() for look in ("at work", "rests", "waits")}

    assert 3 == len(hatches)
    assert lightness(chart.bars["on its own"][0]) - lightness(chart.bars["at work"][0]) > 0.3


@pytest.mark.parametrize("by", ["cook", "equipment"])
def test_every_row_has_its_label_and_no_two_texts_overlap(by):
    """Rendered: the boxes of all texts are apart and inside the picture."""
    rows = plan_rows(brackwater(), by)
    picture, chart = drawn(rows)
    texts = [*chart.labels, *chart.lanes]
    boxes = [text.get_window_extent() for text in texts]

    assert len(rows.rows) + 1 == len(chart.labels)
    for one, other in itertools.combinations(boxes, 2):
        assert not one.overlaps(other)
    for box in boxes:
        assert picture.figure.bbox.x0 <= box.x0
        assert box.x1 <= picture.figure.bbox.x1


def test_a_bar_over_the_whole_width_carries_its_name():
    """Nowhere else is room."""
    _, chart = drawn(plan_rows(plan_back("19:30", [Task("long slow roast", minutes(300))])))
    box = chart.labels[0].get_window_extent()
    bar = chart.bars["at work"][0].get_window_extent()

    assert bar.x0 < box.x0
    assert box.x1 < bar.x1


@pytest.mark.parametrize(
    ("length_min", "ticks"),
    [(30, ["19:00", "19:05"]), (240, ["15:30", "16:00"]), (48 * 60, ["00:00", "08:00"])],
)
def test_ticks_stand_on_whole_steps_of_the_clock(length_min, ticks):
    """Half an hour, four hours and two days, none with a crowd of ticks."""
    _, chart = drawn(plan_rows(plan_back("19:30", [Task("stock", minutes(length_min), hands=0)])))
    labels = [label.get_text() for label in chart.service.axes.get_xticklabels()]

    assert set(ticks) <= set(labels)
    assert len(labels) <= 10


def test_the_words_say_what_the_picture_shows():
    """By hand, each lane with its times, rests and waits."""
    words = plan_in_words(plan_rows(plan_back("19:30", ROAST, cooks=["ana", "ben"])))

    assert "ana: sear 18:05–18:25; plate 19:25–19:30." in words
    assert "on its own: roast 18:25–19:15, then rests 10 min." in words
    assert "Service at 19:30." == words.splitlines()[-1]


def test_the_words_name_every_row():
    """Nothing is only in the picture."""
    for by in ("cook", "equipment"):
        rows = plan_rows(brackwater(), by)
        words = plan_in_words(rows)

        assert all(row.name in words for row in rows.rows)
        assert all(f"{row.lane}:" in words for row in rows.rows)


def test_a_wait_is_drawn_once_though_three_cooks_work():
    """Stuffing takes three cooks, then trussing; what becomes of the birds is one thing."""
    birds = [Task("stuff", minutes(10), hands=3), Task("truss", minutes(20), hands=3)]
    rows = plan_rows(plan_back("19:30", birds, cooks=3))

    assert [3, 3] == [[row.name for row in rows.rows].count(name) for name in ("stuff", "truss")]
    # Each waits for the service; the first done waits as long as the second takes.
    assert [10] == [row.wait_min for row in rows.rows if row.wait_min > 0]


def test_the_words_name_the_day_of_a_long_brine():
    """25 h before 19:30 is 18:30 the day before."""
    plan = plan_back("19:30", [Task("brine", minutes(25 * 60), hands=0)])

    assert "brine 18:30 the day before–19:30." in plan_in_words(plan_rows(plan))


def test_a_plan_without_equipment_draws_an_empty_axis():
    """No row, no key, and the words still name the service."""
    rows = plan_rows(plan_back("19:30", [Task("soup", minutes(10))]), by="equipment")
    _, chart = drawn(rows)

    assert () == rows.rows
    assert chart.key is None
    assert "Service at 19:30." == plan_in_words(rows)


def test_an_unknown_grouping_is_refused():
    """By cook or by equipment."""
    with pytest.raises(UnknownName, match="by: 'colour'"):
        plan_rows(brackwater(), by="colour")


def test_safety_and_service_need_neither_matplotlib_nor_scipy():
    """In a fresh interpreter where neither can be had."""
    code = (
        "import sys; sys.modules.update(matplotlib=None, scipy=None); "
        "import kitchenmath.safety, kitchenmath.service; "
        "print(kitchenmath.service.plan_back('19:30', kitchenmath.service.read_tasks()).serve_at)"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)

    assert "19:30" == ran.stdout.strip()
