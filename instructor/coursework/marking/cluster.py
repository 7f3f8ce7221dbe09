"""Marking on a college's other machines: tasks go to a Dask scheduler that runs there already.

A task is bytes and plain values, and so is its result; the gradebook stays with this process. On
each worker students' cells run in rooms as they do here. A worker that dies half-way has its
tasks run again elsewhere. Workers need the same kit: a mark must not depend on who computed it.
The scheduler needs none: what it unpacks on its way are bytes.
"""

import pickle
from concurrent.futures import Executor, Future
from contextlib import contextmanager

from coursework.errors import CourseError
from coursework.marking.mark_one import mark
from coursework.marking.room.door import not_held_back
from coursework.marking.words import not_marked_there, other_kit
from coursework.sets.checked_keys import library

PATIENCE = "10s"  # for a scheduler to answer


@contextmanager
def cluster(address):
    """An executor for `mark_set` over the workers of a Dask scheduler.

    Parameters
    ----------
    address : str
        The scheduler's: "tcp://192.0.2.7:8786".

    Yields
    ------
    Cluster

    Raises
    ------
    CourseError
        When Dask is not installed, no scheduler answers, it has no worker, or a worker lacks the
        kit or has another one.
    """
    try:
        from distributed import Client
    except ImportError:
        raise CourseError("--cluster needs Dask: type python3 instructor college.") from None
    try:
        client = Client(address, timeout=PATIENCE, set_as_default=False)
    except (OSError, ValueError) as error:
        raise CourseError(f"no Dask scheduler answers at {address} ({error}).") from None
    with client:
        refuse_other_kits(client, library())
        executor = Cluster(client)
        try:
            yield executor
        finally:
            executor.shutdown(cancel_futures=True)


def refuse_other_kits(client, known):
    """Ask each worker for the digest of its kit, before any work is sent.

    Parameters
    ----------
    client : distributed.Client
    known : bytes
        The digest of the marker's kit.

    Raises
    ------
    CourseError
    """
    told = client.run(library, on_error="return")
    if not told:
        raise CourseError("the Dask scheduler has no worker yet: start one, then mark again.")
    for worker, said in sorted(told.items()):
        if said != known:
            raise CourseError(other_kit(worker, isinstance(said, bytes)))


class Cluster(Executor):
    """Submits a task once, under the name of its digest, and gives an ordinary future for it.

    Attributes
    ----------
    workers : int
        Tasks that the cluster runs at a time.
    """

    def __init__(self, client):
        self.client, self._far = client, {}
        self.workers = sum(client.nthreads().values())

    def not_held_back(self):
        """What the workers do not keep student code from, a sentence each; "" where nothing."""
        told = self.client.run(not_held_back)
        return "\n".join(f"Worker {name}: {words}" for name, words in sorted(told.items()) if words)

    def submit(self, function, task):
        """Run `mark_one.mark` on a task, somewhere.

        Returns
        -------
        concurrent.futures.Future
        """
        near = Future()
        near.set_running_or_notify_cancel()
        # Two students may hand in the same bytes; their numbers differ, and so do their names.
        key = f"mark-{task['student']}-{task['digest']}"
        call = pickle.dumps(_Call(_there, task, library()))
        far = self.client.submit(pickle.loads, call, key=key, pure=False)
        self._far[near] = far
        far.add_done_callback(lambda _: self._arrived(near))
        return near

    def _arrived(self, near):
        """The result, or why there is none, from Dask's future to the ordinary one."""
        far = self._far.pop(near, None)
        if far is None or far.cancelled():
            return
        error = far.exception()
        if error is None:
            near.set_result(far.result())
        else:
            near.set_exception(CourseError(_sentence(error)))
        far.release()

    def shutdown(self, wait=True, *, cancel_futures=False):
        """Cancel what waits and what runs; the cluster itself goes on."""
        self.client.cancel(list(self._far.values()), force=True)
        self._far.clear()


class _Call:
    """A call that is made where it is unpacked.

    A scheduler unpacks the function of each task, and so would have to know the kit. It knows
    `pickle.loads`, and the worker, which unpacks the rest, has the kit.
    """

    def __init__(self, function, *given):
        self.function, self.given = function, given

    def __reduce__(self):
        return self.function, self.given


class OtherKit(Exception):
    """A worker that joined later has another kit."""


def _there(task, known):
    """On the worker: mark, if its kit is the marker's."""
    if library() != known:
        raise OtherKit
    return mark(task)


def _sentence(error):
    if isinstance(error, OtherKit | ImportError):
        return other_kit("that joined while marking", isinstance(error, OtherKit))
    return not_marked_there(error)
