"""Ways to break a line of code: another comparison, sum, number, condition or return."""

import ast
from dataclasses import dataclass
from pathlib import Path

OTHERS = {
    ast.Lt: ast.LtE,
    ast.LtE: ast.Lt,
    ast.Gt: ast.GtE,
    ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult,
    ast.Mod: ast.Add,
    ast.Pow: ast.Mult,
    ast.And: ast.Or,
    ast.Or: ast.And,
}


@dataclass(frozen=True)
class Change:
    """One line made wrong.

    Attributes
    ----------
    file : Path
    line : int
        Where the change is, counted from 1.
    begin, end : int
        In the file's bytes.
    old, new : str
    """

    file: Path
    line: int
    begin: int
    end: int
    old: str
    new: str

    def whole(self):
        """The file's text."""
        return self.file.read_bytes().decode()

    def made(self):
        """The file's text with this change."""
        raw = self.file.read_bytes()
        return (raw[: self.begin] + self.new.encode() + raw[self.end :]).decode()

    def in_words(self, root):
        """Where it is, how the line was, and what was made of its part."""
        line = self.file.read_text(encoding="utf-8").splitlines()[self.line - 1].strip()
        old, new = (" ".join(text.split()) for text in (self.old, self.new))
        return f"{self.file.relative_to(root)}:{self.line}\n    {line}\n    {old}  ->  {new}"


def changes(file):
    """Every change that can be made to a module; texts, annotations and f-strings stay.

    Parameters
    ----------
    file : Path

    Returns
    -------
    list of Change
    """
    raw = file.read_bytes()
    starts = [0]
    for line in raw.splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    found = []
    for node in _nodes(ast.parse(raw)):
        begin = starts[node.lineno - 1] + node.col_offset
        end = starts[node.end_lineno - 1] + node.end_col_offset
        for new in _broken(node):
            old = raw[begin:end].decode()
            found.append(Change(file, node.lineno, begin, end, old, new))
    return found


def _nodes(tree):
    """Nodes that run when the code is at work."""
    for name, value in ast.iter_fields(tree):
        if name in ("annotation", "returns") or isinstance(value, ast.JoinedStr):
            continue
        for node in value if isinstance(value, list) else [value]:
            if isinstance(node, ast.AST) and not isinstance(node, ast.JoinedStr):
                if isinstance(node, (ast.expr, ast.stmt)):
                    yield node
                yield from _nodes(node)


def _broken(node):
    """The texts that could stand in a node's place."""
    if isinstance(node, ast.Compare) and type(node.ops[0]) in OTHERS:
        other = ast.Compare(node.left, [OTHERS[type(node.ops[0])](), *node.ops[1:]],
                            node.comparators)  # fmt: skip
        yield _inside(other)
    elif isinstance(node, ast.BinOp) and type(node.op) in OTHERS:
        yield _inside(ast.BinOp(node.left, OTHERS[type(node.op)](), node.right))
    elif isinstance(node, ast.BoolOp):
        yield _inside(ast.BoolOp(OTHERS[type(node.op)](), node.values))
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, (ast.Not, ast.USub)):
        yield _inside(node.operand)
    elif isinstance(node, ast.Return) and ast.unparse(node) not in ("return", "return None"):
        yield "return None"
    elif isinstance(node, ast.Constant):
        yield from _other_number(node.value)


def _inside(node):
    return f"({ast.unparse(ast.fix_missing_locations(node))})"


def _other_number(value):
    if isinstance(value, bool):
        yield str(not value)
    elif isinstance(value, int):
        yield str(value + 1)
    elif isinstance(value, float):
        yield repr(value * 1.1 if value else 1.0)
