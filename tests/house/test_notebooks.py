"""Notebooks in git: clean, named, and saying what they should."""

import json
import re
from pathlib import Path

import nbformat
import pytest
from coursework.sets.keys import source
from coursework.sets.notebooks import NOT_STORED, tidy

KIT = Path(__file__).parents[2]
LESSONS = sorted(KIT.glob("lessons/*.ipynb"))
NOTEBOOKS = [
    *LESSONS,
    *sorted(KIT.glob("instructor/**/*.ipynb")),
    *KIT.glob("assignments/*/*.ipynb"),
]
MADE_ON_USE = ("instructor/classes", "tests/screenshots")  # and ignored by git
by_name = {"ids": [str(file.relative_to(KIT)) for file in NOTEBOOKS]}
by_lesson = {"ids": [file.stem for file in LESSONS]}


def cells(file):
    return json.loads(file.read_text(encoding="utf-8"))["cells"]


@pytest.mark.parametrize("file", NOTEBOOKS, **by_name)
def test_a_notebook_is_valid_and_stored_clean(file):
    """nbformat's own schema; no pictures, panel state or attachments; one kernel; named cells."""
    notebook = nbformat.read(file, as_version=4)
    nbformat.validate(notebook)
    ids = [cell["id"] for cell in notebook.cells]

    assert notebook.metadata.keys() <= {"kernelspec", "kitchen"}
    assert notebook.metadata.kernelspec.name == "python3"
    assert len(set(ids)) == len(ids)
    assert all(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", each) for each in ids)
    for cell in notebook.cells:
        assert "attachments" not in cell
        for output in cell.get("outputs", []):
            assert set(output.get("data", {"text/plain": ""})) == {"text/plain"}
            assert output.output_type != "error"


@pytest.mark.parametrize("file", LESSONS, **by_lesson)
def test_a_lesson_is_stored_as_the_kit_stores_it(file):
    """`python3 instructor refresh` would change no more than outputs; panels store none."""
    assert file.read_text(encoding="utf-8") == tidy(nbformat.read(file, as_version=4))
    for cell in cells(file):
        tagged = NOT_STORED in cell["metadata"].get("tags", [])
        if cell["cell_type"] == "code":
            assert not (tagged and cell["outputs"])
            assert cell["execution_count"] is not None
            assert tagged == ("panel(" in source(cell))


def test_what_is_stored_does_not_depend_on_how_a_kernel_sent_it():
    """Three pieces of one stream or two are one; another stream, or a result, parts them."""

    def stored(*outputs):
        cell = {"cell_type": "code", "metadata": {}, "source": "", "outputs": list(outputs)}
        return json.loads(tidy({"metadata": {}, "cells": [cell]}))["cells"][0]["outputs"]

    def printed(text, name="stdout"):
        return {"output_type": "stream", "name": name, "text": text}

    result = {"output_type": "execute_result", "data": {}, "metadata": {}, "execution_count": 1}
    whole = stored(printed("one\ntwo\n"))

    assert whole == stored(printed("one\nt"), printed(["w", "o\n"]))
    assert whole == stored(printed("one\n"), printed(""), printed("two\n"))
    assert ["one\n", "two\n"] == whole[0]["text"]
    assert 3 == len(stored(printed("one\n"), printed("x", "stderr"), printed("two\n")))
    assert 3 == len(stored(printed("one\n"), result, printed("two\n")))


@pytest.mark.parametrize("file", LESSONS, **by_lesson)
def test_a_lesson_keeps_to_the_house_style(file):
    """20-44 cells, 1,000-1,800 words, under 60 lines of code, two panels and six drills."""
    all_cells = cells(file)
    prose = "\n".join(source(cell) for cell in all_cells if cell["cell_type"] == "markdown")
    code = [source(cell) for cell in all_cells if cell["cell_type"] == "code"]
    lines = [line for text in code for line in text.splitlines() if line.strip()]

    assert 20 <= len(all_cells) <= 44
    assert 1000 <= len(re.sub(r"<[^>]+>", "", prose).split()) <= 1800
    assert len(lines) < 60
    assert sum("drill_panel(" in text for text in code) >= 6
    assert sum("panel(" in t and "drill_panel(" not in t and "import" not in t for t in code) >= 2
    for heading in ("You will make", "You will learn to", "You need", "Where this breaks"):
        assert heading in prose
    for later in ("You can now", "fine print", "Sources"):
        assert later in source(all_cells[-1])


@pytest.mark.parametrize("file", [*LESSONS, KIT / "README.md", KIT / "DEVELOPERS.md"])
def test_links_and_file_names_in_the_text_exist(file):
    """Relative links and names in backquotes that look like files of the kit."""
    if file.suffix == ".md":
        text = file.read_text(encoding="utf-8")
    else:
        text = "\n".join(source(cell) for cell in cells(file) if cell["cell_type"] == "markdown")
    links = [link for link in re.findall(r"\]\(([^)#]+)\)", text) if "://" not in link]
    named = re.findall(r"`((?:kitchenmath|lessons|assignments|instructor|tests)/[\w./-]+)`", text)
    missing = [link for link in links if not (file.parent / link).exists()]
    missing += [n for n in named if not (KIT / n).exists() and not n.startswith(MADE_ON_USE)]

    assert missing == []
