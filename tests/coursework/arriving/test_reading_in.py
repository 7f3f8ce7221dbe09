"""Reading notebooks as data. Referees: `json` for the walk, `nbformat` for whole notebooks."""

import ast
import builtins
import json
import sys
import tracemalloc

import nbformat
import pytest
from coursework.arriving import json_walk
from coursework.arriving.json_walk import Broken, Budget, Walk
from coursework.arriving.reading_in import Cell, UnreadableNotebook, read_notebook
from coursework.arriving.whose import set_of, student_of
from coursework.sets.hand_out import ASSIGNMENTS
from hypothesis import example, given, settings
from hypothesis import strategies as st

SOURCES = ['student = "BH-1007"', 'q1 = "4.2 kg"', "é ½ °C", 'q2 = "63 °C"']


def notebook(sources=SOURCES, **more):
    """A small notebook of format 4 as a dict, one code cell for each source."""
    cells = [
        {"cell_type": "code", "execution_count": None, "id": f"c{place}", "metadata": {},
         "outputs": [], "source": source}
        for place, source in enumerate(sources)
    ]  # fmt: skip
    return {"cells": cells, "metadata": {}, "nbformat": 4, "nbformat_minor": 5} | more


def raw(book, **options):
    return json.dumps(book, **{"ensure_ascii": False} | options).encode()


def sources(data, limit=None):
    return [cell.source for cell in read_notebook(data, limit).cells]


anything = st.recursive(
    st.none() | st.booleans() | st.integers(-(10**30), 10**30) | st.text() | st.floats(-1e9, 1e9),
    lambda inner: st.lists(inner) | st.dictionaries(st.text(), inner),
    max_leaves=12,
)


@given(anything, st.sampled_from((None, 1)), st.booleans())
def test_any_json_is_walked_to_the_end_that_json_finds(value, indent, ascii_only):
    """Referee: the standard library's own reader, on what its own writer wrote."""
    text = json.dumps(value, indent=indent, ensure_ascii=ascii_only)
    walk, stepping = Walk(text + " , 1"), Walk(text + " , 1")
    stepping.skip()

    assert value == walk.value()
    assert len(text) == walk.at == stepping.at


@given(st.dictionaries(st.text(), anything), st.data())
def test_members_that_nobody_reads_are_stepped_over(value, data):
    """Names and values that are read equal those of `json`, whichever are left out."""
    wanted = data.draw(st.sets(st.sampled_from(sorted(value)))) if value else set()
    walk = Walk(json.dumps(value))
    found = {name: walk.value() for name in walk.members() if name in wanted}

    assert {name: value[name] for name in wanted} == found
    assert "" == walk.next_mark()


@given(st.lists(anything, min_size=1), st.data())
def test_a_text_cut_off_anywhere_inside_is_broken(value, data):
    """Every proper beginning of a list lacks at least its closing bracket."""
    text = json.dumps(value)
    walk = Walk(text[: data.draw(st.integers(0, len(text) - 1))])

    with pytest.raises(Broken):
        walk.skip()


cells = st.lists(
    st.tuples(
        st.sampled_from(("code", "markdown", "raw")),
        st.text(st.characters(exclude_categories=("Cs",))),
        st.none() | st.from_regex(r"[a-z0-9-]{1,20}", fullmatch=True),
    ),
    min_size=1,
    max_size=8,
)


@given(cells)
def test_a_notebook_reads_as_nbformat_reads_it(wanted):
    """Referee: nbformat writes it (sources become lists of lines) and reads it back."""
    book = nbformat.v4.new_notebook()
    for kind, source, grade_id in wanted:
        cell = getattr(nbformat.v4, f"new_{kind}_cell")(source)
        if grade_id:
            cell.metadata["nbgrader"] = {"grade_id": grade_id, "solution": True}
        book.cells.append(cell)
    text = nbformat.writes(book)
    theirs = nbformat.reads(text, as_version=4).cells
    expected = [
        Cell(one.cell_type, one.source, one.id, one.metadata.get("nbgrader", {}).get("grade_id"))
        for one in theirs
    ]

    assert expected == list(read_notebook(text.encode()).cells)


@pytest.mark.parametrize("file", sorted(ASSIGNMENTS.glob("*/*.ipynb")), ids=lambda file: file.stem)
def test_the_notebooks_that_students_get_read_as_nbformat_reads_them(file):
    """Referee: nbformat, on each released set."""
    theirs = nbformat.reads(file.read_text(encoding="utf-8"), as_version=4)
    cells, kitchen, findings, _ = read_notebook(file.read_bytes())

    assert [one.source for one in theirs.cells] == [cell.source for cell in cells]
    assert [one.id for one in theirs.cells] == [cell.id for cell in cells]
    assert dict(theirs.metadata.kitchen) == kitchen
    assert () == findings


@pytest.mark.parametrize(
    "code", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "cp1252"]
)
def test_encodings_are_read(code):
    """The same text through Python's own codecs, with and without a mark at the front."""
    data = json.dumps(notebook(), ensure_ascii=False).encode(code)

    assert SOURCES == sources(data)


def test_latin_1_reads_the_degree_sign():
    """By hand: in latin-1 and cp1252 the byte B0 is °, which is no UTF-8 on its own."""
    data = raw(notebook(['q1 = "63 °C"'])).replace("°".encode(), b"\xb0")

    found = read_notebook(data)

    assert 'q1 = "63 °C"' == found.cells[0].source
    assert "Western European" in found.findings[0]


def test_one_bad_byte_leaves_the_other_letters_alone():
    """A lone E9 is é in cp1252; the ½ in proper UTF-8 beside it stays ½, and 81 is in no page."""
    data = raw(notebook(["½ cr?me"])).replace(b"?", b"\xe9") + b"\n"

    assert ["½ créme"] == sources(data)
    assert ["½ \x81"] == sources(raw(notebook(["½ ?"])).replace(b"?", b"\x81"))


def test_half_characters_become_the_replacement_sign_and_are_reported():
    """A lone surrogate as \\ud800, and as the three bytes that some programs write."""
    escaped = read_notebook(json.dumps(notebook(["a\ud800b"])).encode())
    written = read_notebook(raw(notebook(["a?b"])).replace(b"?", b"\xed\xa0\x80"))

    assert "a\ufffdb" == escaped.cells[0].source == written.cells[0].source
    assert "Characters that do not exist were replaced by “�”." in escaped.findings


def test_two_halves_make_their_character():
    """\\ud83c\\udf72 is one pot of food, in JSON's own escapes."""
    assert ["\U0001f372"] == sources(json.dumps(notebook(["\U0001f372"])).encode())


def test_format_3_keeps_its_cells_in_worksheets():
    """Built by nbformat's own module for format 3."""
    old = nbformat.v3.new_notebook()
    old.worksheets = [
        nbformat.v3.new_worksheet(
            cells=[
                nbformat.v3.new_heading_cell("Buy enough", level=2),
                nbformat.v3.new_code_cell('q1 = "4.2 kg"'),
                nbformat.v3.new_text_cell("markdown", source="written"),
            ]
        )
    ]
    data = nbformat.v3.writes_json(old).encode()
    expected = [
        Cell("markdown", "## Buy enough"),
        Cell("code", 'q1 = "4.2 kg"'),
        Cell("markdown", "written"),
    ]

    assert expected == list(read_notebook(data).cells)


@pytest.mark.parametrize("version", [4, 5, 99, "four", None])
def test_unknown_formats_with_readable_cells_are_read(version):
    """The number is not looked at: cells are cells."""
    assert SOURCES == sources(raw(notebook(nbformat=version)))


def test_cells_may_lack_everything_but_their_text():
    """No id, no metadata, no type; a source as a list; both ids where they stand."""
    book = {
        "cells": [
            {"source": ["a\n", "b"]},
            {"cell_type": "code", "source": "c", "metadata": None, "id": 7},
            {"cell_type": "markdown", "source": "d", "id": "x",
             "metadata": {"tags": [], "nbgrader": {"grade_id": "q1-answer", "locked": True}}},
            {"source": "e", "metadata": {"nbgrader": {"grade_id": ["q1"]}}},
        ]
    }  # fmt: skip
    expected = [
        Cell("code", "a\nb"),
        Cell("code", "c"),
        Cell("markdown", "d", "x", "q1-answer"),
        Cell("code", "e"),
    ]

    assert expected == list(read_notebook(raw(book)).cells)


def test_cells_without_text_are_left_out_and_named():
    """Cells 2, 3 and 4 have a number, nothing and a mixed list where the text should be."""
    book = {"cells": [{"source": "a"}, 3, {"cell_type": "code"}, {"source": ["a", 1]}]}

    found = read_notebook(raw(book))

    assert ("Cells without readable text were left out: 2, 3, 4.",) == found.findings
    assert ["a"] == [cell.source for cell in found.cells]


def test_many_cells_left_out_are_one_sentence():
    """Twenty thousand of them must not become twenty thousand findings."""
    found = read_notebook(raw({"cells": [{"source": "a"}] + [0] * 20_000}))

    assert ("Cells without readable text were left out: 2, 3, 4, 5, 6 and more.",) == found.findings


@pytest.mark.parametrize("indent", [None, 1])
def test_a_broken_tail_gives_the_whole_cells_before_the_break(indent):
    """Cut at every byte: exactly the cells whose closing brace is still there are read."""
    data = raw(notebook(), indent=indent)
    text = data.decode()
    ends, at = [], 0
    for source in SOURCES:
        at = text.index(json.dumps(source, ensure_ascii=False), at)
        ends.append(len(text[: text.index("}", at) + 1].encode()))
    for cut in range(len(data)):
        whole = sum(end <= cut for end in ends)
        if not whole:
            with pytest.raises(UnreadableNotebook):
                read_notebook(data[:cut])
            continue
        found = read_notebook(data[:cut])
        finding = f"The file breaks off: only its first {whole} cells could be read."

        assert SOURCES[:whole] == [cell.source for cell in found.cells]
        assert finding in found.findings


@pytest.mark.parametrize(
    "data",
    [
        b"[" * 50_000 + b"]" * 50_000,
        b'{"a":' * 50_000 + b"1" + b"}" * 50_000,
        b'{"cells":' + b"[" * 50_000,
        b'{"cells":[{"source":' + b"[" * 50_000 + b"]" * 50_000 + b"}]}",
        b'{"cells":[{"metadata":' + b'{"nbgrader":' * 50_000 + b"1" + b"}" * 50_000 + b"}]}",
        b'{"cells":[{"source":"a","outputs":' + b"[" * 50_000 + b"]" * 50_000 + b"}]}",
    ],
    ids=["lists", "objects", "cells", "source", "metadata", "outputs"],
)
def test_fifty_thousand_levels_are_refused(data):
    """Python's own reader gives up with a RecursionError at about a thousand."""
    with pytest.raises(UnreadableNotebook, match=r"nested deeper|no notebook"):
        read_notebook(data)


def test_the_deep_outputs_of_a_plot_are_fine():
    """A hundred levels are more than any plot's description has."""
    data = b'{"cells":[{"source":"a","outputs":' + b"[" * 100 + b"]" * 100 + b"}]}"

    assert ["a"] == sources(data)


def test_47_megabytes_of_outputs_are_stepped_over():
    """Nothing but the text of the cells is built: by hand, some kilobytes of the 47 MB."""
    book = notebook()
    book["cells"][1]["outputs"] = [{"text": "x" * 47_000_000}]
    data = raw(book)
    tracemalloc.start()
    found = read_notebook(data, 50_000_000)
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()

    assert SOURCES == [cell.source for cell in found.cells]
    # The text itself (one byte a character, or four where an emoji stands) and little more.
    assert peak < 2.1 * len(data)


def test_twenty_thousand_cells_are_read():
    assert 20_000 == len(sources(raw(notebook(["a = 1"] * 20_000))))


NOTEBOOKS = st.dictionaries(
    st.sampled_from(["cells", "metadata", "worksheets", "x"]),
    st.recursive(
        st.one_of(st.none(), st.integers(), st.text(max_size=5)),
        lambda inner: st.one_of(
            st.lists(inner, max_size=4),
            st.dictionaries(
                st.sampled_from(["source", "cell_type", "id", "metadata", "cells", "kitchen",
                                 "nbgrader", "grade_id", "level", "input"]),
                inner,
                max_size=4,
            ),
        ),
        max_leaves=20,
    ),
)  # fmt: skip


@given(NOTEBOOKS, st.sampled_from(["", '{"source": "again"}', '], "cells": [{"source": "b"}']))
def test_a_file_built_whole_reads_as_one_that_is_stepped_through(book, tail):
    """The quick way for ordinary files against the careful one, names that stand twice included."""
    text = json.dumps(book) + tail
    if tail.startswith("]"):
        text = '{"cells": [{"source": "a"}' + tail + f'], "metadata": {json.dumps(book)}}}'

    assert both_ways(text.encode(), built=True) == both_ways(text.encode(), built=False)


def both_ways(data, built):
    """What is read, or the sentence, with or without Python's own reader."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(json_walk, "ORDINARY", json_walk.ORDINARY if built else -1)
        try:
            return read_notebook(data)
        except UnreadableNotebook as error:
            return str(error)


def test_of_millions_of_pieces_as_many_are_read_as_any_notebook_has():
    """Six million, a cell being two stops of 20: 149,999 cells, and the list's own stop.

    A zip of 115 kB held 3.9 million cells, which took 112 s.
    """
    found = read_notebook(b'{"cells":[' + b'{"source":"a"},' * 200_000 + b'{"source":"a"}]}')

    assert 149_999 == len(found.cells)
    assert (
        "The file has far more pieces than any notebook: its first 149999 cells were read."
    ) == found.findings[0]


@pytest.mark.parametrize("piece", [b"[],", b'"",'])
def test_a_file_of_tiny_outputs_is_not_stepped_through_to_its_end(monkeypatch, piece):
    """By hand: a stop each for the list of cells, the first cell, its two members; no cell ends."""
    monkeypatch.setattr(json_walk, "ORDINARY", -1)  # as a file of more letters is read
    data = b'{"cells":[{"source":"a","outputs":[' + piece * 1000 + b'""]}]}'

    assert ["a"] == [cell.source for cell in read_notebook(data).cells]
    with pytest.raises(UnreadableNotebook, match="far more pieces than any notebook"):
        read_notebook(data, budget=Budget(4 * 20 + 1000))


@pytest.mark.parametrize(
    "tail", [b'\\"' * 200_000, b"\\" * 400_001, b'{"', b'["' * 100_000], ids=range(4)
)
def test_work_grows_with_the_length_only(tail):
    """Endless strings of quotes and backslashes: counted in calls of the reader, not in seconds."""
    data = b'{"cells":[{"source":"a"},{"source":"' + tail
    steps = 0

    def count(frame, event, arg):
        nonlocal steps
        steps += event in ("call", "c_call")

    sys.setprofile(count)
    try:
        found = read_notebook(data)
    finally:
        sys.setprofile(None)

    assert ["a"] == [cell.source for cell in found.cells]
    assert steps < len(data) + 1_000


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "empty"),
        (b" \r\n\0\0", "empty"),
        (b"%PDF-1.7", "a PDF"),
        (b"\x89PNG\r\n", "a picture"),
        (b"\xff\xd8\xff\xe0", "a picture"),
        (b"\n <!DOCTYPE html><p>", "a web page"),
        (b"\xef\xbb\xbf<html>", "a web page"),
        (b"PK\x03\x04....", "a zip"),
        (b"celeriac, cider", "no notebook"),
        (b"3", "no notebook"),
        (b"{}", "no list of cells"),
        (b'{"cells": 3}', "no list of cells"),
        (b'{"cells": {"source": "a"}}', "no list of cells"),
        (b'{"cells": []}', "without any text"),
        (b'{"cells": [1, 2]}', "without any text"),
        (b'{"cells": [{"source": "a"', "before its first cell"),
        (b"{", "before its first cell"),
    ],
)
def test_what_is_no_notebook_is_refused_as_came(data, words):
    with pytest.raises(UnreadableNotebook, match=words) as caught:
        read_notebook(data)

    assert str(caught.value).startswith("The file is ")
    assert str(caught.value).endswith(".")


def test_a_file_over_the_limit_is_refused_with_both_sizes():
    with pytest.raises(UnreadableNotebook, match=r"2\.5 MB long; .* 2 MB"):
        read_notebook(b"x" * 2_500_000, 2_000_000)

    assert SOURCES == sources(raw(notebook()), len(raw(notebook())))


# What the mutations below start from; its code leaves a trace wherever it runs.
TRACE = "import builtins\nbuiltins.HAND_IN_RAN = True\n"
KITCHEN = {"kitchen": {"set": "04-buy-enough", "term": "demo"}}
BASE = raw(notebook([TRACE + source for source in SOURCES], metadata=KITCHEN), indent=1)


@st.composite
def mutated(draw):
    """A notebook with bytes flipped, cut out, doubled or put in."""
    data = bytearray(BASE)
    for _ in range(draw(st.integers(1, 6))):
        at = draw(st.integers(0, len(data)))
        how = draw(st.sampled_from(("flip", "cut", "drop", "double", "put")))
        if how == "flip" and at < len(data):
            data[at] ^= 1 << draw(st.integers(0, 7))
        elif how == "cut":
            del data[at:]
        elif how == "drop":
            del data[at : at + draw(st.integers(1, 200))]
        elif how == "double":
            data[at:at] = data[at : at + draw(st.integers(1, 200))]
        else:
            data[at:at] = draw(st.binary(max_size=30) | st.sampled_from((b'"', b"}", b"]", b"\\")))
    return bytes(data)


def forbidden(*_, **__):
    raise AssertionError("a hand-in was run")


COMPILE = builtins.compile


def only_to_parse(source, filename, mode, flags=0, **options):
    """The built-in `compile` as `ast.parse` uses it: a tree, never code that could run."""
    assert flags & ast.PyCF_ONLY_AST
    return COMPILE(source, filename, mode, flags, **options)


@given(mutated() | st.binary(max_size=300) | anything.map(lambda value: json.dumps(value).encode()))
@settings(max_examples=300, deadline=None)
@example(b'{"cells": [{"source": "\\ud800", "id": "\\udfff"}]}')
@example(b'{"cells": [{"source": ' + b"9" * 5_000 + b'}, {"source": "a"}]}')
@example(b"\xff\xfe\0\0")
def test_any_bytes_give_a_notebook_or_a_sentence(data):
    """Fuzz: no other error, nothing run, and what is read can be written to a file."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(builtins, "compile", only_to_parse)
        patch.setattr(builtins, "exec", forbidden)
        patch.setattr(builtins, "eval", forbidden)
        try:
            found = read_notebook(data)
        except UnreadableNotebook as error:
            assert str(error).endswith(".")
            return
        said = [student_of(found), *set_of(found)]

    assert not hasattr(builtins, "HAND_IN_RAN")
    assert all(isinstance(part, str | None) for cell in found.cells for part in cell)
    json.dumps([found.cells, found.findings, said], ensure_ascii=False).encode()
