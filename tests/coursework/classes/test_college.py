"""The class's file says the college's conventions, and a set carries them to its students."""

import json

import pytest
from coursework.classes.course import new_course, open_course
from coursework.errors import CourseError
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook

from kitchenmath.conventions import as_text, conventions_of


@pytest.fixture
def course(tmp_path):
    return new_course(tmp_path / "class", "Cooks", "demo", {"BH-1007": "Ada"})


def _with(course, lines):
    file = course.folder / "course.toml"
    text = file.read_text(encoding="utf-8")
    return open_course(course.folder, text.replace("[bounds]", f"{lines}\n[bounds]", 1))


def test_a_new_class_has_the_kits_own_conventions(course):
    """Nothing is said, so nothing is other than it was."""
    assert conventions_of("ours") == course.college


@pytest.mark.parametrize(
    ("code", "country"),
    [("GB", "UK"), ("US", "US"), ("NZ", "NZ"), ("DE", "EU"), ("IE", "EU"), ("JP", "ours")],
)
def test_the_country_of_the_tables_is_the_country_of_the_conventions(course, code, country):
    """ISO 3166 has two letters for each; the EU is no country in it."""
    text = f'country = "{code}"\n' + (course.folder / "course.toml").read_text(encoding="utf-8")

    assert country == open_course(course.folder, text).college.country


def test_the_section_says_what_is_otherwise_here(course):
    """A class in the UK that cuts 3 mm and cooks on gas."""
    college = _with(course, '[college]\ncountry = "UK"\nbrunoise_mm = 3').college

    assert "UK; brunoise_mm = 3" == as_text(college)


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        ('country = "Mars"', "country"),
        ("brunoise_mm = 9", "brunoise_mm"),
        ('currency = "shells"', "currency"),
        ('tax = "in"', "tax_percent"),
        ('colour = "red"', "colour"),
    ],
)
def test_an_odd_line_is_said_by_its_name(course, lines, said):
    """All in one sentence with the table's name."""
    with pytest.raises(CourseError, match=said) as told:
        _with(course, f"[college]\n{lines}")

    assert "[college]" in str(told.value)


def test_a_set_carries_the_conventions_in_its_first_cell():
    """The student's library reads them there; the kit's own set says nothing."""
    key = key_notebook("04-buy-enough", conventions_of("UK"))
    opening = {cell["id"]: cell["source"] for cell in json.loads(key)["cells"]}["open-set"]
    plain = released(key_notebook("04-buy-enough"), "demo").decode()

    assert 'student=student, college="UK")' in opening
    assert "UK" == json.loads(key)["metadata"]["kitchen"]["college"]
    assert "college=" not in plain
