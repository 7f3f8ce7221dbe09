"""Recognising a copy of a classmate's file. It names what is alike; the instructor decides."""

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
    """Write into each record whose answers are the same text, as `copied`.

    All answers that were filled in are the same, and there are at least three of them. Every
    student has other numbers, so the same typed amounts are no chance; the same formula in all
    cells can be. Of more than two, each later one is named with the first.

    Parameters
    ----------
    records : list of dict
        In the order of student numbers; `alike` is a fingerprint or None.
    """
    groups = {}
    for record in records:
        if record.get("alike"):
            groups.setdefault(record["alike"]["sha256"], []).append(record)
            record["copied"] = []
    for first, *others in groups.values():
        reason = f"the same text in all {first['alike']['filled']} answers that were filled in"
        for other in others:
            first["copied"].append([other["student"], reason])
            other["copied"].append([first["student"], reason])
