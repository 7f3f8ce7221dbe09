"""How long a lesson takes: worked out once, and said alike wherever a lesson is offered."""

import json
from pathlib import Path

import pytest
from coursework.sets.notebooks import with_times

from kitchenmath.bench import BENCHES
from kitchenmath.pages.times import times_of
from kitchenmath.pages.writing import lesson_card, start_page

KIT = Path(__file__).parents[3]
LESSONS = sorted(KIT.glob("lessons/*.ipynb"))
by_lesson = {"ids": [file.stem for file in LESSONS]}


def made(*cells):
    """A notebook of texts, code, and one printed result."""
    return json.dumps(
        {
            "cells": [
                {
                    "cell_type": kind,
                    "source": [source],
                    "metadata": {"tags": tags},
                    "outputs": [{}] * (source == "print(1)"),
                }
                for kind, source, *tags in cells
            ]
        },
        ensure_ascii=False,
    )


def test_minutes_at_home_by_hand():
    """600 words / 150 = 4; recall 5, drill 4, predict 1, sliders 3, a result 0.5: 17.5, so 20.

    What is only imported is no panel, and a bench costs no minute at home. What lies folded is
    left to whoever wants it.
    """
    text = made(
        ("markdown", "word " * 600),
        ("code", "from kitchenmath.panels.drilling import drill_panel, recall_panel"),
        ("code", "recall_panel(4)"),
        ("code", 'drill_panel(DRILLS["menu price"])'),
        ("code", 'predict_panel("order", opens=purchase_panel)'),
        ("code", 'drill_panel(DRILLS["raw for cooked"])', "more-drills"),
        ("markdown", "word " * 300, "curious"),
        ("code", 'bench_panel("yield")'),
        ("code", "print(1)"),
    )

    assert 20 == times_of(text).home_min
    assert BENCHES["yield"].minutes == times_of(text).bench_min
    assert "about 20 minutes at home, 30 at the bench" == times_of(text).words


def test_a_head_is_written_anew_and_nothing_else():
    """The old promise of 45 minutes goes; the title and what follows stay."""
    text = made(("markdown", "# Buy\n\n*Lesson 4 · about 45 minutes*\n\nForty *covers*."))

    assert text.replace("about 45 minutes", "about 0 minutes at home, 0 at the bench") == (
        with_times(text)
    )


@pytest.mark.parametrize("file", LESSONS, **by_lesson)
def test_lesson_start_page_and_session_plan_say_the_same(file):
    """The landing page of an edition is the start page too."""
    raw = file.read_bytes()
    words = times_of(raw).words
    head = "".join(json.loads(raw)["cells"][0]["source"])
    card = lesson_card(raw, file.stem)

    assert f"*Lesson {int(file.stem[:2])} · {words}*" in head
    assert words == card["takes"]
    assert words in start_page([card], [], version="")
    guide = (KIT / "instructor" / "guide" / f"{file.stem}.md").read_text(encoding="utf-8")
    assert f"A student needs {words}.\n" in guide


@pytest.mark.parametrize("file", LESSONS, **by_lesson)
def test_a_lesson_has_a_bench_and_is_no_evening(file):
    """An hour and twenty minutes at most at home; at the bench a quarter to three quarters."""
    times = times_of(file.read_bytes())

    assert 40 <= times.home_min <= 80
    assert 15 <= times.bench_min <= 45
