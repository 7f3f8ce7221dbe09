"""Lessons and keys as files: run them, store what they print, and keep them clean."""

import json
import os
import re
from functools import partial

from coursework.classes.course import INSTRUCTOR
from coursework.safe_files import write_safely
from coursework.sets.guides import write_limits, write_times
from coursework.sets.hand_out import write_assignments
from coursework.sets.key_text import key_notebook, set_ids
from kitchenmath.pages.times import times_of

LESSONS = INSTRUCTOR.parent / "lessons"
# What each key prints, beside the test that compares it.
PRINTED = INSTRUCTOR.parent / "tests" / "keys" / "printed"
HEAD = re.compile(r"(\*Lesson \d+ · )[^*]*(\*)")  # its second line
NOT_STORED = "nbval-ignore-output"  # the tag of cells that draw, or hold a panel
KERNEL = {"display_name": "Python 3", "language": "python", "name": "python3"}


def refresh(progress=None):
    """Run every lesson and key, store the text they print, and generate the students' copies.

    A lesson keeps its text in the notebook. A key is a text file, so what it prints lies beside
    the tests.

    Parameters
    ----------
    progress : callable, optional

    Returns
    -------
    list of Path
        The files written.
    """
    lessons, keys = sorted(LESSONS.glob("*.ipynb")), set_ids()
    made = {file: partial(rerun, file) for file in lessons}
    made |= {PRINTED / f"{set_id}.txt": partial(printed, set_id) for set_id in keys}
    for done, (file, make) in enumerate(made.items()):
        if progress:
            progress(done, len(made), file.stem)
        write_safely(file, make())
    if progress:
        progress(len(made), len(made), "")
    return [*made, *write_assignments(), write_limits(), *write_times()]


def rerun(file):
    """A notebook's text after a fresh run: outputs of worked cells in, everything else out.

    Parameters
    ----------
    file : Path

    Returns
    -------
    str

    Raises
    ------
    nbclient.exceptions.CellExecutionError
        When a cell fails.
    """
    import nbformat

    return with_times(tidy(_run(nbformat.read(file, as_version=4), file.parent)))


def with_times(text):
    """A lesson whose head says how long it takes.

    Parameters
    ----------
    text : str
        The notebook.

    Returns
    -------
    str
    """
    return HEAD.sub(rf"\g<1>{times_of(text).words}\2", text, count=1)


def printed(set_id):
    """What the cells of a key print, with the model answers in: as the set's author sees it.

    Parameters
    ----------
    set_id : str

    Returns
    -------
    str
        Below the name of each cell that prints something.

    Raises
    ------
    nbclient.exceptions.CellExecutionError
        When a cell fails.
    """
    import nbformat

    notebook = _run(nbformat.reads(key_notebook(set_id).decode(), as_version=4), LESSONS)
    parts = []
    for cell in json.loads(tidy(notebook))["cells"]:
        text = "\n".join(
            _one_text(output.get("text") or output["data"]["text/plain"]).rstrip("\n")
            for output in cell.get("outputs", [])
        )
        if text:
            parts.append(f"[{cell['id']}]\n{text.rstrip()}\n")
    return "\n".join(parts)


def _run(notebook, folder):
    """A notebook after a fresh run of all its cells."""
    from nbclient import NotebookClient

    reach = os.pathsep.join(
        [str(INSTRUCTOR.parent), *filter(None, [os.environ.get("PYTHONPATH", "")])]
    )
    client = NotebookClient(notebook, timeout=120, resources={"metadata": {"path": str(folder)}})
    return client.execute(env=os.environ | {"PYTHONPATH": reach})


def tidy(notebook):
    """A notebook as it is stored: no panel state, no pictures, one kernel, sorted keys.

    Parameters
    ----------
    notebook : NotebookNode

    Returns
    -------
    str
    """
    notebook = json.loads(json.dumps(notebook))
    kept = {
        name: notebook["metadata"][name] for name in ("kitchen",) if name in notebook["metadata"]
    }
    notebook["metadata"] = {"kernelspec": KERNEL, **kept}
    for cell in notebook["cells"]:
        cell["metadata"].pop("execution", None)
        if isinstance(cell["source"], str):
            cell["source"] = cell["source"].splitlines(keepends=True)
        if cell["cell_type"] == "code" and NOT_STORED in cell["metadata"].get("tags", []):
            cell["outputs"] = []
        if "outputs" in cell:
            cell["outputs"] = _joined(cell["outputs"])
        for output in cell.get("outputs", []):
            if isinstance(output.get("text"), str):
                output["text"] = output["text"].splitlines(keepends=True)
    return json.dumps(notebook, indent=1, ensure_ascii=False, sort_keys=True) + "\n"


def _joined(outputs):
    """Outputs with neighbouring pieces of one stream as one: a kernel cuts them by the clock."""
    joined = []
    for output in outputs:
        name = output.get("name") if output["output_type"] == "stream" else None
        if name and joined and joined[-1].get("name") == name:
            joined[-1]["text"] = _one_text(joined[-1]["text"]) + _one_text(output["text"])
        else:
            joined.append(output)
    return joined


def _one_text(text):
    return text if isinstance(text, str) else "".join(text)
