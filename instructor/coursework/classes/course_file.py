"""The course file as a schema: every line has a kind, and what has none is refused by name.

cattrs goes through the tables; here stands what each kind of line needs, in words for whoever
wrote the file. All odd lines are named at once.
"""

import difflib
import math
import re
from dataclasses import fields
from datetime import date, datetime
from typing import NewType

import cattrs
from cattrs.errors import ClassValidationError, ForbiddenExtraKeysError, IterableValidationError

from coursework.classes import words
from coursework.classes.countries import is_country
from coursework.errors import CourseError

__all__ = ["AboveZero", "Choice", "Country", "Day", "Days", "FromZero", "Moment", "Months",
           "Percent", "Text", "Whole", "YesNo", "read_settings"]  # fmt: skip

# Kinds of line. The float ones are plain floats for everybody else.
AboveZero = NewType("AboveZero", float)
FromZero = NewType("FromZero", float)
Percent = NewType("Percent", float)
Whole = NewType("Whole", int)
Days = NewType("Days", float)
Months = NewType("Months", int)
Day = NewType("Day", date)
Moment = NewType("Moment", float)
YesNo = NewType("YesNo", bool)
Country = NewType("Country", str)
Text = NewType("Text", str)  # a number that needs no quotes is text too: term = 2026

DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
LONGEST_MONTHS = 600
TIME = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}[ T][0-9]{2}:[0-9]{2}(:[0-9]{2})?"
                  r"(Z|[+-][0-9]{2}:[0-9]{2})?")  # fmt: skip


class Choice:
    """A word out of a few, which a subclass names as `WORDS`."""

    WORDS = ()


def _number(value, fits, needs):
    if type(value) not in (int, float) or not math.isfinite(value) or not fits(value):
        raise ValueError(f"needs a {needs}.")
    return value


def _above_zero(value, _):
    return _number(value, lambda number: number > 0, "number above 0")


def _from_zero(value, _):
    return _number(value, lambda number: number >= 0, "number from 0 up")


def _percent(value, _):
    return _number(value, lambda number: 0 <= number <= 100, words.PERCENT)


def _whole(value, _):
    return _number(value, lambda number: type(value) is int and number > 0,
                   "whole number above 0")  # fmt: skip


def _days(value, _):
    return _number(value, lambda number: type(value) is int and number >= 0,
                   words.DAYS)  # fmt: skip


def _months(value, _):
    return _number(value, lambda number: type(value) is int and 0 < number <= LONGEST_MONTHS,
                   words.MONTHS.format(most=LONGEST_MONTHS))  # fmt: skip


def _day(value, _):
    try:
        if isinstance(value, str) and DAY.fullmatch(value.strip()):
            return date.fromisoformat(value.strip())
    except ValueError:  # the 31st of February
        value = None
    if type(value) is not date:
        raise ValueError('write a day, as in "2027-08-31".')
    return value


def _yes_no(value, _):
    if type(value) is not bool:
        raise ValueError("write true or false.")
    return value


def _choice(value, kind):
    if value not in kind.WORDS:
        raise ValueError("write one of " + ", ".join(f'"{word}"' for word in kind.WORDS) + ".")
    return str(value)


def _country(value, _):
    if not isinstance(value, str) or not (value == "" or is_country(value)):
        raise ValueError('write the two letters of a country, as in "GB" or "DE".')
    return value


def _text(value, _):
    if not isinstance(value, str):
        raise ValueError("write it between two quotes.")
    return value


def _bare_text(value, _):
    return _text(str(value) if type(value) in (int, float) else value, _)


def _moment(value, _):
    """A date and a time as seconds since 1970; on this machine's clock where no zone is said."""
    try:
        if isinstance(value, str) and TIME.fullmatch(value.strip()):
            value = datetime.fromisoformat(value.strip())
        if not isinstance(value, datetime):
            raise ValueError
        # The hour that comes twice when clocks go back: the later one, for the students.
        return max(value.replace(fold=fold).timestamp() for fold in (0, 1))
    except (ValueError, OverflowError, OSError):
        raise ValueError('write a date and a time, as in "2026-10-05 09:00".') from None


def time_of(typed):
    """A date and a time that somebody typed, as the course file reads them too.

    Parameters
    ----------
    typed : str

    Returns
    -------
    float
        Seconds since 1970.

    Raises
    ------
    CourseError
    """
    try:
        return _moment(typed, None)
    except ValueError as error:
        raise CourseError(f"time: {error}") from None


def _converter():
    converter = cattrs.Converter(forbid_extra_keys=True)
    for kind, hook in (
        (AboveZero, _above_zero), (FromZero, _from_zero), (Percent, _percent), (Whole, _whole),
        (Days, _days), (Months, _months), (Day, _day), (Moment, _moment), (YesNo, _yes_no),
        (str, _text), (Text, _bare_text), (Country, _country),
    ):  # fmt: skip
        converter.register_structure_hook(kind, hook)
    converter.register_structure_hook_func(
        lambda kind: isinstance(kind, type) and issubclass(kind, Choice), _choice
    )
    return converter


CONVERTER = _converter()


def read_settings(settings, kind):
    """The settings of a course file, each line of its kind.

    Parameters
    ----------
    settings : dict
        As the file was read.
    kind : type
        The dataclass whose fields are the file's lines and tables.

    Returns
    -------
    object
        A `kind`.

    Raises
    ------
    CourseError
        Naming every line that is unknown or odd, with its table and what it needs.
    """
    try:
        return CONVERTER.structure(settings, kind)
    except (ClassValidationError, IterableValidationError) as error:
        raise CourseError("\n".join(_told(error, (), settings))) from None
    except TypeError:  # a table that is no table
        raise CourseError("course.toml: it holds lines and tables only.") from None


def _told(error, path, value):
    """A sentence for each odd line, with the table in which it stands."""
    if isinstance(error, ClassValidationError | IterableValidationError):
        if not isinstance(value, dict):
            yield _no_table(path)
            return
        inner, others = error.group_exceptions()
        for found, note in inner:
            name = getattr(note, "name", None) or getattr(note, "index", None)
            yield from _told(found, (*path, str(name)), value.get(name))
        for found in others:
            yield from _told(found, path, value)
    elif isinstance(error, ForbiddenExtraKeysError):
        known = [one.name for one in fields(error.cl)]
        yield from (_unknown(name, path, known, value) for name in sorted(error.extra_fields))
    elif isinstance(error, KeyError):  # a line that must be there is not
        if path[:-1]:
            yield f"{_where(path[:-1])}: needs a line {path[-1]} = …."
        else:
            yield f'course.toml has no line {path[-1]} = "…" above [bounds].'
    elif isinstance(error, ValueError):
        yield f"{_where(path[:-1])}{', ' if path[:-1] else ': '}{path[-1]}: {error}"
    else:  # something else stands where lines of their own belong
        yield _no_table(path)


def _unknown(name, path, known, value):
    """An unknown line, or an unknown table, with the one that is most like it."""
    near = difflib.get_close_matches(name, known, n=1)
    if isinstance(value.get(name), dict):
        shown = ".".join((*path, name))
        guess = f"did you mean [{'.'.join((*path, near[0]))}]?" if near else ""
        guess = guess or words.NO_SUCH_TABLE.format(known=", ".join(known))
        return f"course.toml, [{shown}]: {guess}"
    guess = f" Did you mean {near[0]}?" if near else ""
    known = ", ".join(known)
    return words.UNKNOWN_LINE.format(where=_where(path), name=name, known=known, guess=guess)


def _no_table(path):
    if len(path) > 1:
        return words.NO_TABLE.format(name=path[-1], path=_dotted(path))
    head = words.SECTION_HEADS.get(path[0], f"a line [{path[0]}]")
    return words.HAS_LINES.format(name=path[0], head=head)


def _where(path):
    return f"course.toml, [{_dotted(path)}]" if path else "course.toml"


def _dotted(path):
    """A table's name as it stands in the file: with quotes where TOML wants them."""
    return ".".join(part if re.fullmatch(r"[A-Za-z0-9_-]+", part) else f'"{part}"' for part in path)
