"""Whose notebook it is, and which set: by what stands in it, never by running it."""

import pytest
from coursework.arriving.reading_in import Cell, Notebook
from coursework.arriving.whose import literal, set_of, student_of


def notebook(*cells, **kitchen):
    """A notebook of code cells; a pair gives a cell its id."""
    pairs = [cell if isinstance(cell, tuple) else (None, cell) for cell in cells]
    return Notebook(tuple(Cell("code", source, id_) for id_, source in pairs), kitchen, (), {})


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        ('student = "BH-1007"', "BH-1007"),
        ("student='BH-1007'  # mine", "BH-1007"),
        ('student: str = "BH-1007"', "BH-1007"),
        ('me = student = "BH-1007"', "BH-1007"),
        ('student = "BH-" "1007"', "BH-1007"),
        ('student = "BH-1006"\nstudent = "BH-1007"', "BH-1007"),
        ('if True:\n    student = "BH-1007"', "BH-1007"),
        ("student = 1007", "1007"),
        ("student = “BH-1007”", "BH-1007"),
        ('%matplotlib inline\n!pip list\nstudent = "BH-1007"', "BH-1007"),
        ('student = "BH-1007"\nthis is not Python', "BH-1007"),
        ('student = "BH-1007"' + "\n#" + "x" * 10_000, "BH-1007"),
        ('student = ""', ""),
        ("student = BH-1007", None),
        ('student = "BH-1007', None),
        ("student = True", None),
        ("student = -5", None),
        ("student = name", None),
        ("student = input()", None),
        ('student == "BH-1007"', None),
        ('students = "BH-1007"', None),
        ('one.student = "BH-1007"', None),
        ('# student = "BH-1007"', None),
        ("student = 0x" + "f" * 4_500, None),
        ("", None),
    ],
)
def test_the_text_that_a_cell_gives_to_a_name(source, expected):
    assert expected == literal(source, "student")


def test_a_half_character_does_not_travel():
    """A lone surrogate could not be written into any list."""
    assert "BH?7" == literal('student = "BH\\ud8007"', "student")


@pytest.mark.parametrize(
    "hostile",
    ["-" * 4_000 + "1", "(" * 4_000, "[" * 4_000, "a." * 2_000 + "a", "not " * 1_000 + "a",
     "lambda:" * 700 + "1", "1**" * 1_500 + "1", "a\0b", '"\\d"', "x" * 3_000_000, "x\n" * 100_000,
     "\n".join(" " * depth + "if 1:" for depth in range(90))],
    ids=range(12),
)  # fmt: skip
def test_hostile_code_is_survived(hostile):
    """Nested past every limit of the parser; the line with the number is still found."""
    assert "BH-1007" == literal(f'student = "BH-1007"\n{hostile}', "student")


def test_the_cell_called_me_is_asked_first():
    book = notebook('student = "BH-1001"', ("me", 'student = "BH-1007"'), 'student = "BH-1002"')

    assert "BH-1007" == student_of(book)


def test_a_grade_id_will_do_where_the_id_is_gone():
    cells = (Cell("code", 'student = "BH-1"', "x"), Cell("code", 'student = "BH-2"', "y", "me"))

    assert "BH-2" == student_of(Notebook(cells, {}, (), {}))


@pytest.mark.parametrize(
    ("first", "second"), [("BH-1007", ""), ("", "BH-1007"), ("BH-1001", "BH-1007")]
)
def test_of_two_cells_called_me_the_last_filled_one_counts(first, second):
    book = notebook(("me", f'student = "{first}"'), ("me", f'student = "{second}"'))

    assert "BH-1007" == student_of(book)


def test_without_a_cell_called_me_the_first_filled_line_counts():
    book = notebook("print(student)", 'student = ""', 'student = "BH-1007"', 'student = "BH-1"')

    assert "BH-1007" == student_of(book)


def test_a_number_left_empty_is_told_from_a_line_that_is_gone():
    assert "" == student_of(notebook(("me", 'student = ""'), "print(student)"))
    assert student_of(notebook(("me", "student = BH-1007"))) is None
    assert student_of(notebook()) is None


def test_text_is_no_code():
    """A markdown cell that quotes the line says nothing about whose it is."""
    book = Notebook((Cell("markdown", 'student = "BH-1007"', "me"),), {}, (), {})

    assert student_of(book) is None


def test_the_metadata_say_the_set():
    call = 'sheet = open_set("05-brine", term="spring", student=student)'

    assert ("04-buy-enough", "demo") == set_of(notebook(call, set="04-buy-enough", term="demo"))
    assert ("04-buy-enough", None) == set_of(notebook(set="04-buy-enough", term=3))


@pytest.mark.parametrize(
    "call",
    [
        'sheet = open_set("04-buy-enough", term="demo", student=student)',
        'open_set("04-buy-enough", "demo", student)',
        "practice.open_set(\n    student=student,\n    term='demo',\n    set_id='04-buy-enough')",
        '%time\n!ls\nopen_set(\n    "04-buy-enough",\n    term="demo",\n    student=input(),\n)',
    ],
)
def test_without_metadata_the_call_says_the_set(call):
    """Keys out of order, positions, over several lines; metadata of another kind is no answer."""
    assert ("04-buy-enough", "demo") == set_of(notebook("open_set = 1", call, set=4))


@pytest.mark.parametrize("call", ["open_set()", "open_set(name, **more)", "open_set", "x = 1"])
def test_a_call_that_says_nothing_gives_nothing(call):
    assert (None, None) == set_of(notebook(call))
