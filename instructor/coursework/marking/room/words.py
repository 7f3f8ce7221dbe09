"""What is said of a hand-in's visit to the room, and of the room itself, to who marks.

The student reads what stopped a cell of theirs; the rest goes into a record's findings.
"""

__all__ = ["CUT_OFF", "ENDED_ALL", "ENDED_ROOM", "LEFT_OUT", "NOT_KEPT", "OWN_CELL", "STRUCK",
           "TOO_LONG"]  # fmt: skip

# What a bound says when it strikes, by its name.
STRUCK = {
    "cell_seconds": "ran longer than {cell_seconds:g} seconds and was stopped",
    "memory_bytes": "wanted more memory than {memory_bytes} bytes",
    "disk_bytes": "wrote more than {disk_bytes} bytes to disk",
    "files": "made more files than {files}",
    "open_files": "opened more than {open_files} files",
    "threads": "started more threads than {threads}",
    "output_bytes": "printed more than {output_bytes} bytes in all; the rest is cut",
    "figures": "drew more than {figures} figures",
}
TOO_LONG = "The whole notebook ran longer than {seconds:g} seconds (seconds)."
CUT_OFF = "was stopped after {seconds:g} seconds of the notebook (seconds)"
ENDED_ALL = "The code in this notebook ended the run before its last cell."
ENDED_ROOM = "ended the room it ran in"
LEFT_OUT = "{cell} {why}. It was left out."
OWN_CELL = "The student's own cell {place}"
NOT_KEPT = (
    "On this machine students' code is not kept from {harms}. Mark on a Linux machine or in a "
    "container: the contributor guide says how."
)
