"""Report: the mark sheet for the office and the class's page for the instructor.

The page says everything twice, in a figure and in words, and every number with what it means.
"""

import statistics
from collections import Counter

from markupsafe import Markup

from coursework.arriving.arrivals import unplaced
from coursework.csv_sheets import sheet_as_csv
from coursework.decisions.applied import poured_in
from coursework.decisions.holding import holding
from coursework.errors import CourseError
from coursework.gradebook.decision_list import decisions_of
from coursework.gradebook.points import human_marks, refused_points
from coursework.records.copies import with_copies
from coursework.records.points import slips_in_words
from coursework.records.reading import not_marked, usable_records
from coursework.reports.class_words import discrimination_in_words, facility_in_words
from coursework.reports.office import as_csv, save_xlsx
from coursework.reports.page import page
from coursework.reports.picture import (
    DOTS,
    FEWEST,
    STEP_PERCENT,
    class_picture,
    percent,
    shortened,
    signed,
)
from coursework.reports.sheet import mark_sheet
from coursework.safe_files import save
from coursework.terms.grades import low_of

__all__ = ["class_page", "class_picture", "mark_sheet", "report", "sheet_as_csv"]

STEPS = (0.60, 0.80)  # of the bands of marks, above the line for low marks
SLIPS_SHOWN = 8
LABEL = 48  # characters beside a bar; the words below the figure give the whole


def report(course, set_id, progress=None):
    """Write the mark sheet and the class's page.

    Parameters
    ----------
    course : Course
    set_id : str
    progress : callable, optional
        Called with (done, total, text).

    Returns
    -------
    Path
        The mark sheet, for a spreadsheet.
    Path
        The page, for a browser.

    Raises
    ------
    CourseError
        When nothing of the set is marked, or a file cannot be written.
    """
    records, odd = usable_records(course, set_id)
    records = with_copies(records)
    holds = holding(decisions_of(course))
    records, human = poured_in(records, human_marks(course, set_id), holds)
    odd = odd + refused_points(course, set_id)
    sheet = course.reports / f"{set_id}-marks.csv"
    rows = mark_sheet(course, set_id, records, human, holds)
    save(sheet, as_csv(rows, course.country), "utf-8-sig")
    save_xlsx(sheet, rows, set_id)
    if progress:
        progress(1, 2, "mark sheet")
    file = course.reports / f"{set_id}.html"
    apart = holds.apart(set_id)
    page_ = class_page(course, set_id, records, human, _unplaced(course) + odd, apart=apart)
    save(file, page_)
    if progress:
        progress(2, 2, "class's page")
    return sheet, file


def class_page(course, set_id, records, human, not_placed=(), when="", apart=None):
    """The class's page as HTML: the same records and marks give the same bytes.

    Parameters
    ----------
    course : Course
    set_id : str
    records : list of Record
    human : dict of (str, str) to HumanMark
    not_placed : list of str
        What arrived and could not be placed, in words.
    when : str, optional
        Shown as the day of writing.
    apart : dict of str to Decision, optional
        Students who are excused or marked on paper: they are named, and their files not counted.

    Returns
    -------
    str
    """
    apart = apart or {}
    records = [one for one in records if one.student not in apart]
    waiting = [one for one in not_marked(course, set_id, records) if one not in apart]
    roster = {who: name for who, name in course.roster.items() if who not in apart}
    low = low_of(course.policy)
    picture = class_picture(records, human, roster, waiting, low)
    return page(
        "class.html",
        course=course.name,
        title=records[0].title if records else set_id,
        set_id=set_id,
        when=when,
        roster=len(course.roster),
        excused=_names(course, apart, "excused"),
        on_paper=_names(course, apart, "on paper"),
        handed_in=len(records),
        nothing=len(picture.nothing),
        waiting=len(waiting),
        open=sum(len(each.open) for each in picture.totals.values()),
        marks=_marks(picture.shares, low),
        questions=_questions(picture),
        chance=1 / (len(records) - 1) ** 0.5 if len(records) >= FEWEST else None,
        slips=[_slip(slip, picture.questions) for slip in picture.slips[:SLIPS_SHOWN]],
        more_slips=len(picture.slips[SLIPS_SHOWN:]),
        needs_word=picture.needs_word,
        unplaced=not_placed,
        few=FEWEST,
        figures=_figures(picture, low),
    )


def _names(course, apart, kind):
    """Who is apart in one way, by name."""
    return [course.roster.get(who, who) for who, one in apart.items() if one.kind == kind]


def _unplaced(course):
    """What could not be placed; a list that is damaged is said so and stops nothing."""
    try:
        return unplaced(course)
    except CourseError as error:
        return [str(error)]


def _marks(shares, line):
    """The distribution of marks in words, as numbers for the template; None without marks."""
    if not shares:
        return None
    counts, steps = [], [line, *(one for one in STEPS if one > line)]
    for low, high in zip([0, *steps], [*steps, None], strict=True):
        inside = [share for share in shares if share >= low and (high is None or share < high)]
        words = (
            f"{percent(low)} and more"
            if high is None
            else f"{percent(low)} to under {percent(high)}"
        )
        counts.append((f"under {percent(high)}" if low == 0 else words, len(inside)))
    return {
        "lowest": percent(shares[0]),
        "middle": percent(statistics.median(shares)),
        "highest": percent(shares[-1]),
        "bands": counts,
        "bars": len(shares) > DOTS,
        "step": f"{STEP_PERCENT:g}\N{NO-BREAK SPACE}%",
        "low": percent(line),
    }


def _questions(picture):
    """A row for each question, with its two numbers in words."""
    waits = _waits(picture)
    return [
        {
            "title": title,
            "out_of": picture.out_of[question],
            "counted": picture.counted[question],
            "facility": ""
            if picture.facility[question] is None
            else percent(picture.facility[question]),
            "facility_words": facility_in_words(picture.facility[question], waits[question]),
            "discrimination": ""
            if question in picture.blank
            else signed(picture.discrimination[question]),
            "discrimination_words": picture.blank.get(question)
            or discrimination_in_words(picture.discrimination[question]),
        }
        for question, title in picture.questions.items()
    ]


def _waits(picture):
    """How many answers to each question wait for a person's marks."""
    return Counter(question for each in picture.totals.values() for question in each.open)


def _slip(slip, headings):
    """A slip for the template: named, counted, and where it happened."""
    return {
        "name": slips_in_words(slip.names, slip.alternatives),
        "either": slip.alternatives,
        "count": slip.count,
        "where": [headings[question] for question in slip.questions],
        "sentence": slip.sentence,
    }


def _figures(picture, low):
    """The drawings that there are numbers for, by name."""
    # matplotlib takes its time to load, and the mark sheet needs none of it.
    from coursework.reports import class_figures as draw

    headings = [shortened(heading, LABEL) for heading in picture.questions.values()]
    slips = picture.slips[:SLIPS_SHOWN]
    figures = {}
    if picture.shares:
        figures["marks"] = draw.marks_svg(picture.shares, low)
    if any(share is not None for share in picture.facility.values()):
        waits = [_waits(picture)[question] for question in picture.facility]
        shares = list(picture.facility.values())
        figures["facility"] = draw.facility_svg(headings, shares, waits)
    if any(value is not None for value in picture.discrimination.values()):
        values = list(picture.discrimination.values())
        figures["discrimination"] = draw.discrimination_svg(headings, values)
    if slips:
        names = [shortened(slips_in_words(one.names, one.alternatives), LABEL) for one in slips]
        figures["slips"] = draw.slips_svg(names, [slip.count for slip in slips])
    return {name: Markup(svg) for name, svg in figures.items()}
