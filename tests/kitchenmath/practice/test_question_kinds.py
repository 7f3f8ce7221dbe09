"""A further kind of question is one module: here an invented one, the order of four steps."""

from dataclasses import dataclass

import pytest

from kitchenmath.errors import UnknownName, Unreadable
from kitchenmath.practice import Found, Sheet, Verdict, in_words, open_set, steps
from kitchenmath.practice.answer_look import look_over
from kitchenmath.practice.question_kinds import (
    ANSWER_KINDS,
    AnswerKind,
    AskedQuestion,
    Played,
    add_kind,
)


class StepsKind(AnswerKind):
    """Four letters, in the order in which one works."""

    asked = "an order of four steps"
    example = "B, A, D, C"

    def read(self, answer):
        letters = [each for each in str(answer).upper() if each.isalpha()]
        if sorted(letters) != list("ABCD"):
            raise Unreadable(f"“{answer}” is no order of the steps A to D.")
        return "".join(letters)

    def seen(self, value, plausible):
        return value.startswith("D"), f"read as {', '.join(value)}."


@dataclass(frozen=True)
class StepsQuestion(AskedQuestion):
    """In which order four steps are done."""

    id: str
    order: str
    slips: tuple = (Found("seasoned first", "Salt goes in last.", 1.0),)
    kind: str = "steps in order"
    points: float = 2.0
    working: tuple = ()
    skill: str = "order of work"
    lesson: str = ""

    def right(self, known):
        return self.order

    def look(self, answer):
        return StepsKind().read(answer)

    def judge(self, answer, known, own=None, sound=()):
        right, out_of = self.order, self.points
        try:
            value = self.look(answer)
        except Unreadable as error:
            return Verdict(self.id, "unreadable", 0, out_of, notes=(str(error),), right=right)
        if value == right:
            return Verdict(self.id, "right", out_of, out_of, answer=value, right=right)
        if value[0] == right[-1]:
            return Verdict(self.id, "slip", 1.0, out_of, self.slips, answer=value, right=right)
        return Verdict(self.id, "wrong", 0, out_of, answer=value, right=right)

    def slip_value(self, slip, known):
        return self.order[-1] + self.order[:-1]

    def collisions(self, known):
        return []

    def played(self, known):
        yield Played(self.order.lower(), "right")
        yield Played(self.slip_value(self.slips[0], known), "slip", ("seasoned first",))


@pytest.fixture
def sheet(monkeypatch):
    """A set of one question of the invented kind, handed out to one student."""
    monkeypatch.setattr("kitchenmath.practice.question_kinds.ANSWER_KINDS", dict(ANSWER_KINDS))
    add_kind("steps in order", StepsKind())
    sheet = open_set("00-invented", "demo", "BH-1007")
    sheet.award(StepsQuestion("q1", "BACD"), "b a c d")
    return sheet


def test_an_invented_kind_is_looked_at_by_its_own_words(sheet):
    """Read, doubtful by a field, unreadable, empty: nothing else knows of the kind."""
    assert ("there", "read as B, A, C, D.") == _look("b-a-c-d")
    assert "doubtful" == _look("DABC")[0]
    assert "unreadable" == _look("ABC")[0]
    assert ("empty", 'nothing is typed yet: an order of four steps is asked for, such as "B, A, D,'
            ' C".') == _look(" ")  # fmt: skip


def _look(typed):
    look = look_over(typed, "steps in order")
    return look.state, look.sentence


def test_an_invented_kind_is_marked_like_the_others(sheet):
    """Its played answers come out as they were meant."""
    (question, known), *_ = sheet.known("BH-1007")
    for answer, way, slips in question.played(known):
        verdict = sheet.mark("BH-1007", {"q1": answer})["q1"]
        assert (way, slips) == (verdict.outcome, verdict.slips)

    assert "Salt goes in last." == in_words(verdict)
    assert [] == sheet.collisions(["BH-1007"])


def test_a_question_of_a_kind_that_lacks_a_method_cannot_be_made():
    class Half(AskedQuestion):
        def right(self, known):
            return 1

    with pytest.raises(TypeError, match="abstract"):
        Half()


def test_a_line_that_quotes_the_student_makes_no_answer_doubtful():
    """Once a state was read out of a sentence, and this line holds its words."""
    look = look_over("look again 19:25\nplate 19:20", "plan", ("look again", "plate"))

    assert "there" == look.state


def test_a_set_has_names_for_twenty_questions_and_says_so():
    """The numbers of q20 are called twenty; a question more is refused, and not in silence."""
    sheet, need = Sheet("00-invented", "demo", "BH-1007"), steps(1, 3, 1, "kg", "needed")

    assert "twenty.need" in repr(sheet.given("q20", need=need))
    with pytest.raises(UnknownName, match="q21"):
        sheet.given("q21", need=need)
