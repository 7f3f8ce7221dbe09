"""Notebooks written as pages: text at once, a field for each answer, a place for each panel.

The pages are the same wherever they are shown from; only what stands behind them differs.
"""

import json
import re
from functools import lru_cache
from pathlib import Path

import jinja2
import mistune

from kitchenmath.data.tables import table
from kitchenmath.pages.folds import fold_of, in_folds
from kitchenmath.pages.form import Form
from kitchenmath.pages.times import times_of
from kitchenmath.practice.set_file import asked_in, read_set
from kitchenmath.practice.typed_cells import PHOTO

__all__ = [
    *("STATIC", "WORDS", "lesson_card", "lesson_page", "set_card", "set_page", "start_page"),
    "words_page",
]

HERE = Path(__file__).parent
STATIC = HERE / "static"
WORDS = "words.html"  # where the list of words stands, beside every other page
READINGS = 10  # small fields to begin with; the page adds one when the last is filled
# What a notebook tells its reader about cells and quotes is not so on a page.
ONLY_IN_CELLS = re.compile(r"^.*(?:Shift \+ Enter|Or compute it|cell below).*\n?", re.MULTILINE)
QUOTES = re.compile(r",? between the (?:two lines of )?quotes")
SET_FOLDER = re.compile(r"set (\d+) in the folder `assignments/([\w-]+)`")  # a page has no folder
QUOTED = re.compile(r'`"([^"`]+)"`')


@lru_cache(maxsize=1)
def _templates():
    folder = jinja2.FileSystemLoader(HERE / "templates")
    made = jinja2.Environment(loader=folder, autoescape=True, trim_blocks=True, lstrip_blocks=True)
    made.policies["json.dumps_kwargs"] = {"sort_keys": False}  # cells run in their own order
    return made


def set_page(raw, home=None, **site):
    """A set as a page with a field for each answer.

    Parameters
    ----------
    raw : bytes
        The notebook as it is handed out.
    home : dict, optional
        On a computer that has the kit: "notebook" (its place), "notes" and "typed".
    **site
        What the page needs to know of its edition: `version`.

    Returns
    -------
    str
        HTML.
    """
    named, set_id = read_set(raw)
    form = Form(raw)
    questions = [
        {
            "id": each.question,
            "text": _form_text(named[f"{each.question}-text"][1], form.fields[each.question]),
            "field": form.fields[each.question],
            "example": _example(named[f"{each.question}-text"][1]),
            "given": f"{each.question}-given" in named,
            "tasks": each.plausible if each.kind == "plan" else (),
            "mine": each.kind in ("readings", "probe log"),
            "photo": f"{each.question}{PHOTO}" in named,
        }
        for each in asked_in(named)
    ]
    card = set_card(raw)
    return (
        _templates()
        .get_template("set.html")
        .render(
            card,
            set_id=set_id,
            intro=_form_text(_below_title(named["title"][1]), "line"),
            asks_code=form.asks_code,
            questions=questions,
            readings=range(1, READINGS + 1),
            page={
                "kind": "set",
                "set_id": set_id,
                "fields": form.fields,
                "of": len(questions),
                "home": home,
            },
            home=home,
            **site,
        )
    )


def lesson_page(raw, name, pictures=None, files=None, home=None, **site):
    """A lesson as a page: text and stored results, and a place for each panel.

    Parameters
    ----------
    raw : bytes
        The lesson's notebook.
    name : str
        Such as "04-buy-enough".
    pictures : dict of str to str, optional
        By cell, the address of the picture that stands there until the panel is live.
    files : dict of str to str, optional
        What the cells read, by its path: the address from which it is fetched.
    home : dict, optional
        As for `set_page`, without "typed".
    **site
        As for `set_page`.

    Returns
    -------
    str
        HTML.
    """
    cells = [_lesson_cell(cell, pictures or {}) for cell in json.loads(raw)["cells"]]
    cells = [cell for cell in cells if cell]
    sources = {cell["id"]: cell["source"] for cell in cells if cell["source"]}
    return (
        _templates()
        .get_template("lesson.html")
        .render(
            lesson_card(raw, name),
            parts=in_folds(cells),
            page={
                "kind": "lesson",
                "name": name,
                "sources": sources,
                "files": files or {},
                "home": home,
            },
            home=home,
            **site,
        )
    )


def start_page(lessons, sets, home=None, **site):
    """The page that everything starts from: each lesson with its set, a review in its place.

    Parameters
    ----------
    lessons, sets : list of dict
        As from `lesson_card` and `set_card`.
    home : dict, optional
        On a computer that has the kit: "notes", and "sets" with how far each is.
    **site
        As for `set_page`.

    Returns
    -------
    str
        HTML.
    """
    of = {each["name"]: each["of"] for each in sets}
    page = {"kind": "start", "sets": of, "home": home}
    lessons, sets = ({each["name"]: each for each in cards} for cards in (lessons, sets))
    steps = [(lessons.get(name), sets.get(name)) for name in sorted({*lessons, *sets})]
    return _templates().get_template("start.html").render(steps=steps, page=page, home=home, **site)


def words_page(**site):
    """The list of words: each trade word and number word of the lessons, with one plain line.

    Parameters
    ----------
    **site
        As for `set_page`.

    Returns
    -------
    str
        HTML.
    """
    words = [
        {
            "id": re.sub(r"\W+", "-", row["word"].casefold()).strip("-"),
            "word": row["word"],
            "also": [each for each in row["also"].split(";") if each],
            "line": row["line"],
        }
        for row in table("words.csv")
    ]
    page = {"kind": "words"}
    return _templates().get_template("words.html").render(words=words, page=page, **site)


def lesson_card(raw, name):
    """What the start page says of a lesson.

    Parameters
    ----------
    raw : bytes
    name : str

    Returns
    -------
    dict
    """
    text = "".join(json.loads(raw)["cells"][0]["source"])
    makes = re.search(r"\*\*You will make\*\*: ([^\n]*)", text)
    return {
        "name": name,
        "number": _number(name),
        "title": _title(text),
        "line": makes[1] if makes else "",
        "takes": times_of(raw).words,
    }


def set_card(raw):
    """What the start page says of a set.

    Parameters
    ----------
    raw : bytes

    Returns
    -------
    dict
    """
    named, set_id = read_set(raw)
    text = named["title"][1]
    size = re.search(r"\*\*(.*?points)\.\*\*", text)
    return {
        "name": set_id,
        "called": _title(text).partition(": ")[0],
        "title": _title(text).partition(": ")[2] or _title(text),
        "line": _below_title(text).strip().splitlines()[0],
        "takes": size[1] if size else "",
        "of": len(asked_in(named)),
    }


def _number(name):
    """The number that a lesson's or a set's name begins with."""
    return int(name.partition("-")[0])


def _title(text):
    return text.splitlines()[0].lstrip("# ").strip()


def _below_title(text):
    return text.partition("\n")[2]


def _form_text(text, field):
    """A set's text as HTML, without what only a notebook's reader needs."""
    text = QUOTED.sub(r"`\1`", QUOTES.sub("", ONLY_IN_CELLS.sub("", text)))
    text = text.replace("Leave the lines as they are.", "Leave the fields empty.")
    if field == "plan":  # the board shows the table with the student's own minutes
        text = re.sub(r"(?m)^\|.*\n?", "", text)
    return _html(text)


def _example(text):
    found = QUOTED.search(text) or re.search(r"such as `([^`]+)`", text)
    return found[1] if found else ""


def _lesson_cell(cell, pictures):
    """One cell for the template; None for what only a notebook's reader needs."""
    text = "".join(cell["source"])
    if cell["id"] == "run-me":
        return None
    if cell["cell_type"] == "markdown":
        text = SET_FOLDER.sub(r"[set \1](set-\2.html)", text.replace("\\$", "$"))
        return {"id": cell["id"], "html": _html(text), "source": "", "fold": fold_of(cell)}
    outputs = "".join(
        "".join(output.get("text", "") or output.get("data", {}).get("text/plain", ""))
        for output in cell["outputs"]
    )
    panel = "nbval-ignore-output" in cell["metadata"].get("tags", ())
    picture = pictures.get(cell["id"], "")
    return {
        "id": cell["id"], "html": "", "source": text, "text": outputs.strip("\n"),
        "panel": panel, "picture": picture, "fold": fold_of(cell),
    }  # fmt: skip


def _html(text):
    """Markdown as HTML; the kit's own texts hold folded parts as HTML, so that stays."""
    html = mistune.create_markdown(escape=False, plugins=["table", "strikethrough"])(text)
    return html.replace("<table>", '<div class="wide" tabindex="0"><table>').replace(
        "</table>", "</table></div>"
    )
