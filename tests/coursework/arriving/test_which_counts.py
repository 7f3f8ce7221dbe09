"""Whose a hand-in is, where another witness than the file itself is wanted. All is invented."""

import json

import pytest
from coursework.arriving.arrivals import hand_ins as hand_ins_of
from coursework.arriving.arrivals import names_of_files, read_list
from coursework.arriving.placing_by_hand import place_by_hand
from coursework.arriving.states import AGAIN, COUNTS, NOT_CHOSEN, NOT_PLACED, REPLACED, WAITS
from coursework.arriving.take_in import take_in
from coursework.arriving.taken_in_words import AT_THE_DESK, in_words
from coursework.classes.codes import codes_of, make_codes
from coursework.classes.course import new_course, open_course
from coursework.deciding import about_of, decide
from coursework.gradebook.points import prepare_set
from coursework.records.record_file import as_text
from coursework.sets.hand_out import ASSIGNMENTS, hand_out
from coursework.sets.keys import source

from kitchenmath.pages.form import Form
from kitchenmath.pages.writing import set_page
from tests.helpers.folders import EVENING, pack, put
from tests.helpers.hand_ins import SET, became, hand_in, make_course, submitted
from tests.helpers.records import record, verdict

ADA, BRAM = "BH-1001", "BH-1002"
ROSTER = {ADA: "Ada Quill", BRAM: "Bram Oakes"}
LATER = EVENING + 86_400
HERS, OTHER = hand_in(ADA, q1='q1 = "3 kg"'), hand_in(ADA, q1='q1 = "1 g"')


@pytest.fixture
def course(tmp_path):
    """Ada's hand-in is marked: 16 points, say."""
    made = make_course(tmp_path / "class", ROSTER)
    prepare_set(made, SET)
    take_in(made, put(tmp_path / "first", {"w.ipynb": HERS}), now=EVENING)
    file = made.marks(SET, ADA)
    file.parent.mkdir(parents=True)
    marked = record(ADA, verdict("q1"), sha256=read_list(made)[0].sha256)
    file.write_text(as_text(marked), encoding="utf-8")
    return made


def test_a_file_with_a_classmates_number_does_not_take_the_place_of_her_marks(course, tmp_path):
    """It used to: 16 points became 0, and the only word was "1 counts"."""
    taken = take_in(course, put(tmp_path / "post", {"x.ipynb": OTHER}))

    assert {"w.ipynb": COUNTS, "x.ipynb": WAITS} == became(course)
    assert HERS == submitted(course, ADA)
    assert ["w.ipynb"] == [one.name for one in hand_ins_of(course, SET)[ADA]]
    assert "1 file taken in: 1 waits for your word." in in_words(taken)
    assert "Only the file itself says that it is BH-1001's, and “w.ipynb” is marked" in in_words(
        taken
    )
    assert "python3 instructor counts" in in_words(taken)
    assert "until you say which one counts: below, in the inbox." in in_words(taken, AT_THE_DESK)
    assert "python3" not in in_words(taken, AT_THE_DESK)


@pytest.mark.parametrize(("named", "file"), [("x.ipynb", OTHER), ("w.ipynb", HERS)])
def test_what_waits_waits_until_a_person_says_which_counts(course, tmp_path, named, file):
    """Taking in again does not help it; either answer ends the waiting, and it can be revoked."""
    post = put(tmp_path / "post", {"x.ipynb": OTHER})
    for _ in range(2):
        take_in(course, post)
    typed = {"why": "asked her", "file": named, "student": ADA, "set": SET}
    said = decide(course, "this one counts", **about_of(course, "this one counts", typed))
    take_in(course, put(tmp_path / "more", {"y.ipynb": hand_in(ADA, q1="y")}))

    assert file == submitted(course, ADA)
    assert {named: COUNTS} == {name: one for name, one in became(course).items() if one == COUNTS}
    assert WAITS not in became(course).values()

    decide(course, "take back", line=said.number)
    assert {"w.ipynb": COUNTS, "x.ipynb": WAITS, "y.ipynb": WAITS} == became(course)


def test_of_two_files_with_one_name_the_time_says_which_counts(course, tmp_path):
    """The earlier is chosen: the other was not replaced by a later one, as it is the later one."""
    take_in(course, put(tmp_path / "post", {"w.ipynb": OTHER}), now=LATER)
    first, _ = read_list(course)
    decide(course, "this one counts", file=first.sha256, student=ADA, set_id=SET, why="asked her")
    first, second = read_list(course)

    assert (COUNTS, NOT_CHOSEN) == (first.became, second.became)
    assert f"You said that “w.ipynb”, handed in {first.came}, counts." == second.reason
    assert second.came not in ("", first.came)
    named = {first.sha256: f"w.ipynb ({first.came})", second.sha256: f"w.ipynb ({second.came})"}
    assert named == names_of_files(course)


def test_a_later_hand_in_under_the_students_own_name_counts_at_once(course, tmp_path):
    """The platform names the sender."""
    take_in(course, pack(tmp_path / "all.zip", {"Quill, Ada/x.ipynb": OTHER}, LATER))

    assert {"w.ipynb": REPLACED, "Quill, Ada/x.ipynb": COUNTS} == became(course)
    assert ADA == read_list(course)[1].sender


def test_a_file_under_another_students_name_has_no_place_until_a_person_says(course, tmp_path):
    """Also where nothing is marked yet: whoever handed in may have typed a wrong number."""
    files = {"Bram Oakes/x.ipynb": OTHER, "Ada Quill/b.ipynb": hand_in(BRAM)}
    taken = take_in(course, pack(tmp_path / "all.zip", files))

    assert {"w.ipynb": COUNTS, **dict.fromkeys(files, NOT_PLACED)} == became(course)
    words = "It came under the name of Bram Oakes (BH-1002), and it says BH-1001: say whose it is."
    assert words in in_words(taken)

    place_by_hand(course, "x.ipynb", BRAM, SET)
    assert OTHER == submitted(course, BRAM)
    assert HERS == submitted(course, ADA)


def test_a_classmates_very_file_under_ones_own_name_is_said(course, tmp_path):
    taken = take_in(course, pack(tmp_path / "all.zip", {"Bram Oakes/x.ipynb": HERS}))

    assert {"w.ipynb": COUNTS, "Bram Oakes/x.ipynb": AGAIN} == became(course)
    assert "Bram Oakes/x.ipynb: from BH-1002, and the very same file as BH-1001's." in in_words(
        taken
    )


def test_before_anything_is_marked_the_latest_counts(tmp_path):
    """As ever: a student hands in again without a second thought."""
    course = make_course(tmp_path / "class", ROSTER)
    take_in(course, put(tmp_path / "post", {"a.ipynb": HERS, "b.ipynb": OTHER}))

    assert {"a.ipynb": REPLACED, "b.ipynb": COUNTS} == became(course)


@pytest.fixture
def with_codes(tmp_path):
    """A class whose course file asks for codes, to which the set was handed out."""
    made = new_course(tmp_path / "class", "Class", "demo", ROSTER)
    file = made.folder / "course.toml"
    text = file.read_text("utf-8")
    assert "# student_codes = false" in text
    file.write_text(text.replace("# student_codes = false", "student_codes = true"), "utf-8")
    made = open_course(made.folder)
    hand_out(made, SET)
    return made


def coded(course, student, code, q1):
    """The notebook that was handed out with codes, filled in."""
    book = json.loads(course.release(SET).read_bytes())
    for cell in book["cells"]:
        if cell["id"] == "me":
            assert 'student = ""\ncode = ""' in source(cell)
            cell["source"] = f'student = "{student}"\ncode = "{code}"'
        if cell["id"] == "q1-answer":
            cell["source"] = f'q1 = "{q1}"'
    return json.dumps(book).encode()


def test_a_set_asks_for_the_code_and_a_wrong_one_is_said(with_codes, tmp_path):
    codes = codes_of(with_codes)
    wrong = codes[BRAM]
    files = {
        "a": coded(with_codes, ADA, codes[ADA].lower(), "3 kg"),
        "b": coded(with_codes, BRAM, codes[ADA], "2 kg"),
    }
    taken = take_in(with_codes, put(tmp_path / "post", files))
    cells = json.loads(with_codes.release(SET).read_bytes())["cells"]
    texts = {one["id"]: source(one) for one in cells}

    assert wrong != codes[ADA] and set(codes) == set(ROSTER)
    assert "**your code**" in texts["me-text"]
    assert {"a": COUNTS, "b": COUNTS} == became(with_codes)
    assert ["right", "wrong"] == [one.code for one in read_list(with_codes)]
    assert f"  b: {BRAM}, {SET}, the code is wrong." in in_words(taken)
    assert "  a: " not in in_words(taken)


def test_a_sets_page_asks_for_the_code_and_saves_it_for_taking_in(with_codes, tmp_path):
    """From the page's field through the saved file: a right code, a classmate's, and none."""
    form, codes = Form(with_codes.release(SET).read_bytes()), codes_of(with_codes)
    said = {"a": (ADA, f" {codes[ADA].lower()} "), "b": (BRAM, codes[ADA]), "c": (BRAM, "")}
    files = {
        name: form.filled({"student": student, "code": code, "q1": "3 kg"})
        for name, (student, code) in said.items()
    }
    taken = take_in(with_codes, put(tmp_path / "post", files))

    assert {"a": "right", "b": "wrong", "c": "missing"} == {
        one.name: one.code for one in read_list(with_codes)
    }
    assert f"  c: {BRAM}, {SET}, the code is missing." in in_words(taken)
    assert codes[ADA].lower() == Form(files["a"]).typed()["code"]
    assert ["empty", "there"] == [
        form.shown({"student": ADA, "code": code})["code"][0] for code in ("", codes[ADA])
    ]
    assert 'data-field="code"' in set_page(with_codes.release(SET).read_bytes(), version="")


def test_a_set_of_a_class_without_codes_asks_for_none():
    raw = (ASSIGNMENTS / SET / f"{SET}.ipynb").read_bytes()

    assert "code" not in Form(raw).typed()
    assert 'data-field="code"' not in set_page(raw, version="")


@pytest.mark.parametrize(("right", "expected"), [(True, COUNTS), (False, WAITS)])
def test_a_right_code_lets_a_later_one_count_and_a_wrong_one_does_not(
    with_codes, tmp_path, right, expected
):
    codes = codes_of(with_codes)
    take_in(with_codes, put(tmp_path / "one", {"a": coded(with_codes, ADA, codes[ADA], "3 kg")}))
    file = with_codes.marks(SET, ADA)
    file.parent.mkdir(parents=True)
    marked = record(ADA, verdict("q1"), sha256=read_list(with_codes)[0].sha256)
    file.write_text(as_text(marked), encoding="utf-8")
    code = codes[ADA if right else BRAM]
    take_in(with_codes, put(tmp_path / "two", {"b": coded(with_codes, ADA, code, "1 g")}))

    assert expected == became(with_codes)["b"]


def test_codes_are_kept_and_a_late_joiner_gets_one(with_codes):
    """Six signs, no two students the same, and none that is read for another."""
    before = codes_of(with_codes)
    with (with_codes.folder / "roster.csv").open("a", encoding="utf-8") as file:
        file.write("BH-1003,Cleo Marsh\n")
    more = open_course(with_codes.folder)
    make_codes(more)
    after = codes_of(more)

    assert before == {student: after[student] for student in ROSTER}
    assert 3 == len(set(after.values()))
    assert all(len(code) == 6 and not set(code) & set("AEIOU01") for code in after.values())


def test_without_the_line_in_the_course_file_nobody_is_asked(course):
    assert {} == codes_of(course)
    assert [""] == [one.code for one in read_list(course)]
    assert b"code = " not in course.release(SET).read_bytes()
