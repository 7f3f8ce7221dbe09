"""What a guide says of limits is quoted, and what the kit has not is said to be not covered."""

import pytest
from coursework.classes.course import new_course, open_course
from coursework.sets.guides import GUIDES, LIMITS, limits_page, write_guide

from kitchenmath.conventions import conventions_of, countries

# What a kitchen meets and no table of the kit covers.
NOT_COVERED = ("Game", "Plant food held hot", "Time as a control", "Airless packing",
               "Garlic in oil", "Raw egg in foams")  # fmt: skip


def test_the_kits_page_is_what_the_library_quotes():
    """Run `python3 instructor refresh` after a limit was changed."""
    assert limits_page() == LIMITS.read_text(encoding="utf-8")


@pytest.mark.parametrize("country", countries())
def test_every_class_is_told_what_is_not_covered(country):
    """Each of them with the sentence that sends to the food code, and without a degree."""
    page = limits_page(conventions_of(country))
    rest = page.partition("## Not covered here")[2]

    assert all(f"- {what}: not covered here: ask your food code" in rest for what in NOT_COVERED)
    assert "°" not in rest


def test_reheating_and_cooling_are_quoted_or_said_to_be_not_covered():
    """FDA Food Code 3-403.11: 165 °F within 2 h; for the UK nothing was read."""
    ours, british = limits_page(), limits_page(conventions_of("UK"))

    assert "**Reheating**: 74 °C (165 °F) or above within 2 h (FDA Food Code 3-403.11)." in ours
    assert "**Reheating**: not covered here in the UK: ask your food code." in british
    assert "**Cooling of cooked food**: not covered here in the UK" in british


def test_every_guide_leads_to_the_limits():
    """In its cautions, first."""
    guides = sorted(GUIDES.glob("[0-9]*.md"))

    assert guides
    for guide in guides:
        assert "(limits.md)" in guide.read_text(encoding="utf-8").partition("## Cautions")[2]


def test_a_class_gets_its_own_page(tmp_path):
    """Pounds, 2 mm and VAT for a class whose country is GB."""
    course = new_course(tmp_path / "class", "Cooks", "demo", {"BH-1007": "Ada"})
    file = course.folder / "course.toml"
    file.write_text('country = "GB"\n' + file.read_text(encoding="utf-8"), encoding="utf-8")
    page = write_guide(open_course(course.folder)).read_text(encoding="utf-8")

    assert "**Money**: pounds. The card's price has VAT of 20 % in it." in page
    assert "**Brunoise**: 2 mm." in page
