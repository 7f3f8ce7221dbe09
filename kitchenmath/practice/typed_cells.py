"""An answer cell as a cook fills it in: good Python computes, all else is typed text.

A phone makes curly quotes, a quote is forgotten, or the answer stands alone: `q1 = “3 kg”`,
`q1 = "3 kg`, `3 kg`. The notebook, the look before handing in and marking read such a cell by this
one function, so that nobody loses a right answer to Python's grammar.
"""

import ast
import re
import sys
import textwrap
import warnings

from kitchenmath.practice import look_words
from kitchenmath.units.typed_words import UNSEEN

QUOTES = "\"'“”„‟‘’‚‛«»‹›`´"
COMMENT = re.compile(r"(?:^|\s)#.*$")
# What makes a line code, and no answer: a call, an import, a block, an attribute.
CODE = re.compile(r"\w\(|^\s*(?:import|from|def|for|if|print|return|lambda)\b|\b[a-z_]\w*\.[a-z_]")
CONSTANTS = (ast.Constant, ast.Tuple, ast.BinOp, ast.UnaryOp, ast.operator, ast.unaryop, ast.Load)
# Lines that talk to the notebook itself, as "%matplotlib inline" or "!ls".
TO_NOTEBOOK = re.compile(r"^[ \t]*(?:\w+ *= *)?(?:%%?[a-z]|!)\w*.*$", re.MULTILINE)
BLANKS = re.compile("[\u00a0\u2007\u202f\u3000]")  # a blank to whoever reads, and none to Python
PHOTO = "-photo"  # the name of a cell that brings a photo along ends so: "q1-photo"
ANSWER_CELL = re.compile(r"(q\d+)-answer")


def as_code(text, question):
    """The text of an answer cell as Python, where it is a typed answer and no Python.

    Parameters
    ----------
    text : str
        What stands in the cell.
    question : str
        "q1"

    Returns
    -------
    str
        `q1 = '3 kg'`; the text as it came, but for unseen signs, where it is Python that gives an
        answer, where nothing is typed, and where it looks like code that has gone wrong.

    Examples
    --------
    >>> as_code("q1 = “3 kg”", "q1"), as_code("# nets\\n3 kg", "q1")
    ("q1 = '3 kg'", "q1 = '3 kg'")
    >>> as_code("q1 = one.need / 2", "q1")
    'q1 = one.need / 2'
    """
    text = without_unseen(text)
    typed = typed_in(text, question)
    return text if typed is None else f"{question} = {typed!r}"


def without_unseen(text):
    """A cell's text without signs that nobody sees and Python refuses, as pasted from a chat.

    Parameters
    ----------
    text : str

    Returns
    -------
    str

    Examples
    --------
    >>> without_unseen("q1\u200b =\u00a0one.need")
    'q1 = one.need'
    """
    return BLANKS.sub(" ", UNSEEN.sub("", text))


def typed_in(text, question):
    """What is typed in an answer cell that is no Python, or None where the cell is left alone.

    Parameters
    ----------
    text, question : str

    Returns
    -------
    str or None
    """
    if len(text) > 5000:
        return None
    text = TO_NOTEBOOK.sub("", text)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            body = ast.parse(textwrap.dedent(text)).body
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        return _typed_text(text, question)
    if body and all(isinstance(node, ast.Expr) and _bare_words(node.value) for node in body):
        return "\n".join(_value(node, text) for node in body)
    if not body or not all(_is_typed(node, question) for node in body):
        return None
    found = [_value(node, text) for node in body]
    found = [each for each in found if each.strip()]
    changed = len(body) > 1 or not _assigns(body[0], question) or _listed(body[0].value)
    return found[-1] if found and changed else None


def _typed_text(text, question):
    """The answer in a text that Python cannot read."""
    name = re.compile(rf"\s*{question}\b\s*(?:==|:=|[=:])?\s*", re.IGNORECASE)
    lines = [COMMENT.sub("", line) for line in text.splitlines()]
    lines = [_without_quotes(name.sub("", line, count=1)) for line in lines]
    typed = [line for line in lines if line]
    if not typed or any(CODE.search(line) for line in typed):
        return None
    return _without_quotes("\n".join(typed)) if text.count('"') > 1 else "\n".join(typed)


def _without_quotes(rest):
    """A line without quotes around it; a sign for inches at its end stays: 3" is a length."""
    rest = rest.strip()
    inside = rest.lstrip(QUOTES).strip()
    if len(inside) < len(rest.strip()) or (inside and inside[-1] in "“”„‟‚‛«»‹›`´"):
        inside = inside.rstrip(QUOTES).strip()
    return inside


def _is_typed(node, question):
    """Whether a line of Python can be an answer as somebody types it who knows no Python."""
    if isinstance(node, ast.AnnAssign):
        return _named(node.target, question) and node.value is None and _plain(node.annotation)
    if isinstance(node, ast.Assign):
        return all(_named(each, question) for each in node.targets) and _plain(node.value)
    if not isinstance(node, ast.Expr):
        return False
    if isinstance(node.value, ast.Compare):
        compared = node.value
        same = len(compared.ops) == 1 and isinstance(compared.ops[0], ast.Eq)
        return same and _named(compared.left, question) and _plain(compared.comparators[0])
    return _plain(node.value)


def _assigns(node, question):
    """Whether this line is an answer as Python has it already."""
    return isinstance(node, ast.Assign) and all(
        isinstance(each, ast.Name) and each.id == question for each in node.targets
    )


def _named(node, question):
    return isinstance(node, ast.Name) and node.id.casefold() == question.casefold()


def _plain(node):
    """Whether a value is written out: a text, a number, some of them."""
    return _listed(node) or all(isinstance(each, CONSTANTS) for each in ast.walk(node))


def _bare_words(node):
    """Whether a line is a word, or some with commas between: `milk, celery`."""
    return _listed(node) or isinstance(node, ast.Name)


def _listed(node):
    """Whether words stand there with commas or "and" between and no quotes: nobody computes so."""
    words = getattr(node, "elts", None) or getattr(node, "values", None) or ()
    return bool(words) and all(isinstance(each, ast.Name) for each in words)


def _value(node, text):
    """What a line says, as text."""
    if isinstance(node, ast.AnnAssign):
        value = node.annotation
    else:
        value = node.value
        value = value.comparators[0] if isinstance(value, ast.Compare) else value
    if isinstance(value, ast.Constant) and isinstance(value.value, str):
        return value.value
    return ast.get_source_segment(textwrap.dedent(text), value) or ""


def read_as_typed():
    """Have this notebook read its answer cells as typed text where they are no Python.

    What was typed is said back as it was read, and the cell is set right. Outside a notebook
    nothing changes.
    """
    ipython = sys.modules.get("IPython")
    shell = ipython.get_ipython() if ipython else None
    kept = getattr(shell, "input_transformers_cleanup", None)
    if kept is not None and _transformed not in kept:
        kept.insert(0, _transformed)


def _transformed(lines):
    """An input transformer: the lines of a cell, set right where it is an answer cell."""
    text = "".join(lines)
    question = question_of(text)
    code = as_code(text, question) if question else text
    if code == text:
        return lines
    shell = sys.modules["IPython"].get_ipython()
    if hasattr(shell, "set_next_input"):
        shell.set_next_input(code, replace=True)
    return [f"{code}\n", f"print({look_words.CELL_READ_AS.format(code=code)!r})\n"]


def question_of(text):
    """Which answer cell this is: by the name in it, else by the cell's own, as JupyterLab says.

    Parameters
    ----------
    text : str
        What stands in the cell that runs.

    Returns
    -------
    str
        "q1"; "" for a cell that holds no answer.
    """
    named = re.match(r"(?:\s*#.*\n|\s)*(q\d+)\b", text, re.IGNORECASE)
    if named:
        return named[1].lower()
    shell = sys.modules["IPython"].get_ipython()
    parent = shell.get_parent() if hasattr(shell, "get_parent") else {}
    cell = str(parent.get("metadata", {}).get("cellId", ""))
    found = ANSWER_CELL.fullmatch(cell)
    return found[1] if found else ""
