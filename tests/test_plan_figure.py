"""The drawing of a plan: bars against its numbers, labels clear of each other, words that match."""

import itertools
import subprocess
import sys

import pytest

from kitchenmath.errors import UnknownName
from kitchenmath.figures.frame import Picture
from kitchenmath.figures.plan import draw_plan, plan_in_words, plan_rows
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


def drawn(rows):
    """The picture of some rows, as high as they need, and its artists."""
    height = 0.27 * (len(rows["names"]) + len(set(rows["lanes"]))) + 1.2
    picture = Picture(6.4, height)
    artists = draw_plan(picture.axes(bottom=0.75 / height, top=1 - 0.05 / height), **rows)
    picture.png()
    return picture, artists


ROAST = [
    Task("sear", minutes(20), cook="ana"),
    Task("roast", minutes(50), hands=0, after="sear", rest=minutes(10), equipment="oven"),
    Task("sauce", minutes(30), hold=minutes(60), cook="ben"),
    Task("plate", minutes(5), hands=2, after=("roast", "sauce")),
    Task("foam", minutes(4), hold=minutes(8), cook="ben", after="sauce"),
]


def test_every_bar_stands_where_the_plan_says():
    """By hand: plate 19:25; roast 18:25 to 19:15 rests till then; sear 18:05; all in minutes."""
    _, artists = drawn(plan_rows(plan_back("19:30", ROAST, cooks=["ana", "ben"])))

    def spans(look):
        return sorted((bar.get_x(), bar.get_x() + bar.get_width()) for bar in artists[look])

    assert [(1105, 1155)] == spans("on its own")
    assert [(1155, 1165)] == spans("rests")
    # ana: sear, plate; ben: sauce, foam and plate, one before the other.
    assert (1085, 1105) in spans("at work")
    assert 2 == spans("at work").count((1165, 1170))
    assert 1170 == artists["service"].get_xdata()[0]


def test_a_wait_is_hatched_a_rest_dotted_and_both_are_told_apart_without_colour():
    """Work is darker than unwatched work; rest and wait carry different hatches."""
    _, artists = drawn(plan_rows(brackwater()))

    def lightness(bar):
        red, green, blue, _ = bar.get_facecolor()
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    hatches = {artists[look][0].get_hatch() for look in ("at work", "rests", "waits")}

    assert 3 == len(hatches)
    assert lightness(artists["on its own"][0]) - lightness(artists["at work"][0]) > 0.3


@pytest.mark.parametrize("by", ["cook", "equipment"])
def test_every_row_has_its_label_and_no_two_texts_overlap(by):
    """Rendered: the boxes of all texts are apart and inside the picture."""
    rows = plan_rows(brackwater(), by)
    picture, artists = drawn(rows)
    texts = [*artists["labels"], *artists["lanes"]]
    boxes = [text.get_window_extent() for text in texts]

    assert len(rows["names"]) + 1 == len(artists["labels"])
    for one, other in itertools.combinations(boxes, 2):
        assert not one.overlaps(other)
    for box in boxes:
        assert picture.figure.bbox.x0 <= box.x0
        assert box.x1 <= picture.figure.bbox.x1


def test_a_bar_over_the_whole_width_carries_its_name():
    """Nowhere else is room."""
    _, artists = drawn(plan_rows(plan_back("19:30", [Task("long slow roast", minutes(300))])))
    box = artists["labels"][0].get_window_extent()
    bar = artists["at work"][0].get_window_extent()

    assert bar.x0 < box.x0
    assert box.x1 < bar.x1


@pytest.mark.parametrize(
    ("length_min", "ticks"),
    [(30, ["19:00", "19:05"]), (240, ["15:30", "16:00"]), (48 * 60, ["00:00", "08:00"])],
)
def test_ticks_stand_on_whole_steps_of_the_clock(length_min, ticks):
    """Half an hour, four hours and two days, none with a crowd of ticks."""
    _, artists = drawn(plan_rows(plan_back("19:30", [Task("stock", minutes(length_min), hands=0)])))
    labels = [label.get_text() for label in artists["service"].axes.get_xticklabels()]

    assert set(ticks) <= set(labels)
    assert len(labels) <= 10


def test_the_words_say_what_the_picture_shows():
    """By hand, each lane with its times, rests and waits."""
    words = plan_in_words(**plan_rows(plan_back("19:30", ROAST, cooks=["ana", "ben"])))

    assert "ana: sear 18:05–18:25; plate 19:25–19:30." in words
    assert "on its own: roast 18:25–19:15, then rests 10 min." in words
    assert "Service at 19:30." == words.splitlines()[-1]


def test_the_words_name_every_row():
    """Nothing is only in the picture."""
    for by in ("cook", "equipment"):
        rows = plan_rows(brackwater(), by)
        words = plan_in_words(**rows)

        assert all(name in words for name in rows["names"])
        assert all(f"{lane}:" in words for lane in rows["lanes"])


def test_a_wait_is_drawn_once_though_three_cooks_work():
    """Stuffing takes three cooks, then trussing; what becomes of the birds is one thing."""
    birds = [Task("stuff", minutes(10), hands=3), Task("truss", minutes(20), hands=3)]
    rows = plan_rows(plan_back("19:30", birds, cooks=3))

    assert [3, 3] == [rows["names"].count(name) for name in ("stuff", "truss")]
    # Each waits for the service; the first done waits as long as the second takes.
    assert [10] == [wait for wait in rows["waits_min"] if wait > 0]


def test_the_words_name_the_day_of_a_long_brine():
    """25 h before 19:30 is 18:30 the day before."""
    plan = plan_back("19:30", [Task("brine", minutes(25 * 60), hands=0)])

    assert "brine 18:30 the day before–19:30." in plan_in_words(**plan_rows(plan))


def test_a_plan_without_equipment_draws_an_empty_axis():
    """No row, no key, and the words still name the service."""
    rows = plan_rows(plan_back("19:30", [Task("soup", minutes(10))]), by="equipment")
    _, artists = drawn(rows)

    assert [] == rows["names"]
    assert artists["key"] is None
    assert "Service at 19:30." == plan_in_words(**rows)


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
