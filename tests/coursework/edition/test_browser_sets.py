"""Every set's page filled in by thumb, saved, taken in and marked: a class of its own country.

The class is in the UK and gives its students codes, so money is pounds and each page asks for the
code too. One load of a page a set. It needs what `test_browser_edition` needs.
"""

import json
from types import SimpleNamespace

import pytest
from coursework.arriving.take_in import take_in
from coursework.classes.codes import codes_of
from coursework.classes.course import new_course, open_course
from coursework.marking.mark_set import mark_set
from coursework.records.reading import usable_records
from coursework.sets.hand_out import hand_out
from coursework.sets.key_text import set_ids
from coursework.sets.keys import load_key

from kitchenmath.pages.form import Form
from tests.helpers.browser import PHONE, SCREENSHOTS, browse
from tests.helpers.edition import NEEDS_WHEELS, listen, outside, shown

pytestmark = NEEDS_WHEELS
STUDENT = "BH-1007"
WRITTEN = "My trim was 34 %: thick peel — next time ½ as thick, à la cuillère."


@pytest.fixture(scope="module")
def course(tmp_path_factory):
    """A class with every set handed out."""
    made = new_course(tmp_path_factory.mktemp("class") / "cooks", "Cooks", "demo", {STUDENT: "Ada"})
    file = made.folder / "course.toml"
    text = file.read_text(encoding="utf-8")
    file.write_text(f'country = "GB"\nstudent_codes = true\n{text}', encoding="utf-8")
    made = open_course(made.folder)
    for set_id in set_ids():
        hand_out(made, set_id)
    return made


@pytest.fixture(scope="module")
def phone(course, tmp_path_factory):
    """A phone with the class's edition, and what it can be asked about."""
    folder = tmp_path_factory.mktemp("edition")
    with shown(folder, course, pictures={}) as (address, _), browse() as page:
        page.set_viewport_size(PHONE)
        listen(page)
        yield SimpleNamespace(page=page, address=address)


def right_answers(course, set_id):
    """What the key itself would type, by question."""
    key = load_key(course.key(set_id).read_bytes(), course.term, tried=())
    return {
        question.id: next(
            one.answer
            for one in question.played(known)
            if one.way == "right" and isinstance(one.answer, str)
        )
        for question, known in key.sheet.known(STUDENT)
    }


def type_in(page, question, kind, answer):
    """Type one answer as the page asks for it: a line, small fields for readings, a time a task."""
    if kind == "readings":
        places = page.locator(f'[data-readings="{question}"] input')
        for place, reading in enumerate(answer.removesuffix(" mm").split(", ")):
            places.nth(place).fill(reading)
        places.first.blur()
    elif kind == "plan":
        for line in answer.splitlines():
            task, _, clock = line.rpartition(" ")
            page.locator(f'[data-task="{task}"] input').fill(clock)
    else:
        field = page.locator(f'[data-field="{question}"]')
        field.fill(WRITTEN if kind == "written" else answer)
        field.blur()


def take_photo(page, question):
    """Let a photo go along: the page's own picture of itself does, for nothing is measured here."""
    group = page.locator(f'[data-photo="{question}"]')
    group.get_by_label("My instructor may see a photo of my tray").check()
    taken = {"name": "tray.png", "mimeType": "image/png", "buffer": page.screenshot()}
    group.locator("input[type=file]").set_input_files(taken)
    group.get_by_text("cannot be measured in the browser edition").wait_for()
    group.locator("img").wait_for()


def saved_from(page, folder):
    """The file that the page puts into the downloads, where it was put."""
    with page.expect_download() as download:
        page.get_by_role("button", name="Save my hand-in").click()
    file = folder / download.value.suggested_filename
    download.value.save_as(file)
    return file


def cells_of(raw):
    """Name and text of each cell: what of a notebook is not a picture below it."""
    return {cell["id"]: "".join(cell["source"]) for cell in json.loads(raw)["cells"]}


@pytest.mark.parametrize("set_id", set_ids())
def test_a_set_filled_in_on_a_phone_is_saved_taken_in_and_earns_all_points(
    set_id, course, phone, tmp_path
):
    """The key's own answers, typed into fields; the file has what this Python would write."""
    page = phone.page
    form = Form(course.release(set_id).read_bytes())
    right = right_answers(course, set_id)
    page.goto(f"{phone.address}set-{set_id}.html")
    page.locator("html[data-ready=yes]").wait_for()
    page.locator("#student").fill(STUDENT)
    page.locator("#code").fill(codes_of(course)[STUDENT])
    for question, kind in form.fields.items():
        type_in(page, question, kind, right.get(question, ""))
    for question in form.photos:
        take_photo(page, question)
    many = len(form.fields)
    page.locator("[data-bar]").filter(has_text=f"{many} of {many} answers are there").wait_for()
    folder = SCREENSHOTS / "edition"
    folder.mkdir(parents=True, exist_ok=True)
    page.screenshot(path=folder / f"set-{set_id}.png", full_page=True)
    file = saved_from(page, tmp_path)
    kept = page.evaluate(f"() => JSON.parse(localStorage['kitchen/{set_id}']).typed")
    taken = Form(file.read_bytes())

    assert cells_of(form.filled(kept)) == cells_of(file.read_bytes())
    assert {*form.photos} == {name for name, one in taken.photos.items() if one["picture"]}
    assert ([], []) == (page.errors, outside(page, phone.address))

    take_in(course, file)
    mark_set(course, set_id)
    [record] = usable_records(course, set_id)[0]

    assert dict.fromkeys(right, "right") == {one.question: one.outcome for one in record.answered}
