"""Marking on a Dask cluster: the same mark book, whatever befalls a worker."""

import importlib
import json
import os
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from coursework.arriving.take_in import take_in
from coursework.command import main
from coursework.demo import SET, play
from coursework.errors import CourseError
from coursework.gradebook.points import all_marks
from coursework.marking import cluster as module
from coursework.marking.cluster import cluster
from coursework.marking.mark_set import mark_set
from coursework.records.reading import usable_records
from coursework.sets.checked_keys import library

from tests.helpers.filled_in import class_copy
from tests.helpers.this_machine import wait_until

KIT = Path(__file__).parents[3]

distributed = pytest.importorskip("distributed", reason="Dask is not installed: extra college")


@pytest.fixture(scope="module")
def taken(tmp_path_factory):
    """A class that handed in, and a copy of it marked in this process: the yardstick."""
    course, places = play(tmp_path_factory.mktemp("class") / "class")
    take_in(course, places)
    here = class_copy(course, course.folder.parent / "here")
    mark_set(here, SET)
    return course, here


@pytest.fixture(scope="module")
def two_workers():
    """A scheduler with two workers, each a process of its own."""
    with distributed.LocalCluster(
        n_workers=2, threads_per_worker=1, dashboard_address="127.0.0.1:0"
    ) as local:
        yield local


def mark_book(course):
    records, odd = usable_records(course, SET)
    return sorted(all_marks(course), key=str), records, odd


def test_a_worker_killed_half_way_changes_nothing(taken, two_workers, tmp_path):
    """After the fifth hand-in one of two dies by SIGKILL; its tasks run again elsewhere."""
    course, here = taken
    there, seen = class_copy(course, tmp_path / "there"), []
    with cluster(two_workers.scheduler_address) as executor:
        victim = next(iter(executor.client.run(os.getpid).values()))

        def progress(done, total, name):
            seen.append(done)
            if done == 5:
                os.kill(victim, signal.SIGKILL)

        marked = mark_set(there, SET, progress, executor, executor.workers)

        assert victim not in executor.client.run(os.getpid).values()
    assert list(range(1, 25)) == seen
    assert 24 == marked.run
    assert mark_book(here) == mark_book(there)


def test_what_waits_is_cancelled_when_the_marker_is_stopped(taken, two_workers, tmp_path):
    """Ctrl-C after the first hand-in: the scheduler has nothing left; the rest comes later."""
    course, here = taken
    there = class_copy(course, tmp_path / "there")

    def stop(*_):
        raise KeyboardInterrupt

    with (
        pytest.raises(KeyboardInterrupt),
        cluster(two_workers.scheduler_address) as executor,
    ):
        mark_set(there, SET, stop, executor, executor.workers)
    with distributed.Client(two_workers.scheduler_address, set_as_default=False) as client:
        left = client.run_on_scheduler(lambda dask_scheduler: len(dask_scheduler.tasks))
    mark_set(there, SET)

    assert 0 == left
    assert mark_book(here) == mark_book(there)


def test_two_students_with_the_same_bytes_are_two_tasks(taken, two_workers, tmp_path):
    """A copy hands in at the same second: each is marked with the numbers of its own student."""
    course = class_copy(taken[0], tmp_path / "there")
    one, other = (course.submitted(SET, student).parent for student in ("BH-1001", "BH-1002"))
    shutil.rmtree(other)
    shutil.copytree(one, other)
    with cluster(two_workers.scheduler_address) as executor:
        mark_set(course, SET, executor=executor)
    marked = {found.student: found for found in usable_records(course, SET)[0]}

    assert marked["BH-1001"].answered[0].given != marked["BH-1002"].answered[0].given


def test_a_worker_with_another_kit_is_refused_before_any_work(two_workers):
    """The marker's digest differs from what both workers say; with the same one all is well."""
    with distributed.Client(two_workers.scheduler_address, set_as_default=False) as client:
        module.refuse_other_kits(client, library())
        with pytest.raises(CourseError, match=r"worker tcp://.* another version"):
            module.refuse_other_kits(client, b"another")


def test_a_worker_that_joins_later_with_another_kit_is_refused(taken):
    """The task itself compares, on the worker."""
    with pytest.raises(module.OtherKit):
        module._there({}, b"another")

    assert "joined while marking" in module._sentence(module.OtherKit())


def test_a_worker_without_the_kit_is_refused():
    """A real worker that was started without the kit's folders on its path."""
    bare = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    with distributed.LocalCluster(n_workers=0, dashboard_address="127.0.0.1:0") as local:
        words = ["-m", "dask", "worker", local.scheduler_address, "--nthreads", "1"]
        words += ["--no-nanny", "--no-dashboard"]
        worker = subprocess.Popen(
            [sys.executable, *words], env=bare, cwd="/", stderr=subprocess.DEVNULL
        )
        try:
            with distributed.Client(local, set_as_default=False) as client:
                client.wait_for_workers(1, timeout=120)
            with (
                pytest.raises(CourseError, match=r"the worker tcp://.* lacks the kit"),
                cluster(local.scheduler_address),
            ):
                pass
        finally:
            worker.terminate()
            worker.wait()


@pytest.fixture
def bare_scheduler(tmp_path):
    """A scheduler in a process of its own whose path lacks the kit, and a worker that has it."""
    with_kit = {**os.environ, "PYTHONPATH": f"{KIT}{os.pathsep}{KIT / 'instructor'}"}
    bare = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    told = tmp_path / "scheduler.json"
    words = ["--host", "127.0.0.1", "--port", "0", "--no-dashboard", "--scheduler-file", str(told)]
    started = [dask("scheduler", *words, env=bare)]
    try:
        wait_until(lambda: told.is_file() and told.stat().st_size)
        address = json.loads(told.read_bytes())["address"]
        started.append(dask("worker", address, "--nthreads", "1", "--no-dashboard", env=with_kit))
        with distributed.Client(address, set_as_default=False) as client:
            client.wait_for_workers(1, timeout=120)
            with pytest.raises(ModuleNotFoundError, match="coursework"):
                client.run_on_scheduler(importlib.import_module, "coursework")
        yield address
    finally:
        for process in reversed(started):
            process.terminate()
            process.wait(60)


def dask(*words, env):
    """One of Dask's own processes, as a terminal starts it."""
    return subprocess.Popen(
        [sys.executable, "-m", "dask", *words], env=env, cwd="/", stderr=subprocess.DEVNULL
    )


def test_a_scheduler_without_the_kit_passes_the_work_on(taken, bare_scheduler, tmp_path):
    """Only workers need the kit: the mark book is that of a marking here."""
    course, here = taken
    there = class_copy(course, tmp_path / "there")
    with cluster(bare_scheduler) as executor:
        marked = mark_set(there, SET, executor=executor)

    assert 24 == marked.run
    assert mark_book(here) == mark_book(there)


def test_without_a_worker_or_a_scheduler_a_sentence_says_so(monkeypatch):
    """A scheduler that nobody works for, and an address where nothing listens."""
    with (
        distributed.LocalCluster(n_workers=0, dashboard_address="127.0.0.1:0") as local,
        pytest.raises(CourseError, match="has no worker yet"),
        cluster(local.scheduler_address),
    ):
        pass
    monkeypatch.setattr(module, "PATIENCE", "1s")
    with (
        pytest.raises(CourseError, match=r"no Dask scheduler answers at tcp://127\.0\.0\.1:9"),
        cluster("tcp://127.0.0.1:9"),
    ):
        pass


def test_without_dask_a_sentence_says_how_to_get_it(monkeypatch):
    """The extra college brings it."""
    monkeypatch.setitem(sys.modules, "distributed", None)
    with pytest.raises(CourseError, match="python3 instructor college"), cluster("tcp://x:1"):
        pass


def test_the_command_line_takes_an_address(taken, two_workers, tmp_path, capsys):
    """`mark SET --cluster ADDRESS` ends with the mark book of a marking here."""
    course, here = taken
    there = class_copy(course, tmp_path / "there")
    words = ["mark", SET, "--cluster", two_workers.scheduler_address]

    assert 0 == main([*words, "--class", str(there.folder)])
    assert "24 hand-ins are marked." in capsys.readouterr().out
    assert mark_book(here) == mark_book(there)
