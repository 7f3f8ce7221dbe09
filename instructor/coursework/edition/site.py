"""The edition as a folder of static files: every page, what stands behind it, and nothing else."""

import base64
import hashlib
import json
import os
import subprocess
import sys
import tomllib
from pathlib import Path

from coursework.classes.college import college_text
from coursework.classes.course import INSTRUCTOR
from coursework.edition.checking import LIST
from coursework.edition.compiling import compiled
from coursework.edition.runtime import LOCK, PYODIDE, runtime
from coursework.edition.smaller import STDLIB, lessons_apart, without_what_no_page_asks_for
from coursework.edition.student_zip import student_zip
from coursework.edition.wheels import home_of, lock_of, own_wheel, wheels
from coursework.errors import CourseError
from coursework.safe_files import write_safely
from coursework.sets.class_keys import kits_key
from coursework.sets.hand_out import released
from coursework.sets.key_text import key_notebook, set_ids
from kitchenmath.conventions.college import HERE
from kitchenmath.pages import writing

KIT = INSTRUCTOR.parent
LESSONS = KIT / "lessons"


def edition(course=None, runtime_folder=None, wheel_folder=None, pictures=None):
    """Every file of the edition.

    Parameters
    ----------
    course : Course, optional
        The sets are the ones handed out to it, or those of its term; without it the kit's own.
    runtime_folder, wheel_folder : Path, optional
    pictures : dict of str to bytes, optional
        By "<lesson>/<cell>", what a panel shows before it is live; drawn where none are given.

    Returns
    -------
    dict of str to bytes
        By place in the folder. The same inputs give the same bytes.
    """
    beside = _college(course)
    files, python = _python(runtime_folder, wheel_folder, beside)
    sets = {set_id: _notebook(course, set_id) for set_id in set_ids()}
    lessons = {file.stem: file.read_bytes() for file in sorted(LESSONS.glob("*.ipynb"))}
    pictures = _drawn() if pictures is None else pictures
    files |= _beside(sets, lessons, pictures)
    files["student-edition.zip"] = student_zip(sets, beside)
    version = _digest(files | _static())
    files |= _pages(sets, lessons, pictures, version)
    files |= _static()
    files["keep.js"] = _keeper(files, version, python)
    sums = {name: hashlib.sha256(raw).hexdigest() for name, raw in sorted(files.items())}
    files[LIST] = json.dumps({"edition": version, "files": sums}, indent=1).encode()
    return files


def _python(runtime_folder, wheel_folder, beside):
    """What pages run on, by its place; and a digest of all that seldom changes in it."""
    published, official = runtime(runtime_folder)
    home = home_of(published["pyodide.mjs"], PYODIDE.version)
    bought = wheels(official, wheel_folder, home) | {STDLIB: published[STDLIB]}
    bought = compiled(lessons_apart(without_what_no_page_asks_for(bought)), published)
    project = tomllib.loads((KIT / "pyproject.toml").read_text("utf-8"))["project"]
    ours = compiled(own_wheel(KIT / "kitchenmath", project["version"], beside), published)
    lock = lock_of({name: raw for name, raw in (bought | ours).items() if name != STDLIB}, official)
    files = published | bought
    python = _digest(files)
    files |= ours | {LOCK: json.dumps(lock, indent=1).encode()}
    return {f"python/{name}": raw for name, raw in files.items()}, python


def write(files, folder):
    """Write an edition into a folder, and take out what an earlier one left there.

    Parameters
    ----------
    files : dict of str to bytes
    folder : Path
    """
    before = Path(folder) / LIST
    old = json.loads(before.read_bytes())["files"] if before.is_file() else {}
    for name, raw in files.items():
        write_safely(Path(folder) / name, raw, lasting=False)
    for name in set(old) - set(files):
        (Path(folder) / name).unlink(missing_ok=True)


def _notebook(course, set_id):
    """A set as students get it: the class's own copy, else a fresh one for its term."""
    if course and course.release(set_id).is_file():
        return course.release(set_id).read_bytes()
    raw = kits_key(course, set_id) if course else key_notebook(set_id)
    return released(raw, json.loads(raw)["metadata"]["kitchen"]["term"])


def _college(course):
    """The class's conventions as the file that its students' library reads, by its place."""
    text = college_text(course.college) if course else ""
    return {f"kitchenmath/data/{HERE}": text.encode()} if text else {}


def _drawn():
    """A picture of each panel, by a process of its own that runs the lessons."""
    command = [sys.executable, "-m", "kitchenmath.pages.pictures", str(LESSONS)]
    path = os.pathsep.join(filter(None, [str(KIT), os.environ.get("PYTHONPATH")]))
    run = subprocess.run(
        command, cwd=KIT, capture_output=True, text=True, env=os.environ | {"PYTHONPATH": path}
    )
    if run.returncode:
        last = (run.stderr.strip().splitlines() or ["nothing"])[-1]
        raise CourseError(f"The lessons' panels could not be drawn: {last}")
    return {place: base64.b64decode(raw) for place, raw in json.loads(run.stdout).items()}


def _beside(sets, lessons, pictures):
    """Notebooks to take down, the lessons' measured data and the pictures of their panels."""
    data = {
        f"data/{file.name}": file.read_bytes() for file in sorted((LESSONS / "data").glob("*.csv"))
    }
    return (
        data
        | {f"notebooks/{name}.ipynb": raw for name, raw in sets.items()}
        | {f"notebooks/{name}-lesson.ipynb": raw for name, raw in lessons.items()}
        | {f"pictures/{name}.png": raw for name, raw in pictures.items()}
    )


def _pages(sets, lessons, pictures, version):
    pages = {}
    for set_id, raw in sets.items():
        pages[f"set-{set_id}.html"] = writing.set_page(raw, version=version)
    data = {f"data/{file.name}": f"data/{file.name}" for file in (LESSONS / "data").glob("*.csv")}
    for name, raw in lessons.items():
        shown = {
            place.partition("/")[2]: f"pictures/{place}.png"
            for place in pictures
            if place.startswith(f"{name}/")
        }
        page = writing.lesson_page(raw, name, shown, files=dict(sorted(data.items())),
                                   version=version)  # fmt: skip
        pages[f"lesson-{name}.html"] = page
    lesson_cards = [writing.lesson_card(raw, name) for name, raw in lessons.items()]
    set_cards = [writing.set_card(raw) for raw in sets.values()]
    pages[writing.WORDS] = writing.words_page(version=version)
    pages["index.html"] = writing.start_page(lesson_cards, set_cards, version=version)
    return {name: text.encode() for name, text in pages.items()}


def _static():
    return {file.name: file.read_bytes() for file in sorted(writing.STATIC.iterdir())}


def _keeper(files, version, python):
    """The service worker, with the list of what it keeps at once.

    A lesson's page has no use for its notebook: whoever takes one down keeps it from then on.
    """
    small = sorted(
        name
        for name in files
        if name.endswith((".html", ".css", ".js", ".mjs", ".ipynb", ".csv"))
        and not name.startswith("python/")
        and not name.endswith("-lesson.ipynb")
        and name != "keep.js"
    )
    text = files["keep.js"].decode()
    filled = {"{{edition}}": version, "{{python}}": python, "{{small}}": json.dumps(small)}
    for mark, value in filled.items():
        text = text.replace(mark, value)
    return text.encode()


def _digest(files):
    digest = hashlib.sha256()
    for name, raw in sorted(files.items()):
        digest.update(f"{name}\0{len(raw)}\0".encode() + raw)
    return digest.hexdigest()[:10]
