"""Forms for the class's file at the desk. The class is invented."""

import pytest
from coursework.classes.course import new_course
from coursework.desk import desk as desk_module
from coursework.desk.desk import Desk

from kitchenmath.conventions import Conventions, conventions_of
from tests.helpers.desk import press, words

SET = "04-buy-enough"


@pytest.fixture
def desk(tmp_path, monkeypatch):
    monkeypatch.setattr(desk_module, "CLASSES", tmp_path)
    new_course(tmp_path / "class", "Class", "demo", {"BH-1": "Ada Quill"})
    desk = Desk()
    desk.sets.value = SET
    return desk


def test_a_due_time_and_a_weight_are_saved_and_shown_again(desk):
    """With a decimal comma; another set shows its own."""
    panel = desk.class_file()
    boxes = panel.forms.of_set
    boxes["due"].value, boxes["weight"].value = "2026-10-05 09:00", "1,5"

    assert "The course file has them." in press(panel, "Save for this set")
    assert 1.5 == desk.course.policy.rule(SET).weight

    desk.sets.value = next(one for _, one in desk.sets.options if one != SET)

    assert ("", "1") == (boxes["due"].value, boxes["weight"].value)

    desk.sets.value = SET

    assert ("2026-10-05 09:00", "1.5") == (boxes["due"].value, boxes["weight"].value)


def test_an_odd_time_is_named_and_stays_in_its_box(desk):
    panel = desk.class_file()
    panel.forms.of_set["due"].value = "5.10.2026"

    assert "due: write a date" in press(panel, "Save for this set")
    assert "5.10.2026" == panel.forms.of_set["due"].value


def test_the_rules_of_the_mark_book_are_saved(desk):
    panel = desk.class_file()
    boxes = panel.forms.of_book
    boxes["late_percent"].value, boxes["second_attempt"].value = "10", "best"
    boxes["wait_for_open_marks"].value, panel.forms.country.value = "yes", "de"
    press(panel, "Save for the class")
    policy = desk.course.policy

    assert (10, "best", True) == (policy.late_percent, policy.second_attempt,
                                  policy.wait_for_open_marks)  # fmt: skip
    assert ("DE", "DE") == (desk.course.country, panel.forms.country.value)


def test_a_pass_line_and_grades_are_saved_shown_again_and_taken_out(desk):
    """Sorted by their lines; a grade with a comma in its name stays whole."""
    panel = desk.class_file()
    forms = panel.forms
    forms.of_book["pass_line"].value, forms.grades.value = "40", "2,0 = 65; 1,3 = 80,5"
    press(panel, "Save for the class")

    assert (40, {"1,3": 80.5, "2,0": 65}) == (desk.course.policy.pass_line,
                                               desk.course.policy.grades)  # fmt: skip
    assert "1,3 = 80.5; 2,0 = 65" == forms.grades.value

    forms.grades.value = "A 80"

    assert "type each once, with the percent" in press(panel, "Save for the class")

    forms.grades.value = forms.of_book["pass_line"].value = ""
    press(panel, "Save for the class")

    assert (None, {}) == (desk.course.policy.pass_line, desk.course.policy.grades)


def test_a_wrong_country_leaves_every_line_as_it_was(desk):
    """The rules of the mark book stand in the same form: all of it is saved, or nothing."""
    before = (desk.course.folder / "course.toml").read_bytes()
    panel = desk.class_file()
    panel.forms.of_book["late_percent"].value, panel.forms.country.value = "10", "Brackwater"

    assert "country: write the two letters" in press(panel, "Save for the class")
    assert before == (desk.course.folder / "course.toml").read_bytes()


def test_who_joins_stands_in_every_list_of_students_at_once(desk):
    """And a student who is chosen there stays chosen."""
    form, care, student = desk.class_file(), desk.care(), desk.student()
    care.student.value = "BH-1"
    form.forms.number.value, form.forms.name.value = "BH-2", "Zoë Ferny"
    press(form, "Add the student")
    lists = (care.student, student.shows.student, student.shows.decide.student)

    assert all(("Zoë Ferny (BH-2)", "BH-2") in one.options for one in lists)
    assert "BH-1" == care.student.value


def test_a_practical_mark_is_added_and_taken_out(desk):
    panel = desk.class_file()
    forms = panel.forms
    forms.mark.value, forms.out_of.value, forms.weight.value = "knife skills", "20", "2"
    press(panel, "Save the practical mark")

    assert 20 == desk.course.policy.practical["knife skills"].out_of
    assert "There are: knife skills." in press(panel, "Take the practical mark out")

    forms.mark.value = "knife skills"
    press(panel, "Take the practical mark out")

    assert {} == desk.course.policy.practical


def test_a_late_joiner_is_added_and_renamed(desk):
    panel = desk.class_file()
    forms = panel.forms
    forms.number.value, forms.name.value = "BH-2", "Zoë Ferny"

    assert "Zoë Ferny is on the roster." in press(panel, "Add the student")
    assert "Choose the student" in press(panel, "Give this student the name above")

    forms.student.value, forms.name.value = "BH-2", "Zoë Pike"
    press(panel, "Give this student the name above")

    assert {"BH-1": "Ada Quill", "BH-2": "Zoë Pike"} == desk.course.roster

    forms.student.value = "BH-2"
    press(panel, "Take off the roster")

    assert {"BH-1": "Ada Quill"} == desk.course.roster


def test_the_colleges_conventions_are_saved_shown_again_and_taken_out(desk):
    """Every comment of the file stays; what is not said is the country's own."""
    panel = desk.class_file()
    boxes, file = panel.college.boxes, desk.course.folder / "course.toml"
    before = [line for line in file.read_text("utf-8").splitlines() if line.startswith("#")]
    typed = {"country": "UK", "currency": "euro", "brunoise_mm": "2,5", "units_first": "us",
             "food_code": "FDA Food Code", "oven": "fan", "tax": "out",
             "tax_percent": "8,5"}  # fmt: skip
    for name, value in typed.items():
        boxes[name].value = value

    assert "The course file has them." in press(panel, "Save the conventions")
    assert (
        Conventions("UK", "euro", 2.5, "FDA Food Code", "us", "fan", "out", 8.5)
        == desk.course.college
    )
    assert before == [line for line in file.read_text("utf-8").splitlines() if line.startswith("#")]
    assert ("2.5", "8.5") == (boxes["brunoise_mm"].value, boxes["tax_percent"].value)
    assert "a brunoise of 2.5 mm" in words(panel.college.holds)

    for name in typed.keys() - {"country"}:
        boxes[name].value = ""
    press(panel, "Save the conventions")

    assert conventions_of("UK") == desk.course.college


@pytest.mark.parametrize(
    ("name", "value", "sentence"),
    [
        ("brunoise_mm", "9", "[college], brunoise_mm"),
        ("brunoise_mm", "small", "[college], brunoise_mm: needs a number above 0"),
        ("tax_percent", "120", "[college], tax_percent: needs a number from 0 to 100"),
        ("tax", "in", "[college], tax_percent: needs to be"),
    ],
)
def test_a_wrong_convention_is_named_and_changes_nothing(desk, name, value, sentence):
    """The good line beside it is not written either, and both stay in their boxes."""
    panel = desk.class_file()
    before = (desk.course.folder / "course.toml").read_bytes()
    panel.college.boxes["oven"].value, panel.college.boxes[name].value = "gas", value

    assert sentence in press(panel, "Save the conventions")
    assert before == (desk.course.folder / "course.toml").read_bytes()
    assert ("gas", value) == (panel.college.boxes["oven"].value, panel.college.boxes[name].value)


def test_a_set_that_went_out_keeps_its_numbers_and_the_desk_says_so(desk):
    release = desk.course.release(SET)
    release.parent.mkdir(parents=True)
    release.write_text("{}", encoding="utf-8")
    panel = desk.class_file()
    panel.college.boxes["country"].value = "UK"

    assert "Handed out already: “4. Buy enough”" in press(panel, "Save the conventions")
