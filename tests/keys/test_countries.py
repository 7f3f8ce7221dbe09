"""One class of each country: handed out, filled in with right answers, marked; the same keys."""

import json
from dataclasses import asdict

import pytest
from coursework.classes.course import new_course, open_course
from coursework.marking.mark_one import mark
from coursework.sets.hand_out import hand_out
from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

from kitchenmath.conventions import conventions_of, countries
from kitchenmath.conventions.class_limits import class_limit
from kitchenmath.drills import Round
from kitchenmath.drills.resting import DRILLS as RESTING
from kitchenmath.drills.resting import HeldCore
from kitchenmath.practice import Question
from kitchenmath.units import Q_, say

SET, STUDENT = "04-buy-enough", "BH-1007"
CODES = {"ours": "", "US": "US", "UK": "GB", "EU": "FR", "NZ": "NZ"}
MONEY = {"ours": "$", "US": "$", "UK": "£", "EU": "€", "NZ": "$"}
# What stands in set 4 on keeping raw poultry cold; FDA Food Code 3-501.16 says 41 °F.
COLD = {
    "ours": "5 °C (41 °F) or below (FDA Food Code 3-501.16)",
    "US": "41 °F (5 °C) or below (FDA Food Code 3-501.16)",
    "UK": "not covered here in the UK: ask your food code",
    "EU": "not covered here in the EU: ask your food code",
    "NZ": "not covered here in New Zealand: ask your food code",
}


@pytest.fixture(scope="module", params=countries())
def handed_out(request, tmp_path_factory):
    """The country, its class, and the text of its set 4 as students get it."""
    folder = tmp_path_factory.mktemp(request.param)
    course = new_course(folder / "class", "Cooks", "demo", {STUDENT: "Ada"})
    file = course.folder / "course.toml"
    text = file.read_text(encoding="utf-8")
    file.write_text(f'country = "{CODES[request.param]}"\n{text}', encoding="utf-8")
    course = open_course(course.folder)
    released = hand_out(course, SET).read_bytes()
    return request.param, course, released


def test_a_class_of_each_country_is_marked_right_by_its_own_money(handed_out):
    """Typed as its key says them: every machine-marked point, in pounds, euros or dollars."""
    country, course, released = handed_out
    key = load_key(course.key(SET).read_bytes(), "demo", tried=())
    right = {question.id: say(question.right(known), 6) for question, known in
             key.sheet.known(STUDENT) if isinstance(question, Question)}  # fmt: skip
    book = json.loads(released)
    for cell in book["cells"]:
        name = cell["id"].removesuffix("-answer")
        if name in right and cell["id"].endswith("-answer"):
            cell["source"] = f'{name} = "{right[name]}"'
        if cell["id"] == "me":
            cell["source"] = f'student = "{STUDENT}"'
    record, _ = mark(
        {"key": course.key(SET).read_bytes(), "released": released,
         "hand_in": json.dumps(book).encode(), "term": "demo", "student": STUDENT,
         "bounds": asdict(course.bounds)}
    )  # fmt: skip

    assert MONEY[country] == right["q5"][0]
    assert {one.question: "right" for one in record.answered} == {
        one.question: one.outcome for one in record.answered
    }


def test_a_class_of_each_country_reads_its_own_limit_and_money(handed_out):
    """The text of set 4 in five countries; no other country's code stands in it."""
    country, _, released = handed_out
    text = released.decode()

    assert COLD[country] in text
    assert f"{MONEY[country]}3.48" in text
    assert ("VAT" in text) == (country in ("UK", "EU"))
    assert ("GST" in text, "sales tax" in text) == (country == "NZ", country == "US")


def test_other_numbers_are_drawn_and_other_prices_follow():
    """A class with VAT of 20 % shows 1.2 times the price; pounds and ounces draw other weights."""
    drawn = {}
    for country in countries():
        sheet = load_key(key_notebook(SET, conventions_of(country)), tried=()).sheet
        drawn[country] = {}
        for question, known in sheet.known(STUDENT):
            drawn[country] |= {**known, question.id: question.right(known)}

    assert drawn["UK"]["q5"].magnitude == pytest.approx(1.2 * drawn["ours"]["q5"].magnitude)
    assert drawn["NZ"]["q5"].magnitude == pytest.approx(1.15 * drawn["ours"]["q5"].magnitude)
    assert ("kilogram", "pound") == tuple(
        str(drawn[country]["bought"].units) for country in ("ours", "US")
    )


def test_a_brunoise_is_as_large_as_the_class_calls_it():
    """Set 3 draws its samples and trays around 3 mm, and around 2 mm in the UK."""
    around = {}
    for country in ("ours", "UK"):
        sheet = load_key(key_notebook("03-cut-to-size", conventions_of(country)), tried=()).sheet
        known = next(known for question, known in sheet.known(STUDENT) if question.id == "q3")
        around[country] = known["trays"].around_mm, min(*known["trays"].first)

    assert (3, 2) == (around["ours"][0], around["UK"][0])
    assert around["UK"][1] == around["ours"][1] - 1


NOT_READ = "are not covered here: ask your food code"
HOUSE = "By the house's rule, after the FDA Food Code 3-501.14"
# What set 9 says of the limits of a class, and where a bird's core must get to.
RECORD = {
    "ours": ("quoted from the FDA Food Code and the USDA FSIS home chart", "74 °C (165 °F)"),
    "US": ("quoted from the FDA Food Code and the USDA FSIS home chart", "165 °F (74 °C)"),
    "UK": ("Core of poultry: the limit is that of the UK FSA and ACMSF.", "70 °C (158 °F)"),
    "EU": (f"The limits in the EU {NOT_READ}", "74 °C (165 °F)"),
    "NZ": (f"The limits in New Zealand {NOT_READ}", "74 °C (165 °F)"),
}


@pytest.mark.parametrize("country", countries())
def test_a_class_of_each_country_plays_set_9_by_its_own_food_code(country):
    """What was not read is the house's and says so; every answer of the key is right for a class.

    Sources: FDA Food Code 3-401.11(A)(3), 165 °F; the UK's advice, 70 °C for 2 min.
    """
    sources, bird = RECORD[country]
    key = key_notebook("09-keep-it-safe", conventions_of(country))
    sheet = load_key(key, tried=()).sheet
    text = json.dumps(json.loads(key), ensure_ascii=False)
    fda = country in ("ours", "US")

    assert sources in text
    assert bird in text
    cooled = "70 °F (21 °C)" if country == "US" else "21 °C (70 °F)"
    assert fda == (f"By the FDA Food Code 3-501.14, it must be at {cooled}" in text)
    assert fda != (HOUSE in text)
    assert fda != (NOT_READ in text)
    for question, known in sheet.known(STUDENT):
        answer = next(each.answer for each in question.played(known) if each.way == "right")
        assert "right" == question.judge(answer, known).outcome
    day = next(known for question, known in sheet.known(STUDENT) if question.id == "q1")["day"]
    assert [line.kept.own for line in day.lines] == [
        fda or (country == "UK" and line.letter == "E") for line in day.lines
    ]


def test_a_bird_at_71_degrees_is_in_order_in_the_uk_and_not_by_the_fda():
    """70 °C for 2 min (UK FSA and ACMSF) against 165 °F (FDA Food Code 3-401.11(A)(3))."""
    at_71 = {
        country: class_limit("poultry", conventions_of(country)).row.reached_by(Q_(71, "degC"))
        for country in ("UK", "US")
    }

    assert {"UK": True, "US": False} == at_71


@pytest.mark.parametrize("country", countries())
def test_the_drill_on_holding_times_reads_the_table_of_each_country(country):
    """61 °C: the UK's row at 60 °C asks 45 min; 132 °F: the FDA's at 131 °F, 89 min, as printed."""
    college = conventions_of(country)
    drill = Round(RESTING["still to hold"], college)
    core = HeldCore(2 if country == "UK" else 1).in_college(college)

    assert ("UK FSA" in drill.text) == (country == "UK")
    assert (country in ("EU", "NZ")) == ("is not covered here" in drill.text)
    assert (45 if country == "UK" else 89) == core.row.time.to("min").magnitude


@pytest.mark.slow
@pytest.mark.parametrize("country", countries())
@pytest.mark.parametrize("set_id", set_ids())
def test_no_slip_passes_for_right_and_no_right_answer_is_refused(set_id, country):
    """A hundred students a set and country: the key loads, and right answers are right."""
    sheet = load_key(key_notebook(set_id, conventions_of(country))).sheet
    refused = [
        (student, question.id, played.answer)
        for student in (f"PLAY-{number}" for number in range(20))
        for question, known in sheet.known(student)
        for played in question.played(known)
        if played.way == "right" and question.judge(played.answer, known).outcome != "right"
    ]

    assert [] == refused[:5]


@pytest.mark.parametrize(("code", "first"), [("US", "oz"), ("GB", "g")])
def test_the_page_that_comes_back_says_the_first_system_first(code, first, tmp_path):
    """Set 6 weighs its foam in grams for everybody; a US class is told ounces, then grams."""
    course = new_course(tmp_path / "class", "Cooks", "demo", {STUDENT: "Ada"})
    file = course.folder / "course.toml"
    text = file.read_text(encoding="utf-8")
    file.write_text(f'country = "{code}"\n{text}', encoding="utf-8")
    course = open_course(course.folder)
    released = hand_out(course, "06-foam").read_bytes()
    record, _ = mark(
        {"key": course.key("06-foam").read_bytes(), "released": released, "hand_in": released,
         "term": "demo", "student": STUDENT, "bounds": asdict(course.bounds)}
    )  # fmt: skip
    given = next(one.given for one in record.answered if one.question == "q4")
    said = next(line for line in given if "foam" in line).rpartition(": ")[2]

    assert first == said.split()[1]
