"""JSON files that a person can look into, and that are written fast.

Python writes an indented text letter by letter in Python, and one without indentation in C: so the
outer levels have a line for each part, and what lies deeper is written in one piece.
"""

import json

__all__ = ["json_text"]


def json_text(value, levels=2):
    """A value as JSON, with names in order and a line end at the end of the file.

    Parameters
    ----------
    value : dict, list, str, float, int, bool or None
    levels : int
        How many levels have a line for each of their parts.

    Returns
    -------
    str

    Examples
    --------
    >>> print(json_text({"b": [{"c": 1, "d": 2}, 3], "a": "½"}), end="")
    {
    "a": "½",
    "b": [
    {"c": 1, "d": 2},
    3
    ]
    }
    """
    return _written(value, levels) + "\n"


def _written(value, levels):
    if levels and value and isinstance(value, dict):
        parts = [f"{_short(name)}: {_written(value[name], levels - 1)}" for name in sorted(value)]
        return "{\n" + ",\n".join(parts) + "\n}"
    if levels and value and isinstance(value, list | tuple):
        return "[\n" + ",\n".join(_written(each, levels - 1) for each in value) + "\n]"
    return _short(value)


def _short(value):
    return json.dumps(value, ensure_ascii=False, sort_keys=True)
