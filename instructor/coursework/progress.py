"""Progress on a terminal: one line that fills up, or plain lines where there is no terminal."""

import sys
import time


class Progress:
    """`with Progress("Marking") as progress:` then `progress(done, total, text)`."""

    def __init__(self, title, stream=None):
        self.title, self.stream = title, stream or sys.stdout
        self.live = self.stream.isatty()
        self.count = ""

    def __enter__(self):
        self.start = time.monotonic()
        self._write(f"{self.title} …")
        return self

    def __call__(self, done, total, text):
        self.count = f" {total}" if total else ""
        if self.live and total:
            full = round(20 * done / total)
            bar = "█" * full + "·" * (20 - full)
            self._write(f"{self.title} {bar} {done} of {total}  {text[:30]}")

    def __exit__(self, error, *rest):
        seconds = time.monotonic() - self.start
        words = "stopped" if error else f"done:{self.count}" if self.count else "done"
        self._write(f"{self.title}: {words} ({seconds:.1f} s)", last=True)

    def _write(self, text, last=False):
        if self.live:
            self.stream.write(f"\r\033[K{text}" + ("\n" if last else ""))
        elif last:
            self.stream.write(text + "\n")
        self.stream.flush()
