"""Recognising what was copied from a classmate. It names what is alike; the instructor decides."""

from dataclasses import replace

from coursework.records.likeness import same_amounts, same_readings, same_words
from coursework.records.record import Alike, Copied, InCommon
from coursework.safe_files import digest

# Two cooks may well type the same thing once or twice.
FEWEST = 3


def fingerprint(answers):
    """What a hand-in's answers have in common with a copy of it: spaces make no difference.

    Parameters
    ----------
    answers : dict of str to str
        The text of each answer cell, by name; "" where nothing was filled in.

    Returns
    -------
    Alike or None
        None for fewer than three.
    """
    texts = {name: " ".join(text.split()) for name, text in answers.items()}
    filled = {name: text for name, text in texts.items() if name.endswith("-answer") and text}
    if len(filled) < FEWEST:
        return None
    return Alike(digest(repr(sorted(filled.items())).encode()), len(filled))


def with_copies(records):
    """The records, each with the classmates whose answers it has, as `copied`.

    The same text in all answers that were filled in, readings that are no chance, three amounts
    that are the same although the numbers differ, or a written answer in mostly the same words.
    Two amounts in common may be chance; readings or a written answer need no other. Of more than
    two students each later one is named with the first.

    Parameters
    ----------
    records : list of Record
        In the order of student numbers.

    Returns
    -------
    list of Record
    """
    common = _in_common(records) | _same_text(records)
    copied, named = [[] for _ in records], [set() for _ in records]
    for one, other in sorted(common):
        if named[one] & named[other]:
            continue  # both are named with an earlier one
        named[other].add(one)
        copied[one].append(Copied(records[other].student, common[one, other]))
        copied[other].append(Copied(records[one].student, common[one, other]))
    return [
        replace(record, copied=tuple(mine)) for record, mine in zip(records, copied, strict=True)
    ]


def _in_common(records):
    """What pairs have in common question by question, by their places in the list."""
    found = {}
    for pair, readings in same_readings(records).items():
        found[pair] = [InCommon("readings", (one,), many, of) for one, many, of in readings]
    for pair, questions in same_amounts(records).items():
        if len(questions) >= FEWEST:
            found.setdefault(pair, []).append(InCommon("amounts", tuple(questions)))
    for pair, questions in same_words(records).items():
        found.setdefault(pair, []).append(InCommon("words", tuple(questions)))
    return {pair: tuple(each) for pair, each in found.items()}


def _same_text(records):
    """Pairs whose answers are the same text throughout, each student with the first of them."""
    groups = {}
    for place, record in enumerate(records):
        if record.alike:
            groups.setdefault(record.alike.sha256, []).append(place)
    return {
        (first, other): (InCommon("text", many=records[first].alike.filled),)
        for first, *others in groups.values()
        for other in others
    }
