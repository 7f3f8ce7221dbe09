"""A term of one class, played at the desk: its own buttons are pressed, its own answers kept.

Students, answers and marks are invented. What is handed in is what comes in life: a number that
lost its zeros, a file of another set, one that nobody can read, Thumbs.db, a mail attachment.
"""

import os
import shutil
import zipfile
from contextlib import ExitStack
from datetime import UTC, datetime
from pathlib import Path
from unittest.mock import patch

from coursework.classes.names import name_for_files
from coursework.sets import key_text

from tests.helpers.term_desk import OTHER_SET, SET, TERM, Term

NAME = "Cooks 2026/27"
DUE, SENT, LATE = "2026-10-05 09:00", "2026-10-04 18:00", "2026-10-06 20:00"
SECOND, SECOND_DUE = "2026-10-10 18:00", "2026-10-12 09:00"
OLD_RANGE, NEW_RANGE = "covers=steps(32, 60, 4,", "covers=steps(36, 64, 4,"


def played(folder, students, tell=lambda row: None):
    """Play the whole term.

    Parameters
    ----------
    folder : Path
        An empty one.
    students : int
    tell : callable, optional
        Called with each `Played` as it comes.

    Returns
    -------
    Term
        With its `rows`.
    """
    with ExitStack() as held:
        for module in ("desk", "new_class_panel", "care_panel"):
            held.enter_context(patch(f"coursework.desk.{module}.CLASSES", folder / "classes"))
        held.enter_context(patch.dict(os.environ, {"HOME": str(folder)}))
        term = Term(folder, students, tell)
        for part in (begin, hand_in, settle, decide_all, again, tables, newer_key, care):
            part(term)
    return term


def upload(name, raw):
    """A file as the browser hands it over."""
    return ({"name": name, "type": "", "size": len(raw), "content": raw,
             "last_modified": datetime.now(UTC)},)  # fmt: skip


def begin(term):
    """The class from a roster with a title row, its settings by forms, the set handed out."""
    lines = ["Brackwater House;;", "Student ID;Full name;Email"]
    lines += [f"{student};{name};x@example.org" for student, name in term.roster.items()]
    term.new.name.value, term.new.term.value = NAME, TERM
    term.new.roster.value = upload("roster.csv", "\r\n".join(lines).encode("cp1252"))
    term.press("roster with a title row", term.new, "Make the class")
    term.desk.sets.value = SET
    forms = term.form.forms
    forms.of_set["due"].value, forms.of_set["second_due"].value = DUE, SECOND_DUE
    term.press("due times", term.form, "Save for this set")
    forms.of_book["late_percent"].value, forms.of_book["second_attempt"].value = "10", "best"
    forms.of_book["pass_line"].value, forms.grades.value = "40", "A = 80; B = 60"
    forms.country.value = "DE"
    term.press("rules of the mark book", term.form, "Save for the class")
    forms.mark.value, forms.out_of.value, forms.weight.value = "knife skills", "20", "1"
    term.press("a practical mark", term.form, "Save the practical mark")
    term.press("hand out", term.steps, "Hand out")


def hand_in(term):
    """The platform's archive with everything that comes in life, and one mail attachment."""
    files = []
    for student in term.roster:
        if student in (term.ill, term.paper, term.sender):
            continue
        typed = student.lstrip("0") if student == term.lost else student
        when = LATE if student == term.late else SENT
        info, raw = term.as_sent(student, term.notebook(student, typed=typed), when)
        if student == term.lost:  # loose, so that only the number says whose it is
            info.filename = "04-buy-enough (3).ipynb"
        files.append((info, raw))
    files.append(term.as_sent(term.joiner, term.notebook(term.joiner), SENT))
    files.append(term.as_sent(term.ada, term.notebook(term.ada, OTHER_SET), SENT, "05.ipynb"))
    files.append(
        (zipfile.ZipInfo("Thumbs.db", (2026, 10, 4, 18, 0, 0)), b"\xd0\xcf\x11\xe0 thumbs")
    )
    broken = term.notebook(term.paper)[:300]
    files.append((zipfile.ZipInfo("broken.ipynb", (2026, 10, 4, 18, 0, 0)), broken))
    term.take_in("take in the platform's archive", term.downloaded("hand-ins.zip", files))
    attached = term.mail / "attached"
    attached.mkdir()
    (attached / "work.ipynb").write_bytes(term.notebook(term.sender))
    term.take_in("take in a mail attachment", attached)


def settle(term):
    """The inbox: what is sure is placed, what is nobody's is set aside; then marked."""
    term.press("inbox", term.box, "Show the inbox")
    term.press("inbox", term.box, "Tick all that are sure")
    term.press("inbox: place", term.box, "Place those ticked")
    for row in term.box.rows.children:
        row.tick.value = row.waiting.arrival.name.endswith(("Thumbs.db", "broken.ipynb"))
    term.box.why.value = "no hand-in"
    term.press("inbox: set aside", term.box, "Set those ticked aside")
    term.press("mark", term.steps, "Mark")
    shows = term.written.shows
    term.press("what waits", term.written, "Show what waits")
    shows.question.value = "q6"
    for remark in ("Say which scale.", ""):
        shows.points.value, shows.comment.value = "2,5", remark
        term.press("written answer, comma", term.written, "Enter the points, next")


def decide_all(term):
    """Everything that leaves the straight road, each a line in the journal."""
    term.decided("extension for one", "extension", term.late, time="2026-10-07 09:00", why="ill")
    term.decided("excused", "excused", term.ill, why="ill, with a note")
    term.decided("on paper", "on paper", term.paper, points="14,5", out_of="20", why="A neat card.")
    term.decided("handed in at", "handed in at", term.sender, term.file_of(term.sender),
                 time="2026-10-04 21:00", why="came by mail")  # fmt: skip
    term.decided("dropped question", "dropped question", question="q3", why="The text was wrong.")
    term.decided("accept this too", "accept this too", question="q1", step="2 kg")
    term.decided("points by hand", "points by hand", term.late, question="q2", points="1,5",
                 why="Right by another way.")  # fmt: skip
    term.decided("back to the machine", "back to the machine", term.ada, question="q6")
    term.press("journal", term.journal, "Show the journal")
    drop = next(number for words, number in term.journal.line.options if "dropped" in words)
    term.journal.line.value, term.journal.why.value = drop, "The text was right after all."
    term.press("take back", term.journal, "Take it back")


def again(term):
    """A second attempt, a late joiner, a new name, and a file that would displace another."""
    first = term.file_of(term.twice)
    files = [term.as_sent(term.twice, term.notebook(term.twice), SECOND)]
    term.take_in("second attempt", term.downloaded("second.zip", files))
    term.decided("this one counts", "this one counts", term.twice, first, why="The later by error.")
    forms = term.form.forms
    forms.number.value, forms.name.value = term.joiner, "Yara Holt"
    term.press("late joiner", term.form, "Add the student")
    term.take_in("late joiner's file", term.mail / "hand-ins.zip")
    forms.student.value, forms.name.value = term.ada, "Ada Quill-Thorne"
    term.press("rename", term.form, "Give this student the name above")
    loose = term.mail / "loose"
    loose.mkdir()
    (loose / "new.ipynb").write_bytes(term.notebook(term.claimed))
    term.take_in("a file that would displace a marked one", loose)
    term.press("inbox: which counts", term.box, "Show the inbox")
    row = term.box.waiting.children[0]
    row.counts.value = row.doubt.files[0].sha256
    term.press("inbox: which counts", term.box, "Let those chosen count")
    term.press("mark again", term.steps, "Mark")


def tables(term):
    """Practical marks typed and out of a table, then all that goes back and to the office."""
    term.press("practical marks", term.grid, "Show the grid")
    for nth, box in enumerate(term.grid.boxes.children[:5]):
        box.value = f"{12 + nth},5"
    term.press("practical marks", term.grid, "Enter the practical marks")
    table = "Student ID;Full name;knife skills\r\n" + "".join(
        f"{student.lstrip('0')};{name};15,5\r\n" for student, name in list(term.roster.items())[5:]
    )
    term.book.practical.value = upload("practical.csv", table.encode())
    term.press("practical marks, noughts lost", term.book, "Make the mark book")
    term.press("hand back", term.steps, "Hand back")
    term.press("hand back as one file", term.steps, "Hand back as one file")
    term.press("report: CSV and xlsx", term.steps, "Report")
    term.press("OneRoster", term.book, "Write the OneRoster files")
    term.one.shows.student.value = term.twice
    term.press("one student", term.one, "Show the student")


def newer_key(term):
    """The kit gets another range of drawn numbers: offered, looked at, taken, taken back."""
    keys = shutil.copytree(key_text.KEYS, term.folder / "keys")
    file = keys / f"{SET}.py"
    file.write_text(file.read_text("utf-8").replace(OLD_RANGE, NEW_RANGE), "utf-8")
    with patch.object(key_text, "KEYS", keys):
        term.press("newer kit: marking", term.steps, "Mark")
        term.press("newer kit: handing out", term.steps, "Hand out")
        term.decided("newer key taken", "newer key", why="to see it")
        term.press("newer key: mark", term.steps, "Mark")
        term.press("newer key taken back", term.journal, "Show the journal")
        term.journal.line.value = next(
            number for words, number in term.journal.line.options if "newer key" in words
        )
        term.press("newer key taken back", term.journal, "Take it back")
        term.press("first key again: mark", term.steps, "Mark")


def care(term):
    """A student packed and erased; the class archived, restored, and marked again."""
    term.care.student.value = term.erased
    term.press("export a student", term.care, "Pack a student's data")
    term.care.typed.value = term.erased
    term.press("erase a student", term.care, "Erase the student")
    term.press("back up", term.care, "Back up the class")
    folder = term.course.folder
    term.before = {one.relative_to(folder): one.read_bytes() for one in folder.rglob("*.json")}
    term.care.named.value = NAME
    term.press("archive", term.care, "Archive the class")
    backup = max(term.classes.glob(f"{name_for_files(NAME)}-*.zip"))
    term.care.lies.value = str(Path("classes") / backup.name)
    term.press("restore", term.care, "Restore a class")
    term.desk.sets.value = SET
    term.press("mark again after restoring", term.steps, "Mark")
