"""The desk without a kernel: press a button, read the sentence."""

import re
import shutil
from datetime import UTC, datetime

import pytest
from coursework.classes.course import new_course
from coursework.desk import care_panel, new_class_panel, steps_panel
from coursework.desk import desk as desk_module
from coursework.desk.desk import Desk
from coursework.desk.showing import KIT, told
from coursework.gradebook.points import human_marks
from coursework.marking.mark_set import mark_set

from tests.helpers.desk import press, words


@pytest.fixture(scope="module")
def classes(tmp_path_factory):
    return tmp_path_factory.mktemp("classes")


@pytest.fixture
def desk(classes, monkeypatch):
    monkeypatch.setattr(desk_module, "CLASSES", classes)
    monkeypatch.setattr(new_class_panel, "CLASSES", classes)
    monkeypatch.setattr(care_panel, "CLASSES", classes)
    monkeypatch.setattr("coursework.demo.CLASSES", classes)
    shown = Desk()
    shown.sets.value = "05-season-and-brine" if not list(classes.iterdir()) else "04-buy-enough"
    return shown


def with_demonstration(desk):
    """The desk with the demonstration class chosen, played by whichever test comes first."""
    if not (desk_module.CLASSES / "demo").is_dir():
        press(desk.new(), "Play the demonstration class")
    desk.list_classes(desk_module.CLASSES / "demo")


def test_without_a_class_every_button_says_what_to_do_first(desk):
    """No traceback on the desk."""
    assert "There is no class yet" in words(desk.state)
    for name in ("Hand out", "Take in", "Mark", "Hand back", "Report"):
        said = press(desk.steps(), name)
        assert "Not done." in said and ("no class" in said or "Say where the hand-ins are" in said)


def test_a_folder_is_named_as_seen_from_home(desk, tmp_path, monkeypatch):
    """ "Downloads/hand-ins", as the box suggests; the kernel itself stands in the kit's folder."""
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    steps = desk.steps()
    steps.place.value = "Downloads/hand-ins"
    monkeypatch.setattr(Desk, "course", property(lambda self: None))
    seen = []
    monkeypatch.setattr(
        steps_panel, "take_in", lambda course, places, progress: seen.extend(places)
    )
    press(steps, "Take in")

    assert seen == [tmp_path / "Downloads" / "hand-ins"]


def test_a_class_needs_its_roster(desk):
    """And says so."""
    assert "Choose the roster first" in press(desk.new(), "Make the class")


def test_the_demonstration_class_goes_through_all_steps(desk):
    """Play, mark, look, mark what is written, hand back, report."""
    assert "has handed in set 04-buy-enough" in press(desk.new(), "Play the demonstration class")
    assert desk.sets.value == "04-buy-enough"
    assert "24 handed in, 0 marked" in words(desk.state)
    steps = desk.steps()
    assert "24 hand-ins are marked" in press(steps, "Mark")
    assert "24 handed in, 24 marked" in words(desk.state)

    written = desk.written()
    waiting = int(re.search(r"(\d+) answers wait", press(written, "Show what waits"))[1])
    shows = written.shows
    one = shows.reading.now
    for typed, came in [("", "nothing came"), ("two", "“two” is no number"), ("9", "9.0 came")]:
        shows.points.value = typed
        assert came in press(written, "Enter the points, next")
    shows.points.value, shows.comment.value = "2,5", "Say which scale."
    said = press(written, "Enter the points, next")
    assert "2.5 of 4." in said and f"{waiting - 1} answers wait" in said
    marks = human_marks(desk.course, "04-buy-enough")
    assert marks[one.student, one.question] == (2.5, "Say which scale.")

    assert "24 pages" in press(steps, "Hand back")
    assert "Mark sheet" in press(steps, "Report")
    picture = desk.picture()
    press(picture, "Show the class")
    assert "sandbox" in picture.children[-1].value


def test_a_file_that_was_written_can_be_clicked():
    """Below the kit's folder, with signs that an address and HTML would misread."""
    file = KIT / "instructor" / "classes" / "Küche & <b> 100%" / "reports" / "04.csv"

    assert told(f"Mark sheet: {file}\nelse").count("<a ") == 1
    assert (
        '<a href="/files/instructor/classes/K%C3%BCche%20%26%20%3Cb%3E%20100%25/reports/04.csv" '
        'target="_blank" style="text-decoration:underline">'
        "reports/04.csv</a>"
    ) in told(f"Mark sheet: {file}")


def test_a_folder_on_the_line_before_stays_out_of_the_link():
    """As "Hand back" says it: the folder, then the first page."""
    classes = KIT / "instructor" / "classes"
    html_ = told(f"24 pages are in {classes}\nThe first: {classes / 'one.html'}")

    assert "in instructor/classes<br>The first: <a " in html_
    assert 'href="/files/instructor/classes/one.html"' in html_


def test_a_file_elsewhere_is_said_and_not_linked():
    assert "<a " not in told("Mark sheet: /elsewhere/reports/04.csv")


def test_the_desk_opens_on_the_class_used_last(desk, classes, tmp_path):
    """Not on the first of the alphabet."""
    roster = {"BH-1": "Ada Quill"}
    first = new_course(classes / "a-class", "First", "demo", roster).folder
    last = new_course(classes / "z-class", "Last", "demo", roster).folder
    desk.list_classes(first)
    desk.list_classes(last)

    assert str(last) == Desk().classes.value


def test_a_class_is_called_by_its_own_name_and_not_by_its_folders(desk, classes):
    """A slash stands in no folder's name; a restored one of the same name says its folder too."""
    roster = {"BH-1": "Ada Quill"}
    for folder in ("2026-27 Fruehjahr", "copy"):
        new_course(classes / folder, "2026/27 Frühjahr", "demo", roster)
    odd = new_course(classes / "odd", "Odd", "demo", roster)
    (odd.folder / "course.toml").write_text("name = ", encoding="utf-8")
    desk.list_classes(classes / "copy")
    names = [name for name, _ in desk.classes.options]

    assert {"2026/27 Frühjahr (2026-27 Fruehjahr)", "2026/27 Frühjahr (copy)", "odd"} <= {*names}
    assert sorted(names, key=str.casefold) == names

    shutil.rmtree(classes / "copy")
    desk.list_classes(classes / "2026-27 Fruehjahr")
    steps = desk.steps()

    assert "2026/27 Frühjahr" == desk.classes.label
    assert press(steps, "Take in").strip().startswith("2026/27 Frühjahr, set “")


def test_a_message_goes_when_it_is_about_another_set(desk):
    """It names class and set while it stands."""
    steps = desk.steps()
    press(steps, "Take in")
    row = next(step for step in steps.children if getattr(step, "name", "") == "Take in")

    assert "set “" in words(row.words)

    desk.sets.value = next(one for _, one in desk.sets.options if one != desk.sets.value)

    assert "" == words(row.words)


def test_while_one_button_works_all_others_rest(desk):
    """And afterwards they are ready again."""
    seen = []
    mine = desk.step("Mine", lambda progress: seen.append([one.button.disabled for one in rest]))
    rest = [desk.step("Another", lambda progress: ""), mine]
    mine.button.click()

    assert [[True, True]] == seen
    assert [False, False] == [one.button.disabled for one in rest]


def test_a_student_is_erased_only_when_their_number_is_typed_again(desk):
    """The box is empty after every click, so that nothing stays armed."""
    with_demonstration(desk)
    care = desk.care()
    care.student.value = "BH-1024"
    for typed in ("", "BH-1023"):
        care.typed.value = typed
        assert "type the same student number" in press(care, "Erase the student")
        assert "" == care.typed.value
    care.typed.value = "BH-1024"

    assert "(BH-1024) is erased" in press(care, "Erase the student")
    assert "BH-1024" not in desk.course.roster
    assert "BH-1024" not in [number for _, number in care.student.options]


def test_a_class_is_backed_up_and_its_file_can_be_clicked(desk):
    with_demonstration(desk)

    assert re.search(r"demo-\d{4}-\d\d-\d\d-\d{6}\.zip", press(desk.care(), "Back up the class"))


def test_a_decision_is_entered_shown_and_taken_back(desk):
    """Excused, then taken back in the journal; the boxes are empty after each click."""
    with_demonstration(desk)
    desk.sets.value = "04-buy-enough"
    panel, journal = desk.decide(), desk.journal()
    panel.kind.value, panel.student.value = "excused", "BH-1002"
    panel.why.value = "was ill"
    number = int(re.search(r"Decision (\d+)", press(panel, "Decide"))[1])

    assert "" == panel.why.value

    assert re.search(r": \d+ decisions?\.", press(journal, "Show the journal"))
    assert "excused: 4. Buy enough" in words(journal.list) and "“was ill”" in words(journal.list)
    assert "choose the decision" in press(journal, "Take it back")

    journal.line.value, journal.why.value = number, "It was another day."

    assert "“was ill”" in words(journal.whole)  # the list cuts it at a narrow page's edge
    assert f"Decision {number} is taken back." in press(journal, "Take it back")
    assert ("", None, "") == (journal.why.value, journal.line.value, journal.whole.value)
    assert number not in [one for _, one in journal.line.options]


def test_a_student_is_seen_whole_and_decided_about_in_one_place(desk):
    """Choosing another student takes the one before out of view."""
    with_demonstration(desk)
    desk.sets.value = "04-buy-enough"
    panel = desk.student()
    shows = panel.shows
    shows.student.value = "BH-1003"
    press(panel, "Show the student")

    assert "Chidi Morrow" in shows.shown.value and "Excused" not in shows.shown.value
    assert "BH-1003" == shows.decide.student.value

    shows.decide.kind.value = "excused"
    press(shows.decide, "Decide")

    assert "Excused: it counts nowhere." in shows.shown.value

    shows.file.value = shows.file.options[1][1]

    assert "download=" in shows.seen.value

    shows.student.value = "BH-1004"

    assert ("", "") == (shows.shown.value, shows.seen.value)


def test_what_changes_marks_for_many_must_be_looked_at_first(desk):
    """And for just what then stands in the boxes."""
    with_demonstration(desk)
    desk.sets.value = "04-buy-enough"
    mark_set(desk.course, "04-buy-enough")
    panel = desk.decide()
    panel.kind.value, panel.boxes["question"].value = "full marks", "q2"

    assert "Look first whose marks change" in press(panel, "Decide")
    assert "q2" in press(panel, "Look whose marks change")

    panel.boxes["question"].value = "q3"

    assert "Look first whose marks change" in press(panel, "Decide")


def test_only_the_boxes_of_a_decision_are_shown(desk):
    with_demonstration(desk)
    panel = desk.decide()
    panel.kind.value = "extension"

    assert {"time"} == {name for name, box in panel.boxes.items() if box.layout.display != "none"}
    assert (None, "none") == (panel.student.layout.display, panel.file.layout.display)


def test_a_class_may_be_called_by_any_letters_and_a_slash(tmp_path, monkeypatch):
    """Its folder has a name that every system takes; the class keeps its own."""
    monkeypatch.setattr(desk_module, "CLASSES", tmp_path)
    monkeypatch.setattr(new_class_panel, "CLASSES", tmp_path)
    desk = Desk()
    panel = desk.new()
    panel.name.value, panel.term.value = "Köche 2026/27", "Frühjahr 2026/27"
    raw = "student_number,name\nBH-1,Zoë Čapek\n".encode()
    panel.roster.value = ({"name": "r.csv", "type": "", "size": len(raw), "content": raw,
                           "last_modified": datetime(2026, 9, 1, tzinfo=UTC)},)  # fmt: skip

    assert "The class has 1 student." in press(panel, "Make the class")
    assert ("Köche 2026-27", "Köche 2026/27") == (desk.course.folder.name, desk.course.name)
    assert "term Frühjahr 2026/27" in words(desk.state)
