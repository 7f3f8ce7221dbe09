"""Hand back: one page a student, with what was asked, what they answered and where it slipped.

The page is one file that loads nothing, so it can be mailed, printed or read on a phone. Hidden
checks are not in the records it is made from. Whatever a student wrote is shown as plain text.
"""

import re

from markupsafe import Markup

from coursework.arriving.placing import NO_TIME
from coursework.decisions.applied import poured_in
from coursework.decisions.holding import holding
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import human_marks
from coursework.records.photos import photos_of
from coursework.records.points import earned, heading_of, in_order, slips_in_words, total
from coursework.records.reading import usable_records
from coursework.records.record import Record
from coursework.reports.page import page
from coursework.reports.plan_rows import shown_chart
from coursework.reports.question_text import in_html
from coursework.reports.sheet import arrived_for
from coursework.reports.words import FILLED_IN, FOUND, GIVEN_BY_HAND, NOTHING_THERE
from coursework.safe_files import save
from coursework.skills.go_back import lesson_name, places
from coursework.terms.late_words import in_words
from coursework.terms.lateness import days_late
from coursework.words import number
from kitchenmath.practice import sentences

__all__ = ["hand_back", "student_page"]

AT_HOME = ("right", "close", "follow-through", "marked")  # no lesson to go back to
# A plan comes back earliest first; it is read beside the one that works, which has a line a task.
PLAN = re.compile(r"\d\d:\d\d [^;]+(; \d\d:\d\d [^;]+)+")
# A written answer beyond this many characters may be split over two printed pages.
LONG = 1500
# What a written answer has none of, in the template's names.
NOT_JUDGED = dict.fromkeys(("given", "sentences", "working", "drills"), ())
NOT_JUDGED |= dict.fromkeys(("full", "either", "carried"), False)
NOT_JUDGED |= {"right": "", "lesson": "", "empty": "Nothing.", "chart": None}


def hand_back(course, set_id, progress=None):
    """Write a page for each student whose work is marked.

    Parameters
    ----------
    course : Course
    set_id : str
    progress : callable, optional
        Called with (done, total, text) as each page is written.

    Returns
    -------
    list of Path
        One a student, in the order of student numbers.

    Raises
    ------
    CourseError
        When nothing of the set is marked; and, once all other pages are written, when one could
        not be: the message names each.
    """
    records, odd = usable_records(course, set_id)
    holds, rule = holding(decisions_of(course)), course.policy.rule(set_id)
    records, human = poured_in(records, human_marks(course, set_id), holds)
    arrived, apart = arrived_for(course, set_id), holds.apart(set_id)
    records += _without_a_file(course, set_id, records, apart)
    pages = []
    for done, record in enumerate(records, start=1):
        student = record.student
        file = course.feedback(set_id, student)
        try:
            mine = holds.timed(arrived.get(student, []))
            late = days_late(record, mine, holds.due(rule, set_id, student))
            told = {"late": late, "apart": apart.get(student)}
            save(
                file, student_page(course, record, human, **told, photos=photos_of(course, record))
            )
            pages.append(file)
        except CourseError as error:
            odd.append(f"{student}: {error}")
        if progress:
            progress(done, len(records), course.roster.get(student, student))
    if odd:
        raise CourseError(f"pages written: {len(pages)}. Not written: {' '.join(odd)}")
    return pages


def _without_a_file(course, set_id, records, apart):
    """A record without questions for each student with a mark on paper or an excuse alone."""
    marked, title = {one.student for one in records}, records[0].title if records else set_id
    return [
        Record(set_id, title, student)
        for student in course.roster
        if student in apart and student not in marked
    ]


def student_page(course, record, human, when="", late=0, apart=None, photos=()):
    """A student's page as HTML: the same record and marks give the same bytes.

    Parameters
    ----------
    course : Course
    record : Record
    human : dict of (str, str) to HumanMark
        Points and comments of a person, by student and question.
    when : str, optional
        Shown as the day of writing.
    late : int
        Days that it came late.
    apart : Decision, optional
        That the student is excused, or marked on paper: this stands in place of the file's mark.
    photos : dict of str to str, optional
        By question, the photo that came along, as an address for the page.

    Returns
    -------
    str
    """
    photos = dict(photos)
    cells = earned(record, human)
    asked = {each.question: each for each in record.questions}
    questions = [
        _question(asked[question], cell) | {"photo": photos.get(question, "")}
        for question, cell in cells.items()
    ]
    student, sum_ = record.student, total(cells)
    handed_in = record.handed_in.partition(".")[0]
    titles = {question: each["title"] for question, each in zip(cells, questions, strict=True)}
    return page(
        "student.html",
        course=course.name,
        title=record.title,
        name=course.roster.get(student, student),
        student=student,
        handed_in="" if handed_in == NO_TIME else handed_in,
        when=when,
        late=in_words(late, course.policy) if apart is None else (),
        apart=apart,
        total=sum_,
        open=[titles[question] for question in sum_.open],
        questions=questions,
        photos=bool(photos),
        again=_go_over_again(record.answered),
        look_first=any(one.outcome in ("missing", "unreadable") for one in record.answered),
        findings=record.findings,
    )


def _question(asked, cell):
    """What the template shows of one question."""
    title, text = heading_of(asked.asked, cell.question)
    points = f"up to {number(cell.out_of)}"
    if cell.points is not None:
        points = f"{number(cell.points)} of {number(cell.out_of)}"
    sign, words = (_of_written if asked.read_by_a_person else _of_answered)(asked, cell)
    text_long = len(cell.comment) + asked.read_by_a_person * len(asked.answer)
    shown = NOT_JUDGED | {
        "title": title,
        "asked": Markup(in_html(text)),
        "sign": sign,
        "words": words,
        "points": points,
        "written": asked.answer if asked.read_by_a_person else None,
        "answer": _in_lines(asked.answer),
        "comment": cell.comment,
        "long": text_long > LONG,
    }
    return shown if asked.read_by_a_person else shown | _judged(asked)


def _judged(asked):
    """What the template shows besides of an answer that the key judged."""
    back = bool(asked.lesson) and asked.outcome not in AT_HOME
    return {
        "full": asked.outcome == "right",
        "given": asked.given,
        "sentences": [] if asked.outcome == "right" else sentences(asked),
        "either": asked.alternatives,
        "working": asked.working,
        "chart": shown_chart(asked.chart),
        "right": asked.right,
        "carried": asked.outcome == "follow-through",
        "lesson": lesson_name(asked.lesson) if back else "",
        "drills": _drills(asked.skill, asked.lesson),
        "empty": FILLED_IN if asked.outcome == "unreadable" else NOTHING_THERE,
    }


def _of_answered(asked, cell):
    """Sign and words for a question that the key judged."""
    sign, words = FOUND[asked.outcome]
    if asked.slips:
        several = len(asked.slips) > 1 and not asked.alternatives
        words = "Usual slips" if several else words
        words += f": {slips_in_words(asked.slips, asked.alternatives)}"
    changed = cell.points != asked.points and asked.outcome != "marked"
    return sign, words + (GIVEN_BY_HAND if changed else "")


def _of_written(asked, cell):
    """Sign and words for a question that a person reads."""
    if cell.points is None:
        return "…", "Not marked yet"
    return "•", "Marked by your instructor" if asked.answer.strip() else "No answer"


def _in_lines(answer):
    """A plan with a task a line; any other answer as it is."""
    return answer.replace("; ", "\n") if PLAN.fullmatch(answer) else answer


def _drills(skill, lesson):
    """The names of a skill's drills, the nearest one first; of another lesson with its name."""
    return [
        f"“{place.name}”" + (f" in {lesson_name(place.lesson)}" if place.lesson != lesson else "")
        for place in places(skill)
    ]


def _go_over_again(answered):
    """Lesson to the skills in it that did not come right, with their drills, in order."""
    again = {}
    for one in sorted(answered, key=lambda each: in_order(each.question)):
        if one.outcome not in AT_HOME and one.lesson:
            lesson = lesson_name(one.lesson)
            skills = again.setdefault(lesson[0].upper() + lesson[1:], {})
            if one.skill:
                skills[one.skill] = _drills(one.skill, one.lesson)
    return again
