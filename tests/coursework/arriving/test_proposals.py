"""Whose a file may be. Names and numbers are invented, written as students and platforms do."""

import pytest
from coursework.arriving.arrivals import Arrival
from coursework.arriving.proposals import proposals, set_proposal, sure

ROSTER = {
    "004238": "Ada Quill",
    "004328": "Bram Oakes",
    "004111": "Søren Ó Kelp",
    "003999": "Zoë Ferny",
}
SETS = ["01-measure-and-scale", "04-buy-enough", "04r-review-1"]


def found(name, typed=None):
    return [
        (one.student, one.because)
        for one in proposals(Arrival("post.zip", name, says_student=typed), ROSTER)
    ]


@pytest.mark.parametrize(("name", "expected"), [
    ("004238/work.pdf", [("004238", "number")]),
    ("Quill Ada_9917_file/work.pdf", [("004238", "name")]),
    ("ferny-zoe/scan.jpg", [("003999", "name")]),
    ("kelp_soren_o.docx", []),  # ø is a letter of its own, and no o with a sign
    ("kelp_søren_o.docx", [("004111", "name")]),
    ("4238 set 4.pdf", [("004238", "zeros")]),
    ("ada.pdf", []),
    ("scan 42381.pdf", []),
])  # fmt: skip
def test_names_of_files_and_folders_say_whose_it_is(name, expected):
    assert expected == found(name)


def test_a_number_that_lost_its_zeros_is_proposed_first():
    """4238 is 004238, and not the 004328 that looks like it."""
    assert [("004238", "zeros")] == found("work.ipynb", "4238")[:1]


def test_what_is_only_similar_is_never_sure():
    """004283 is nobody's; two students have a number like it."""
    seen = proposals(Arrival("", "work.ipynb", says_student="004283"), ROSTER)

    assert {"similar"} == {one.because for one in seen}
    assert sure(seen) is None


def test_two_students_who_are_both_named_leave_it_open():
    seen = proposals(Arrival("", "004238/Bram Oakes.pdf"), ROSTER)

    assert {"004238", "004328"} == {one.student for one in seen}
    assert sure(seen) is None


@pytest.mark.parametrize(("name", "says", "expected"), [
    ("work.ipynb", "01-measure-and-scale", ("01-measure-and-scale", "said")),
    ("04-buy-enough (2).pdf", None, ("04-buy-enough", "named")),
    ("ada set 1.pdf", None, ("01-measure-and-scale", "named")),
    ("ada set 4 final.pdf", None, ("04-buy-enough", "named")),
    ("Ada Review 1.pdf", None, ("04r-review-1", "named")),
    ("scan.pdf", None, ("04-buy-enough", "chosen")),
])  # fmt: skip
def test_the_set_is_taken_from_the_file_its_name_or_the_desk(name, says, expected):
    one = set_proposal(Arrival("", name, says_set=says), SETS, "04-buy-enough")

    assert expected == (one.set_id, one.because)


def test_a_set_that_is_not_handed_out_is_not_proposed():
    """Nor is the set that the desk is at work on: it would be placed over the right file."""
    assert set_proposal(Arrival("", "x.pdf", says_set="09-x"), SETS) is None
    assert set_proposal(Arrival("", "x.ipynb", says_set="09-x"), SETS, SETS[0]) is None
