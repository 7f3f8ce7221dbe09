"""What of a lesson lies folded: what only some readers want, and the drills after the first few.

A cell says so by a tag, and cells of one tag in a row go under one line to press. A notebook
shows them as it shows all others.
"""

from itertools import groupby

__all__ = ["FOLDS", "fold_of", "in_folds"]

# By tag, the line to press.
FOLDS = {"curious": "For whoever wants to know", "more-drills": "More drills"}


def fold_of(cell):
    """The tag that folds a cell.

    Parameters
    ----------
    cell : dict
        Of the notebook.

    Returns
    -------
    str
        "" for what stands open.
    """
    return next((tag for tag in cell["metadata"].get("tags", ()) if tag in FOLDS), "")


def in_folds(cells):
    """The cells of a page, those that are folded together in one part.

    Parameters
    ----------
    cells : list of dict
        Each with its "fold".

    Returns
    -------
    list of dict
        Each with its "cells", and "line", which is "" for a part that stands open.
    """
    parts = ((tag, list(each)) for tag, each in groupby(cells, lambda cell: cell["fold"]))
    return [{"line": _line(tag, len(each)), "cells": each} for tag, each in parts]


def _line(tag, many):
    line = FOLDS.get(tag, "")
    return f"{line}: {many}" if tag == "more-drills" else line
