"""Deciding and telling are apart: a verdict has fields, and one module makes sentences of them."""

import ast
from pathlib import Path

import pytest

import kitchenmath.practice
from kitchenmath.practice import Found, Verdict, in_words, sentences

FOLDER = Path(kitchenmath.practice.__file__).parent
ONLY_DECIDE = (
    "amount_played",
    "measured",
    "plan_kitchen",
    "plan_played",
    "planned",
    "question_kinds",
    "questions",
    "verdicts",
)
LATE, HOT = Found("late", "Too late.", 1.0), Found("hot", "Too hot.", 2.0)


def texts(tree):
    """Every text in a module's code, docstrings left out; of one with holes in it each piece."""
    told = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)
        and isinstance(node.body[0], ast.Expr)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in told:
            yield node.value


@pytest.mark.parametrize("module", ONLY_DECIDE)
def test_a_module_that_decides_holds_no_sentence(module):
    """Nothing of more than four words: another language is a translation of other files."""
    tree = ast.parse((FOLDER / f"{module}.py").read_text(encoding="utf-8"))

    assert [] == [text for text in texts(tree) if len(text.split()) > 4]


def test_whether_slips_are_alternatives_is_a_field():
    """A number may be one or the other; a plan may show both; the words only follow."""
    either = Verdict("q1", "slip", 0, 3, (LATE, HOT), alternatives=True)
    both = Verdict("q1", "slip", 0, 3, (LATE, HOT))

    assert "Too late. Or: Too hot." == in_words(either)
    assert "(1) Too late. (2) Too hot." == in_words(both)
    assert ["Too late.", "Too hot."] == sentences(either) == sentences(both)
    assert ("late", "hot") == both.slips


def test_a_slip_whose_sentence_quotes_our_own_words_changes_nothing():
    """Once " Or: " in a sentence made two slips of one, and "(1) " a list."""
    odd = Found("odd", "Cook it. Or: serve it raw. (1) Neither.")
    verdict = Verdict("q1", "slip", 0, 3, (odd, LATE))

    assert [odd.sentence, "Too late."] == sentences(verdict)
    assert not verdict.alternatives
