"""Questions of earlier sets asked again in a review, with other numbers: one source, two faces.

A key names them, a cell each, and the question's own cells take that cell's place:

    # %% [markdown] q5-again
    04-buy-enough, q1

Numbers are drawn for the set and the place in it, so nobody meets their old ones. Everything else,
tolerance, slips, working and skill, is the question's own, and is written in its own key only.
"""

import ast
import io
import re
import symtable
import tokenize
from dataclasses import dataclass

from coursework.errors import CourseError
from kitchenmath.practice.sheet import VARIABLES

AGAIN = "again"
NAMED = re.compile(r"(?P<set>[a-z0-9-]+), (?P<question>q\d+)")
NUMBERED = re.compile(r"^## \d+(?=\.)|\bquestions? \d+(?:(?:, | and | or )\d+)*", re.MULTILINE)
ASKED_AGAIN = ("text", "given", "answer", "check")
MARKED = {"answer": "SOLUTION", "check": "HIDDEN TESTS"}


@dataclass(frozen=True)
class Place:
    """Where a question came from, and where it stands now: ("04-buy-enough", "q1", "q5")."""

    set_id: str
    old: str
    new: str


def with_earlier(set_id, cells, cells_of):
    """A key's cells, with the questions that it asks again in the places of the cells naming them.

    Parameters
    ----------
    set_id : str
    cells : list of dict
    cells_of : callable
        Gives the cells of another set's key.

    Returns
    -------
    list of dict

    Raises
    ------
    CourseError
        When a cell names no question, or one that is more than text, numbers, answer and check,
        or that builds on one which the review does not ask.
    """
    places = [_place(set_id, cell) for cell in cells if _asks_again(cell)]
    found = []
    for cell in cells:
        if not _asks_again(cell):
            found.append(cell)
            continue
        place = next(one for one in places if one.new == cell["id"].partition("-")[0])
        found += _question(set_id, place, places, cells_of(place.set_id))
    return found


def _asks_again(cell):
    return cell["id"].rpartition("-")[2] == AGAIN


def _place(set_id, cell):
    named = NAMED.fullmatch(cell["source"].strip())
    if not named:
        raise CourseError(
            f"key {set_id}, {cell['id']}: write which question, as in “04-buy-enough, q1”."
        )
    return Place(named["set"], named["question"], cell["id"].partition("-")[0])


def _question(set_id, place, places, source_cells):
    """The cells of one question, under its new name."""
    parts = {
        cell["id"].partition("-")[2]: cell
        for cell in source_cells
        if cell["id"].partition("-")[0] == place.old
    }
    where = f"key {set_id}, {place.new}: {place.old} of {place.set_id}"
    if not {"text", "answer", "check"} <= parts.keys() <= set(ASKED_AGAIN):
        raise CourseError(f"{where} is no question that can be asked again.")
    new_names = {one.old: one.new for one in places if one.set_id == place.set_id}
    defined = _definitions(source_cells)
    made = []
    for part in (part for part in ASKED_AGAIN if part in parts):
        cell, text = parts[part], parts[part]["source"]
        if cell["cell_type"] == "markdown":
            text = _text(text, new_names, where)
        else:
            text = _code(_standing_alone(part, text, place.new, defined), new_names, where)
        made.append(cell | {"id": f"{place.new}-{part}", "source": text})
    return made


def _text(text, new_names, where):
    """Words: the heading gets its new number, and so does each "question 1"."""
    numbers = {old[1:]: new[1:] for old, new in new_names.items()}

    def renamed(found):
        return re.sub(r"\d+", lambda one: _new(numbers, one[0], where), found[0])

    return NUMBERED.sub(renamed, text)


def _code(code, new_names, where):
    """Code: q1 wherever it stands, and the numbers of q1, which a set keeps as `one`."""
    kept = {VARIABLES[old]: VARIABLES[new] for old, new in new_names.items()}
    lines = code.splitlines(keepends=True)
    for token in reversed(list(tokenize.generate_tokens(io.StringIO(code).readline))):
        if token.type == tokenize.NAME and token.string in VARIABLES.values():
            row, begin, end = token.start[0] - 1, token.start[1], token.end[1]
            new = _new(kept, token.string, where)
            lines[row] = lines[row][:begin] + new + lines[row][end:]
    return re.sub(r"\bq\d+\b", lambda one: _new(new_names, one[0], where), "".join(lines))


def _new(names, old, where):
    if old not in names:
        raise CourseError(f"{where} builds on “{old}”: ask that one again as well.")
    return names[old]


def _standing_alone(part, text, question, defined):
    """Code that needs nothing from the rest of its key: what it uses is defined in it.

    Two sets may call different things by one name, and a formula finds its helpers when it is
    called. So what marks a question lies in a function of its own.
    """
    begin, end = (f"### {word} {MARKED.get(part)}" for word in ("BEGIN", "END"))
    before, mark, rest = text.partition(f"{begin}\n")
    if not mark:
        return text
    hidden, _, after = rest.partition(end)
    alone = "\n".join([*_needed(hidden, defined), hidden.strip("\n")])
    if part == "check":
        inside = "\n".join(f"    {line}" if line else "" for line in alone.splitlines())
        alone = f"def award_{question}():\n{inside}\n\n\naward_{question}()"
    return f"{before}{mark}{alone}\n{end}{after}"


def _definitions(cells):
    """What a key's code defines, in its order: the names, and the text that defines them."""
    found = []
    for cell in cells:
        if cell["cell_type"] != "code":
            continue
        for line in ast.parse(cell["source"]).body:
            if names := _bound(line):
                found.append((names, ast.get_source_segment(cell["source"], line)))
    return found


def _bound(line):
    """The names that an import, a function or a constant of a key binds; a question's are none."""
    if isinstance(line, ast.Import | ast.ImportFrom):
        return {(one.asname or one.name).partition(".")[0] for one in line.names}
    if isinstance(line, ast.FunctionDef | ast.ClassDef):
        return {line.name}
    named = {one.id for one in ast.walk(line) if isinstance(one, ast.Name) and _stored(one)}
    own = {"student", "sheet", *VARIABLES, *VARIABLES.values()}
    return named if isinstance(line, ast.Assign) and not named & own else set()


def _needed(code, defined):
    """The definitions, out of `defined`, that a piece of code stands on and does not hold."""
    wanted, taken = _used(code), []
    for names, text in reversed(defined):
        if names & wanted and text not in code:
            taken.insert(0, text)
            wanted = (wanted - names) | _used(text)
    return taken


def _used(code):
    """The names that a piece of code takes from outside itself, also within its functions."""
    outer = symtable.symtable(code, "a question", "exec")
    own = {each.get_name() for each in outer.get_symbols() if each.is_assigned()}
    own |= {each.get_name() for each in outer.get_symbols() if each.is_imported()}
    return _taken_from_outside(outer) - own


def _taken_from_outside(scope):
    top = scope.get_type() == "module"
    found = {
        each.get_name()
        for each in scope.get_symbols()
        if each.is_referenced() and (top or each.is_global())
    }
    return found.union(*map(_taken_from_outside, scope.get_children()))


def _stored(name):
    return isinstance(name.ctx, ast.Store)
