"""What the class's page says of its numbers: how hard, how telling, and who needs a word."""

from coursework.terms.grades import LOW

__all__ = ["ALIKE_ELSEWHERE", "ALIKE_HERE", "FEW", "NOTHING_ELSE", "NOT_ON_ROSTER", "SO_FAR",
           "UNREADABLE", "WAITS", "discrimination_in_words", "facility_in_words"]  # fmt: skip

# Why a question has no discrimination.
FEW = "fewer than {fewest} hand-ins are marked"
NOTHING_ELSE = "no other question is marked for everybody, so there is nothing to compare"
ALIKE_HERE = "everybody has the same points here"
ALIKE_ELSEWHERE = "everybody has the same points elsewhere"
# Why somebody needs a word.
WAITS = "handed in, but is not marked yet: mark again"
SO_FAR = "{got} of {marked} points so far, which is under {low}"
UNREADABLE = "“{heading}” could not be read: the answer is “{answer}”"
NOT_ON_ROSTER = "is not on the roster"


def facility_in_words(share, waits):
    """What a share means; not yet, where answers wait: an empty one is marked before the rest."""
    if share is None:
        return "nothing is marked yet"
    if waits:
        return f"only of what is marked; {waits} more to mark"
    if share >= 0.85:
        return "nearly all of it came right"
    if share >= 0.60:
        return "most of it came right"
    if share >= LOW:
        return "about half of it came right: go over it"
    return "most of it went wrong: teach it again"


def discrimination_in_words(value):
    """What it means that points here and elsewhere go together, or do not."""
    if value >= 0.30:
        return "who did well elsewhere did well here too"
    if value >= 0.10:
        return "who did well elsewhere did a little better here"
    if value > -0.10:
        return "doing well elsewhere made no difference here"
    return "who did well elsewhere did worse here: read the question and its key again"
