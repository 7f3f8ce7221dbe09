"""Recognising what was copied from a classmate. It names what is alike; the instructor decides."""

from coursework.records.likeness import same_amounts, same_readings, same_words
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
    dict or None
        `sha256` of the texts and how many were `filled`; None for fewer than three.
    """
    texts = {name: " ".join(text.split()) for name, text in answers.items()}
    filled = {name: text for name, text in texts.items() if name.endswith("-answer") and text}
    if len(filled) < FEWEST:
        return None
    return {"sha256": digest(repr(sorted(filled.items())).encode()), "filled": len(filled)}


def name_copies(records):
    """Write into each record whose answers are a classmate's, as `copied`: student and reason.

    The same text in all answers that were filled in, readings that are no chance, three amounts
    that are the same although the numbers differ, or a written answer in mostly the same words.
    Two amounts in common may be chance; readings or a written answer need no other. Of more than
    two students each later one is named with the first.

    Parameters
    ----------
    records : list of dict
        In the order of student numbers; `alike` is a fingerprint or None.
    """
    reasons = {}
    for pair, questions in same_amounts(records).items():
        if len(questions) >= FEWEST:
            said = f"the same amounts in {', '.join(questions)}, where their numbers differ"
            reasons.setdefault(pair, []).append(said)
    for pair, found in same_readings(records).items():
        said = [f"{many} of {out_of} readings the same in {one}" for one, many, out_of in found]
        reasons.setdefault(pair, [])[:0] = said
    for pair, questions in same_words(records).items():
        said = f"mostly the same words in {', '.join(questions)}"
        reasons.setdefault(pair, []).append(said)
    whole = _same_text(records)
    for record in records:
        record["copied"] = []
    named = {}
    for one, other in sorted({*reasons, *whole}):
        if named.setdefault(one, set()) & named.setdefault(other, set()):
            continue  # both are named with an earlier one
        named[other].add(one)
        reason = whole.get((one, other)) or "; ".join(reasons[one, other])
        records[one]["copied"].append([records[other]["student"], reason])
        records[other]["copied"].append([records[one]["student"], reason])


def _same_text(records):
    """Pairs whose answers are the same text throughout, each student with the first of them."""
    groups = {}
    for place, record in enumerate(records):
        if record.get("alike"):
            groups.setdefault(record["alike"]["sha256"], []).append(place)
    return {
        (first, other): f"the same text in all {records[first]['alike']['filled']} answers that "
        "were filled in"
        for first, *others in groups.values()
        for other in others
    }
