# %% [markdown] title
"""
# Set 5: Season and brine

Guinea fowl goes into brine at Brackwater House, and the broth for the velouté goes on the stove.
The salt must be right before anybody can taste it.

**Seven questions, 20 points.**
Your numbers are your own: your neighbour has others.
Type each answer between the quotes, as you would write it on a card: `"510 g"`, `"18 oz"`, `"5.7 %"`.
Or compute it with the numbers shown, for example `q2 = q1 * 2`.
Then press Shift + Enter in each cell, from the top down.

**Strength** is always salt over the finished brine, by weight, as in lesson 5, *Season and brine*.
Salt is table salt. The house and the numbers here are invented.
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
from kitchenmath.practice import open_set, steps

sheet = open_set("05-season-and-brine", term="demo", student=student)
sheet

# %% [markdown] q1-text
"""
## 1. Salt by the ounce (2 points)

The small scale is broken, so the salt is measured in a jug that is marked in US fluid ounces.
A US cup is 8 US fluid ounces, and holds 292 g of table salt.
**What does the salt weigh?**

Answer within 3 g, half a teaspoon: salt runs, and is levelled closer than flour.
"""

# %% q1-given
one = sheet.given("q1", salt=steps(8, 16, 1, "us_fluid_ounce", "table salt, by measure"))
one

# %% q1-answer
q1 = ""
### BEGIN SOLUTION
from kitchenmath.units import weight_of

q1 = weight_of(one.salt, "table salt")
### END SOLUTION

# %% q1-check
sheet.look("q1", q1, "weight", plausible=("50 g", "3 kg"))
### BEGIN HIDDEN TESTS
from kitchenmath import Q_
from kitchenmath.brine import brine_density, strength_from_salometer
from kitchenmath.practice import Question, Slip, Within
from kitchenmath.units import weight_of


def part(percent):
    return percent.to("").magnitude


sheet.award(
    Question(
        "q1",
        "weight",
        2,
        Within(Q_(3, "g"), "half a teaspoon; salt is levelled closer than flour"),
        formula=lambda salt: weight_of(salt, "table salt"),
        slips=(
            Slip(
                "took fluid ounces for ounces of weight",
                lambda salt: Q_(salt.magnitude, "oz").to("g"),
                "You counted 28 g to the ounce. That is the ounce of weight, which has the same "
                "name. The jug shows fluid ounces, and one of them weighs what the salt in it "
                "weighs.",
                worth=1,
            ),
            Slip(
                "weighed the salt as if it were water",
                lambda salt: salt.to("mL") * Q_(1, "g/mL"),
                "You took a millilitre for a gram. With water that habit is right; salt is "
                "heavier.",
                worth=1,
            ),
            Slip(
                "took British fluid ounces",
                lambda salt: weight_of(Q_(salt.magnitude, "uk_fluid_ounce"), "table salt"),
                "You used the British fluid ounce, 28.4 mL; many jugs show both. This one is "
                "American: 29.6 mL.",
                worth=1,
            ),
            Slip(
                "took a tablespoon for a fluid ounce",
                lambda salt: weight_of(Q_(salt.magnitude, "us_tablespoon"), "table salt"),
                "This is half of it. Spoon and ounce are both small, and are mixed up: a US fluid "
                "ounce is two tablespoons.",
                worth=1,
            ),
        ),
        working=("292 g ÷ 8 = 36.5 g, one fluid ounce of table salt", "{salt} × 36.5 g = {answer}"),
        skill="ounces of weight and fluid ounces",
        lesson="05-season-and-brine.ipynb",
    ),
    q1,
)
### END HIDDEN TESTS

# %% [markdown] q2-text
"""
## 2. Water for that salt (3 points)

All the salt of question 1 goes into one tub.
**What weight of water do you put to it**, so that the brine has the strength shown?

Answer within 50 g: the floor scale shows no less.
"""

# %% q2-given
two = sheet.given("q2", wanted=steps(5, 8, 0.5, "percent", "strength, salt over finished brine"))
two

# %% q2-answer
q2 = ""
### BEGIN SOLUTION
q2 = q1 * (1 - two.wanted) / two.wanted
### END SOLUTION

# %% q2-check
sheet.look("q2", q2, "weight", plausible=("500 g", "60 kg"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q2",
        "weight",
        3,
        Within(Q_(50, "g"), "the floor scale shows no less"),
        formula=lambda q1, wanted: q1 * (1 - part(wanted)) / part(wanted),
        slips=(
            Slip(
                "took the percent of the water",
                lambda q1, wanted: q1 / part(wanted),
                "This is what the whole brine weighs, salt and all. It is easily taken for the "
                "water, and then the brine is too weak: strength is salt over brine. Take the "
                "salt off.",
                worth=2,
            ),
            Slip(
                "added the salt instead of taking it off",
                lambda q1, wanted: q1 / part(wanted) + q1,
                "You added the salt to the weight of the brine, as salt goes into water. The "
                "brine has it already: take it off to get the water.",
                worth=1,
            ),
            Slip(
                "divided by the percent as it stands",
                lambda q1, wanted: q1 / wanted.magnitude,
                "You divided by the figure in front of the percent sign, as it stands on the "
                "card. A percent is a hundredth: this is a hundred times too little.",
                worth=1,
            ),
            Slip(
                "divided by the water's share",
                lambda q1, wanted: q1 / (1 - part(wanted)),
                "You divided by the share of water, because water is asked for. What you have is "
                "the salt: divide it by its own share to get the whole.",
            ),
        ),
        working=(
            "{q1} ÷ {wanted} = {finished} of finished brine",
            "{finished} − {q1} = {answer} of water",
        ),
        on_the_way={
            "finished": lambda q1, wanted: (q1 / wanted).to("g"),
        },
        skill="strength and its two denominators",
        lesson="05-season-and-brine.ipynb",
    ),
    q2,
)
### END HIDDEN TESTS

# %% [markdown] q3-text
"""
## 3. Brine by the litre (3 points)

The birds' tub needs a stated volume of **finished brine**, at 20 °C (68 °F).
A litre of brine weighs 1041 g at 6 %, 1056 g at 8 %, and 1071 g at 10 %.
**How much salt is in it?**

Answer within 5 g: the bench scale shows 5 g.
"""

# %% q3-given
three = sheet.given(
    "q3",
    brine=steps(12, 20, 1, "L", "finished brine"),
    wanted=steps(6, 10, 2, "percent", "strength, salt over finished brine"),
)
three

# %% q3-answer
q3 = ""
### BEGIN SOLUTION
from kitchenmath.brine import brine_parts

q3 = brine_parts(three.brine, three.wanted).salt
### END SOLUTION

# %% q3-check
sheet.look("q3", q3, "weight", plausible=("100 g", "4 kg"))


### BEGIN HIDDEN TESTS
def brine_weight(brine, wanted):
    return (brine * brine_density(wanted)).to("g")


def litres_as_kilos(brine):
    return Q_(1000 * brine.to("L").magnitude, "g")


sheet.award(
    Question(
        "q3",
        "weight",
        3,
        Within(Q_(5, "g"), "the bench scale shows 5 g"),
        formula=lambda brine, wanted: brine_weight(brine, wanted) * part(wanted),
        slips=(
            Slip(
                "salted litres of water, not of brine",
                lambda brine, wanted: litres_as_kilos(brine) * part(wanted) / (1 - part(wanted)),
                "This is the salt for as many litres of water, which is how one mixes. With the "
                "salt in it that makes more brine than the tub needs, and some of the salt goes "
                "down the drain.",
                worth=2,
            ),
            Slip(
                "took a litre of brine for a kilogram",
                lambda brine, wanted: litres_as_kilos(brine) * part(wanted),
                "You took a litre for a kilogram. With water that habit is right; brine is "
                "heavier: multiply by what a litre of it weighs.",
                worth=2,
            ),
            Slip(
                "took the weight of the brine for the water's",
                lambda brine, wanted: (
                    brine_weight(brine, wanted) * part(wanted) / (1 - part(wanted))
                ),
                "You weighed the brine rightly, and then counted the salt as if all of that were "
                "water, as when salt is put to water. The percent is of the brine.",
                worth=2,
            ),
            Slip(
                "gave the water, not the salt",
                lambda brine, wanted: brine_weight(brine, wanted) * (1 - part(wanted)),
                "This is the water: the larger part comes out just as easily. The salt was asked "
                "for.",
                worth=2,
            ),
        ),
        working=(
            "{brine} × {litre} a litre = {whole_brine}",
            "{whole_brine} × {wanted} = {answer}",
        ),
        on_the_way={
            "litre": lambda brine, wanted: Q_(
                brine_weight(brine, wanted).to("kg").magnitude / brine.to("L").magnitude, "kg"
            ),
            "whole_brine": lambda brine, wanted: brine_weight(brine, wanted).to("kg"),
        },
        skill="litres of water and litres of brine",
        lesson="05-season-and-brine.ipynb",
    ),
    q3,
)
### END HIDDEN TESTS

# %% [markdown] q4-text
"""
## 4. Read the salometer (3 points)

A clean brine stands in the kitchen, and nobody wrote down what is in it.
Its salometer is made for 15.6 °C (60 °F): 100° is a full brine of 26.4 %.
Add 1° for each 5.6 °C (10 °F) that the brine is warmer than that.
**How strong is the brine?**

Answer within 0.14 %: that is half a degree on the stem, which has a mark for each degree.
"""

# %% q4-given
four = sheet.given(
    "q4",
    shown=steps(22, 60, 2, "count", "degrees that the stem shows"),
    warmth=steps(24, 30, 2, "degC", "temperature of the brine"),
)
four

# %% q4-answer
q4 = ""
### BEGIN SOLUTION
from kitchenmath.brine import strength_from_salometer

q4 = strength_from_salometer(four.shown, temperature=four.warmth)
### END SOLUTION

# %% q4-check
sheet.look("q4", q4, "percent", plausible=("0.5 %", "26.4 %"))


### BEGIN HIDDEN TESTS
def true_degrees(shown, warmth):
    return shown.magnitude + (warmth.to("degF").magnitude - 60) / 10


sheet.award(
    Question(
        "q4",
        "percent",
        3,
        Within(Q_(0.14, "percent"), "half a degree on the stem"),
        formula=lambda shown, warmth: strength_from_salometer(shown, temperature=warmth),
        slips=(
            Slip(
                "took salometer degrees for percent",
                lambda shown: Q_(shown.magnitude, "percent"),
                "You took degrees for percent; both go to 100. But 100° is a full brine, and that "
                "holds 26.4 % of salt and no more.",
            ),
            Slip(
                "corrected, then took degrees for percent",
                lambda shown, warmth: Q_(true_degrees(shown, warmth), "percent"),
                "The correction for warmth is right. Then the degrees were taken for percent, as "
                "both go to 100; but 100° is a full brine of 26.4 %.",
                worth=1,
            ),
            Slip(
                "forgot that the brine is warm",
                lambda shown: strength_from_salometer(shown),
                "This is right for a brine at 15.6 °C (60 °F), and the stem says nothing of warmth. Yours "
                "is warmer, so it is lighter, and the stem shows too little.",
                worth=2,
            ),
            Slip(
                "took the correction off",
                lambda shown, warmth: strength_from_salometer(
                    2 * shown.magnitude - true_degrees(shown, warmth)
                ),
                "You took the correction off: for something warm that feels right. But warm brine "
                "carries the float less well, so it sinks and shows too little: add.",
                worth=2,
            ),
        ),
        working=(
            "{warmth} is {more} warmer than 15.6 °C (60 °F); {more} ÷ 5.6 °C (10 °F) on top of {shown} "
            "= {corrected}",
            "{corrected} hundredths × 26.4 % = {answer}",
        ),
        on_the_way={
            "more": lambda warmth: Q_(warmth.to("degC").magnitude - 15.6, "delta_degC"),
            "corrected": lambda shown, warmth: Q_(
                shown.magnitude + (warmth.to("degC").magnitude - 15.6) / 5.6, "count"
            ),
        },
        skill="reading a salometer",
        lesson="05-season-and-brine.ipynb",
    ),
    q4,
)
### END HIDDEN TESTS

# %% [markdown] q5-text
"""
## 5. Equilibrium brine (3 points)

The birds lie in the water until the salt has evened out.
Then **everything together, birds and water and salt**, shall be at the percent shown.
**How much salt goes in?**

Answer within 3 g: it is weighed in three goes on a scale that shows 1 g.

Raw poultry and its brine stay cold, covered, on the lowest shelf. Nobody tastes that brine.
Cold holding, by the food code: {{ limit: cold holding }}.
"""

# %% q5-given
five = sheet.given(
    "q5",
    birds=steps(14, 18, 0.5, "kg", "guinea fowl"),
    water=steps(20, 26, 1, "kg", "water"),
    target=steps(1.6, 2.0, 0.1, "percent", "salt in the end, of birds, water and salt together"),
)
five

# %% q5-answer
q5 = ""
### BEGIN SOLUTION
from kitchenmath.brine import salt_for_equilibrium

q5 = salt_for_equilibrium(five.birds, five.water, five.target)
### END SOLUTION

# %% q5-check
sheet.look("q5", q5, "weight", plausible=("50 g", "2 kg"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q5",
        "weight",
        3,
        Within(Q_(3, "g"), "weighed in three goes on a scale that shows 1 g"),
        formula=lambda birds, water, target: (
            (birds + water).to("g") * part(target) / (1 - part(target))
        ),
        slips=(
            Slip(
                "left the salt out of the whole",
                lambda birds, water, target: (birds + water).to("g") * part(target),
                "You took the percent of birds and water. Some books do, but here it is of "
                "everything, and the salt is in there too: divide by what is not salt.",
                worth=2,
            ),
            Slip(
                "salt over the birds only",
                lambda birds, target: birds.to("g") * part(target),
                "You salted the birds alone, as they are what is eaten. The salt cannot tell bird "
                "from water: it spreads through both, and the birds end far too mild.",
                worth=1,
            ),
            Slip(
                "salt over the birds only, the salt counted",
                lambda birds, target: birds.to("g") * part(target) / (1 - part(target)),
                "You counted the salt rightly, but only for the birds, as they are what is eaten. "
                "It spreads through the water as well.",
                worth=1,
            ),
            Slip(
                "salt over the water only",
                lambda water, target: water.to("g") * part(target),
                "You salted the water alone, as for any brine. The birds draw salt out of it "
                "until both are alike, so both end too mild.",
                worth=1,
            ),
            Slip(
                "brine at the strength of the end",
                lambda water, target: water.to("g") * part(target) / (1 - part(target)),
                "You made a brine as strong as the end should be; it seems to stay so. It falls, "
                "because the birds take their share: count them in.",
                worth=1,
            ),
        ),
        working=(
            "{birds} + {water} = {whole_} is 100 % − {target} of everything",
            "{whole_} ÷ (100 % − {target}) × {target} = {answer}",
        ),
        on_the_way={
            "whole_": lambda birds, water: (birds + water).to("kg"),
        },
        skill="equilibrium brine",
        lesson="05-season-and-brine.ipynb",
    ),
    q5,
)
### END HIDDEN TESTS

# %% [markdown] q6-text
"""
## 6. The salted broth (2 points)

Somebody seasoned the broth for the velouté, and only then reduced it.
**How salty is it now?**

Answer within 0.1 %: the salt meter shows no less.
"""

# %% q6-given
six = sheet.given(
    "q6",
    broth=steps(6, 9, 0.5, "kg", "broth at the start"),
    salted=steps(0.6, 0.9, 0.1, "percent", "salt in it at the start"),
    end=steps(1.5, 2.4, 0.1, "kg", "broth after reducing"),
)
six

# %% q6-answer
q6 = ""
### BEGIN SOLUTION
from kitchenmath.brine import strength_after_reduction

q6 = strength_after_reduction(six.salted, six.broth, six.end)
### END SOLUTION

# %% q6-check
sheet.look("q6", q6, "percent", plausible=("0.1 %", "20 %"))


### BEGIN HIDDEN TESTS
def times(broth, end):
    return (broth / end).to("").magnitude


sheet.award(
    Question(
        "q6",
        "percent",
        2,
        Within(Q_(0.1, "percent"), "the salt meter shows no less"),
        formula=lambda broth, salted, end: salted * times(broth, end),
        slips=(
            Slip(
                "thought the salt goes with the steam",
                lambda salted: salted,
                "You left it as it was, as if the broth went off as it is. Only water goes off as "
                "steam, and all the salt stays behind.",
            ),
            Slip(
                "turned the ratio round",
                lambda broth, salted, end: salted / times(broth, end),
                "Your broth became milder by boiling: the ratio is turned round, which looks "
                "alike on paper. It is the same salt in less broth.",
                worth=1,
            ),
            Slip(
                "divided by what boiled away",
                lambda broth, salted, end: salted * (broth / (broth - end)).to("").magnitude,
                "You divided the salt by what boiled away, as the change is what one looks at. "
                "The salt is in what is left in the pan.",
                worth=1,
            ),
            Slip(
                "added the share that boiled away",
                lambda broth, salted, end: salted * (1 + ((broth - end) / broth).to("").magnitude),
                "You raised the salt by the share of broth that is gone, which sounds fair. But "
                "half the broth gone makes it twice as salty, not half as salty again.",
            ),
        ),
        working=("{broth} × {salted} = {salt_g} of salt in the pan", "{salt_g} ÷ {end} = {answer}"),
        on_the_way={
            "salt_g": lambda broth, salted: (broth * salted).to("g"),
        },
        skill="salting before reducing",
        lesson="05-season-and-brine.ipynb",
    ),
    q6,
)
### END HIDDEN TESTS

# %% [markdown] q7-text
"""
## 7. From your bench (4 points, marked by your instructor)

Use clean water and clean salt. No bird comes near it.
A hydrometer is glass: where one breaks, all that stood open near it is thrown away.
Weigh 50 g of salt and 950 g of water, and stir until it is clear.
Read a hydrometer in it and the temperature, or fill a jug to 500 mL and weigh what is in it.
**Write down the strength by weighing and by your reading. Give two reasons why they differ.
Say which one you would write on the tub, and when a broth is salted.**
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: both strengths, worked out rightly (5 % by weighing; the reading corrected for warmth, or from the weight of half a litre), with what was read.
1 point for each reason that really bears on it, two at most: temperature of the brine, the level in the jug or the eye not at the level, bubbles or foam on the float, salt not yet dissolved or damp, a scale that shows too little, degrees of the wrong scale, salt that is not table salt.
1 point: the weighed strength goes on the tub (the scale is the better measure here) or a good reason for the other, and broth is salted after it is reduced.
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
