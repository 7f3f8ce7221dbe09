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
    """

    raw: bytes
    why: str = ""


def listen(stream, most, seconds, cell_seconds):
    """A room's lines until it closes, or until a bound strikes.

    Parameters
    ----------
    stream : file
        Where the lines come from; it is closed here.
    most : int
        Bytes that may come.
    seconds, cell_seconds : float
        For all, and for one cell.

    Returns
    -------
    Came
    """
    pieces = queue.SimpleQueue()
    reader = threading.Thread(target=_read, args=(stream, pieces, most), daemon=True)
    reader.start()
    start = cell_start = time.monotonic()
    got, why, size = [], "", 0
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
        if b'"began"' in piece:
            cell_start = time.monotonic()
        if size >= most:
            why = "output"
            break
    return Came(b"".join(got), why)


def _read(stream, pieces, most):
    # Whoever reads is who closes: closed by another thread, the number of the descriptor could be
    # that of another student's room by the time of the next read.
    with stream, contextlib.suppress(OSError):
        while most > 0 and (piece := stream.read(65536) if not hasattr(stream, "read1")
                            else stream.read1(65536)):  # fmt: skip
            pieces.put(piece)
            most -= len(piece)
    pieces.put(b"")
