"""Hand out: from a key to the notebook that students get.

nbgrader's own steps take out the solutions and the hidden tests, so that its marking page and
its grader find what they expect. The same key gives the same bytes every time.
"""

import io
import shutil
from pathlib import Path

from coursework.classes.codes import make_codes
from coursework.classes.course import INSTRUCTOR
from coursework.classes.one_at_a_time import one_at_a_time
from coursework.decisions.holding import holding
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import prepare_set
from coursework.safe_files import keep_earlier, write_safely
from coursework.sets.checked_keys import library, refuse_unchecked
from coursework.sets.class_keys import FIRST, class_key, for_term, kept_key, kits_key
from coursework.sets.drawn_numbers import other_numbers
from coursework.sets.guides import write_guide
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

ASSIGNMENTS = INSTRUCTOR.parent / "assignments"
ANSWER_STUB = "# Type your answer between the quotes, then press Shift + Enter."
WRITE_STUB = "*Write here.*"

STAGES = (
    "reads the key",
    "tries each student's numbers",
    "makes the notebook; the first time since the start, what makes notebooks is loaded",
)

NBGRADER_FILE = "nbgrader_config.py"
# nbgrader reads this when its marking page is opened on the class.
NBGRADER_CONFIG = f"""\
# Made by the kit: nbgrader's settings for this class.
c = get_config()
c.CourseDirectory.root = {{root!r}}
c.CourseDirectory.db_url = {{gradebook!r}}
c.ClearSolutions.code_stub = {{{{"python": {ANSWER_STUB!r}}}}}
c.ClearSolutions.text_stub = {WRITE_STUB!r}
"""


def hand_out(course, set_id, progress=None):
    """Make a set's notebook for this class and enter the set in the gradebook.

    Handing out again changes nothing for the class: a set keeps the key that it went out with,
    until a person takes a newer one (`class_keys.py`).

    Parameters
    ----------
    course : Course
    set_id : str
    progress : callable, optional
        Called with (done, total, text): the first time in a process takes a while, as what makes
        notebooks is loaded then.

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
        return _hand_out(course, set_id, progress or (lambda *_: None))


def _hand_out(course, set_id, progress):
    progress(0, len(STAGES), STAGES[0])
    if course.student_codes:
        make_codes(course)
    handed_out = course.key(set_id).is_file()
    key = class_key(course, set_id) if handed_out else kits_key(course, set_id)
    write_nbgrader_config(course)
    write_guide(course)
    file = _put_out(course, set_id, key, progress)
    progress(len(STAGES), len(STAGES), "done")
    return file


def write_nbgrader_config(course):
    """What nbgrader's own pages need to find the class where it lies now.

    Parameters
    ----------
    course : Course
    """
    root = str(course.folder.resolve())
    text = NBGRADER_CONFIG.format(root=root, gradebook=course.gradebook)
    write_safely(course.folder / NBGRADER_FILE, text)


def _put_out(course, set_id, key, progress=lambda *_: None):
    """A key and its notebook in their places; what stood there before is kept."""
    progress(1, len(STAGES), STAGES[1])
    refuse_unchecked(course, set_id, key, library())
    progress(2, len(STAGES), STAGES[2])
    notebook = released(key, course.term, course, set_id)
    for file, content in ((course.key(set_id), key), (course.release(set_id), notebook)):
        if file.is_file() and file.read_bytes() != content:
            keep_earlier(course.folder, file)
        write_safely(file, content)
    other_numbers(course, set_id)  # what goes out for the first time is remembered
    return course.release(set_id)


def settle_keys(course):
    """Put each set's key in its place as it is decided now: a newer one, or the first again.

    Called by whoever holds the class, after a decision and before a marking, so that a stop
    between a decision and its files mends itself.

    Parameters
    ----------
    course : Course
    """
    decisions = decisions_of(course)
    taken = holding(decisions).newer_keys
    for set_id in {one.set_id for one in decisions if one.kind == "newer key"}:
        name = taken[set_id].file if set_id in taken else FIRST
        key = kept_key(course, set_id, name).read_bytes()
        if key != class_key(course, set_id):
            _put_out(course, set_id, key)


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
