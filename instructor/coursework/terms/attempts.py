"""Attempts: which hand-ins of a student a policy may count, each with its marks.

The latest is marked with its set. The original of an earlier one is kept since it arrived, so it
is marked when the mark book first asks for it; its record goes to `marks/<set>/earlier`, and is
made anew whenever the latest was marked anew, so that one key judges both.
"""

from dataclasses import asdict, replace

from coursework.arriving.placing import original
from coursework.decisions.applied import as_decided
from coursework.decisions.holding import Holding
from coursework.marking.mark_one import mark
from coursework.records.points import NOTHING, earned, total
from coursework.records.record import HumanMark
from coursework.records.record_file import as_text, read_record
from coursework.safe_files import digest, keep_earlier, write_safely
from coursework.sets.class_keys import class_key
from coursework.terms.counting import Attempt, late_days
from coursework.terms.lateness import clock, each_late, tries

__all__ = ["attempts_of", "points_for", "said_to_count"]


def attempts_of(course, set_id, latest, arrived, human, holds=None):
    """A student's attempts at a set, in order.

    Parameters
    ----------
    course : Course
    set_id : str
    latest : Record
        The record of the hand-in that was marked.
    arrived : list of Arrival
        Of this student for this set, earliest first; may be empty, where nobody listed them.
    human : dict of (str, str) to HumanMark
        Points and comments of a person, by student and question.
    holds : Holding, optional
        What a person decided; nothing by default.

    Returns
    -------
    list of Attempt
        With the policy "latest" from the last that is not too late: no other is marked for it.
        Where a person said which one counts, that one only.
    int
        How many there were.

    Raises
    ------
    CourseError
        When an earlier hand-in must be marked and its original is gone.
    """
    policy, holds = course.policy, holds or Holding()
    rule = holds.due(policy.rule(set_id), set_id, latest.student)
    if not arrived:
        late = late_days(clock(latest), rule.due)
        return [_attempt(policy, 1, late, latest, human)], 1
    counting = tries(arrived, rule.due)
    late = each_late(counting, rule)
    if chosen := said_to_count(arrived, holds):
        place = counting.index(chosen) if chosen in counting else 0  # else it was in time as well
        days = late[place] if chosen in counting else 0
        record, points, unread = _marked(course, set_id, chosen, latest, human, holds)
        attempt = _attempt(policy, place + 1, days, record, points, unread)
        return [replace(attempt, by_word=True)], len(counting)
    start = 0
    if policy.second_attempt == "latest":
        usable = [place for place, days in enumerate(late) if days <= policy.late_days]
        start = usable[-1] if usable else len(late) - 1
    found = []
    for place in range(start, len(counting)):
        record, points, unread = _marked(course, set_id, counting[place], latest, human, holds)
        found.append(_attempt(policy, place + 1, late[place], record, points, unread))
    return found, len(counting)


def said_to_count(arrived, holds):
    """The hand-in that a person said counts, which goes before any policy; None where nobody did.

    Parameters
    ----------
    arrived : list of Arrival
        Of one student for one set.
    holds : Holding

    Returns
    -------
    Arrival or None
    """
    said = [holds.counts.get((one.student, one.set_id)) for one in arrived]
    named = (one for one, word in zip(arrived, said, strict=True) if word)
    return next((one for one in named if one.sha256 == said[0].file), None)


def _marked(course, set_id, arrival, latest, human, holds):
    """One hand-in's record, a person's points in it, and what they were not given for."""
    if arrival.sha256 == latest.sha256:
        return latest, human, ()
    record = _earlier(course, set_id, arrival, latest)
    record, points = as_decided(record, points_for(record, latest, human), holds)
    return record, points, _unread(record, latest, points)


def points_for(record, latest, human):
    """The points of a person as they hold for an earlier attempt.

    Points in place of the machine's hold where the answer is the same. A written answer is read
    once: its points hold for every attempt that has one, as the gradebook keeps one mark a
    student; where there is nothing to read they are 0, as in the latest.

    Parameters
    ----------
    record, latest : Record
    human : dict of (str, str) to HumanMark

    Returns
    -------
    dict of (str, str) to HumanMark
    """
    last, mine = {each.question: each.answer for each in latest.questions}, {}
    for answered in record.answered:
        here = record.student, answered.question
        if here in human and last.get(answered.question) == answered.answer:
            mine[here] = human[here]
    for written in record.written:
        here = record.student, written.question
        mark = human.get(here, NOTHING)
        unread = not mark.points and not last.get(written.question, "").strip()
        if not written.answer.strip():
            mine[here] = HumanMark(0.0)
        elif not unread:  # a 0 for an empty latest answer says nothing about this one
            mine[here] = mark
    return mine


def _unread(record, latest, points):
    """Questions whose written answer has points that a person gave for another answer."""
    last = {each.question: each.answer for each in latest.written}
    return tuple(
        each.question
        for each in record.written
        if points.get((record.student, each.question), NOTHING).points is not None
        and each.answer.strip() not in ("", last.get(each.question, "").strip())
    )


def _attempt(policy, place, late, record, human, unread=()):
    """One attempt, with what being late costs it."""
    off = min(policy.late_percent * late, policy.late_percent_most)
    return Attempt(place, total(earned(record, human)), late, off, unread)


def _earlier(course, set_id, arrival, latest):
    """The record of an earlier attempt: as it was kept, or marked now."""
    student = latest.student
    name = f"{student}.{arrival.sha256[:12]}.json"
    file = course.marks(set_id, student).parent / "earlier" / name
    task = digest(f"{latest.task} {arrival.sha256}".encode())
    kept = read_record(file)  # none yet, or damaged: it is made from the original below
    if kept and kept.task == task:
        return kept
    record, _ = mark(
        {
            "key": class_key(course, set_id),
            "released": course.release(set_id).read_bytes(),
            "hand_in": original(course, arrival),
            "term": course.term,
            "student": student,
            "bounds": asdict(course.bounds),
        }
    )
    stamp = {"handed_in": arrival.handed_in, "sha256": arrival.sha256}
    record = replace(record, task=task, **stamp)
    if file.is_file():
        keep_earlier(course.folder, file)
    write_safely(file, as_text(record))
    return record
