"""The pages on a computer that has the kit: what is typed is in the file to hand in."""

import io
import json
import re
import shutil

import pytest

from kitchenmath.pages.at_home import Home
from kitchenmath.pages.behind import main
from kitchenmath.pages.form import Form
from kitchenmath.practice.set_file import read_set
from tests.helpers.browser import KIT

SET = "04-buy-enough"


@pytest.fixture
def home(tmp_path):
    for name in ("lessons", "assignments"):
        shutil.copytree(KIT / name, tmp_path / name)
    return Home(tmp_path)


def said_to(home, *asked):
    """What Python behind a page answers to each message."""
    lines = [
        json.dumps({"id": place, "asked": json.dumps(each)}) for place, each in enumerate(asked)
    ]
    posted = []
    main(home.kit, io.StringIO("\n".join(lines)), posted.append)
    return [json.loads(each["heard"]) for each in posted if "heard" in each]


def opened(home):
    return {"do": "open", "notebook": home.set_file(SET).read_text("utf-8"), "set_id": SET}


def known(home, page):
    """What a page knows from its computer."""
    text = home.page(page)[0].decode()
    data = text.split('id="page">')[1].split("</script>")[0]
    return json.loads(data)["home"]


def test_what_is_typed_on_a_page_stands_in_the_notebook_to_hand_in(home):
    """BH-1007 types 3 kg: the page, the start page and the file say the same."""
    typed = {"student": "BH-1007", "q1": "3 kg"}
    _, kept = said_to(home, opened(home), {"do": "keep", "typed": typed})
    file = f"assignments/{SET}/{SET}.ipynb"

    assert {"said": f"Saved. Hand in this file: {file}"} == kept
    assert 'q1 = "3 kg"' in read_set(home.set_file(SET).read_bytes())[0]["q1-answer"][1]
    assert typed.items() <= known(home, f"set-{SET}.html")["typed"].items()
    assert {"there": 1, "student": "BH-1007", "file": file} == known(home, "index.html")["sets"][
        SET
    ]


def test_a_student_number_is_typed_once(home):
    said_to(home, opened(home), {"do": "keep", "typed": {"student": "BH-1007"}})

    assert "BH-1007" == known(home, "set-05-season-and-brine.html")["typed"]["student"]


def test_answers_that_came_into_the_notebook_meanwhile_are_kept(home):
    """Two windows: the notebook got 5 kg after the page was opened, and the page saves 3 kg."""
    first = opened(home)
    meanwhile = Form(home.set_file(SET).read_bytes()).filled({"q1": "5 kg"})
    home.set_file(SET).write_bytes(meanwhile)
    _, kept, again = said_to(
        home,
        first,
        {"do": "keep", "typed": {"q1": "3 kg"}},
        {"do": "keep", "typed": {"q1": "4 kg"}},
    )
    earlier = home.set_file(SET).parent / "earlier" / f"{SET} 1.ipynb"

    assert f"kept as {earlier.name}" in kept["said"]
    assert meanwhile == earlier.read_bytes()
    assert "kept as" not in again["said"]
    assert "4 kg" == Form(home.set_file(SET).read_bytes()).typed()["q1"]


def test_what_was_read_and_what_to_repeat_is_remembered(home):
    """A drill answered wrong is to be repeated, until a first try is right."""
    drill = json.dumps(
        "from kitchenmath.drills.buying import DRILLS\n"
        "from kitchenmath.panels.drilling import drill_panel\n"
        "panel = drill_panel(next(iter(DRILLS.values())))\npanel"
    )
    right = "panel.typed.value = str(panel.round.drill.question.right(panel.round.numbers))"
    anything = {"do": "tell", "comm_id": "nobody", "data": {}}
    run = {"do": "run"}
    *_, before, _, wrong, _, after = said_to(
        home,
        run | {"source": json.loads(drill)},
        anything,
        run | {"source": 'panel.typed.value = "1 g"'},
        anything,
        run | {"source": f"panel.round.next()\n{right}"},
        anything,
    )

    assert ([], 1, []) == (before["again"], len(wrong["again"]), after["again"])

    said_to(home, {"do": "note", "name": f"read/{SET}", "value": "yes"},
            {"do": "note", "name": "../../other", "value": "no"})  # fmt: skip

    assert {f"read/{SET}": "yes"} == home.notes()


@pytest.mark.parametrize(
    "name", ["../pyproject.toml", "set-99-none.html", "lesson-../x.html", "notebooks/none.ipynb"]
)
def test_a_page_can_ask_for_nothing_else(home, name):
    assert (None, "") == home.page(name)


def test_every_lesson_and_set_has_a_page_that_opens_as_a_notebook(home):
    """Each page names its own notebook, and brings its own style and script."""
    for file in home.lessons.glob("*.ipynb"):
        for kind, place in (("lesson", "lessons"), ("set", f"assignments/{file.stem}")):
            text = home.page(f"{kind}-{file.stem}.html")[0].decode()

            assert f'href="../lab/tree/{place}/{file.name}"' in text
            assert "text/css" == home.page("kitchen.css")[1]
            assert "text/javascript" == home.page(f"{kind}.js")[1]


def test_a_review_stands_in_its_place_in_the_term(home):
    """After lesson 5 with its set and before lesson 6; it has no lesson of its own."""
    text = home.page("index.html")[0].decode()
    links = re.findall(r'<a class="(?:lesson|set)" href="[^"]+">([^<]+)</a>', text)
    place = links.index("Review 1")

    assert ["Lesson 5", "Set 5", "Review 1", "Lesson 6"] == links[place - 2 : place + 2]
