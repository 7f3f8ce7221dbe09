"""What stands under a check cell follows its answer, in a notebook's real kernel."""

import os
import sys

import nbformat
import pytest
from nbclient import NotebookClient

from kitchenmath.practice import open_set

OPEN = "from kitchenmath.practice import open_set\nsheet = open_set('x', 'demo', 'BH-1')"
CHECK = "sheet.look('q1', q1, 'weight')"


@pytest.fixture(scope="module")
def notebook(tmp_path_factory):
    """Cells that can be run again, as a student does: open, answer, check."""
    cells = [nbformat.v4.new_code_cell(text) for text in (OPEN, 'q1 = "3 kg"', CHECK)]
    book = nbformat.v4.new_notebook(cells=cells)
    home = tmp_path_factory.mktemp("home")
    client = NotebookClient(book, allow_errors=True, timeout=120)
    path = os.pathsep.join(filter(None, sys.path))
    os_environment = os.environ | {"PYTHONPATH": path, "IPYTHONDIR": str(home)}
    with client.setup_kernel(env=os_environment, cwd=str(home)):

        def run(place, text=None):
            if text is not None:
                book.cells[place].source = text
            client.execute_cell(book.cells[place], place)
            return book.cells[place].outputs

        for place in (0, 1, 2):
            run(place)
        said = below(book)

        assert said == "q1: read as 3 kg. It is a weight, as it should be."

        yield run, lambda: below(book)


def below(book):
    """What stands under the check cell."""
    [output] = book.cells[2].outputs
    return output["data"]["text/plain"]


def test_an_answer_that_stops_leaves_nothing_old_under_its_check(notebook):
    """It said "as it should be" of 3 kg; then a bracket is forgotten, and then a name unknown."""
    run, said = notebook
    for text in ("q1 = round(3", "q1 = lots * 2"):
        run(1, text)

        assert said() == (
            "q1: the answer cell stopped, so there is no answer. Mend it, and run it again."
        )


def test_another_answer_is_said_without_running_the_check_again(notebook):
    run, said = notebook
    run(1, 'q1 = "3"')

    assert said().startswith("q1: 3 has no unit: type the unit too")

    run(1, "q1 = 4 kg")

    assert said() == "q1: read as 4 kg. It is a weight, as it should be."


def test_an_answer_that_stopped_is_no_answer_for_the_next_question(notebook):
    """q2 = q1 must not compute with what q1 was before."""
    run, _ = notebook
    run(1, 'q1 = "3 kg"')
    run(1, "q1 = lots")
    [printed] = run(0, "print('q1' in globals())")

    assert printed["text"] == "False\n"


def test_outside_a_notebook_it_is_printed(capsys):
    open_set("x", "demo", "BH-1").look("q1", "3 kg", "weight")

    assert "q1: read as 3 kg. It is a weight, as it should be.\n" == capsys.readouterr().out
