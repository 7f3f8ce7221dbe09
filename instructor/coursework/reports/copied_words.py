"""What two hand-ins have in common, for the instructor."""

__all__ = ["copied_in_words"]

SAID = {
    "text": "the same text in all {many} answers that were filled in",
    "readings": "{many} of {out_of} readings the same in {questions}",
    "amounts": "the same amounts in {questions}, where their numbers differ",
    "words": "mostly the same words in {questions}",
}


def copied_in_words(copied):
    """What is in common, to stand behind the other student's name.

    Parameters
    ----------
    copied : Copied

    Returns
    -------
    str

    Examples
    --------
    >>> from coursework.records.record import Copied, InCommon
    >>> copied_in_words(Copied("BH-2", (InCommon("readings", ("q1",), 9, 10),)))
    '9 of 10 readings the same in q1'
    """
    return "; ".join(
        SAID[one.kind].format(many=one.many, out_of=one.out_of, questions=", ".join(one.questions))
        for one in copied.common
    )
