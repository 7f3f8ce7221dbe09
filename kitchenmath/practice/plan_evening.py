"""A plan typed by the twelve-hour clock: 7:08 in a kitchen that opens at 15:30 is 19:08."""

from kitchenmath.practice import look_words
from kitchenmath.practice.words import read_as_evening
from kitchenmath.service.clock import DAY_S, read_clock, say_clock

HALF_DAY_S = DAY_S // 2
NOON = "12:00"  # clock times of one day sort as text
AFTER_S = 3600  # plates go out for an hour after the service begins


def said_of_the_evening(starts):
    """How starts before noon are read in a kitchen that opens later.

    Parameters
    ----------
    starts : dict of str to str

    Returns
    -------
    list of str
        A sentence, or nothing.

    Examples
    --------
    >>> said_of_the_evening({"plate": "07:08", "foam": "19:14"})
    ['Where the kitchen opens later this is the evening: 07:08 is read as 19:08 (plate). For the \
morning, type am.']
    """
    early = [
        f"{start} is read as {say_clock(read_clock(start, name) + HALF_DAY_S)} ({name})"
        for name, start in starts.items()
        if start < NOON
    ]
    if not early:
        return []
    return [look_words.IN_THE_EVENING.format(early="; ".join(early))]


def in_the_evening(typed, kitchen):
    """The starts of a plan, those before the opening read as the evening where they fit there.

    Parameters
    ----------
    typed : TypedPlan
        One with an "am" in it stays as it is.
    kitchen : Kitchen

    Returns
    -------
    dict of str to str
    tuple of str
        A sentence that names what was read so; () where nothing was.
    """
    if kitchen.opens is None or typed.morning_said:
        return typed.starts, ()
    opens_s = read_clock(kitchen.opens, "opens")
    last_s = read_clock(kitchen.serve_at, "serve_at") + AFTER_S
    moved = {}
    for name, start in typed.starts.items():
        start_s = read_clock(start, name)
        later_s = start_s % DAY_S + HALF_DAY_S
        if start_s % DAY_S < HALF_DAY_S and start_s < opens_s <= later_s <= last_s:
            moved[name] = say_clock(later_s)
    if not moved:
        return typed.starts, ()
    name, start = next(iter(moved.items()))
    told = read_as_evening(typed.starts[name], start, kitchen.opens, len(moved))
    return typed.starts | moved, (told,)
