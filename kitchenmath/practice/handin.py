"""A look at a set before it is handed in: is it all there, and can it be read?

`python3 assignments` reads the student's notebooks as data, without running anything, and says
what each answer looks like and which file to hand in. It does not say what is right.
"""

import ast
import json
import sys
from pathlib import Path

from kitchenmath.errors import KitchenError
from kitchenmath.practice.own_numbers import student_number
from kitchenmath.practice.sheet import seen

ASSIGNMENTS = Path(__file__).parents[2] / "assignments"
UNTOUCHED = "*Write here.*"


def main(arguments):
    """Look at the sets in assignments/, or at the files named.

    Parameters
    ----------
    arguments : list of str
        Notebook files; all sets in assignments/ when empty.

    Returns
    -------
    int
        0 when something could be looked at, else 1.
    """
    files = [Path(name) for name in arguments] or sorted(ASSIGNMENTS.glob("*/*.ipynb"))
    looked = 0
    for file in files:
        try:
            notebook = json.loads(file.read_text(encoding="utf-8-sig"))
            lines = look_at(notebook)
        except (OSError, ValueError, KeyError, TypeError) as error:
            print(f"{file}: this is no notebook of a set ({error}).", file=sys.stderr)
            continue
        looked += 1
        print("\n".join([f"{file.name}", *(f"  {line}" for line in lines)]))
        print(f"  Hand in this file: {file.resolve()}\n")
    return 0 if looked else 1


def look_at(notebook):
    """What can be said about each answer of a set's notebook, a line each.

    Parameters
    ----------
    notebook : dict
        As read from the file.

    Returns
    -------
    list of str
    """
    texts = {cell.get("id", ""): "".join(cell["source"]) for cell in notebook["cells"]}
    lines = [_student(texts["me"])]
    for name, text in texts.items():
        if name.endswith("-check"):
            question = name.removesuffix("-check")
            lines.append(f"{question}: {_answer(question, texts, text)}")
        elif name.endswith("-answer") and f"{name.removesuffix('-answer')}-check" not in texts:
            there = text.strip() not in ("", UNTOUCHED)
            words = "written." if there else "nothing is written yet."
            lines.append(f"{name.removesuffix('-answer')}: {words}")
    return lines


def _student(text):
    try:
        return f"Student number: {student_number(_assigned(text, 'student') or '')}"
    except KitchenError as error:
        return f"Student number: {error}"


def _answer(question, texts, check):
    """What the answer cell assigns, read with the kind that the check cell names."""
    try:
        value = _assigned(texts.get(f"{question}-answer", ""), question)
    except SyntaxError:
        return "the cell cannot be read: is a quote missing?"
    if value is Ellipsis:
        return "computed; run the notebook to see what it gives."
    kind, plausible = _looked_for(check)
    return seen("" if value is None else value, kind, plausible)


def _assigned(text, name):
    """The last plain value assigned to a name: text, number, list; Ellipsis for a computed one."""
    value = None
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Assign) and any(
            isinstance(target, ast.Name) and target.id == name for target in node.targets
        ):
            try:
                value = ast.literal_eval(node.value)
            except ValueError:
                value = ...
    return value


def _looked_for(check):
    """Kind and plausible range, from the call of `look` in a check cell."""
    call = next(
        node
        for node in ast.walk(ast.parse(check))
        if isinstance(node, ast.Call) and getattr(node.func, "attr", "") == "look"
    )
    named = {word.arg: ast.literal_eval(word.value) for word in call.keywords}
    return ast.literal_eval(call.args[2]), named.get("plausible")
