"""What a late hand-in means, for the student's page.

What being late costs is counted in the term's mark book; the points of a set stay as they are.
"""

from coursework.words import number, plural

__all__ = ["in_words"]


def in_words(days, policy):
    """What being late means, for the student's page.

    Parameters
    ----------
    days : int
    policy : Policy

    Returns
    -------
    list of str
        A sentence each; none for a hand-in in time.
    """
    if not days:
        return []
    late = f"This came {plural(days, 'day')} late; a day counts once it has begun."
    if days > policy.late_days:
        most = plural(policy.late_days, "day")
        return [late, f"After {most} a hand-in does not count in the term's mark book."]
    off = min(policy.late_percent * days, policy.late_percent_most)
    if not off:
        return [late, "Nothing is taken off for that."]
    return [
        late,
        f"For that the term's mark book takes {number(off)} % of the set's points off; "
        "the points on this page are before that.",
    ]
