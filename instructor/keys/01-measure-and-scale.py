# %% [markdown] title
"""
# Set 1: Measure and scale

A pile of cards has come to Brackwater House, from kitchens in several countries.
You weigh them out for tonight.

**Seven questions, 20 points.**
Your numbers are your own: your neighbour has others.
Type each answer between the quotes, as you would write it on a card: `"4.2 kg"`, `"9 lb 4 oz"`, `"63 °C"`.
Or compute it with the numbers shown, for example `q2 = q1 * 2`.
Then press Shift + Enter in each cell, from the top down.

Lesson 1, *Measure and scale*, has all you need.
The people and the cards here are invented.
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

sheet = open_set("01-measure-and-scale", term="demo", student=student)
sheet

# %% [markdown] q1-text
"""
## 1. American cups of flour (3 points)

The card for the rolls comes from America and measures its bread flour in cups.
You weighed what a millilitre of your own flour weighs.
**What weight of flour does the card ask for?**

Answer within 2 %: a hand fills a cup no better. A US cup holds 237 mL; the round 240 mL of food labels will do as well.
"""

# %% q1-given
one = sheet.given(
    "q1",
    cups=steps(2, 4, 0.5, "us_cup", "bread flour on the card"),
    density=steps(0.54, 0.6, 0.02, "g/mL", "weight of a millilitre of your flour"),
)
one

# %% q1-answer
q1 = ""
### BEGIN SOLUTION
q1 = one.cups * one.density
### END SOLUTION

# %% q1-check
sheet.look("q1", q1, "weight", plausible=("100 g", "5 kg"))
### BEGIN HIDDEN TESTS
from kitchenmath import Q_
from kitchenmath.practice import Question, Slip, Within


def as_if(volume, unit):
    return Q_(volume.magnitude, unit)


sheet.award(
    Question(
        "q1",
        "weight",
        3,
        Within(Q_(2, "percent"), "a hand fills a cup no better"),
        formula=lambda cups, density: cups * density,
        slips=(
            Slip(
                "cup of another country: metric",
                lambda cups, density: as_if(cups, "metric_cup") * density,
                "You filled the metric (or Australian) cup of 250 mL; it hangs in many kitchens "
                "and looks the same. The American cup holds 237 mL. Ask every cup where it comes "
                "from.",
                worth=2,
            ),
            Slip(
                "cup of another country: British",
                lambda cups, density: as_if(cups, "uk_cup") * density,
                "You filled the British cup of 284 mL, half an imperial pint. Old British books "
                "mean that one; this card is American: 237 mL.",
                worth=2,
            ),
            Slip(
                "ounce of weight for a fluid ounce",
                lambda cups: Q_(8 * cups.magnitude, "oz"),
                "You took a cup for 8 ounces on the scale. The two ounces share a name, but a cup "
                "is 8 fluid ounces, a volume, and flour is much lighter than that.",
                worth=1,
            ),
            Slip(
                "millilitres taken as grams",
                lambda cups: Q_(cups.to("mL").magnitude, "g"),
                "You took a millilitre for a gram. With water that habit is right; multiply by "
                "what a millilitre of flour weighs.",
                worth=1,
            ),
            Slip(
                "divided by the weight of a millilitre",
                lambda cups, density: Q_(cups.to("mL").magnitude / density.magnitude, "g"),
                "You divided. The number is below 1, so that is easily mixed up: from a volume to "
                "a weight you multiply, and flour comes out lighter than water.",
                worth=1,
            ),
        ),
        working=("{cups} × 236.6 mL = {ml}", "{ml} × {density} = {answer}"),
        on_the_way={
            "ml": lambda cups: cups.to("mL"),
        },
        skill="cups to grams",
        lesson="01-measure-and-scale.ipynb",
    ),
    q1,
)
### END HIDDEN TESTS

# %% [markdown] q2-text
"""
## 2. Flour for tonight's rolls (3 points)

The card of question 1 makes a few small rolls. Tonight needs more of them, and each is larger.
**What weight of flour do you weigh out for tonight?**
Build on your answer to question 1.

Answer within 2 %: that is as well as the cups were known.
"""

# %% q2-given
two = sheet.given(
    "q2",
    made=steps(8, 10, 2, "count", "rolls on the card"),
    small=steps(40, 45, 5, "g", "dough for each roll on the card"),
    rolls=steps(40, 60, 4, "count", "rolls tonight"),
    large=steps(60, 75, 5, "g", "dough for each roll tonight"),
)
two

# %% q2-answer
q2 = ""
### BEGIN SOLUTION
q2 = q1 * (two.rolls * two.large) / (two.made * two.small)
### END SOLUTION

# %% q2-check
sheet.look("q2", q2, "weight", plausible=("200 g", "50 kg"))


### BEGIN HIDDEN TESTS
def times(new, old):
    return (new / old).to("").magnitude


sheet.award(
    Question(
        "q2",
        "weight",
        3,
        Within(Q_(2, "percent"), "as well as the cups were known"),
        formula=lambda q1, made, small, rolls, large: q1 * times(rolls * large, made * small),
        slips=(
            Slip(
                "portions scaled but not portion size",
                lambda q1, made, rolls: q1 * times(rolls, made),
                "The number of rolls is right. The size is easily forgotten, because the card "
                "names the number first: each roll is larger too. Number times size, on both "
                "sides of the factor.",
                worth=2,
            ),
            Slip(
                "portion size scaled but not portions",
                lambda q1, small, large: q1 * times(large, small),
                "You scaled the size of a roll, and stopped when one change was made. There are "
                "two: more rolls, and larger ones.",
                worth=1,
            ),
            Slip(
                "portion size the wrong way round",
                lambda q1, made, small, rolls, large: q1 * times(rolls * small, made * large),
                "The number of rolls is right. With two ratios in one line, one is easily turned "
                "over: larger rolls need more flour, not less.",
                worth=1,
            ),
            Slip(
                "inverted factor",
                lambda q1, made, small, rolls, large: q1 * times(made * small, rolls * large),
                "Your factor is upside down, so more rolls get less flour. Both ways look alike "
                "on paper: what is wanted goes on top, what the card makes goes below.",
                worth=1,
            ),
            Slip(
                "scaled by the difference: extra rolls as a factor",
                lambda q1, made, rolls: q1 * (rolls - made).magnitude,
                "You multiplied by how many rolls more there are. “So many more” sounds like a "
                "factor, but a factor says how many times as much: divide, do not subtract.",
            ),
            Slip(
                "scaled by the difference: extra rolls in grams",
                lambda q1, made, rolls: q1 + Q_((rolls - made).magnitude, "g"),
                "You added the number of extra rolls to the flour. Adding feels natural for "
                "“more”; but each roll takes its share of flour: divide, and multiply the card by "
                "that.",
            ),
        ),
        working=(
            "tonight: {rolls} × {large} = {tonight}; the card: {made} × {small} = {card}",
            "{q1} × {tonight} ÷ {card} = {answer}",
        ),
        on_the_way={
            "tonight": lambda rolls, large: (rolls * large).to("g"),
            "card": lambda made, small: (made * small).to("g"),
        },
        skill="conversion factor",
        lesson="01-measure-and-scale.ipynb",
    ),
    q2,
)
### END HIDDEN TESTS

# %% [markdown] q3-text
"""
## 3. Fluid ounces of honey (2 points)

The glaze for the guinea fowl is American too. It measures honey in fluid ounces, and you have a scale.
**What weight of honey do you weigh out?**

Answer within 2 %: a hand fills a measure no better. A US fl oz is 29.6 mL; 30 mL will do as well.
"""

# %% q3-given
three = sheet.given(
    "q3",
    ounces=steps(4, 9, 0.5, "us_fluid_ounce", "honey on the card"),
    heavy=steps(1.4, 1.45, 0.01, "g/mL", "weight of a millilitre of honey"),
)
three

# %% q3-answer
q3 = ""
### BEGIN SOLUTION
q3 = three.ounces * three.heavy
### END SOLUTION

# %% q3-check
sheet.look("q3", q3, "weight", plausible=("30 g", "2 kg"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q3",
        "weight",
        2,
        Within(Q_(2, "percent"), "a hand fills a measure no better"),
        formula=lambda ounces, heavy: ounces * heavy,
        slips=(
            Slip(
                "ounce of weight for a fluid ounce",
                lambda ounces: Q_(ounces.magnitude, "oz"),
                "You weighed ounces. The two ounces share a name, and only with water do they "
                "nearly agree. Fluid ounces are a volume, and honey is almost half as heavy again "
                "as water.",
                worth=1,
            ),
            Slip(
                "millilitres taken as grams",
                lambda ounces: Q_(ounces.to("mL").magnitude, "g"),
                "The millilitres are right. With water they would be the grams, and that is a "
                "hard habit to drop; a millilitre of honey weighs more.",
                worth=1,
            ),
            Slip(
                "divided by the weight of a millilitre",
                lambda ounces, heavy: Q_(ounces.to("mL").magnitude / heavy.magnitude, "g"),
                "You divided. It is hard to tell from the numbers alone; the honey tells: it is "
                "heavy, so the grams must be more than the millilitres. Multiply.",
                worth=1,
            ),
        ),
        working=("{ounces} × 29.57 mL = {ml}", "{ml} × {heavy} = {answer}"),
        on_the_way={
            "ml": lambda ounces: ounces.to("mL"),
        },
        skill="fluid ounces to grams",
        lesson="01-measure-and-scale.ipynb",
    ),
    q3,
)
### END HIDDEN TESTS

# %% [markdown] q4-text
"""
## 4. Australian spoons, scaled (3 points)

An Australian card for the cider foam measures the cider in tablespoons.
**How many millilitres of cider do you measure for tonight?** The portion stays as it is.

Answer within 5 mL: the jug has a mark every 10 mL.
"""

# %% q4-given
four = sheet.given(
    "q4",
    spoons=steps(2, 3, 0.5, "au_tablespoon", "cider on the card"),
    serves=steps(4, 5, 1, "count", "covers on the card"),
    covers=steps(40, 52, 2, "count", "covers tonight"),
)
four

# %% q4-answer
q4 = ""
### BEGIN SOLUTION
q4 = (four.spoons * four.covers / four.serves).to("mL")
### END SOLUTION

# %% q4-check
sheet.look("q4", q4, "volume", plausible=("20 mL", "5 L"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q4",
        "volume",
        3,
        Within(Q_(5, "mL"), "the jug has a mark every 10 mL"),
        formula=lambda spoons, serves, covers: spoons.to("mL") * times(covers, serves),
        slips=(
            # 14.9 mL lies between the spoons sold as a tablespoon, 14.8 mL and 15 mL: one slip.
            Slip(
                "tablespoon of another country",
                lambda spoons, serves, covers: (
                    Q_(14.9 * spoons.magnitude, "mL") * times(covers, serves)
                ),
                "The factor is right. You took a tablespoon of 15 mL (or the American 14.8 mL), "
                "as most books do; the Australian one holds 20 mL, a third "
                "more.",
                worth=2,
                near=0.013,
            ),
            Slip(
                "tablespoon taken as teaspoon",
                lambda spoons, serves, covers: (
                    as_if(spoons, "au_teaspoon").to("mL") * times(covers, serves)
                ),
                "The factor is right. On a card tbsp and tsp differ by one letter: you took "
                "teaspoons of 5 mL, and the card says tablespoons.",
                worth=2,
            ),
            Slip(
                "not scaled",
                lambda spoons: spoons.to("mL"),
                "This is the card's amount in millilitres. The spoons took all the care, and "
                "tonight's covers were forgotten: scale it to them.",
                worth=1,
            ),
            Slip(
                "inverted factor",
                lambda spoons, serves, covers: spoons.to("mL") * times(serves, covers),
                "Your factor is upside down; both ways look alike on paper. Tonight there are "
                "more covers, so there must be more cider.",
                worth=1,
            ),
            Slip(
                "the extra covers only",
                lambda spoons, serves, covers: spoons.to("mL") * (times(covers, serves) - 1),
                "You scaled by the difference in covers, as when you top up a batch. Nothing is "
                "made yet: the covers that the card feeds want their foam too.",
                worth=1,
            ),
        ),
        working=("{spoons} × 20 mL = {ml}", "{ml} × {covers} ÷ {serves} covers = {answer}"),
        on_the_way={
            "ml": lambda spoons: spoons.to("mL"),
        },
        skill="spoons and covers",
        lesson="01-measure-and-scale.ipynb",
    ),
    q4,
)
### END HIDDEN TESTS

# %% [markdown] q5-text
"""
## 5. Turn the oven down (3 points)

The guinea fowl stands in an oven with a dial in °C.
The American card says by how many °F to turn it down after the first browning.
**What does the dial show then?** Type a temperature, such as `"165 °C"`.

A dial says nothing of the birds: poultry is done when a probe in the thickest part says so.
An oven that was opened is hot at the door too: dry cloths.

Answer within 5 °C: the dial has a mark every 10 °C.
"""

# %% q5-given
five = sheet.given(
    "q5",
    dial=steps(200, 240, 5, "degC", "oven now"),
    lower=steps(50, 100, 50, "delta_degF", "to turn it down by"),
)
five

# %% q5-answer
q5 = ""
### BEGIN SOLUTION
q5 = five.dial - five.lower
### END SOLUTION

# %% q5-check
sheet.look("q5", q5, "temperature", plausible=("50 °C", "300 °C"))


### BEGIN HIDDEN TESTS
def less(dial, step_c):
    return Q_(dial.magnitude - step_c, "degC")


sheet.award(
    Question(
        "q5",
        "temperature",
        3,
        Within(Q_(5, "delta_degC"), "the dial has a mark every 10 °C"),
        formula=lambda dial, lower: less(dial, lower.magnitude / 1.8),
        slips=(
            Slip(
                "difference taken as a temperature point",
                lambda dial, lower: less(dial, (lower.magnitude - 32) / 1.8),
                "You took 32 off before you divided. That rule is for a point on the scale, and "
                "it is the one that everybody learns. A step of so many degrees is divided by 1.8 "
                "only.",
                worth=1,
            ),
            Slip(
                "°F taken as °C",
                lambda dial, lower: less(dial, lower.magnitude),
                "You took steps of °F for steps of °C. Both are called degrees, but a step of °F "
                "is smaller: divide by 1.8.",
                worth=1,
            ),
            Slip(
                "turned up instead of down",
                lambda dial, lower: less(dial, -lower.magnitude / 1.8),
                "The size of the step is right. You turned the oven up: read “by” and “down” once "
                "more before a hand goes to the dial.",
                worth=2,
            ),
            Slip(
                "multiplied by 1.8",
                lambda dial, lower: less(dial, lower.magnitude * 1.8),
                "You multiplied by 1.8, which leads from °C to °F. This way round the number of "
                "steps gets smaller: divide.",
                worth=1,
            ),
        ),
        working=("{lower} of step ÷ 1.8 = {step_c}", "{dial} − {step_c} = {answer}"),
        on_the_way={
            "step_c": lambda lower: Q_(lower.magnitude / 1.8, "delta_degC"),
        },
        skill="a step of temperature",
        lesson="01-measure-and-scale.ipynb",
    ),
    q5,
)
### END HIDDEN TESTS

# %% [markdown] q6-text
"""
## 6. How deep does it stand? (2 points)

The card's velouté stands in a small pan. Tonight's batch is so many times as large, in a wide pan.
**How deep does tonight's velouté stand?** Both pans are round with straight walls.

Answer within 2 mm: a ruler in a pan shows no better.
"""

# %% q6-given
six = sheet.given(
    "q6",
    depth=steps(20, 30, 5, "mm", "depth in the card's pan"),
    narrow=steps(16, 20, 2, "cm", "the card's pan, across"),
    batch=steps(6, 10, 1, "count", "times as much tonight"),
    wide=steps(32, 40, 4, "cm", "the wide pan, across"),
)
six

# %% q6-answer
q6 = ""
### BEGIN SOLUTION
q6 = six.depth * six.batch * (six.narrow / six.wide) ** 2
### END SOLUTION

# %% q6-check
sheet.look("q6", q6, "length", plausible=("5 mm", "1 m"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q6",
        "length",
        2,
        Within(Q_(2, "mm"), "a ruler in a pan shows no better"),
        formula=lambda depth, narrow, batch, wide: (
            depth * batch.magnitude * times(narrow, wide) ** 2
        ),
        slips=(
            Slip(
                "depth scaled with the factor",
                lambda depth, batch: depth * batch.magnitude,
                "This is the depth in the card's own pan, where more velouté can only stand "
                "higher. The wide pan has a larger floor, so it spreads out.",
                worth=1,
            ),
            Slip(
                "widths compared instead of areas",
                lambda depth, narrow, batch, wide: depth * batch.magnitude * times(narrow, wide),
                "You compared the widths of the pans, as that is what one measures. Their floors "
                "are areas: a pan twice as wide has four times the floor.",
                worth=1,
            ),
            Slip(
                "factor forgotten",
                lambda depth, narrow, wide: depth * times(narrow, wide) ** 2,
                "The floors are right. With two changes at once one is easily left out: there is "
                "more velouté tonight than on the card.",
                worth=1,
            ),
            Slip(
                "floors upside down",
                lambda depth, narrow, batch, wide: (
                    depth * batch.magnitude * times(wide, narrow) ** 2
                ),
                "Your ratio of the floors is upside down; both ways look alike on paper. In a "
                "wider pan it stands lower, not higher.",
                worth=1,
            ),
        ),
        working=(
            "in the same pan: {depth} × {batch} = {deep}",
            "{deep} × ({narrow} ÷ {wide})², because floors are areas = {answer}",
        ),
        on_the_way={
            "deep": lambda depth, batch: batch.magnitude * depth,
        },
        skill="depth in another pan",
        lesson="01-measure-and-scale.ipynb",
    ),
    q6,
)
### END HIDDEN TESTS

# %% [markdown] q7-text
"""
## 7. From your bench (4 points, marked by your instructor)

Scoop a cup of flour, level it and weigh it. Pour it back. Do this ten times.
(Ten tablespoons of salt do as well.)
**Write down your ten weights, the lightest, the heaviest and the mean.
Give two reasons why they differ. Say what you would write on the card, and why.**

**Allergens**: flour holds gluten. Keep it away from food for guests who must not have it. Raw flour is not for tasting.
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: ten weights with their unit, and lightest, heaviest and mean taken from them rightly.
1 point for each reason that really changes what is in the measure, two at most: scooped or spooned, packed or shaken, how it was levelled, sifted or settled in the bag, damp, another cup or spoon, the step of the scale, another hand.
1 point: a decision that follows from the spread, such as writing grams on the card (with the mean as the first guess), or saying how the cup is to be filled.
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
