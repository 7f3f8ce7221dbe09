"""The student edition as a zip: an allow-list of the kit, for a computer with Python."""

from coursework.classes.course import INSTRUCTOR
from coursework.edition.wheels import zipped

KIT = INSTRUCTOR.parent
TOP = "kitchen-kit"
# What travels. Whatever is not named here stays at home: keys, coursework, classes, tests.
ALLOWED = {
    "kitchenmath": (".py", ".txt", ".csv", ".js", ".mjs", ".css", ".html", ".json", "LICENSE"),
    "lessons": (".py", ".ipynb", ".csv"),
    "assignments": (".py",),
}
README = """\
# The kitchen teaching kit, for students

You need Python 3.11 or newer, and the first time a network.

    python3 lessons          opens a page with all lessons and sets
    python3 lessons 4        opens lesson 4, python3 assignments 4 opens set 4
    python3 assignments      looks at your answers before you hand them in, and names the file

(On Windows, type `py` for `python3`.)

Type answers as you would write them on a card: 4.2 kg, 9 lb 4 oz, 63 °C, 35 %.
Heat, knives, raw food, allergens, hot sugar and pressure hurt people: each lesson says where.
A time or a temperature out of a model is an estimate, and a probe decides.
Your local food code and your instructor come first.
"""


def student_zip(sets, beside=None):
    """The kit as students get it.

    Parameters
    ----------
    sets : dict of str to bytes
        Each set's notebook as handed out, by its id.
    beside : dict of str to bytes, optional
        Further files, by their place in the kit.

    Returns
    -------
    bytes
        The same inputs give the same bytes.
    """
    files = {"README.md": README.encode(), "pyproject.toml": (KIT / "pyproject.toml").read_bytes()}
    for folder, kinds in ALLOWED.items():
        for file in sorted((KIT / folder).rglob("*")):
            hidden = any(
                part.startswith((".", "__pycache__")) for part in file.relative_to(KIT).parts
            )
            if file.is_file() and file.name.endswith(kinds) and not hidden:
                files[file.relative_to(KIT).as_posix()] = file.read_bytes()
    files |= beside or {}
    files |= {f"assignments/{name}/{name}.ipynb": raw for name, raw in sets.items()}
    return zipped({f"{TOP}/{name}": raw for name, raw in sorted(files.items())})
