"""What is named as alike, and what is not: records as marking leaves them. All is invented."""

import random

import pytest
from coursework.records.copies import with_copies
from coursework.reports.copied_words import copied_in_words

from tests.helpers import records as left

READ = "2.8, 2.9, 3.1, 3, 3.2, 2.7, 3, 2.95, 3.05, 3.1 mm (0.11 to 0.13 in)"
WORDS = "I weighed the celeriac twice, because the scale at the back door shows fifty grams only."


def record(number, amounts=(), readings="", written=""):
    """One student: amounts are (question, answer, right)."""
    verdicts = [left.verdict(one, answer=answer, right=right) for one, answer, right in amounts]
    if readings:
        verdicts.append(left.verdict("q1", answer=readings, right=""))
    return left.record(f"BH-{1001 + number}", *verdicts, human=[left.written("q7", written)])


def alone(number):
    """A student who worked alone: own amounts, ten own readings, own words."""
    chance = random.Random(f"cook {number}")
    cubes = ", ".join(f"{chance.choice((2.5, 3, 3, 3.5)):g}" for _ in range(10))
    own = [f"{number + place} kg" for place in range(4)]
    amounts = [(f"q{place}", one, one) for place, one in enumerate(own, start=2)]
    trade = ("salt", "brine", "net", "weigh", "peel", "trim", "cut", "fowl", "foam", "jus")
    words = " ".join(chance.choices(trade, k=40))
    return record(number, amounts, f"{cubes} mm (0.1 to 0.14 in)", words)


def named(*records):
    """The first student's reasons, by the other's number."""
    return {one.student: copied_in_words(one) for one in with_copies(list(records))[0].copied}


def class_of(many, *others):
    return [*others, *(alone(number) for number in range(len(others), many))]


def test_24_who_worked_alone_are_not_named():
    """Coarse readings, taken to half a millimetre, agree in many places by themselves.

    Twenty such classes: at most 0.05 pairs in each may be named by chance, so 1 in all of them.
    """
    found = 0
    for first in range(0, 480, 24):
        records = [alone(number) for number in range(first, first + 24)]
        found += sum(len(one.copied) for one in with_copies(records)) // 2

    assert found <= 1


def test_a_classmates_ten_readings_are_named_though_nothing_else_is_alike():
    assert {"BH-1002": "10 of 10 readings the same in q1"} == named(
        *class_of(24, record(0, readings=READ), record(1, readings=READ))
    )


@pytest.mark.parametrize(
    ("changed", "reason"),
    [
        (READ.replace("2.8", "2.85"), "9 of 10 readings the same in q1"),
        ("3.1, 3.05, 2.95, 3, 2.7, 3.2, 3, 3.1, 2.9, 2.8 mm", "10 of 10 readings the same in q1"),
    ],
    ids=["one changed", "turned round"],
)
def test_one_reading_changed_or_another_order_hides_nothing(changed, reason):
    assert {"BH-1002": reason} == named(
        *class_of(24, record(0, readings=READ), record(1, readings=changed))
    )


def test_a_probes_log_is_compared_like_readings():
    """Times are the same for all, so a place agrees only where the temperature does too."""
    log = "; ".join(f"{5 * place} min {8 + 5.3 * place:g} °C" for place in range(10))
    other = "; ".join(f"{5 * place} min {7 + 5.1 * place:g} °C" for place in range(10))

    assert {"BH-1003": "10 of 10 readings the same in q1"} == named(
        *(record(number, readings=each) for number, each in enumerate((log, other, log)))
    )


def test_readings_that_are_all_alike_prove_nothing():
    """Ten times 3 mm: what a lazy eye reads, whoever has it."""
    lazy = ", ".join(["3"] * 10) + " mm"

    assert {} == named(*(record(number, readings=lazy) for number in range(5)))


def test_three_amounts_of_a_classmate_are_named_and_a_full_stop_hides_nothing():
    """The other's numbers differ, so what is right for one is wrong for the other."""
    hers = [(f"q{place}", f"{place} kg", f"{place} kg") for place in range(1, 6)]
    his = [(question, answer, "9 kg") for question, answer, _ in hers]
    records = class_of(24, record(0, hers, written=WORDS), record(1, his, written=WORDS + " ."))

    assert {
        "BH-1002": "the same amounts in q1, q2, q3, q4, q5, where their numbers differ; "
        "mostly the same words in q7"
    } == named(*records)
    assert {} == named(*class_of(24, record(0, hers), record(1, his[:2])))


def test_three_amounts_are_a_sign_and_two_are_none():
    hers = [(f"q{place}", f"{place} kg", f"{place} kg") for place in range(1, 4)]
    his = [(question, answer, "9 kg") for question, answer, _ in hers]

    assert ["BH-1002"] == list(named(*class_of(24, record(0, hers), record(1, his))))
    assert {} == named(*class_of(24, record(0, hers[:2]), record(1, his[:2])))


def test_six_readings_are_a_sign_and_five_are_none():
    """To a twentieth of a millimetre, as no two cooks have them by chance."""
    six = "2.85, 2.95, 3.15, 3.05, 3.25, 2.75"
    five = six.rpartition(",")[0]

    assert ["BH-1002"] == list(
        named(*class_of(24, *(record(i, readings=f"{six} mm") for i in (0, 1))))
    )
    assert {} == named(*class_of(24, *(record(i, readings=f"{five} mm") for i in (0, 1))))


def test_the_same_amounts_for_the_same_numbers_are_right_and_no_copy():
    hers = [(f"q{place}", f"{place} kg", f"{place} kg") for place in range(1, 6)]

    assert {} == named(record(0, hers), record(1, hers))


def test_an_answer_that_most_give_is_no_sign():
    """One net is what everybody types who forgot something."""
    usual = [
        record(number, [(f"q{place}", "1", f"{number}") for place in range(2, 6)])
        for number in range(24)
    ]
    assert {} == named(*usual)


def test_what_a_quarter_of_the_class_give_is_a_sign_and_what_more_give_is_none():
    """By hand: a quarter of 40 is 10; an eleventh makes it what one types there."""

    def giving(many):
        return [
            record(number, [(f"q{place}", "1 net", f"{number} kg") for place in range(2, 6)])
            for number in range(many)
        ]

    assert 9 == len(named(*class_of(40, *giving(10))))
    assert {} == named(*class_of(40, *giving(11)))


def test_a_word_changed_here_and_there_is_the_same_answer():
    changed = WORDS.replace("twice", "two times").upper()

    assert {"BH-1002": "mostly the same words in q7"} == named(
        *class_of(24, record(0, written=WORDS), record(1, written=changed))
    )
    assert {} == named(record(0, written="Peel it twice."), record(1, written="Peel it twice."))


def test_words_of_the_lesson_that_many_quote_are_nobodys():
    quoted = [record(number, written=f"{WORDS} {number}") for number in range(24)]

    assert {} == named(*quoted)


def test_of_four_with_the_same_readings_each_later_one_is_named_with_the_first():
    records = class_of(24, *(record(number, readings=READ) for number in range(4)))

    assert [3, 1, 1, 1, 0] == [len(one.copied) for one in with_copies(records)[:5]]
