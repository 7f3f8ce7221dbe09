"""The desk's list of decisions in words of its own, short enough for a phone."""

import pytest
from coursework.deciding import COMMANDS
from coursework.desk.deciding_panel import KINDS

LETTERS = 38  # beside "Decide", on a page of 390 px: as many fit


def test_every_kind_of_decision_is_in_the_list_once():
    assert [kind for _, kind, _, _ in COMMANDS] == list(KINDS)


@pytest.mark.parametrize("said", KINDS.values())
def test_a_decision_fits_a_phone_and_names_no_option_of_a_command(said):
    assert LETTERS >= len(said)
    assert "--" not in said
