"""The class picture in plain numbers: what came right, where it slipped, who needs a word.

Nothing is drawn or written here; page, desk and tests take the same numbers.
"""

import math
import statistics
from collections import Counter
from dataclasses import dataclass

from coursework.records.points import earned, heading_of, in_order, total
from coursework.reports import class_words as words
from coursework.reports.copied_words import copied_in_words
from coursework.terms.grades import LOW
from coursework.words import number
from kitchenmath.practice import in_words

__all__ = [
    "DOTS",
    "FEWEST",
    "STEP_PERCENT",
    "ClassPicture",
    "class_picture",
    "percent",
    "repeated_slips",
    "shortened",
    "signed",
]

FEWEST = 5  # hand-ins; with fewer, one student turns "who does well here" round
SAME = 1e-9  # points closer than this are equal: floating point, not marking
STEP_PERCENT = 2.5  # marks are drawn at the nearest step
DOTS = 60  # students; in a larger class dots would be dust, and bars say more
QUOTED = 60  # characters of a student's own text in a sentence about them


@dataclass(frozen=True)
class SlipMade:
    """A usual slip in a class; those that one answer shows together count as one.

    Attributes
    ----------
    names : tuple of str
    alternatives : bool
        Whether the answers cannot tell which of `names` it was.
    count : int
    questions : dict of str to int
    sentence : str
        As the student reads it.
    """

    names: tuple
    alternatives: bool
    count: int
    questions: dict
    sentence: str


@dataclass(frozen=True)
class NeedsWord:
    """A student with whom the instructor may want a word, and why."""

    student: str
    name: str
    reasons: list


@dataclass(frozen=True)
class ClassPicture:
    """What a class did in one set.

    Attributes
    ----------
    questions : dict of str to str
        Question to its heading, in order.
    out_of : dict of str to float
        Question to its points.
    counted : dict of str to int
        Question to how many hand-ins are marked on it.
    facility : dict of str to (float or None)
        Question to the mean share of its points: 0 nobody, 1 everybody.
    discrimination : dict of str to (float or None)
        Question to the correlation of its points with the points of the other questions, -1 to 1.
    blank : dict of str to str
        Why a question has no facility or discrimination, in words.
    totals : dict of str to Total
        Student to points so far; who handed in nothing is not in it.
    nothing : tuple of str
        Students on the roster without a hand-in.
    slips : list of SlipMade
        Commonest first.
    needs_word : list of NeedsWord
        Those with most reasons first.
    """

    questions: dict
    out_of: dict
    counted: dict
    facility: dict
    discrimination: dict
    blank: dict
    totals: dict
    nothing: tuple
    slips: list
    needs_word: list

    @property
    def shares(self):
        """Each student's share of the points marked so far, lowest first."""
        shares = (each.share for each in self.totals.values())
        return sorted(share for share in shares if share is not None)


def class_picture(records, human, roster, waiting=(), low=LOW):
    """The numbers of a class in one set.

    Parameters
    ----------
    records : list of Record
    human : dict of (str, str) to HumanMark
        Points and comments of a person, by student and question.
    roster : dict of str to str
        Student number to name.
    waiting : collection of str, optional
        Students who handed in and are not marked yet.
    low : float
        Share of the points below which a student needs a word.

    Returns
    -------
    ClassPicture

    Notes
    -----
    A question's discrimination compares it with the *other* questions (Pearson's correlation
    with the corrected total): compared with a total that holds the question itself, every
    question seems to agree. Only questions that are marked for everybody enter the others'
    total, so that a half-marked written answer does not pass for a weak student.
    """
    cells = {record.student: earned(record, human) for record in records}
    totals = {student: total(mine) for student, mine in cells.items()}
    headings, out_of = _questions(records)
    points = {
        question: [mine[question].points if question in mine else None for mine in cells.values()]
        for question in headings
    }
    discrimination, blank = _compared(points)
    present = {*cells, *waiting}
    return ClassPicture(
        questions=headings,
        out_of=out_of,
        counted={each: sum(mark is not None for mark in points[each]) for each in points},
        facility={each: _facility(column, out_of[each]) for each, column in points.items()},
        discrimination=discrimination,
        blank=blank,
        totals=totals,
        nothing=tuple(student for student in roster if student not in present),
        slips=_slips(records),
        needs_word=_needs_word(records, totals, roster, waiting, low),
    )


def _questions(records):
    """Headings and points of all questions that any hand-in was asked, in order."""
    headings, out_of = {}, {}
    for record in records:
        for asked in record.questions:
            if asked.question not in headings:
                headings[asked.question] = heading_of(asked.asked, asked.question)[0]
                out_of[asked.question] = asked.out_of
    ordered = sorted(headings, key=in_order)
    return {each: headings[each] for each in ordered}, {each: out_of[each] for each in ordered}


def _compared(points):
    """Each question's correlation with the others, and why where there is none."""
    whole = [question for question, column in points.items() if None not in column]
    sums = [math.fsum(row) for row in zip(*map(points.get, whole), strict=True)]
    found, blank = {}, {}
    for question, column in points.items():
        rest = sums or [0.0] * len(column)
        if question in whole:
            rest = [sum_ - mine for sum_, mine in zip(sums, column, strict=True)]
        found[question], why = _discrimination(column, rest, not set(whole) - {question})
        if why:
            blank[question] = why
    return found, blank


def _facility(column, out_of):
    """Mean share of a question's points, or None where nothing is marked or nothing is to get."""
    marks = [mark for mark in column if mark is not None]
    return statistics.fmean(marks) / out_of if marks and out_of > 0 else None


def _discrimination(column, rest, alone):
    """Correlation of a question with the rest, or None and why."""
    pairs = [(mark, other) for mark, other in zip(column, rest, strict=True) if mark is not None]
    if not pairs:
        return None, "nothing is marked yet"
    if len(pairs) < FEWEST:
        return None, words.FEW.format(fewest=FEWEST)
    if alone:
        return None, words.NOTHING_ELSE
    here, elsewhere = zip(*pairs, strict=True)
    if max(here) - min(here) < SAME:
        return None, words.ALIKE_HERE
    if max(elsewhere) - min(elsewhere) < SAME:
        return None, words.ALIKE_ELSEWHERE
    return statistics.correlation(here, elsewhere), ""


def _slips(records):
    """Usual slips, commonest first; those that give the same number are counted as one."""
    found = {}
    for record in records:
        for answered in record.answered:
            if answered.outcome == "slip":
                found.setdefault((answered.slips, answered.alternatives), []).append(answered)
    slips = [
        SlipMade(
            *kind,
            count=len(made),
            questions=dict(sorted(Counter(each.question for each in made).items())),
            sentence=in_words(made[0]),
        )
        for kind, made in found.items()
    ]
    return sorted(slips, key=lambda each: (-each.count, each.names, each.alternatives))


def _needs_word(records, totals, roster, waiting, low):
    """Who needs a word and why, those with most reasons first."""
    reasons = {student: ["handed in nothing"] for student in roster}
    reasons |= {student: [words.WAITS] for student in waiting}
    for record in records:
        reasons[record.student] = _reasons(record, totals[record.student], roster, low)
    wanted = [NeedsWord(who, roster.get(who, who), why) for who, why in reasons.items() if why]
    return sorted(wanted, key=lambda each: (-len(each.reasons), each.student))


def _reasons(record, sum_, roster, low):
    """Why the instructor may want a word with one student; empty where there is no reason."""
    why = []
    if sum_.share is not None and sum_.share < low:
        got, marked = number(sum_.points), number(sum_.marked)
        why.append(words.SO_FAR.format(got=got, marked=marked, low=percent(low)))
    why += [
        f"the same slip {count} times: {name}"
        for name, count in repeated_slips(record).items()
        if count > 1
    ]
    why += [
        words.UNREADABLE.format(
            heading=heading_of(one.asked, one.question)[0], answer=shortened(one.answer)
        )
        for one in record.answered
        if one.outcome == "unreadable"
    ]
    for one in record.copied:
        other = one.student
        named = f"{other} ({roster[other]})" if other in roster else other
        why.append(f"compare {record.student} with {named}: {copied_in_words(one)}")
    why += [shortened(each, 3 * QUOTED) for each in (*record.findings, *record.to_do)]
    if record.student not in roster:
        why.append(words.NOT_ON_ROSTER)
    return why


def repeated_slips(record):
    """In how many questions a student made each slip.

    Parameters
    ----------
    record : Record

    Returns
    -------
    dict of str to int
        By the slip's name. Where several slips give one number, each of them counts.
    """
    return dict(Counter(slip for each in record.answered for slip in each.slips))


def shortened(text, most=QUOTED):
    """A student's own text on one line, cut where it is long."""
    line = " ".join(text.split())
    return line if len(line) <= most else f"{line[: most - 1]}…"


def percent(share):
    """A share as a whole percent that no line end tears apart: 38 %."""
    return f"{100 * share:.0f}\N{NO-BREAK SPACE}%"


def signed(value):
    """A number from -1 to 1 with two figures and a true minus sign: 0.42, −0.10."""
    return f"{round(value, 2) + 0.0:.2f}".replace("-", "−")
