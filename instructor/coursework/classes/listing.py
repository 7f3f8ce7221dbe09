"""The classes there are, each by its own name: a folder's name lacks what no file may be called."""

from collections import Counter

from coursework.classes.course import open_course
from kitchenmath.errors import KitchenError

__all__ = ["class_name", "classes_in", "labelled"]


def classes_in(folder):
    """The folders of the classes below a folder.

    Parameters
    ----------
    folder : Path

    Returns
    -------
    list of Path
    """
    return sorted(path.parent for path in folder.glob("*/course.toml"))


def class_name(folder):
    """A class's own name; its folder's where the course file cannot be read.

    Parameters
    ----------
    folder : Path

    Returns
    -------
    str
    """
    try:
        return open_course(folder).name
    except KitchenError:
        return folder.name


def labelled(folders):
    """Classes as the lines of a list to choose from, by name.

    Parameters
    ----------
    folders : list of Path

    Returns
    -------
    list of (str, Path)
        Two of the same name have their folders behind them.
    """
    names = {folder: class_name(folder) for folder in folders}
    twice = Counter(names.values())
    lines = [
        (name if twice[name] == 1 else f"{name} ({folder.name})", folder)
        for folder, name in names.items()
    ]
    return sorted(lines, key=lambda line: line[0].casefold())
