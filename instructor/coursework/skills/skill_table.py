"""Skills over all marked sets of a class: who has got which, and where it slipped.

Nothing is drawn or written here; page, sheet, desk and tests take the same numbers.
"""

from collections import Counter
from dataclasses import dataclass

from coursework.decisions.applied import poured_in
from coursework.decisions.holding import holding
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import human_marks
from coursework.records.points import NOTHING, earned, heading_of, in_order
from coursework.records.reading import usable_records
from coursework.skills.skill_standing import HALF, RIGHT, SAME, Asking, Skill, Standing
from coursework.skills.words import NAMES_NO_SKILL
from kitchenmath.practice import in_words

__all__ = ["SkillTable", "skill_table"]


@dataclass(frozen=True)
class SkillTable:
    """Skills by students.

    Attributes
    ----------
    skills : dict of str to Skill
        Those that most students have not got come first.
    students : dict of str to str
        Student number to name; those with most skills not got come first.
    sets : dict of str to str
        Marked set to its title.
    unmarked : tuple of str
        Sets that were handed out and of which nothing is marked.
    odd : tuple of str
        What could not be used, a sentence each.
    """

    skills: dict
    students: dict
    sets: dict
    unmarked: tuple
    odd: tuple

    def standing(self, student, skill):
        """A student at a skill; None where that student was not asked."""
        return self.skills[skill].students.get(student)

    def not_got(self, student=None):
        """Skills that a student, or without one the class, has not got, as the page orders them.

        Parameters
        ----------
        student : str, optional

        Returns
        -------
        list of str
        """
        if student is None:
            return [name for name, skill in self.skills.items() if not skill.has_got_it]
        mine = {name: skill.students.get(student) for name, skill in self.skills.items()}
        return [name for name, standing in mine.items() if standing and not standing.has_got_it]

    def was_asked(self, student, set_id=None):
        """Whether a marked hand-in of a student is there; of one set, where it is named."""
        askings = (one for skill in self.skills.values() for one in _asked(skill, student))
        return any(set_id in (None, one.set_id) for one in askings)


def skill_table(course, human_marks=human_marks):
    """What all marked sets of a class say, by skill and by student.

    Parameters
    ----------
    course : Course
    human_marks : callable, optional
        Of course and set id: the points that a person gave; from the gradebook by default.

    Returns
    -------
    SkillTable

    Raises
    ------
    CourseError
        When nothing at all is marked.
    """
    asked, titles, odd, unmarked = [], {}, [], []
    holds = holding(decisions_of(course))
    for set_id in _sets(course):
        try:
            records, trouble = usable_records(course, set_id)
        except CourseError:
            unmarked.append(set_id)
            continue
        records, human = poured_in(records, human_marks(course, set_id), holds)
        odd += trouble
        titles[set_id], apart = set_id, holds.apart(set_id)
        for record in records:
            if record.student in apart:  # excused, or marked on paper: the file says nothing
                continue
            titles[set_id] = record.title
            found, words = _askings(record, set_id, human)
            odd += words
            asked += [(record.student, one) for one in found]
    if not titles:
        raise CourseError("nothing of this class is marked yet: take in and mark a set first.")
    return _in_table(course.roster, asked, titles, tuple(unmarked), odd)


def _asked(skill, student):
    return skill.students[student].asked if student in skill.students else ()


def _sets(course):
    """Sets that were handed out or marked, in order."""
    marked = {path.name for path in (course.folder / "marks").glob("*") if path.is_dir()}
    return sorted(marked | set(course.sets_handed_out()), key=in_order)


def _askings(record, set_id, human):
    """What one hand-in says of skills; a sentence for each question that names none."""
    cells = earned(record, human)
    found, odd = [], []
    for answered in sorted(record.answered, key=lambda each: in_order(each.question)):
        question = answered.question
        if not answered.skill.strip():
            odd.append(NAMES_NO_SKILL.format(set_id=set_id, question=question))
            continue
        if cells[question].points is None:
            continue  # open: a person must read the file first
        by_hand = human.get((record.student, question), NOTHING).points is not None
        found.append(_asking(answered, set_id, cells[question], by_hand))
    return found, odd


def _asking(answered, set_id, cell, by_hand):
    """What one answer says of its skill."""
    outcome, slips = answered.outcome, answered.slips
    if by_hand:
        outcome, slips = _by_a_person(outcome, slips, cell.points >= HALF * cell.out_of - SAME)
    return Asking(
        answered.skill,
        answered.lesson,
        set_id,
        answered.question,
        heading_of(answered.asked, answered.question)[0],
        outcome,
        cell.points,
        cell.out_of,
        slips,
        in_words(answered),
        answered.alternatives,
    )


def _by_a_person(outcome, slips, enough):
    """Outcome and slips where a person gave the points, which count before the machine's."""
    if enough:
        return "right", ()
    return ("wrong" if outcome in RIGHT else outcome), slips


def _in_table(roster, asked, titles, unmarked, odd):
    """Askings sorted into skills and students, what needs most teaching first."""
    by_skill = {}
    for student, one in asked:
        by_skill.setdefault(one.skill, {}).setdefault(student, []).append(one)
    skills = [
        Skill(
            name,
            next((one.lesson for mine in found.values() for one in mine if one.lesson), ""),
            {student: Standing(tuple(mine)) for student, mine in sorted(found.items())},
        )
        for name, found in by_skill.items()
    ]
    # A skill that two of three have not got comes before one that three of twenty have not got.
    skills.sort(key=lambda one: (-len(one.not_got) / len(one.students), one.share or 0, one.name))
    missed = Counter(student for skill in skills for student in skill.not_got)
    seen = {student for student, _ in asked}
    students = sorted({*roster, *seen}, key=lambda each: (each not in seen, -missed[each], each))
    return SkillTable(
        skills={one.name: one for one in skills},
        students={student: roster.get(student, student) for student in students},
        sets=titles,
        unmarked=unmarked,
        odd=tuple(dict.fromkeys(odd)),
    )
