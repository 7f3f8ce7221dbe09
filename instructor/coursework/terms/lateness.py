"""How late a hand-in came; `late_words` says what that means."""

from datetime import datetime

from coursework.arriving.placing import NO_TIME
from coursework.terms.counting import late_days

__all__ = ["clock", "days_late", "each_late", "tries"]


def tries(arrived, due):
    """The hand-ins that are attempts: of those that came by the due time, the last one only.

    Until then a student hands in again without a second thought, as the latest replaces the rest.

    Parameters
    ----------
    arrived : list of Arrival
        Of one student, earliest first.
    due : float or None

    Returns
    -------
    list of Arrival
    """
    in_time = [one for one in arrived if due is not None and (one.seconds or 0) <= due]
    return arrived[max(len(in_time) - 1, 0) :]


def each_late(attempts, rule):
    """Days that each attempt came late; those after the first have a due time of their own.

    Parameters
    ----------
    attempts : list of Arrival
        As from `tries`.
    rule : SetRule

    Returns
    -------
    list of int
    """
    dues = [rule.due, *[rule.second_due or rule.due] * (len(attempts) - 1)]
    return [late_days(one.seconds, due) for one, due in zip(attempts, dues, strict=False)]


def days_late(record, arrived, rule):
    """Days that the hand-in of a record came late.

    Parameters
    ----------
    record : Record
    arrived : list of Arrival
        Of this student for this set, earliest first; may be empty, where nobody listed them.
    rule : SetRule

    Returns
    -------
    int
        0 in time, or where the time is not known.
    """
    attempts = tries(arrived, rule.due)
    for one, late in zip(attempts, each_late(attempts, rule), strict=True):
        if one.sha256 == record.sha256:
            return late
    return late_days(clock(record), rule.due)


def clock(record):
    """The time of a hand-in from its record.

    Parameters
    ----------
    record : Record

    Returns
    -------
    float or None
        Seconds since 1970; None where it is not known.
    """
    said = record.handed_in.partition(".")[0]
    try:
        return None if said == NO_TIME else datetime.fromisoformat(said).timestamp()
    except ValueError:
        return None
