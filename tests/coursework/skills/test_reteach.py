"""The re-teach sheet: fresh numbers, no key, and a notebook that runs. All people are invented."""

import ast
import contextlib
import copy
import io
import json
import math
import re
from itertools import product

import nbformat
import pytest
from coursework.arriving.reading_in import read_notebook
from coursework.arriving.whose import set_of, student_of
from coursework.classes.course import new_course
from coursework.command import main
from coursework.desk import desk as desk_module
from coursework.desk.desk import Desk
from coursework.errors import CourseError
from coursework.marking.mark_one import _answered
from coursework.records.points import heading_of
from coursework.records.record_file import as_text
from coursework.sets import keys as keys_module
from coursework.sets.hand_out import hand_out
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key
from coursework.skills import reteach as reteach_module
from coursework.skills.fresh import fresh_question
from coursework.skills.reteach import for_everybody, reteach
from coursework.skills.skill_table import skill_table

from kitchenmath import Q_
from kitchenmath.practice import Question, beside, given, in_words
from kitchenmath.practice.practice_sheet import open_practice
from kitchenmath.units.reading import read
from kitchenmath.units.saying import say
from tests.helpers.desk import press, words
from tests.helpers.records import record

SET, TERM = "04-buy-enough", "autumn 26"
ROSTER = {"BH-1": "Ada *Quill*", "BH-2": "Bram <b>Oakes", "BH-3": "Chidi Morrow"}  # invented


@pytest.fixture(scope="module")
def key():
    """A key whose collisions are not looked for: that is a test of its own and takes its time."""

    def load(set_id):
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(keys_module, "TRIED", ())
            return load_key(key_notebook(set_id), TERM)

    return load


def with_cell(key, name, text):
    """A copy of a key in which one cell says something else."""
    cells = copy.deepcopy(list(key.cells))
    cells = [cell | {"source": text} if cell["id"] == name else cell for cell in cells]
    return type(key)(**{**vars(key), "cells": tuple(cells)})


def plain_questions(key):
    """Ids of the questions that can be asked again with other numbers."""
    for question in key.sheet.questions:
        with contextlib.suppress(CourseError):
            yield question, fresh_question(key, question, "BH-1", 1, ["BH-1"])


def graded(key, student):
    """Each question with what a student was graded on."""
    return {question.id: (question, known) for question, known in key.sheet.known(student)}


def shown_numbers(key, question, lines):
    """The numbers on the sheet, found again among those that the key may draw."""
    known = {}
    for name, choice in key.sheet.choices.get(question, {}).items():
        (line,) = (line for line in lines if line.startswith(f"{choice.label}: "))
        text = line.removeprefix(f"{choice.label}: ")
        if choice.whole:  # a part is no choice of its own: it is shown as it is used
            known[name] = read(text.partition(" (")[0])
        else:
            known[name] = next(value for value in choice.values if beside(value) == text)
    return known


def shown_on(key, question, fresh):
    """All that a question's formulas need, from the words that stand on the sheet alone."""
    known = {}
    headings = {heading_of(text, one)[0]: one for one, text in key.asked.items()}
    for earlier in fresh.earlier:
        one = headings[earlier.heading]
        known |= shown_numbers(key, one, earlier.numbers)
        known[one] = key.sheet.questions[one].look(earlier.right)
    return known | shown_numbers(key, question, fresh.numbers)


@pytest.mark.parametrize("set_id", set_ids())
def test_the_plain_answers_judge_as_the_key_does(key, set_id):
    """Referee: the key's own judge, with the numbers that stand on the sheet and nothing else.

    Tried are the right answer, where each slip leads, and numbers beside them, in four rounds.
    """
    mine = key(set_id)
    asked = 0
    for question, _ in plain_questions(mine):
        one = mine.sheet.questions[question]
        for round_ in range(1, 5):
            fresh = fresh_question(mine, question, "BH-1", round_)
            known = shown_on(mine, question, fresh)
            led = [fresh.answers["right"], *(slip["at"] for slip in fresh.answers["slips"])]
            for (number, unit), share in product(led, (1, 0.97, 1.002, 1.004, 1.3)):
                answer = Q_(share * number, unit)
                found = open_practice([fresh.answers | {"hint": ""}]).found(1, answer)
                verdict = one.judge(answer, known)

                assert {"right": "✓", "slip": "↺", "wrong": "✗"}[verdict.outcome] == found[0]
                assert verdict.outcome != "slip" or in_words(verdict) in found
                asked += 1
    assert asked >= 16


def test_what_is_built_on_is_what_is_shown(key):
    """Nets: 4.516 kg stands on the sheet; by hand ÷ 2.5 kg a net = 1.81, so 2 nets.

    The right answer follows from the figures that are shown, in every one of 40 rounds: a number
    that was rounded for the page may not ask for another net than it says.
    """
    mine = key(SET)
    for round_ in range(1, 41):
        fresh = fresh_question(mine, "q2", "BH-1", round_)
        kilos = float(fresh.earlier[0].right.removesuffix(" kg"))
        net = float(re.search(r"net: ([\d.]+) kg", fresh.numbers[0])[1])

        assert [math.ceil(round(kilos / net, 9)), "count"] == fresh.answers["right"]


@pytest.mark.parametrize("set_id", set_ids())
def test_no_number_that_was_graded_comes_up_again(key, set_id):
    """In 20 rounds, the numbers of a question, or of one that it builds on, are never all the own.

    Where a question has no number but those of earlier ones, those are looked at.
    """
    mine = key(set_id)
    headings = {heading_of(text, one)[0]: one for one, text in mine.asked.items()}
    own = {
        one.id: [
            f"{choice.label}: {beside(known[name])}"
            for name, choice in mine.sheet.choices.get(one.id, {}).items()
            if hasattr(choice, "values")
        ]
        for one, known in mine.sheet.known("BH-1")
    }
    for question, _ in plain_questions(mine):
        drawn = [fresh_question(mine, question, "BH-1", one, ["BH-1"]) for one in range(1, 21)]
        assert len({json.dumps(one.answers) for one in drawn}) > 1
        for one in drawn:
            built = [(headings[each.heading], each.numbers) for each in one.earlier]
            theirs = own[question] + [line for earlier, _ in built for line in own[earlier]]

            assert theirs != one.numbers + [line for _, lines in built for line in lines]
            for earlier, lines in built:
                alone = not any(name in own for name in mine.sheet.questions[earlier].builds_on)
                assert not (alone and lines == own[earlier])


def test_where_too_few_numbers_are_left_the_question_is_not_asked(key):
    """Salt by measure has 9 steps: with all of them taken nothing fresh is left.

    With students who may rather not meet their own numbers, the least taken one is drawn.
    """
    mine = key("05-season-and-brine")
    everybody = [f"BH-{number}" for number in range(200)]
    choices = mine.sheet.choices["q1"]
    taken = [given(TERM, one, "05-season-and-brine/q1", **choices)["salt"] for one in everybody]
    assert 9 == len({value.magnitude for value in taken})

    with pytest.raises(CourseError, match="too few numbers"):
        fresh_question(mine, "q1", "CLASS", 1, everybody)

    fresh = fresh_question(mine, "q1", "CLASS", 1, rather_not=everybody)
    counts = {f"{value.magnitude:g}": taken.count(value) for value in choices["salt"].values}
    (number,) = re.findall(r"measure: (\d+) US fl oz", fresh.numbers[0])
    assert min(counts.values()) == counts[number]


def test_an_answer_on_the_sheet_is_no_answer_to_its_neighbour(key):
    """The weight that question 2 takes from question 1 is of another draw than question 1."""
    mine = key(SET)
    for round_ in range(1, 21):
        first = fresh_question(mine, "q1", "BH-1", round_)
        second = fresh_question(mine, "q2", "BH-1", round_)

        assert first.numbers != second.earlier[0].numbers


def test_what_is_more_than_numbers_is_not_asked_again(key):
    """A given cell that prints more, and a question that builds on one of another kind."""
    mine = key(SET)
    printed = "one = sheet.given('q1')\nprint('a table')\none"
    for question in ("q1", "q2"):
        with pytest.raises(CourseError, match="more than a number"):
            fresh_question(with_cell(mine, "q1-given", printed), question, "BH-1", 1)
    other = {one.id for one in key("03-cut-to-size").sheet.questions.values()
             if not isinstance(one, Question)}  # fmt: skip
    assert other and not other & {one for one, _ in plain_questions(key("03-cut-to-size"))}


# A class of three in one set: BH-1 slipped wherever a slip is named first, BH-2 is right, and
# BH-3 handed in nothing.
@pytest.fixture
def course(tmp_path, key):
    made = new_course(tmp_path / "class", "Brackwater House (invented)", TERM, ROSTER)
    hand_out(made, SET)
    leave(made, key(SET), "BH-1", lambda one, known: one.slip_value(one.slips[0], known))
    leave(made, key(SET), "BH-2", lambda one, known: one.right(known))
    return made


def leave(course, key, student, answer):
    """The record of a student who answers so."""
    answers = {one.id: answer(one, known) for one, known in key.sheet.known(student)}
    verdicts = _answered(key, student, key.sheet.mark(student, answers))
    file = course.marks(key.set_id, student)
    file.parent.mkdir(parents=True, exist_ok=True)
    named = {"set_id": key.set_id, "title": key.title}
    file.write_text(as_text(record(student, *verdicts, **named)), encoding="utf-8")


def table_of(course):
    return skill_table(course, lambda course, set_id: {})


def make(course, student="BH-1"):
    """The one sheet of a student, or of the class for None, and its notebook."""
    (made,) = reteach(course, [student], table=table_of(course))
    return made, json.loads(made.file.read_bytes())


def run(notebook, **answers):
    """Run a notebook's cells in this process with these answers; what each check printed."""
    space, said = {"__name__": "__main__"}, {}
    for cell in notebook["cells"]:
        if cell["cell_type"] != "code":
            continue
        text = "".join(cell["source"])
        name = text.partition(" = ")[0]
        if name in answers:
            text = f"{name} = {answers[name]!r}"
        with contextlib.redirect_stdout(io.StringIO()) as out:
            exec(compile(text, cell["id"], "exec"), space)
        said[cell["id"]] = out.getvalue()
    return said


def answers_in(notebook):
    """The plain answers that a sheet holds."""
    (cell,) = (cell for cell in notebook["cells"] if cell["id"] == "open-practice")
    (call,) = (
        node for node in ast.walk(ast.parse("".join(cell["source"]))) if isinstance(node, ast.Call)
    )
    return ast.literal_eval(call.args[0])


def test_the_sheet_runs_from_top_to_bottom(course):
    """With nothing typed, right answers, slips, rubbish, and the words that ask for help."""
    made, notebook = make(course)
    nbformat.validate(nbformat.reads(json.dumps(notebook), as_version=4))
    plain = answers_in(notebook)
    names = [f"answer_{number}" for number in range(1, len(plain) + 1)]
    ways = {
        "": ["nothing is typed yet"] * 5,
        "lots": ["does not start with a number"] * 5,
        "hint": [one["hint"] for one in plain],
        "working": ["How it goes:"] * 5,
    }

    assert 5 == len(plain) == len(made.skills)
    for typed, expected in ways.items():
        said = run(notebook, **dict.fromkeys(names, typed))
        for place, words_ in enumerate(expected, start=1):
            assert words_ in said[f"skill-{place}-check"]
    right = {name: say(Q_(*one["right"]), 7) for name, one in zip(names, plain, strict=True)}
    said = run(notebook, **right)
    assert all(
        said[f"skill-{place}-check"].startswith(f"{place}: ✓ Right") for place in range(1, 6)
    )
    slips = {name: say(Q_(*one["slips"][0]["at"]), 7)
             for name, one in zip(names, plain, strict=True)}  # fmt: skip
    said = run(notebook, **slips)
    for place, one in enumerate(plain, start=1):
        assert one["slips"][0]["sentence"] in said[f"skill-{place}-check"]
        assert one["hint"] in said[f"skill-{place}-check"]


def test_the_drill_of_each_skill_stands_below(course):
    """A panel of the students' own library, which works without a kernel."""
    _, notebook = make(course)
    space = {}
    drills = [cell for cell in notebook["cells"] if cell["id"].endswith("-drill")]
    for cell in drills:
        lines = "".join(cell["source"]).replace("\ndrill_panel(", "\npanel = drill_panel(")
        exec(lines, space)
        space["panel"].typed.value = "1 g"

        assert space["panel"].words.value
        assert ["nbval-ignore-output"] == cell["metadata"]["tags"]
    assert 5 == len(drills)


def test_no_formula_and_nothing_of_the_desk_travels(course, key):
    """Its code is calls with plain values; no formula of the key is in it, nor any import of it."""
    _, notebook = make(course)
    code = ["".join(cell["source"]) for cell in notebook["cells"] if cell["cell_type"] == "code"]
    trees = [ast.parse(text) for text in code]
    nodes = [node for tree in trees for node in ast.walk(tree)]
    formulas = [
        line.strip()
        for cell in key(SET).cells
        for line in "".join(cell["source"]).splitlines()
        if "lambda" in line
    ]
    told = json.dumps(notebook, ensure_ascii=False)

    assert len(formulas) > 20
    assert not [line for line in formulas if line in told]
    forbidden = (ast.Lambda, ast.FunctionDef, ast.BinOp, ast.Compare)
    assert not [node for node in nodes if isinstance(node, forbidden)]
    imported = {node.module for node in nodes if isinstance(node, ast.ImportFrom)}
    assert all(name.startswith("kitchenmath.") for name in imported)
    assert not [node for node in nodes if isinstance(node, ast.Import)]
    assert "lambda" not in told and "sheet.award" not in told and "coursework" not in told


def test_no_graded_answer_is_in_it(course, key):
    """Of none of the student's five questions: neither among the answers, nor in any words.

    (The number of nets is small and whole, so it stands somewhere; it is no answer.)
    """
    _, notebook = make(course)
    told = json.dumps(notebook, ensure_ascii=False)
    plain = [one["right"] for one in answers_in(notebook)]
    for one, known in graded(key(SET), "BH-1").values():
        right = one.right(known)

        assert [float(right.magnitude), str(right.units)] not in plain
        assert one.kind == "count" or not re.search(
            rf"(?<![\d.]){re.escape(say(right))}(?![\d])", told
        )


def test_the_class_gets_one_sheet_for_what_more_than_a_third_lack(course, key):
    """1 of 2 slipped. BH-3 has not handed in: the instructor is told, their numbers stay out."""
    made, notebook = make(course, None)
    asked = [one for one, _ in plain_questions(key(SET))]
    texts = {cell["id"]: "".join(cell["source"]) for cell in notebook["cells"]}

    assert 5 == len(made.skills) == len(asked)
    assert "04-buy-enough (1)" in str(made)
    first, *notes = str(made).splitlines()  # the file ends its line, so the desk can link it
    assert first.endswith(str(made.file)) and notes
    assert "For the class, Brackwater House \\(invented\\)." in texts["title"]
    theirs = graded(key(SET), "BH-3")
    for place, question in enumerate(asked, start=1):
        choices = key(SET).sheet.choices[question]
        numbers = [
            f"- {one.label}: {beside(theirs[question][1][name])}" for name, one in choices.items()
        ]
        assert not all(line in texts[f"skill-{place}-text"].splitlines() for line in numbers)


def test_a_sheet_is_no_hand_in(course):
    """Taking in finds neither set nor student in it."""
    read = read_notebook(make(course)[0].file.read_bytes(), 1_000_000)

    assert (None, None) == set_of(read)
    assert student_of(read) is None


def test_a_name_is_text_in_it(course):
    """As markdown shows it: Ada *Quill* with its stars."""
    title = "".join(make(course)[1]["cells"][0]["source"])

    assert "For Ada \\*Quill\\* (`BH-1`)." in title


def test_made_again_it_has_other_numbers_and_the_earlier_one_is_kept(course):
    first, notebook = make(course)
    raw = first.file.read_bytes()
    second, again = make(course)
    kept = list((course.folder / "kept" / "reteach" / "students").glob("BH-1.*.ipynb"))

    assert first.file == second.file
    assert [raw] == [file.read_bytes() for file in kept]
    assert (1, 2) == tuple(each["metadata"]["kitchen"]["round"] for each in (notebook, again))
    pairs = zip(answers_in(notebook), answers_in(again), strict=True)
    assert any(one["right"] != other["right"] for one, other in pairs)


def test_a_damaged_earlier_sheet_is_kept_and_holds_up_nothing(course):
    file = make(course)[0].file
    file.write_text("{ mine")

    assert make(course)[1]["metadata"]["kitchen"]["round"] == 1
    assert any(b"{ mine" == each.read_bytes() for each in (course.folder / "kept").rglob("*.ipynb"))


def test_who_lacks_nothing_or_handed_in_nothing_gets_a_sentence(course):
    complete, unseen = reteach(course, ["BH-2", "BH-3"], table=table_of(course))

    assert "Bram <b>Oakes knows all that was asked: no sheet is needed." == str(complete)
    assert "Nothing is marked of Chidi Morrow, so nothing is known" in str(unseen)
    assert not (course.folder / "reteach").exists()
    assert ["BH-1"] == for_everybody(table_of(course))
    with pytest.raises(CourseError, match="BH-7 is not on the roster"):
        reteach(course, ["BH-7"], table=table_of(course))


def test_a_skill_that_the_key_does_not_name_any_more_has_its_drill_only(course):
    """And the instructor is told why; the other skills are on the sheet as ever."""
    file = course.marks(SET, "BH-1")
    file.write_text(file.read_text("utf-8").replace('"whole packs"', '"peeling thin"'), "utf-8")

    made, notebook = make(course)

    assert "Drill only, for peeling thin" in str(made)
    assert 4 == len(answers_in(notebook))
    texts = {cell["id"]: "".join(cell["source"]) for cell in notebook["cells"]}
    assert "go back to lesson 4" in texts["skill-2-more"]
    assert "skill-2-answer" not in texts
    assert "sheet.check(2, answer_2)" == texts["skill-3-check"]
    run(notebook)


def test_a_set_whose_key_is_gone_has_drills_only(course):
    """A record of a set that is in keys/ no longer: no answers, and it still runs."""
    (course.folder / "marks" / SET).rename(course.folder / "marks" / "99-gone")

    made, notebook = make(course)

    assert "“99-gone” is not handed out" in str(made)
    assert not [cell for cell in notebook["cells"] if cell["id"] == "open-practice"]
    run(notebook)


def test_a_sheet_that_cannot_be_written_is_named(course, monkeypatch):
    def refuse(file, content):
        raise PermissionError(13, "Permission denied", str(file))

    monkeypatch.setattr(reteach_module, "write_safely", refuse)

    with pytest.raises(CourseError, match=r"“BH-1\.ipynb”: Permission denied"):
        make(course)


def test_the_commands_say_what_they_did(course, capsys):
    """`skills`, and `reteach` for the class, for a student in any spelling, and for each."""
    folder = ["--class", str(course.folder)]

    assert 0 == main(["skills", *folder])
    assert "1 of 2 have not got it" in capsys.readouterr().out
    assert (course.reports / "skills.html").is_file()
    assert 0 == main(["reteach", *folder]) == main(["reteach", "bh-1", *folder])
    assert 0 == main(["reteach", "--each", *folder])
    out = capsys.readouterr().out
    assert "The class: 5 skills, in " in out
    assert 2 == out.count("Ada *Quill*: 5 skills, in ")
    assert 1 == main(["reteach", "BH-77", *folder])
    assert "BH-77 is not on the roster" in capsys.readouterr().err


def test_the_desk_shows_what_is_not_got_and_makes_sheets(course, monkeypatch):
    monkeypatch.setattr(desk_module, "CLASSES", course.folder.parent)
    panel = Desk().reteach()

    assert "“Show what is not got” first" in press(panel, "Make the re-teach sheets")
    assert "skills.html" in press(panel, "Show what is not got")
    assert "sandbox" in panel.shown.value
    assert ["The class, one sheet for all", "Ada *Quill* (BH-1): 5 not got"] == [
        name for name, _ in panel.whom.options
    ]
    assert "The class still has to learn: " in words(panel.gaps)
    panel.whom.value = ("BH-1",)
    assert "Ada *Quill* still has to learn: " in words(panel.gaps)
    assert "BH-1.ipynb" in press(panel, "Make the re-teach sheets")
    panel.whom.value = ()
    assert "Choose the class or students" in press(panel, "Make the re-teach sheets")


def test_who_can_still_hand_in_never_finds_their_own_numbers(course, monkeypatch):
    """For the class that is BH-3, of whom nothing is marked; for a student it is the student."""
    seen = []

    def watched(key, question, who, round_, never, rather_not):
        seen.append((who, tuple(never), tuple(rather_not)))
        return fresh_question(key, question, who, round_, never, rather_not)

    monkeypatch.setattr(reteach_module, "fresh_question", watched)
    make(course, None)
    make(course)

    assert {("CLASS", ("BH-3",), tuple(ROSTER)), ("BH-1", ("BH-1",), ())} == set(seen)
