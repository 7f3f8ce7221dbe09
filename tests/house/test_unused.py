"""What nothing uses is listed for whoever computes, or gone."""

import re

from tests.helpers.browser import KIT
from tests.measure.unused_functions import unused


def test_every_function_that_nothing_uses_is_listed_in_the_contributor_guide():
    """And the list names none that is used."""
    guide = (KIT / "DEVELOPERS.md").read_text(encoding="utf-8")
    section = guide.split("### For whoever computes")[1].split("\n###")[0]
    listed = set(re.findall(r"`(\w+)`", section.split("|---|---|")[1]))

    assert {name for _, name in unused()} == listed
