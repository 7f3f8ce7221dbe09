"""The student's room: where a hand-in's own code runs, and the door through which answers come.

`warm.py`, `cells.py`, `walls.py` and `syscalls.py` are the inside: they are loaded by path in a
process that knows no key, no gradebook and no other work, and import nothing of this package but
`plain.py`. `door.py` is the trusted side: it opens rooms, keeps time, and reads what comes out as
hostile.
"""
