"""What a class's course file and its roster should have where they have something else."""

__all__ = ["DAYS", "HAS_LINES", "MONTHS", "NO_NUMBER", "NO_SUCH_TABLE", "NO_TABLE", "PERCENT",
           "SECTION_HEADS", "UNKNOWN_LINE"]  # fmt: skip

PERCENT = "number from 0 to 100 (percent)"
DAYS = "whole number from 0 up"
MONTHS = "whole number of months, 1 to {most}"
NO_SUCH_TABLE = "there is no such table here: {known} are known."
UNKNOWN_LINE = "{where}: “{name}” is none of {known}.{guess}"
NO_TABLE = "course.toml: write “{name}” as a section: a line [{path}]."
HAS_LINES = "course.toml: {name} has lines of its own, below {head}."
SECTION_HEADS = {
    "sets": "a line such as [sets.04-buy-enough]",
    "practical": 'a line such as [practical."knife skills"]',
}
NO_NUMBER = "line {line}: the student number is missing."
