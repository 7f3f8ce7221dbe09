"""Listening at a room: its lines until it closes, or until a bound strikes."""

import contextlib
import queue
import threading
import time
from dataclasses import dataclass


@dataclass(frozen=True)
class Came:
    """What came out of a room.

    Attributes
    ----------
    raw : bytes
        Its lines, at most as many bytes as were allowed.
    why : str
        "" when the room ended by itself, else "cell_seconds", "seconds" or "output".
    seconds : float
        How long it took.
    """

    raw: bytes
    why: str = ""
    seconds: float = 0.0


class Beats:
    """The signs that a cell began: each of the notebook's cells has one, in its order.

    Student code can write such lines, too. It gains nothing: a second sign of a cell counts for
    nothing, one that comes too early uses up that later cell's own time, and all together have
    the notebook's.

    Parameters
    ----------
    places : iterable of int
        Of the cells that will begin.
    """

    LONGEST = 40  # bytes of such a line; of a longer line no end is one

    def __init__(self, places):
        self._coming = iter(places)
        self._next, self._tail = next(self._coming, None), b""

    def heard(self, piece):
        """Whether a cell began in this piece of what came."""
        *lines, tail = (self._tail + piece).split(b"\n")
        self._tail = tail[-self.LONGEST :]
        began = False
        for line in lines:
            if self._next is not None and line == b'{"began": %d}' % self._next:
                self._next, began = next(self._coming, None), True
        return began


def listen(stream, most, seconds, cell_seconds, places):
    """A room's lines until it closes, or until a bound strikes.

    Parameters
    ----------
    stream : file
        Where the lines come from; it is closed here.
    most : int
        Bytes that may come.
    seconds, cell_seconds : float
        For all, and for one cell.
    places : iterable of int
        Of the cells, in the order in which they begin.

    Returns
    -------
    Came
    """
    pieces = queue.SimpleQueue()
    reader = threading.Thread(target=_read, args=(stream, pieces, most), daemon=True)
    reader.start()
    start = cell_start = time.monotonic()
    got, why, size, beats = [], "", 0, Beats(places)
    while True:
        now = time.monotonic()
        left = min(start + seconds, cell_start + cell_seconds) - now
        if left <= 0:
            why = "seconds" if now >= start + seconds else "cell_seconds"
            break
        try:
            piece = pieces.get(timeout=left)
        except queue.Empty:
            continue
        if not piece:
            break
        got.append(piece)
        size += len(piece)
        if beats.heard(piece):
            cell_start = time.monotonic()
        if size >= most:
            why = "output"
            break
    return Came(b"".join(got), why, time.monotonic() - start)


def _read(stream, pieces, most):
    # Whoever reads is who closes: closed by another thread, the number of the descriptor could be
    # that of another student's room by the time of the next read.
    with stream, contextlib.suppress(OSError):
        while most > 0 and (piece := stream.read(65536) if not hasattr(stream, "read1")
                            else stream.read1(65536)):  # fmt: skip
            pieces.put(piece)
            most -= len(piece)
    pieces.put(b"")
