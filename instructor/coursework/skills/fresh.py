"""A key's question with fresh numbers, its answers worked out and written down as plain values.

Keys never travel. What leaves here is a question in words, numbers that are not the graded ones,
and for these numbers what is right and where each slip leads: values and sentences, no formula.
"""

import ast
import copy
from collections import Counter
from dataclasses import dataclass

from coursework.errors import CourseError
from coursework.records.points import heading_of
from coursework.sets.keys import source
from kitchenmath.units.registry import Quantity
from kitchenmath.units.saying import say

TRIES = 60  # draws that are looked at before a question is given up
PARTS = ("text", "given", "answer", "check")


@dataclass(frozen=True)
class Earlier:
    """What a question builds on: an earlier one of the same set, with what is needed of it.

    Attributes
    ----------
    heading : str
    numbers : list of str
        Its given numbers, in words.
    right : str
        Its right answer as the sheet shows it.
    """

    heading: str
    numbers: list
    right: str


@dataclass(frozen=True)
class Fresh:
    """A question to practise.

    Attributes
    ----------
    heading, text : str
        As in the set; the text is markdown.
    numbers : list of str
    earlier : list of Earlier
    answers : dict
        What `kitchenmath.practice.practice_sheet.open_practice` takes, but for the hint.
    """

    heading: str
    text: str
    numbers: list
    earlier: list
    answers: dict


def fresh_question(key, question, who, round_, never=(), rather_not=()):
    """A question of a key with numbers that nobody named was graded on.

    Each question has a draw of the whole set to itself: where it builds on an earlier one, that
    one's right answer is shown, and must not be the answer to another question of the sheet.

    Parameters
    ----------
    key : Key
    question : str
        Its id.
    who : str
        Whose sheet it is: others draw other numbers.
    round_ : int
        1, 2, 3…; another round draws other numbers.
    never : collection of str
        Students whose graded numbers must not come up.
    rather_not : collection of str
        Students whose graded numbers come up only where no others are left.

    Returns
    -------
    Fresh

    Raises
    ------
    CourseError
        When the question is more than a number from given numbers, or no fresh numbers are left.
    """
    needs = _needs(key, question)
    for one in _chain(key, question):
        _refuse_more_than_numbers(key, one)
    sheet, known = _drawn_afresh(key, question, needs, who, round_, never, rather_not)
    heading, text = heading_of(key.asked[question], question)
    return Fresh(
        heading=heading,
        text=text.strip(),
        numbers=_in_words(sheet, who, question),
        earlier=[
            Earlier(heading_of(key.asked[one], one)[0], _in_words(sheet, who, one), say(known[one]))
            for one in needs
        ],
        answers=key.sheet.questions[question].in_numbers(known),
    )


def _drawn_afresh(key, question, needs, who, round_, never, rather_not):
    """A sheet whose term gives numbers that nobody had, and what is known with them."""
    graded = [_graded(key, (question, *needs), students) for students in (never, rather_not)]
    best = None
    for attempt in range(TRIES):
        sheet = copy.copy(key.sheet)
        sheet.term = f"again {round_}, {question}, {attempt}"
        known = next(known for each, known in sheet.known(who) if each.id == question)
        known |= {one: _as_shown(key.sheet.questions[one], known[one]) for one in needs}
        drawn = {one: _drawn(sheet, who, _chain(key, one)) for one in (question, *needs)}
        taken, doubled = (sum(of[one][drawn[one]] for one in drawn) for of in graded)
        if taken or key.sheet.questions[question].collisions(known):
            continue
        if best is None or doubled < best[0]:
            best = doubled, sheet, known
        if not doubled:
            break
    if best is None:
        raise CourseError("there are too few numbers to draw fresh ones from.")
    return best[1:]


def _needs(key, question):
    """Ids of the earlier questions that one builds on: by an answer, or by a number drawn there."""
    sheet = key.sheet
    asked = sheet.questions[question]
    own = sheet.choices.get(question, {})
    earlier = list(sheet.questions)[: list(sheet.questions).index(question)]
    needs = set()
    for name in asked.builds_on:
        drawn = [one for one in earlier if name in sheet.choices.get(one, {})]
        needs |= {name} if name in earlier else set(drawn[-1:] if name not in own else ())
    return [one for one in earlier if one in needs]


def _refuse_more_than_numbers(key, question):
    """Only what can be told in words and numbers can be asked again on another sheet."""
    parts = {cell.get("id", "").removeprefix(f"{question}-"): cell for cell in key.cells
             if cell.get("id", "").startswith(f"{question}-")}  # fmt: skip
    plain = key.sheet.questions[question].told_in_numbers and parts.keys() <= set(PARTS)
    drawn = key.sheet.choices.get(question, {}).values()
    plain = plain and all(isinstance(one, Quantity) for each in drawn for one in each.values)
    if plain and "given" in parts:
        lines = ast.parse(source(parts["given"])).body
        plain = [type(line) for line in lines] == [ast.Assign, ast.Expr]
    if not plain:
        raise CourseError("it is more than a number worked out from given numbers.")


def _as_shown(question, right):
    """A right answer as it stands on the page: whoever builds on it has these figures only."""
    return question.look(say(right))


def _graded(key, questions, students):
    """For each question, how often all its numbers were drawn for the students' graded set."""
    return {
        one: Counter(_drawn(key.sheet, student, _chain(key, one)) for student in students)
        for one in questions
    }


def _chain(key, question):
    """A question with all that it hangs on, back to the first."""
    found = [question]
    for one in _needs(key, question):
        found += [each for each in _chain(key, one) if each not in found]
    return found


def _drawn(sheet, who, questions):
    """All numbers of some questions, for comparing: the units are those of the steps."""
    drawn = [sheet.numbers_of(one, who) for one in questions]
    return tuple(value.magnitude for numbers in drawn for value in numbers.values())


def _in_words(sheet, who, question):
    """Given numbers with their labels, as marking writes them too."""
    return list(map(": ".join, sheet.numbers_in_words(question, who)))
