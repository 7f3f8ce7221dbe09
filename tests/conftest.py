"""What every test may use."""

import os
import sys

import hypothesis
import pytest

from tests.helpers.published import STATUSES, Published
from tests.helpers.whole_tree import refuse_writing

# A test that writes into the kit would pass here and change what the next one finds.
sys.addaudithook(refuse_writing(os.getpid()))

# A shared or slow machine is no reason for a test to fail.
hypothesis.settings.register_profile("kit", deadline=None)
hypothesis.settings.load_profile("kit")


def pytest_generate_tests(metafunc):
    """A test that takes `published` runs once for each value in its module's PUBLISHED."""
    if "published" in metafunc.fixturenames:
        values = metafunc.module.PUBLISHED
        metafunc.parametrize("published", values, ids=[value.name for value in values])


@pytest.fixture(scope="session")
def small_class(tmp_path_factory):
    """Seven hand-ins of a class, half marked; to be copied before it is changed."""
    from tests.helpers.small_class import made

    return made(tmp_path_factory.mktemp("small") / "class")


@pytest.fixture
def check():
    """Compare one published value: a difference beyond its tolerance names the source."""

    def compare(published: Published):
        assert published.status in STATUSES
        assert published.deviation <= published.allowed, (
            f"{published.name}: {published.make()} against {published.expected} "
            f"(± {published.allowed}) in {published.source}"
        )

    return compare
