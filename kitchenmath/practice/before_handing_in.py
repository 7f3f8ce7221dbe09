"""A look at a set before it is handed in: is it all there, and can it be read?

`python3 assignments` reads the student's notebooks as data, without running anything, and says
what each answer looks like and which file to hand in. It does not say what is right.
"""

import sys
from pathlib import Path

from kitchenmath.errors import KitchenError, Unreadable
from kitchenmath.practice.own_numbers import student_number
from kitchenmath.practice.set_file import asked_in, read_set, student_in

ASSIGNMENTS = Path(__file__).parents[2] / "assignments"
HOW = 'Type "python3 assignments", or "python3 assignments look 4", or name a file in quotes.'
NOT_SAID = "Whether an answer is right is not said here: that comes back with your marks."


def main(arguments):
    """Look at the sets in assignments/, or at the files, folders or set numbers named.

    Parameters
    ----------
    arguments : list of str
        All sets in assignments/ when empty; then a set that is not begun gets one line only.

    Returns
    -------
    int
        0 when something could be looked at, else 1.
    """
    shown, not_begun = 0, []
    files = [file for name in arguments for file in _files(name)]
    for file in files or ([] if arguments else _files(ASSIGNMENTS)):
        try:
            named, _ = read_set(file.read_bytes())
        except (OSError, Unreadable) as error:
            why = error.strerror if isinstance(error, OSError) else error
            print(f"{file}: {why}", file=sys.stderr)
            continue
        if not arguments and not _begun(named):
            not_begun.append(file.stem)
            continue
        shown += 1
        print("\n".join([file.name, *(f"  {line}" for line in look_at(named))]))
        print(f"  Save it in JupyterLab first. Hand in this file: {file.resolve()}\n")
    if not_begun:
        print(f"Not begun: {', '.join(not_begun)}.")
    if shown:
        print(NOT_SAID)
    elif not not_begun:
        print(f"Nothing could be looked at. {HOW}", file=sys.stderr)
    return 0 if shown or not_begun else 1


def look_at(named):
    """What can be said about each answer of a set's notebook, a line each, and a sum.

    Parameters
    ----------
    named : dict of str to (str, str)
        As `read_set` gives it.

    Returns
    -------
    list of str
    """
    looks = {asked.question: asked.look() for asked in asked_in(named)}
    lines = [f"Student number: {_student(named)}"]
    lines += [f"{question}: {look.sentence}" for question, look in looks.items()]
    return [*lines, in_sum(looks)]


def in_sum(looks):
    """How many answers can be used as they are, and which to look at again.

    Parameters
    ----------
    looks : dict of str to Look
        By question.

    Returns
    -------
    str

    Examples
    --------
    Of two answers one is typed, and it cannot be read.

    >>> from kitchenmath.practice.answer_look import look_over
    >>> in_sum({"q1": look_over("lots", "weight"), "q2": look_over("", "count")})
    '0 of 2 answers are there. Still empty: q2. Look again at: q1.'
    """
    there = sum(look.can_be_used for look in looks.values())
    words = f"{there} of {len(looks)} answers {'is' if there == 1 else 'are'} there."
    for state, what in (("empty", "Still empty"), ("again", "Look again at")):
        found = [question for question, look in looks.items() if look.to_do == state]
        words += f" {what}: {', '.join(found)}." if found else ""
    return words


def _files(name):
    """The notebooks that a word of the command line means."""
    path = Path(name)
    if str(name).isdigit():
        found = sorted(ASSIGNMENTS.glob(f"{int(name):02d}-*/*.ipynb"))
        return found or _none(f"There is no set {name} in {ASSIGNMENTS}.")
    if path.is_dir():
        found = sorted({*path.glob("*.ipynb"), *path.glob("*/*.ipynb")})
        return found or _none(f"{path}: there is no notebook in this folder.")
    if not path.exists():
        return _none(f"{path}: there is no such file. Is it in another folder, such as Downloads?")
    return [path]


def _none(words):
    print(words, file=sys.stderr)
    return []


def _begun(named):
    """Whether a student number is in, or an answer that can be read; an empty form is none."""
    try:
        number = student_in(named)
    except Unreadable:
        return True
    states = {asked.look().state for asked in asked_in(named)}
    return bool(number.strip()) or not states <= {"empty", "unreadable"}


def _student(named):
    try:
        return student_number(student_in(named))
    except KitchenError as error:
        return str(error)
