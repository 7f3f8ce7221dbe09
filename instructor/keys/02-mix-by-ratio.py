# %% [markdown] title
"""
# Set 2: Mix by ratio

You bake bread rolls for a dinner at Brackwater House.
The card gives percents, an old card gives cups, and the bakehouse is warm.

**Seven questions, 20 points.**
Your numbers are your own: your neighbour has others.
Type each answer between the quotes, as you would write it on a card: `"1.6 kg"`, `"3 lb 8 oz"`, `"62 %"`, `"{{ either: 24 °C | 75 °F }}"`.
Or compute it with the numbers shown, for example `q2 = q1 * 2`.
Then press Shift + Enter in each cell, from the top down.

Lesson 2, *Mix by ratio*, has all you need.
The house and its cards are invented.
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

sheet = open_set("02-mix-by-ratio", term="demo", student=student)
sheet

# %% [markdown] q1-text
"""
## 1. Flour for the rolls (3 points)

The card gives every ingredient in percent of the flour.
The flour itself is 100 %.
**What weight of flour do you need**, so that the dough is enough for all rolls?

Answer within 10 g: the bag scale shows no less.
"""

# %% q1-given
one = sheet.given(
    "q1",
    rolls=steps(32, 60, 4, "count", "rolls"),
    piece=steps(55, 75, 5, "g", "dough for each roll"),
    water=steps(58, 64, 1, "percent", "water, of the flour"),
    butter=steps(5, 8, 1, "percent", "butter, of the flour"),
    sugar=steps(2, 4, 1, "percent", "sugar, of the flour"),
    salt=steps(1.8, 2.2, 0.1, "percent", "salt, of the flour"),
    yeast=steps(1, 1.5, 0.25, "percent", "dried yeast, of the flour"),
)
one

# %% q1-answer
q1 = ""
### BEGIN SOLUTION
q1 = one.rolls * one.piece / (1 + one.water + one.butter + one.sugar + one.salt + one.yeast)
### END SOLUTION

# %% q1-check
sheet.look("q1", q1, "weight", plausible=("300 g", "10 kg"))
### BEGIN HIDDEN TESTS
from kitchenmath import Q_
from kitchenmath.practice import Question, Slip, Within


def beside_flour(water, butter, sugar, salt, yeast):
    return (water + butter + sugar + salt + yeast).to("").magnitude


sheet.award(
    Question(
        "q1",
        "weight",
        3,
        Within(Q_(10, "g")),
        formula=lambda rolls, piece, water, butter, sugar, salt, yeast: (
            rolls * piece / (1 + beside_flour(water, butter, sugar, salt, yeast))
        ),
        slips=(
            Slip(
                "divided the dough by 100",
                lambda rolls, piece: rolls * piece,
                "You took the whole dough for the flour: “100 %” sounds like everything. On this "
                "card it is the flour alone, so divide by the total percent. The bowl would hold "
                "far more dough than you need.",
                worth=1,
            ),
            Slip(
                "left the flour's 100 % out of the sum",
                lambda rolls, piece, water, butter, sugar, salt, yeast: (
                    rolls * piece / beside_flour(water, butter, sugar, salt, yeast)
                ),
                "The flour's own 100 % is missing in your sum. The card does not print it, so it "
                "is easily left out: add it, then divide.",
                worth=1,
            ),
            Slip(
                "took the percents off the dough",
                lambda rolls, piece, water, butter, sugar, salt, yeast: (
                    rolls * piece * (1 - beside_flour(water, butter, sugar, salt, yeast))
                ),
                "You took the percents off the dough, as if they were shares of it. They are "
                "shares of the flour, the smaller weight: divide the dough by the total percent.",
            ),
            Slip(
                "summed flour and water only",
                lambda rolls, piece, water: rolls * piece / (1 + water.to("").magnitude),
                "You added flour and water and stopped: they make most of the dough. Butter, "
                "sugar, salt and yeast lie in the bowl too.",
                worth=2,
            ),
            Slip(
                "one roll only",
                lambda piece, water, butter, sugar, salt, yeast: (
                    piece / (1 + beside_flour(water, butter, sugar, salt, yeast))
                ),
                "That is the flour in one roll: the card gives its weight first. Multiply by the "
                "number of rolls.",
                worth=1,
            ),
        ),
        working=(
            "{rolls} rolls × {piece} = {dough} of dough",
            "total percent: 100 % + {water} + {butter} + {sugar} + {salt} + {yeast} = {total}",
            "{dough} ÷ {total} = {answer}",
        ),
        on_the_way={
            "total": lambda water, butter, sugar, salt, yeast: (
                Q_(100, "percent") + water + butter + sugar + salt + yeast
            ),
            "dough": lambda rolls, piece: (rolls * piece).to("g"),
        },
        skill="flour from the weight of a dough",
        lesson="02-mix-by-ratio.ipynb",
    ),
    q1,
)
### END HIDDEN TESTS

# %% [markdown] q2-text
"""
## 2. Salt for the same dough (2 points)

Take your flour of question 1 and the percent of salt that is given there.
**What does the salt weigh?**

Answer within 1 g: the salt scale shows 1 g, and a gram is hardly tasted.
"""

# %% q2-answer
q2 = ""
### BEGIN SOLUTION
q2 = q1 * one.salt
### END SOLUTION

# %% q2-check
sheet.look("q2", q2, "weight", plausible=("2 g", "500 g"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q2",
        "weight",
        2,
        Within(Q_(1, "g")),
        formula=lambda q1, salt: q1 * salt,
        slips=(
            Slip(
                "salted the dough",
                lambda rolls, piece, salt: rolls * piece * salt,
                "You took the percent of the whole dough, as for a stew or a sausage. On a "
                "baker's card it is of the flour: these rolls would be too salty.",
                worth=1,
            ),
            Slip(
                "salted the water",
                lambda q1, water, salt: q1 * water.to("").magnitude * salt,
                "You took the percent of the water, where the salt goes in. On a baker's card it "
                "is of the flour.",
                worth=1,
            ),
            Slip(
                "slipped a decimal place",
                lambda q1, salt: q1 * salt * 10,
                "Ten times too much: the point slipped. It happens to small percents; remember "
                "that one percent is 10 g in a kilo.",
                worth=1,
            ),
        ),
        working=("{q1} × {salt} = {answer}",),
        skill="an ingredient from its percent of flour",
        lesson="02-mix-by-ratio.ipynb",
    ),
    q2,
)
### END HIDDEN TESTS

# %% [markdown] q3-text
"""
## 3. The water on a card of weights (3 points)

Another card gives weights, and two flours.
Both count as flour: together they are 100 %.
**What is the water in percent of flour?**

Answer within 0.5 %: nobody feels less in the hand.
"""

# %% q3-given
three = sheet.given(
    "q3",
    white=steps(2.4, 3, 0.2, "kg", "white bread flour"),
    whole=steps(300, 500, 50, "g", "wholemeal flour"),
    poured=steps(1.8, 2.1, 0.05, "kg", "water"),
)
three

# %% q3-answer
q3 = ""
### BEGIN SOLUTION
q3 = three.poured / (three.white + three.whole)
### END SOLUTION

# %% q3-check
sheet.look("q3", q3, "percent", plausible=("30 %", "120 %"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q3",
        "percent",
        3,
        Within(Q_(0.5, "percent")),
        formula=lambda white, whole, poured: poured / (white + whole),
        slips=(
            Slip(
                "percent of the total",
                lambda white, whole, poured: poured / (white + whole + poured),
                "You divided by everything in the bowl, as for most percents. Percent of flour "
                "leaves the water out of the sum below.",
                worth=1,
            ),
            Slip(
                "percent of the white flour alone",
                lambda white, poured: poured / white,
                "You took the white flour, the largest line of the card, for all of it. Wholemeal "
                "is flour too: the two together are the 100 %.",
                worth=2,
            ),
            Slip(
                "flour over water",
                lambda white, whole, poured: (white + whole) / poured,
                "You divided the flour by the water. The larger number is easily put on top. The "
                "flour is the whole, so it stands below.",
                worth=1,
            ),
        ),
        working=("{white} + {whole} = {flour} of flour", "{poured} ÷ {flour} = {answer}"),
        on_the_way={
            "flour": lambda white, whole: white + whole.to(white.units),
        },
        skill="percent of flour from weights",
        lesson="02-mix-by-ratio.ipynb",
    ),
    q3,
)
### END HIDDEN TESTS

# %% [markdown] q4-text
"""
## 4. Cups on the scale (3 points)

The rolls are brushed with honey and water.
The old card counts US cups: so many of honey to 1 cup of water.
A cup of honey weighs 339 g, a cup of water 237 g (USDA SR28).
You weigh both on the scale.
**What weight of honey goes into the whole glaze?**

Answer within 5 g: the bench scale shows no less.
"""

# %% q4-given
four = sheet.given(
    "q4",
    glaze=steps(800, 1600, 100, "g", "glaze in all"),
    cups=steps(1.5, 2.5, 0.5, "count", "cups of honey to 1 cup of water"),
)
four

# %% q4-answer
q4 = ""
### BEGIN SOLUTION
q4 = four.glaze * four.cups * 339 / (four.cups * 339 + 237)
### END SOLUTION

# %% q4-check
sheet.look("q4", q4, "weight", plausible=("20 g", "5 kg"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q4",
        "weight",
        3,
        Within(Q_(5, "g")),
        formula=lambda glaze, cups: glaze * cups * 339 / (cups * 339 + 237),
        slips=(
            Slip(
                "took cups for weights",
                lambda glaze, cups: glaze * cups / (cups + 1),
                "You shared the glaze by weight, as on any other card here. This one counts cups, "
                "and a cup of honey is heavier than a cup of water.",
                worth=1,
            ),
            Slip(
                "divided by the weight of a cup",
                lambda glaze, cups: glaze * (cups / 339) / (cups / 339 + 1 / 237),
                "Cups times the weight of a cup is weight. You divided, which is the way from "
                "weight to cups, so honey came out light.",
                worth=1,
            ),
            Slip(
                "gave the water",
                lambda glaze, cups: glaze * 237 / (cups * 339 + 237),
                "The sharing is right, and the water was read off in place of the honey. The "
                "honey is the rest.",
                worth=2,
            ),
        ),
        working=(
            "honey {cups} × 339 g = {honey}, water 1 × 237 g",
            "{glaze} × {honey} ÷ ({honey} + 237 g) = {answer}",
        ),
        on_the_way={
            "honey": lambda cups: Q_(339 * cups.magnitude, "g"),
        },
        skill="parts by volume on the scale",
        lesson="02-mix-by-ratio.ipynb",
    ),
    q4,
)
### END HIDDEN TESTS

# %% [markdown] q5-text
"""
## 5. The friction of your mixer (3 points)

Yesterday you measured one batch: three temperatures before, one after kneading.
**What did the mixer add to the sum of the three?** It is a difference, such as `"{{ either: 6 °C | 11 °F }}"`.

Answer within 1 °C (1.8 °F): each reading may be a few tenths off, and the sum carries them all.
"""

# %% q5-given
five = sheet.given(
    "q5",
    came_out=steps(26.5, 27, 0.5, "degC", "dough after kneading"),
    went_in=steps(22, 23, 1, "degC", "water"),
    flour_then=steps(22, 23, 1, "degC", "flour"),
    room_then=steps(22, 23.5, 0.5, "degC", "room"),
)
five

# %% q5-answer
q5 = ""
### BEGIN SOLUTION
from kitchenmath.ratios import friction_factor

q5 = friction_factor(
    dough=five.came_out, water=five.went_in, flour=five.flour_then, room=five.room_then
)
### END SOLUTION

# %% q5-check
sheet.look("q5", q5, "temperature difference", plausible=("0 °C", "30 °C"))


### BEGIN HIDDEN TESTS
def celsius(temperature):
    return temperature.to("degC").magnitude


def difference(degrees):
    return Q_(degrees, "delta_degC")


def went_in_sum(went_in, flour_then, room_then):
    return celsius(went_in) + celsius(flour_then) + celsius(room_then)


sheet.award(
    Question(
        "q5",
        "temperature difference",
        3,
        Within(Q_(1, "delta_degC")),
        formula=lambda came_out, went_in, flour_then, room_then: difference(
            3 * celsius(came_out) - went_in_sum(went_in, flour_then, room_then)
        ),
        slips=(
            Slip(
                "gave the rise of the dough",
                lambda came_out, went_in, flour_then, room_then: difference(
                    celsius(came_out) - went_in_sum(went_in, flour_then, room_then) / 3
                ),
                "That is how much warmer the dough is than the mean of the three. It is what the "
                "hand feels; friction is counted on the sum of the three, so it is three times as "
                "much.",
                worth=2,
            ),
            Slip(
                "counted the dough once",
                lambda came_out, went_in, flour_then, room_then: difference(
                    celsius(came_out) - went_in_sum(went_in, flour_then, room_then)
                ),
                "You took three temperatures off one, because the dough was measured once. Three "
                "went in, so the dough counts three times.",
                worth=1,
            ),
            Slip(
                "counted the dough four times",
                lambda came_out, went_in, flour_then, room_then: difference(
                    4 * celsius(came_out) - went_in_sum(went_in, flour_then, room_then)
                ),
                "You multiplied by four, as for a dough with a preferment. This one has none: "
                "water, flour and room are three.",
                worth=2,
            ),
            Slip(
                "left the room out",
                lambda came_out, went_in, flour_then: difference(
                    3 * celsius(came_out) - celsius(went_in) - celsius(flour_then)
                ),
                "Water and flour went into the bowl, and the room did not: so it is easily left "
                "out. It warms the dough all the same: take it off too.",
                worth=2,
            ),
            Slip(
                "turned the friction into a temperature",
                lambda came_out, went_in, flour_then, room_then: difference(
                    3 * celsius(came_out) - went_in_sum(went_in, flour_then, room_then) + 32 / 1.8
                ),
                "You added 32 on the way to °F, as for a temperature. A difference is only "
                "multiplied by 1.8.",
                worth=2,
            ),
        ),
        working=(
            "3 × {came_out} = {three}",
            "{three} − {went_in} − {flour_then} − {room_then} = {answer}",
        ),
        on_the_way={
            "three": lambda came_out: Q_(3 * came_out.to("degC").magnitude, "degC"),
        },
        skill="friction of a mixer",
        lesson="02-mix-by-ratio.ipynb",
    ),
    q5,
)
### END HIDDEN TESTS

# %% [markdown] q6-text
"""
## 6. Water on a warm day (3 points)

Today is warmer, and the card asks for the dough in °F.
Same mixer, same dough, same minutes: the friction is that of question 5.
**How warm must the water be?** Type °C or °F, and say which.

Answer within 1 °C (1.8 °F): probe and tap are no better.
"""

# %% q6-given
six = sheet.given(
    "q6",
    target=steps(77, 79, 1, "degF", "dough wanted"),
    flour=steps(23, 25, 1, "degC", "flour"),
    room=steps(24, 27, 1, "degC", "room"),
)
six

# %% q6-answer
q6 = ""
### BEGIN SOLUTION
from kitchenmath.ratios import water_temperature

q6 = water_temperature(six.target, flour=six.flour, room=six.room, friction=q5)
### END SOLUTION

# %% q6-check
sheet.look("q6", q6, "temperature", plausible=("0 °C", "45 °C"))


### BEGIN HIDDEN TESTS
def point(degrees):
    return Q_(degrees, "degC")


def bakehouse(flour, room):
    return celsius(flour) + celsius(room)


def added(q5):
    return q5.to("delta_degC").magnitude


sheet.award(
    Question(
        "q6",
        "temperature",
        3,
        Within(Q_(1, "delta_degC")),
        formula=lambda target, flour, room, q5: point(
            3 * celsius(target) - bakehouse(flour, room) - added(q5)
        ),
        slips=(
            Slip(
                "left the friction out",
                lambda target, flour, room: point(3 * celsius(target) - bakehouse(flour, room)),
                "The friction is missing. Nobody sees it; the mixer warms the dough all the same, "
                "so the water must be colder.",
                worth=1,
            ),
            Slip(
                "added the friction",
                lambda target, flour, room, q5: point(
                    3 * celsius(target) - bakehouse(flour, room) + added(q5)
                ),
                "You added the friction, since it is warmth that is added. But the mixer brings "
                "it, so the water need not: take it off.",
                worth=2,
            ),
            Slip(
                "converted the friction as a temperature",
                lambda target, flour, room, q5: point(
                    3 * celsius(target) - bakehouse(flour, room) - added(q5) - 32 / 1.8
                ),
                "On the way to °F you added 32 to the friction too, as to the temperatures beside "
                "it. It is a difference: multiply by 1.8, and add nothing.",
                worth=2,
            ),
            Slip(
                "took °F for °C",
                lambda target, flour, room, q5: point(
                    3 * target.magnitude - bakehouse(flour, room) - added(q5)
                ),
                "You took the card's °F for °C. A degree sign is soon overlooked: bring all to "
                "one scale first.",
                worth=1,
            ),
            Slip(
                "counted the target once",
                lambda target, flour, room, q5: point(
                    celsius(target) - bakehouse(flour, room) - added(q5)
                ),
                "You counted the target once, as the card gives it once. Flour, room and water "
                "make the sum, so it counts three times.",
                worth=1,
            ),
            Slip(
                "counted the target twice",
                lambda target, flour, room, q5: point(
                    2 * celsius(target) - bakehouse(flour, room) - added(q5)
                ),
                "You counted the target twice, for flour and room. The water is the third.",
                worth=2,
            ),
        ),
        working=(
            "target {target} is {in_c}, times 3 = {three}",
            "{three} − {flour} − {room} − {q5} = {answer}",
        ),
        on_the_way={
            "in_c": lambda target: target.to("degC"),
            "three": lambda target: Q_(3 * target.to("degC").magnitude, "degC"),
        },
        skill="water for a dough's temperature",
        lesson="02-mix-by-ratio.ipynb",
    ),
    q6,
)
### END HIDDEN TESTS

# %% [markdown] q7-text
"""
## 7. From your bench (3 points, marked by your instructor)

Weigh a dough from percents and knead it. Measure flour, room and water before, and the dough after.
**Write down your weights, your four temperatures and your own friction.
Give one reason why it differs from the one in question 5, and say what water you would take next time.**

Mixer: guard shut, nothing into a turning bowl, off and unplugged before you scrape.
Wheat flour holds gluten, butter is milk, an egg glaze is egg: keep them apart for a guest who must not have them.
Raw flour and raw egg are raw food: do not taste the dough, and wash your hands.
**Allergens**: flour holds gluten, butter is milk.
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: weights that follow from the percents, four temperatures with their units, and the friction worked out rightly from them.
1 point: a reason that really bears on friction, such as speed, minutes, stiffness or size of the dough, kneading by hand, a cold or warm bowl, a probe not in the middle, flour still cold inside the sack.
1 point: a water temperature that follows from the student's own friction, and not from the one in question 5.
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
