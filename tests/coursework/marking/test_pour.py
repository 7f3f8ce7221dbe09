"""Pouring a student's answers into our own copy, whatever happened to the file."""

import copy
import json
from dataclasses import dataclass

import pytest
from coursework.marking.pour import pour
from coursework.sets.hand_out import ASSIGNMENTS

RELEASED = (ASSIGNMENTS / "04-buy-enough" / "04-buy-enough.ipynb").read_bytes()
MOST, OWN = 20_000, 200


@dataclass
class Cell:
    """A hand-in's cell as the reader gives it."""

    cell_type: str
    source: str
    id: str | None
    grade_id: str | None


def hand_in(**answers):
    """The released notebook as a student fills it in: q1="4 kg" and so on."""
    cells = []
    for cell in json.loads(RELEASED)["cells"]:
        name = cell["metadata"].get("nbgrader", {}).get("grade_id")
        text = "".join(cell["source"])
        question = (name or "").removesuffix("-answer")
        if question in answers:
            text = answers[question]
        cells.append(Cell(cell["cell_type"], text, cell["id"], name))
    return cells


def poured(cells):
    return pour(RELEASED, cells, MOST, OWN)


def place(cells, grade_id):
    return next(i for i, cell in enumerate(cells) if cell.grade_id == grade_id)


FILLED = {"q1": 'q1 = "4 kg"', "q2": 'q2 = "3"', "q6": "My yield was 70 %."}


def test_an_undamaged_hand_in_gives_its_answers():
    """Three filled in, three left: an untouched cell is no answer."""
    result = poured(hand_in(**FILLED))

    assert result.findings == ()
    assert result.answers["q1-answer"] == 'q1 = "4 kg"'
    assert result.answers["q6-answer"] == "My yield was 70 %."
    assert result.answers["q3-answer"] == ""


def test_the_marked_notebook_is_ours():
    """Locked text, check cells, points and order of the hand-in have nothing to act on."""
    cells = hand_in(**FILLED)
    for cell in cells:
        if cell.grade_id != "q1-answer":
            cell.source = "print('I was here')"
    ours = json.loads(RELEASED)

    result = poured(cells)

    kept = [c for c in result.notebook["cells"] if "solution" not in str(c["metadata"])]
    assert [cell["metadata"] for cell in ours["cells"]] == [
        cell["metadata"] for cell in result.notebook["cells"]
    ]
    assert kept == [c for c in ours["cells"] if "solution" not in str(c["metadata"])]


def without_names(cells):
    for cell in cells:
        cell.id = cell.grade_id = None
    return cells


def test_answers_are_found_by_place_when_every_name_is_gone():
    """Another editor stripped ids and metadata: the locked text before and after tells."""
    result = poured(without_names(hand_in(**FILLED)))

    assert result.answers["q1-answer"] == 'q1 = "4 kg"'
    assert result.answers["q2-answer"] == 'q2 = "3"'
    assert result.answers["q6-answer"] == "My yield was 70 %."
    assert "found by its place" in result.findings[0]


def test_an_answer_split_over_two_nameless_cells_is_joined():
    """Both halves lie between the same locked neighbours."""
    cells = without_names(hand_in(**FILLED))
    here = next(i for i, cell in enumerate(cells) if cell.source == FILLED["q1"])
    cells[here] = Cell("code", "kilos = 4", None, None)
    cells.insert(here + 1, Cell("code", 'q1 = f"{kilos} kg"', None, None))

    assert poured(cells).answers["q1-answer"] == 'kilos = 4\nq1 = f"{kilos} kg"'


def test_an_answer_split_over_two_named_cells_runs_in_order():
    """The student's second cell is an extra cell that stays where it stood."""
    cells = hand_in(**FILLED)
    here = place(cells, "q1-answer")
    cells[here].source = "kilos = 4"
    cells.insert(here + 1, Cell("code", 'q1 = f"{kilos} kg"', "new", None))

    code = ["".join(cell["source"]) for cell in poured(cells).notebook["cells"]]

    assert code.index('q1 = f"{kilos} kg"') == code.index("kilos = 4") + 1


def test_of_two_copies_the_last_filled_one_counts_and_it_is_said():
    """A doubled answer cell, the old copy last or first, an empty one after."""
    cells = hand_in(**FILLED)
    here = place(cells, "q1-answer")
    again = copy.copy(cells[here])
    again.source = 'q1 = "5 kg"'
    empty = copy.copy(cells[here])
    empty.source = ""
    result = poured([*cells[: here + 1], again, *cells[here + 1 :], empty])

    assert result.answers["q1-answer"] == 'q1 = "5 kg"'
    assert "stands 3 times" in " ".join(result.findings)


def test_shuffled_cells_make_no_difference():
    """Names decide, not order."""
    result = poured(hand_in(**FILLED)[::-1])

    assert result.answers == poured(hand_in(**FILLED)).answers


def test_a_deleted_answer_is_missing_and_said():
    """The rest is unharmed."""
    cells = [cell for cell in hand_in(**FILLED) if cell.grade_id != "q1-answer"]
    result = poured(cells)

    assert result.answers["q1-answer"] == ""
    assert result.answers["q2-answer"] == 'q2 = "3"'
    assert "q1-answer: the answer cell is not there." in result.findings


def test_deleted_and_forged_check_cells_change_nothing():
    """A check cell that was deleted is ours again; one turned to text is code again."""
    cells = hand_in(**FILLED)
    del cells[place(cells, "q1-check")]
    cells[place(cells, "q2-check")].cell_type = "markdown"

    assert poured(cells).notebook["cells"] == poured(hand_in(**FILLED)).notebook["cells"]


def test_an_answer_that_is_a_book_is_left_out_and_said():
    """More bytes than the course file allows."""
    result = poured(hand_in(q1="#" * (MOST + 1)))

    assert result.answers["q1-answer"] == ""
    assert f"longer than {MOST} bytes" in result.findings[0]


def test_twenty_thousand_extra_cells_take_linear_time():
    """So many of them are taken along; the answers count, and the rest is said."""
    extra = [Cell("code", f"x = {i}", f"own{i}", None) for i in range(20_000)]

    result = poured([*hand_in(**FILLED), *extra])

    assert len(result.notebook["cells"]) == len(json.loads(RELEASED)["cells"]) + OWN
    assert result.findings == (
        "20000 cells are the student's own; the first 200 were run (own_cells).",
    )
    assert result.answers["q1-answer"] == 'q1 = "4 kg"'


@pytest.mark.parametrize("cells", [[], [Cell("markdown", "hello", None, None)]])
def test_an_empty_hand_in_has_no_answers(cells):
    """Nothing crashes, everything is missing."""
    assert set(poured(cells).answers.values()) == {""}
