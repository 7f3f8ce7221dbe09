"""Results of other programs, in the open OneRoster CSV form, taken in as practical marks.

A line item's title, or its id, says which practical mark it is. The sets of the kit are counted
from their hand-ins: results of a set are left out, and that is said.

References
----------
1EdTech OneRoster 1.1, CSV binding: `lineItems.csv` and `results.csv`, columns by name. The fields
of both are from memory; the words of `scoreStatus` too.
"""

import math
from collections import Counter
from dataclasses import dataclass

from coursework.classes.oneroster import NUMBERS, USERS, packed_rows
from coursework.errors import CourseError
from coursework.terms import practical_words as words
from coursework.terms.practical import enter_practicals
from coursework.words import number, plural
from kitchenmath.errors import KitchenError
from kitchenmath.practice import student_number
from kitchenmath.typed.spreadsheet import plain_head

__all__ = ["TakenResults", "in_words", "take_results"]

ITEMS, RESULTS = "lineItems.csv", "results.csv"
OF_ITEMS = ("sourcedId", "title", "resultValueMax")
OF_RESULTS = ("lineItemSourcedId", "studentSourcedId", "score")
GONE = "tobedeleted"
SHOWN = 40  # characters of a cell in a sentence about it


@dataclass(frozen=True)
class TakenResults:
    """What came of a file of results.

    Attributes
    ----------
    given : dict of str to int
        How many students have each practical mark from it.
    odd : tuple of str
        What was left out or converted, a sentence each.
    """

    given: dict
    odd: tuple


def take_results(course, file):
    """Enter the results of a OneRoster zip as practical marks; all other marks stay.

    A result out of other points than the class's practical mark has is converted by its share.

    Parameters
    ----------
    course : Course
    file : Path
        A zip with lineItems.csv and results.csv; users.csv too where students have ids there that
        are not their numbers.

    Returns
    -------
    TakenResults

    Raises
    ------
    CourseError
        When the file is no such zip, a column is missing, or none of its line items is a
        practical mark of the class.
    """
    items, odd = _items(course, packed_rows(file, ITEMS, OF_ITEMS))
    students = _students(packed_rows(file, USERS, ("sourcedId",), optional=True))
    found, marks = {}, {}
    for line, row in packed_rows(file, RESULTS, OF_RESULTS):
        item = items.get(row["lineItemSourcedId"])
        if item is None or row.get("status") == GONE or not row["score"]:
            continue  # an item that is left out, or a result that is open
        student, score, trouble = _result(course, row, item, students)
        odd += [f"{RESULTS}, line {line}: {trouble}"] if trouble else []
        if not trouble:
            found.setdefault((student, item.name), []).append(score)
    for (student, name), scores in found.items():
        if len(scores) == 1:
            marks[student, name] = scores[0]
        else:
            odd.append(words.SEVERAL.format(student=student, name=name, count=len(scores)))
    enter_practicals(course, marks)
    return TakenResults(dict(Counter(name for _, name in marks)), tuple(odd))


@dataclass(frozen=True)
class _Item:
    """A line item that is a practical mark: its name in the class, and both scales."""

    name: str
    highest: float
    out_of: float


def _items(course, rows):
    """The line items that are practical marks, by their id; and what is said of the others."""
    practical = {plain_head(one.name): one for one in course.policy.practical.values()}
    found, odd = {}, []
    for line, row in rows:
        title, highest = row["title"][:SHOWN], _number(row["resultValueMax"])
        mark = practical.get(plain_head(row["title"])) or practical.get(
            plain_head(row["sourcedId"])
        )
        if row.get("status") == GONE:
            continue
        if row["sourcedId"] in course.sets_handed_out():
            odd.append(words.SET_ITSELF.format(title=title))
        elif mark is None:
            odd.append(words.NO_MARK.format(title=title))
        elif not highest > 0 or (_number(row.get("resultValueMin") or "0")) != 0:
            odd.append(words.NO_RANGE.format(file=ITEMS, line=line, title=title))
        else:
            found[row["sourcedId"]] = _Item(mark.name, highest, mark.out_of)
            if highest != mark.out_of:
                scales = {"highest": number(highest), "out_of": number(mark.out_of)}
                odd.append(words.CONVERTED.format(title=title, **scales))
    if not found:
        known = ", ".join(course.policy.practical) or words.NOT_HERE
        raise CourseError(f"{ITEMS}: none of it is a practical mark of this class. There are: "
                          f"{known}. {' '.join(odd)}")  # fmt: skip
    return found, odd


def _students(rows):
    """Student numbers by the id that a person has there."""
    return {
        row["sourcedId"]: next((row[one] for one in NUMBERS if row.get(one)), "") for _, row in rows
    }


def _result(course, row, item, students):
    """Whose result it is, its points in the class, and what is odd about it."""
    there = row["studentSourcedId"]
    try:
        student = student_number(students.get(there) or there)
    except KitchenError:
        student = ""
    if student not in course.roster:
        return "", 0.0, words.STRANGER_THERE.format(there=there[:SHOWN])
    if row.get("scoreStatus") == "exempt":
        return "", 0.0, words.EXEMPT.format(student=student)
    score = _number(row["score"])
    if not 0 <= score <= item.highest:
        highest = number(item.highest)
        return "", 0.0, words.OUTSIDE.format(score=row["score"][:SHOWN], highest=highest)
    return student, round(score / item.highest * item.out_of, 4), ""


def _number(text):
    """A number as the standard writes it, with a point; not a number where it is none."""
    try:
        return float(text)
    except ValueError:
        return math.nan


def in_words(taken):
    """What came of it, for desk and terminal.

    Parameters
    ----------
    taken : TakenResults

    Returns
    -------
    str
    """
    lines = [f"{name}: {plural(count, 'mark is', 'marks are')} in." for name, count in
             taken.given.items()] or ["No mark came in."]  # fmt: skip
    return "\n".join([*lines, *(["To look at:"] if taken.odd else []),
                      *(f"  {one}" for one in taken.odd)])  # fmt: skip
