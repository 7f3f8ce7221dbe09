"""What two students' answers have in common that is no chance, question by question.

Every student has other numbers, so an amount that is right for one is wrong for another. Readings
are one's own: nobody reads the same ten twice. A written answer is one's own words.
"""

import math
import re
from collections import Counter
from itertools import combinations

__all__ = ["same_amounts", "same_readings", "same_words"]

# How many pairs of a class may be named although all worked alone.
FALSE_ALARMS = 0.05
FEWEST_READINGS = 6
# An answer that more of the class give is what one types there, whoever one is.
MOST_OF_CLASS = 0.25
RUN = 5  # words in a row
FEWEST_RUNS = 6  # so ten words in a row at least
SHARE_OF_RUNS = 0.5  # of the shorter answer


def same_amounts(records):
    """Questions in which pairs of students gave the same amount although their numbers differ.

    Parameters
    ----------
    records : list of Record

    Returns
    -------
    dict of (int, int) to list of str
        By the places of two records in the list; questions in order.
    """
    groups = {}
    for place, record in enumerate(records):
        for one in record.answered:
            answer = " ".join(one.answer.split())
            if answer and one.right and not _readings(answer):
                groups.setdefault((one.question, answer), []).append((place, one.right))
    found = {}
    for (question, _), given in groups.items():
        if len(given) > max(2, MOST_OF_CLASS * len(records)):
            continue
        for (one, right), (other, right_too) in combinations(given, 2):
            if right != right_too:
                found.setdefault((one, other), []).append(question)
    return found


def same_readings(records):
    """Readings that pairs of students have in common, where that is no chance.

    Parameters
    ----------
    records : list of Record

    Returns
    -------
    dict of (int, int) to list of (str, int, int)
        Question, how many are the same, and of how many.

    Notes
    -----
    Two students who measure alone have the very same readings in certain places with the chance
    p₁p₂p₃…, where p is how often the class has that reading; any k places of n can be the ones. In
    any order it is the chance of a multinomial distribution. It is said where fewer than 0.05
    pairs of the class would agree so far by chance: with coarse readings that needs all of them,
    and readings that are all alike are never enough.
    """
    found = {}
    for question, readings in _by_question(records).items():
        values = Counter(value for each in readings.values() for value in each)
        usual = {value: many / values.total() for value, many in values.items()}
        enough = FALSE_ALARMS / max(1, math.comb(len(records), 2))
        for one, other in _no_chance(readings, usual, enough):
            mine, others = readings[one], readings[other]
            any_order = sorted(mine) == sorted(others)
            many = sum(first == second for first, second in zip(mine, others, strict=True))
            many = len(mine) if any_order else many
            found.setdefault((one, other), []).append((question, many, len(mine)))
    return found


def same_words(records):
    """Written answers of pairs of students that share most of their runs of five words.

    Parameters
    ----------
    records : list of Record

    Returns
    -------
    dict of (int, int) to list of str
        Questions. Capitals, stops and spaces make no difference; runs that a quarter of the class
        have are the question's own words, or the lesson's.
    """
    found, runs = {}, {}
    for place, record in enumerate(records):
        for written in record.written:
            runs.setdefault(written.question, {})[place] = _runs(written.answer)
    for question, by_place in runs.items():
        shared, who = Counter(), {}
        for place, mine in by_place.items():
            for run in mine:
                who.setdefault(run, []).append(place)
        for places in who.values():
            if len(places) <= max(2, MOST_OF_CLASS * len(records)):
                shared.update(combinations(places, 2))
        for (one, other), many in shared.items():
            shorter = min(len(by_place[one]), len(by_place[other]))
            if shorter >= FEWEST_RUNS and many >= SHARE_OF_RUNS * shorter:
                found.setdefault((one, other), []).append(question)
    return found


def _readings(answer):
    """The single readings of an answer in the order they were taken; empty where it is none."""
    bare = re.sub(r"\([^()]*\)\s*$", "", answer)  # the same in other units
    parts = [part.strip() for part in re.split(r"[;,\n]\s+|\n", bare) if part.strip()]
    parts = [re.sub(r"\s+[^\d\s]+$", "", part) for part in parts]  # the unit behind the last one
    return tuple(parts) if len(parts) >= FEWEST_READINGS else ()


def _by_question(records):
    """Each student's readings, by question and place in the list."""
    found = {}
    for place, record in enumerate(records):
        for one in record.answered:
            if readings := _readings(one.answer):
                found.setdefault(one.question, {})[place] = readings
    return found


def _no_chance(readings, usual, enough):
    """Pairs with the same readings in all places, in all but one, or in any order."""
    groups = {}
    for place, mine in readings.items():
        groups.setdefault((_orders(mine), *sorted(mine)), []).append(place)
        groups.setdefault((1, *mine), []).append(place)
        for left_out in range(len(mine)):
            rest = *mine[:left_out], "", *mine[left_out + 1 :]
            groups.setdefault((len(mine), *rest), []).append(place)
    pairs = set()
    for (ways, *same), places in groups.items():
        if len(places) > 1 and ways * math.prod(usual.get(one, 1.0) for one in same) < enough:
            pairs.update(combinations(places, 2))
    return sorted(pairs)


def _orders(readings):
    """In how many orders these readings can stand."""
    orders = math.factorial(len(readings))
    for many in Counter(readings).values():
        orders //= math.factorial(many)
    return orders


def _runs(text):
    words = re.findall(r"\w+", text.casefold())
    return {tuple(words[start : start + RUN]) for start in range(len(words) - RUN + 1)}
