"""The bench and the recall as panels, worked as with finger and keyboard."""

import importlib
import json
import pkgutil
import random

import pytest

from kitchenmath import drills
from kitchenmath.bench import BENCHES
from kitchenmath.errors import OutOfRange
from kitchenmath.panels.benching import bench_panel, my_numbers_panel
from kitchenmath.panels.drilling import LESSONS, recall_panel
from tests.helpers.typed_at_benches import TYPED


def fill(name, folder):
    panel = bench_panel(name, folder)
    for key, text in TYPED[name].items():
        panel.boxes[key].value = text
    return panel


@pytest.mark.parametrize("name", BENCHES)
def test_a_bench_says_what_it_made_of_it_and_stands_there_the_next_time(name, tmp_path):
    said = fill(name, tmp_path).words.value
    again = bench_panel(name, tmp_path)

    assert f"Kept as {BENCHES[name].title}" in said
    assert TYPED[name] == {key: again.boxes[key].value for key in TYPED[name]}
    assert "Kept as" not in again.words.value and again.words.value


def test_a_bench_is_emptied_with_what_was_kept(tmp_path):
    panel = fill("yield", tmp_path)
    panel.empty.click()

    assert ["", ""] == [box.value for box in panel.boxes.values()]
    assert "" == bench_panel("yield", tmp_path).boxes["bought"].value


def test_what_cannot_be_read_is_said_and_not_kept(tmp_path):
    panel = bench_panel("yield", tmp_path)
    panel.boxes["bought"].value = "a root"
    panel.boxes["cut"].value = "640 g"

    assert "As it came:" in panel.words.value
    assert not list(tmp_path.iterdir())


def test_the_last_lesson_orders_by_ones_own_yield_and_water_by_ones_own_friction(tmp_path):
    """1440 g ÷ 0.703 = 2048 g, at 68 % 2118 g, so 3 nets; 3 x 25 - 23 - 23 - 9 = 20 °C."""
    assert "Nothing of yours" in my_numbers_panel(tmp_path).words.value
    for name in ("yield", "friction", "foam"):
        fill(name, tmp_path)
    said = my_numbers_panel(tmp_path).words.value.replace("\u00a0", " ")

    assert "3 x 1 kg (need 2048 g" in said and "3 x 1 kg (need 2118 g" in said
    assert "my water has 20 °C" in said
    assert "mine does not hold" in said


def test_a_recall_asks_four_drills_of_earlier_lessons_only(tmp_path):
    for seed in range(50):
        names = recall_panel(5, tmp_path, random.Random(seed)).names
        assert 4 == len(set(names))
        assert {number for number, _ in names} == {1, 2, 3, 4}  # one of each, where there are four


def test_a_recall_begins_with_what_the_practice_sheets_train(tmp_path):
    cells = [
        {"id": "skill-1-drill", "cell_type": "code", "metadata": {}, "outputs": [],
         "source": ["drill_panel(buying.DRILLS['whole packs'])"]},
    ]  # fmt: skip
    sheet = {"cells": cells, "metadata": {"kitchen": {"practice": "re-teach", "round": 1}}}
    (tmp_path / "practise.ipynb").write_text(json.dumps(sheet))
    (tmp_path / "mine.ipynb").write_text("{")

    for seed in range(20):
        names = recall_panel(6, tmp_path, random.Random(seed)).names
        assert (4, "whole packs") == names[0]
        assert 4 == len({number for number, _ in names})  # three other lessons behind it
    assert (4, "whole packs") not in recall_panel(4, tmp_path).names


def test_a_recall_counts_what_came_right_at_the_first_try(tmp_path):
    panel = recall_panel(3, tmp_path)
    for turn in range(4):
        if turn < 2:
            question = panel.asked.round.drill.question
            right = question.judge(None, panel.asked.round.numbers).right
            panel.asked.typed.value = str(right).split(" (")[0]
        panel.following.click()

    assert "2 of 4 came right" in panel.words.value.replace("\u00a0", " ")


def test_before_the_second_lesson_there_is_nothing_to_recall():
    with pytest.raises(OutOfRange):
        recall_panel(1)


def test_every_drill_has_its_lesson():
    """Read from the package's files, so that a new module of drills is not left out."""
    modules = [
        importlib.import_module(f"{drills.__name__}.{module.name}")
        for module in pkgutil.iter_modules(drills.__path__)
    ]
    recalled = {id(drill) for each in LESSONS.values() for module in each
                for drill in module.DRILLS.values()}  # fmt: skip

    assert {id(drill) for module in modules for drill in module.DRILLS.values()} == recalled
