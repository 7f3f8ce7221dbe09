# %% [markdown] title
"""
# Set 4: Buy enough

You plan a dinner at Brackwater House: brined guinea fowl with a celeriac brunoise.
The order must be enough, and it must not be too much.

**Six questions, 20 points.**
Your numbers are your own: your neighbour has others.
Type each answer between the quotes, as you would write it on a card: `"4.2 kg"`, `"9 lb 4 oz"`, `"{{ money: 3.48 }}"`.
Or compute it with the numbers shown, for example `q1 = one.portion * 2`.
Then press Shift + Enter in each cell, from the top down.

Lesson 4, *Buy enough*, has all you need.
The people and prices here are invented.
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
from kitchenmath import Q_
from kitchenmath.practice import open_set, part_of, steps

sheet = open_set("04-buy-enough", term="demo", student=student)
sheet

# %% [markdown] q1-text
"""
## 1. Celeriac to buy (3 points)

Every cover gets a spoon of celeriac brunoise.
Peeling and squaring off costs weight: the yield says what is left.
**What weight of celeriac must come through the door?**

Answer within 50 g: the scale at the back door shows no less.
Round up, to the next 100 g at most, and never down: what is short cannot be served.
"""

# %% q1-given
one = sheet.given(
    "q1",
    covers=steps(32, 60, 4, "count", "covers"),
    portion=steps(50, 80, 5, "g", "brunoise for each cover, trimmed", us=(1.75, 2.75, 0.25, "oz")),
    yield_=steps(60, 74, 2, "percent", "yield of celeriac cut to brunoise"),
)
one

# %% q1-answer
q1 = ""
### BEGIN SOLUTION
q1 = one.covers * one.portion / one.yield_
### END SOLUTION

# %% q1-check
sheet.look("q1", q1, "weight", plausible=("500 g", "30 kg"))
### BEGIN HIDDEN TESTS
from kitchenmath import Q_
from kitchenmath.practice import Question, Slip, Within

sheet.award(
    Question(
        "q1",
        "weight",
        3,
        Within(Q_(50, "g"), safe="up", to=Q_(100, "g")),
        formula=lambda covers, portion, yield_: covers * portion / yield_,
        slips=(
            Slip(
                "multiplied by the yield",
                lambda covers, portion, yield_: covers * portion * yield_,
                "You multiplied by the yield, as for most percents. That gives what is left of "
                "the trimmed weight, and the order comes out too small. You must buy more than "
                "you serve: divide.",
                worth=1,
            ),
            Slip(
                "forgot the trim",
                lambda covers, portion: covers * portion,
                "This is the trimmed weight, the one that the menu talks of. Peel and squared-off "
                "sides are not in it yet.",
                worth=1,
            ),
            Slip(
                "added the loss on top",
                lambda covers, portion, yield_: covers * portion * (2 - yield_.to("").magnitude),
                "You added the percent that is lost to the trimmed weight. It looks like the same "
                "share; but the loss is a share of what you buy, which is more, so it comes to "
                "more than that.",
                worth=1,
            ),
            Slip(
                "divided by the loss",
                lambda covers, portion, yield_: covers * portion / (1 - yield_.to("").magnitude),
                "You divided by what is lost, as the loss is what one thinks of. Divide by what "
                "is left.",
            ),
            Slip(
                "one cover only",
                lambda portion, yield_: portion / yield_,
                "This feeds one cover: the portion is the number at hand. Multiply by the number "
                "of covers.",
                worth=1,
            ),
        ),
        working=(
            "{covers} covers × {portion} = {trimmed} trimmed",
            "{trimmed} ÷ {yield_} = {answer} to buy",
        ),
        on_the_way={
            "trimmed": lambda covers, portion: covers.magnitude * portion,
        },
        skill="as purchased from edible portion",
        lesson="04-buy-enough.ipynb",
    ),
    q1,
)
### END HIDDEN TESTS

# %% [markdown] q2-text
"""
## 2. Nets to order (2 points)

The greengrocer sells celeriac by the net and cuts none open.
**How many nets do you order** for your answer to question 1?

A net is whole: give the exact number.
"""

# %% q2-given
two = sheet.given("q2", net=steps(1.5, 3, 0.5, "kg", "celeriac in a net", us=(3, 6, 1, "lb")))
two

# %% q2-answer
q2 = ""
### BEGIN SOLUTION
from math import ceil

q2 = ceil((q1 / two.net).to("").magnitude - 1e-9)
### END SOLUTION

# %% q2-check
sheet.look("q2", q2, "count", plausible=("1", "40"))
### BEGIN HIDDEN TESTS
from math import ceil, floor


def nets(weight, net):
    return (weight / net).to("").magnitude


sheet.award(
    Question(
        "q2",
        "count",
        2,
        Within(Q_(0.05, "count")),
        formula=lambda q1, net: ceil(nets(q1, net) - 1e-9),
        slips=(
            Slip(
                "rounded the packs down",
                lambda q1, net: (
                    floor(nets(q1, net)) if nets(q1, net) > 1 and nets(q1, net) % 1 > 1e-9 else None
                ),
                "You rounded down, or to the nearest, as at school. So the last covers go "
                "without: a part of a pack is a whole pack on the order.",
                worth=1,
            ),
            Slip(
                "gave a part of a pack",
                lambda q1, net: nets(q1, net) if 0.15 < nets(q1, net) % 1 < 0.85 else None,
                "You gave the number as it came out. Nobody sells a part of a net: round up to "
                "whole nets.",
                worth=1,
            ),
            Slip(
                "one pack too many",
                lambda q1, net: ceil(nets(q1, net) - 1e-9) + 1,
                "One net too many: the number was rounded up, and then one was added to be safe. "
                "Safety belongs in the yield, where it can be seen.",
                worth=1,
            ),
        ),
        working=("{q1} ÷ {net} a net, rounded up to whole nets = {answer}",),
        skill="whole packs",
        lesson="04-buy-enough.ipynb",
    ),
    q2,
)
### END HIDDEN TESTS

# %% [markdown] q3-text
"""
## 3. Raw weight of a portion (3 points)

The guinea fowl breast loses weight in the oven and while it rests.
**What must one portion weigh raw**, so that the cooked weight on the plate is right?

No weight says that poultry is done: a probe does, in the thickest part.

Answer within 5 g: that is what the portion scale shows.
"""

# %% q3-given
three = sheet.given(
    "q3",
    cooked=steps(110, 150, 5, "g", "cooked weight on the plate", us=(4, 5.25, 0.25, "oz")),
    loss=steps(26, 34, 1, "percent", "cooking loss of the raw weight"),
)
three

# %% q3-answer
q3 = ""
### BEGIN SOLUTION
q3 = three.cooked / (1 - three.loss)
### END SOLUTION

# %% q3-check
sheet.look("q3", q3, "weight", plausible=("50 g", "1 kg"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q3",
        "weight",
        3,
        Within(Q_(5, "g")),
        formula=lambda cooked, loss: cooked / (1 - loss.to("").magnitude),
        slips=(
            Slip(
                "added the cooking loss on top",
                lambda cooked, loss: cooked * (1 + loss.to("").magnitude),
                "You added the loss to the cooked weight, the one that you know. But it is a "
                "share of the raw weight, which is larger: divide the cooked weight by what is "
                "left.",
                worth=1,
            ),
            Slip(
                "took the loss off the cooked weight",
                lambda cooked, loss: cooked * (1 - loss.to("").magnitude),
                "You took the loss off, as it sounds like less. The weight on the plate has lost "
                "it already: raw is heavier than cooked.",
            ),
            Slip(
                "took the loss for the yield",
                lambda cooked, loss: cooked / loss.to("").magnitude,
                "You divided by the loss, the percent that is given. What is left is 100 % less "
                "the loss: divide by that.",
            ),
            Slip(
                "forgot the cooking loss",
                lambda cooked: cooked,
                "This is the cooked weight again: a portion is named by what lies on the plate. "
                "Raw, it must be heavier.",
            ),
        ),
        working=("what is left: 100 % − {loss} = {left}", "{cooked} ÷ {left} = {answer} raw"),
        on_the_way={
            "left": lambda loss: Q_(100, "percent") - loss,
        },
        skill="cooking loss",
        lesson="04-buy-enough.ipynb",
    ),
    q3,
)
### END HIDDEN TESTS

# %% [markdown] q4-text
"""
## 4. The butcher's test (4 points)

You buy whole guinea fowl and take them apart yourself.
Legs and carcasses go to other dishes, so their value comes off the cost.
**What does one {{ kilo }} of trimmed breast cost?** Type it as a price, such as `"{{ price: 21.40 }}"`.

Raw poultry has its own board and knife, and stays cold. Wash your hands after it.
Cold holding, by the food code: {{ limit: cold holding }}.
A boning knife points away from the hand that holds the bird.

Answer within {{ coins: 10 }} a {{ kilo }}: that is hardly more than a coin on a portion.
"""

# %% q4-given
four = sheet.given(
    "q4",
    bought=steps(12, 18, 1, "kg", "whole birds bought", us=(26, 40, 2, "lb")),
    price=steps(8.5, 11, 0.25, "dollar/kg", "price as purchased", us=(4, 5, 0.1, "dollar/lb")),
    breast=part_of("bought", 26, 31, 1, Q_(0.05, "kg"), "trimmed breast", Q_(0.1, "lb")),
    legs=part_of("bought", 26, 30, 1, Q_(0.05, "kg"), "legs", Q_(0.1, "lb")),
    legs_price=steps(5, 7, 0.5, "dollar/kg", "value of the legs", us=(2.2, 3.2, 0.2, "dollar/lb")),
    bones=part_of("bought", 28, 34, 1, Q_(0.05, "kg"), "carcasses for stock", Q_(0.1, "lb")),
    bones_price=steps(
        1, 2, 0.25, "dollar/kg", "value of the carcasses", us=(0.4, 0.9, 0.1, "dollar/lb")
    ),
)
four

# %% q4-answer
q4 = ""
### BEGIN SOLUTION
credit = four.legs * four.legs_price + four.bones * four.bones_price
q4 = (four.bought * four.price - credit) / four.breast
### END SOLUTION

# %% q4-check
sheet.look("q4", q4, "money per weight", plausible=("$2 per kg", "$120 per kg"))


### BEGIN HIDDEN TESTS
def credit(legs, legs_price, bones, bones_price):
    return legs * legs_price + bones * bones_price


sheet.award(
    Question(
        "q4",
        "money per weight",
        4,
        Within(Q_(0.10, sheet.college.price_unit)),
        formula=lambda bought, price, breast, legs, legs_price, bones, bones_price: (
            (bought * price - credit(legs, legs_price, bones, bones_price)) / breast
        ),
        slips=(
            Slip(
                "no credit for the by-products",
                lambda bought, price, breast: bought * price / breast,
                "The whole purchase was put on the breast, as it is what the guest sees. Legs and "
                "carcasses are used elsewhere: take their value off first, or the plate looks "
                "dearer than it is.",
                worth=2,
            ),
            Slip(
                "added the by-products",
                lambda bought, price, breast, legs, legs_price, bones, bones_price: (
                    (bought * price + credit(legs, legs_price, bones, bones_price)) / breast
                ),
                "You added the value of the by-products, like the other lines of the bill. It is "
                "a credit: it comes off.",
                worth=2,
            ),
            Slip(
                "shared the cost over the whole weight",
                lambda bought, price, legs, legs_price, bones, bones_price: (
                    (bought * price - credit(legs, legs_price, bones, bones_price)) / bought
                ),
                "You divided by the weight bought, as for a price per kilo at the door. The "
                "breast alone must carry what is left of the cost.",
                worth=2,
            ),
            Slip(
                "credited the legs only",
                lambda bought, price, breast, legs, legs_price: (
                    (bought * price - legs * legs_price) / breast
                ),
                "The legs are credited, and the carcasses look like waste. They are worth "
                "something too: stock would have to be bought.",
                worth=3,
            ),
            Slip(
                "credited by-products at the purchase price",
                lambda bought, price, breast, legs, bones: (bought - legs - bones) * price / breast,
                "You took the by-products off at the price of the whole bird, the one price that "
                "the bill shows. Their own value counts: what you would pay for them.",
                worth=2,
            ),
        ),
        working=(
            "cost: {bought} × {price} = {cost}",
            "credit: {legs} × {legs_price} + {bones} × {bones_price} = {off}",
            "({cost} − {off}) ÷ {breast} = {answer}",
        ),
        on_the_way={
            "cost": lambda bought, price: (bought * price).to(sheet.college.currency),
            "off": lambda legs, legs_price, bones, bones_price: credit(
                legs, legs_price, bones, bones_price
            ).to(sheet.college.currency),
        },
        skill="butcher's test",
        lesson="04-buy-enough.ipynb",
    ),
    q4,
)
### END HIDDEN TESTS

# %% [markdown] q5-text
"""
## 5. The menu price (4 points)

One plate holds the raw breast portion of question 3 at the price of question 4, and a garnish.
**What must the plate sell for**, so that the food is the stated share of the price?

{{ tax }}
What is left of that price is the gross profit.

Answer within {{ coins: 25 }}, or round up to the next {{ half }}, as menus do.
Never round down: then the food is a larger share than was asked for.
"""

# %% q5-given
five = sheet.given(
    "q5",
    garnish=steps(1.1, 2.4, 0.1, "dollar", "brunoise, foam, velouté and roll"),
    food_cost=steps(28, 36, 1, "percent", "food cost wanted, of the menu price"),
)
five

# %% q5-answer
q5 = ""
### BEGIN SOLUTION
q5 = (q3 * q4 + five.garnish) / five.food_cost * sheet.college.on_the_card
### END SOLUTION

# %% q5-check
sheet.look("q5", q5, "money", plausible=("$2", "$200"))


### BEGIN HIDDEN TESTS
def plate(q3, q4, garnish):
    return meat(q3, q4) + garnish


def meat(q3, q4):
    return (q3 * q4).to(sheet.college.currency)


CARD = sheet.college.on_the_card  # times the price without tax


def share(food_cost):
    return food_cost.to("").magnitude


sheet.award(
    Question(
        "q5",
        "money",
        4,
        Within(Q_(0.25, "dollar"), safe="up", to=Q_(0.50, "dollar")),
        formula=lambda q3, q4, garnish, food_cost: plate(q3, q4, garnish) / share(food_cost) * CARD,
        slips=(
            Slip(
                "took the food cost as a mark-up",
                lambda q3, q4, garnish, food_cost: (
                    plate(q3, q4, garnish) * (1 + share(food_cost)) * CARD
                ),
                "You added the percent to the cost, as a shop does. The food cost is a share of "
                "the price, so the cost is divided by it.",
                worth=2,
            ),
            Slip(
                "took the food cost for the margin",
                lambda q3, q4, garnish, food_cost: (
                    plate(q3, q4, garnish) / (1 - share(food_cost)) * CARD
                ),
                "You divided by what is left after the food: the two shares are easily mixed up. "
                "Divide by the food's own.",
                worth=2,
            ),
            Slip(
                "gave the cost, not the price",
                lambda q3, q4, garnish: plate(q3, q4, garnish),
                "This is what the plate costs, and most of the work. Divide by the food cost to "
                "get the price.",
                worth=2,
            ),
            Slip(
                "forgot the garnish",
                lambda q3, q4, food_cost: meat(q3, q4) / share(food_cost) * CARD,
                "The garnish is missing: it is small, and the meat is on your mind. It costs "
                "money too: add it before you divide.",
                worth=3,
            ),
            Slip(
                "left the tax out of the card's price",
                lambda q3, q4, garnish, food_cost: (
                    plate(q3, q4, garnish) / share(food_cost) if CARD > 1 else None
                ),
                "This is the price without tax, and the kitchen works with that. The guest reads "
                "the card: there the tax is in it. Put it on last.",
                worth=3,
            ),
            Slip(
                "put the till's tax on the card",
                lambda q3, q4, garnish, food_cost: (
                    plate(q3, q4, garnish)
                    / share(food_cost)
                    * (1 + sheet.college.tax_percent / 100)
                    if sheet.college.tax == "out"
                    else None
                ),
                "You put the tax on the card's price, as the guest pays it in the end. Here the "
                "till adds it: the card shows the price without.",
                worth=3,
            ),
            Slip(
                "added the garnish after dividing",
                lambda q3, q4, garnish, food_cost: meat(q3, q4) / share(food_cost) * CARD + garnish,
                "You added the garnish to the price, as something on top. It is a cost like the "
                "meat: add it first.",
                worth=3,
            ),
        ),
        working=(
            "the meat: {q3} × {q4} = {meat}",
            "the plate: {meat} + {garnish} of garnish = {plate}",
            "{plate} ÷ {food_cost}{tax} = {answer}",
            "gross profit: 100 % − {food_cost} = {gross} of the price without tax",
        ),
        on_the_way={
            "meat": meat,
            "plate": plate,
            "tax": lambda food_cost: f" × {CARD:g}" if CARD > 1 else "",
            "gross": lambda food_cost: Q_(100, "percent") - food_cost,
        },
        skill="menu price from food cost",
        lesson="04-buy-enough.ipynb",
    ),
    q5,
)
### END HIDDEN TESTS

# %% [markdown] q6-text
"""
## 6. From your bench (4 points, marked by your instructor)

Weigh a celeriac, peel it, square it off, cut it to brunoise, and weigh again.
**Write down your own yield, and give two reasons why it differs from the one in question 1.
Say what you would do about the order.**

Knives: a flat side down, fingertips back, and a dry board on a damp cloth.
Celeriac is a listed allergen (celery): keep board and trimmings apart.
"""

# %% [markdown] q6-answer
"""
**Mark scheme.**
1 point: both weights and the yield, worked out rightly.
1 point for each reason that really bears on yield, two at most: size and shape of the root, depth of peeling, how strictly it was squared, skill and speed, age and pithy core, what counts as trim or as stock.
1 point: a step that follows from it, such as ordering by one's own tested yield, or using the trim.
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
