"""All pages in one zip. The class is invented."""

import zipfile

import pytest
from coursework.errors import CourseError
from coursework.reports import pack as module
from coursework.reports.pack import Packed, file_name, pack
from coursework.reports.pack_words import in_words

from tests.helpers.records import SET, leave, record, verdict, written


@pytest.fixture
def marked(course, entered, monkeypatch):
    """Ada is marked and waits for q9, Bram is marked, Chidi handed in nothing."""
    monkeypatch.setattr(module, "waiting_count", lambda *_: 1)
    leave(course, record("BH-1", verdict("q1"), human=[written()]), record("BH-2", verdict("q1")))
    return course


def test_each_page_bears_number_and_name(marked):
    packed = pack(marked, SET)

    assert ["BH-1 Ada Quill.html", "BH-2 Bram Oakes.html"] == zipfile.ZipFile(
        packed.file
    ).namelist()
    assert ("Chidi Morrow",) == packed.without


def test_a_platform_gets_a_folder_for_each_student(marked):
    names = zipfile.ZipFile(pack(marked, SET, folders=True).file).namelist()

    assert [f"BH-1 Ada Quill/{SET}.html", f"BH-2 Bram Oakes/{SET}.html"] == names


def test_the_words_warn_how_many_answers_wait_and_give_a_line_for_mail(marked):
    words = in_words(pack(marked, SET))

    assert "1 answer still waits" in words
    assert "No page for: Chidi Morrow." in words
    assert "“Buy enough” is marked" in words and "a total so far" in words


def test_where_nothing_waits_nothing_is_warned(tmp_path):
    assert "Careful" not in in_words(Packed(tmp_path / "a.zip", 2, 0, "Buy enough", ()))


@pytest.mark.parametrize(("name", "expected"), [
    ("Ada / Quill", "BH-1 Ada - Quill"),
    ("Zoë Ó Ferny", "BH-1 Zoë Ó Ferny"),
    ("..", "BH-1"),
    ("", "BH-1"),
])  # fmt: skip
def test_a_name_becomes_a_files_name_on_every_system(name, expected):
    assert expected == file_name("BH-1", name)


def test_before_anything_is_marked_it_says_so(course):
    with pytest.raises(CourseError, match="mark it first"):
        pack(course, SET)
