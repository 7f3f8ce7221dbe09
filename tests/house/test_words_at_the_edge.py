"""Code that decides has fields and no sentences: words are made at the edge, for one reader."""

import ast
from pathlib import Path

import pytest

COURSEWORK = Path(__file__).parents[2] / "instructor" / "coursework"
# What decides, counts or keeps; whoever reads about it finds the words in a module for words.
DECIDES = [
    "arriving/arrivals.py", "arriving/clock.py", "arriving/doubts.py", "arriving/json_walk.py",
    "arriving/photos.py",
    "arriving/placing.py", "arriving/placing_by_hand.py", "arriving/proposals.py",
    "arriving/senders.py", "arriving/take_in.py", "arriving/unpacking.py", "arriving/whose.py",
    "arriving/witnesses.py", "reports/class_figures.py", "reports/exchange.py", "reports/pack.py",
    "reports/student_view.py",
    "reports/hand_back.py", "reports/in_lines.py", "reports/office.py", "reports/page.py",
    "reports/question_text.py", "reports/sheet.py", "reports/term_marks.py",
    "care/discarding.py", "classes/codes.py", "classes/oneroster.py",
    "gradebook/decision_list.py", "terms/grades.py",
    "decisions/kinds.py", "sets/checked_keys.py", "sets/keys.py", "skills/fresh.py",
    "records/photos.py", "records/record_file.py", "records/trays.py",
    "decisions/applied.py", "decisions/holding.py", "decisions/stamp.py",
    "records/copies.py", "records/likeness.py", "records/points.py", "records/record.py",
    "gradebook/book.py", "gradebook/tables.py", "gradebook/waiting.py", "gradebook/writer.py",
    "marking/another_key.py", "marking/changes.py", "marking/mark_one.py", "marking/pour.py",
    "terms/attempts.py", "terms/counting.py", "terms/practical_given.py", "terms/term_book.py",
    "skills/skill_standing.py", "skills/skill_table.py",
]  # fmt: skip
MOST_WORDS = 4


def sentences_in(code):
    """Texts of more than four words that are no docstring and no error's message."""
    tree = ast.parse(code)
    for node in ast.walk(tree):
        body = getattr(node, "body", None)
        if isinstance(body, list) and body and isinstance(body[0], ast.Expr):
            body[0].value = ast.Constant("")
        if isinstance(node, ast.Raise):
            node.exc = None
    texts = [_text(node) for node in ast.walk(tree)]
    return [one for one in texts if len(one.split()) > MOST_WORDS]


def _text(node):
    """What a node says; a text with values in it as one."""
    parts = node.values if isinstance(node, ast.JoinedStr) else [node]
    said = [part.value for part in parts if isinstance(part, ast.Constant)]
    return "".join(one for one in said if isinstance(one, str))


@pytest.mark.parametrize("module", DECIDES)
def test_what_decides_says_nothing(module):
    assert [] == sentences_in((COURSEWORK / module).read_text(encoding="utf-8"))


def test_a_sentence_is_found_and_a_docstring_or_an_error_is_none():
    code = '''"""Of the module, in so many words."""
def one(points):
    """Of the function, in so many words."""
    if points < 0:
        raise ValueError(f"points: {points} came, and 0 is the least.")
    return {"words": f"It came {points} points short of all."}
'''
    assert ["It came  points short of all."] == sentences_in(code)
