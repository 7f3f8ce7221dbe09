"""What pages and sheets say of an answer and of a hand-in."""

from coursework.words import plural

__all__ = [
    "AGREEMENT", "EARNED_BY_QUESTION", "FILLED_IN", "FOUND", "GIVEN_BY_HAND", "NOTHING",
    "NOTHING_THERE", "NOT_MARKED", "NOT_ON_ROSTER", "POINTS_SO_FAR",
    "late", "many_times", "not_yet",
]  # fmt: skip

# Each outcome as a sign and in words, so that nothing hangs on a colour.
FOUND = {
    "right": ("✓", "Right"),
    "close": ("≈", "The right way, rounded too far"),
    "follow-through": ("→", "Right method, carried on from an earlier slip"),
    "slip": ("!", "A usual slip"),
    "marked": ("•", "Marked by your instructor"),
    "wrong": ("✗", "Not right"),
    "missing": ("–", "No answer"),
    "unreadable": ("?", "Could not be read"),
}
FILLED_IN, NOTHING_THERE = "The cell is filled in.", "Nothing."
GIVEN_BY_HAND = " (points given by your instructor)"
NOT_ON_ROSTER, NOT_MARKED = "Not on the roster.", "Not marked yet."
NOTHING = "Nothing handed in."
# On the class's drawings.
EARNED_BY_QUESTION = "Share of the points earned, by question"
AGREEMENT = "Agreement with the other questions"
POINTS_SO_FAR = "points, of those marked so far"


def late(days):
    """That a hand-in came late."""
    return f"Handed in {plural(days, 'day')} late."


def many_times(count, named):
    """Which of several hand-ins counts: the latest, or one that a person named."""
    return f"Handed in {count} times: the {'one you named' if named else 'latest'} counts."


def not_yet(named):
    """That the hand-in that counts is not the one that is marked."""
    which = "one you named" if named else "latest hand-in"
    return f"The {which} is not marked yet: mark again."
