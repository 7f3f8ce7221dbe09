"""Whose notebook it is and which set: what a hand-in says of itself, read and never run."""

import ast
import warnings
from itertools import islice

from kitchenmath.practice.typed_cells import without_unseen

# A cell longer than this is looked through line by line; no cell that we hand out comes near.
WHOLE_CELL = 5_000
# A line that can stand anywhere is looked for in so many cells, not in all of 20,000.
LOOKED_THROUGH = 100
# Phones turn quotes into curly ones. Python does not take them, but whose it is stays plain.
STRAIGHT = str.maketrans("“”„«»‘’‚′″", '"""""\'\'\'\'"')


def student_of(notebook):
    """The student number that a notebook says, as typed; None when it says none.

    The cell "me" holds it. Of two such cells the last that is filled in counts; where there is
    none, the first cell that has a line `student = "…"`.

    Parameters
    ----------
    notebook : Notebook

    Returns
    -------
    str or None
    """
    cells = code_with(notebook, "student")
    me = [cell for cell in cells if "me" in (cell.id, cell.grade_id)]
    said = [literal(cell.source, "student") for cell in [*reversed(me), *cells]]
    said = [number for number in said if number is not None]
    # One left empty was not filled in, which is another story than a line that is gone.
    return next((number for number in said if number.strip()), "" if said else None)


def code_of(notebook):
    """The student's code that the cell "me" says, as typed; None when it says none.

    Parameters
    ----------
    notebook : Notebook

    Returns
    -------
    str or None
    """
    cells = [cell for cell in code_with(notebook, "code") if "me" in (cell.id, cell.grade_id)]
    said = [literal(cell.source, "code") for cell in reversed(cells)]
    return next((code for code in said if code and code.strip()), None)


def set_of(notebook):
    """Set and term that a notebook says: in its metadata, else in its call of `open_set`.

    Parameters
    ----------
    notebook : Notebook

    Returns
    -------
    (str or None, str or None)
    """
    set_id, term = (notebook.kitchen.get(name) for name in ("set", "term"))
    if isinstance(set_id, str):
        return clean(set_id), clean(term) if isinstance(term, str) else None
    for cell in code_with(notebook, "open_set"):
        for tree in trees(cell.source, "open_set"):
            for node in ast.walk(tree):
                called = getattr(node, "func", None)
                if "open_set" in (getattr(called, "id", None), getattr(called, "attr", None)):
                    said = dict(zip(("set_id", "term"), map(text_of, node.args), strict=False))
                    said |= {word.arg: text_of(word.value) for word in node.keywords}
                    if said.get("set_id"):
                        return said["set_id"], said.get("term")
    return None, None


def literal(source, name):
    """The text that a cell gives to a name: `student = "BH-1007"` gives "BH-1007".

    Parameters
    ----------
    source : str
        Code of one cell. It is parsed, never run.
    name : str

    Returns
    -------
    str or None
        The last text or whole number given to the name; None when there is none.

    Examples
    --------
    >>> literal('student = "BH-1007"  # yours', "student")
    'BH-1007'
    """
    found = None
    for tree in trees(source, name):
        for node in ast.walk(tree):
            if isinstance(node, ast.Assign | ast.AnnAssign):
                targets = node.targets if isinstance(node, ast.Assign) else [node.target]
                text = text_of(node.value)
                if text is not None and any(getattr(one, "id", None) == name for one in targets):
                    found = text
    return found


def text_of(node):
    """The text of a literal; whole numbers too, for a class whose numbers are bare figures."""
    value = node.value if isinstance(node, ast.Constant) else None
    if type(value) is int and value < 10**64:
        return str(value)
    return clean(value) if isinstance(value, str) else None


def clean(text):
    """Text that can be written to a file: half characters (lone surrogates) become "?"."""
    return text.encode("utf-8", "replace").decode()


def code_with(notebook, name):
    """Code cells that hold `name`, at most LOOKED_THROUGH of them."""
    code = (cell for cell in notebook.cells if cell.cell_type == "code" and name in cell.source)
    return list(islice(code, LOOKED_THROUGH))


def trees(source, name):
    """The syntax trees of a cell that holds `name`; of its lines where the whole cannot be parsed.

    Lines that talk to the notebook itself (% and !) are left out.
    """
    lines = source.splitlines()
    own = "\n".join("" if line.lstrip().startswith(("%", "!")) else line for line in lines)
    tree = parsed(own) if len(own) <= WHOLE_CELL else None
    if tree:
        yield tree
        return
    with_name = (line.strip() for line in lines if name in line and len(line) <= WHOLE_CELL)
    for line in islice(with_name, LOOKED_THROUGH):
        tree = parsed(line) or parsed(without_unseen(line).translate(STRAIGHT))
        if tree:
            yield tree


def parsed(code):
    """The syntax tree of some code, or None."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            return ast.parse(code)
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        return None
