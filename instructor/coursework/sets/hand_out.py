"""Hand out: from a key to the notebook that students get.

nbgrader's own steps take out the solutions and the hidden tests, so that its marking page and
its grader find what they expect. The same key gives the same bytes every time.
"""

import io
import json
import shutil
from pathlib import Path

from coursework.classes.codes import make_codes
from coursework.classes.course import INSTRUCTOR
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.errors import CourseError
from coursework.gradebook.points import prepare_set
from coursework.safe_files import keep_earlier, write_safely
from coursework.sets.checked_keys import library, refuse_unchecked
from coursework.sets.guides import write_guide
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key, source, with_term

ASSIGNMENTS = INSTRUCTOR.parent / "assignments"
ANSWER_STUB = "# Type your answer between the quotes, then press Shift + Enter."
WRITE_STUB = "*Write here.*"
CODE_TEXT = "\nBelow it, **your code**: your instructor gave it to you, and nobody else has it."

# nbgrader reads this when its marking page is opened on the class.
NBGRADER_CONFIG = f"""\
# Made by the kit: nbgrader's settings for this class.
c = get_config()
c.CourseDirectory.root = {{root!r}}
c.CourseDirectory.db_url = {{gradebook!r}}
c.ClearSolutions.code_stub = {{{{"python": {ANSWER_STUB!r}}}}}
c.ClearSolutions.text_stub = {WRITE_STUB!r}
"""


def hand_out(course, set_id):
    """Make a set's notebook for this class and enter the set in the gradebook.

    Handing out again after a key was corrected is safe: the earlier notebook is kept.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    Path
        The notebook to give to students.

    Raises
    ------
    CourseError
        When there is no such set, its key is refused, or another step is at work in this class.
    """
    with one_at_a_time(course, "handing out"):
        return _hand_out(course, set_id)


def _hand_out(course, set_id):
    raw = key_notebook(set_id, course.college)
    if course.student_codes:
        make_codes(course)
        raw = with_code(raw)
    if course.numbers_like:
        raw = with_numbers_like(raw, course.numbers_like)
    key = for_term(raw, course.term)
    refuse_unchecked(course, set_id, key, library())
    file = course.key(set_id)
    if file.is_file() and file.read_bytes() != key:
        keep_earlier(course.folder, file)
    write_safely(file, key)
    write_safely(
        course.folder / "nbgrader_config.py",
        NBGRADER_CONFIG.format(root=str(course.folder.resolve()), gradebook=course.gradebook),
    )
    write_guide(course)
    notebook = released(raw, course.term, course, set_id)
    file = course.release(set_id)
    if file.is_file() and file.read_bytes() != notebook:
        keep_earlier(course.folder, file)
    write_safely(file, notebook)
    return file


def released(raw, term, course=None, set_id=None):
    """The students' notebook from a key's bytes.

    Parameters
    ----------
    raw : bytes
    term : str
    course : Course, optional
        Where given, the set's cells are entered in its gradebook on the way.
    set_id : str, optional
        Needed with `course`.

    Returns
    -------
    bytes
    """
    import nbformat
    from nbgrader import preprocessors
    from traitlets.config import Config

    config = Config()
    config.ClearSolutions.code_stub = {"python": ANSWER_STUB}
    config.ClearSolutions.text_stub = WRITE_STUB
    names = ["LockCells", "ClearSolutions", "ClearOutput", "CheckCellMetadata", "ComputeChecksums"]
    names += ["SaveCells"] if course else []
    names += ["ClearHiddenTests", "ClearMarkScheme", "ComputeChecksums", "CheckCellMetadata"]

    notebook = nbformat.reads(for_term(raw, term).decode(), as_version=4)
    resources = {"nbgrader": {"notebook": set_id, "assignment": set_id}}
    if course:
        prepare_set(course, set_id)
        resources["nbgrader"]["db_url"] = course.gradebook
    for name in names:
        step = getattr(preprocessors, name)(config=config)
        notebook, resources = step.preprocess(notebook, resources)
    for cell in notebook.cells:  # how the key was last run is nobody else's business
        cell.metadata.pop("execution", None)
    text = io.StringIO()
    nbformat.write(notebook, text)
    return (text.getvalue().rstrip("\n") + "\n").encode()


def class_key(course, set_id):
    """The key that marks a class: the one with which the set was handed out to it.

    A newer kit may draw other numbers; then every answer given so far would be wrong. So the
    kit's own key is taken only by handing out again.

    Parameters
    ----------
    course : Course
    set_id : str

    Returns
    -------
    bytes

    Raises
    ------
    CourseError
        When the set is not handed out.
    """
    file = course.key(set_id)
    if not file.is_file():
        raise CourseError(f"“{set_id}” is not handed out to this class yet: hand it out first.")
    return file.read_bytes()


def for_term(raw, term):
    """The key with the class's term in the cell that opens the set, and in the metadata."""
    notebook = json.loads(raw)
    for cell in notebook["cells"]:
        if cell.get("id") == "open-set":
            cell["source"] = with_term(source(cell), term).splitlines(keepends=True)
    notebook["metadata"]["kitchen"]["term"] = term
    return (json.dumps(notebook, indent=1, ensure_ascii=False, sort_keys=True) + "\n").encode()


def with_code(raw):
    """The key with a line for the student's code in the first cell that a student fills in."""
    notebook = json.loads(raw)
    for cell in notebook["cells"]:
        if cell.get("id") == "me-text":
            cell["source"] = (source(cell) + CODE_TEXT).splitlines(keepends=True)
        if cell.get("id") == "me":
            first, _, rest = source(cell).partition("\n")
            cell["source"] = f'{first}\ncode = ""\n{rest}'.splitlines(keepends=True)
    return json.dumps(notebook, ensure_ascii=False).encode()


def with_numbers_like(raw, example):
    """The key with one of the class's numbers in the cell that opens the set."""
    notebook = json.loads(raw)
    for cell in notebook["cells"]:
        if cell.get("id") == "open-set":
            like = f'student=student, like="{example}"'
            text = source(cell).replace("student=student", like, 1)
            cell["source"] = text.splitlines(keepends=True)
    return json.dumps(notebook, ensure_ascii=False).encode()


def write_assignments(folder=ASSIGNMENTS):
    """Generate the kit's own copies in assignments/, one folder a set, for the term in each key.

    Parameters
    ----------
    folder : Path

    Returns
    -------
    list of Path
    """
    written = []
    for set_id in set_ids():
        raw = key_notebook(set_id)
        key = load_key(raw)
        file = Path(folder) / set_id / f"{set_id}.ipynb"
        write_safely(file, released(raw, key.sheet.term))
        written.append(file)
    for leftover in {path.parent for path in Path(folder).glob("*/*.ipynb")}:
        if leftover.name not in set_ids():
            shutil.rmtree(leftover)
    return written
