"""Right by another accepted way is right: each question in two ways of the trade at least."""

import pytest
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

from tests.helpers.trade_ways import WAYS, refused

STUDENTS = 12  # tests/measure/trade_methods.py plays 200


@pytest.mark.parametrize("set_id", WAYS)
def test_no_accepted_way_is_refused(set_id):
    """The ways are *common practice*, with the rounding that each brings along."""
    sheet = load_key(key_notebook(set_id)).sheet
    asked = [each for each in sheet.questions.values() if each.told_in_numbers]
    found = [refused(sheet, WAYS[set_id], f"PLAYED-{number}") for number in range(STUDENTS)]

    assert [] == [each for _, more in found for each in more]
    assert all(2 * len(asked) <= tried for tried, _ in found)
    assert all(2 <= len(WAYS[set_id][question.id]) for question in asked)


def test_every_set_with_numbers_has_its_ways():
    assert set(WAYS) == {set_id for set_id in set_ids() if "-review-" not in set_id}
