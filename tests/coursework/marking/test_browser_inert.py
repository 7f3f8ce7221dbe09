"""Scripts in everything that a student can write, and every page that shows it, in Chromium.

Each text reports to a listener when it is carried out. A page of our own that carries one out on
purpose is opened first, so that silence means something.
"""

import json
import re

import pytest
from coursework.arriving.take_in import take_in
from coursework.classes.course import new_course
from coursework.marking.mark_set import mark_set
from coursework.reports.hand_back import hand_back
from coursework.reports.in_lines import marks_in_lines
from coursework.reports.report import report
from coursework.reports.skills_page import skills_report
from coursework.reports.term_marks import term_marks
from coursework.sets.hand_out import hand_out
from coursework.sets.key_text import set_titles

from tests.helpers.browser import DESK, NEEDS_CHROMIUM, open_lab, serve
from tests.helpers.filled_in import SET, code, filled, raw
from tests.helpers.scripts import aimed_at, listener

pytestmark = NEEDS_CHROMIUM


@pytest.fixture(scope="module")
def lab(tmp_path_factory):
    with open_lab(tmp_path_factory.mktemp("lab")) as lab:
        yield lab


@pytest.fixture(scope="module")
def listening():
    with listener() as (address, heard):
        yield address, heard


@pytest.fixture
def ears(listening):
    """The listener's address and what it hears from here on: an earlier page may have been slow."""
    listening[1].clear()
    return listening


@pytest.fixture(scope="module")
def scripted(lab, listening, tmp_path_factory):
    """A class in which each student wrote one of the texts wherever one can write, and one all."""
    texts = aimed_at(listening[0])
    texts["everything"] = "\n\n".join(texts.values())
    roster = {f"BH-{2001 + n}": f"Student {name}" for n, name in enumerate(texts)}  # invented
    course = new_course(lab.kit / "instructor" / "classes" / "scripts", "scripts", "demo", roster)
    hand_out(course, SET)
    post = tmp_path_factory.mktemp("post")
    for student, text in zip(roster, texts.values(), strict=True):
        (post / f"{student}.ipynb").write_bytes(raw(written_everywhere(student, text)))
    name = re.sub(r"[/\0]", "", texts["image error"])
    (post / f"{name[:120]}.ipynb").write_bytes(b"no notebook")
    take_in(course, post)
    mark_set(course, SET)
    hand_back(course, SET)
    report(course, SET)
    skills_report(course)
    term_marks(course)
    return course


def written_everywhere(student, text):
    """As a typed answer, as what a cell prints, shows and ends with, as text, in metadata."""
    book = filled(
        student, q1=f"q1 = {text!r}", q2=f"print({text!r})\nq2 = '2'",
        q3=f"raise ValueError({text!r})",
        q4=f"q4 = type({text!r}, (), {{}})()", q5=f"q5 = [{text!r}, {text!r}]", q6=text,
    )  # fmt: skip
    html = {"data": {"text/html": text}, "metadata": {}, "output_type": "display_data"}
    shown = code(f"from IPython.display import HTML, display\ndisplay(HTML({text!r}))")
    book["cells"] += [shown | {"outputs": [html]}, code(f"# {text}", name="own-2")]
    book["metadata"] |= {"title": text, "authors": [{"name": text}]}
    for cell in book["cells"]:
        if cell["cell_type"] == "markdown":
            svg = {"image/svg+xml": text}
            cell["attachments"] = {"a.svg": svg, "x": svg}
    return book


CLICK_ODD_LINKS = """() => [...document.querySelectorAll('a[href]')]
    .filter(link => !/^(https?|file|about|blob)/i.test(link.protocol))
    .map(link => link.click())"""


def heard_by(ears, page, show):
    """What the listener heard while a page was shown and its odd links were clicked.

    A browser itself follows no link to a page that is written in the link; a script in one runs.
    """
    show()
    page.wait_for_load_state("networkidle")
    page.evaluate(CLICK_ODD_LINKS)
    page.wait_for_timeout(100)
    _, heard = ears
    said = [*heard]
    heard.clear()
    return said


@pytest.fixture
def window(lab):
    """A window of the same browser, without the desk's session."""
    with lab.page.context.browser.new_context(viewport=DESK) as made:
        yield made.new_page()


def test_the_listener_hears_what_is_carried_out(ears, window, tmp_path):
    """Shown without any care, at least nine of the texts report: the test can fail."""
    heard = set()
    for name, text in aimed_at(ears[0]).items():
        page = tmp_path / f"{name}.html"
        page.write_text(f"<!doctype html><body>{text}", "utf-8")
        heard |= set(heard_by(ears, window, lambda page=page: window.goto(page.as_uri())))

    assert len({each for each in heard if each.startswith("/heard/")}) >= 9


def test_our_own_pages_carry_nothing_out(ears, window, scripted):
    """Each student's page, the class's, the skills', the term's."""
    pages = sorted(scripted.folder.glob("feedback/**/*.html"))
    pages += sorted(scripted.reports.glob("*.html"))
    assert len(pages) >= len(scripted.roster) + 3
    for page in pages:
        assert [] == heard_by(ears, window, lambda page=page: window.goto(page.as_uri())), page


def test_nbgraders_marking_page_carries_nothing_out(ears, window, lab, scripted, tmp_path):
    """Every submission is opened; no answer is lost: its words stand there to be read."""
    with serve(scripted.folder, tmp_path / "home", lab.kit) as (address, token):
        window.goto(f"{address}/formgrader?token={token}")
        window.goto(f"{address}/formgrader/gradebook/{SET}/{SET}")
        links = window.get_by_role("link", name=re.compile("^Submission #"))
        links.first.wait_for()
        addresses = links.evaluate_all("all => all.map(link => link.href)")
        assert len(addresses) == len(scripted.roster)
        for link in addresses:
            assert [] == heard_by(ears, window, lambda link=link: window.goto(link)), link
            assert window.locator("input.score#q6-answer").count() == 1
            assert "/heard/" in window.locator("pre code").last.inner_text()


@pytest.mark.parametrize(
    ("which", "fetched"),
    [("autograded", set()), ("submitted", {"/heard/image", "/heard/markdown-image"})],
)
def test_no_script_runs_in_jupyterlab(ears, lab, scripted, which, fetched):
    """Our marked copy fetches nothing; of the file as it came, JupyterLab shows pictures.

    Of the student who wrote every text, opened as from the list of files.
    """
    file = getattr(scripted, which)(SET, list(scripted.roster)[-1])
    with lab.notebook(str(file.relative_to(lab.kit))):
        assert set(heard_by(ears, lab.page, lambda: None)) <= fetched


def test_the_desk_carries_nothing_out(ears, lab, scripted):
    """It lists what could not be placed, shows answers that wait, and the class's page."""
    with lab.notebook("instructor/desk.ipynb") as desk:
        assert desk.run_all() == []
        title = set_titles()[SET]
        desk.panel("choose").get_by_label("Set").select_option(f"{int(SET[:2])}. {title}")
        lab.page.get_by_role("button", name="Show what waits", exact=True).last.click()
        said = f"set “{title}”: {len(scripted.roster)} answers wait."
        lab.page.get_by_text(said).wait_for(timeout=60_000)

        assert [] == heard_by(ears, lab.page, lambda: None)


def test_a_spreadsheet_and_a_terminal_get_plain_text(scripted):
    """No cell of a table begins as a formula does, and no line holds a control character."""
    for table in scripted.folder.rglob("*.csv"):
        for line in table.read_text("utf-8-sig").splitlines():
            assert not re.search(r'(^|,)"?[=@\t]', line), table
    said = marks_in_lines(scripted, SET)

    assert all(one.isprintable() or one == "\n" for one in said)
    assert json.dumps(said)
