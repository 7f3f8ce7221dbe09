"""What people put around an amount and what changes nothing: words, brackets, faces of a phone."""

import re

# Little pictures, arrows and ticks: a phone offers them while one types.
PICTURES = re.compile(
    "[\U0001f000-\U0001faff\u2190-\u21ff\u2300-\u23ff\u25a0-\u27bf\u2b00-\u2bff\ufe0f\u20e3]"
)
FACE = re.compile(r"\s*[:;]-?[()D]$")
BRACKETS = re.compile(r"^[(\[<*_]+([^()\[\]<>*_]*)[)\]>*_]+$")
IN_FRONT = re.compile(
    r"^(?:(?:[=≈~•*>]|q\d+ ?[:=]|(?:answer|ans\.?|a) ?[:=])\s*"
    r"|(?:answer|ans\.?|about|around|roughly|exactly|approx\.?|approximately|ca\.?|circa|it'?s"
    r"|it is|i'?d say|i'?d buy|i'?d need|i need|i buy|buy|need)\s+)+",
    re.IGNORECASE,
)
BEHIND = re.compile(
    r"[ ,]*(?:please|pls|thanks|thank you|or so|and no more|approximately|approx\.?|roughly|in all"
    r"|in total|\((?:rounded|rounded up|rounded down|about|approx\.?|in all|in total)\))$",
    re.IGNORECASE,
)
ISH = re.compile(r"(?<=\d)[- ]?ish\b|[- ]ish$", re.IGNORECASE)
COUNTED = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
           "eleven", "twelve")  # fmt: skip
# Not “one or two” and not “one and a half”: those are no single number.
IN_WORDS = re.compile(rf"^({'|'.join(COUNTED)}) (?!or\b|to\b|and\b)(?=[a-z])", re.IGNORECASE)
HALF = re.compile(r"^half an? ", re.IGNORECASE)


def bare_amount(line):
    """A line without what stands around its amount.

    Parameters
    ----------
    line : str
        In plain characters and single spaces.

    Returns
    -------
    str
        A small number in words is in digits.

    Examples
    --------
    >>> bare_amount("It's about three kilos, please! 👍")
    '3 kilos'
    """
    line = re.sub(r"\s+", " ", FACE.sub("", PICTURES.sub(" ", line))).strip()
    line = BRACKETS.sub(r"\1", line).strip()
    line = BEHIND.sub("", ISH.sub("", IN_FRONT.sub("", line).rstrip(".!?").strip())).strip()
    line = HALF.sub("1/2 ", line)
    return IN_WORDS.sub(lambda word: f"{COUNTED.index(word[1].lower()) + 1} ", line)
