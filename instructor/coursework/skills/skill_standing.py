"""A student and a class at one skill: what was asked, how it came, and who has not got it.

Nothing is read, drawn or written here.
"""

import math
from collections import Counter
from dataclasses import dataclass

from coursework.records.points import slips_in_words

__all__ = ["HALF", "RIGHT", "SAME", "Asking", "Skill", "Standing"]

HALF = 0.5  # of a skill's points: with less of them a student has not got it
THIRD = 3  # one in so many: when more have not got a skill, the class has not, as the guide says
RIGHT = ("right", "close", "follow-through")
SAME = 1e-9  # points closer than this are equal: floating point, not marking


@dataclass(frozen=True)
class Asking:
    """One question that one student was asked.

    Attributes
    ----------
    skill, lesson, set_id, question, heading : str
    outcome : str
        As marking leaves it. Where a person gave the points, half of them or more is "right", and
        less is not.
    points, out_of : float
    slips : tuple of str
    sentence : str
        What was said about the slip.
    alternatives : bool
        Whether the answer cannot tell which of `slips` it was.
    """

    skill: str
    lesson: str
    set_id: str
    question: str
    heading: str
    outcome: str
    points: float
    out_of: float
    slips: tuple
    sentence: str
    alternatives: bool = False

    @property
    def came_right(self):
        """A number that carries on from an earlier slip counts as right."""
        return self.outcome in RIGHT

    @property
    def slip(self):
        """What slipped, by name; "" where nothing did."""
        return slips_in_words(self.slips, self.alternatives)


@dataclass(frozen=True)
class Standing:
    """A student at one skill: all askings of it, the latest last."""

    asked: tuple

    @property
    def latest(self):
        """The latest question on the skill."""
        return self.asked[-1]

    @property
    def points(self):
        """Points over all questions of the skill."""
        return math.fsum(one.points for one in self.asked)

    @property
    def out_of(self):
        """What those questions could give."""
        return math.fsum(one.out_of for one in self.asked)

    @property
    def has_got_it(self):
        """The rule: the latest one came right, and at least half of all the points are there."""
        enough = self.points >= HALF * self.out_of - SAME
        return self.latest.came_right and enough

    @property
    def found(self):
        """How often each came: "got", "slipped", "wrong", "missing"."""
        words = {"slip": "slipped", "missing": "missing"} | dict.fromkeys(RIGHT, "got")
        return Counter(words.get(one.outcome, "wrong") for one in self.asked)

    @property
    def slips(self):
        """Names of the slips, as often as they were made, the latest last."""
        return [one.slip for one in self.asked if one.slips]


@dataclass(frozen=True)
class Skill:
    """A class at one skill.

    Attributes
    ----------
    name, lesson : str
    students : dict of str to Standing
        Who was asked.
    """

    name: str
    lesson: str
    students: dict

    @property
    def not_got(self):
        """Students who have not got it."""
        return [student for student, one in self.students.items() if not one.has_got_it]

    @property
    def share(self):
        """The class's share of the points, 0 to 1; None where there is nothing to get."""
        out_of = math.fsum(one.out_of for one in self.students.values())
        points = math.fsum(one.points for one in self.students.values())
        return points / out_of if out_of > 0 else None

    @property
    def has_got_it(self):
        """The rule for the class: at most a third of those asked have not got it."""
        return THIRD * len(self.not_got) <= len(self.students)

    @property
    def found(self):
        """How often each came, over all students."""
        return sum((one.found for one in self.students.values()), Counter())

    @property
    def slips(self):
        """Slip's name, how often, and its sentence; the commonest first."""
        count, words = Counter(), {}
        for standing in self.students.values():
            count.update(standing.slips)
            words |= {one.slip: one.sentence for one in standing.asked if one.slips}
        ranked = sorted(count.items(), key=lambda each: (-each[1], each[0]))
        return [(name, times, words[name]) for name, times in ranked]
