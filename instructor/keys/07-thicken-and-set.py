# %% [markdown] title
"""
# Set 7: Thicken and set

Brackwater House serves a mustard velouté, a cider glaze and a cider jelly tonight.
The velouté must coat a spoon, the glaze must shine, and the jelly must set and still melt on the tongue.

**Seven questions, 20 points.**
Your numbers are your own: your neighbour has others.
Type each answer between the quotes, as you would write it on a card: `"420 g"`, `"14 3/4 oz"`, `"2.5 L"`.
Or compute it with the numbers shown, for example `q3 = q1 * 2`.
Then press Shift + Enter in each cell, from the top down.

Lesson 7, *Thicken and set*, has all you need.
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
from kitchenmath.practice import open_set, steps

sheet = open_set("07-thicken-and-set", term="demo", student=student)
sheet

# %% [markdown] q1-text
"""
## 1. The mustard velouté (3 points)

The stock is first reduced **by** the share shown. What is left is thickened.
The flour is counted for each litre of what is left. Butter and flour are equal weights.
**What does the whole roux weigh?**

A roux is as hot as frying fat: the stock goes in slowly, and the face stays away.
Flour holds gluten, butter is milk, the stock holds celery, and then there is the mustard: all four go on the card.

Answer within 5 g: the bench scale shows no less.
"""

# %% q1-given
one = sheet.given(
    "q1",
    stock=steps(4, 8, 0.5, "L", "stock before it is reduced"),
    cut=steps(25, 35, 5, "percent", "reduced by"),
    flour=steps(50, 70, 5, "g/L", "flour for each litre"),
)
one

# %% q1-answer
q1 = ""
### BEGIN SOLUTION
q1 = 2 * one.stock * (1 - one.cut) * one.flour
### END SOLUTION

# %% q1-check
sheet.look("q1", q1, "weight", plausible=("50 g", "3 kg"))

### BEGIN HIDDEN TESTS
from kitchenmath import Q_
from kitchenmath.practice import Question, Slip, Within


def grams(weight):
    return weight.to("g")


def gone(cut):
    return cut.to("").magnitude


sheet.award(
    Question(
        "q1",
        "weight",
        3,
        Within(Q_(5, "g")),
        formula=lambda stock, cut, flour: grams(2 * stock * (1 - gone(cut)) * flour),
        slips=(
            Slip(
                "took flour per litre for roux per litre",
                lambda stock, cut, flour: grams(stock * (1 - gone(cut)) * flour),
                "This is the flour: the figure counts flour only, though a cook thinks in roux. "
                "As much butter comes to it.",
                worth=2,
            ),
            Slip(
                "reduced to the share, not by it",
                lambda stock, cut, flour: grams(2 * stock * gone(cut) * flour),
                "You kept the share that boils away: “to” and “by” are one small word apart. "
                "Reduced by it means that the rest is left.",
                worth=1,
            ),
            Slip(
                "did not reduce",
                lambda stock, flour: grams(2 * stock * flour),
                "You thickened all the stock, the number that is given. A part of it is steam by "
                "then, and the velouté would stand like paste.",
                worth=1,
            ),
            Slip(
                "flour for the whole stock",
                lambda stock, flour: grams(stock * flour),
                "This is the flour alone, for all the stock, the two numbers that are given. "
                "Reduce first, then count flour and butter.",
            ),
        ),
        working=(
            "left: {stock} × (100 % − {cut}) = {left}",
            "{left} × {flour} = {flour_g} of flour",
            "{flour_g} and as much butter = {answer}",
        ),
        on_the_way={
            "left": lambda stock, cut: stock * (1 - cut.to("").magnitude),
            "flour_g": lambda stock, cut, flour: (stock * (1 - cut.to("").magnitude) * flour).to(
                "g"
            ),
        },
        skill="roux by flour per litre",
        lesson="07-thicken-and-set.ipynb",
    ),
    q1,
)
### END HIDDEN TESTS

# %% [markdown] q2-text
"""
## 2. Without gluten (3 points)

A table eats no gluten, so its sauce is thickened with cornflour and not with a roux.
Cornflour takes **half the weight** of the flour. It is stirred into **twice its own weight** of cold water.
**What does the whole slurry weigh?**

Its own pan, spoon and strainer: a dusting of wheat flour is enough to make this guest ill.

Answer within 5 g: the bench scale shows no less.
"""

# %% q2-given
two = sheet.given(
    "q2",
    sauce=steps(4, 7, 0.5, "L", "sauce to be thickened"),
    wheat=steps(45, 65, 5, "g/L", "wheat flour that it would take"),
)
two

# %% q2-answer
q2 = ""
### BEGIN SOLUTION
from kitchenmath.sauces import slurry_for

q2 = slurry_for(two.sauce * two.wheat).weight
### END SOLUTION

# %% q2-check
sheet.look("q2", q2, "weight", plausible=("30 g", "5 kg"))


### BEGIN HIDDEN TESTS
def by_flour(times, sauce, wheat):
    return times * grams(sauce * wheat)


sheet.award(
    Question(
        "q2",
        "weight",
        3,
        Within(Q_(5, "g"), "the bench scale shows no less"),
        formula=lambda sauce, wheat: by_flour(1.5, sauce, wheat),
        slips=(
            Slip(
                "gave the starch only",
                lambda sauce, wheat: by_flour(0.5, sauce, wheat),
                "This is the cornflour, dry, and it is what thickens. Dry it makes lumps: its "
                "cold water belongs to the slurry.",
                worth=2,
            ),
            Slip(
                "twice the cornflour, not three times",
                lambda sauce, wheat: by_flour(1, sauce, wheat),
                "This is twice the cornflour: its water alone, or one part of starch in one of "
                "water. One part and two parts are three parts.",
                worth=2,
            ),
            Slip(
                "took as much cornflour as flour",
                lambda sauce, wheat: by_flour(3, sauce, wheat),
                "You took as much cornflour as wheat flour: both are white powder. Cornflour is "
                "pure starch, and half is enough.",
                worth=2,
            ),
            Slip(
                "doubled the flour",
                lambda sauce, wheat: by_flour(6, sauce, wheat),
                "You took twice the flour. Cornflour thickens twice as well, so it takes half.",
                worth=1,
            ),
            Slip(
                "slurry for one litre",
                lambda wheat: by_flour(1.5, Q_(1, "L"), wheat),
                "This is the slurry for one litre, and the way is right. There are more litres.",
                worth=2,
            ),
        ),
        working=(
            "{sauce} × {wheat} = {flour_g} of flour; half of it is {starch} of cornflour",
            "{starch} × 2 = {water} of cold water",
            "{starch} + {water} = {answer}",
        ),
        on_the_way={
            "flour_g": lambda sauce, wheat: by_flour(1, sauce, wheat),
            "starch": lambda sauce, wheat: by_flour(0.5, sauce, wheat),
            "water": lambda sauce, wheat: by_flour(1, sauce, wheat),
        },
        skill="starch in place of flour",
        lesson="07-thicken-and-set.ipynb",
    ),
    q2,
)
### END HIDDEN TESTS

# %% [markdown] q3-text
"""
## 3. The cider glaze (3 points)

Cider is boiled down until the refractometer shows what the card wants.
A degree Brix is one percent of sugar by weight, and sugar does not go up as steam.
**What weight is left in the pan?**

**Hot sugar** sticks and burns worse than water: long sleeves, a deep pan, and nobody tastes it hot.
For the refractometer a drop cools on a plate first.

Answer within 20 g: the pot scale shows no less.
"""

# %% q3-given
three = sheet.given(
    "q3",
    cider=steps(4, 8, 0.5, "kg", "cider in the pan"),
    start=steps(10, 14, 1, "percent", "sugar in it, °Brix before"),
    target=steps(60, 70, 5, "percent", "sugar wanted, °Brix after"),
)
three

# %% q3-answer
q3 = ""
### BEGIN SOLUTION
from kitchenmath.sauces import reduce_to

q3 = reduce_to(three.cider, three.start, three.target)
### END SOLUTION

# %% q3-check
sheet.look("q3", q3, "weight", plausible=("50 g", "20 kg"))


### BEGIN HIDDEN TESTS
def part(percent):
    return percent.to("").magnitude


def left_of(cider, start, target):
    return grams(cider) * part(start) / part(target)


sheet.award(
    Question(
        "q3",
        "weight",
        3,
        Within(Q_(20, "g"), "the pot scale shows no less"),
        formula=left_of,
        slips=(
            Slip(
                "gave the steam",
                lambda cider, start, target: grams(cider) - left_of(cider, start, target),
                "This is what goes up as steam, the part that changes. What is left in the pan "
                "is the rest.",
                worth=2,
            ),
            Slip(
                "took off the difference of the percents",
                lambda cider, start, target: grams(cider) * (1 - part(target) + part(start)),
                "You took the difference of the percents off the weight, as if Brix counted what "
                "boils away. What stays is the sugar: weigh it before, and it is the same after.",
                worth=1,
            ),
            Slip(
                "multiplied by the strength wanted",
                lambda cider, target: grams(cider) * part(target),
                "You multiplied by the strength wanted, as one does for a share. The cider's own "
                "sugar is that share of what is left: divide it by the strength.",
                worth=1,
            ),
            Slip(
                "gave the sugar",
                lambda cider, start: grams(cider) * part(start),
                "This is the sugar in the pan, and the first half of the way. There is water "
                "with it in the end too: divide by the strength wanted.",
                worth=2,
            ),
        ),
        working=(
            "{cider} × {start} = {sugar} of sugar, before and after",
            "{sugar} ÷ {target} = {answer}",
        ),
        on_the_way={
            "sugar": lambda cider, start: grams(cider) * part(start),
        },
        skill="reducing by Brix",
        lesson="07-thicken-and-set.ipynb",
    ),
    q3,
)
### END HIDDEN TESTS

# %% [markdown] q4-text
"""
## 4. Another gelatin (3 points)

The cider jelly's card names a strong gelatin. The store has a weaker one.
**What weight of yours sets the jelly as firm?**

Firmness goes with the **square** of the gelatin in the jelly.
Gelatin comes from pork, beef or fish, and fish is a listed allergen: tell the pass which.

Answer within 0.5 g: the small scale shows no less.
"""

# %% q4-given
four = sheet.given(
    "q4",
    leaf=steps(18, 30, 1, "g", "gelatin on the card"),
    card=steps(240, 250, 5, "count", "Bloom on the card"),
    mine=steps(140, 150, 5, "count", "Bloom of yours"),
)
four

# %% q4-answer
q4 = ""
### BEGIN SOLUTION
q4 = four.leaf * (four.card / four.mine) ** 0.5
### END SOLUTION

# %% q4-check
sheet.look("q4", q4, "weight", plausible=("2 g", "200 g"))


### BEGIN HIDDEN TESTS
def ratio(one_bloom, other_bloom):
    return (one_bloom / other_bloom).to("").magnitude


sheet.award(
    Question(
        "q4",
        "weight",
        3,
        Within(Q_(0.5, "g")),
        formula=lambda leaf, card, mine: leaf * ratio(card, mine) ** 0.5,
        slips=(
            Slip(
                "took the ratio without its root",
                lambda leaf, card, mine: leaf * ratio(card, mine),
                "You took the ratio of the Blooms as it stands, as for most exchanges. Firmness "
                "goes with the square of the gelatin, so the weight goes with the root: this "
                "jelly would be rubber.",
                worth=1,
            ),
            Slip(
                "turned the root round",
                lambda leaf, card, mine: leaf * ratio(mine, card) ** 0.5,
                "The root is right; the ratio is turned round, which looks alike on paper. A "
                "weaker gelatin needs more.",
                worth=1,
            ),
            Slip(
                "turned the ratio round, without its root",
                lambda leaf, card, mine: leaf * ratio(mine, card),
                "A smaller Bloom was answered with a smaller weight, which feels consistent. But "
                "a weaker gelatin needs more, and the weight goes with the root.",
            ),
            Slip(
                "changed nothing",
                lambda leaf: leaf,
                "This is the card's weight: gelatin looks like gelatin. A weaker one needs more.",
            ),
        ),
        working=(
            "{card} ÷ {mine} = {times_} times as strong is the card's gelatin",
            "{leaf} × {root}, the square root of {times_}, = {answer}",
        ),
        on_the_way={
            "root": lambda card, mine: Q_(((card / mine).to("").magnitude) ** 0.5, "count"),
            "times_": lambda card, mine: Q_((card / mine).to("").magnitude, "count"),
        },
        skill="gelatin of another Bloom",
        lesson="07-thicken-and-set.ipynb",
    ),
    q4,
)
### END HIDDEN TESTS

# %% [markdown] q5-text
"""
## 5. Leaves for leaves (3 points)

Another card counts its gelatin in leaves. Your leaves weigh more, and are weaker.
**How many of your leaves set it as firm?**

Leaf gelatin is mostly from pork: not every guest eats it. A leaf from fish is a listed allergen.

Answer within 0.25 leaf: it need not be whole, as scissors cut a leaf into quarters.
"""

# %% q5-given
five = sheet.given(
    "q5",
    leaves=steps(20, 30, 1, "count", "leaves on the card"),
    card_leaf=steps(1.9, 2.1, 0.1, "g", "a leaf of the card's kind"),
    card=steps(200, 210, 10, "count", "Bloom on the card"),
    own_leaf=steps(3.2, 3.4, 0.1, "g", "a leaf of yours"),
    own=steps(145, 150, 5, "count", "Bloom of yours"),
)
five

# %% q5-answer
q5 = ""
### BEGIN SOLUTION
q5 = five.leaves * five.card_leaf / five.own_leaf * (five.card / five.own) ** 0.5
### END SOLUTION

# %% q5-check
sheet.look("q5", q5, "count", plausible=("2", "100"))


### BEGIN HIDDEN TESTS
def heavier(leaves, card_leaf, own_leaf):
    return leaves * ratio(card_leaf, own_leaf)


sheet.award(
    Question(
        "q5",
        "count",
        3,
        Within(Q_(0.25, "count"), "scissors cut a leaf into quarters"),
        formula=lambda leaves, card_leaf, card, own_leaf, own: (
            heavier(leaves, card_leaf, own_leaf) * ratio(card, own) ** 0.5
        ),
        slips=(
            Slip(
                "took leaf for leaf",
                lambda leaves: leaves,
                "You took leaf for leaf: a leaf looks like a leaf. Kinds differ in weight and in "
                "Bloom, so go by grams.",
            ),
            Slip(
                "counted the strength only",
                lambda leaves, card, own: leaves * ratio(card, own) ** 0.5,
                "The root is right, and then leaves were counted as if all weighed the same. "
                "Yours are heavier, so fewer are enough.",
                worth=2,
            ),
            Slip(
                "counted the weight only",
                heavier,
                "You went by grams, which is half of it. Yours is weaker too, so it takes more "
                "grams than the card.",
                worth=1,
            ),
            Slip(
                "took the ratio without its root",
                lambda leaves, card_leaf, card, own_leaf, own: (
                    heavier(leaves, card_leaf, own_leaf) * ratio(card, own)
                ),
                "You took the ratio of the Blooms as it stands. Firmness goes with the square of "
                "the gelatin, so the weight goes with the root.",
                worth=2,
            ),
            Slip(
                "turned the root round",
                lambda leaves, card_leaf, card, own_leaf, own: (
                    heavier(leaves, card_leaf, own_leaf) * ratio(own, card) ** 0.5
                ),
                "The root is turned round, which looks alike on paper. A weaker gelatin needs "
                "more grams, not fewer.",
                worth=2,
            ),
        ),
        working=(
            "{leaves} × {card_leaf} = {grams_card} on the card",
            "{card} ÷ {own} = {times_}; {grams_card} × {root}, its square root, = {grams_own} of yours",
            "{grams_own} ÷ {own_leaf} = {answer} leaves",
        ),
        on_the_way={
            "grams_card": lambda leaves, card_leaf: leaves.magnitude * card_leaf,
            "times_": lambda card, own: Q_(ratio(card, own), "count"),
            "root": lambda card, own: Q_(ratio(card, own) ** 0.5, "count"),
            "grams_own": lambda leaves, card_leaf, card, own: (
                leaves.magnitude * card_leaf * ratio(card, own) ** 0.5
            ),
        },
        skill="leaf gelatin of another kind",
        lesson="07-thicken-and-set.ipynb",
    ),
    q5,
)
### END HIDDEN TESTS

# %% [markdown] q6-text
"""
## 6. Too thick (2 points)

The velouté stood on the stove, and water went up as steam. The flour stayed.
You measured what is left, and worked out how much flour a litre of it holds now.
**What volume of hot stock do you stir in**, so that a litre holds what the card wants?

It then goes back to the boil. Hot holding, by the food code: {{ limit: hot holding }}.

Answer within 0.1 L: a stock pot's mark shows no less.
"""

# %% q6-given
six = sheet.given(
    "q6",
    left=steps(5, 8, 0.5, "L", "velouté that is left"),
    now=steps(75, 80, 1, "g/L", "flour in a litre now"),
    wanted=steps(55, 60, 1, "g/L", "flour in a litre, on the card"),
)
six

# %% q6-answer
q6 = ""
### BEGIN SOLUTION
q6 = six.left * six.now / six.wanted - six.left
### END SOLUTION

# %% q6-check
sheet.look("q6", q6, "volume", plausible=("0.1 L", "20 L"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q6",
        "volume",
        2,
        Within(Q_(0.1, "L"), "a stock pot's mark shows no less"),
        formula=lambda left, now, wanted: left * (ratio(now, wanted) - 1),
        slips=(
            Slip(
                "gave all the sauce in the end",
                lambda left, now, wanted: left * ratio(now, wanted),
                "This is all the velouté in the end, and the way is right. Take off what is in "
                "the pot already.",
                worth=1,
            ),
            Slip(
                "took the share of the thick sauce",
                lambda left, now, wanted: left * (1 - ratio(wanted, now)),
                "You took the difference as a share of the thick sauce, which stands there. The "
                "flour must be enough for the thin one: divide by what the card wants.",
                worth=1,
            ),
            Slip(
                "turned the ratio round",
                lambda left, now, wanted: left * ratio(wanted, now),
                "The ratio is turned round, and less sauce comes out than is in the pot. The "
                "same flour goes into more litres.",
            ),
        ),
        working=(
            "{left} × {now} = {flour_g} of flour in the pot",
            "{flour_g} ÷ {wanted} = {whole_} in the end",
            "{whole_} − {left} = {answer}",
        ),
        on_the_way={
            "flour_g": lambda left, now: grams(left * now),
            "whole_": lambda left, now, wanted: left * ratio(now, wanted),
        },
        skill="letting a sauce down",
        lesson="07-thicken-and-set.ipynb",
    ),
    q6,
)
### END HIDDEN TESTS

# %% [markdown] q7-text
"""
## 7. From your bench (3 points, marked by your instructor)

Weigh cider into a pan that you have weighed empty, and read its Brix. Work out what must be left at twice that Brix.
Boil it down until the refractometer shows that, and weigh the pan again.
**Write down your weights and both readings, what you worked out, and what the scale said. Say why they differ.
Then say for one sauce or jelly what too much heat does to its thickener, and what you do instead.**

Hot sugar burns: a drop cools on a plate before it is read. Two people carry a full pot.
Thickeners hide allergens: gluten and milk (roux), fish (some gelatin), mustard, and celery in many stocks.
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: the weights with units and the empty pan taken off, both readings, and half of the weight worked out (the same sugar at twice the Brix).
1 point: a reason for the difference that really bears on it: a warm drop on the refractometer, cider that stuck to spoon or pan, water that went off between reading and weighing, acid that is read as sugar, a scale that shows too little.
1 point: one thickener and what too much heat does to it, with what is done instead: gelatin boiled for long sets weaker (melt it in warm liquid, off the boil); a cornflour or arrowroot sauce boiled hard or stirred for long gets thin (boil up once, then take it off); a roux or sauce left on the stove loses water and gets too thick (a lid, or hot stock, counted by flour per litre).
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
