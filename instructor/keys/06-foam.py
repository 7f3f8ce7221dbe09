# %% [markdown] title
"""
# Set 6: Foam

A cider foam goes on the guinea fowl at Brackwater House tonight.
It must be sweet enough, it must hold its air, and it must stand until the plate is at the table.

**Seven questions, 20 points.**
Your numbers are your own: your neighbour has others.
Type each answer between the quotes, as you would write it on a card: `"420 g"`, `"35 %"`, `"6 min 30 s"`.
Or compute it with the numbers shown, for example `q3 = q1 * 2`.
Then press Shift + Enter in each cell, from the top down.

Lesson 6, *Foam*, has all you need.
The kitchen and its cards are invented.
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
from kitchenmath.practice import open_set, part_of, steps

sheet = open_set("06-foam", term="demo", student=student)
sheet

# %% [markdown] q1-text
"""
## 1. Sugar for the foam base (3 points)

The base is eight parts of cider to one part of sugar, **by volume**.
You poured the cider. The sugar you weigh.
**What weight of sugar goes in?**

**Hot sugar** burns worse than water: long sleeves and a deep pan when the base is warmed, and never taste it hot.

Answer within 5 g: the bench scale shows no less.
"""

# %% q1-given
one = sheet.given(
    "q1",
    cider=steps(1.6, 2.8, 0.1, "L", "cider, poured"),
    cider_litre=steps(1040, 1060, 5, "g/L", "a litre of the cider weighs"),
    sugar_litre=steps(830, 870, 10, "g/L", "a litre of the sugar weighs"),
)
one

# %% q1-answer
q1 = ""
### BEGIN SOLUTION
q1 = one.cider / 8 * one.sugar_litre
### END SOLUTION

# %% q1-check
sheet.look("q1", q1, "weight", plausible=("50 g", "20 kg"))
### BEGIN HIDDEN TESTS
from kitchenmath import Q_
from kitchenmath.practice import Question, Slip, Within


def grams(weight):
    return weight.to("g")


sheet.award(
    Question(
        "q1",
        "weight",
        3,
        Within(Q_(5, "g")),
        formula=lambda cider, sugar_litre: grams(cider / 8 * sugar_litre),
        slips=(
            Slip(
                "took parts by volume for parts by weight",
                lambda cider, cider_litre: grams(cider / 8 * cider_litre),
                "You took an eighth of the cider's weight, as the scale is at hand. The parts are "
                "volumes, and a litre of sugar is lighter than a litre of cider: first the "
                "sugar's volume, then its weight.",
                worth=1,
            ),
            Slip(
                "gave every millilitre a gram",
                lambda cider: grams(cider / 8 * Q_(1000, "g/L")),
                "The sugar's volume is right, and then every millilitre was called a gram, as "
                "with water. Sugar has air between its grains and weighs less.",
                worth=1,
            ),
            Slip(
                "took a ninth of the cider",
                lambda cider, sugar_litre: grams(cider / 9 * sugar_litre),
                "You took a ninth of the cider: with eight parts and one the nine comes to mind. "
                "The sugar is a ninth of all parts, and that is an eighth of the cider.",
                worth=1,
            ),
            Slip(
                "turned the parts round",
                lambda cider, sugar_litre: grams(cider * 8 * sugar_litre),
                "You took eight parts of sugar to one of cider, as if it were a caramel. The parts stand "
                "in the order in which they are named.",
                worth=1,
            ),
            Slip(
                "one part to one",
                lambda cider, sugar_litre: grams(cider * sugar_litre),
                "This is as much sugar as cider, as in a plain syrup. Here there are eight parts of "
                "cider to one of sugar.",
                worth=1,
            ),
        ),
        working=("{cider} ÷ 8 = {part} of sugar", "{part} × {sugar_litre} = {answer}"),
        on_the_way={
            "part": lambda cider: (cider / 8).to("mL"),
        },
        skill="parts by volume and by weight",
        lesson="06-foam.ipynb",
    ),
    q1,
)
### END HIDDEN TESTS

# %% [markdown] q2-text
"""
## 2. How sweet is the base? (3 points)

The cider brings sugar of its own, the rest you weighed in for question 1.
Your litre of cider weighs what question 1 says.
**How many degrees Brix has the base?** A degree Brix is one percent of sugar in the whole: type it as a percent.

Answer within 0.5 %, half a degree Brix: that is what a hand refractometer shows.
"""

# %% q2-given
two = sheet.given("q2", own=steps(11, 14, 1, "percent", "sugar in the cider itself, by weight"))
two

# %% q2-answer
q2 = ""
### BEGIN SOLUTION
q2 = (q1 + one.cider * one.cider_litre * two.own) / (q1 + one.cider * one.cider_litre)
### END SOLUTION

# %% q2-check
sheet.look("q2", q2, "percent", plausible=("5 %", "80 %"))


### BEGIN HIDDEN TESTS
def percent(share):
    return Q_(100 * share.to("").magnitude, "percent")


sheet.award(
    Question(
        "q2",
        "percent",
        3,
        Within(Q_(0.5, "percent")),
        formula=lambda q1, cider, cider_litre, own: percent(
            (q1 + cider * cider_litre * own) / (q1 + cider * cider_litre)
        ),
        slips=(
            Slip(
                "divided by the cider alone",
                lambda q1, cider, cider_litre, own: percent(
                    (q1 + cider * cider_litre * own) / (cider * cider_litre)
                ),
                "You divided by the liquid that the sugar went into, as it is what is in the pan. "
                "Brix is a percent of the whole base, and the added sugar belongs to "
                "it.",
                worth=2,
            ),
            Slip(
                "forgot the fruit's own sugar",
                lambda q1, cider, cider_litre: percent(q1 / (q1 + cider * cider_litre)),
                "You counted the sugar that you weighed in, as it is the one you saw. The cider "
                "was sweet before: add its own.",
                worth=2,
            ),
            Slip(
                "took the parts for the percent",
                lambda: Q_(100 / 9, "percent"),
                "One part of nine is a ninth, and that looks like a percent. But it is of "
                "volume; Brix is a percent of weight, and it counts the fruit's own sugar.",
            ),
            Slip(
                "averaged sugar and cider by parts",
                lambda own: percent((8 * own.to("") + 1) / 9),
                "You averaged the sweetness by parts, as they stand on the card. The parts are "
                "volumes; percents of weight want weights.",
                worth=1,
            ),
        ),
        working=(
            "the cider weighs {cider} × {cider_litre} = {cider_g}; {own} of it is {own_g} of sugar",
            "{own_g} + {q1} = {sugars} of sugar in all",
            "{sugars} ÷ ({cider_g} + {q1}) = {answer}",
        ),
        on_the_way={
            "cider_g": lambda cider, cider_litre: (cider * cider_litre).to("g"),
            "own_g": lambda cider, cider_litre, own: (cider * cider_litre * own).to("g"),
            "sugars": lambda q1, cider, cider_litre, own: (
                q1.to("g") + (cider * cider_litre * own).to("g")
            ),
        },
        skill="degrees Brix",
        lesson="06-foam.ipynb",
    ),
    q2,
)
### END HIDDEN TESTS

# %% [markdown] q3-text
"""
## 3. Lecithin (2 points)

This foam is held by lecithin, as a percent **of the base**.
The base is the cider and the sugar of question 1.
**How much lecithin do you weigh in?**

Lecithin mostly comes from soya, a listed allergen: tell the pass.

Answer within 0.1 g: a pocket scale shows no less.
"""

# %% q3-given
three = sheet.given("q3", powder=steps(0.3, 0.8, 0.1, "percent", "lecithin, of the base"))
three

# %% q3-answer
q3 = ""
### BEGIN SOLUTION
q3 = (q1 + one.cider * one.cider_litre) * three.powder
### END SOLUTION

# %% q3-check
sheet.look("q3", q3, "weight", plausible=("0.5 g", "300 g"))


### BEGIN HIDDEN TESTS
def base(q1, cider, cider_litre):
    return grams(q1) + grams(cider * cider_litre)


sheet.award(
    Question(
        "q3",
        "weight",
        2,
        Within(Q_(0.1, "g"), "a pocket scale shows no less"),
        formula=lambda q1, cider, cider_litre, powder: grams(base(q1, cider, cider_litre) * powder),
        slips=(
            Slip(
                "dosed the sugar only",
                lambda q1, powder: grams(q1 * powder),
                "This is the dose for the sugar, the weight that you had just worked out. The "
                "cider is in the base too.",
                worth=1,
            ),
            Slip(
                "took one percent",
                lambda q1, cider, cider_litre: grams(base(q1, cider, cider_litre) / 100),
                "This is one percent, the easy one to work with. The card asks for a part of a "
                "percent: multiply by it.",
                worth=1,
            ),
            Slip(
                "dosed the cider only",
                lambda cider, cider_litre, powder: grams(cider * cider_litre * powder),
                "This is the dose for the cider, as if the base were the liquid. The sugar is in "
                "the base too.",
                worth=1,
            ),
            Slip(
                "slipped the point",
                lambda q1, cider, cider_litre, powder: (
                    grams(base(q1, cider, cider_litre) * powder) / 10
                ),
                "The point slipped: this is a tenth. It happens to small percents; one percent of "
                "1000 g is 10 g.",
            ),
            Slip(
                "slipped the point the other way",
                lambda q1, cider, cider_litre, powder: (
                    grams(base(q1, cider, cider_litre) * powder) * 10
                ),
                "The point slipped: this is ten times as much, as if the part of a percent were "
                "whole percents. Half a percent of 1000 g is 5 g.",
            ),
        ),
        working=(
            "base: {q1} + {cider} × {cider_litre} = {whole_base}",
            "{whole_base} × {powder} = {answer}",
        ),
        on_the_way={
            "whole_base": lambda q1, cider, cider_litre: q1.to("g") + (cider * cider_litre).to("g"),
        },
        skill="dose in percent of the base",
        lesson="06-foam.ipynb",
    ),
    q3,
)
### END HIDDEN TESTS

# %% [markdown] q4-text
"""
## 4. Overrun (3 points)

You weigh one cup full of base, and the same cup full of foam.
**What is the overrun?**

Answer within 10 % of overrun (345 % for 340 % is fine): one gram of foam more or less shows as much.
"""

# %% q4-given
four = sheet.given(
    "q4",
    cup=steps(255, 275, 5, "g", "cup full of base"),
    foam=steps(50, 60, 1, "g", "the same cup full of foam"),
)
four

# %% q4-answer
q4 = ""
### BEGIN SOLUTION
q4 = (four.cup - four.foam) / four.foam
### END SOLUTION

# %% q4-check
sheet.look("q4", q4, "percent", plausible=("10 %", "1500 %"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q4",
        "percent",
        3,
        Within(Q_(10, "percent")),
        formula=lambda cup, foam: percent((cup - foam) / foam),
        slips=(
            Slip(
                "took the gas fraction for overrun",
                lambda cup, foam: percent((cup - foam) / cup),
                "You divided by the weight of the base, as for a share, and got the share of the "
                "foam that is gas; it never passes 100 %. Overrun compares the gas with the "
                "liquid in the foam, which weighs what the foam weighs.",
                worth=1,
            ),
            Slip(
                "counted the liquid in",
                lambda cup, foam: percent(cup / foam),
                "This is how many times its volume the base became, the number that the eye sees. "
                "Overrun is what came on top: 100 % less.",
                worth=2,
            ),
            Slip(
                "gave what is left of the weight",
                lambda cup, foam: percent(foam / cup),
                "This is the weight of the foam over that of the base: the two weights as they "
                "were written down. It says how much of the foam is liquid; overrun says how much "
                "gas came to that.",
            ),
        ),
        working=("{cup} − {foam} = {pushed}, which gas pushed out", "{pushed} ÷ {foam} = {answer}"),
        on_the_way={
            "pushed": lambda cup, foam: cup - foam,
        },
        skill="overrun",
        lesson="06-foam.ipynb",
    ),
    q4,
)
### END HIDDEN TESTS

# %% [markdown] q5-text
"""
## 5. Half of it is out (3 points)

Foam stands in a clear jug, and the liquid that runs out of it is read every three minutes.
Two readings lie around half of the base.
Between them the liquid runs evenly.
**When was half of the base out?** The clock starts when the foam is made.

Answer within 15 s: a look at the jug is no nearer.
"""

# %% q5-given
from kitchenmath import Q_

five = sheet.given(
    "q5",
    base=steps(90, 140, 10, "mL", "base in the foam"),
    minute=steps(5, 9, 1, "min", "the reading before half"),
    before=part_of("base", 44, 45, 1, Q_(1, "mL"), "out by then"),
    after=part_of("base", 64, 66, 1, Q_(1, "mL"), "out three minutes later"),
)
five

# %% q5-answer
q5 = ""
### BEGIN SOLUTION
q5 = five.minute + Q_(3, "min") * (five.base / 2 - five.before) / (five.after - five.before)
### END SOLUTION

# %% q5-check
sheet.look("q5", q5, "time", plausible=("1 min", "60 min"))
### BEGIN HIDDEN TESTS
STEP = Q_(3, "min")


def later(minute, part, step):
    return minute + STEP * (part / step).to("").magnitude


sheet.award(
    Question(
        "q5",
        "time",
        3,
        Within(Q_(15, "s"), "a look at the jug is no nearer"),
        formula=lambda base, minute, before, after: later(
            minute, base / 2 - before, after - before
        ),
        slips=(
            Slip(
                "took the reading before",
                lambda minute: minute,
                "You gave the last reading before half, the nearest one on paper. A part of the "
                "next three minutes comes on top.",
                worth=2,
            ),
            Slip(
                "took the reading after",
                lambda minute: minute + STEP,
                "You gave the first reading past half, where one sees that it has happened. It "
                "was half out before that.",
                worth=2,
            ),
            Slip(
                "took the middle of the two readings",
                lambda minute: minute + STEP / 2,
                "You went to the middle of the two times, as half was asked for. Half of the base "
                "lies nearer to the first reading: share the step by millilitres.",
                worth=2,
            ),
            Slip(
                "shared the step from the wrong end",
                lambda base, minute, before, after: later(minute, after - base / 2, after - before),
                "The share of the step is that of the liquid past half, the other side of the "
                "same difference. Ask how much was missing at the first reading.",
                worth=2,
            ),
            Slip(
                "took half of the time",
                lambda minute: (minute + STEP) / 2,
                "You halved the time of the last reading, as if it all were out by then. Half of "
                "the base is meant, and a foam drains ever more slowly.",
                worth=1,
            ),
        ),
        working=(
            "{base} ÷ 2 = {half}; {half} − {before} = {missing} missing at {minute}",
            "{missing} ÷ ({after} − {before}) × 3 min = {share}",
            "{minute} + {share} = {answer}",
        ),
        on_the_way={
            "half": lambda base: base / 2,
            "missing": lambda base, before: base / 2 - before,
            "share": lambda base, before, after: later(
                Q_(0, "min"), base / 2 - before, after - before
            ),
        },
        skill="a foam's half-life",
        lesson="06-foam.ipynb",
    ),
    q5,
)
### END HIDDEN TESTS

# %% [markdown] q6-text
"""
## 6. Base for tonight (3 points)

Each plate takes a spoon of foam. Your foam has the overrun of question 4.
**What volume of base must be whipped?**

Lecithin (soya) is on every plate with it: the card says so.

Answer within 10 mL: a jug's marks show no less.
"""

# %% q6-given
six = sheet.given(
    "q6",
    plates=steps(30, 60, 6, "count", "plates"),
    spoon=steps(40, 60, 5, "mL", "foam on a plate"),
)
six

# %% q6-answer
q6 = ""
### BEGIN SOLUTION
q6 = six.plates * six.spoon / (1 + q4)
### END SOLUTION

# %% q6-check
sheet.look("q6", q6, "volume", plausible=("20 mL", "20 L"))


### BEGIN HIDDEN TESTS
def foam_wanted(plates, spoon):
    return plates.magnitude * spoon.to("mL")


def air(overrun):
    return overrun.to("").magnitude


sheet.award(
    Question(
        "q6",
        "volume",
        3,
        Within(Q_(10, "mL"), "a jug's marks show no less"),
        formula=lambda plates, spoon, q4: foam_wanted(plates, spoon) / (1 + air(q4)),
        slips=(
            Slip(
                "divided by the overrun",
                lambda plates, spoon, q4: foam_wanted(plates, spoon) / air(q4),
                "You divided by the overrun, the number at hand. It counts the gas alone; the "
                "foam is gas and base: add 100 %.",
                worth=2,
            ),
            Slip(
                "gave the gas",
                lambda plates, spoon, q4: foam_wanted(plates, spoon) * air(q4) / (1 + air(q4)),
                "This is the gas in the foam, the larger part. The base is what is left.",
                worth=2,
            ),
            Slip(
                "base for one plate",
                lambda spoon, q4: spoon.to("mL") / (1 + air(q4)),
                "This is the base for one plate, and the way is right. There are more plates.",
                worth=2,
            ),
            Slip(
                "gave the foam",
                lambda plates, spoon: foam_wanted(plates, spoon),
                "This is the foam, as if nothing were whipped in. A part of it is gas.",
                worth=1,
            ),
            Slip(
                "multiplied by the overrun",
                lambda plates, spoon, q4: foam_wanted(plates, spoon) * (1 + air(q4)),
                "You multiplied, as one goes from base to foam. Here the foam is known, and the "
                "base is less: divide.",
                worth=1,
            ),
        ),
        working=(
            "{plates} plates × {spoon} = {foam_ml} of foam",
            "{foam_ml} ÷ (100 % + {q4}) = {answer}",
        ),
        on_the_way={"foam_ml": foam_wanted},
        skill="base for a foam",
        lesson="06-foam.ipynb",
    ),
    q6,
)
### END HIDDEN TESTS

# %% [markdown] q7-text
"""
## 7. From your bench (3 points, marked by your instructor)

Weigh a cup of your base, and the same cup of your foam.
Put a weighed amount of foam into a clear jug, and read each minute what has drained, until half of its base is out.
**Write down both weights and your overrun, your readings and the half-life.
Then say one thing that you would change so that the foam stands longer, and what it costs you.**

Foams hide allergens: soya (lecithin), egg, milk, and celery in many stocks.
A whipping siphon is under pressure: its head stays on until all the gas is out.
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: both weights, of the same cup, and the overrun worked out over the foam's weight.
1 point: times and volumes with units, and a half-life that lies between the two readings around half of the base (or says that it goes beyond the log and is an estimate).
1 point: one change that slows draining, with its price: more sugar (sweeter, less air), a thickener such as xanthan or pectin (less air, a heavier mouthful), egg white with it (an allergen), finer bubbles by longer whipping (time), a colder base. More lecithin alone earns it only with a reason.
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
