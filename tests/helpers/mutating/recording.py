"""A part of pytest that notes the lines each test reaches; `reached.py` starts it."""

import os
import time
from pathlib import Path

import coverage
import pytest

KIT = Path(__file__).parents[3]
CODE = [f"{KIT}/kitchenmath/*", f"{KIT}/instructor/*"]


@pytest.hookimpl(tryfirst=True)
def pytest_load_initial_conftests(early_config):
    """Begin before any test is collected: what runs at import belongs to no test."""
    place = Path(os.environ["KITCHEN_MAP"])
    noting = coverage.Coverage(data_file=str(place / "lines"), include=CODE, config_file=False)
    noting.start()
    early_config.pluginmanager.register(Noting(noting, place / "seconds"))


class Noting:
    """Give what runs the name of the test that runs it."""

    def __init__(self, noting, seconds_file):
        self.noting, self.seconds_file = noting, seconds_file

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item):
        """Note one test's lines under its name, and its seconds of processor."""
        self.noting.switch_context(item.nodeid)
        began = time.process_time()
        try:
            return (yield)
        finally:
            seconds = time.process_time() - began
            self.noting.switch_context("")
            with self.seconds_file.open("a", encoding="utf-8") as told:
                told.write(f"{seconds:.4f}\t{item.nodeid}\n")

    def pytest_sessionfinish(self):
        """Write what is left."""
        self.noting.stop()
        self.noting.save()
