"""What can become of a file that arrived, as `arrived/list.csv` says it to people."""

COUNTS = "counts"
REPLACED = "replaced by a later one"
AGAIN = "same file again"
NOT_PLACED = "not placed"
SET_ASIDE = "set aside"
WAITS = "waits for your word"
