"""The student's room: where a hand-in's own code runs, and the door through which answers come.

`warm.py`, `cells.py`, `walls.py` with `call_filter.py` and `syscalls.py`, and `trial.py` are the
inside: they are loaded by path in a process that knows no key, no gradebook and no other work, and
import nothing of this package but `plain.py`. The rest is the trusted side: `door.py` opens rooms
(`forked_rooms.py` where the system can copy a process, else `fresh_rooms.py`), `starting.py` starts
the process that makes them, `listening.py` keeps the time, and `visit.py` reads what comes out as
hostile.
"""
