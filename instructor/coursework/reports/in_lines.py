"""The mark sheet in a terminal: a table, then slips and notes, a line each."""

from collections import Counter

from coursework.decisions.applied import poured_in
from coursework.decisions.holding import holding
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import human_marks, refused_points
from coursework.records.copies import with_copies
from coursework.records.reading import usable_records
from coursework.reports.sheet import mark_sheet, slips_named


def marks_in_lines(course, set_id):
    """The mark sheet without its long columns, then what they say, a line each.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    str
    """
    records = with_copies(usable_records(course, set_id)[0])
    holds = holding(decisions_of(course))
    records, human = poured_in(records, human_marks(course, set_id), holds)
    head, *rows = mark_sheet(course, set_id, records, human, holds)
    short = [column for column, name in enumerate(head) if name not in ("slips", "notes")]
    lines = [table([[row[column] for column in short] for row in (head, *rows)])]
    named = Counter(slip for found in records for slip in slips_named(found))
    if named:
        lines += ["", "Slips, most first:"]
        lines += [f"  {count:2d} x {slip}" for slip, count in named.most_common(8)]
    notes = [(row[0], row[head.index("notes")]) for row in rows if row[head.index("notes")]]
    look = [f"{student}: {note}" for student, note in notes] + refused_points(course, set_id)
    if look:
        lines += ["", "To look at:", *(f"  {each}" for each in look)]
    return "\n".join(lines)


def table(rows):
    """Rows as a table in plain text: numbers to the right, words to the left.

    Parameters
    ----------
    rows : list of list of str
        The first one holds the heads.

    Returns
    -------
    str
    """
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    number = [
        all(row[column].replace(".", "").isdigit() or not row[column] for row in rows[1:])
        for column in range(len(rows[0]))
    ]
    lines = []
    for row in rows:
        cells = zip(row, widths, number, strict=True)
        lines.append("  ".join(t.rjust(w) if n else t.ljust(w) for t, w, n in cells).rstrip())
    lines.insert(1, "  ".join("-" * width for width in widths))
    return "\n".join(lines)
