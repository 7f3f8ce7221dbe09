"""Lessons and keys as files: run them, store what they print, and keep them clean."""

import json

from coursework.classes.course import INSTRUCTOR, KEYS
from coursework.safe_files import write_safely
from coursework.sets.hand_out import write_assignments

LESSONS = INSTRUCTOR.parent / "lessons"
NOT_STORED = "nbval-ignore-output"  # the tag of cells that draw, or hold a panel
KERNEL = {"display_name": "Python 3", "language": "python", "name": "python3"}


def refresh(progress=None):
    """Run every lesson and key, store the text they print, and generate the students' copies.

    Parameters
    ----------
    progress : callable, optional

    Returns
    -------
    list of Path
        The files written.
    """
    files = [*sorted(LESSONS.glob("*.ipynb")), *sorted(KEYS.glob("*.ipynb"))]
    for done, file in enumerate(files):
        if progress:
            progress(done, len(files), file.stem)
        write_safely(file, rerun(file))
    if progress:
        progress(len(files), len(files), "")
    return files + write_assignments()


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
    from nbclient import NotebookClient

    notebook = nbformat.read(file, as_version=4)
    NotebookClient(notebook, timeout=120, resources={"metadata": {"path": file.parent}}).execute()
    return tidy(notebook)


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
