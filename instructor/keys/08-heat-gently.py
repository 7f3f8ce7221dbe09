# %% [markdown] title
"""
# Set 8: Heat gently, rest well

Fish, roots and a roast go to temperature at Brackwater House.
A probe and a clock tell how far they are, and what is still missing.

**Seven questions, 20 points.**
This set starts from **your own probe log**. Question 1 says what to do where you cannot take one.
Type each answer between the quotes, as you would write it on a card: `"12 min"`, `"17 min 30 s"`, `"{{ either: 63 °C | 145 °F }}"`.
Or compute it with the numbers shown, for example `q4 = four.time * 2`; your log is `mine.times` and `mine.temperatures`.
Then press Shift + Enter in each cell, from the top down.

Lesson 8, *Heat gently, rest well*, has all you need.
The house, and every log that is drawn, are invented.

**Before anything else.** Every time here is an estimate; a probe decides.
Limits are quoted with their source. Your local food code comes first.
"""

# %% [markdown] me-text
"""
**First, your student number**, between the quotes.
"""

# %% me
student = ""
### BEGIN SOLUTION
student = "BH-0000"
### END SOLUTION

# %% open-set
from kitchenmath.practice import invented_logs, open_set, steps

sheet = open_set("08-heat-gently", term="demo", student=student)
sheet

# %% [markdown] q1-text
"""
## 1. A log of your own (3 points)

Put a probe into the middle of a beetroot, a potato or a carrot, and warm it gently: in water that is kept hot and does not boil, or in foil in an oven of about {{ oven: 120 }}.
Read it every five minutes, and write down time and temperature.
**Type the log between the two lines of quotes**, a reading on each line, such as `10 min {{ either: 18.5 °C | 65 °F }}`.

Your readings are judged, not the cooking. A sound log has
- **at least eight readings**, in the **order of time**;
- **°C or °F beside each temperature**, as the probe shows it;
- a core that went up **by 20 °C (36 °F) at least**;
- temperatures **as the probe showed them**, uneven steps and all.

No probe? Leave the lines as they are.
The next questions then start from the log drawn for you, and you lose the points of this question only.

**Hot water, steam and hot trays burn**: tongs, dry cloths, lids open away from your face.
The probe's point goes in away from the hand that holds. Wipe and disinfect it between raw and ready.
"""

# %% q1-given
one = sheet.given(
    "q1",
    sample=invented_logs(
        starts=(6, 8, 10, 12),
        baths=(76, 80, 84),
        halvings=(15, 17, 19, 21),
        label="a log drawn for you, invented",
    ),
)
one

# %% q1-answer
q1 = """
"""
### BEGIN SOLUTION
q1 = """
0 min 9 °C
5 min 9.5 °C
10 min 15 °C
15 min 24 °C
20 min 32.5 °C
25 min 40 °C
30 min 46 °C
35 min 51 °C
40 min 55 °C
"""
### END SOLUTION

# %% q1-check
sheet.look("q1", q1, "probe log", plausible=("-5 °C", "100 °C", "8 readings", "20 °C"))
### BEGIN HIDDEN TESTS
import numpy as np

from kitchenmath import Q_
from kitchenmath.practice import Measured, MeasuredSlip
from kitchenmath.units.saying import figures


def typed_log(log, cores, unit=" °C"):
    minutes = log.times.magnitude
    return "\n".join(
        f"{figures(minute)} min {figures(core)}{unit}"
        for minute, core in zip(minutes, cores, strict=True)
    )


def in_C(log):
    return log.temperatures.magnitude


def swapped(sample):
    lines = list(sample.lines)
    lines[3], lines[4] = lines[4], lines[3]
    return "\n".join(lines)


def steps_alike(log):
    pace = np.diff(in_C(log)) / np.maximum(np.diff(log.times.magnitude), 1e-9)
    return len(log) >= 5 and np.ptp(pace) < 1e-6


sheet.award(
    Measured(
        "q1",
        "probe log",
        3,
        slips=(
            MeasuredSlip(
                "too few readings",
                lambda log: len(log) < 8,
                "These are fewer than eight readings: between two of them little seems to happen. "
                "The core waits, runs and slows down, and a few points show none of the three.",
                costs=1,
                asks="**at least eight readings**",
                formula=lambda sample: "\n".join(sample.lines[-7:]),
            ),
            MeasuredSlip(
                "not in the order of time",
                lambda log: not log.in_order or log.doubled,
                "A time stands before an earlier one, or stands there twice. Lines get swapped "
                "when a log is written out afterwards: write each down when you read it.",
                costs=1,
                asks="**order of time**",
                formula=swapped,
            ),
            MeasuredSlip(
                "no scale",
                lambda log: not log.scale_said,
                "Neither °C nor °F stands here; whoever held the probe knows it. The numbers were "
                "taken for °C, and at 60 °F nothing is warm.",
                costs=1,
                asks="**°C or °F beside each temperature**",
                formula=lambda sample: typed_log(sample, in_C(sample), ""),
            ),
            MeasuredSlip(
                "°F typed as °C",
                lambda log: in_C(log).max() > 100.5,
                "By this log the core is hotter than boiling water, and a moist core never is. "
                "The probe was set to °F: type what it shows, with °F.",
                costs=2,
                asks="as the probe shows it",
                formula=lambda sample: typed_log(sample, in_C(sample) * 1.8 + 32),
            ),
            MeasuredSlip(
                "hardly warmed",
                lambda log: log.rise.magnitude < 20,
                "The core went up by less than 20 °C. At the start nothing seems to happen, and "
                "one stops too soon: log on, with the same piece.",
                costs=1,
                asks="**by 20 °C (36 °F) at least**",
                formula=lambda sample: typed_log(
                    sample, in_C(sample)[0] + 0.25 * (in_C(sample) - in_C(sample)[0])
                ),
            ),
            MeasuredSlip(
                "every step alike",
                steps_alike,
                "The core goes up by the same in every step, like a line drawn with a ruler. No "
                "core does that: it waits, runs and slows down. Type what the probe showed.",
                costs=2,
                asks="**as the probe showed them**",
                formula=lambda sample: typed_log(sample, 8.0 + 5.0 * np.arange(len(sample))),
            ),
        ),
        working=(
            "push the probe through the middle and draw it back to the lowest reading",
            "read it every five minutes, and write time and temperature down at once",
        ),
        skill="keeping a probe log",
        lesson="08-heat-gently.ipynb",
    ),
    q1,
)
### END HIDDEN TESTS

# %% mine
mine = sheet.build_on("q1", q1)

# %% [markdown] q2-text
"""
## 2. When was it half-way? (3 points)

Half-way is the temperature in the middle between the first and the last reading of the log.
Between two readings, take the core to rise straight from one to the other.
**When was the core half-way**, by the times in the log?

Answer within 30 s: between two readings no log tells more.
"""

# %% q2-answer
q2 = ""
### BEGIN SOLUTION
from numpy import interp

cores = mine.temperatures.magnitude
q2 = Q_(float(interp((cores[0] + cores[-1]) / 2, cores, mine.times.magnitude)), "min")
### END SOLUTION

# %% q2-check
sheet.look("q2", q2, "time", plausible=("1 min", "12 h"))
### BEGIN HIDDEN TESTS
from kitchenmath.practice import Question, Slip, Within


def crossing(q1, level_C):
    """The readings around the first time that the core passes a level, and the time itself."""
    minutes, cores = q1.times.magnitude, in_C(q1)
    after = int(np.argmax(cores >= level_C))
    if after == 0:
        return minutes[0], minutes[0], minutes[0]
    share = (level_C - cores[after - 1]) / (cores[after] - cores[after - 1])
    step = minutes[after] - minutes[after - 1]
    return minutes[after - 1], minutes[after - 1] + share * step, minutes[after]


def half_way(q1):
    return crossing(q1, (in_C(q1)[0] + in_C(q1)[-1]) / 2)


def half_slip(q1, minute):
    """A time, or None where it lies so near the right one that nobody can tell."""
    return Q_(float(minute), "min") if abs(minute - half_way(q1)[1]) > 0.55 else None


sheet.award(
    Question(
        "q2",
        "time",
        3,
        Within(Q_(30, "s"), "between two readings no log tells more"),
        formula=lambda q1: Q_(float(half_way(q1)[1]), "min"),
        slips=(
            Slip(
                "took half of the time",
                lambda q1: half_slip(q1, (q1.times.magnitude[0] + q1.times.magnitude[-1]) / 2),
                "This is the middle of the log by the clock, which is quick to find. The core "
                "does not rise evenly: look for the temperature, and then for its time.",
                worth=1,
            ),
            Slip(
                "halved the last reading",
                lambda q1: (
                    half_slip(q1, crossing(q1, in_C(q1)[-1] / 2)[1])
                    if in_C(q1)[-1] / 2 > in_C(q1)[0]
                    else None
                ),
                "You halved the last temperature, as one halves a weight. Degrees are not counted "
                "from zero: half-way lies in the middle between the first and the "
                "last.",
                worth=1,
            ),
            Slip(
                "took the reading before",
                lambda q1: half_slip(q1, half_way(q1)[0]),
                "This is the last reading before half-way, as it stands in the log. The core "
                "passed half-way some minutes later: share the step out.",
                worth=2,
            ),
            Slip(
                "took the reading after",
                lambda q1: half_slip(q1, half_way(q1)[2]),
                "This is the first reading past half-way, as it stands in the log. The core had "
                "passed half-way before: share the step out.",
                worth=2,
            ),
            Slip(
                "shared the step from the wrong end",
                lambda q1: half_slip(q1, half_way(q1)[0] + half_way(q1)[2] - half_way(q1)[1]),
                "The step is shared out rightly, and laid on from the wrong end; both ends look "
                "alike. Start at the reading before.",
                worth=2,
            ),
        ),
        working=(
            "half-way: the middle between the first and the last temperature, {middle}",
            "the reading before it is at {before}; {missing} of the step are still missing",
            "{before} + {missing} = {answer}",
        ),
        on_the_way={
            "middle": lambda q1: Q_((in_C(q1)[0] + in_C(q1)[-1]) / 2, "degC"),
            "before": lambda q1: Q_(float(half_way(q1)[0]), "min"),
            "missing": lambda q1: Q_(float(half_way(q1)[1] - half_way(q1)[0]), "min"),
        },
        skill="reading a probe log",
        lesson="08-heat-gently.ipynb",
    ),
    q2,
)
### END HIDDEN TESTS

# %% [markdown] q3-text
"""
## 3. How much longer? (3 points)

Now the core is to rise further, by the difference shown.
(A **difference** of 10 °C is 18 °F. As a point on the scale 10 °C is 50 °F.)
Take the pace between your **last two** readings, and let it go on.
**How long is the wait from the last reading?** It is an estimate, and question 7 asks what is wrong with it.

Answer within 1 min: nobody reads a probe in the oven more often.
"""

# %% q3-given
three = sheet.given("q3", more=steps(6, 12, 1, "delta_degC", "further rise wanted, a difference"))
three

# %% q3-answer
q3 = ""
### BEGIN SOLUTION
pace = (mine.temperatures[-1] - mine.temperatures[-2]) / (mine.times[-1] - mine.times[-2])
q3 = (three.more / pace).to("min")
### END SOLUTION

# %% q3-check
sheet.look("q3", q3, "time", plausible=("1 min", "12 h"))


### BEGIN HIDDEN TESTS
def pace_C_min(q1, first=-2):
    """Degrees a minute from one reading to the last."""
    minutes, cores = q1.times.magnitude, in_C(q1)
    return (cores[-1] - cores[first]) / (minutes[-1] - minutes[first])


def wait_min(q1, more):
    return more.magnitude / pace_C_min(q1)


def wait_slip(q1, more, minutes):
    """A time, or None where it lies so near the right one that nobody can tell."""
    return Q_(float(minutes), "min") if abs(minutes - wait_min(q1, more)) > 1.1 else None


sheet.award(
    Question(
        "q3",
        "time",
        3,
        Within(Q_(1, "min"), "nobody reads a probe more often"),
        formula=lambda q1, more: Q_(float(wait_min(q1, more)), "min"),
        slips=(
            Slip(
                "took the pace of the whole log",
                lambda q1, more: wait_slip(q1, more, more.magnitude / pace_C_min(q1, 0)),
                "You took the pace from the first reading to the last, as more readings seem "
                "safer. The wait at the start and the run in the middle are in it; now the core "
                "does neither.",
                worth=2,
            ),
            Slip(
                "gave the time on the clock",
                lambda q1, more: wait_slip(q1, more, wait_min(q1, more) + q1.times.magnitude[-1]),
                "This is when it is there, by the log's clock, which is what the pass wants to "
                "know. The wait from the last reading was asked for.",
                worth=2,
            ),
            Slip(
                "took a step for a minute",
                lambda q1, more: wait_slip(
                    q1, more, more.magnitude / (in_C(q1)[-1] - in_C(q1)[-2])
                ),
                "This is how many steps of the log it takes, as if a step were a minute. Each of "
                "them takes its minutes: multiply.",
                worth=2,
            ),
            Slip(
                "counted the rise from zero",
                lambda q1, more: wait_slip(
                    q1, more, (in_C(q1)[-1] + more.magnitude) / pace_C_min(q1)
                ),
                "You let the core come all the way from zero, as if the probe showed a "
                "distance. It has the last reading already: only the further rise "
                "counts.",
                worth=1,
            ),
            Slip(
                "took the difference for a point in °F",
                lambda q1, more: wait_slip(
                    q1, more, (more.magnitude * 1.8 + 32) / 1.8 / pace_C_min(q1)
                ),
                "You turned the difference into °F as if it were a reading on the scale, the rule "
                "that everybody learns, and 32 came to it. A difference is multiplied by 1.8, and "
                "no more.",
                worth=1,
            ),
        ),
        working=(
            "the last two readings: {risen} °C in {minutes_} min, {pace} °C a minute",
            "{more} ÷ {pace} °C a minute = {answer}",
        ),
        on_the_way={
            "risen": lambda q1: f"{in_C(q1)[-1] - in_C(q1)[-2]:.3g}",
            "minutes_": lambda q1: f"{q1.times.magnitude[-1] - q1.times.magnitude[-2]:g}",
            "pace": lambda q1: f"{pace_C_min(q1):.3g}",
        },
        skill="time to a core temperature",
        lesson="08-heat-gently.ipynb",
    ),
    q3,
)
### END HIDDEN TESTS

# %% [markdown] q4-text
"""
## 4. A thicker fillet (2 points)

You timed a fillet in a stirred bath. Tonight's fillets are thicker: the same bath, the same core.
**How long does one take?** It is an estimate.

Answer within 5 % of it: a ruler on soft fish shows no more.
"""

# %% q4-given
four = sheet.given(
    "q4",
    time=steps(14, 24, 1, "min", "time of the fillet you know"),
    old=steps(20, 26, 2, "mm", "its thickness"),
    new=steps(30, 38, 2, "mm", "thickness tonight"),
)
four

# %% q4-answer
q4 = ""
### BEGIN SOLUTION
q4 = four.time * (four.new / four.old) ** 2
### END SOLUTION

# %% q4-check
sheet.look("q4", q4, "time", plausible=("2 min", "4 h"))


### BEGIN HIDDEN TESTS
def thicker(old, new):
    return (new / old).to("").magnitude


def thicker_slip(old, new, time, factor):
    """A time, or None where it lies so near the right one that nobody can tell."""
    right = thicker(old, new) ** 2
    return time * factor if abs(factor - right) > 0.06 * right else None


sheet.award(
    Question(
        "q4",
        "time",
        2,
        Within(Q_(5, "percent"), "a ruler on soft fish shows no more"),
        formula=lambda time, old, new: time * thicker(old, new) ** 2,
        slips=(
            Slip(
                "straight ratio",
                lambda time, old, new: thicker_slip(old, new, time, thicker(old, new)),
                "You took the ratio of the thicknesses once, as for most things that grow. Heat "
                "has further to go, and more to fill on the way: once for each.",
                worth=1,
            ),
            Slip(
                "cubed the ratio",
                lambda time, old, new: thicker_slip(old, new, time, thicker(old, new) ** 3),
                "You took the ratio three times. That is for weight, when all sides grow, and "
                "weight is what the hand feels; heat goes through the thickness only.",
                worth=1,
            ),
            Slip(
                "doubled the ratio",
                lambda time, old, new: thicker_slip(old, new, time, 2 * thicker(old, new)),
                "You took twice the ratio: “squared” and “doubled” both have a two in them. "
                "Squared means the ratio times itself.",
                worth=1,
            ),
            Slip(
                "turned the ratio round",
                lambda time, old, new: thicker_slip(old, new, time, thicker(old, new) ** -2),
                "Squared is right; the ratio is turned round, which looks alike on paper. The "
                "thicker fillet is done later.",
                worth=1,
            ),
        ),
        working=("{new} ÷ {old} = {ratio}", "{time} × {ratio} × {ratio} = {answer}"),
        on_the_way={
            "ratio": lambda new, old: Q_((new / old).to("").magnitude, "count"),
        },
        skill="thickness squared",
        lesson="08-heat-gently.ipynb",
    ),
    q4,
)
### END HIDDEN TESTS

# %% [markdown] q5-text
"""
## 5. When to pull the loin (3 points)

Last week a pork loin came out at one core temperature and peaked at another while it rested.
Today the loin and the oven are the same, the probe shows °F, and another peak is wanted.
**At what reading of the probe do you take it out?**

Whole pork, by the food code: {{ limit: intact meat }}.
So the probe stays in: below that at its peak, the loin goes back into the oven. Your local food code comes first.

Answer within 1 °C (1.8 °F): a kitchen's probe is good to a degree.
"""

# %% q5-given
five = sheet.given(
    "q5",
    pulled=steps(52, 54, 1, "degC", "core last week, out of the oven"),
    peak=steps(59, 61, 1, "degC", "peak last week"),
    wanted=steps(150, 156, 1, "degF", "peak wanted today"),
)
five

# %% q5-answer
q5 = ""
### BEGIN SOLUTION
q5 = five.wanted - (five.peak - five.pulled)
### END SOLUTION

# %% q5-check
sheet.look("q5", q5, "temperature", plausible=("32 °F", "212 °F"))


### BEGIN HIDDEN TESTS
def carry_over(pulled, peak):
    """The rise on the board, in °C."""
    return peak.magnitude - pulled.magnitude


sheet.award(
    Question(
        "q5",
        "temperature",
        3,
        Within(Q_(1, "delta_degC"), "a kitchen's probe is good to a degree"),
        formula=lambda pulled, peak, wanted: Q_(
            wanted.magnitude - 1.8 * carry_over(pulled, peak), "degF"
        ),
        slips=(
            Slip(
                "took the difference as it stands",
                lambda pulled, peak, wanted: Q_(
                    wanted.magnitude - carry_over(pulled, peak), "degF"
                ),
                "You took degrees Celsius off degrees Fahrenheit; both are called degrees. A "
                "Celsius degree is 1.8 of the others.",
                worth=2,
            ),
            Slip(
                "took the difference for a point",
                lambda pulled, peak, wanted: Q_(
                    wanted.magnitude - (1.8 * carry_over(pulled, peak) + 32), "degF"
                ),
                "You turned the rise into °F as if it were a reading, the rule that everybody "
                "learns, and 32 came to it. A difference is multiplied by 1.8, and no "
                "more.",
                worth=2,
            ),
            Slip(
                "added the rise",
                lambda pulled, peak, wanted: Q_(
                    wanted.magnitude + 1.8 * carry_over(pulled, peak), "degF"
                ),
                "You added the rise, since the core goes up. It does so by itself, on the board: "
                "take it off.",
                worth=1,
            ),
            Slip(
                "no rest counted",
                lambda wanted: wanted,
                "This is the peak, as the card asks for it. Out of the oven the core goes on "
                "rising: pull it before.",
                worth=1,
            ),
            Slip(
                "pulled as last week",
                lambda pulled: pulled,
                "This is where it came out last week; the loin and the oven are the same, so it "
                "is tempting. Another peak needs another pull.",
            ),
        ),
        working=(
            "{peak} − {pulled}, × 1.8 = a rise of {rise}",
            "{wanted} − {rise} = {answer}",
        ),
        on_the_way={
            "rise": lambda pulled, peak: Q_(1.8 * carry_over(pulled, peak), "delta_degF"),
        },
        skill="carry-over, and differences in °F",
        lesson="08-heat-gently.ipynb",
    ),
    q5,
)
### END HIDDEN TESTS

# %% [markdown] q6-text
"""
## 6. What the code asks of a roast (3 points)

A whole roast cooks in a low oven, evenly pink. Its core has stood at the temperature shown, or above, for the time shown.
{{ hold_table }}

A row counts once its temperature is reached.
**How much longer must the core stay there**, by this table?

{{ hold_table_for }} Your local food code comes first.

Answer within 1 min, **rounded up**: the table prints whole minutes.
Never round down: then the roast has not had what the code asks.
"""

# %% q6-given
# Between rows of the table that this class reads.
of_core = "source" in sheet.college.hold_table
cores = (61, 64, 0.5, "degC") if of_core else (131, 137, 1, "degF")

six = sheet.given(
    "q6",
    core=steps(*cores, "lowest core so far"),
    held=steps(4, 12, 1, "min", "held so far"),
)
six

# %% q6-answer
q6 = ""
### BEGIN SOLUTION
from kitchenmath.safety import limits

rows = [row for row in limits(**sheet.college.hold_table) if row.reached_by(six.core)]
q6 = min(row.time for row in rows) - six.held
### END SOLUTION

# %% q6-check
sheet.look("q6", q6, "time", plausible=("1 min", "3 h"))
### BEGIN HIDDEN TESTS
from kitchenmath.safety import limits


def rows_by(core, edition=None):
    """The printed minutes, of the rows that a core has reached and of the others."""
    rows = limits(**sheet.college.hold_table, edition=edition)
    ordered = sorted(rows, key=lambda row: row.fahrenheit.magnitude)
    reached = [row for row in ordered if row.reached_by(core)]
    return reached, ordered[len(reached) :]


def asked_min(core, edition=None):
    return rows_by(core, edition)[0][-1].time.to("min").magnitude


def between_rows(core):
    """The minutes that a straight line between two rows would give."""
    low, high = rows_by(core)[0][-1], rows_by(core)[1][0]
    low_F, high_F = low.fahrenheit.magnitude, high.fahrenheit.magnitude
    low_min, high_min = (row.time.to("min").magnitude for row in (low, high))
    share = (core.to("degF").magnitude - low_F) / (high_F - low_F)
    return low_min + share * (high_min - low_min)


def still(core, held, minutes):
    """A time, or None where it lies so near the right one that nobody can tell, or is over."""
    right = asked_min(core) - held.magnitude
    left = minutes - held.magnitude
    return Q_(left, "min") if left > 0 and abs(left - right) > 1.1 else None


sheet.award(
    Question(
        "q6",
        "time",
        3,
        Within(Q_(1, "min"), "the table prints whole minutes", safe="up"),
        formula=lambda core, held: Q_(asked_min(core), "min") - held,
        slips=(
            Slip(
                "took the next hotter row",
                lambda core, held: still(core, held, rows_by(core)[1][0].time.to("min").magnitude),
                "You took a row that the core has not reached; it lies near, and it is shorter. A "
                "row counts once its temperature is there; until then the longer time "
                "stands.",
                worth=2,
            ),
            Slip(
                "read between two rows",
                lambda core, held: still(core, held, between_rows(core)),
                "You took a value between two rows, as in most tables. A limit is quoted and "
                "never worked out: the row that is reached counts.",
                worth=2,
            ),
            Slip(
                "gave the whole time",
                lambda core, held: Q_(asked_min(core), "min"),
                "This is the time that the table asks in all, read rightly. The core has stood "
                "there for a part of it: take that off.",
                worth=2,
            ),
            Slip(
                "added the time that is over",
                lambda core, held: Q_(asked_min(core), "min") + held,
                "You added the time that is over, as one adds up a clock. It counts already: take "
                "it off.",
                worth=1,
            ),
            Slip(
                "took the table from before 2001",
                lambda core, held: (
                    None if of_core else still(core, held, asked_min(core, "before 2001"))
                ),
                "This is from a table that was replaced in 2001 and still hangs in kitchens. Look "
                "at the edition before you look at the row.",
                worth=1,
            ),
        ),
        working=("the last row that {core} has reached asks {row}", "{row} − {held} = {answer}"),
        on_the_way={
            "row": lambda core: Q_(asked_min(core), "min"),
        },
        skill="a hold time from the code",
        lesson="08-heat-gently.ipynb",
    ),
    q6,
)
### END HIDDEN TESTS

# %% [markdown] q7-text
"""
## 7. From your bench (3 points, marked by your instructor)

Cut two slabs of celeriac of one thickness. Warm one in water of about 70 °C (160 °F) and one in boiling water, each until its core is at 60 °C (140 °F). Cut both across.
**Write down both times and what the two rims look like, and say why they differ.
Say why the wait in question 3 comes out too short, as you see it in your log or in the one that was drawn.
Name one limit of the food code that you would read off the wall before you cook fish or poultry so, with its temperature.**

Water near the boil and steam burn: tongs, and lids open away from you. Celeriac counts as celery, a listed allergen in Britain and the EU.
Whoever does it with fish keeps to the food code. Fish: {{ limit: fish }}.
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: both times with the temperatures of the water, and the rims told apart (soft or overdone in boiling water, even in the gentle bath), because the rim goes towards the water while the core is on its way.
1 point: the pace falls because the gap between core and bath gets smaller, seen in steps of the log that get smaller; so the last degrees take longer than the last step says.
1 point: one limit rightly quoted with its source, such as fish 63 °C (145 °F) for 15 s or poultry 74 °C (165 °F), or the local code's own; and that a probe decides and no estimate.
"""

# %% [markdown] hand-in
"""
## Hand in

Save this notebook (File, then Save Notebook), and run the cell below.
It says whether every answer is there and can be read, and names the file to hand in.
Whether an answer is right comes back with your marks.
"""

# %% last-look
from kitchenmath.practice import last_look

last_look(globals())
