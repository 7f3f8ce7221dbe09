"""The demonstration class, end to end, and what happens when a step is out of order."""

import csv
import hashlib
import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from coursework.arriving.take_in import take_in
from coursework.arriving.taken_in_words import in_words
from coursework.care.archive import back_up, restore
from coursework.classes.course import new_course
from coursework.command import chosen, main
from coursework.demo import ROSTER, SET, play
from coursework.errors import CourseError
from coursework.gradebook.points import enter_human, human_marks
from coursework.marking.mark_set import mark_set
from coursework.records.copies import with_copies
from coursework.records.reading import usable_records
from coursework.reports.hand_back import hand_back
from coursework.reports.in_lines import table
from coursework.reports.report import report
from coursework.sets.hand_out import hand_out


@pytest.fixture(scope="module")
def played(tmp_path_factory):
    """A class that was played through once; tests read it and copy it before they change it."""
    course, places = play(tmp_path_factory.mktemp("class") / "kit à la crème (1)")
    taken = take_in(course, places)
    mark_set(course, SET)
    return course, places, taken, usable_records(course, SET)[0]


def again(played, tmp_path):
    """A copy of the played class, free to be changed."""
    from coursework.classes.course import open_course

    shutil.copytree(played[0].folder, tmp_path / "class")
    return open_course(tmp_path / "class")


def sheet_bytes(course):
    return report(course, SET)[0].read_bytes()


def test_all_24_are_marked_and_what_cannot_be_placed_is_listed(played):
    """24 hand-ins count; no number, unknown number, broken file and a list are not placed."""
    _, _, taken, records = played

    assert list(ROSTER) == [found.student for found in records]
    said = in_words(taken)
    assert "24 count" in said and "4 not placed" in said and "1 replaced by a later one" in said
    for name in ("cousin.ipynb", "no name.ipynb", "broken.ipynb", "shopping list.txt"):
        assert name in said


def test_a_first_marking_replaces_nothing(played):
    """Nothing is kept aside but the gradebook as it was before the run."""
    assert [Path("gradebook")] == [
        path.relative_to(played[0].folder / "kept")
        for path in (played[0].folder / "kept").iterdir()
    ]


def test_nbgraders_page_knows_the_students_by_name(played):
    """It shows a name only where both parts are there."""
    from nbgrader.api import Gradebook

    with Gradebook(played[0].gradebook) as gradebook:
        student = gradebook.find_student("BH-1019")
        assert (student.first_name, student.last_name) == ("Søren", "Kelp")


def test_every_way_of_answering_occurs(played):
    """Right, rounded and in other units; slips, follow-through, blank and noise."""
    verdicts = [verdict for found in played[3] for verdict in found.answered]
    outcomes = {verdict.outcome for verdict in verdicts}

    assert {"right", "slip", "wrong", "missing", "follow-through"} <= outcomes
    assert any(" lb" in v.answer and v.outcome == "right" for v in verdicts)


def test_a_right_answer_as_played_is_never_refused(played):
    """Those who answered everything right, rounded or in other units have all 16 points."""
    full = [f for f in played[3] if all(v.outcome == "right" for v in f.answered)]

    assert all(sum(v.points for v in found.answered) == 16 for found in full)
    assert full


def test_the_copy_is_named_with_both_students(played):
    """The copier's numbers are other ones, so the answers are wrong too."""
    records = with_copies(played[3])
    copied = {found.student: found.copied for found in records if found.copied}

    assert {"BH-1004", "BH-1019"} == set(copied)
    assert copied["BH-1004"][0].student == "BH-1019"


def test_the_same_seed_gives_the_same_marks_byte_for_byte(played, tmp_path):
    """And another seed gives others."""
    sheets = {}
    for name, seed in (("same", 1), ("other", 2)):
        course, places = play(tmp_path / name, seed)
        take_in(course, places)
        mark_set(course, SET)
        sheets[name] = sheet_bytes(course)

    assert sheets["same"] == sheet_bytes(played[0])
    assert sheets["other"] != sheets["same"]


def test_marking_again_changes_nothing_and_runs_nothing(played, tmp_path):
    """The second run finds every task done; the room is not entered."""
    course = again(played, tmp_path)
    before = sheet_bytes(course)
    marked = mark_set(course, SET, executor=NothingRuns())

    assert before == sheet_bytes(course)
    assert (24, 0, []) == (len(marked.students), marked.run, marked.changes)


class NothingRuns:
    """An executor in which nothing may be run."""

    def submit(self, *_):
        raise AssertionError("a hand-in was run again")


def test_taking_in_twice_changes_nothing(played, tmp_path):
    """Every file is known already."""
    course = again(played, tmp_path)
    before = tree(course.folder / "submitted")
    take_in(course, played[1])

    assert before == tree(course.folder / "submitted")


def tree(folder):
    return {
        str(file.relative_to(folder)): hashlib.sha256(file.read_bytes()).hexdigest()
        for file in sorted(folder.rglob("*"))
        if file.is_file()
    }


def test_originals_are_kept_unchanged_under_their_digest(played):
    """Every file that arrived lies in `arrived`, byte for byte."""
    kept = {
        hashlib.sha256(file.read_bytes()).hexdigest()
        for file in played[0].arrived.rglob("*")
        if file.is_file()
    }
    folder, archive = played[1]
    import zipfile

    with zipfile.ZipFile(archive) as zipped:
        came = [zipped.read(name) for name in zipped.namelist()]
    came += [file.read_bytes() for file in folder.rglob("*") if file.is_file()]

    assert {hashlib.sha256(raw).hexdigest() for raw in came} <= kept


def test_a_human_mark_is_entered_kept_and_handed_back(played, tmp_path):
    """3.5 of 4 for q6, with a word; marking again leaves it; the page shows it."""
    course = again(played, tmp_path)
    student = next(f.student for f in played[3] if f.written[0].answer)
    assert human_marks(course, SET)[student, "q6"] == (None, "")
    enter_human(course, SET, student, "q6", 3.5, "Good reasons, <b>both</b>.")
    mark_set(course, SET)
    hand_back(course, SET)
    page = course.feedback(SET, student).read_text(encoding="utf-8")

    assert human_marks(course, SET)[student, "q6"] == (3.5, "Good reasons, <b>both</b>.")
    assert "3.5" in page and "Good reasons, &lt;b&gt;both&lt;/b&gt;." in page


def test_a_human_may_overrule_the_machine(played, tmp_path):
    """Points given in nbgrader's own page for a checked answer come first, and stay."""
    from nbgrader.api import Gradebook

    course = again(played, tmp_path)
    with Gradebook(course.gradebook) as gradebook:
        gradebook.find_grade("q1-check", SET, SET, "BH-1001").manual_score = 1.5
        gradebook.db.commit()
    mark_set(course, SET)

    assert human_marks(course, SET)["BH-1001", "q1"] == (1.5, "")
    assert b"BH-1001,Ada Quill,1.5" in sheet_bytes(course)


def test_points_that_cannot_be_are_refused(played, tmp_path):
    """More than there are, fewer than none, or for nobody."""
    course = again(played, tmp_path)
    for points in (4.5, -1, float("nan")):
        with pytest.raises(CourseError, match="0 to 4 are possible"):
            enter_human(course, SET, "BH-1001", "q6", points)
    with pytest.raises(CourseError, match="BH-9999 has no answer"):
        enter_human(course, SET, "BH-9999", "q6", 1)


def test_a_run_that_was_killed_half_way_ends_with_the_same_marks(played, tmp_path):
    """A child marks the class and is killed as soon as some records lie there; then once more."""
    course = again(played, tmp_path)
    expected = sheet_bytes(course)
    for place in ("marks", "autograded", "feedback", "reports"):
        shutil.rmtree(course.folder / place, ignore_errors=True)
    code = (
        "import sys; from coursework.classes.course import open_course; "
        "from coursework.marking.mark_set import mark_set; "
        f"mark_set(open_course(sys.argv[1]), {SET!r})"
    )
    child = subprocess.Popen([sys.executable, "-c", code, str(course.folder)], env=environment())
    try:
        wait_for(lambda: len(list((course.folder / "marks" / SET).glob("*.json"))) >= 5)
    finally:
        pool = children_of(child.pid)
        child.kill()
        child.wait()
    mark_set(course, SET)
    wait_for(lambda: not any(Path(f"/proc/{number}").exists() for number in pool))

    assert expected == sheet_bytes(course)


def children_of(number):
    """Process numbers of the children, where the system tells (Linux)."""
    file = Path(f"/proc/{number}/task/{number}/children")
    return file.read_text().split() if file.is_file() else []


def environment():
    instructor = Path(__file__).parents[2] / "instructor"
    return os.environ | {"PYTHONPATH": f"{instructor.parent}{os.pathsep}{instructor}"}


def wait_for(come, seconds=60):
    import time

    end = time.monotonic() + seconds
    while not come() and time.monotonic() < end:
        time.sleep(0.05)
    assert come(), "what was waited for did not come"


def test_nbgrader_itself_gives_the_same_points(played, tmp_path):
    """The yardstick: `nbgrader autograde` on three honest hand-ins, cell by cell."""
    course = again(played, tmp_path)
    three = ("BH-1001", "BH-1007", "BH-1021")
    ours = {
        (found.student, verdict.question): verdict.points
        for found in usable_records(course, SET)[0]
        if found.student in three
        for verdict in found.answered
    }
    for folder in (course.folder / "submitted").iterdir():
        if folder.name not in three:
            shutil.rmtree(folder)
    shutil.rmtree(course.folder / "autograded")
    hand_out(course, SET)  # writes nbgrader's settings for the copied folder
    run = subprocess.run(
        [sys.executable, "-m", "nbgrader", "autograde", SET, "--create"],
        cwd=course.folder, env=environment(), capture_output=True, text=True,
    )  # fmt: skip
    assert run.returncode == 0, run.stderr
    from nbgrader.api import Gradebook

    with Gradebook(course.gradebook) as gradebook:
        theirs = {
            (student, question): gradebook.find_grade(
                f"{question}-check", SET, SET, student
            ).auto_score
            for student, question in ours
        }

    assert theirs == ours


@pytest.mark.parametrize(
    ("words", "step"),
    [
        ("was not handed out", lambda course: mark_set(course, SET)),
        ("is marked yet", lambda course: usable_records(course, SET)),
        ("there is no set", lambda course: hand_out(course, "99-nothing")),
    ],
)
def test_a_step_out_of_order_says_what_comes_first(tmp_path, words, step):
    """Nothing is done, and the sentence says what to do."""
    course = new_course(tmp_path / "class", "Class", "demo", ROSTER)
    with pytest.raises(CourseError, match=words):
        step(course)


def test_marking_before_anything_came_in_says_so(tmp_path):
    """Handed out, nothing taken in."""
    course = new_course(tmp_path / "class", "Class", "demo", ROSTER)
    hand_out(course, SET)
    with pytest.raises(CourseError, match="take hand-ins in first"):
        mark_set(course, SET)


def test_the_command_line_says_what_went_wrong_in_one_sentence(capsys, tmp_path):
    """No traceback, exit code 1."""
    assert main(["mark", SET, "--class", str(tmp_path)]) == 1
    assert "holds no class" in capsys.readouterr().err


def test_a_class_is_made_from_a_roster_on_the_command_line(tmp_path, capsys):
    """Then the set is handed out, all by commands."""
    roster = tmp_path / "roster.csv"
    roster.write_text("student_number;name\nbh-1;Zoë\nBH-2;Søren\n", encoding="utf-8")
    folder = str(tmp_path / "my class")

    made = main(["new-class", folder, "--roster", str(roster), "--term", "autumn-26"])
    out = main(["hand-out", SET, "--class", folder])

    assert (made, out) == (0, 0)
    assert "2 students" in capsys.readouterr().out
    released = Path(folder) / "release" / SET / f"{SET}.ipynb"
    assert json.loads(released.read_text(encoding="utf-8"))["metadata"]["kitchen"]["term"] == (
        "autumn-26"
    )


def test_a_class_on_the_command_line_may_have_a_slash_in_its_name(tmp_path, monkeypatch):
    """It is made and found by its own name; a class that is backed up is restored by such a one."""
    classes, roster = tmp_path / "classes", tmp_path / "roster.csv"
    monkeypatch.setattr("coursework.command.CLASSES", classes)
    roster.write_text("student_number,name\nBH-1,Zoë\n", encoding="utf-8")
    made = main(["new-class", "Köche 2026/27", "--roster", str(roster), "--term", "2026/27"])
    course = chosen(Path("Köche 2026/27"))

    assert 0 == made
    assert ("Köche 2026/27", classes / "Köche 2026-27") == (course.name, course.folder)

    again = restore(back_up(course, tmp_path), "Köche 2027/28", classes)

    assert classes / "Köche 2027-28" == again.folder


def test_classes_are_asked_for_and_found_by_their_own_names(tmp_path, monkeypatch):
    """A restored class has another folder, and is found by the name that stands in its file."""
    monkeypatch.setattr("coursework.command.CLASSES", tmp_path)
    new_course(tmp_path / "restored", "Köche 2026/27", "demo", ROSTER)
    new_course(tmp_path / "bakers", "Bakers", "demo", ROSTER)

    assert tmp_path / "restored" == chosen(Path("Köche 2026/27")).folder
    assert tmp_path / "bakers" == chosen(Path("bakers")).folder
    with pytest.raises(CourseError, match="There are: “Bakers”, “Köche 2026/27”"):
        chosen(None)


def test_a_table_lines_up():
    """Numbers to the right, words to the left."""
    lines = table([["name", "points"], ["Ada", "3"], ["Bram", "12"]]).splitlines()

    assert lines == ["name  points", "----  ------", "Ada        3", "Bram      12"]


def test_the_mark_sheet_opens_in_a_spreadsheet(played, tmp_path):
    """UTF-8 with its mark, 24 lines below the head, blank where a human mark is open."""
    raw = sheet_bytes(again(played, tmp_path))
    rows = list(csv.DictReader(raw.decode("utf-8-sig").splitlines()))

    assert raw.startswith(b"\xef\xbb\xbf")
    assert len(rows) == 24
    assert {row["q6 of 4"] for row in rows} == {"", "0"}


def test_a_reader_who_stops_reading_gets_a_sentence_and_not_a_traceback(tmp_path):
    """As `... | head -1` does. What was not done is not reported as done."""
    code = "import sys; from coursework.command import main; sys.exit(main(sys.argv[1:]))"
    reading, writing = os.pipe()
    os.close(reading)
    run = subprocess.run(
        [sys.executable, "-c", code, "demo", "--folder", str(tmp_path / "class")],
        stdout=writing,
        stderr=subprocess.PIPE,
        text=True,
        env=environment() | {"PYTHONUNBUFFERED": "1"},
    )
    os.close(writing)

    assert run.returncode == 1
    assert run.stderr == "Nobody reads what it says, so it stopped. Type it again to go on.\n"
