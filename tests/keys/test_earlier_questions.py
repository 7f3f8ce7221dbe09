"""A review asks questions of earlier sets again: one source, other numbers."""

import json
import re

import pytest
from coursework.errors import CourseError
from coursework.sets.earlier_questions import with_earlier
from coursework.sets.key_text import key_file, key_notebook, notebook_of, set_ids
from coursework.sets.keys import load_key

from kitchenmath.practice import given

REVIEWS = [set_id for set_id in set_ids() if "-review-" in set_id]
AGAIN = re.compile(r'# %% \[markdown\] (q\d+)-again\n"""\n(\S+), (q\d+)\n"""')
CLASS = [f"BH-10{number:02d}" for number in range(1, 25)]


def asked_again(review):
    """Each question of a review with the key and the question that it comes from."""
    key = load_key(key_notebook(review), tried=())
    for new, set_id, old in AGAIN.findall(key_file(review).read_text(encoding="utf-8")):
        yield key, new, load_key(key_notebook(set_id), tried=()), old


def cell(name, source, kind="code"):
    return {"id": name, "cell_type": kind, "source": source}


@pytest.mark.parametrize("review", REVIEWS)
def test_a_question_asked_again_is_judged_as_in_its_own_set(review):
    """With the same numbers the same answer is right, within the same tolerance, for the same
    points; slips, working and skill are the question's own."""
    for key, new, source, old in asked_again(review):
        question, own = key.sheet.questions[new], source.sheet.questions[old]

        assert (own.points, own.kind, own.tolerance) == (
            question.points, question.kind, question.tolerance,
        )  # fmt: skip
        assert [slip.name for slip in own.slips] == [slip.name for slip in question.slips]
        assert (own.skill, own.lesson) == (question.skill, question.lesson)
        for student in CLASS[:4]:
            known = next(known for one, known in key.sheet.known(student) if one.id == new)
            other = next(known for one, known in source.sheet.known(student) if one.id == old)
            drawn = {name: known[name] for name in key.sheet.choices[new]}
            if not any(name.startswith("q") for name in own.builds_on):
                assert own.formula(**{
                    name: (other | drawn)[name] for name in own.builds_on
                }) == question.formula(**{name: known[name] for name in own.builds_on})  # fmt: skip


@pytest.mark.parametrize("review", REVIEWS)
def test_hardly_anybody_meets_their_old_numbers(review):
    """Drawn at random, a question with a hundred draws repeats itself for 1 % of the students; of
    24 students, fewer than three meet all the numbers of a question again."""
    for key, new, source, old in asked_again(review):
        choices = key.sheet.choices[new]
        draws = 1
        for choice in choices.values():
            draws *= len(choice.values)
        same = sum(
            given("demo", student, f"{key.set_id}/{new}", **choices)
            == given("demo", student, f"{source.set_id}/{old}", **choices)
            for student in CLASS
        )

        assert same < (3 if draws >= 40 else 24 / 2)


@pytest.mark.parametrize("review", REVIEWS)
def test_a_review_mixes_sets_that_are_over(review):
    """Five questions at least, of four sets or more, no two sets in the order of the term alone,
    and none of a set that comes after it."""
    found = AGAIN.findall(key_file(review).read_text(encoding="utf-8"))
    sets = [set_id for _, set_id, _ in found]

    assert len(found) >= 5
    assert len(set(sets)) >= 4
    assert sets != sorted(sets)
    assert all(set_id < review for set_id in sets)


@pytest.mark.parametrize("review", REVIEWS)
def test_a_review_asks_something_of_each_set_since_the_one_before(review):
    """Review 1 goes over sets 1 to 5; review 2 over 6 to 10, and over something older besides."""
    named = AGAIN.findall(key_file(review).read_text(encoding="utf-8"))
    asked = {set_id for _, set_id, _ in named}
    before = max((each for each in REVIEWS if each < review), default="")
    since = {each for each in set_ids() if before < each < review}

    assert since
    assert set() == since - asked
    assert bool(before) == bool(asked - since)


def test_a_question_gets_its_new_number_in_words_and_in_code():
    """“Your answer to question 1” is question 4 of the review; its numbers are kept as `five`."""
    cells = {
        each["id"]: each["source"] for each in json.loads(key_notebook("05r-review-1"))["cells"]
    }

    assert cells["q5-text"].startswith("## 5. Nets to order (2 points)")
    assert "for your answer to question 4?" in cells["q5-text"]
    assert 'five = sheet.given("q5"' in cells["q5-given"]
    assert "q5 = ceil((q4 / five.net)" in cells["q5-answer"]


def sources(set_id):
    """Two sets that call different things by one name, and number words in their sentences."""
    times = {"01-first": 2, "02-second": 3}[set_id]
    return [
        cell("q1-text", "## 1. Eggs (2 points)\nSee question 1 and question 1.", "markdown"),
        cell("q1-given", 'one = sheet.given("q1")\none'),
        cell("q1-answer", 'q1 = ""\n### BEGIN SOLUTION\nq1 = one.eggs\n### END SOLUTION'),
        cell(
            "q1-check",
            f'sheet.look("q1")\n### BEGIN HIDDEN TESTS\nFACTOR = {times}\n\n\n'
            "def more(eggs):\n    return FACTOR * eggs\n\n\n"
            'told.append((lambda eggs: more(eggs), "one egg", "q1"))\n### END HIDDEN TESTS',
        ),
        cell("q2-text", "## 2. More (2 points)\nFrom question 1.", "markdown"),
        cell("q2-answer", 'q2 = ""\n### BEGIN SOLUTION\nq2 = q1\n### END SOLUTION'),
        cell(
            "q2-check",
            'sheet.look("q2")\n### BEGIN HIDDEN TESTS\n'
            'told.append((lambda q1: more(q1), "two", "q2"))\n### END HIDDEN TESTS',
        ),
    ]


def review(*named):
    cells = [cell(f"{new}-again", text, "markdown") for new, text in named]
    return with_earlier("05r-review", cells, sources)


def test_helpers_of_two_sets_with_one_name_do_not_mix():
    """Twice 10 eggs are 20 by the first set and three times 30 by the second, though both call it
    `more`; and a helper of question 1 comes along with question 2."""
    made = review(("q1", "02-second, q1"), ("q2", "01-first, q1"), ("q3", "01-first, q2"))
    space = {"told": (told := [])}  # as in a key, whose cells share their names
    for each in made:
        if each["id"].endswith("-check"):
            hidden = each["source"].partition("### BEGIN HIDDEN TESTS\n")[2]
            exec(hidden, space)

    assert [(30, "one egg", "q1"), (20, "one egg", "q2"), (20, "two", "q3")] == [
        (formula(10), words, question) for formula, words, question in told
    ]


@pytest.mark.parametrize(("named", "words"), [
    ([("q1", "celeriac")], "q1-again: write which question, as in"),
    ([("q1", "01-first, q7")], "q7 of 01-first is no question that can be asked again"),
    ([("q1", "01-first, q2")], "q2 of 01-first builds on “1”: ask that one again as well"),
])  # fmt: skip
def test_what_cannot_be_asked_again_is_refused_by_name(named, words):
    with pytest.raises(CourseError, match=words):
        review(*named)


def test_a_question_with_a_photo_or_a_measurement_of_ones_own_is_refused():
    """Set 3's first question has a photo's cell beside it."""
    text = key_file("05r-review-1").read_text(encoding="utf-8")
    with pytest.raises(CourseError, match="can be asked again"):
        notebook_of("05r-review-1", text.replace("03-cut-to-size, q5", "03-cut-to-size, q1"))


def test_a_set_that_is_not_there_is_named():
    text = key_file("05r-review-1").read_text(encoding="utf-8")
    with pytest.raises(CourseError, match="there is no set “03-carve”"):
        notebook_of("05r-review-1", text.replace("03-cut-to-size, q5", "03-carve, q5"))
