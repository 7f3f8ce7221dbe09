"""The course file and the roster, as instructors and their spreadsheets write them."""

import sqlite3

import pytest
from coursework.classes.course import Bounds, new_course, open_course, read_roster
from coursework.errors import CourseError
from coursework.sets.class_keys import with_numbers_like
from coursework.sets.key_text import key_notebook

ROSTER = {"BH-1001": "Ada Quill", "BH-1019": "Søren Kelp", "BH-1024": 'Zoë "Zo" Ferny, jun.'}


@pytest.fixture
def course(tmp_path):
    return new_course(tmp_path / "autumn", "Pastry, first years", "autumn 2026", ROSTER)


def roster(tmp_path, raw):
    """A roster file of these bytes, read."""
    file = tmp_path / "roster.csv"
    file.write_bytes(raw.encode() if isinstance(raw, str) else raw)
    return read_roster(file)


def opened(tmp_path, text):
    """A class with this course file, opened."""
    (tmp_path / "roster.csv").write_text("student_number,name\nBH-1,Ann\n", encoding="utf-8")
    (tmp_path / "course.toml").write_text(text, encoding="utf-8")
    return open_course(tmp_path)


def test_a_new_class_opens_as_it_was_made(course):
    """There and back through the two files, with letters, commas and quotes in names."""
    again = open_course(course.folder)

    assert course == again
    assert ("Pastry, first years", "autumn 2026", ROSTER) == (again.name, again.term, again.roster)
    assert Bounds() == again.bounds


def test_a_class_gives_the_shape_of_its_numbers_and_its_sets_say_which_are_unlike(course):
    """In the cell that opens the set; nobody's copy has it without the line in the course file."""
    file = course.folder / "course.toml"
    text = file.read_text("utf-8")
    file.write_text(text.replace('# numbers_like = "AB-1234"', 'numbers_like = "BH-1001"'), "utf-8")
    again = open_course(course.folder)
    key = with_numbers_like(key_notebook("04-buy-enough"), again.numbers_like)

    assert ("", "BH-1001") == (course.numbers_like, again.numbers_like)
    assert b'student=student, like=\\"BH-1001\\")' in key


def test_an_odd_example_of_the_numbers_is_refused(tmp_path):
    with pytest.raises(CourseError, match="numbers_like: “B 1”"):
        opened(tmp_path, 'name = "C"\nterm = "demo"\nnumbers_like = "B 1"\n')


def test_a_folder_takes_one_class_only(course):
    with pytest.raises(CourseError, match="“autumn” already holds a class"):
        new_course(course.folder, "Other", "demo", ROSTER)


@pytest.mark.parametrize(
    ("name", "term", "people", "words"),
    [
        ("Class", "", ROSTER, "term: nothing is typed"),
        ("Class", "../x", ROSTER, "term: "),
        ("Class", "a" * 41, ROSTER, "term: "),
        ("", "demo", ROSTER, "name: nothing is typed"),
        ("bell\a", "demo", ROSTER, "name: "),
        ("Class", "demo", {}, "no student on it"),
        ("Class", "demo", {"..": "Ann"}, "“..” is no student number"),
        ("Class", "demo", {"BH-1.": "Ann"}, "“BH-1.” is no .* and no dot at its start or end"),
        ("Class", "demo", {"bh-1": "Ann"}, "write “bh-1” as BH-1"),
    ],
)
def test_a_class_that_is_refused_leaves_nothing_behind(tmp_path, name, term, people, words):
    """So that the second try, with the mistake mended, is not told that a class is there."""
    with pytest.raises(ValueError, match=words):
        new_course(tmp_path / "class", name, term, people)

    assert [] == list(tmp_path.iterdir())


def test_sets_are_those_with_a_notebook_of_their_own_name(course):
    """Not the copies that an editor leaves beside them, and each set once."""
    assert [] == course.sets_handed_out()
    for name in ("04-buy-enough/04-buy-enough", "04-buy-enough/04-buy-enough-copy",
                 ".ipynb_checkpoints/04-buy-enough", "02-brine/02-brine"):  # fmt: skip
        file = course.folder / "release" / f"{name}.ipynb"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text("{}")

    assert ["02-brine", "04-buy-enough"] == course.sets_handed_out()


def test_the_gradebooks_address_opens_its_file(course):
    """Referee: SQLite, on the path behind sqlite:///."""
    sqlite3.connect(course.gradebook.removeprefix("sqlite:///")).close()

    assert (course.folder / "gradebook.db").exists()


def test_bounds_may_be_changed_one_by_one(tmp_path):
    course = opened(tmp_path, 'name = "C"\nterm = "demo"\n[bounds]\nseconds = 0.5\n')

    assert Bounds(seconds=0.5) == course.bounds


def test_a_course_file_from_notepad_opens(tmp_path):
    """With a mark at the front and Windows line ends; a term that is a bare number."""
    course = opened(tmp_path, '\ufeffname = "C"\r\nterm = 2026\r\n')

    assert "2026" == course.term


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('term = "demo"', r'has no line name = "…"'),
        ('name = "C"\n[bounds]\nterm = "demo"', r'has no line term = "…" above \[bounds\]'),
        ('name = "C\nterm = "demo"', r"cannot be read: .*line 1"),
        ('name = "C"\nterm = "a|b"', "term: “a|b” may have letters"),
        ('name = "C"\nterm = "d"\nbounds = 3', r"below a line \[bounds\]"),
        ('name = "C"\nterm = "d"\n[bounds]\nsecond = 3', "“second” is none of seconds, cell_sec"),
        ('name = "C"\nterm = "d"\n[bounds]\nseconds = "60"', "seconds: needs a number above 0"),
        ('name = "C"\nterm = "d"\n[bounds]\nseconds = 0', "seconds: needs a number above 0"),
        ('name = "C"\nterm = "d"\n[bounds]\nseconds = nan', "seconds: needs a number above 0"),
        ('name = "C"\nterm = "d"\n[bounds]\nseconds = inf', "seconds: needs a number above 0"),
        ('name = "C"\nterm = "d"\n[bounds]\nseconds = true', "seconds: needs a number above 0"),
        ('name = "C"\nterm = "d"\n[bounds]\nfile_bytes = 1.5', "file_bytes: needs a whole number"),
    ],
)
def test_an_odd_course_file_is_refused_with_the_line(tmp_path, text, words):
    with pytest.raises(CourseError, match=words) as caught:
        opened(tmp_path, text)

    assert str(caught.value).startswith("course.toml")


def test_a_course_file_that_is_no_utf_8_is_refused(tmp_path):
    (tmp_path / "course.toml").write_bytes(b'name = "caf\xe9"')

    with pytest.raises(CourseError, match=r"course\.toml cannot be read"):
        open_course(tmp_path)


def test_a_folder_without_a_class_or_a_roster_says_what_is_missing(tmp_path):
    with pytest.raises(CourseError, match=r"no course\.toml in it"):
        open_course(tmp_path)

    (tmp_path / "course.toml").write_text('name = "C"\nterm = "demo"\n')
    with pytest.raises(CourseError, match=r"put roster\.csv into"):
        open_course(tmp_path)


EXPECTED = {"BH-1": "Zoë", "BH-2": "Søren"}


@pytest.mark.parametrize(
    "text",
    [
        "student_number,name\nBH-1,Zoë\nBH-2,Søren\n",
        "student_number;name\r\nBH-1;Zoë\r\nBH-2;Søren\r\n",
        "student_number\tname\nBH-1\tZoë\nBH-2\tSøren",
        "name,student_number,room\nZoë,BH-1,4\nSøren,BH-2,5\n",
        '"Student_Number" , Name\n bh-1 , Zoë \n"bh-2","Søren"\n',
        "student_number,name\n\nBH-1,Zoë\n,\nBH-2,Søren\n,,\n\n",
    ],
    ids=["commas", "semicolons", "tabs", "other order", "spaces and capitals", "empty lines"],
)
@pytest.mark.parametrize("code", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_rosters_of_all_spreadsheets_are_read(tmp_path, text, code):
    assert EXPECTED == roster(tmp_path, text.encode(code))


def test_a_name_may_hold_commas_and_quotes_and_a_line_end_in_it_is_a_blank(tmp_path):
    text = 'student_number,name\nBH-1,"Ferny, Zoë ""Zo""\nthe younger"\nBH-2\n'

    assert {"BH-1": 'Ferny, Zoë "Zo" the younger', "BH-2": "BH-2"} == roster(tmp_path, text)


def test_every_odd_line_is_named_at_once(tmp_path):
    """By hand: the second name takes two lines, so the lines below it are 5 to 8."""
    lines = ("student_number,name", "BH-1,Ann", 'BH-2,"Bob', 'Bee"', ",Cid", "..,Dee", "bh-1,Eve",
             '"x y",Flo', "BH-3,Gus")  # fmt: skip

    with pytest.raises(CourseError) as caught:
        roster(tmp_path, "\n".join(lines))

    message = str(caught.value)
    assert "line 5: the student number" in message
    assert "line 6: “..” " in message
    assert "line 7: BH-1 stands twice." in message
    assert "line 8: “x y” " in message
    assert "line 2" not in message and "line 9" not in message


@pytest.mark.parametrize(
    ("raw", "words"),
    [
        (b"", "needs a line of heads"),
        (b"BH-1,Ann\nBH-2,Bob\n", "needs a line of heads"),
        (b"number,name\nBH-1,Ann\n", "needs a line of heads"),
        (b"student_number,name\n", "no line for a student"),
        (b"student_number,name\n,\n", "no line for a student"),
        (b'student_number,name\nBH-1,"' + b"x" * 200_000, "line 2: field larger"),
        (b"PK\x03\x04\x00\xff", "is a spreadsheet: save it as CSV"),
        (b"\xd0\xcf\x11\xe0\x00\xff", "is a spreadsheet: save it as CSV"),
    ],
)
def test_what_is_no_roster_is_refused(tmp_path, raw, words):
    with pytest.raises(CourseError, match=words) as caught:
        roster(tmp_path, raw)

    assert str(caught.value).startswith("roster.csv")
