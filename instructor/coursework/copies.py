"""Recognising a copy of a classmate's file. It names what is alike; the instructor decides."""

from coursework.keys import digest
from coursework.reading_in import UnreadableNotebook, read_notebook

# Two cooks may well type the same thing once or twice.
FEWEST = 3


def copies(course, set_id):
    """Hand-ins of different students whose answers are the same text.

    All answers that were filled in are the same, and there are at least three of them. Spaces and
    line ends make no difference. Every student has other numbers, so the same typed amounts are
    no chance; the same formula in all cells can be.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    list of (str, str, str)
        Two student numbers and what is alike. Of more than two, each later one with the first.
    """
    released = course.release(set_id)
    untouched = answers(released.read_bytes()) if released.is_file() else {}
    alike = {}
    for student in sorted(course.roster):
        file = course.submitted(set_id, student)
        if not file.is_file():
            continue
        try:
            filled = answers(file.read_bytes(), untouched)
        except UnreadableNotebook:
            continue
        if len(filled) >= FEWEST:
            key = digest(repr(sorted(filled.items())).encode())
            alike.setdefault(key, (filled, []))[1].append(student)
    return [
        (first, other, f"the same text in all {len(filled)} answers that were filled in")
        for filled, (first, *others) in alike.values()
        for other in others
    ]


def answers(raw, untouched=None):
    """The text of each answer cell that was filled in, by name, with single spaces.

    Parameters
    ----------
    raw : bytes
        A notebook. Of two copies of an answer cell the last that is filled in counts.
    untouched : dict of str to str, optional
        Texts that count as not filled in: the answers of the notebook that was handed out.

    Returns
    -------
    dict of str to str

    Raises
    ------
    UnreadableNotebook
    """
    found = {}
    for cell in read_notebook(raw).cells:
        names = (name for name in (cell.grade_id, cell.id) if name and name.endswith("-answer"))
        name, text = next(names, None), " ".join(cell.source.split())
        if name and text and text != (untouched or {}).get(name):
            found[name] = text
    return found
