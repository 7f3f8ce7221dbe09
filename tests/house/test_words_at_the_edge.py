"""Code that decides has fields and no sentences: words are made at the edge, for one reader."""

import ast
from pathlib import Path

import pytest

KIT = Path(__file__).parents[2]
PLACES = KIT / "instructor" / "coursework", KIT / "kitchenmath" / "practice"
MOST_WORDS = 4
# The edge: what speaks to a reader. Every other module only decides, also one that comes tomorrow.
SPEAKS = (
    "*words.py",  # a package's words, for one reader each
    "*commands.py", "command.py", "board.py",  # the terminal
    "desk/*.py", "edition/told.py", "edition/compiling.py", "edition/checking.py",  # the desk
    "reports/*_page.py", "decisions/journal.py",  # pages
    # Files that are written for people: sheets, guides, a read-me, and the course file's comments.
    "edition/serve.py", "edition/student_zip.py", "sets/guides.py", "sets/order_lists.py",
    "skills/reteach_notebook.py", "classes/course.py", "classes/policy.py", "classes/college.py",
    "classes/copy_time.py", "sets/key_text.py", "sets/hand_out.py", "sets/class_keys.py",
    "demo.py",  # what the invented class hands in
    "marking/room/cells.py", "marking/room/walls.py",  # the room has nothing of the kit's to import
    "stumbles.py", "last_look.py", "before_handing_in.py",  # what a student reads before handing in
)  # fmt: skip
# What another program says or asks for, and the mark that a backup carries.
NOT_OURS = ("database or disk is full", "Object of type .* not in session",
            "a class of the kitchen teaching kit")  # fmt: skip
# Texts for a machine, or names: of attacks in a trial, of states in a list, of countries.
NO_SENTENCES = {
    "arriving/states.py", "classes/countries.py", "edition/wheels.py", "gradebook/tables.py",
    "marking/room/trial.py", "sets/earlier_questions.py", "meant.py", "typed_money.py",
}  # fmt: skip


def modules():
    """Each module that only decides, as people name it, with its file."""
    for place in PLACES:
        for file in sorted(place.rglob("*.py")):
            name = file.relative_to(place)
            if not any(name.match(edge) for edge in SPEAKS) and str(name) not in NO_SENTENCES:
                yield pytest.param(file, id=f"{place.name}/{name.as_posix()}")


def sentences_in(code):
    """Texts of more than four words that are no docstring and no error's message."""
    tree = ast.parse(code)
    for node in ast.walk(tree):
        body = getattr(node, "body", None)
        if isinstance(body, list) and body and _is_text(body[0]):
            body[0].value = ast.Constant("")
    refused = _of_errors(tree)
    texts = [_text(node) for node in ast.walk(tree) if id(node) not in refused]
    return [one for one in texts if len(one.split()) > MOST_WORDS and one not in NOT_OURS]


def _is_text(node):
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant | ast.JoinedStr)


def _of_errors(tree):
    """All that stands in an error's message, or in a function or constant that makes it."""
    raised = [node.exc for node in ast.walk(tree) if isinstance(node, ast.Raise) and node.exc]
    named = {one.id for each in raised for one in ast.walk(each) if isinstance(one, ast.Name)}
    makes = [
        node
        for node in tree.body
        if (isinstance(node, ast.FunctionDef) and node.name in named)
        or (isinstance(node, ast.Assign) and getattr(node.targets[0], "id", "") in named)
    ]
    return {id(node) for each in (*raised, *makes) for node in ast.walk(each)}


def _text(node):
    """What a node says; a text with values in it as one."""
    parts = node.values if isinstance(node, ast.JoinedStr) else [node]
    said = [part.value for part in parts if isinstance(part, ast.Constant)]
    return "".join(one for one in said if isinstance(one, str))


@pytest.mark.parametrize("file", sorted(modules()))
def test_what_decides_says_nothing(file):
    assert [] == sentences_in(file.read_text(encoding="utf-8"))


@pytest.mark.parametrize("edge", sorted({*SPEAKS, *NO_SENTENCES}))
def test_what_is_named_as_the_edge_is_there_and_has_sentences(edge):
    """Or the list would hold back more than it has to."""
    files = [file for place in PLACES for file in place.rglob("*.py") if file.match(edge)]

    assert any(sentences_in(file.read_text(encoding="utf-8")) for file in files)


def test_a_sentence_is_found_and_a_docstring_or_an_error_is_none():
    code = '''"""Of the module, in so many words."""
def one(points):
    """Of the function, in so many words."""
    if points < 0:
        raise ValueError(f"points: {points} came, and 0 is the least.")
    print("It came to what stands here.")
    return {"words": f"It came {points} points short of all."}
'''
    found = sentences_in(code)

    assert ["It came to what stands here.", "It came  points short of all."] == sorted(found)[::-1]


def test_a_first_line_that_speaks_is_found():
    assert ["There is no file to take in."] == sentences_in(
        'if not files:\n    print("There is no file to take in.")\n'
    )
