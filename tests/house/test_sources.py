"""The page of sources says what the tests check, today."""

from tests.helpers.published import CHECKED_BY, STATUSES
from tests.measure.sources import PAGE, page, published


def test_every_published_value_has_a_known_status():
    """The five words of the house."""
    assert {value.status for value in published()} <= set(STATUSES)


def test_every_published_value_says_what_its_check_can_find():
    """A formula that somebody else's print checks, or a table that was copied twice."""
    unmarked = [value.name for value in published() if value.by not in CHECKED_BY]

    assert [] == unmarked, 'say by="formula" or by="table" (tests/helpers/published.py)'


def test_no_band_is_so_wide_that_nothing_fails():
    """5 ± 5 °C would take no rise at all and twice the rise: a quarter of the value is the most."""
    wide = [
        value.name
        for value in published()
        if value.expected and value.allowed > 0.25 * abs(value.expected) * (1 + 1e-9)
    ]

    assert [] == wide


def test_the_page_of_sources_is_current():
    """As the command would write it now."""
    current = PAGE.read_text(encoding="utf-8")

    assert current == page(), "out of date: run python -m tests.measure.sources and commit"
