"""A set's notebook read as data: what it asks and what stands in its answer cells. Nothing is run.

Any editor may have saved it: with or without cell ids, text in one piece or in lines, in UTF-8 or
UTF-16. Of two copies of an answer cell the last that is filled in counts, as in marking.
"""

import ast
import json
import textwrap
import warnings
from dataclasses import dataclass

from kitchenmath.conventions import OURS, Conventions, conventions_of
from kitchenmath.errors import KitchenError, UnknownName, Unreadable
from kitchenmath.practice import look_words
from kitchenmath.practice.answer_look import look_over
from kitchenmath.practice.question_kinds import Look, answer_kind
from kitchenmath.practice.typed_cells import as_code
from kitchenmath.units.reading import read
from kitchenmath.units.saying import say

LONGEST = 50_000_000  # bytes
UNTOUCHED = "*Write here.*"
COMMENT = "#"


@dataclass(frozen=True)
class Asked:
    """One question of a set, as its file shows it.

    Attributes
    ----------
    question : str
        "q3"
    text : str or None
        What stands in the answer cell; None where there is no such cell.
    written : bool
        Whether the answer is written in words, for a person to mark.
    kind : str or None
        From the check cell; None where that is gone.
    plausible : tuple of str or None
    college : Conventions
        As the set's first cell says them.
    """

    question: str
    text: str | None
    written: bool
    kind: str | None = None
    plausible: tuple | None = None
    college: Conventions = OURS

    def look(self):
        """What can be said about the answer.

        Returns
        -------
        Look
        """
        if self.text is None:
            return Look("empty", look_words.CELL_GONE.format(how=self.how_to_type()))
        if self.written:
            if self.text.strip() in ("", UNTOUCHED):
                return Look("empty", look_words.NOT_WRITTEN.format(write=look_words.WRITE))
            return Look("there", "written.")
        try:
            value = last_assigned(as_code(self.text, self.question), self.question)
        except (SyntaxError, ValueError, RecursionError, MemoryError):
            return Look("unreadable", look_words.QUOTE_MISSING.format(how=self.typed()))
        if value is None and not is_bare(self.text):
            words = look_words.GIVES_NONE.format(question=self.question, how=self.typed())
            return Look("unreadable", words)
        if value is Ellipsis:
            return Look("unknown", look_words.COMPUTED)
        return self.look_at("" if value is None else value)

    def look_at(self, value):
        """What can be said about a value of this question.

        Parameters
        ----------
        value : object

        Returns
        -------
        Look
        """
        try:
            if self.kind is not None:
                return look_over(value, self.kind, self.plausible, self.college)
            return _without_kind(value)
        except KitchenError as error:
            return Look("unreadable", str(error))

    def typed(self):
        """How to type an answer to this question."""
        try:
            example = answer_kind(self.kind, self.college).example
        except UnknownName:
            example = "4.2 kg"
        return look_words.BETWEEN_QUOTES.format(question=self.question, example=example)

    def how_to_type(self):
        """What to do where the cell itself is gone."""
        return look_words.ADD_A_CELL.format(how=look_words.WRITE if self.written else self.typed())


def read_set(raw):
    """The cells of a set's notebook, by name and in order.

    Parameters
    ----------
    raw : bytes

    Returns
    -------
    dict of str to (str, str)
        Cell name to its type and its text.
    str
        The set's id, "" where the file does not say it.

    Raises
    ------
    Unreadable
        For what is no notebook of a set.
    """
    if len(raw) > LONGEST:
        raise Unreadable("the file is too long to be a set: was a picture pasted into it?")
    try:
        notebook = json.loads(raw)
        cells = [cell for cell in notebook["cells"] if isinstance(cell, dict)]
        kitchen = notebook.get("metadata", {}).get("kitchen", {})
        set_id = str(kitchen.get("set", ""))
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        raise Unreadable("this is no notebook.") from None
    named = {}
    for cell in cells:
        name, text = _name(cell), _text(cell)
        if name and (name not in named or _says_more(text, named[name][1])):
            named[name] = str(cell.get("cell_type", "code")), text
    if not any(name.endswith("-answer") for name in named):
        raise Unreadable("this is no notebook of a set: it has no answer cells.")
    return named, set_id


def asked_in(named):
    """The questions of a set, in order.

    Parameters
    ----------
    named : dict of str to (str, str)
        As from `read_set`.

    Returns
    -------
    list of Asked
    """
    questions = {}
    for name in named:
        question, _, part = name.rpartition("-")
        if part in ("answer", "check", "text", "given") and question.startswith("q"):
            questions.setdefault(question, None)
    college = _college_in(named.get("open-set", ("", ""))[1])
    return [_asked(question, named, college) for question in questions]


def student_in(named):
    """The student number as typed in the cell "me"; "" where there is none.

    Parameters
    ----------
    named : dict of str to (str, str)

    Returns
    -------
    str

    Raises
    ------
    Unreadable
        With what to type.
    """
    try:
        number = last_assigned(named.get("me", ("", ""))[1], "student")
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        raise Unreadable(
            'the cell cannot be read: is a quote missing? Type student = "BH-1007".'
        ) from None
    return "" if number in (None, ...) else str(number)


def last_assigned(text, name):
    """The last plain value assigned to a name: text, number, list; Ellipsis for a computed one.

    Parameters
    ----------
    text : str
        A cell's code.
    name : str

    Returns
    -------
    object
        None where nothing is assigned.
    """
    value = None
    for node in _nodes(text):
        if isinstance(node, ast.Assign) and any(
            isinstance(target, ast.Name) and target.id == name for target in node.targets
        ):
            try:
                value = ast.literal_eval(node.value)
            except (ValueError, TypeError):
                value = ...
    return value


def is_bare(text):
    """Whether a cell holds no code: nothing, or comments only."""
    lines = (line.strip() for line in text.splitlines())
    return all(not line or line.startswith(COMMENT) for line in lines)


def _asked(question, named, college):
    cell_type, text = named.get(f"{question}-answer", ("code", None))
    check = named.get(f"{question}-check", ("", ""))[1]
    kind, plausible = _looked_for(check)
    written = kind is None and (cell_type == "markdown" or f"{question}-given" not in named)
    return Asked(question, text, written, kind, plausible, college)


def _nodes(text):
    """The parts of a cell's code, in the order of a walk."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # Python warns of a stray backslash; marking does not mind
        return list(ast.walk(ast.parse(textwrap.dedent(text))))  # as a notebook reads it


def _name(cell):
    """nbgrader's name of a cell, else its own id, else ""."""
    metadata = cell.get("metadata")
    flags = metadata.get("nbgrader") if isinstance(metadata, dict) else None
    name = flags.get("grade_id") if isinstance(flags, dict) else None
    name = name or cell.get("id")
    return name if isinstance(name, str) else ""


def _text(cell):
    source = cell.get("source", "")
    lines = source if isinstance(source, list) else [source]
    return "".join(line for line in lines if isinstance(line, str))


def _says_more(text, earlier):
    """Whether a second copy of a cell counts: it is filled in, or the first is not."""
    return not is_bare(text) or is_bare(earlier)


def _college_in(opening):
    """The class's conventions, from the cell that opens the set; the kit's where it says none."""
    try:
        for node in _nodes(opening):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "open_set":
                named = {word.arg: word.value for word in node.keywords}
                return conventions_of(ast.literal_eval(named["college"]))
    except (SyntaxError, ValueError, KeyError, AttributeError, RecursionError):
        pass
    return OURS


def _looked_for(check):
    """Kind and plausible range, from the call of `look` in a check cell; None where it is gone."""
    try:
        for node in _nodes(check):
            if isinstance(node, ast.Call) and getattr(node.func, "attr", "") == "look":
                named = {word.arg: ast.literal_eval(word.value) for word in node.keywords}
                kind = named["kind"] if "kind" in named else ast.literal_eval(node.args[2])
                return kind, named.get("plausible")
    except (SyntaxError, ValueError, IndexError, RecursionError):
        pass
    return None, None


def _without_kind(value):
    """Where the check cell is gone, an answer is read for what it is."""
    if isinstance(value, str) and not value.strip():
        return Look("empty", look_words.CHECK_GONE_EMPTY)
    if not isinstance(value, str):
        return Look("there", look_words.CHECK_GONE)
    return Look("there", look_words.CHECK_GONE_READ.format(value=say(read(value))))
