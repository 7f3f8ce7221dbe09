"""The page of sources says what the tests check, today."""

from tests.helpers.published import STATUSES
from tests.measure.sources import PAGE, page, published


def test_every_published_value_has_a_known_status():
    """The five words of the house."""
    assert {value.status for value in published()} <= set(STATUSES)


def test_the_page_of_sources_is_current():
    """As the command would write it now."""
    current = PAGE.read_text(encoding="utf-8")

    assert current == page(), "out of date: run python -m tests.measure.sources and commit"
