"""Roster and results in the open OneRoster CSV form, for the college's other programs.

References
----------
1EdTech OneRoster 1.1, CSV binding. The fields of users.csv were seen in public repositories; those
of the other files are from memory. A sourcedId is a GUID of the standard: of ASCII letters and
figures and . - _ / @, from memory. As an id also stands in an address of its REST binding, where a
slash parts two names, the kit writes none.
"""

import re
import time
import unicodedata
import zipfile

from coursework.csv_sheets import sheet_as_csv
from coursework.records.reading import handed_in
from coursework.safe_files import digest, half_of
from coursework.terms.mark_words import in_words as mark_in_words
from coursework.terms.term_book import term_book
from coursework.words import number

__all__ = ["export_exchange", "source_id"]

USERS = ["sourcedId", "status", "dateLastModified", "enabledUser", "orgSourcedIds", "role",
    "username", "userIds", "givenName", "familyName", "middleName", "identifier", "email",
    "sms", "phone", "agentSourcedIds", "grades", "password"]  # fmt: skip
ENROLLMENTS = ["sourcedId", "status", "dateLastModified", "classSourcedId", "schoolSourcedId",
    "userSourcedId", "role", "primary", "beginDate", "endDate"]  # fmt: skip
LINE_ITEMS = ["sourcedId", "status", "dateLastModified", "title", "description", "assignDate",
    "dueDate", "classSourcedId", "categorySourcedId", "gradingPeriodSourcedId",
    "resultValueMin", "resultValueMax"]  # fmt: skip
RESULTS = ["sourcedId", "status", "dateLastModified", "lineItemSourcedId", "studentSourcedId",
    "scoreStatus", "score", "scoreDate", "comment"]  # fmt: skip
# A careful subset, chosen by the kit: the standard's own text on what an id may hold was not at
# hand, and whatever it allows, plain ASCII letters, figures and these signs are read everywhere.
LONGEST_ID = 255
PLAIN_ID, ODD = re.compile(r"[A-Za-z0-9._@-]+"), re.compile(r"[^A-Za-z0-9._@-]+")
HELD = ("users", "enrollments", "lineItems", "results")
POSSIBLE = ("academicSessions", "categories", "classes", "courses", "classResources",
            "courseResources", "demographics", "orgs", "resources")  # fmt: skip


def export_exchange(course, now=None):
    """Write `reports/oneroster.zip`: the roster, and a result for each student and mark.

    Parameters
    ----------
    course : Course
    now : float, optional
        Seconds since 1970, in place of the clock.

    Returns
    -------
    Path

    Raises
    ------
    CourseError
        When there is no set and no practical mark yet.
    """
    book = term_book(course, now=now)
    day = time.strftime("%Y-%m-%d", time.localtime(now))
    tables = {
        "manifest": _manifest(course),
        "users": _table(USERS, _users(book)),
        "enrollments": _table(ENROLLMENTS, _enrolled(course, book)),
        "lineItems": _table(LINE_ITEMS, _items(course, book)),
        "results": _table(RESULTS, _results(course, book, day)),
    }
    file = course.reports / "oneroster.zip"
    file.parent.mkdir(parents=True, exist_ok=True)
    half = half_of(file)
    with zipfile.ZipFile(half, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, rows in tables.items():
            packed.writestr(f"{name}.csv", sheet_as_csv(rows))
    half.replace(file)
    return file


def source_id(*parts):
    """An id of the standard from names in any letters; the same names give the same id.

    Letters, figures and . _ @ - stay as they are, which is the kit's choice. Else each odd sign
    becomes "_", and a digest of the names keeps two of them apart that look alike then. A name
    itself travels as a title.

    Parameters
    ----------
    *parts : str

    Returns
    -------
    str

    Examples
    --------
    >>> source_id("autumn-26", "BH-1001")
    'autumn-26-BH-1001'
    >>> source_id("2026/27 Frühjahr")
    '2026_27_Fruhjahr-bd5e963e'
    """
    text = "-".join(parts)
    if len(text) <= LONGEST_ID and PLAIN_ID.fullmatch(text):
        return text
    bare = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode()
    tag = digest("\0".join(parts).encode("utf-8", "surrogatepass"))[:8]
    plain = ODD.sub("_", bare)[: LONGEST_ID - len(tag) - 1].strip("_-")
    return f"{plain}-{tag}" if plain else tag


def _table(fields, lines):
    """The fields as the first line, then each line's, in the standard's order."""
    return [fields, *([one.get(name, "") for name in fields] for one in lines)]


def _manifest(course):
    files = [(f"file.{one}", "bulk") for one in HELD] + [(f"file.{one}", "absent") for one in
                                                         POSSIBLE]  # fmt: skip
    return [["propertyName", "value"], ["manifest.version", "1.0"], ["oneroster.version", "1.1"],
            *map(list, sorted(files)), ["source.systemName", "kitchen teaching kit"],
            ["source.systemCode", source_id(course.term)]]  # fmt: skip


def _users(book):
    for one in book.students:
        given, _, family = (one.name or one.number).rpartition(" ")
        yield {"sourcedId": one.number, "enabledUser": "true", "role": "student",
               "username": one.number, "givenName": given or family,
               "familyName": family if given else "", "identifier": one.number}  # fmt: skip


def _enrolled(course, book):
    for one in book.students:
        yield {"sourcedId": source_id(course.term, one.number),
               "classSourcedId": source_id(course.term),
               "userSourcedId": one.number, "role": "student"}  # fmt: skip


def _items(course, book):
    for one in book.columns:
        rule = course.policy.rule(one.name)
        due = time.strftime("%Y-%m-%d", time.localtime(rule.due)) if rule.due else ""
        yield {"sourcedId": source_id(one.name), "title": one.title,
               "classSourcedId": source_id(course.term), "dueDate": due, "resultValueMin": "0",
               "resultValueMax": "" if one.out_of is None else number(one.out_of)}  # fmt: skip


def _results(course, book, day):
    came = {column.name: handed_in(course, column.name) for column in book.columns}
    for student in book.students:
        for column, mark in zip(book.columns, student.marks, strict=True):
            there = student.number in came[column.name]
            yield {"sourcedId": source_id(column.name, student.number),
                   "lineItemSourcedId": source_id(column.name),
                   "studentSourcedId": student.number,
                   "scoreStatus": _status(mark, there), "scoreDate": day,
                   "score": "" if mark.points is None else number(mark.points),
                   "comment": " ".join(mark_in_words(mark))}  # fmt: skip


def _status(mark, there):
    """The standard's word for how far a mark has come; `there` is whether a file is there."""
    if mark.excused:
        return "exempt"
    if mark.points is not None:
        return "partially graded" if mark.open else "fully graded"
    return "submitted" if there else "not submitted"
