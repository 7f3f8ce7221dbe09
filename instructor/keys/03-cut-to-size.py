# %% [markdown] title
"""
# Set 3: Cut to size

The celeriac brunoise at Brackwater House goes into one pan.
You cut some and measure it, you judge two trays, and you cut to a name.

**Seven questions, 20 points.**
This set starts from **your own ten readings**. Question 1 says what to do where you cannot take any.
Type each answer between the quotes, as you would write it on a card: `"3.15 mm"`, `"24 pieces"`, `"18 %"`, `"35 s"`.
Or compute it with the numbers shown, for example `q6 = six.time * 2`; your ten readings are `mine.lengths`.
Then press Shift + Enter in each cell, from the top down.

Lesson 3, *Cut to size*, has all you need.
The house, and every sample that is drawn, are invented.
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
from kitchenmath.practice import invented_readings, open_set, steps
from kitchenmath.practice.drawn import cut_names, two_trays

sheet = open_set("03-cut-to-size", term="demo", student=student)
sheet

# %% [markdown] q1-text
"""
## 1. Ten of your own (3 points)

Square a piece of carrot or celeriac, and cut a handful of brunoise: {{ cut: brunoise }}.
Put the knife down and away.
Take **ten pieces** without looking, and measure one edge of each.
**Type the ten edges**, as in `"3.5, 3.0, 2.5 mm"`.

Your readings are judged, not your cut. Sound readings are
- of ten pieces, **each measured by itself**;
- typed **with the unit** that the ruler shows;
- **no finer than the ruler shows**: half a millimetre by eye, a tenth with a calliper;
- read over once, **the point in its place**.

A photo of your tray can take them too: lesson 3 says how. Paste ten of its sizes, with the unit and the ±.
**Shall your instructor see that photo?** Only if you say so, in the cell below: put the photo beside this notebook, and type its name and how long the mat's two lines are. Knife away first. No faces in the picture. Leave the quotes empty, and no photo goes along.

No carrot and no ruler? Leave the quotes empty.
The next questions then start from the sample drawn for you, and you lose the points of this question only.

**Knives**: a flat side down first. Fingertips back, behind the knuckles. A dry board on a damp cloth. Never measure while the blade moves.
**Allergens**: celeriac counts as celery, a listed allergen in Britain and the EU. Keep its board and trimmings apart.
"""

# %% q1-given
from kitchenmath import Q_

one = sheet.given(
    "q1",
    sample=invented_readings(
        sheet.college.brunoise, Q_(0.5, "mm"), "a sample drawn for you, invented"
    ),
)
one

# %% q1-photo
from kitchenmath.photo import tray_for_hand_in

tray_for_hand_in(photo="", line_across="", line_down="", cut="brunoise")

# %% q1-answer
q1 = ""
### BEGIN SOLUTION
q1 = "3.5, 3.0, 2.5, 4.0, 3.0, 3.5, 3.0, 2.5, 3.5, 3.0 mm"
### END SOLUTION

# %% q1-check
sheet.look("q1", q1, "readings", plausible=("1 mm", "10 mm", "10 readings"))
### BEGIN HIDDEN TESTS
from kitchenmath.practice import Measured, MeasuredSlip
from kitchenmath.units.saying import figures

CUT_MM = sheet.college.brunoise_mm  # what this class calls a brunoise


def listed(sizes_mm, unit=" mm"):
    return ", ".join(figures(size) for size in sizes_mm) + unit


def in_mm(readings):
    return [float(size) for size in readings.lengths.magnitude]


def middle_mm(readings):
    return readings.middle.magnitude


sheet.award(
    Measured(
        "q1",
        "readings",
        3,
        slips=(
            MeasuredSlip(
                "not ten pieces",
                lambda readings: len(readings) != 10,
                "These are not ten readings. Fewer pieces say less about the tray, and a number "
                "is easily left out or typed twice: count them off on the paper.",
                costs=1,
                asks="**ten pieces**",
                formula=lambda sample: listed(in_mm(sample)[:-1]),
            ),
            MeasuredSlip(
                "no unit",
                lambda readings: not readings.unit_said,
                "No unit stands here: on the paper it was plain. They were taken for millimetres; "
                "the next cook may take them for something else.",
                costs=1,
                asks="**with the unit**",
                formula=lambda sample: listed(in_mm(sample), ""),
            ),
            MeasuredSlip(
                "all readings alike",
                lambda readings: readings.alike,
                "All readings are one and the same. No hand cuts so: this is the size that was "
                "asked for, or one piece measured once. Measure each by itself.",
                costs=3,
                asks="**each measured by itself**",
                formula=lambda sample: listed([CUT_MM] * 10),
            ),
            MeasuredSlip(
                "invented digits",
                lambda readings: (
                    middle_mm(readings) >= 0.2 * CUT_MM and readings.finer_than(Q_(0.1, "mm"))
                ),
                "A reading is finer than any ruler or calliper of the kitchen shows. A guessed "
                "figure looks careful and is none: write down what the mark says.",
                costs=1,
                asks="**no finer than the ruler shows**",
                formula=lambda sample: listed([size + 0.03 for size in in_mm(sample)]),
            ),
            MeasuredSlip(
                "slipped decimal point",
                lambda readings: readings.tenfold or middle_mm(readings) > 4 * CUT_MM,
                "A reading is about ten times what a brunoise can be, or a tenth of it: in a row "
                "of numbers a point slips easily. One such number moves the mean more than all "
                "the others together.",
                costs=1,
                asks="**the point in its place**",
                formula=lambda sample: listed([10 * max(in_mm(sample)), *in_mm(sample)[1:]]),
            ),
            MeasuredSlip(
                "inches typed as millimetres",
                lambda readings: middle_mm(readings) < 0.06 * CUT_MM,
                "By these numbers your cubes are dust. A calliper that is set to inches shows "
                "0.12 for 3 mm: type the unit that you read, and the kit converts it.",
                costs=2,
                asks="**with the unit** that the ruler shows",
                formula=lambda sample: listed([size / 25.4 for size in in_mm(sample)]),
            ),
            MeasuredSlip(
                "centimetres typed as millimetres",
                lambda readings: 0.06 * CUT_MM <= middle_mm(readings) < 0.2 * CUT_MM,
                "By these numbers your cubes are a third of a millimetre. The figures on a ruler "
                "count centimetres: 0.3 cm is 3 mm.",
                costs=2,
                asks="**with the unit** that the ruler shows",
                formula=lambda sample: listed([size / 10 for size in in_mm(sample)]),
            ),
        ),
        working=(
            "take ten pieces without looking, and lay them in a row",
            "read one edge of each to the mark of the ruler, and write it down at once",
        ),
        skill="measuring pieces",
        lesson="03-cut-to-size.ipynb",
    ),
    q1,
)
### END HIDDEN TESTS

# %% mine
mine = sheet.build_on("q1", q1)

# %% [markdown] q2-text
"""
## 2. Their mean (2 points)

**What is the mean edge** of the ten pieces?

Answer within 0.05 mm: ten readings to half a millimetre carry no more.
"""

# %% q2-answer
q2 = ""
### BEGIN SOLUTION
q2 = mine.lengths.mean()
### END SOLUTION

# %% q2-check
sheet.look("q2", q2, "length", plausible=("1 mm", "10 mm"))
### BEGIN HIDDEN TESTS
import math
from statistics import fmean, median

from kitchenmath.practice import Question, Slip, Within


def mean_mm(q1):
    return fmean(in_mm(q1))


def mean_slip(q1, number_mm):
    """A length, or None where it lies so near the mean that nobody can tell them apart."""
    return Q_(number_mm, "mm") if abs(number_mm - mean_mm(q1)) > 0.055 else None


sheet.award(
    Question(
        "q2",
        "length",
        2,
        Within(Q_(0.05, "mm"), "ten readings to half a millimetre carry no more"),
        formula=lambda q1: Q_(mean_mm(q1), "mm"),
        slips=(
            Slip(
                "took the middle of the two ends",
                lambda q1: mean_slip(q1, (min(in_mm(q1)) + max(in_mm(q1))) / 2),
                "You took the middle between the smallest and the largest: it is quick, and often "
                "near. The others have a say too: add all up.",
                worth=1,
            ),
            Slip(
                "took the middle reading",
                lambda q1: mean_slip(q1, median(in_mm(q1))),
                "You took the piece in the middle of the row. That is the median, which is a "
                "middle too; but it does not feel how far off the large ones are.",
                worth=1,
            ),
            Slip(
                "divided by one too few",
                lambda q1: mean_slip(q1, sum(in_mm(q1)) / (len(q1) - 1)),
                "You divided by one piece less. That rule belongs to the standard deviation; a "
                "mean is shared among all.",
                worth=1,
            ),
            Slip(
                "gave the sum",
                lambda q1: mean_slip(q1, sum(in_mm(q1))),
                "This is all of them end to end: the first half of the way. Share it among the "
                "pieces.",
            ),
            Slip(
                "gave the size asked for",
                lambda q1: mean_slip(q1, CUT_MM),
                "This is the size on the card, where the mean was meant to lie. Your own pieces "
                "have a mean of their own.",
            ),
        ),
        working=("{q1}: together {sum_}", "{sum_} ÷ {many} pieces = {answer}"),
        on_the_way={
            "sum_": lambda q1: Q_(sum(in_mm(q1)), "mm"),
            "many": lambda q1: Q_(len(q1), "count"),
        },
        skill="mean of a sample",
        lesson="03-cut-to-size.ipynb",
    ),
    q2,
)
### END HIDDEN TESTS

# %% [markdown] q3-text
"""
## 3. Two trays (3 points)

Two cooks have cut brunoise, and you measured ten pieces of each tray.
A piece is on size at {{ cut: brunoise }} ± 0.5 mm, and a piece on the edge of that is on size.
**A tray passes with one piece of ten off size at most.** One of the two does not pass.
**How many pieces of that tray are off size?** That number is what you tell the cook.

Answer with a whole number, such as `"3"` or `"3 pieces"`.
"""

# %% q3-given
three = sheet.given("q3", trays=two_trays("ten edges from each, invented"))
three

# %% q3-answer
q3 = ""
### BEGIN SOLUTION
off = [
    sum(abs(size - three.trays.around_mm) > 0.51 for size in tray)
    for tray in (three.trays.first, three.trays.second)
]
q3 = str(max(off))
### END SOLUTION

# %% q3-check
sheet.look("q3", q3, "count", plausible=("0", "10"))
### BEGIN HIDDEN TESTS
from dataclasses import replace

from kitchenmath.drills.blocks import piece_slips, sizes_mm, sizes_said, whole_pieces
from kitchenmath.drills.trays import band_said, off_in_the_tray_sent_back, tray_slips

WHOLE = Within(Q_(0.05, "count"), "pieces are whole")

TOLD = {
    "went by the mean": "This number belongs to the tray that passes. Its mean lies off the "
    "size asked for, so it looks the worse one; but piece by piece nearly all of it is inside the band.",
    "counted the edge as off": "Pieces on the edge of the band are among yours. The question takes "
    "the edge for on size, and both cooks are judged by what was said beforehand.",
    "counted the large ones only": "Only the thick pieces are in this number, which one sees first. "
    "The thin ones are as much off: they are done too soon.",
    "counted what is on size": "So many of that tray are on size. The cook wants to hear how many "
    "are not: the rest of the ten.",
    "took another cut's size": "By this number you cut to the size of a neighbour: the names are "
    "known and the millimetres get mixed up. Lay the card beside the board.",
    "cut sticks to cubes": "This many cubes would come out of it. The chef called for a stick, and "
    "one stick takes more of the block's length than a cube does.",
    "counted one layer": "So many lie in the top layer, which is what one sees from above. Below "
    "it are more: the block is as high as it is wide.",
    "divided the volumes": "You divided one volume by the other, which is quick. But the strips "
    "left at the sides and at the end are too thin for a piece: count whole ones each way.",
}


def told(slips):
    """The slips of a drill in this set's own words."""
    return tuple(replace(slip, sentence=TOLD[slip.name]) for slip in slips)


sheet.award(
    Question(
        "q3",
        "count",
        3,
        WHOLE,
        formula=off_in_the_tray_sent_back,
        slips=told(tray_slips((1, 2, 2, 2))),
        working=(
            "on size is {band}; count what is smaller or larger, in each tray",
            "one of them has one off at most and passes; in the other {answer} are off",
        ),
        on_the_way={"band": band_said},
        skill="which tray passes",
        lesson="03-cut-to-size.ipynb",
    ),
    q3,
)
### END HIDDEN TESTS

# %% [markdown] q4-text
"""
## 4. Cut to a name (3 points)

The chef calls out a cut by its name.
You have a block, squared off; it is all cut to that, by the sizes of this class.
Name, size and shape: a cube is as long as it is thick, and a stick has a length of its own, which lies along the block.
**How many whole pieces does the block give?**

The sizes are on the card of lesson 3, which belongs beside the board. Answer with a whole number.
"""

# %% q4-given
four = sheet.given(
    "q4",
    cut=cut_names(("brunoise", "small dice", "julienne", "jardinière", "bâtonnet"), "the cut"),
    side=steps(16, 34, 3, "mm", "the block, wide and high"),
    long=steps(88, 148, 20, "mm", "the block, long"),
)
four

# %% q4-answer
q4 = ""
### BEGIN SOLUTION
named = four.cut.sized()
thick = named.thinnest
along = named.dimensions.get("length", thick)
q4 = str(int(four.side / thick) ** 2 * int(four.long / along))
### END SOLUTION

# %% q4-check
sheet.look("q4", q4, "count", plausible=("2", "10000"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q4",
        "count",
        3,
        WHOLE,
        formula=whole_pieces,
        slips=told(piece_slips((1, 1, 1, 2))),
        working=(
            "by the sizes of this class {cut} is {size}",
            "{side} across give {across_}, twice, and {long} along give {along_}: whole pieces only",
            "{across_} × {across_} × {along_} = {answer}",
        ),
        on_the_way={
            "across_": lambda cut, side: Q_(
                int(side.to("mm").magnitude / sizes_mm(cut)[0] + 1e-9), "count"
            ),
            "along_": lambda cut, long: Q_(
                int(long.to("mm").magnitude / sizes_mm(cut)[1] + 1e-9), "count"
            ),
            "size": sizes_said,
        },
        skill="named cuts",
        lesson="03-cut-to-size.ipynb",
    ),
    q4,
)
### END HIDDEN TESTS

# %% [markdown] q5-text
"""
## 5. Square it, dice it (3 points)

A peeled, straight carrot is squared as large as it goes, and cut to **small dice, 6 mm**.
Whole dice only: what is too thin for a die is trim.
**What share of the peeled carrot ends as dice?**

Answer within 1 % (44 % for 45 % is fine): a ruler on a carrot shows no more.
"""

# %% q5-given
five = sheet.given(
    "q5",
    across=steps(34, 46, 2, "mm", "carrot, peeled, across"),
    long=steps(80, 120, 10, "mm", "carrot, long"),
)
five

# %% q5-answer
q5 = ""
### BEGIN SOLUTION
from kitchenmath.cuts import pieces, squared_yield

carrot = squared_yield("cylinder", diameter=five.across)
dice = pieces((five.long, carrot.side, carrot.side), "small dice")
q5 = (carrot.yield_ * dice.used).to("percent")
### END SOLUTION

# %% q5-check
sheet.look("q5", q5, "percent", plausible=("5 %", "95 %"))
### BEGIN HIDDEN TESTS
DICE_MM = 6


def whole(size_mm):
    return math.floor(size_mm / DICE_MM + 1e-9)


def dice_share(across, long, side_mm, section_mm2):
    """What whole dice from a square of this side are of a piece of this section, in percent."""
    long_mm = long.to("mm").magnitude
    dice_mm3 = whole(side_mm) ** 2 * whole(long_mm) * DICE_MM**3
    return 100 * dice_mm3 / (section_mm2 * long_mm)


def side_mm(across):
    return across.to("mm").magnitude / math.sqrt(2)


def round_mm2(across):
    return math.pi / 4 * across.to("mm").magnitude ** 2


def kept(across, long):
    return dice_share(across, long, side_mm(across), round_mm2(across))


def dice_slip(across, long, share):
    """A percentage, or None where nobody can tell it from the right one, or believe it."""
    told = abs(share - kept(across, long)) > 1.2 and share < 100
    return Q_(share, "percent") if told else None


sheet.award(
    Question(
        "q5",
        "percent",
        3,
        Within(Q_(1, "percent"), "a ruler on a carrot shows no more"),
        formula=lambda across, long: Q_(kept(across, long), "percent"),
        slips=(
            Slip(
                "squared it and forgot the dice",
                lambda across, long: dice_slip(across, long, 200 / math.pi),
                "This is what the square is of the round. It looks like the end, but it is cut "
                "on, and the last strips on three sides are too thin for a die.",
                worth=2,
            ),
            Slip(
                "share of the square, not of the carrot",
                lambda across, long: dice_slip(
                    across, long, dice_share(across, long, side_mm(across), side_mm(across) ** 2)
                ),
                "You compared the dice with the squared block, as that is what lies on the board. "
                "The sides that came off the round were paid for too.",
                worth=2,
            ),
            Slip(
                "took the diameter for the side",
                lambda across, long: dice_slip(
                    across,
                    long,
                    dice_share(across, long, across.to("mm").magnitude, round_mm2(across)),
                ),
                "You squared to the full diameter, the number that is given. It is the square's "
                "diagonal; the side is shorter by 1.41.",
                worth=1,
            ),
            Slip(
                "squared to half the diameter",
                lambda across, long: dice_slip(
                    across,
                    long,
                    dice_share(across, long, across.to("mm").magnitude / 2, round_mm2(across)),
                ),
                "You squared to half the diameter, the radius, and good carrot was thrown away. "
                "The largest square has a side of the diameter ÷ 1.41.",
                worth=1,
            ),
            Slip(
                "took the round for a square bar",
                lambda across, long: dice_slip(
                    across,
                    long,
                    dice_share(across, long, side_mm(across), across.to("mm").magnitude ** 2),
                ),
                "You counted the carrot as a bar, diameter times diameter, which is easier to "
                "work out. A round is 0.785 of that.",
                worth=2,
            ),
            Slip(
                "gave the trim",
                lambda across, long: dice_slip(across, long, 100 - kept(across, long)),
                "You came all the way, and gave what becomes trim, for stock and purée. The dice "
                "are the rest.",
                worth=2,
            ),
        ),
        working=(
            "{across} ÷ 1.414 = {square}, the side of the square; ÷ 6 mm, {wide_} whole dice each way",
            "{long} ÷ 6 mm, {long_} whole dice",
            "{wide_} × {wide_} × {long_} dice × 216 mm³ ÷ (0.785 × {across} × {across} × {long}) = {answer}",
        ),
        on_the_way={
            "square": lambda across: Q_(side_mm(across), "mm"),
            "wide_": lambda across: Q_(whole(side_mm(across)), "count"),
            "long_": lambda long: Q_(whole(long.to("mm").magnitude), "count"),
        },
        skill="whole dice from a round",
        lesson="03-cut-to-size.ipynb",
    ),
    q5,
)
### END HIDDEN TESTS

# %% [markdown] q6-text
"""
## 6. Your largest piece in the water (3 points)

In boiling water a cube with the mean edge of question 2 is done after the time shown.
The largest of your ten lies in the same basket.
**How long does the largest take, by the square of the size?** It is an estimate.

Answer within 1 s: a kitchen timer shows no less.
"""

# %% q6-given
six = sheet.given("q6", time=steps(20, 40, 5, "s", "blanching time of a cube with the mean edge"))
six

# %% q6-answer
q6 = ""
### BEGIN SOLUTION
from kitchenmath.cuts import cooking_time_factor

q6 = six.time * cooking_time_factor(q2, mine.lengths.max())
### END SOLUTION

# %% q6-check
sheet.look("q6", q6, "time", plausible=("5 s", "5 min"))


### BEGIN HIDDEN TESTS
def times(one_mm, q2):
    return one_mm / q2.to("mm").magnitude


def largest_time(q1, q2, time, power=2):
    return time * times(max(in_mm(q1)), q2) ** power


def time_slip(q1, q2, time, other):
    """A time, or None where it lies so near the right one that nobody can tell."""
    apart_s = abs((other - largest_time(q1, q2, time)).to("s").magnitude)
    return other if apart_s > 1.3 else None


sheet.award(
    Question(
        "q6",
        "time",
        3,
        Within(Q_(1, "s"), "a kitchen timer shows no less"),
        formula=lambda q1, q2, time: largest_time(q1, q2, time),
        slips=(
            Slip(
                "straight ratio",
                lambda q1, q2, time: time_slip(q1, q2, time, largest_time(q1, q2, time, 1)),
                "You took the ratio of the sizes once, as for most things that grow. Heat has "
                "further to go and more to fill: the ratio goes in twice.",
                worth=1,
            ),
            Slip(
                "cubed the ratio",
                lambda q1, q2, time: time_slip(q1, q2, time, largest_time(q1, q2, time, 3)),
                "You took the ratio three times: that is how much more it weighs, and weight is "
                "what the hand feels. The time goes with the square.",
                worth=1,
            ),
            Slip(
                "turned the ratio round",
                lambda q1, q2, time: time_slip(q1, q2, time, largest_time(q1, q2, time, -2)),
                "Squared is right; the ratio is turned round, which looks alike on paper. The "
                "largest piece is done last.",
                worth=1,
            ),
            Slip(
                "took the smallest piece",
                lambda q1, q2, time: time_slip(q1, q2, time, time * times(min(in_mm(q1)), q2) ** 2),
                "This is the time of your smallest piece; at the end of a row of ten it is soon "
                "mixed up. The largest was asked for.",
                worth=2,
            ),
            Slip(
                "compared with the size asked for",
                lambda q1, q2, time: time_slip(q1, q2, time, time * (max(in_mm(q1)) / CUT_MM) ** 2),
                "You compared with the size on the card. The time shown belongs to a cube "
                "of your own mean.",
                worth=2,
            ),
        ),
        working=(
            "your largest piece, {largest} ÷ {q2} = {ratio}",
            "{time} × {ratio} × {ratio} = {answer}",
        ),
        on_the_way={
            "largest": lambda q1: Q_(max(in_mm(q1)), "mm"),
            "ratio": lambda q1, q2: Q_(max(in_mm(q1)) / q2.to("mm").magnitude, "count"),
        },
        skill="time for another size",
        lesson="03-cut-to-size.ipynb",
    ),
    q6,
)
### END HIDDEN TESTS

# %% [markdown] q7-text
"""
## 7. From your bench (3 points, marked by your instructor)

**Write down the weight of what you squared off and of the block that was left, and your yield.
Say whether your tray is cut evenly enough for one pan, by your own numbers and no further than ten pieces carry.
Name one thing that you would do otherwise at the board tomorrow, and what it would change: the mean or the spread.**

No carrot at hand? Judge the sample that was drawn for you, and plan how you would weigh.

Knives: a flat side down, fingertips back, and a dry board on a damp cloth. Trimmings are covered, dated and kept cold.
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: both weights with units, and the yield as what is left of the whole (or, from the drawn sample, a plan that weighs before, after and the trim).
1 point: a verdict that uses the spread or the share on size, and says that ten pieces cannot settle it (the low end, the interval, or "as far as ten can tell").
1 point: one change that fits its effect: measuring the first sheet, a guide or a steadier hand for the spread; a wider or narrower step, a sharper eye for the target for the mean; a sharper knife, cutting the taper in two, stacking fewer sheets, with the reason.
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
