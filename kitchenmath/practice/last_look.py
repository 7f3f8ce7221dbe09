"""The last cell of a set: is it all there, is it saved, and which file to hand in.

It looks at what the cells above have made, so a computed answer is seen too, and at the saved
file where it can be found. It must run everywhere, also where the cells above have failed.
"""

import os
import sys
import textwrap
from pathlib import Path

from kitchenmath.errors import KitchenError, Unreadable
from kitchenmath.practice.before_handing_in import NOT_SAID, in_sum
from kitchenmath.practice.own_numbers import student_number
from kitchenmath.practice.question_kinds import Look
from kitchenmath.practice.set_file import Asked, asked_in, last_assigned, read_set
from kitchenmath.practice.sheet import Sheet
from kitchenmath.practice.typed_cells import as_code

MOST_FILES = 30  # a set lies in a folder of its own; a crowded folder is not searched for ever
PHONE = 42  # letters of a notebook's output side by side on a phone
SAVE = "Save this notebook (File, then Save Notebook)"


def last_look(names):
    """Say of every answer whether it is there and readable, and name the file to hand in.

    Parameters
    ----------
    names : dict
        What the notebook's cells have made: `globals()`.
    """
    try:
        lines = _lines(names)
    except Exception:  # the last thing a student runs may not be a traceback
        lines = [f"This set could not be looked at. {SAVE} and hand it in all the same."]
    print("\n".join(map(_folded, lines)))


def _folded(line):
    """A line in pieces that fit a phone, where a notebook would break it within a word."""
    return textwrap.fill(
        line, PHONE, subsequent_indent="  ", break_long_words=False, break_on_hyphens=False
    )


def _lines(names):
    sheet = names.get("sheet")
    sheet = sheet if isinstance(sheet, Sheet) else None
    file, named = _saved(sheet.set_id if sheet else "")
    asked = asked_in(named) if named else _asked_of(sheet)
    looks = {each.question: _look(each, names) for each in asked}
    lines = [f"Student number: {_student(names, sheet)}"]
    lines += [f"{question}: {look.sentence}" for question, look in looks.items()]
    if not named:
        lines.append("Written answers cannot be seen from here: look that yours are there.")
    lines += ["", in_sum(looks)]
    behind = [each.question for each in asked if named and _is_behind(each, names)]
    if behind:
        lines.append(
            f"Not the same in the saved file: {', '.join(behind)}. Run those cells again, save, "
            "and run this cell again."
        )
    return [*lines, f"{SAVE}. {_hand_in(file)}", NOT_SAID]


def _look(asked, names):
    """What can be said of the value that the cells made, or of what is written in the file."""
    if asked.written:
        look = asked.look()
        if look.state == "empty":
            return Look("empty", f"{look.sentence} Written already? Save, and run this cell again.")
        return Look(look.state, "written, in the saved file.")
    if asked.question not in names:
        typed = asked.text is not None and asked.look().state != "empty"
        words = f"there is no answer yet: run its cell. Where it stops, mend it. {asked.typed()}"
        return Look("unreadable" if typed else "empty", words)
    return asked.look_at(names[asked.question])


def _student(names, sheet):
    if "student" not in names:
        return 'it is not in yet. Type student = "BH-1007" with your own number, and run the cell.'
    try:
        number = student_number(names["student"])
    except KitchenError as error:
        return str(error)
    if sheet and sheet.student != number:
        return f"{number}. The numbers above belong to another: run all cells again from the top."
    return f"Look again: {sheet.unlike}" if sheet and sheet.unlike else number


def _asked_of(sheet):
    """The questions that the sheet has met, where no file tells of them."""
    if not sheet:
        return []
    met = {*sheet.choices, *sheet.looked}
    last = max((int(each[1:]) for each in met if each[1:].isdigit()), default=0)
    # A question without numbers of its own whose check failed was never met; it is in between.
    questions = [f"q{number}" for number in range(1, last + 1)]
    questions += sorted(met.difference(questions))
    return [
        Asked(each, "", False, *sheet.looked.get(each, (None, None)), sheet.college)
        for each in questions
    ]


def _saved(set_id):
    """This notebook's file and its cells by name, where they can be found; else None and None."""
    session = os.environ.get("JPY_SESSION_NAME")  # JupyterLab tells its kernels
    near = sorted(Path.cwd().glob("*.ipynb"), key=lambda file: file.stem != set_id)[:MOST_FILES]
    for file in [Path(session), *near] if session else near:
        try:
            named, found = read_set(file.read_bytes())
        except (OSError, Unreadable):
            continue
        if found == set_id or (found and not set_id) or str(file) == session:
            return file, named
    return None, None


def _is_behind(asked, names):
    """Whether the saved answer cell is another than the one that was run last."""
    if asked.written or asked.text is None or asked.question not in names:
        return False
    try:
        saved = last_assigned(as_code(asked.text, asked.question), asked.question)
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        return True
    if saved is not Ellipsis:
        live = names[asked.question]
        return type(saved) is not type(live) or saved != live
    ran = names.get("In")
    kept = {str(text).strip() for text in ran} - {""} if isinstance(ran, list) else set()
    return bool(kept) and asked.text.strip() not in kept  # some front ends keep no history


def _hand_in(file):
    """Which file to hand in, or how to come by it."""
    if sys.platform == "emscripten" or file is None:
        return "Then take the file down (File, then Download), and hand in the file that arrives."
    return f"Then hand in this file: {file.name}, in the folder {file.parent.name}."
