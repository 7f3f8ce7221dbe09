"""What can become of a file that arrived, as `arrived/list.csv` says it to people."""

COUNTS = "counts"
REPLACED = "replaced by a later one"
NOT_CHOSEN = "another one counts"  # because a person said so, whichever came later
AGAIN = "same file again"
NOT_PLACED = "not placed"
SET_ASIDE = "set aside"
WAITS = "waits for your word"
HAND_INS = (COUNTS, REPLACED, NOT_CHOSEN)  # of a student on the roster, for a set that is out
