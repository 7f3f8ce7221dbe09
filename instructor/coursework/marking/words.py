"""What marking says about a file and about an answer that gave nothing; the rest is in the key.

`pour` and `mark_one` decide by fields and hold no sentences. Those for the instructor alone are
marked so: they go into a record's `to_do`, which no page of a student shows.
"""

from kitchenmath.practice.stumbles import WITH_QUOTES, in_plain_words

# For the student, and so for the instructor too.
NOT_READ = "The file could not be read by the kit. Your instructor marks it."
NOT_MARKED = "The kit could not mark this file. Your instructor marks it."
SEE_THE_FILE = "(See the file as it arrived.)"
NOT_RUN = "This cell did not run."
BY_PLACE = "found by its place, as its name was gone."
CELL_GONE = "the answer cell is not there."
THE_PHOTO = "The photo that came with the hand-in."  # for who cannot see it
# For the instructor alone.
PHOTO_UNSEEN = "{question}: a photo came along and is not shown: {why}."
CHANGED_BEFORE = "Points changed for some students already: see {place}."


def unreadable(why):
    """Why a file could not be read."""
    return f"The file could not be read: {why}"


def too_long(cell, answer_bytes):
    """An answer, by the name of its cell, that is beyond what is run."""
    return (
        f"{cell}: the answer is longer than {answer_bytes} bytes and was left out (answer_bytes)."
    )


def own_too_long(answer_bytes):
    """A cell of the student's own that is beyond what is run."""
    return (
        f"A cell of the student's own is longer than {answer_bytes} bytes and was left out "
        "(answer_bytes)."
    )


def more_than_run(there, own_cells):
    """More cells of the student's own than are run."""
    return f"{there} cells are the student's own; the first {own_cells} were run (own_cells)."


def several_copies(count):
    """An answer cell that stands there several times."""
    return f"stands {count} times; the last one that is filled in counts."


def no_answer(question, stopped, output, failed):
    """Why a cell that is filled in gave no answer.

    Parameters
    ----------
    question : str
    stopped : str or None
        What stopped the cell: "was stopped after 10 seconds (cell_seconds)".
    output : str or None
        What it printed; None where it did not run.
    failed : bool
        Whether it ended in an error.

    Returns
    -------
    str
    """
    if stopped is not None:
        return f"The cell {stopped}, and gave no answer."
    if output is None:
        return "The cell did not run: the notebook was stopped before it."
    lines = output.strip().splitlines()
    if failed and lines:
        said = f"The cell is filled in, and gave no answer. It ended with: {lines[-1][:200]}"
    else:
        said = f"The cell is filled in, and ran, and put no answer under the name {question}."
    return f"{said.rstrip('.')}. {in_plain_words(said) or WITH_QUOTES}"


# For the instructor only.


def by_hand(student, set_id, inside):
    """What to do with a file that the kit cannot read or judge, and what went wrong `inside`."""
    failed = f" The kit failed on it: {inside}" if inside else ""
    return (
        f"It lies in submitted/{student}/{set_id}. Give its points by hand, question by question."
        f"{failed}"
    )


def marked_in_words(marked):
    """What a marking did: how many, and whose points changed.

    Parameters
    ----------
    marked : Marked

    Returns
    -------
    str
    """
    text = f"{len(marked.students)} hand-ins are marked"
    text += f", {marked.run} of them this time." if marked.run < len(marked.students) else "."
    if marked.changes:
        changes = "\n".join(f"  {each}" for each in marked.changes)
        text += f"\nThe points changed here:\n{changes}"
        text += f"\nThese and all earlier changes stand in {marked.list_of_changes}."
    return text


def not_marked_there(error):
    """Why the cluster gave no result for a hand-in."""
    return f"the cluster could not mark a hand-in ({type(error).__name__}: {error})."


def other_kit(worker, has_one):
    """A worker of a cluster that has another kit, or none, and what to do."""
    lacks = "has another version of the kit" if has_one else "lacks the kit"
    return (
        f"the worker {worker} {lacks}. Copy this one to it, start it with PYTHONPATH set to the "
        "kit's folder and its folder instructor, then mark again."
    )
