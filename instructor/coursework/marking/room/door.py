"""The door to the student's room: opens rooms the way this machine can, and says what they lack.

What comes out of a room is bytes of unknown intent; `visit.py` reads them. A room never gets the
instructor's environment, and never more than its job.
"""

import sys
import threading
from functools import lru_cache

from coursework.marking.room.forked_rooms import ForkedRooms
from coursework.marking.room.fresh_rooms import FreshRooms
from coursework.marking.room.shared import HARMS, NoRoom
from coursework.marking.room.words import NOT_KEPT

_ONE_DOOR = threading.Lock()


@lru_cache(maxsize=1)
def _forked():
    return ForkedRooms() if sys.platform == "linux" else None


@lru_cache(maxsize=1)
def _fresh():
    return FreshRooms()


def warm_up():
    """Begin to load what rooms need, while the marker reads in its own things."""
    with _ONE_DOOR:
        _forked()


def rooms():
    """The rooms of this process: forked where the system can, else fresh ones."""
    with _ONE_DOOR:
        return _usable()


def _usable():
    forked = _forked()
    return forked if forked and forked.usable else _fresh()


def new_rooms(lost):
    """The rooms again, after the process that makes them was lost; one thread makes them anew.

    Raises
    ------
    NoRoom
        When something is not held back any more that was before.
    """
    with _ONE_DOOR:
        if lost is _usable():
            lost.close()
            _forked.cache_clear()
            _fresh.cache_clear()
        made = _usable()
    if fallen := [harm for harm in made.found.harms if harm not in lost.found.harms]:
        raise NoRoom(
            f"students' code was kept from {_listed(fallen)} when the marking began, and is no "
            "longer. Nothing more is marked: start the marking again, or mark on another machine."
        )
    return made


def not_held_back():
    """One sentence on what this machine does not keep student code from; "" where nothing."""
    harms = rooms().found.harms
    if not harms:
        return ""
    return NOT_KEPT.format(harms=_listed(harms))


def _listed(harms):
    """Harms in words, in their usual order."""
    *first, last = [words for harm, (_, words) in HARMS.items() if harm in harms]
    return f"{', '.join(first)} and {last}" if first else last
