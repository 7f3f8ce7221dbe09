"""Inside the room: run a hand-in's cells as a notebook would, and write a line about each.

Everything here is loaded before any student code runs. The lines are JSON: `{"began": place}`
before a cell, then `{"cell": place, "output": …, "failed": …, "struck": […], "value": …}`, and
`{"done": true}` at the end. Student code can write lines of its own; the other side knows that.
"""

import _thread
import contextlib
import errno
import json
import os
import signal
import sys
import threading
import warnings

from IPython.core.interactiveshell import InteractiveShell
from plain import to_plain
from traitlets.config import Config


class CellTooLong(BaseException):
    """Raised in a cell that took too long. Not an Exception, so that fewer cells swallow it."""


class Bounded:
    """A text stream that keeps a bounded number of bytes and says when it cut."""

    encoding, errors, newlines = "utf-8", "replace", None

    def __init__(self, most):
        self.left, self.parts, self.cut = most, [], False

    def write(self, text):
        if self.cut or not text:
            return len(text)
        raw = text[: self.left + 1].encode("utf-8", "replace")
        if len(raw) > self.left:
            raw, self.cut = raw[: self.left], True
        self.left -= len(raw)
        self.parts.append(raw)
        return len(text)

    def writelines(self, lines):
        for line in lines:
            self.write(line)

    def flush(self):
        pass

    def isatty(self):
        return False

    def fileno(self):
        raise OSError(errno.ENOTSUP, "this stream is no file")

    def text(self):
        text = b"".join(self.parts).decode("utf-8", "ignore")
        return text + ("\n[cut: too much output]" if self.cut else "")


RUNS_CODE = ("time", "timeit", "prun", "run")  # what fails in these is the student's own code


class Shell(InteractiveShell):
    """As in a notebook, where "%matplotlib inline" is no error though there is no screen.

    Lines that talk to the machine do nothing here and cost nothing: the answer below them counts.
    """

    def run_line_magic(self, magic_name, line, _stack_depth=1):
        try:
            return super().run_line_magic(magic_name, line, _stack_depth + 1)
        except Exception as error:
            if magic_name in RUNS_CODE:
                raise
            print(f"%{magic_name} does nothing here ({type(error).__name__}).")

    def system(self, cmd):
        print("Programs are not run here.")

    system_piped = system_raw = system

    def getoutput(self, cmd, split=True, depth=0):
        self.system(cmd)
        return [] if split else ""

    def enable_gui(self, gui=None):
        pass

    def ask_exit(self):
        pass


def shell():
    """A shell that keeps no history and writes no files."""
    config = Config()
    config.HistoryManager.enabled = False
    made = Shell.instance(colors="NoColor", config=config)
    made.displayhook.write_output_prompt = lambda: None
    # After sys.exit(): advice for a terminal, which would stand where the error is looked for.
    warnings.filterwarnings("ignore", "To exit: use")
    return made


def run(job, shell, write):
    """Run a job's cells in order.

    Parameters
    ----------
    job : dict
        `cells` (`source`, `ask`, `place` each), `cell_seconds`, `output_bytes`, `figures`.
    shell : Shell
    write : callable
        Takes a line of bytes.
    """

    def say(**record):
        write(json.dumps(record).encode() + b"\n")

    left, told = job["output_bytes"], False
    for cell in job["cells"]:
        say(began=cell["place"])
        stream = Bounded(left)
        with _clock(job["cell_seconds"]):
            failed, struck = _run_one(shell, cell["source"], stream, job["cell_seconds"])
        left = stream.left
        struck += ["output_bytes"] if stream.cut and not told else []
        told = told or stream.cut
        struck += _figures(job["figures"])
        record = {"cell": cell["place"], "output": stream.text(), "failed": failed}
        if cell["ask"]:
            try:
                with _clock(job["cell_seconds"]):  # a list of one's own making may never end
                    record["value"] = to_plain(shell.user_ns.get(cell["ask"]))
            except BaseException:  # a value that cannot be made plain is no value
                record["value"] = {"type": "object"}
        say(**record, struck=struck)
    say(done=True)


def few_threads(most):
    """Refuse more threads to Python code, by the error that the kernel's own limit gives.

    The kernel lets a root user have any number; there, and for threads that are started past
    Python, memory is the bound that is left.
    """

    def bounded(begin):
        def start(*words, **options):
            if _thread._count() >= most:
                raise RuntimeError("can't start new thread")
            return begin(*words, **options)

        return start

    for module in (_thread, threading):
        for name in ("start_new_thread", "start_new", "start_joinable_thread",
                     "_start_new_thread", "_start_joinable_thread"):  # fmt: skip
            if hasattr(module, name):  # the names differ between versions of Python
                setattr(module, name, bounded(getattr(module, name)))


def _run_one(shell, source, stream, seconds):
    """Whether a cell failed, and the bounds that struck in it."""
    try:
        with contextlib.redirect_stdout(stream), contextlib.redirect_stderr(stream):
            result = shell.run_cell(source, store_history=False)
        error = result.error_in_exec or result.error_before_exec
    except BaseException as raised:  # it got past the shell; the next cell still runs
        stream.write(f"{type(raised).__name__}: {raised}\n")
        error = raised
    return error is not None, _struck(error)


def _struck(error):
    """Names of the bounds that an error is the sign of."""
    if isinstance(error, CellTooLong):
        return ["cell_seconds"]
    if isinstance(error, MemoryError):
        return ["memory_bytes"]
    if isinstance(error, OSError):
        number = error.errno
        return {
            errno.EFBIG: ["disk_bytes"],
            errno.ENOSPC: ["files" if _no_file_left() else "disk_bytes"],
            errno.EMFILE: ["open_files"],
            errno.ENOMEM: ["memory_bytes"],
        }.get(number, [])
    if isinstance(error, RuntimeError) and "new thread" in str(error):
        return ["threads"]
    return []


def _no_file_left():
    """Whether the working folder has room, and yet takes no more files."""
    try:
        return hasattr(os, "statvfs") and os.statvfs(".").f_ffree == 0
    except OSError:
        return False


def _figures(most):
    """Close what the cell drew, as a notebook does after each cell."""
    pyplot = sys.modules.get("matplotlib.pyplot")
    if pyplot is None:
        return []
    try:
        several = len(pyplot.get_fignums()) > most
        pyplot.close("all")
    except BaseException:  # its own affair: a figure earns nothing
        return []
    return ["figures"] if several else []


@contextlib.contextmanager
def _clock(seconds):
    """Raise `CellTooLong` in what runs inside, again each second if it goes on.

    A loop that swallows it all the same is ended from outside. Where a system has no such clock,
    everything is.
    """
    if not hasattr(signal, "setitimer"):
        yield
        return

    def stop(*_):
        raise CellTooLong(f"this cell was stopped after {seconds:g} seconds")

    signal.signal(signal.SIGALRM, stop)
    signal.setitimer(signal.ITIMER_REAL, seconds, 1.0)
    try:
        yield
    except CellTooLong:  # between the cell's end and ours
        pass
    finally:
        with contextlib.suppress(CellTooLong):
            signal.setitimer(signal.ITIMER_REAL, 0)
