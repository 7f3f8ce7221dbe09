"""The mark book as an office and an instructor read it: a sheet, a page, the policy in words."""

from markupsafe import Markup

from coursework.arriving.arrivals import on_the_clock
from coursework.reports import office
from coursework.terms.grades import low_of
from coursework.terms.mark_words import graded_in_words
from coursework.terms.mark_words import in_words as mark_in_words
from coursework.words import number

__all__ = ["as_csv", "in_words", "rows", "shown"]

PASSES = {None: "", True: "yes", False: "no"}
NOTHING_LATE = "No set has a due time in the course file, so nothing is late."


def rows(book):
    """The mark book, a row for each student.

    Parameters
    ----------
    book : TermBook

    Returns
    -------
    list of list of str
        The first row holds the heads. A mark that is open is blank and not 0.
    """
    heads = [
        column.name if column.out_of is None else f"{column.name} of {number(column.out_of)}"
        for column in book.columns
    ]
    head = ["student number", "name", *heads, "total so far in percent", "of weight",
            "weight in all", "grade so far", "passes so far", "open", "notes"]  # fmt: skip
    return [head, *(_row(book.columns, student) for student in book.students)]


def _row(columns, student):
    notes = [
        f"{column.name}: {' '.join(mark_in_words(mark))}"
        for column, mark in zip(columns, student.marks, strict=True)
        if mark_in_words(mark)
    ]
    total = student.total
    return [
        *(student.number, student.name),
        *("" if mark.points is None else number(mark.points) for mark in student.marks),
        _percent(total.percent),
        *(number(total.weight), number(total.all_weights)),
        *(student.graded.grade, PASSES[student.graded.passed]),
        *("; ".join(student.open), " ".join(notes)),
    ]


def as_csv(book, country=""):
    """The mark book as CSV text that a spreadsheet opens as text and numbers, never as formulas.

    Parameters
    ----------
    book : TermBook
    country : str

    Returns
    -------
    str
    """
    return office.as_csv(rows(book), country)


def in_words(policy):
    """A stated policy in sentences, for whoever reads the page.

    Parameters
    ----------
    policy : Policy

    Returns
    -------
    list of str
    """
    words = [
        "The total is the weighted mean of the shares: the points of each set and each practical "
        "mark, as a share of those that are marked, times its weight.",
        _late(policy),
        _several(policy),
    ]
    if policy.second_attempt != "latest":
        words.append(
            "A written answer is marked once: its points hold for every attempt that has one."
        )
    if policy.nothing_handed_in == "zero":
        words.append("Nothing handed in: open until the set was due, and 0 from then on.")
    else:
        words.append("Nothing handed in leaves the mark open.")
    if policy.wait_for_open_marks:
        words.append("A student with an open mark has no total yet.")
    else:
        words.append("An open mark counts nowhere: the total is so far, and the rest is named.")
    return [*words, *_scale(policy)]


def shown(course, book):
    """What the page's template takes.

    Parameters
    ----------
    course : Course
    book : TermBook

    Returns
    -------
    dict
    """
    # matplotlib takes its time to load, and the sheet needs none of it.
    from coursework.reports.class_figures import marks_svg

    totals = [one.total.percent for one in book.students if one.total.percent is not None]
    all_weights = sum(column.weight for column in book.columns)
    low = low_of(course.policy)
    return {
        "course": course.name,
        "term": course.term,
        "roster": len(course.roster),
        "whole": sum(one.total.percent is not None and not one.open for one in book.students),
        "so_far": sum(one.total.percent is not None and bool(one.open) for one in book.students),
        "figure": Markup(marks_svg([each / 100 for each in totals], low)) if totals else "",
        "low": number(100 * low),
        "policy": in_words(course.policy),
        "columns": [_column(course.policy, column, all_weights) for column in book.columns],
        "students": [_student(book, student) for student in book.students],
        "to_look_at": book.to_look_at,
    }


def _scale(policy):
    """The pass line and the grades, in words."""
    if policy.pass_line is not None:
        yield f"A total of {number(policy.pass_line)} % or more passes."
    if policy.grades:
        lines = [f"{name} from {number(line)} %" for name, line in policy.grades.items()]
        yield f"Grades: {', '.join(lines)}. Below the lowest there is none."
    if policy.grades or policy.pass_line is not None:
        yield (
            "The total is rounded to one decimal first, as it is printed. As long as a mark is "
            "open, grade and passing are so far too."
        )


def _late(policy):
    """What late work costs, in words."""
    if not any(rule.due is not None for rule in policy.sets.values()):
        return NOTHING_LATE
    words = "Late work costs nothing."
    if policy.late_percent:
        words = (
            f"Late work: each day started after the due time takes {number(policy.late_percent)} % "
            f"of the set's points off, {number(policy.late_percent_most)} % at most, and no mark "
            "goes below 0."
        )
    if policy.late_days != float("inf"):
        days = number(policy.late_days)
        words += f" After {days} {'day' if days == '1' else 'days'} it does not count."
    return f"{words} Due times are on this machine's clock."


def _several(policy):
    """Which of several attempts counts, in words."""
    up_to = number(policy.second_attempt_up_to)
    lifted = f", and a later one may lift the mark, up to {up_to} % of the points"
    which = {
        "latest": "the latest counts",
        "best": "the best counts",
        "mean": "the mean of all counts",
        "first": f"the first counts{lifted if policy.second_attempt_up_to else ''}",
    }[policy.second_attempt]
    return (
        f"Of several attempts {which}. "
        "Of the files that come by the due time, only the last is an attempt."
    )


def _column(policy, column, all_weights):
    """A line of the table of what counts."""
    rule = policy.rule(column.name) if column.name not in policy.practical else None
    return {
        "title": column.title,
        "name": column.name if column.title != column.name else "",
        "out_of": "" if column.out_of is None else number(column.out_of),
        "weight": number(column.weight),
        "share": _percent(100 * column.weight / all_weights) if column.weight else "",
        "due": "" if rule is None or rule.due is None else _time(rule.due),
        "second_due": "" if rule is None or rule.second_due is None else _time(rule.second_due),
    }


def _student(book, student):
    """A student's total and marks for the template."""
    total = student.total
    return {
        "number": student.number,
        "name": student.name or student.number,
        "percent": _percent(total.percent),
        "place": None if total.percent is None else round(min(total.percent, 100.0), 1),
        "weight": number(total.weight),
        "all_weights": number(total.all_weights),
        "graded": graded_in_words(student.graded),
        "open": student.open,
        "marks": [
            {
                "title": column.title,
                "points": "" if mark.points is None else number(mark.points),
                "out_of": number(mark.out_of or column.out_of or 0),
                "open": mark.open,
                "words": mark_in_words(mark),
                "counts": bool(column.weight),
            }
            for column, mark in zip(book.columns, student.marks, strict=True)
        ],
    }


def _percent(value):
    """Percent with one decimal at most; blank where there is none."""
    return "" if value is None else number(round(value, 1))


def _time(seconds):
    return on_the_clock(seconds)[:16]
