"""A set's notebook seen as a form: its fields, what was typed, and what its cells say to that.

The same lines run in a browser's worker and in this machine's Python. No answer is judged here,
and no formula is written again: the notebook's own cells run, with what was typed in its place.
"""

import ast
import contextlib
import io
import json
import re

from kitchenmath.errors import KitchenError
from kitchenmath.pages.along import photo_cells, photos_of, with_photo
from kitchenmath.pages.board import board_of
from kitchenmath.photo import tray_from_page
from kitchenmath.practice import open_set, student_number
from kitchenmath.practice.question_kinds import Look, answer_kind
from kitchenmath.practice.set_file import UNTOUCHED, asked_in, is_bare, last_assigned, read_set
from kitchenmath.practice.stumbles import in_plain_words
from kitchenmath.practice.typed_cells import PHOTO

__all__ = ["Form"]

# The field that an answer of this kind is typed into; any other is one line.
FIELDS = {"readings": "readings", "probe log": "log", "plan": "plan"}
CODE = "code"
ASK_CODE = "Type your code too: your instructor gave it to you, and nobody else has it."
LINES = ("readings", "log", "plan", "written")  # fields that hold more than one line


class Form:
    """A set's notebook, with a field for each of its answers.

    Parameters
    ----------
    raw : bytes
        The notebook: as handed out, or with answers in it.

    Attributes
    ----------
    set_id : str
    fields : dict of str to str
        By question: "line", "readings", "log", "plan" or "written".
    asks_code : bool
        Whether the class gives its students a code, which stands below the student number.

    Raises
    ------
    Unreadable
        For what is no notebook of a set.
    """

    def __init__(self, raw):
        self._cells, self.set_id = read_set(raw)
        self._raw = raw
        self._asked = {each.question: each for each in asked_in(self._cells)}
        self.fields = {
            question: "written" if asked.written else FIELDS.get(asked.kind, "line")
            for question, asked in self._asked.items()
        }
        self.asks_code = isinstance(_said(self._cells, CODE), str)

    def typed(self):
        """What stands in the notebook, as it was typed.

        Returns
        -------
        dict of str to str
            By field, "student" among them. A field whose cell computes is left out.
        """
        found = {CODE: _said(self._cells, CODE)} if self.asks_code else {}
        for name, text in self._answers().items():
            if self.fields.get(name) == "written":
                found[name] = "" if text.strip() == UNTOUCHED else text
                continue
            with contextlib.suppress(SyntaxError, ValueError, RecursionError, MemoryError):
                value = last_assigned(text, name)
                if isinstance(value, str):
                    found[name] = value.strip("\n")
                elif value is not ... and isinstance(value, int | float):
                    found[name] = str(value)
        return found

    def filled(self, typed):
        """The notebook with what was typed in its answer cells.

        Parameters
        ----------
        typed : dict of str to str
            By field. An empty field takes nothing from a cell that computes.

        Returns
        -------
        bytes
        """
        notebook = json.loads(self._raw)
        texts = self._texts(typed)
        for cell in notebook["cells"]:
            flags = cell.get("metadata", {}).get("nbgrader") or {}
            name = flags.get("grade_id") or cell.get("id")
            if name in texts:
                cell["source"] = texts[name].splitlines(keepends=True)
            # Nothing old may stand below a new answer; a photo that goes along stands there itself.
            if cell.get("cell_type") == "code" and not str(name).endswith(PHOTO):
                cell["outputs"], cell["execution_count"] = [], None
        return (json.dumps(notebook, indent=1, ensure_ascii=False) + "\n").encode()

    @property
    def photos(self):
        """The photos that go along, by question, as from `photos_of`."""
        return photos_of(self._raw)

    def take_photo(self, question, files, lines=("", "")):
        """Let a photo go along with a question, or take it out again.

        Parameters
        ----------
        question : str
        files : sequence of bytes
            The photo, and a small JPEG of it; nothing, and none goes along.
        lines : sequence of str
            The mat's two lines, as a ruler shows them.

        Returns
        -------
        str
            What is to be said.
        """
        cuts = photo_cells(self._cells)
        tray = tray_from_page(*files, tuple(lines), cuts[question]) if files else None
        self._raw = with_photo(self._raw, question, tray)
        return tray.words if tray else ""

    def shown(self, typed):
        """What the cells say to what was typed; every cell is run, from the top.

        Parameters
        ----------
        typed : dict of str to str
            By field.

        Returns
        -------
        dict
            "student" (the number, or the sentence that asks for one), "code" (a state and what to
            do about it, None where none is asked for), "given" (label and value by
            question), "said" (state and sentence by question), "mine", "board", "log", "there"
            and "of": how many answers can be used, of how many.
        """
        names, printed = {}, {}
        texts = {name: text for name, (_, text) in self._cells.items()} | self._texts(typed)
        for name, (kind, _) in self._cells.items():
            if kind == "code" and name != "last-look":
                printed[name] = _run(texts[name], names)
        sheet = names.get("sheet") or open_set(self.set_id, "", "")
        looks = {question: self._look(question, names, texts) for question in self._asked}
        return {
            "student": {"number": sheet.student, "sentence": _whose(typed.get("student", ""))},
            "code": self._code(typed),
            "given": {question: _numbers(sheet, question) for question in sheet.choices},
            "said": {question: [look.state, look.sentence] for question, look in looks.items()},
            "mine": printed.get("mine", ""),
            "board": self._board(names, sheet, typed),
            "log": self._log(names),
            "there": sum(look.state == "there" for look in looks.values()),
            "of": len(looks),
        }

    def _code(self, typed):
        if not self.asks_code:
            return None
        there = bool(str(typed.get(CODE, "")).strip())
        return ["there", "Your code is in."] if there else ["empty", ASK_CODE]

    def _answers(self):
        """The text of each cell that a field stands for."""
        names = {"student": "me"} | {question: f"{question}-answer" for question in self.fields}
        return {name: self._cells[cell][1] for name, cell in names.items() if cell in self._cells}

    def _texts(self, typed):
        """The new text of each cell that something was typed for."""
        texts = {}
        for name, text in self._answers().items():
            kind = self.fields.get(name, "line")
            new = str(typed.get(name, ""))
            cell = "me" if name == "student" else f"{name}-answer"
            if kind == "written":
                texts[cell] = new if new.strip() else UNTOUCHED
            elif new.strip() or _is_typed(text, name):
                texts[cell] = _with_answer(text, name, new, kind in LINES)
        if self.asks_code and "me" in texts:
            typed_code = json.dumps(str(typed.get(CODE, "")).strip(), ensure_ascii=False)
            texts["me"] += f"\n{CODE} = {typed_code}"
        return texts

    def _look(self, question, names, texts):
        asked = self._asked[question]
        if asked.written:
            filled = texts.get(f"{question}-answer", "").strip() not in ("", UNTOUCHED)
            return Look("there" if filled else "empty", "written." if filled else "")
        if question not in names:
            return Look("unreadable", "The cell of this answer stopped. Type the answer here.")
        return asked.look_at(names[question])

    def _board(self, names, sheet, typed):
        for question, asked in self._asked.items():
            if asked.kind == "plan" and sheet.student:
                text = self._cells.get(f"{question}-text", ("", ""))[1]
                numbers = {}
                for other in sheet.choices:
                    numbers |= _by_label(sheet, other)
                return board_of(text, numbers, names.get(question, ""), asked.plausible)
        return None

    def _log(self, names):
        for question, asked in self._asked.items():
            if asked.kind == "probe log":
                with contextlib.suppress(KitchenError):
                    log = answer_kind(asked.kind).read(names.get(question))
                    return [list(log.times.magnitude), list(log.temperatures.magnitude)]
        return None


def _said(cells, name):
    """What the first cell says under a name; None where it says nothing of it."""
    with contextlib.suppress(KeyError, SyntaxError, ValueError, RecursionError, MemoryError):
        return last_assigned(cells["me"][1], name)
    return None


def _whose(typed):
    """What to do about a student number, "" where it can be used."""
    if not typed.strip():
        return "Type your student number first: your numbers are drawn from it."
    try:
        student_number(typed)
    except KitchenError as error:
        return str(error)
    return ""


def _by_label(sheet, question):
    """The student's numbers for a question, by what each is called."""
    drawn = sheet.numbers_of(question, sheet.student)
    return {sheet.choices[question][name].label: value for name, value in drawn.items()}


def _numbers(sheet, question):
    """Label and value of each in words; none without a student number."""
    if not sheet.student:
        return []
    return [list(each) for each in sheet.numbers_in_words(question, sheet.student)]


def _run(text, names):
    """Run a cell and return what it printed; an error becomes what to do about it."""
    printed = io.StringIO()
    try:
        with contextlib.redirect_stdout(printed):
            exec(compile(text, "<cell>", "exec"), names)
    except Exception as error:  # a student's own cell may fail in any way
        return in_plain_words(f"{type(error).__name__}: {error}")
    return printed.getvalue().strip()


def _is_typed(text, name):
    """Whether a cell holds typed text, or nothing; else it computes, and is left alone."""
    try:
        return is_bare(text) or isinstance(last_assigned(text, name), str)
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        return False


def _with_answer(text, name, typed, by_lines):
    """A cell's text with a typed answer in it; its comments stay."""
    notes = [line for line in text.splitlines() if re.match(r"\s*#", line)]
    plain = typed.strip("\n")
    if by_lines and "'''" not in plain and "\\" not in plain:
        literal = f"'''\n{plain}\n'''"
    else:
        literal = json.dumps(typed.strip(), ensure_ascii=False)
    if ast.literal_eval(literal).strip() != typed.strip():  # a sign that JSON writes another way
        literal = repr(typed)
    return "\n".join([f"{name} = {literal}", *notes])
