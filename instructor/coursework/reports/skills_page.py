"""The report of skills: what to teach again, as a page for the instructor and as two sheets."""

from coursework.csv_sheets import sheet_as_csv
from coursework.reports.page import page
from coursework.reports.picture import percent, shortened
from coursework.safe_files import save
from coursework.skills.go_back import lesson_name, no_place, places
from coursework.skills.skill_table import skill_table
from coursework.words import number, plural

__all__ = ["next_session", "skills_page", "skills_report", "skills_sheet", "students_sheet", "told"]

ACROSS = 24  # students beside each other in a grid; a phone shows no more
GRIDS = 3  # further students stand in the sheets
SLIPS_SHOWN = 3
# How the latest question of a skill came, as a sign and in words.
SIGNS = {
    "slip": ("!", "a usual slip"),
    "missing": ("–", "no answer"),
    "wrong": ("✗", "not right"),
    "unreadable": ("?", "could not be read"),
}
GOT = ("✓", "got it")
LITTLE = ("½", "right last time, less than half of the points in all")
FINDINGS = ("got", "slipped", "wrong", "missing")


def skills_report(course, progress=None, table=None):
    """Write the page and both sheets over all marked sets of a class.

    Parameters
    ----------
    course : Course
    progress : callable, optional
        Called with (done, total, text).
    table : SkillTable, optional
        Where it is there already.

    Returns
    -------
    Path
        The page.
    Path
        The sheet by skill.
    Path
        The sheet by student.

    Raises
    ------
    CourseError
        When nothing is marked, or a file cannot be written.
    """
    table = table or skill_table(course)
    texts = {
        "skills.html": (skills_page(course, table), "utf-8"),
        "skills.csv": (sheet_as_csv(skills_sheet(table)), "utf-8-sig"),
        "skills-by-student.csv": (sheet_as_csv(students_sheet(table)), "utf-8-sig"),
    }
    for done, (name, (text, encoding)) in enumerate(texts.items(), start=1):
        save(course.reports / name, text, encoding)
        if progress:
            progress(done, len(texts), name)
    return tuple(course.reports / name for name in texts)


def told(course, progress=None):
    """Write them, and say what to teach and where the files are, a line each.

    Parameters
    ----------
    course : Course
    progress : callable, optional

    Returns
    -------
    str
    """
    table = skill_table(course)
    page_, *sheets = skills_report(course, progress, table)
    files = [f"The page: {page_}", *(f"A sheet: {sheet}" for sheet in sheets)]
    return "\n".join([*next_session(table), *files, *table.odd])


def skills_page(course, table):
    """The page as HTML: the same table gives the same bytes.

    Parameters
    ----------
    course : Course
    table : SkillTable

    Returns
    -------
    str
    """
    short = [name for name in table.students if table.not_got(name)]
    asked = [name for name in table.students if table.was_asked(name)]
    unnamed = [no_place(name) for name in table.skills if not places(name)]
    return page(
        "skills.html",
        course=course.name,
        sets=list(table.sets.values()),
        unmarked=table.unmarked,
        seen=len(asked),
        roster=len(course.roster),
        teach=next_session(table),
        grids=_grids(table, asked),
        left_out=len(asked[ACROSS * GRIDS :]),
        legend=[GOT, *SIGNS.values(), LITTLE],
        skills=[_skill(table, table.skills[name]) for name in table.not_got()],
        students=[_student(table, student) for student in short],
        complete=[_named(table, student) for student in asked if student not in short],
        unseen=[_named(table, student) for student in table.students if student not in asked],
        odd=[*table.odd, *unnamed],
    )


def next_session(table):
    """What to teach next session, in two or three sentences.

    Parameters
    ----------
    table : SkillTable

    Returns
    -------
    list of str
    """
    missing = table.not_got()
    alone = sum(bool(table.not_got(student)) for student in table.students)
    if not missing:
        rest = f"{plural(alone, 'student has', 'students have')} gaps"
        return [
            "The class knows every skill that was asked so far: go on with the plan.",
            f"{rest}: make a re-teach sheet for each." if alone else "Nobody has a gap.",
        ]
    first = table.skills[missing[0]]
    words = f"Teach “{first.name}” again first: {_of_asked(first)} have not got it"
    if first.slips:
        slip, count, _ = first.slips[0]
        words += f", and the commonest slip is “{slip}” ({plural(count, 'answer', 'answers')})"
    sentences = [f"{words}.", f"Start from {_back_to(first)}."]
    more = [f"“{name}” ({_of_asked(table.skills[name])})" for name in missing[1:3]]
    if not more:
        return [*sentences, "All else lies with single students: make them re-teach sheets."]
    rest = len(missing[3:])
    words = f"Then comes {' and '.join(more)}"
    words += f"; {rest} more can go on the class's re-teach sheet" if rest else ""
    return [*sentences, f"{words}."]


def skills_sheet(table):
    """A row for each skill, what needs most teaching first.

    Parameters
    ----------
    table : SkillTable

    Returns
    -------
    list of list of str
    """
    head = ["skill", "lesson", "drill", "students asked", "have not got it", "share of the points"]
    rows = [[*head, *FINDINGS, "commonest slips", "the class has got it"]]
    for skill in table.skills.values():
        rows.append(
            [skill.name, skill.lesson, "; ".join(place.name for place in places(skill.name))]
            + [str(len(skill.students)), str(len(skill.not_got)), _share(skill)]
            + [str(skill.found[each]) for each in FINDINGS]
            + ["; ".join(f"{name} ({count})" for name, count, _ in skill.slips)]
            + ["yes" if skill.has_got_it else "no"]
        )
    return rows


def students_sheet(table):
    """A row for each student and skill; who was not asked has no row.

    Parameters
    ----------
    table : SkillTable

    Returns
    -------
    list of list of str
    """
    head = ["student number", "name", "skill", "asked", *FINDINGS]
    rows = [[*head, "points", "out of", "slips", "has got it"]]
    for student, name in sorted(table.students.items()):
        for skill in table.skills:
            mine = table.standing(student, skill)
            if mine:
                rows.append(
                    [student, name, skill, str(len(mine.asked))]
                    + [str(mine.found[each]) for each in FINDINGS]
                    + [number(mine.points), number(mine.out_of), "; ".join(mine.slips)]
                    + ["yes" if mine.has_got_it else "no"]
                )
    return rows


def _grids(table, asked):
    """Skills by students, so many students beside each other."""
    grids = []
    for start in range(0, min(len(asked), ACROSS * GRIDS), ACROSS):
        students = asked[start : start + ACROSS]
        rows = [
            {
                "skill": skill.name,
                "words": f"{_of_asked(skill)} lack it",
                "cells": [_cell(skill.students.get(student)) for student in students],
            }
            for skill in table.skills.values()
        ]
        heads = [(shortened(student, 14), table.students[student]) for student in students]
        grids.append({"students": heads, "rows": rows})
    return grids


def _cell(standing):
    """One student at one skill: sign, words, and whether it is to be taught again."""
    if standing is None:
        return {"sign": "", "words": "not asked", "again": False}
    sign, words = _sign(standing)
    return {"sign": sign, "words": words, "again": not standing.has_got_it}


def _sign(standing):
    if standing.has_got_it:
        return GOT
    return (
        LITTLE if standing.latest.came_right else SIGNS.get(standing.latest.outcome, SIGNS["wrong"])
    )


def _skill(table, skill):
    """What the template shows of a skill that the class has not got."""
    found = skill.found
    return {
        "name": skill.name,
        "share": _share(skill),
        "asked": _of_asked(skill),
        "found": ", ".join(f"{found[each]} {each}" for each in FINDINGS if found[each]),
        "who": [table.students[student] for student in skill.not_got],
        "slips": [
            {"name": name, "count": plural(count, "answer", "answers"), "sentence": sentence}
            for name, count, sentence in skill.slips[:SLIPS_SHOWN]
        ],
        "back": _back_to(skill),
    }


def _student(table, student):
    """What the template shows of a student who has not got something, lesson by lesson."""
    lessons = {}
    for name in table.not_got(student):
        standing = table.standing(student, name)
        words = standing.latest.slip or _sign(standing)[1]
        lesson = lesson_name(_lesson(table.skills[name])) or "No lesson named"
        gap = {"skill": name, "words": words}
        lessons.setdefault(lesson[0].upper() + lesson[1:], []).append(gap)
    return {"who": _named(table, student), "lessons": sorted(lessons.items())}


def _lesson(skill):
    """The lesson's file: where its nearest drill stands, or else what the key says."""
    found = places(skill.name)
    return found[0].lesson if found else skill.lesson


def _back_to(skill):
    """Lesson and drills to go back to, in words."""
    lesson = lesson_name(_lesson(skill)) or "its lesson"
    names = " or ".join(f"“{place.name}”" for place in places(skill.name))
    return f"{lesson}, drill {names}" if names else lesson


def _named(table, student):
    name = table.students[student]
    return name if name == student else f"{name} ({student})"


def _of_asked(skill):
    return f"{len(skill.not_got)} of {len(skill.students)}"


def _share(skill):
    return "" if skill.share is None else percent(skill.share).replace("\N{NO-BREAK SPACE}", " ")
