"""The run that breaks lines: which tests it takes for a line, and how a try ends."""

import importlib.util
import os
import signal

import coverage
import pytest

from tests.helpers.mutating.breaking import changes
from tests.helpers.mutating.choosing import chosen, in_few_files, lines_of, nearest
from tests.helpers.mutating.forks import CUT, Ended, forked
from tests.helpers.mutating.reached import KIT, Reached, all_named, slices_for
from tests.helpers.mutating.replaced import Functions, at_work

FILE = KIT / "kitchenmath/ratios/pans.py"
OWN = "tests/kitchenmath/ratios/test_ratios.py"
NEAR, DEAR, CHEAP, FAR = f"{OWN}::test_near", "tests/a.py::dear", "tests/b.py::cheap", "tests/c.py"
CODE = """LEAST = 2


def enough(need, more=3):
    if need > LEAST:
        return (
            need
            + more
        )
    return sum(each + 1 for each in range(need))
"""


@pytest.fixture
def folder(tmp_path):
    """A map made by hand: two tests reach the lines of a function, another only its module."""
    place = tmp_path / "map" / "kitchenmath"
    place.mkdir(parents=True)
    data = coverage.CoverageData(str(place / "lines"))
    for name, lines in ((DEAR, WORKING), (CHEAP, WORKING), (FAR, [2]), ("", [1, 2])):
        data.set_context(name)
        data.add_lines({str(FILE): lines})
    data.write()
    (place / "seconds").write_text(f"3.0\t{DEAR}\n0.1\t{CHEAP}\n0.1\t{FAR}\n0.1\t{NEAR}\n")
    (place / "begun").touch()
    return place.parent


def change_where(is_at_work):
    return next(one for one in changes(FILE) if at_work(one.whole(), one.made()) is is_at_work)


WORKING = list(lines_of(FILE.read_text(encoding="utf-8"), change_where(True).line))


def test_a_line_gets_the_tests_that_reach_it_the_cheapest_first_then_the_nearest(folder):
    assert [CHEAP, DEAR, NEAR] == chosen(change_where(True), Reached(folder))


def test_a_line_that_runs_at_import_gets_the_tests_that_reach_its_module(folder):
    found = chosen(change_where(False), Reached(folder))

    assert {CHEAP, DEAR, FAR} < set(found)
    assert NEAR == found[-1]


def test_a_file_of_tests_that_is_younger_than_the_map_runs_whole_and_first(folder):
    long_ago = 1_000_000_000
    os.utime(folder / "kitchenmath/begun", (long_ago, long_ago))

    assert OWN == chosen(change_where(True), Reached(folder))[0]


def test_the_nearest_tests_are_the_module_s_own_then_those_of_its_folder():
    assert (
        "tests/kitchenmath/safety/test_cooling.py"
        == nearest(KIT / "kitchenmath/safety/cooling.py")[0]
    )
    assert [OWN] == nearest(FILE)
    assert "tests/lessons/test_lesson_01.py" in nearest(KIT / "kitchenmath/drills/warming.py")


def test_a_list_may_name_a_test_or_a_whole_file():
    known = ["a.py::one", "a.py::two", "b.py::one"]

    assert ["b.py::one", "a.py::one", "a.py::two"] == all_named(["b.py::one", "a.py"], known)
    assert ["a.py::two"] == all_named(["a.py::two", "a.py::gone", "c.py"], known)
    assert known[:2] == in_few_files(known, 1)


def test_the_library_is_reached_by_its_tests_and_by_the_lessons():
    assert ["kitchenmath", "lessons"] == slices_for(["kitchenmath/safety"])
    assert ["coursework"] == slices_for(["instructor/coursework"])


@pytest.mark.parametrize(
    ("line", "lines"),
    [(1, [1]), (4, [4]), (5, [5]), (6, [6, 7, 8, 9]), (8, [6, 7, 8, 9]), (10, [10])],
)
def test_a_line_belongs_to_its_whole_statement_and_a_condition_has_none_of_its_body(line, lines):
    assert lines == list(lines_of(CODE, line))


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [("LEAST = 2", "LEAST = 3", False), ("more=3", "more=4", False), ("need > ", "need >= ", True),
     ("each + 1", "each - 1", True)],
)  # fmt: skip
def test_a_constant_and_a_default_run_at_import_and_a_body_does_not(old, new, expected):
    assert expected is at_work(CODE, CODE.replace(old, new))


@pytest.mark.parametrize(
    ("old", "new", "answers"),
    [
        ("need > ", "need >= ", (5, 6)),
        ("each + 1", "each - 1", (-1, 6)),
        ("+ more", "- more", (3, 0)),
    ],
)
def test_a_changed_line_works_in_a_function_that_is_loaded(tmp_path, old, new, answers):
    """As it is, 2 gives 1 + 2 = 3, and 3 gives 3 + 3 = 6."""
    file = tmp_path / "loaded.py"
    file.write_text(CODE)
    asked = importlib.util.spec_from_file_location("loaded", file)
    loaded = importlib.util.module_from_spec(asked)
    asked.loader.exec_module(loaded)
    assert (3, 6) == (loaded.enough(2), loaded.enough(3))

    assert Functions().replace(file, CODE, CODE.replace(old, new))
    assert answers == (loaded.enough(2), loaded.enough(3))


def _raise(_):
    raise ValueError


def _killed(_):
    os.kill(os.getpid(), signal.SIGPROF)


def _failed(tell):
    tell("test_salt")
    return 1


@pytest.mark.parametrize(
    ("work", "expected"),
    [
        (lambda _: 0, Ended(noticed=False)),
        (lambda _: CUT, Ended(noticed=False, cut=True)),
        (_failed, Ended(noticed=True, test="test_salt")),
        (_raise, Ended(noticed=True)),
        (_killed, Ended(noticed=True)),
    ],
)
def test_a_failed_test_an_error_and_a_signal_are_noticed(work, expected):
    assert expected == forked(work)
