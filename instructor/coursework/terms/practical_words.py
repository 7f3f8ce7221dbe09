"""What is odd about practical marks, from a table or from elsewhere, to the instructor."""

__all__ = [
    "ABOVE", "BELOW", "BLANK", "COMMA", "CONVERTED", "DOUBLED", "EXEMPT", "LEFT_OPEN", "LOST_ZEROS",
    "NONE_CAME", "NOT_HERE", "NO_COLUMN", "NO_LINE", "NO_MARK", "NO_RANGE", "OF_TABLE", "OUTSIDE",
    "SET_ITSELF", "SEVERAL", "STRANGER", "STRANGER_THERE", "UNKNOWN_COLUMN",
]  # fmt: skip

NONE_CAME = "No practical marks came yet: all of them are open."
OF_TABLE = "Practical marks, {each}"
# Of a table's columns and lines.
NO_COLUMN = "“{name}”: there is no such column, so all of its marks are open."
UNKNOWN_COLUMN = "column “{head}”: the course file does not name it, so it does not count."
NO_LINE = "without a line that counts, so {words}: {names}."
LOST_ZEROS = "line {line}: {student} lost its zeros; by the name, {name}, it is {meant}."
STRANGER = "line {line}: {student} is not on the roster, so it is not used."
DOUBLED = "line {line}: {student} stands twice, so neither line is used."
# Of a mark.
BLANK = "blank, so open."
LEFT_OPEN = "{why}, so the mark is open."
BELOW = "“{text}” is below 0, so the mark is open."
ABOVE = "“{text}” is above its {out_of} points, so the mark is open."
COMMA = "the comma is read as a decimal point."
# Of results from another system.
SET_ITSELF = "“{title}” is a set: it is counted from the hand-ins, so it is left out."
NO_MARK = "“{title}” is no practical mark of this class, so it is left out."
NO_RANGE = "{file}, line {line}: “{title}” does not go from 0 to a highest value."
CONVERTED = (
    "“{title}” is out of {highest} there: each result is converted to points out of {out_of}."
)
NOT_HERE = "none; the class's file names them"
SEVERAL = "{student}, {name}: there are {count} results, so none is used."
STRANGER_THERE = "“{there}” is not on the roster, so it is not used."
EXEMPT = "{student} is exempt there: the mark stays open here."
OUTSIDE = "“{score}” is no number from 0 to {highest}, so the mark is open."
