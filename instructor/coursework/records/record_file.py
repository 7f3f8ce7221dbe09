"""A record as a file: the only place that knows how it is written, and in which version.

Version 2 is the fields of `Record`. What has no version is 1, as the kit wrote it before, with
sentences beside the fields; it is read too, and marking writes it again as 2.
"""

import json
import math
from typing import get_args, get_origin

import cattrs
from cattrs.errors import BaseValidationError

from coursework.errors import CourseError
from coursework.json_text import json_text
from coursework.records.record import Alike, Record
from kitchenmath.practice.plan_chart import Move, PlanChart, Waits
from kitchenmath.practice.words import BY_OUTCOME

__all__ = ["VERSION", "as_text", "read_record", "record_from"]

VERSION = 2
# Of each question, what version 1 wrote in other words or twice.
ONLY_IN_1 = {"slips", "sentence", "sentences"}


def as_text(record):
    """A record as the text of its file: equal records give equal bytes.

    Parameters
    ----------
    record : Record

    Returns
    -------
    str
    """
    fields = _CONVERTER.unstructure(record) | {"version": VERSION}
    del fields["copied"]
    return json_text(fields)


def read_record(file):
    """The record in a file; None where there is none, or it is damaged.

    Parameters
    ----------
    file : Path

    Returns
    -------
    Record or None

    Raises
    ------
    CourseError
        When its version is not one that this kit knows.
    """
    try:
        return record_from(json.loads(file.read_bytes()))
    except CourseError as error:
        raise CourseError(f"marks/{file.parent.name}/{file.name}: {error}") from None
    except (OSError, ValueError, RecursionError):
        return None


def record_from(fields):
    """A record from the plain values of its file.

    Parameters
    ----------
    fields : dict

    Returns
    -------
    Record

    Raises
    ------
    ValueError
        When a field is missing or is of another kind.
    CourseError
        When the version is not one that this kit knows.
    """
    if not isinstance(fields, dict):
        raise ValueError("a record is a table of fields.")
    version = fields.get("version", 1)
    if type(version) is not int or version not in _FROM:
        raise CourseError(
            f"version {version} of a record is not known here; this kit reads up to {VERSION}. "
            "Open the class with the kit that marked it."
        )
    try:
        return _CONVERTER.structure(_FROM[version](fields), Record)
    except (BaseValidationError, KeyError, TypeError, AttributeError) as error:
        raise ValueError(f"no whole record: {error}") from None


def _from_2(fields):
    return {name: value for name, value in fields.items() if name != "version"}


def _from_1(fields):
    """Version 1 had names for programs, and what it could not tell in fields it told in words."""
    names = {"set": "set_id", "verdicts": "answered", "human": "written"}
    same = {names.get(name, name): value for name, value in fields.items()}
    same.pop("copied", None)
    same.setdefault("set_id", "")
    return same | {"answered": [_answered_1(each) for each in same["answered"]]}


def _answered_1(each):
    """One question: slips were names once, with one sentence for all that was found."""
    kept = {name: value for name, value in each.items() if name not in ONLY_IN_1}
    if "found" in each:
        return kept
    slips, told = each["slips"], each["sentence"]
    found = [{"name": name, "sentence": "" if place else told} for place, name in enumerate(slips)]
    notes = [] if slips or told == BY_OUTCOME.get(each["outcome"]) else [told]
    return kept | {"found": found, "notes": notes}


_FROM = {1: _from_1, 2: _from_2}


def _text(value, _):
    if not isinstance(value, str):
        raise ValueError("needs text.")
    return value


def _number(value, _):
    if type(value) not in (int, float) or not math.isfinite(value):
        raise ValueError("needs a number.")
    return float(value)


def _yes_no(value, _):
    if type(value) is not bool:
        raise ValueError("needs true or false.")
    return value


def _made():
    converter = cattrs.Converter(forbid_extra_keys=True)
    for kind, hook in ((str, _text), (float, _number), (bool, _yes_no)):
        converter.register_structure_hook(kind, hook)
    for kind in (float, Alike, PlanChart, Move, Waits):
        converter.register_structure_hook(kind | None, _or_none(converter, kind))
    converter.register_structure_hook_func(
        lambda kind: get_origin(kind) is tuple, lambda value, kind: _several(converter, value, kind)
    )
    return converter


def _several(converter, value, kind):
    """A row of one kind; a text alone would pass for a row of letters."""
    if not isinstance(value, list):
        raise ValueError("needs a list.")
    return tuple(converter.structure(each, get_args(kind)[0]) for each in value)


def _or_none(converter, kind):
    return lambda value, _: None if value is None else converter.structure(value, kind)


_CONVERTER = _made()
