"""What is said of copies of students' work: until when they are kept, and which are past it."""

from itertools import groupby

from coursework.arriving.reading_in import megabytes
from coursework.care.discarding import CAME, DAY, DUE
from coursework.words import plural

__all__ = ["counted", "in_words"]

NAMES = {
    "arrived": ("file as it came in", "files as they came in"),
    "submitted": ("file of a hand-in that counted", "files of hand-ins that counted"),
    "autograded": ("marked copy", "marked copies"),
    "feedback": ("page that went back", "pages that went back"),
    "trays": ("file of a photo of a tray", "files of photos of trays"),
    "kept": ("earlier gradebook, roster or mark", "earlier gradebooks, rosters and marks"),
    "packed": ("pack or practice sheet", "packs and practice sheets"),
    "backups": ("backup that holds such copies", "backups that hold such copies"),
}
BECAUSE = {
    DAY: "as the class's file says",
    DUE: "counted from the last due time",
    CAME: "counted from the last file that came in: no set has a due time",
}
STAYS = "Marks, remarks, mark sheets, the roster and the journal stay."


def counted(past):
    """How many of each kind, in a line.

    Parameters
    ----------
    past : Past

    Returns
    -------
    str
    """
    return ", ".join(plural(len(files), *NAMES[kind]) for kind, files in _by_kind(past))


def in_words(kept, past):
    """Until when copies are kept, and which are past it.

    Parameters
    ----------
    kept : Kept or None
    past : Past or None

    Returns
    -------
    str
    """
    if kept is None:
        return "No work of students came in yet, and no set has a due time."
    lines = [f"Copies of students' work are kept until {kept.until}, {BECAUSE[kept.because]}."]
    if past is None:
        return "\n".join([*lines, "None is past its time."])
    lines.append("Past their time:")
    for kind, files in _by_kind(past):
        size = megabytes(sum(file.lstat().st_size for file in files))
        lines.append(f"– {plural(len(files), *NAMES[kind])} ({size})")
    return "\n".join([*lines, *_waiting(past.unsettled), STAYS])


def _by_kind(past):
    kinds = groupby(past.files, key=lambda one: one[0])
    return [(kind, [file for _, file in those]) for kind, those in kinds]


def _waiting(unsettled):
    waits = (
        (unsettled.no_place, "file has no place", "files have no place"),
        (unsettled.your_word, "hand-in waits for your word", "hand-ins wait for your word"),
        (unsettled.to_mark, "hand-in is not marked", "hand-ins are not marked"),
    )
    lines = [f"– {plural(*one)}" for one in waits if one[0]]
    return ["Not settled yet, and never more once they are gone:", *lines] if lines else []
