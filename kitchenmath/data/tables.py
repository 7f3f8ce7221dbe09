"""Reading the tables that ship with the library. Every table has a source column."""

import csv
from functools import cache
from pathlib import Path


@cache
def table(name):
    """The rows of a table in this folder, each a dict of text by column name.

    Parameters
    ----------
    name : str
        The file's name, such as "yields.csv".

    Returns
    -------
    tuple of dict
    """
    with Path(__file__).with_name(name).open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))
