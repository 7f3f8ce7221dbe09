"""Session plans: each lesson has one, and its order list is what the kit works out."""

from pathlib import Path

import pytest
from coursework.sets.order_lists import BEGIN, END, GUIDE, order_list, with_order_list

LESSONS = sorted(file.stem for file in (Path(__file__).parents[2] / "lessons").glob("*.ipynb"))


@pytest.mark.parametrize("lesson", LESSONS)
def test_a_lesson_has_a_session_plan_with_all_its_parts(lesson):
    """Timing, equipment, order list, demonstration, slips, cautions, what to look for."""
    page = (GUIDE / f"{lesson}.md").read_text(encoding="utf-8")
    for heading in ("Minute by minute", "Order list for 24", "Equipment", "The demonstration",
                    "The usual slips", "Cautions", "At the board"):  # fmt: skip
        assert heading in page


@pytest.mark.parametrize("lesson", LESSONS)
def test_the_order_list_is_still_what_the_kit_works_out(lesson):
    """Worked out anew from orders.csv and compared as text."""
    page = (GUIDE / f"{lesson}.md").read_text(encoding="utf-8")

    assert BEGIN in page and END in page
    assert page == with_order_list(page, lesson)


def test_the_order_list_by_hand():
    """By hand: 12 x 1 kg of celeriac in nets of 2.5 kg is 4.8, so 5 nets and 0.5 kg left over."""
    assert "| celeriac | 12 x 1 kg | 12 kg | 5 x 2.5 kg | 0.5 kg | celery |" in order_list(
        "04-buy-enough"
    )
