"""A measurement of one's own as an answer: read as it is typed, judged, and built upon."""

import itertools
import random

import numpy as np
import pytest
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import CourseError, load_key
from coursework.skills.fresh import fresh_question

from kitchenmath.errors import KitchenError
from kitchenmath.practice import (
    Measured,
    MeasuredSlip,
    Question,
    Slip,
    Within,
    beside,
    in_words,
    invented_logs,
    invented_readings,
    open_set,
)
from kitchenmath.practice.answer_look import look_over
from kitchenmath.practice.measured import built_on
from kitchenmath.practice.probe_log import ProbeLogKind
from kitchenmath.practice.question_kinds import answer_kind
from kitchenmath.practice.readings import ReadingsKind
from kitchenmath.units import Q_

TEN = "3.5, 3.0, 2.5, 4.0, 3.0, 3.5, 3.0, 2.5, 3.5, 3.0 mm"
TEN_MM = [3.5, 3, 2.5, 4, 3, 3.5, 3, 2.5, 3.5, 3]
LOG = "0 min 5 °C\n5 min 6.5 °C\n10 min 15 °C\n15 min 24 °C\n20 min 32 °C\n25 min 39 °C"
LOG_C = [5, 6.5, 15, 24, 32, 39]
RUBBISH = [
    None, "", "  ", "lots", "3.5", "mm", "3..5 mm", "-3 mm", "0 mm", "1e400 mm", "3 g, 4 g", "½",
    "9" * 300, "3, " * 2000, "\n\n", "[]", "q1", True, 3.0, -1, 10**400, float("nan"),
    float("inf"), [], [[]], [None], [[3, [4]]], {}, {"a": None}, {"a": {"b": 1}}, {1: [2], 3: 4},
    (1, 2, 3), [3, "lots"], ["3 mm"] * 500, Q_(3, "mm"), Q_([3, 4], "g"), Q_([], "mm"),
    Q_([5.0, 6.0], "degC"), [Q_(0, "min"), Q_(5, "degC")], "0 min 5 °C", "5 °C 0 min; 6 °C 1 min",
    "0 min 5 °C; 0 min 5 °C", "0 min 900 °C; 5 min 9 °C", [[0, 5], [5]], "10:99 5 °C", "🥕, 🥕 mm",
    object(), b"3 mm", [np.float64(3)] * 6, np.array(3.0), np.array([[3, 4], [5, 6]]),
    "3 mm " * 120, {"t": [0, 5, 9], "T": [5, 6]},
]  # fmt: skip


def lengths_mm(answer):
    return ReadingsKind().read(answer).lengths.magnitude.tolist()


def log_of(answer):
    log = ProbeLogKind().read(answer)
    return log.times.magnitude.tolist(), log.temperatures.magnitude.tolist()


@pytest.mark.parametrize(
    "typed",
    [
        TEN,
        TEN.replace(",", ";").replace(".", ","),
        TEN.replace(", ", " ").replace(".", ","),
        TEN.replace(", ", ","),
        TEN.replace(".", ","),
        "\n".join(f"{size} mm" for size in TEN_MM),
        "3½, 3, 2½, 4 3 3 1/2 and 3, 5/2, 7/2; 3 mm",
        "0.35 0.3 0.25 0.4 0.3 0.35 0.3 0.25 0.35 0.3 cm",
        "(3.5 3.0 2.5 4.0 3.0 3.5 3.0 2.5 3.5 3.0) millimetres",
        TEN.split(", "),
        TEN_MM,
        tuple(Q_(size, "mm") for size in TEN_MM),
        Q_(TEN_MM, "mm"),
        np.array(TEN_MM),
    ],
)
def test_ten_lengths_are_read_however_they_are_typed(typed):
    """The same ten: points or commas, blanks or lines, fractions, cm, lists and arrays."""
    assert pytest.approx(TEN_MM) == lengths_mm(typed)


@pytest.mark.parametrize(
    ("typed", "sizes_mm"),
    [
        ("3,4,3,2 mm", [3, 4, 3, 2]),  # a row of figures and commas is no decimal number
        ("3,4 mm", [3.4]),
        ("3,4 3,2 mm", [3.4, 3.2]),
        ('1/8", 3/32"', [3.175, 2.38125]),
        ("3 mm, 0.4 cm, 5", [3, 4, 50]),  # a bare number takes the unit before it
        ("3, 0.4 cm", [30, 4]),  # … or rather the one that follows
    ],
)
def test_commas_and_units_are_taken_by_one_rule(typed, sizes_mm):
    """By hand: 1/8 in = 25.4 / 8 = 3.175 mm; 3/32 in = 2.381 mm."""
    assert pytest.approx(sizes_mm) == lengths_mm(typed)


@pytest.mark.parametrize(
    "typed",
    [
        LOG,
        LOG.replace("\n", "; "),
        LOG.replace(" min", ",").replace(" °C", "").replace("\n", " °C\n", 1),
        "0;5 °C\n5;6,5\n10;15\n15;24\n20;32\n25;39",
        "time_min,temperature_C\n0,5\n5,6,5\n10,15\n15,24\n20,32\n25,39",
        "0' 5°\n5' 6.5°\n10' 15°\n15' 24°\n20' 32°\n25' 39 c",
        "18:05 5 °C\n18:10 6.5\n18:15 15\n18:20 24\n18:25 32\n18:30 39",
        "23:50 5 °C\n23:55 6.5\n0:00 15\n0:05 24\n0:10 32\n0:15 39",
        "18.50 5 °C, 18.55 6.5, 19.00 15, 19.05 24, 19.10 32, 19.15 39 °C",
        "18.50 5,0\n18.55 6,5\n19.00 15,0\n19.05 24,0\n19.10 32,0\n19.15 39,0",
        "6.50 pm 5 °C\n6:55 pm 6.5\n7.00 pm 15\n7.05 pm 24\n7.10 p.m. 32\n19h15 39",
        "23.55 5 °C\n0.00 6.5\n0.05 15\n0.10 24\n0.15 32\n0.20 39",
        "1855 5 °C\n1900 6.5\n1905 15\n1910 24\n1915 32\n1920 39",
        "0:00 5 °C\n5:00 6.5\n10:00 15\n15:00 24\n20:00 32\n25:00 39",
        [[18.5 + place / 20, core] for place, core in enumerate(LOG_C[:2])]
        + [[19 + place / 20, core] for place, core in enumerate(LOG_C[2:])],
        {f"18.{5 * place:02d}": f"{core} °C" for place, core in enumerate(LOG_C)},
        "0 min: 41 °F\n5 min: 43.7 °F\n10 min: 59\n15 min: 75.2\n20 min: 89.6\n25 min: 102.2 °F",
        "0 h 5 °C; 1/12 h 6.5; 1/6 h 15; 0.25 h 24; 1/3 h 32; 25 min 39 °C",
        LOG.split("\n"),
        dict(line.split(" min ") for line in LOG.split("\n")),
        [[5 * place, f"{core} °C"] for place, core in enumerate(LOG_C)],
        {"times": [0, 5, 10, 15, 20, 25], "temperatures": LOG_C},
        (Q_([0, 5, 10, 15, 20, 25], "min"), Q_(LOG_C, "degC")),
        [(Q_(5 * place, "min"), Q_(core, "degC")) for place, core in enumerate(LOG_C)],
    ],
)
def test_a_log_is_read_however_it_is_typed(typed):
    """The same six readings: by lines, by the clock, past midnight, in °F, from a table, computed.

    By hand: 6.5 °C = 43.7 °F, 24 °C = 75.2 °F, 39 °C = 102.2 °F.
    """
    times, cores = log_of(typed)

    assert pytest.approx([0, 5, 10, 15, 20, 25]) == times
    assert pytest.approx(LOG_C) == cores


@pytest.mark.parametrize(
    ("typed", "first", "last"),
    [
        ("18.00 5 °C, 18.05 6.5, 18.10 15", "18:00", 10),
        ("0.00 5 °C; 5.00 6.5; 10.00 15", "", 10),  # minutes with two noughts: five apart
        ("0.5 5 °C; 1.0 6.5; 1.5 15", "", 1.5),  # half a minute each: no clock steps so
        ("500 5 °C; 505 6.5; 510 15", "", 510),  # nobody begins at five in the morning
    ],
)
def test_times_that_step_like_a_clock_are_read_as_one_and_said(typed, first, last):
    """By hand: from 18.00 to 18.10 are ten minutes, and as minutes it would be six seconds."""
    log = answer_kind("probe log").read(typed)
    _, sentence = answer_kind("probe log").seen(log, None)

    assert (first, last) == (log.began, log.times.magnitude[-1])
    assert (f"Read off the clock: the first at {first}" in sentence) == bool(first)


FEW = "Look again: 7 readings are there, and 8 are asked for."


@pytest.mark.parametrize(
    ("cores", "words"),
    [
        ((9, 10, 15, 24, 32, 40, 46), FEW),
        ((9, 10, 11, 12, 13, 15, 17, 19), "the core went up by 10 °C, and 20 °C at least"),
        ((9, 9, 9, 10, 10, 11, 11, 12), "drawn for you: your log rises by less than 5 °C"),
        ((9, 10, 15, 24, 32, 40, 46, 44), "drawn for you: your log does not rise at its end"),
        ((9, 10, 15, 24), "drawn for you: fewer than five readings are too few"),
    ],
)
def test_what_a_log_will_lose_points_for_is_said_before_it_is_handed_in(cores, words):
    """What the text of the question asks for can be counted without knowing what is right."""
    typed = "\n".join(f"{5 * place} min {core} °C" for place, core in enumerate(cores))
    asked = ("-5 °C", "100 °C", "8 readings", "20 °C")
    doubtful, sentence = answer_kind("probe log").seen(answer_kind("probe log").read(typed), asked)

    assert doubtful
    assert words in sentence


def test_nine_readings_are_said_where_ten_are_asked_for():
    kind = answer_kind("readings")
    nine = kind.read("3, 3.5, 3, 2.5, 3, 3, 3.5, 3, 2.5 mm")

    assert kind.seen(nine, ("1 mm", "10 mm", "10 readings")) == (
        True,
        f"read as 9 lengths: {nine!r}. Look again: 9 readings are there, and 10 are asked for.",
    )


def test_a_dropped_log_is_told_with_the_reason(capsys):
    """The cell that starts the next questions says why it takes the log that was drawn."""
    sheet = open_set("08-heat-gently", "demo", "BH-1007")
    sheet.given("q1", sample=invented_logs([8], [80], [20], "a log"))
    sheet.look("q1", "", "probe log")
    sheet.build_on("q1", "0 min 9 °C; 5 min 9; 10 min 9; 15 min 10; 20 min 11 °C")

    assert "rises by less than 5 °C" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("kind", "typed", "words"),
    [
        ("readings", "3 mm, lots", "1 amounts, as far as “lots”"),
        ("readings", "3 mm, 4 g", "reading 2: 4 g is a weight: a length is asked for"),
        ("readings", "3 mm, 900 mm", "reading 2: 900 mm is no size of a cut piece"),
        ("readings", "3 mm, -3 mm", "reading 2: -3 mm is no size of a cut piece"),
        ("readings", 3.0, "3.0 is no list of lengths. Type a list of lengths, such as"),
        ("probe log", "0 min 5 °C\n10 min", "“10 min” has 1 amounts: a line holds a time and"),
        ("probe log", "5 °C 0 min; 6 °C 5 min", "reading 1: 5 °C is a temperature: a time comes"),
        ("probe log", "0 min 5 °C; 5 min 900 °C", "reading 2: 900 °C is nothing that a kitchen's"),
        ("probe log", {"t": [0, 5, 9], "T": [5, 6]}, "3 times and 2 temperatures came"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_gets_a_sentence(kind, typed, words):
    """It names the reading, what came and what is wanted."""
    look = look_over(typed, kind)

    assert look.state == "unreadable"
    assert words in look.sentence
    assert " Type a" in look.sentence


@pytest.mark.parametrize(
    ("kind", "typed", "words"),
    [
        ("readings", TEN, "read as 10 lengths: 3.5, 3, 2.5, 4, 3, 3.5, 3, 2.5, 3.5, 3 mm."),
        ("readings", "3, 3.5, 4", "taken for millimetres: type it"),
        ("readings", "3, 3, 3 mm", "All are alike"),
        ("readings", "3, 35, 3.5, 4 mm", "Look again at 35 mm"),
        ("readings", "3, 12, 9 mm", "Look again: 12 mm is hard to believe"),
        ("probe log", LOG, "read as 6 readings, from 0 min 5 °C to 25 min 39 °C."),
        ("probe log", "0 5; 5 9", "No scale stands there"),
        ("probe log", "5 min 9 °C; 0 min 5 °C", "not in the order of time"),
        ("probe log", "0 min 9 °C; 0 min 5 °C", "share a time"),
        ("probe log", "0 min 46 °C; 5 min 130 °C", "Look again: 130 °C is hard to believe"),
    ],
)
def test_a_look_says_what_was_read_and_what_is_odd(kind, typed, words):
    """Before anything is marked: how many, and what to look at again."""
    plausible = ("1 mm", "10 mm") if kind == "readings" else ("-5 °C", "100 °C")

    assert words in look_over(typed, kind, plausible).sentence


@pytest.mark.parametrize("kind", ["readings", "probe log"])
def test_rubbish_gets_a_sentence_and_never_an_error(kind):
    """Whatever comes: a look has words, and judging takes a kitchen error only."""
    for odd in RUBBISH:
        assert look_over(odd, kind).sentence
        built_on(odd, kind)


@pytest.mark.parametrize("kind", ["readings", "probe log"])
def test_texts_of_random_signs_never_stop_the_reading(kind):
    """2,000 texts of what a cook's keyboard makes; read, or refused in words."""
    chance = random.Random(7)
    signs = ["3", "0", "2.5", "3,5", ".", ",", ";", ":", " ", "\n", "mm", "min", "°C", "°F", "-",
             "1/2", "½", "in", "'", '"', "°", "and", "18:05", "(", "x", "e5"]  # fmt: skip
    for _ in range(2000):
        built_on("".join(chance.choices(signs, k=chance.randint(1, 14))), kind)


def test_a_sample_can_be_built_on_and_says_itself_whole():
    """Every invented one: as typed in each of its ways it is the same, and it is sound."""
    samples = invented_readings(Q_(3, "mm"), Q_(0.5, "mm"), "x").values
    logs = invented_logs((6, 12), (76, 84), (15, 21), "x").values
    for kind, sample in itertools.chain(
        (("readings", each) for each in samples), (("probe log", each) for each in logs)
    ):
        for typed in sample.ways:
            assert str(built_on(typed, kind)).split(" (")[0] == str(sample).split(" (")[0] or (
                kind == "probe log" and "°F" in str(built_on(typed, kind))
            )

    assert len({repr(each) for each in samples}) == len(samples) == 64
    assert beside(samples[0]) == "2.5, 4, 2.5, 3, 4, 3, 3, 3.5, 2, 4 mm (0.079 to 0.16 in)"
    assert beside(logs[0]).startswith("0 min 6 °C; 5 min")


@pytest.mark.parametrize(
    ("kind", "typed"),
    [
        ("readings", "3, 3.5, 4, 3 mm"),  # four
        ("readings", "3, 3, 3, 3, 3, 3 mm"),  # alike
        ("probe log", "0 min 5 °C; 5 min 9 °C; 10 min 20 °C; 15 min 30 °C"),  # four
        ("probe log", LOG + "\n25 min 40 °C"),  # a time twice
        ("probe log", LOG + "\n30 min 39 °C"),  # stands still at the end
        ("probe log", LOG.replace("39", "3")),  # cools
        ("probe log", "0 min 5 °C; 1 min 6 °C; 2 min 7 °C; 3 min 8 °C; 4 min 9 °C"),  # 4 °C only
    ],
)
def test_nothing_is_built_on_what_formulas_cannot_stand_on(kind, typed):
    """Too few, all alike, or a core that does not warm to the end: the drawn sample counts."""
    assert built_on(typed, kind) is None


def test_finer_digits_and_tenfold_readings_are_found():
    """By hand: 3.54 is no tenth of a millimetre; 35 is ten times 3.5, and 0.3 a tenth of 3."""
    found = ReadingsKind().read("3, 3.54, 35, 0.3, 3 mm")

    assert [Q_(3.54, "mm")] == found.finer_than(Q_(0.1, "mm"))
    assert [Q_(35, "mm"), Q_(0.3, "mm")] == found.tenfold
    assert ReadingsKind().read("1/8 in, 3/32 in").finer_than(Q_(0.1, "mm")) == []


COUNT = MeasuredSlip(
    "not ten", lambda readings: len(readings) != 10, "Ten were asked for.", 1, "ten pieces",
    lambda sample: ", ".join(f"{size:g}" for size in sample.lengths.magnitude[1:]) + " mm",
)  # fmt: skip
UNIT = MeasuredSlip(
    "no unit", lambda readings: not readings.unit_said, "No unit stands here.", 1, "the unit",
    lambda sample: ", ".join(f"{size:g}" for size in sample.lengths.magnitude),
)  # fmt: skip


def measuring(**changes):
    parts = {"id": "q1", "kind": "readings", "points": 3, "slips": (COUNT, UNIT)}
    return Measured(**(parts | changes))


def mean(**changes):
    parts = {
        "id": "q2", "kind": "length", "points": 2, "tolerance": Within(Q_(0.05, "mm")),
        "formula": lambda q1: q1.lengths.mean(),
        "slips": (Slip("the sum", lambda q1: q1.lengths.sum(), "This is the sum."),),
    }  # fmt: skip
    return Question(**(parts | changes))


def doubled():
    return Question(
        "q3", "length", 2, Within(Q_(0.05, "mm")), lambda q2: 2 * q2,
        (Slip("not doubled", lambda q2: q2, "Twice, please."),), method=1,
    )  # fmt: skip


def sheet_of(*questions):
    sheet = open_set("03-cut-to-size", "demo", "BH-1007")
    sheet.given("q1", sample=invented_readings(Q_(3, "mm"), Q_(0.5, "mm"), "a sample"))
    sheet.questions = {question.id: question for question in questions}
    return sheet


def outcomes(verdicts):
    return {each.question: (each.outcome, each.points) for each in verdicts.values()}


def test_each_rule_that_is_broken_costs_its_points_and_is_named():
    """Nine without a unit: 3 - 1 - 1 = 1 point, and both sentences are said."""
    verdict = measuring().judge(
        TEN.removesuffix(", 3.0 mm"), {"sample": ReadingsKind().read("3, 4, 3, 4, 3 mm")}
    )

    assert (verdict.outcome, verdict.points) == ("slip", 1.0)
    assert verdict.slips == ("not ten", "no unit")
    assert in_words(verdict) == "(1) Ten were asked for. (2) No unit stands here."


def test_costs_never_take_more_than_the_question_has():
    """One point, two rules broken: nought and not minus one."""
    assert (
        measuring(points=1)
        .judge(TEN[:8], {"sample": ReadingsKind().read("3, 4, 3, 4, 3 mm")})
        .points
        == 0
    )


def test_readings_that_nothing_can_be_built_on_earn_nothing():
    """Three are too few to tell a spread, whatever slips the question has."""
    verdict = measuring(slips=()).judge("3, 4, 3 mm", {"sample": ReadingsKind().read(TEN)})

    assert ("wrong", 0) == (verdict.outcome, verdict.points)


def test_own_readings_take_the_place_of_the_sample():
    """By hand: the ten add up to 31.5, so their mean is 3.15 mm; the sample's is 3.4 mm."""
    sheet = sheet_of(measuring(), mean(), doubled())
    own = sheet.mark("BH-1007", {"q1": TEN, "q2": "3.15 mm", "q3": "6.3 mm"})
    drawn = sheet.mark("BH-1007", {"q2": "3.4 mm", "q3": "6.8 mm"})

    assert outcomes(own) == {"q1": ("right", 3), "q2": ("right", 2), "q3": ("right", 2)}
    assert outcomes(drawn) == {"q1": ("missing", 0), "q2": ("right", 2), "q3": ("right", 2)}
    assert own["q2"].right == "3.15 mm"
    assert drawn["q2"].right == "3.4 mm"


def test_with_own_readings_the_samples_answer_is_wrong_and_the_other_way_round():
    """Who measured and then reckoned with the sample has not read the sheet."""
    sheet = sheet_of(measuring(), mean())

    assert outcomes(sheet.mark("BH-1007", {"q1": TEN, "q2": "3.4 mm"}))["q2"] == ("wrong", 0)
    assert outcomes(sheet.mark("BH-1007", {"q2": "3.15 mm"}))["q2"] == ("wrong", 0)


def test_slips_and_follow_through_are_reckoned_from_own_readings():
    """By hand: the sum is 31.5 mm; twice that is 63 mm, a right method on a slip."""
    sheet = sheet_of(measuring(), mean(), doubled())
    found = sheet.mark("BH-1007", {"q1": TEN, "q2": "31.5 mm", "q3": "63 mm"})

    assert found["q2"].slips == ("the sum",)
    assert outcomes(found)["q3"] == ("follow-through", 1)


def test_flawed_readings_are_built_on_all_the_same():
    """Nine without a unit lose two points here and none later: 28.5 / 9 = 3.17 mm."""
    sheet = sheet_of(measuring(), mean())
    found = sheet.mark("BH-1007", {"q1": TEN.removesuffix(", 3.0 mm"), "q2": "3.17 mm"})

    assert outcomes(found) == {"q1": ("slip", 1), "q2": ("right", 2)}


def test_the_drawn_sample_is_no_measurement():
    """Typed off, in whatever way, it earns nothing and is named; the rest is reckoned from it."""
    sheet = sheet_of(measuring(), mean())
    for typed in ("4, 3, 3, 4, 4, 3.5, 2.5, 3.5, 3.5, 3 mm", "4 3 3 4 4 3,5 2,5 3,5 3,5 3"):
        found = sheet.mark("BH-1007", {"q1": typed, "q2": "3.4 mm"})

        assert outcomes(found) == {"q1": ("slip", 0), "q2": ("right", 2)}
        assert found["q1"].slips == ("took the sample that was drawn",)
        assert "Leave the answer empty" in in_words(found["q1"])


@pytest.mark.parametrize("odd", RUBBISH)
def test_a_missing_or_odd_measurement_costs_its_own_points_only(odd):
    """The sample drawn for BH-1007 has a mean of 3.4 mm, and the verdict says that it counts."""
    sheet = sheet_of(measuring(), mean())
    found = sheet.mark("BH-1007", {"q1": odd, "q2": "3.4 mm"})
    if built_on(odd, "readings") is None:
        assert outcomes(found)["q2"] == ("right", 2)
        assert "marked from the sample" in in_words(found["q1"])
    assert found["q1"].points < 3


def test_the_students_notebook_says_which_readings_count(capsys):
    """The same rule as in marking, from the look alone; and nothing without a student number."""
    sheet = sheet_of()
    sheet.look("q1", TEN, "readings")
    own, drawn = sheet.build_on("q1", TEN), sheet.build_on("q1", "3, 3, 3 mm")
    said = capsys.readouterr().out
    nobody = open_set("03-cut-to-size", "demo", "")
    nobody.given("q1", sample=invented_readings(Q_(3, "mm"), Q_(0.5, "mm"), "a sample"))

    assert own.lengths.mean().magnitude == pytest.approx(3.15)
    assert drawn.lengths.mean().magnitude == pytest.approx(3.4)
    assert "start from your own: 3.5, 3, 2.5" in said
    assert "start from the sample drawn for you: 4, 3, 3" in said
    assert nobody.build_on("q1", TEN) is None


def test_a_sample_that_shows_a_slip_is_a_collision():
    """A key whose sample would lose points, or whose played slip does not show, is refused."""
    always = MeasuredSlip("always", lambda _: True, "Always.", 1, "x", lambda sample: TEN)
    never = MeasuredSlip("never", lambda _: False, "Never.", 1, "x", lambda sample: TEN)
    sheet = sheet_of(measuring(slips=(COUNT, always, never)))

    assert [("BH-1", "q1", "always"), ("BH-1", "q1", "never")] == sheet.collisions(["BH-1"])


@pytest.mark.parametrize(
    ("changes", "words"),
    [({"kind": "guess"}, "kind: 'guess'"), ({"slips": (COUNT, COUNT)}, "share the name")],
)
def test_a_measured_question_that_cannot_work_is_refused(changes, words):
    """The author of a key is told what is wrong."""
    with pytest.raises(KitchenError, match=words):
        measuring(**changes)


def test_a_measurement_is_no_question_for_a_practice_sheet():
    """Practice sheets hold plain numbers; they say so instead of failing."""
    key = load_key(key_notebook("03-cut-to-size"))
    for question in ("q1", "q2"):
        with pytest.raises(CourseError, match="more than a number"):
            fresh_question(key, question, "class", 1)
