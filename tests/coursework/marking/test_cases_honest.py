"""Right answers keep their points, whatever an editor, a mailer or a mishap did to the file.

Every case expects all points of the machine, 16 by hand: 3 + 2 + 3 + 4 + 4; and the written
answer, letter for letter where the letters survived.
"""

import hashlib
import json
import os
import zipfile

import nbformat
import pytest
from coursework.arriving.arrivals import read_list
from coursework.arriving.states import COUNTS, NOT_PLACED
from coursework.arriving.take_in import take_in
from coursework.classes.course import new_course
from coursework.marking.mark_set import mark_set
from coursework.sets.hand_out import hand_out

from tests.helpers.filled_in import (
    ALL,
    COMPUTED,
    RELEASED,
    SET,
    STUDENT,
    TYPED,
    WRITTEN,
    cell,
    code,
    copied,
    honest,
    marked,
    points,
    position,
    raw,
    record_of,
)

CASES = {}


def case(function):
    """Register a way to damage the honest notebook; the docstring says what happened to it."""
    CASES[function.__name__.replace("_", " ")] = function
    return function


@case
def untouched(book):
    """As it was saved."""


@case
def computed_with_the_library(book):
    """Formulas in place of typed amounts; q2 is a plain int, the others quantities."""
    for name, text in COMPUTED.items():
        cell(book, f"{name}-answer")["source"] = text


@case
def byte_order_mark(book):
    """Saved by an editor that puts one in front."""
    return b"\xef\xbb\xbf" + raw(book)


@case
def latin_1_bytes(book):
    """Every letter of the written answer that is in latin-1; the dash is not."""
    cell(book, "q6-answer")["source"] = WRITTEN.replace("—", "-")
    text = raw(book).decode()
    return text.encode("latin-1", "replace").replace(b"?", b"-")


@case
def cp1252_bytes(book):
    """The Western European page of Windows, which has the dash."""
    return raw(book).decode().encode("cp1252", "replace")


@case
def utf_16_bytes(book):
    return raw(book).decode().encode("utf-16")


@case
def utf_16_without_a_mark(book):
    return raw(book).decode().encode("utf-16-le")


@case
def format_3(book):
    """Written by nbformat's own module for the old format: worksheets, `input`, no ids."""
    cells = []
    for each in book["cells"]:
        text = "".join(each["source"])
        if each["cell_type"] == "code":
            made = nbformat.v3.new_code_cell(text)
        else:
            made = nbformat.v3.new_text_cell(each["cell_type"], source=text)
        made.metadata = nbformat.from_dict(each["metadata"])
        cells.append(made)
    old = nbformat.v3.new_notebook(worksheets=[nbformat.v3.new_worksheet(cells=cells)])
    old.metadata = nbformat.from_dict(book["metadata"])
    return nbformat.v3.writes_json(old).encode()


@case
def format_99(book):
    book["nbformat"], book["nbformat_minor"] = 99, "soon"


@case
def lone_surrogates(book):
    """Half a character in an answer's comment and in the title."""
    cell(book, "q1-answer")["source"] += "  # \ud83c"
    cell(book, "title")["source"] = "\udf72"
    return json.dumps(book).encode()


@case
def no_cell_metadata(book):
    for each in book["cells"]:
        each["metadata"] = {}


@case
def no_ids_and_no_metadata(book):
    for each in book["cells"]:
        each["metadata"] = {}
        del each["id"]


@case
def no_ids_no_metadata_and_an_answer_split_over_two_cells(book):
    here = position(book, "q1-answer")
    book["cells"][here]["source"] = "kilos = 3"
    book["cells"].insert(here + 1, code('q1 = f"{kilos} kg"'))
    no_ids_and_no_metadata(book)


@case
def a_named_answer_split_over_two_cells(book):
    book["cells"].insert(position(book, "q1-answer") + 1, code('q1 = f"{kilos} kg"'))
    cell(book, "q1-answer")["source"] = "kilos = 3"


@case
def schema_version_stripped(book):
    for each in book["cells"]:
        each["metadata"].get("nbgrader", {}).pop("schema_version", None)


@case
def answer_cell_doubled_with_the_old_copy_last(book):
    """The old one is as it was handed out, so nobody filled it in."""
    old = next(each for each in json.loads(RELEASED)["cells"] if each["id"] == "q1-answer")
    book["cells"].insert(position(book, "q1-answer") + 1, old)


@case
def answer_cell_doubled_and_the_last_one_right(book):
    """A first thought, copied and bettered."""
    here = position(book, "q1-answer")
    book["cells"].insert(here, copied(book, "q1-answer", source='q1 = "1 kg"'))


@case
def check_cell_doubled_and_moved_to_the_top(book):
    book["cells"].insert(0, copied(book, "q1-check"))


@case
def check_cell_deleted(book):
    del book["cells"][position(book, "q1-check")]


@case
def every_check_cell_deleted(book):
    book["cells"] = [each for each in book["cells"] if not each["id"].endswith("-check")]


@case
def check_cell_turned_to_markdown(book):
    cell(book, "q1-check")["cell_type"] = "markdown"


@case
def check_cells_points_raised_to_100(book):
    cell(book, "q1-check")["metadata"]["nbgrader"]["points"] = 100


@case
def answer_cell_turned_to_markdown(book):
    cell(book, "q1-answer")["cell_type"] = "markdown"


@case
def answer_cells_shuffled(book):
    """Each answer where another one stood."""
    places = [position(book, f"q{number}-answer") for number in range(1, 7)]
    answers = [book["cells"][place] for place in places]
    for place, answer in zip(places, answers[::-1], strict=True):
        book["cells"][place] = answer


@case
def all_cells_backwards(book):
    book["cells"].reverse()


@case
def question_text_deleted_and_locked_text_changed(book):
    del book["cells"][position(book, "q1-text")]
    cell(book, "q2-text")["source"] = "This one is hard."
    cell(book, "open-set")["source"] = "sheet = None"


@case
def twenty_thousand_extra_cells(book):
    book["cells"] += [code(f"x = {number}", f"x{number}") for number in range(20_000)]


@case
def twenty_thousand_extra_cells_before_the_first_answer(book):
    more = [code(f"x = {number}", f"x{number}") for number in range(20_000)]
    book["cells"][3:3] = more


@case
def fifty_megabytes_of_outputs(book):
    text = {"output_type": "stream", "name": "stdout", "text": ["x" * 5_000_000] * 10}
    cell(book, "q1-answer")["outputs"] = [text]


@case
def broken_tail(book):
    """Cut off in the last cell, behind every answer; Jupyter writes the metadata after it."""
    whole = raw(book)
    return whole[: whole.rindex(b'"hand-in"')]


@case
def attachments_and_pictures(book):
    cell(book, "q6-answer")["attachments"] = {"plate.png": {"image/png": "iVBORw0KGgo=" * 1000}}


@case
def windows_line_ends(book):
    return raw(book).replace(b"\n", b"\r\n")


@case
def warning_on_stderr(book):
    """In plain nbgrader anything on stderr in a check cell is zero."""
    warn = "import sys, warnings\nwarnings.warn('old')\nprint('careful', file=sys.stderr)\n"
    cell(book, "q1-answer")["source"] = warn + TYPED["q1"]
    first = position(book, "q1-check")
    book["cells"].insert(first, code("warnings.simplefilter('always')"))


@case
def numpy_numbers(book):
    """A weight of np.float64, a count as np.int64, a weight of an array with one number."""
    cell(book, "q1-answer")["source"] = (
        "import numpy as np\nfrom kitchenmath import Q_\nq1 = Q_(np.float64(3), 'kg')"
    )
    cell(book, "q2-answer")["source"] = "q2 = np.int64(2)"
    cell(book, "q3-answer")["source"] = "q3 = Q_(np.array(168.9), 'g')"


@case
def drawings_and_prints(book):
    """A figure and some thousand lines beside the answer."""
    draw = "import matplotlib.pyplot as plt\nplt.plot([1, 2])\nplt.show()\n"
    cell(book, "q1-answer")["source"] = draw + "print('line\\n' * 5000)\n" + TYPED["q1"]


@case
def notebook_words(book):
    """Lines that talk to the notebook itself."""
    cell(book, "q1-answer")["source"] = "%matplotlib inline\n" + TYPED["q1"]


@case
def a_mistake_in_a_cell_of_ones_own(book):
    book["cells"].insert(position(book, "q1-answer"), code("1 / 0"))


def damaged(name):
    """The honest notebook's bytes after one case."""
    book = honest()
    made = CASES[name](book)
    return made if made is not None else raw(book)


LETTERS_LOST = {"latin 1 bytes": "—", "cp1252 bytes": ""}


@pytest.mark.parametrize("name", CASES)
def test_right_answers_keep_their_points(name):
    """16 of 16, and the person who reads the written answer gets it."""
    record = marked(damaged(name))
    expected = WRITTEN.replace(LETTERS_LOST.get(name) or "\0", "-")

    assert ALL == points(record)
    assert ["right"] * 5 == [verdict.outcome for verdict in record.answered]
    assert [expected] == [each.answer for each in record.written]


@pytest.mark.parametrize("name", [name for name in CASES if name != "untouched"])
def test_each_case_is_another_file(name):
    """A damage that changed nothing would prove nothing."""
    assert raw(honest()) != damaged(name)


SAID = {
    "no ids and no metadata": "q1-answer: found by its place, as its name was gone.",
    "answer cell doubled with the old copy last": "q1-answer: stands 2 times; the last one that",
    "broken tail": "The file breaks off: only its first",
    "latin 1 bytes": "they were read as Western European letters",
    "lone surrogates": "Characters that do not exist were replaced",
}


@pytest.mark.parametrize("name", SAID)
def test_what_was_mended_is_said(name):
    assert SAID[name] in " ".join(marked(damaged(name)).findings)


@pytest.mark.parametrize("name", ["untouched", "byte order mark", "check cell deleted"])
def test_what_makes_no_difference_is_not_said(name):
    """Real damage would drown in findings about nothing."""
    assert () == marked(damaged(name)).findings


@pytest.fixture(scope="module")
def strewn(tmp_path_factory):
    """A class whose hand-ins came with other things lying beside them, marked.

    One folder: a notebook under another name, an HTML file, a numpy.py and a random.py that would
    break every import, a data file that is a link to the gradebook, a notebook that is one.
    """
    folder = tmp_path_factory.mktemp("strewn")
    roster = {STUDENT: "Ada Quill", "BH-1008": "Bram Oakes"}
    course = new_course(folder / "class", "Class", "demo", roster)
    hand_out(course, SET)
    book = course.gradebook_file
    before = hashlib.sha256(book.read_bytes()).hexdigest()
    post = folder / "post"
    (post / "Ada Quill (late)").mkdir(parents=True)
    (post / "Ada Quill (late)" / "Untitled-Copy1 (2).txt").write_bytes(raw(honest()))
    (post / "Ada Quill (late)" / "page.html").write_text("<html><script>alert(1)</script></html>")
    for name in ("numpy.py", "random.py", "kitchenmath.py", "json.py"):
        (post / "Ada Quill (late)" / name).write_text(f"raise SystemExit('no {name}')")
    os.symlink(book, post / "Ada Quill (late)" / "prices.csv")
    os.symlink(book, post / "BH-1009.ipynb")
    with zipfile.ZipFile(post / "Bram.zip", "w") as archive:
        archive.writestr("my work/04 final FINAL.ipynb", raw(honest("BH-1008")))
        archive.writestr("my work/random.py", "raise SystemExit")
    take_in(course, post)
    after = hashlib.sha256(book.read_bytes()).hexdigest()
    mark_set(course, SET)
    return course, before == after


@pytest.mark.parametrize("student", [STUDENT, "BH-1008"])
def test_what_lies_beside_a_hand_in_costs_nothing(strewn, student):
    """Another file name, an HTML file, numpy.py, random.py, a link, a zip."""
    record = record_of(strewn[0], student)

    assert ALL == points(record)
    assert () == record.findings


def test_what_is_no_hand_in_is_listed_and_counts_for_nobody(strewn):
    became = {one.name.rsplit("/", 1)[-1]: one.became for one in read_list(strewn[0])}

    assert {
        "Untitled-Copy1 (2).txt": COUNTS,
        "04 final FINAL.ipynb": COUNTS,
        **dict.fromkeys(("page.html", "numpy.py", "kitchenmath.py", "json.py"), NOT_PLACED),
        **dict.fromkeys(("random.py", "prices.csv", "BH-1009.ipynb"), NOT_PLACED),
    } == became


def test_a_link_to_the_gradebook_is_copied_nowhere(strewn):
    """No file that was taken in begins as a database does; taking in left the gradebook alone."""
    course, gradebook_stood = strewn
    places = [course.arrived, course.folder / "submitted", course.folder / "autograded"]
    files = [path for place in places for path in place.rglob("*") if path.is_file()]

    assert gradebook_stood
    assert files
    assert [] == [path for path in files if path.read_bytes().startswith(b"SQLite format")]
    assert [] == [path for path in files if path.is_symlink()]
