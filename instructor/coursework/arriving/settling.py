"""What becomes of each hand-in: whose it is, which set, and which of several counts."""

import difflib
from dataclasses import replace
from pathlib import Path

from coursework.arriving import words
from coursework.arriving.clock import earliest_of_one_archive
from coursework.arriving.states import AGAIN, NOT_PLACED, SET_ASIDE
from coursework.arriving.which_counts import settled_for_one
from coursework.arriving.witnesses import Witnesses
from coursework.decisions.holding import holding
from coursework.gradebook.decision_list import decisions_of
from coursework.records.reading import marked_bytes
from kitchenmath.errors import KitchenError
from kitchenmath.practice import student_number

# What systems and word processors leave in folders, by name; no student made it.
SYSTEMS_OWN = ("thumbs.db", "ehthumbs.db", "desktop.ini")
LOCK = "~$"  # a document that was open when the folder was packed


def settle(course, arrivals):
    """What becomes of each arrival, by the roster and the sets handed out as they are now.

    Of several hand-ins of a student for a set the latest counts; at equal times the one that is
    later by its own word, and then the one that arrived later. What would take the place of a
    marked one waits for a person where only the file says whose it is.

    Parameters
    ----------
    course : Course
    arrivals : list of Arrival
        In the order of arrival.

    Returns
    -------
    list of Arrival
    """
    sets, first, hand_ins, settled = course.sets_handed_out(), {}, {}, []
    holds, who = holding(decisions_of(course)), Witnesses(course)
    for index, one in enumerate(_told_by(holds, one) for one in arrivals):
        before = first.setdefault(one.sha256, index) if one.sha256 else index
        student, set_id, reason = whose(one, course, sets)
        one = who.heard(one, student)
        became = NOT_PLACED
        if before != index:
            earlier, became = settled[before], AGAIN
            reason = words.CAME_BEFORE.format(name=earlier.name, place=Path(earlier.place).name)
            settled[before] = with_what_was_told(earliest_of_one_archive(earlier, one), one)
        elif aside := _why_set_aside(one, holds):
            became, reason = SET_ASIDE, aside
        elif not reason and who.disagree(one, student):
            student, set_id, reason = "", "", who.in_words(one, student)
        elif not reason:
            hand_ins.setdefault((student, set_id), []).append(index)
        settled.append(replace(one, student=student, set_id=set_id, became=became, reason=reason))
    for (student, set_id), indices in hand_ins.items():
        mine = [settled[index] for index in indices]
        marked = marked_bytes(course, set_id, student) if len(mine) > 1 else ""
        for index, one in zip(indices, settled_for_one(mine, holds, marked), strict=True):
            settled[index] = one
    return settled


def _why_set_aside(one, holds):
    """Why a file is nobody's hand-in: a person, or its name, says so; "" where it may be one."""
    if one.sha256 in holds.files and not holds.files[one.sha256].student:
        return holds.files[one.sha256].why or words.YOU_SET_ASIDE
    return words.A_SYSTEMS_OWN if _is_a_systems_own(one) and not one.told_student else ""


def _is_a_systems_own(one):
    name = one.name.rpartition("/")[2].casefold()
    return name in SYSTEMS_OWN or name.startswith(LOCK)


def _told_by(holds, one):
    """An arrival with what was decided of its bytes: whose it is."""
    if one.sha256 not in holds.ever_placed:
        return one
    found = holds.files.get(one.sha256)
    student, set_id = (found.student, found.set_id) if found else ("", "")
    return replace(one, told_student=student, told_set=set_id)


def with_what_was_told(one, other):
    """An arrival with what the instructor said of it, or else of the same bytes elsewhere."""
    told = one if one.told_student else other
    return replace(one, told_student=told.told_student, told_set=told.told_set)


def whose(arrival, course, sets):
    """Student and set of an arrival, and an empty reason; or why it has no place.

    Parameters
    ----------
    arrival : Arrival
    course : Course
    sets : list of str
        Those handed out.

    Returns
    -------
    (str, str, str)
    """
    if arrival.told_student:
        return _told(arrival, course, sets)
    if arrival.trouble:
        return "", "", arrival.trouble
    if arrival.says_student is None:
        return "", "", words.SAYS_NOBODY
    try:
        student = student_number(arrival.says_student)
    except KitchenError as error:
        empty = not arrival.says_student.strip()
        return "", "", words.NUMBER_EMPTY if empty else sentence(str(error))
    if student not in course.roster:
        near = difflib.get_close_matches(student, course.roster, n=2, cutoff=0.75)
        hint = words.DID_YOU_MEAN.format(near=" or ".join(near)) if near else ""
        return "", "", words.NOT_ON_ROSTER.format(student=student, hint=hint)
    if arrival.says_set is None:
        return "", "", words.SAYS_NO_SET.format(student=student)
    if arrival.says_set not in sets:
        out = ", ".join(sets) or "none"
        return "", "", words.NOT_OUT.format(set_id=arrival.says_set, out=out)
    if arrival.says_term not in (None, course.term):
        return "", "", words.OTHER_TERM.format(said=arrival.says_term, term=course.term)
    return student, arrival.says_set, ""


def _told(arrival, course, sets):
    """What the instructor said of it, as long as roster and sets still know it."""
    student, set_id = arrival.told_student, arrival.told_set
    if student not in course.roster:
        return "", "", words.YOU_SAID_A_STRANGER.format(student=student)
    if set_id not in sets:
        return "", "", words.YOU_SAID_NOT_OUT.format(set_id=set_id)
    return student, set_id, ""


def sentence(message):
    """An error's message as a sentence."""
    return message[:1].upper() + message[1:].rstrip(".") + "."
