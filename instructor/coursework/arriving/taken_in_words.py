"""What one taking-in brought, as a few lines for the terminal or for the desk."""

from coursework.arriving.arrivals import said
from coursework.arriving.clock import on_the_clock, still_to_come
from coursework.arriving.states import (
    AGAIN,
    COUNTS,
    HAND_INS,
    NOT_PLACED,
    REPLACED,
    SET_ASIDE,
    WAITS,
)
from coursework.words import UNKNOWN, plural

__all__ = ["AT_THE_DESK", "TYPED", "in_words"]

IN_DOUBT = "in doubt"
_STAYS = "What is marked stays until you say which one counts:"
_KEPT = "What is not placed is kept. Mend the roster and take it in again, or say whose it is:"
_OWN_WORD = "A file's own word decides nothing. Where you know better:"
# What to do next, by what became of a file: for who types commands, and for who sits at the desk.
TYPED = {
    WAITS: f"{_STAYS} at the desk, or with python3 instructor counts.",
    NOT_PLACED: f"{_KEPT} at the desk, or with python3 instructor place.",
    IN_DOUBT: f"{_OWN_WORD} python3 instructor handed-in.",
}
AT_THE_DESK = {
    WAITS: f"{_STAYS} below, in the inbox.",
    NOT_PLACED: f"{_KEPT} below, in the inbox.",
    IN_DOUBT: f"{_OWN_WORD} below, under “What you decide”, say when it was handed in.",
}

MOST_LINES = 20  # of a kind; the list has them all


def in_words(taken, to_do=TYPED, roster=UNKNOWN, titles=UNKNOWN):
    """A few lines for the instructor.

    Parameters
    ----------
    taken : TakenIn
    to_do : dict of str to str, optional
        `TYPED` or `AT_THE_DESK`: what to do next, where this reader does it.
    roster, titles : dict of str to str, optional
        What students and sets are called; at a terminal they are said as they are typed.

    Returns
    -------
    str
    """
    names = roster, titles
    lines = _of_new(taken, to_do, names) if taken.came else ["There is no file to take in."]
    if taken.mended:
        lines.append(f"{_counted(taken.mended)} that had no place before:")
        lines += _some(taken.mended, names)
    return "\n".join([*lines, *_of_persons(taken), *_of_times(taken, to_do)])


def _of_new(taken, to_do, names):
    """What became of the new files, and where there is something to do, what to do."""
    older = _counted(taken.came[len(taken.new) :])
    if not taken.new:
        return [f"Nothing new: {older} came before."]
    by = {one: [] for one in (*HAND_INS, AGAIN, WAITS, NOT_PLACED, SET_ASIDE)}
    for arrival in taken.new:
        by[arrival.became].append(arrival)
    words = {} if len(by[COUNTS]) == 1 else {COUNTS: "count"}
    words |= {} if len(by[WAITS]) == 1 else {WAITS: "wait for your word"}
    parts = [f"{len(those)} {words.get(one, one)}" for one, those in by.items() if those]
    lines = [f"{_counted(taken.new)} taken in: {', '.join(parts)}."]
    if len(taken.came) > len(taken.new):
        lines.append(f"{older} came before.")
    lines += _some(by[REPLACED], names)
    for state in (WAITS, NOT_PLACED):
        lines += [*_some(by[state], names), to_do[state]] if by[state] else []
    return lines


def _of_persons(taken):
    """Codes that do not fit, and a file that came before under another student's name."""
    for one in taken.new:
        if one.became in (*HAND_INS, WAITS) and one.code in ("wrong", "missing"):
            yield f"  {one.name}: {one.student}, {one.set_id}, the code is {one.code}."
        if one.became == AGAIN and one.student and one.sender not in ("", one.student):
            yield f"  {one.name}: from {one.sender}, and the very same file as {one.student}'s."


def _of_times(taken, to_do):
    """Times that a person should look at: those still to come, and those in doubt."""
    for one in filter(still_to_come, taken.new):
        yield (f"  {one.name}: it says {one.own_time}, which is still to come; "
               f"{one.handed_in} counts.")  # fmt: skip
    for one, counts, says in taken.in_doubt:
        yield (f"  {one.name}: {one.student}, {one.set_id}, {on_the_clock(counts)} counts, "
               f"which is late; by its own word it is from {on_the_clock(says)}.")  # fmt: skip
    if taken.in_doubt:
        yield to_do[IN_DOUBT]


def _some(those, names):
    """A line for each, or for the first ones and one that says where the others stand."""
    lines = [f"  {said(one, *names)}" for one in those[:MOST_LINES]]
    more = len(those) - MOST_LINES
    return [*lines, f"  and {more} more: arrived/list.csv has them all."] if more > 0 else lines


def _counted(those):
    """How many files, in words."""
    return plural(len(those), "file")
