"""Every lesson and set as a browser draws it, read back: no formula by accident, no cut word.

At a desk's width and at a phone's: nothing wider than the page, and nothing laid over the text.
What the words alone tell is in `test_written.py`, what a picture does at its sliders' ends in
`test_panels.py`.
"""

import nbformat
import pytest

from tests.helpers.browser import DESK, KIT, NEEDS_CHROMIUM, PHONE, open_lab, open_predictions

pytestmark = NEEDS_CHROMIUM

NOTEBOOKS = [
    str(file.relative_to(KIT))
    for file in (*sorted(KIT.glob("lessons/*.ipynb")), *sorted(KIT.glob("assignments/*/*.ipynb")))
]
# All cells are in the page, also those far below the window.
ALL_THERE = """() => {
    const notebook = jupyterapp.shell.currentWidget.content;
    notebook.notebookConfig = {...notebook.notebookConfig, windowingMode: 'none'};
}"""
# Cells far below are put off until somebody comes near them, so the first that is missing is
# brought into sight, as a reader would. It is asked for once: drawing it anew at each look would
# keep a slow machine from ever getting to its end.
RENDERED = """() => {
    const notebook = jupyterapp.shell.currentWidget.content;
    const asked = (window.kitchenAsked ??= new WeakMap());
    const missing = notebook.widgets.filter(cell => cell.model.type === 'markdown'
        && !cell.node.querySelector('.jp-RenderedMarkdown')?.textContent.trim());
    for (const cell of missing.slice(0, 1)) {
        const since = asked.get(cell) ?? Date.now();
        if (!asked.has(cell)) notebook.scrollToCell?.(cell);
        if (Date.now() - since > 20000) {  // forgotten by the notebook: once more, from the start
            cell.rendered = false;
            cell.rendered = true;
            asked.delete(cell);
        } else asked.set(cell, since);
    }
    return missing.length === 0;
}"""
OPEN_ALL = "() => document.querySelectorAll('details').forEach(each => { each.open = true; })"
SHOWN = "'.jp-RenderedMarkdown, .jp-OutputArea-output pre, .kitchen [role=status]'"
FORMULAS = """() => [...document.querySelectorAll('.jp-RenderedMarkdown')]
    .flatMap(part => [...part.querySelectorAll('mjx-container, .MathJax, .katex')])
    .map(part => part.closest('[data-cell]')?.dataset.cell)"""
# A word that begins on one line and ends on another. It may break at a hyphen, a dash or a bracket.
CUT_WORDS = (
    """() => {
    const cut = [];
    for (const part of document.querySelectorAll("""
    + SHOWN
    + """)) {
        const texts = document.createTreeWalker(part, NodeFilter.SHOW_TEXT);
        for (let node; (node = texts.nextNode());)
            for (const word of node.data.matchAll(/[^\\s\\u00a0\\-–—()]+/g)) {
                const range = document.createRange();
                range.setStart(node, word.index);
                range.setEnd(node, word.index + word[0].length);
                const tops = new Set([...range.getClientRects()]
                    .filter(box => box.width > 0).map(box => Math.round(box.top)));
                if (tops.size > 1) cut.push(word[0]);
            }
    }
    return cut;
}"""
)
TOO_WIDE = (
    """() => {
    const page = document.querySelector('.jp-Notebook').getBoundingClientRect();
    return [...document.querySelectorAll("""
    + SHOWN
    + """)].filter(part => part.getBoundingClientRect().right > page.right + 1)
        .map(part => part.closest('[data-cell]')?.dataset.cell);
}"""
)
# What Jupyter lays over a page: questions, messages at the rim, menus that stayed open.
POP_UPS = """() => [...document.querySelectorAll(
        '.jp-Dialog, .Toastify__toast, [role=dialog], [role=alertdialog], .lm-Menu')]
    .filter(part => part.getClientRects().length)
    .map(part => part.textContent.trim().slice(0, 80))"""
MESSAGE = """() => jupyterapp.commands.execute('apputils:notify',
    {message: 'A newer one is out', options: {autoClose: false}})"""
SHOWS_MESSAGE = "() => document.querySelector('.Toastify__toast')?.getClientRects().length"
# Lesson 4 as it once was, with what else a page has done to a lesson.
SENTENCE = "<div class=kitchen><p role=status style={style}>{words}</p></div>"
GARBLED = {
    "price-text": "A plate costs $4.50 and the food may take 30 %: 4.50 ÷ 0.30 = $15.00.",
    "pieces": SENTENCE.format(style="width:3em;word-break:break-all", words="10 pieces"),
    "wide": SENTENCE.format(style="width:2000px", words="2.118 kg to buy"),
}


@pytest.fixture(scope="module")
def lab(tmp_path_factory):
    with open_lab(tmp_path_factory.mktemp("lab")) as lab:
        yield lab


@pytest.fixture(scope="module", params=NOTEBOOKS)
def drawn(request, lab):
    """A notebook, open, every cell rendered, everything hidden opened."""
    with lab.notebook(request.param) as notebook:
        if request.param.startswith("lessons"):
            notebook.run_all()
        lab.page.evaluate(ALL_THERE)
        lab.page.wait_for_function(RENDERED, polling=500)
        open_predictions(lab.page)
        lab.page.evaluate(OPEN_ALL)
        yield notebook


def test_nothing_becomes_a_formula(drawn):
    """The kit has no formula in its words, so any that is drawn is money gone wrong."""
    assert drawn.page.evaluate(FORMULAS) == []


@pytest.mark.parametrize("size", [DESK, PHONE], ids=["desk", "phone"])
def test_no_word_is_cut_and_nothing_is_wider_than_the_page(drawn, size):
    drawn.at(size)

    assert drawn.page.evaluate(CUT_WORDS) == []
    assert drawn.page.evaluate(TOO_WIDE) == []


def test_no_pop_up_lies_over_the_text(drawn):
    """A notebook of the kit opens without a question, and runs without a message at the rim."""
    assert drawn.page.evaluate(POP_UPS) == []


def test_the_gate_finds_what_was_once_wrong(lab):
    """Money that became a formula, words cut inside, a sentence beyond the rim, a message."""
    cells = [
        nbformat.v4.new_markdown_cell(text, id=name)
        if name.endswith("text")
        else nbformat.v4.new_code_cell(f"from IPython.display import HTML; HTML({text!r})", id=name)
        for name, text in GARBLED.items()
    ]
    file = lab.kit / "lessons" / "garbled.ipynb"
    kernel = {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}}
    nbformat.write(nbformat.v4.new_notebook(cells=cells, metadata=kernel), file)

    with lab.notebook("lessons/garbled.ipynb") as garbled:
        assert garbled.run_all() == []
        lab.page.wait_for_function(RENDERED, polling=500)
        lab.page.wait_for_selector("mjx-container")
        garbled.at(PHONE)

        assert ["price-text"] == lab.page.evaluate(FORMULAS)
        assert ["pieces"] == lab.page.evaluate(CUT_WORDS)
        # A cell beside it may be as wide as the page that the wide one makes.
        assert "wide" in lab.page.evaluate(TOO_WIDE)
        assert [] == lab.page.evaluate(POP_UPS)
        lab.page.evaluate(MESSAGE)
        lab.page.wait_for_function(SHOWS_MESSAGE)
        assert ["A newer one is out"] == lab.page.evaluate(POP_UPS)
