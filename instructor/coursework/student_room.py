"""The student's room: a process of its own that runs one hand-in's cells.

It is started as a script in a folder of its own, with the job on standard input. It knows no
key, no gradebook and no other work. What leaves it is one line of JSON for each cell: what the
cell printed, whether it failed, and, for a check cell, the plain value of the answer it asks for.
"""

import contextlib
import json
import os
import sys

MOST_TEXT = 4001  # characters: one more than the longest answer that is read


class Bounded:
    """A text stream that keeps a bounded amount and says when it cut."""

    encoding, errors, newlines = "utf-8", "replace", None

    def __init__(self, most):
        self.most, self.parts, self.cut = most, [], False

    def write(self, text):
        if self.most > 0:
            self.parts.append(text[: self.most])
        self.cut = self.cut or len(text) > self.most
        self.most -= len(text)
        return len(text)

    def flush(self):
        pass

    def isatty(self):
        return False

    def text(self):
        return "".join(self.parts) + ("\n[cut: too much output]" if self.cut else "")


def plain(value, quantity_type):
    """An answer as plain data: number, text, or quantity; anything else by its type's name only."""
    if value is None:
        return None
    if isinstance(value, str):
        return {"text": str(value)[:MOST_TEXT]}
    if isinstance(value, dict):  # a plan: tasks and starts, as it might have been typed
        lines = (f"{str(name)[:200]}: {str(each)[:200]}" for name, each in list(value.items())[:99])
        return {"text": "\n".join(lines)[:MOST_TEXT]}
    if isinstance(value, quantity_type):
        units = {str(name): float(power) for name, power in value._units.items()}
        return {"number": float(value.magnitude), "units": units}
    if not isinstance(value, bool) and (isinstance(value, int | float) or hasattr(value, "item")):
        return {"number": float(value)}
    return {"type": type(value).__name__[:60]}


def main():
    job = json.loads(sys.stdin.buffer.read())
    sys.path[:0] = job["path"]
    out = os.fdopen(os.dup(1), "w", encoding="utf-8", errors="replace")
    # Whatever is written past Python's own streams goes nowhere.
    nowhere = os.open(os.devnull, os.O_RDWR)
    for descriptor in (0, 1, 2):
        os.dup2(nowhere, descriptor)

    from IPython.core.interactiveshell import InteractiveShell
    from traitlets.config import Config

    from kitchenmath.units import Quantity

    class Shell(InteractiveShell):
        """As in a notebook, where "%matplotlib inline" is no error though there is no screen."""

        def enable_gui(self, gui=None):
            pass

    config = Config()
    config.HistoryManager.enabled = False
    shell = Shell.instance(colors="NoColor", config=config)
    shell.displayhook.write_output_prompt = lambda: None
    left = job["output_bytes"]
    for index, cell in enumerate(job["cells"]):
        stream = Bounded(left)
        with contextlib.redirect_stdout(stream), contextlib.redirect_stderr(stream):
            result = shell.run_cell(cell["source"], store_history=False)
        left = max(0, stream.most)
        record = {"cell": index, "output": stream.text(), "failed": not result.success}
        if cell["ask"]:
            try:
                record["value"] = plain(shell.user_ns.get(cell["ask"]), Quantity)
            except Exception:  # a value that cannot be made plain is no value
                record["value"] = {"type": "object"}
        out.write(json.dumps(record) + "\n")
        out.flush()


if __name__ == "__main__":
    main()
