"""The re-teach sheet: a practice notebook with fresh questions on what was not got yet.

It is for practice at home and needs the students' edition only. Nothing of a key is in it but
words: numbers, right answers and slips are plain values of a draw that is not the graded one.
"""

import json
from dataclasses import dataclass, field
from pathlib import Path

from coursework.errors import CourseError
from coursework.records.points import in_order
from coursework.safe_files import keep_earlier, write_safely
from coursework.sets.class_keys import class_key
from coursework.sets.keys import load_key
from coursework.skills import words
from coursework.skills.fresh import fresh_question
from coursework.skills.reteach_notebook import Part, as_text, practice_notebook
from coursework.skills.skill_table import skill_table
from coursework.words import plural
from kitchenmath.practice import student_number

__all__ = ["Made", "for_everybody", "gaps_of", "reteach", "told"]


@dataclass
class Made:
    """One sheet, or why there is none.

    Attributes
    ----------
    whom : str
    file : Path or None
    skills : list of str
        What it trains.
    notes : list of str
        What the instructor should know, a sentence each.
    """

    whom: str
    file: Path | None = None
    skills: list = field(default_factory=list)
    notes: list = field(default_factory=list)

    def __str__(self):
        if self.file is None:
            return " ".join(self.notes)
        count = plural(len(self.skills), "skill")
        notes = [f"  {note}" for note in self.notes]  # a file ends its line: so it can be clicked
        return "\n".join([f"{self.whom}: {count}, in {self.file}", *notes])


def reteach(course, students=(None,), progress=None, table=None):
    """Make the re-teach sheet of each student named, or of the class.

    Making one again gives other numbers; the earlier sheet is kept.

    Parameters
    ----------
    course : Course
    students : iterable of (str or None)
        Student numbers; None is the class.
    progress : callable, optional
        Called with (done, total, text).
    table : SkillTable, optional
        Where it is there already.

    Returns
    -------
    list of Made

    Raises
    ------
    CourseError
        When nothing is marked, or a student is neither on the roster nor marked.
    """
    table, students = table or skill_table(course), list(students)
    unknown = [student for student in students if student and student not in table.students]
    if unknown:
        raise CourseError(
            f"student: {', '.join(unknown)} is not on the roster. Look at the spelling."
        )
    made = []
    for done, student in enumerate(students, start=1):
        made.append(_make(course, table, student))
        if progress:
            progress(done, len(students), made[-1].whom)
    return made


def told(course, students=(), each=False, progress=None):
    """Make them, and say what was made, a line each.

    Parameters
    ----------
    course : Course
    students : collection of str
        As typed; without any the class's sheet is made.
    each : bool
        Instead, a sheet for each student who has not got something.
    progress : callable, optional

    Returns
    -------
    str
    """
    table = skill_table(course)
    named = [student_number(typed) for typed in students] or [None]
    named = for_everybody(table) if each else named
    made = reteach(course, named, progress, table)
    lines = [str(one) for one in made] or [words.NOBODY_LACKS]
    return "\n".join([*lines, *table.odd])


def for_everybody(table):
    """Students who have not got something, in the order of their numbers.

    Parameters
    ----------
    table : SkillTable

    Returns
    -------
    list of str
    """
    return sorted(student for student in table.students if table.not_got(student))


def gaps_of(table, student=None):
    """What a student, or without one the class, has not got, in sentences.

    Parameters
    ----------
    table : SkillTable
    student : str, optional

    Returns
    -------
    str
    """
    missing = table.not_got(student)
    whom = table.students[student] if student else "The class"
    if missing:
        return words.TO_LEARN.format(whom=whom, skills="; ".join(missing))
    if student and not table.was_asked(student):
        return words.NOTHING_KNOWN.format(whom=whom)
    return words.GOT_ALL.format(whom=whom)


def _make(course, table, student):
    """One sheet, written; or the sentence that says why there is none."""
    whom = table.students[student] if student else "The class"
    made = Made(whom, skills=table.not_got(student))
    if not made.skills:
        made.notes.append(gaps_of(table, student))
        return made
    folder = course.folder / "reteach"
    file = folder / "students" / f"{student}.ipynb" if student else folder / "class.ipynb"
    round_ = _round_of(file) + 1
    wanted = [_asked(table.skills[name], student) for name in made.skills]
    wanted.sort(key=_by_set)  # a student goes through them in the order in which they were taught
    without = {}
    parts = [_part(course, table, student, asked, round_, without) for asked in wanted]
    made.notes += [f"Drill only, for {'; '.join(names)}: {why}" for why, names in without.items()]
    if not student:
        made.notes += _still_out(course, table, {asked.set_id for asked in wanted})
    named = f"{as_text(whom)} (`{student}`)" if student else f"the class, {as_text(course.name)}"
    _write(course, file, practice_notebook(named, round_, parts))
    made.file = file
    return made


def _write(course, file, text):
    """Write a sheet; an earlier one is kept."""
    if file.is_file():
        keep_earlier(course.folder, file)
    try:
        write_safely(file, text)
    except OSError as error:
        why = error.strerror or "it cannot be written"
        raise CourseError(
            f"“{file.name}”: {why}. Close it where it is open, and try again."
        ) from None


def _asked(skill, student):
    """The latest question on a skill that a student, or anybody of the class, was asked."""
    standings = [skill.students[student]] if student else skill.students.values()
    latest = [standing.latest for standing in standings]
    return max(latest, key=_by_set)


def _by_set(asked):
    return in_order(asked.set_id), in_order(asked.question)


def _part(course, table, student, asked, round_, without):
    """One skill of the sheet: its question with fresh numbers where there can be one, its drill."""
    never, rather_not = [student], []
    if not student:  # who has not handed in yet must not find their own numbers here
        never = _not_in(course, table, asked.set_id)
        rather_not = list(course.roster)
    fresh = None
    try:
        key = load_key(class_key(course, asked.set_id), course.term)
        question = _question_of(key, asked)
        fresh = fresh_question(key, question, student or "CLASS", round_, never, rather_not)
    except CourseError as error:
        without.setdefault(str(error), []).append(asked.skill)
    return Part(asked.skill, asked.lesson, table.sets[asked.set_id], fresh)


def _not_in(course, table, set_id):
    """Students on the roster of whom nothing is marked in a set."""
    return [student for student in course.roster if not table.was_asked(student, set_id)]


def _still_out(course, table, sets):
    """A sentence where somebody can still hand in: the sheet shows how the questions go."""
    counts = [(set_id, len(_not_in(course, table, set_id))) for set_id in sorted(sets)]
    out = ", ".join(f"{set_id} ({count})" for set_id, count in counts if count)
    if not out:
        return []
    return [words.STILL_OUT.format(out=out)]


def _question_of(key, asked):
    """The key's question on a skill, which may stand elsewhere since the set was marked."""
    questions = key.sheet.questions
    found = [one.id for one in questions.values() if one.skill == asked.skill]
    if not found:
        raise CourseError("the key does not name this skill any more. Mark the set again.")
    return asked.question if asked.question in found else found[0]


def _round_of(file):
    """Which sheet the one in a file is; 0 where there is none that can be read."""
    try:
        return int(json.loads(file.read_bytes())["metadata"]["kitchen"]["round"])
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return 0
