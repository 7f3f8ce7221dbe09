# %% [markdown] title
"""
# Set 10: Land the plate

One service at Brackwater House: guinea fowl, celeriac brunoise, mustard velouté, cider foam, a warm roll.
You work out the pieces, and then you plan all of it.

**Seven questions, 20 points.**
Your numbers are your own: your neighbour has others.
Type each answer between the quotes, as you would write it on a card: `"1 h 50 min"`, `"2.4 L"`, `"{{ money: 3.48 }}"`.
Or compute it with the numbers shown, for example `q2 = two.foam * 2`.
Then press Shift + Enter in each cell, from the top down.

Lesson 10, *Land the plate*, has all you need.
The people, times and prices here are invented.
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

sheet = open_set("10-land-the-plate", term="demo", student=student)
sheet

# %% [markdown] q1-text
"""
## 1. The latest moment for the oven (2 points)

The birds roast, then they rest. They are carved, and then the covers are plated.
**How long before the service must they be in the oven, at the latest?** Type a span of time, such as `"1 h 45 min"`.

The time in the oven is an estimate: a probe decides, in the thickest part of every bird.
Raw poultry has its own board and knife, and hands are washed after it.
**Allergens** on this plate: gluten, milk, celery, mustard, and soya from the lecithin in the foam. Read the label of the stock.

Answer within 1 min, or **rounded up** to the next five minutes, as sheets are written.
Never round down: then the birds go in too late.
"""

# %% q1-given
one = sheet.given(
    "q1",
    roast=steps(55, 75, 5, "min", "roast the birds"),
    rest=steps(18, 22, 2, "min", "rest the birds"),
    carve=steps(12, 14, 2, "min", "carve the birds"),
    plate=steps(8, 10, 2, "min", "plate the covers"),
)
one

# %% q1-answer
q1 = ""
### BEGIN SOLUTION
q1 = one.roast + one.rest + one.carve + one.plate
### END SOLUTION

# %% q1-check
sheet.look("q1", q1, "time", plausible=("20 min", "6 h"))
### BEGIN HIDDEN TESTS
from kitchenmath import Q_
from kitchenmath.practice import Question, Slip, Within

sheet.award(
    Question(
        "q1",
        "time",
        2,
        Within(Q_(1, "min"), "as sheets are written", safe="up", to=Q_(5, "min")),
        formula=lambda roast, rest, carve, plate: roast + rest + carve + plate,
        slips=(
            Slip(
                "forgot the rest",
                lambda roast, carve, plate: roast + carve + plate,
                "The rest is missing. Nobody works while a bird rests, so it is easily left off "
                "the sheet; but the clock runs.",
                worth=1,
            ),
            Slip(
                "forgot the plating",
                lambda roast, rest, carve: roast + rest + carve,
                "This lands the carved bird at the service: carving feels like the end. The "
                "covers are plated before it, and that takes its own minutes.",
                worth=1,
            ),
            Slip(
                "forgot the carving",
                lambda roast, rest, plate: roast + rest + plate,
                "The carving is missing. It is short beside the roast and easily left off; but a "
                "whole bird cannot be plated.",
                worth=1,
            ),
            Slip(
                "counted the oven alone",
                lambda roast: roast,
                "This is the time in the oven, the number on every card. Tasks that wait for one "
                "another are added up, to the moment on the plate.",
            ),
        ),
        working=(
            "walk backward: {plate} to plate, {carve} to carve, {rest} of rest",
            "{plate} + {carve} + {rest} + {roast} = {answer} before the service",
        ),
        skill="latest start of a chain",
        lesson="10-land-the-plate.ipynb",
    ),
    q1,
)
### END HIDDEN TESTS

# %% [markdown] q2-text
"""
## 2. Where the slack is (2 points)

The sauce cook makes the velouté, then seasons the cider base, then whips the foam.
The foam must be ready when plating starts. Plating takes as long as in question 1.
The cook is free from the moment shown.
**How much slack has the velouté?** That is: how much earlier than at the latest moment could it be begun?

A velouté that waits is kept hot, at 63 °C (145 °F) or above (the house's own rule), covered, with a probe in it.
Hot holding, by the food code: {{ limit: hot holding }}. Your local food code comes first.
Pour hot sauce away from your body.

Answer within 1 min, or **rounded down** to five minutes, as sheets are written.
Never round up: nobody can spend spare minutes that are not there.
"""

# %% q2-given
two = sheet.given(
    "q2",
    free=steps(120, 140, 10, "min", "the sauce cook is free, before the service, from"),
    veloute=steps(25, 35, 5, "min", "cook the velouté"),
    season=steps(8, 12, 2, "min", "season the cider base"),
    foam=steps(4, 6, 1, "min", "whip the cider foam"),
)
two

# %% q2-answer
q2 = ""
### BEGIN SOLUTION
q2 = two.free - two.veloute - two.season - two.foam - one.plate
### END SOLUTION

# %% q2-check
sheet.look("q2", q2, "time", plausible=("1 min", "4 h"))


### BEGIN HIDDEN TESTS
def unless_near(span, right, least):
    """A slip's time, or None where it is all but the right one."""
    return None if abs((span - right).to("min").magnitude) <= least else span


def latest(veloute, season, foam, plate):
    return veloute + season + foam + plate


sheet.award(
    Question(
        "q2",
        "time",
        2,
        Within(Q_(1, "min"), "as sheets are written", safe="down", to=Q_(5, "min")),
        formula=lambda free, veloute, season, foam, plate: (
            free - latest(veloute, season, foam, plate)
        ),
        slips=(
            Slip(
                "forgot the work itself",
                lambda free, season, foam, plate: free - season - foam - plate,
                "The time that the velouté itself takes is still in it: one looks at what comes "
                "after. Slack is what is left when the work is done.",
                worth=1,
            ),
            Slip(
                "counted to the service",
                lambda free, veloute, season, foam: free - veloute - season - foam,
                "You counted to the service, the one time that everybody knows. The foam is "
                "wanted when plating starts, and that is earlier.",
                worth=1,
            ),
            Slip(
                "forgot what the cook does after it",
                lambda free, veloute, plate: free - veloute - plate,
                "You looked at the velouté alone. Base and foam are this cook's too, and come "
                "after it: one pair of hands does one thing at a time.",
                worth=1,
            ),
            Slip(
                "gave the latest start",
                lambda free, veloute, season, foam, plate: unless_near(
                    latest(veloute, season, foam, plate),
                    free - latest(veloute, season, foam, plate),
                    6,
                ),
                "This is how long before the service the velouté must begin at the latest, the "
                "step before the last. Slack is the room in front of that moment.",
                worth=1,
            ),
        ),
        working=(
            "latest start: {veloute} + {season} + {foam} + {plate} = {latest} before the service",
            "{free} − {latest} = {answer}",
        ),
        on_the_way={
            "latest": lambda veloute, season, foam, plate: veloute + season + foam + plate,
        },
        skill="slack of a task",
        lesson="10-land-the-plate.ipynb",
    ),
    q2,
)
### END HIDDEN TESTS

# %% [markdown] q3-text
"""
## 3. Cider to order (2 points)

Every cover gets some cider base for the foam.
The base is cider that was reduced **by** the share shown.
**How much cider must come through the door?**

A boiling reduction spits, and a pan that boils dry burns: somebody stays with it.

Answer within 50 mL, as the jug shows it, or **rounded up** to the next 0.1 L, as it is ordered.
Never round down: then the last covers have no foam.
"""

# %% q3-given
three = sheet.given(
    "q3",
    covers=steps(24, 36, 2, "count", "covers"),
    base=steps(40, 60, 5, "mL", "cider base for each cover"),
    cut=steps(30, 45, 5, "percent", "the cider is reduced by"),
)
three

# %% q3-answer
q3 = ""
### BEGIN SOLUTION
q3 = three.covers * three.base / (1 - three.cut)
### END SOLUTION

# %% q3-check
sheet.look("q3", q3, "volume", plausible=("200 mL", "40 L"))


### BEGIN HIDDEN TESTS
def gone(cut):
    return cut.to("").magnitude


sheet.award(
    Question(
        "q3",
        "volume",
        2,
        Within(Q_(50, "mL"), "as it is ordered", safe="up", to=Q_(100, "mL")),
        formula=lambda covers, base, cut: covers.magnitude * base / (1 - gone(cut)),
        slips=(
            Slip(
                "did not reduce",
                lambda covers, base: covers.magnitude * base,
                "This is the base that is wanted, the number on the card. A part of the cider "
                "boils away first, so more must be bought.",
                worth=1,
            ),
            Slip(
                "multiplied by what is left",
                lambda covers, base, cut: covers.magnitude * base * (1 - gone(cut)),
                "You reduced the base once more, as for most percents. It is what is left "
                "already: divide by the share that is left.",
                worth=1,
            ),
            Slip(
                "added the share on top",
                lambda covers, base, cut: covers.magnitude * base * (1 + gone(cut)),
                "You added the percent to the base. It looks like the same share; but what boils "
                "away is a share of the cider, which is more than the base, so it comes to more "
                "than that.",
                worth=1,
            ),
            Slip(
                "divided by what boils away",
                lambda covers, base, cut: covers.magnitude * base / gone(cut),
                "You divided by the share that boils away, the percent that is given. Divide by "
                "the share that is left.",
                worth=1,
            ),
            Slip(
                "one cover only",
                lambda base, cut: base / (1 - gone(cut)),
                "This is the cider for one cover: the portion is the number at hand. Multiply by "
                "the covers.",
                worth=1,
            ),
        ),
        working=(
            "{covers} covers × {base} = {whole_base} of base",
            "{whole_base} ÷ (100 % − {cut}) = {answer} of cider",
        ),
        on_the_way={
            "whole_base": lambda covers, base: covers.magnitude * base,
        },
        skill="order quantity before a reduction",
        lesson="10-land-the-plate.ipynb",
    ),
    q3,
)
### END HIDDEN TESTS

# %% [markdown] q4-text
"""
## 4. Cost of a cover (3 points)

The cider of question 3 comes in whole bottles, and no other dish takes what is left over.
All else on the plate costs what is shown.
**What does the food of one cover cost?**

Answer within {{ coins: 2 }}: rounding on the way costs no more.
"""

# %% q4-given
four = sheet.given(
    "q4",
    bottle=steps(0.75, 1, 0.25, "L", "cider in a bottle"),
    price=steps(4.2, 6, 0.2, "dollar", "price of a bottle"),
    other=steps(3.1, 4.4, 0.1, "dollar", "all else on the plate, for one cover"),
)
four

# %% q4-answer
q4 = ""
### BEGIN SOLUTION
from math import ceil

bottles = ceil((q3 / four.bottle).to("").magnitude - 1e-9)
q4 = bottles * four.price / three.covers.magnitude + four.other
### END SOLUTION

# %% q4-check
sheet.look("q4", q4, "money", plausible=("$0.50", "$60"))
### BEGIN HIDDEN TESTS
from math import ceil, floor


def filled(q3, bottle):
    return (q3 / bottle).to("").magnitude


def whole(q3, bottle):
    return ceil(filled(q3, bottle) - 1e-9)


sheet.award(
    Question(
        "q4",
        "money",
        3,
        Within(Q_(0.02, "dollar")),
        formula=lambda q3, bottle, price, other, covers: (
            whole(q3, bottle) * price / covers.magnitude + other
        ),
        slips=(
            Slip(
                "paid for a part of a bottle",
                lambda q3, bottle, price, other, covers: (
                    filled(q3, bottle) * price / covers.magnitude + other
                    if 0.25 < filled(q3, bottle) % 1 < 0.75
                    else None
                ),
                "You paid for the cider that goes into the pan, which is fair where the rest is "
                "drunk. Tonight it is not, and nobody sells a part of a bottle: round up "
                "first.",
                worth=2,
            ),
            Slip(
                "rounded the bottles down",
                lambda q3, bottle, price, other, covers: (
                    floor(filled(q3, bottle)) * price / covers.magnitude + other
                    if filled(q3, bottle) % 1 > 1e-9
                    else None
                ),
                "One bottle too few: it was rounded down, or to the nearest, as at school. The "
                "last covers go without foam; a part of a bottle is a whole one on the "
                "bill.",
                worth=2,
            ),
            Slip(
                "did not share the bottles out",
                lambda q3, bottle, price, other: whole(q3, bottle) * price + other,
                "You added the bill for the cider to the cost of one cover, as both are money. "
                "The bottles are for all covers: share them out, then add.",
                worth=1,
            ),
            Slip(
                "forgot the rest of the plate",
                lambda q3, bottle, price, covers: whole(q3, bottle) * price / covers.magnitude,
                "This is the cider alone: it was the hard part. There is more on the plate: add "
                "it.",
                worth=2,
            ),
            Slip(
                "shared out what was one cover's",
                lambda q3, bottle, price, other, covers: (
                    (whole(q3, bottle) * price + other) / covers.magnitude
                ),
                "You added the rest of the plate before you divided, as one adds up a bill. It "
                "was counted for one cover already: only the bottles are shared out.",
                worth=1,
            ),
        ),
        working=(
            "{q3} ÷ {bottle} a bottle, rounded up, = {bottles} bottles; × {price} = {bill}",
            "{bill} ÷ {covers} covers + {other} = {answer}",
        ),
        on_the_way={
            "bottles": lambda q3, bottle: Q_(whole(q3, bottle), "count"),
            "bill": lambda q3, bottle, price: whole(q3, bottle) * price,
        },
        skill="cost of a cover",
        lesson="10-land-the-plate.ipynb",
    ),
    q4,
)
### END HIDDEN TESTS

# %% [markdown] q5-text
"""
## 5. The price on the card (2 points)

**What must the plate sell for**, so that the food of question 4 is the stated share of the price?

{{ tax }}
What is left of that price is the gross profit.

Answer within {{ coins: 25 }}, or **rounded up** to the next {{ half }}, as cards are printed.
Never round down: then the food is a larger share than was asked for.
"""

# %% q5-given
five = sheet.given("q5", food_cost=steps(28, 36, 1, "percent", "food cost wanted, of the price"))
five

# %% q5-answer
q5 = ""
### BEGIN SOLUTION
q5 = q4 / five.food_cost * sheet.college.on_the_card
### END SOLUTION

# %% q5-check
sheet.look("q5", q5, "money", plausible=("$2", "$200"))
### BEGIN HIDDEN TESTS
CARD = sheet.college.on_the_card  # times the price without tax

sheet.award(
    Question(
        "q5",
        "money",
        2,
        Within(Q_(0.25, "dollar"), "as cards are printed", safe="up", to=Q_(0.50, "dollar")),
        formula=lambda q4, food_cost: q4 / food_cost.to("").magnitude * CARD,
        slips=(
            Slip(
                "took the food cost as a mark-up",
                lambda q4, food_cost: q4 * (1 + food_cost.to("").magnitude) * CARD,
                "You put the percent on top of the cost, as a shop does. The food is a share of "
                "the price, so the cost is divided by that share.",
                worth=1,
            ),
            Slip(
                "took the food cost for the margin",
                lambda q4, food_cost: q4 / (1 - food_cost.to("").magnitude) * CARD,
                "You divided by what is left for wages, rent and profit: the two shares are "
                "easily mixed up. Divide by the food's share.",
                worth=1,
            ),
            Slip(
                "left the tax out of the card's price",
                lambda q4, food_cost: q4 / food_cost.to("").magnitude if CARD > 1 else None,
                "This is the price without tax, and the kitchen works with that. The guest reads "
                "the card: there the tax is in it. Put it on last.",
                worth=1,
            ),
            Slip(
                "put the till's tax on the card",
                lambda q4, food_cost: (
                    q4 / food_cost.to("").magnitude * (1 + sheet.college.tax_percent / 100)
                    if sheet.college.tax == "out"
                    else None
                ),
                "You put the tax on the card's price, as the guest pays it in the end. Here the "
                "till adds it: the card shows the price without.",
                worth=1,
            ),
            Slip(
                "took the percent of the cost",
                lambda q4, food_cost: q4 * food_cost.to("").magnitude * CARD,
                "You took that percent of the cost, as for most percents, and would sell the "
                "plate below it. The cost is the share: divide.",
            ),
            Slip(
                "gave the cost, not the price",
                lambda q4: q4,
                "This is what the food costs, the number that you worked for. The price has to "
                "carry the kitchen too: divide.",
            ),
        ),
        working=(
            "{q4} ÷ {food_cost}{tax} = {answer}",
            "gross profit: 100 % − {food_cost} = {gross} of the price without tax",
        ),
        on_the_way={
            "tax": lambda food_cost: f" × {CARD:g}" if CARD > 1 else "",
            "gross": lambda food_cost: Q_(100, "percent") - food_cost,
        },
        skill="menu price from food cost",
        lesson="10-land-the-plate.ipynb",
    ),
    q5,
)
### END HIDDEN TESTS

# %% [markdown] q6-text
"""
## 6. The whole plan (6 points)

Now land all of it. **Write the start of each task** on its line, as a clock time: `carve the birds 19:08`, or `7:08 pm`.
"Yours" stands for your numbers of questions 1 and 2, and those shown below.

| task | takes | who | needs | after | rests | may wait |
|---|---|---|---|---|---|---|
| heat the oven | 20 min | nobody | the oven | | | 10 min |
| bake the rolls | yours | nobody | the oven | heat the oven | 20 min to cool | 2 h |
| cool the oven | 10 min | nobody | the oven | | | 10 min |
| sear the birds | 20 min | roast cook | a burner | | | 10 min |
| roast the birds | yours | nobody | the oven | sear the birds, cool the oven | yours | 10 min |
| carve the birds | yours | roast cook | | roast the birds | | 4 min |
| cook the velouté | yours | sauce cook | a burner | | | 2 h |
| season the cider base | yours | sauce cook | | | | 2 h |
| whip the cider foam | yours | sauce cook | | season the cider base | | 6 min |
| cut the brunoise | 40 min | larder cook | | | | 4 h |
| warm the brunoise | 9 min | larder cook | a burner | cut the brunoise | | 10 min |
| warm the rolls | 6 min | nobody | the oven | bake the rolls | | 10 min |
| plate the covers | yours | all three | | carve the birds, cook the velouté, whip the cider foam, warm the brunoise, warm the rolls | | 2 min |

There are three cooks, two burners and **one oven**, which holds the birds or the rolls.
Rolls bake at {{ oven: 220 }} and the birds roast at {{ oven: 160 }}: the oven is heated for the rolls and cooled for the birds, and both are tasks. The kitchen opens at 15:30.
Baked rolls wait under a cloth. They are warmed when the birds have left the oven, and come to the table warm.
A rest follows the task; nobody is busy with it. "May wait" is counted from there to the task that uses it, for the plated covers to the service.

Many plans are right. Yours is judged by these:
everything is in order and ready in time, rests included (2 points); nothing waits too long (1.5); nobody is in two places (1); no more in the oven and on the burners than there is (1); nothing starts before the kitchen opens (0.5).
**The step is one minute.** What is broken by 5 min at most costs half a point; by more, or in the wrong order, all of its points. A task left out costs its share.

**Waiting is quality, safety is temperature.** What waits hot waits at 63 °C (145 °F) or above (the house's own rule).
Hot holding, by the food code: {{ limit: hot holding }}. Your local food code comes first.
Poultry is done when a probe says so, and raw birds never lie above or beside what is ready to eat.
On this plate are celery, milk, mustard and gluten; foam may hide egg or soya. Ask before the guests sit.
"""

# %% q6-given
six = sheet.given(
    "q6",
    late=steps(0, 45, 15, "min", "the service is this much later than 19:00"),
    rolls=steps(18, 24, 3, "min", "bake the rolls"),
)
six

# %% q6-answer
q6 = """
heat the oven
bake the rolls
cool the oven
sear the birds
roast the birds
carve the birds
cook the velouté
season the cider base
whip the cider foam
cut the brunoise
warm the brunoise
warm the rolls
plate the covers
"""
### BEGIN SOLUTION
from kitchenmath.service.clock import read_clock, say_clock


def before(*spans):
    """The clock time that lies so many minutes before the service."""
    service_s = read_clock("19:00", "service") + six.late.to("s").magnitude
    return say_clock(round(service_s - sum(span.to("s").magnitude for span in spans)))


birds = (one.plate, one.carve, one.rest, one.roast)
q6 = {
    "plate the covers": before(one.plate),
    "carve the birds": before(one.plate, one.carve),
    "roast the birds": before(*birds),
    "sear the birds": before(*birds, Q_(20, "min")),
    "cool the oven": before(*birds, Q_(10, "min")),
    "bake the rolls": before(*birds, Q_(10, "min"), six.rolls),
    "heat the oven": before(*birds, Q_(10, "min"), six.rolls, Q_(20, "min")),
    "warm the rolls": before(one.plate, Q_(6, "min")),
    "whip the cider foam": before(one.plate, two.foam),
    "season the cider base": before(one.plate, two.foam, two.season),
    "cook the velouté": before(one.plate, two.foam, two.season, two.veloute),
    "warm the brunoise": before(one.plate, Q_(9, "min")),
    "cut the brunoise": before(one.plate, Q_(9, "min"), Q_(40, "min")),
}
### END SOLUTION

# %% q6-check
sheet.look(
    "q6",
    q6,
    "plan",
    plausible=(
        "heat the oven",
        "bake the rolls",
        "cool the oven",
        "sear the birds",
        "roast the birds",
        "carve the birds",
        "cook the velouté",
        "season the cider base",
        "whip the cider foam",
        "cut the brunoise",
        "warm the brunoise",
        "warm the rolls",
        "plate the covers",
    ),
)
### BEGIN HIDDEN TESTS
from dataclasses import replace

from kitchenmath.practice.plan_kitchen import Kitchen, begins_at_opening, later, one_by_one
from kitchenmath.practice.planned import PlanQuestion, PlanSlip
from kitchenmath.service import Task
from kitchenmath.service.clock import read_clock, say_clock


def minutes(number):
    return Q_(number, "min")


def service(late, roast, rest, carve, plate, veloute, season, foam, rolls):
    sauce, larder = {"cook": "sauce cook"}, {"cook": "larder cook"}
    oven = {"hands": 0, "equipment": "oven"}
    return Kitchen(
        serve_at=later("19:00", late),
        tasks=(
            Task("heat the oven", minutes(20), hold=minutes(10), **oven),
            Task(
                "bake the rolls",
                rolls,
                after="heat the oven",
                rest=minutes(20),
                hold=minutes(120),
                **oven,
            ),
            Task("cool the oven", minutes(10), hold=minutes(10), **oven),
            Task(
                "sear the birds",
                minutes(20),
                hold=minutes(10),
                equipment="burner",
                cook="roast cook",
            ),
            Task(
                "roast the birds",
                roast,
                after=("sear the birds", "cool the oven"),
                rest=rest,
                hold=minutes(10),
                **oven,
            ),
            Task(
                "carve the birds",
                carve,
                after="roast the birds",
                hold=minutes(4),
                cook="roast cook",
            ),
            Task("cook the velouté", veloute, hold=minutes(120), equipment="burner", **sauce),
            Task("season the cider base", season, hold=minutes(120), **sauce),
            Task(
                "whip the cider foam", foam, after="season the cider base", hold=minutes(6), **sauce
            ),
            Task("cut the brunoise", minutes(40), hold=minutes(240), **larder),
            Task(
                "warm the brunoise",
                minutes(9),
                after="cut the brunoise",
                hold=minutes(10),
                equipment="burner",
                **larder,
            ),
            Task("warm the rolls", minutes(6), after="bake the rolls", hold=minutes(10), **oven),
            Task(
                "plate the covers",
                plate,
                hands=3,
                hold=minutes(2),
                after=(
                    "carve the birds",
                    "warm the brunoise",
                    "whip the cider foam",
                    "cook the velouté",
                    "warm the rolls",
                ),
            ),
        ),
        cooks=("roast cook", "sauce cook", "larder cook"),
        equipment={"oven": 1, "burner": 2},
        opens="15:30",
    )


def earlier(clock, number):
    return say_clock(read_clock(clock, "clock") - 60 * number)


def with_moved(kitchen, task, start):
    return {**kitchen.plan.starts, task: start}


def lengthened(kitchen, name):
    """A kitchen in which a task is begun ten minutes early, to be on the safe side."""
    work = {task.name: task.duration for task in kitchen.tasks}
    return kitchen.with_task(name, duration=work[name] + minutes(10))


def helped_out(kitchen):
    """A kitchen with six cooks who do anything."""
    return replace(
        kitchen, cooks=6, tasks=tuple(replace(task, cook=None) for task in kitchen.tasks)
    )


def without(kitchen, name):
    return {task: start for task, start in kitchen.plan.starts.items() if task != name}


sheet.award(
    PlanQuestion(
        "q6",
        kitchen=service,
        worth={"order": 2, "holding": 1.5, "hands": 1, "equipment": 1, "opening": 0.5},
        slips=(
            PlanSlip(
                "counted forward from the opening",
                ("hold",),
                "The plates are ready before the guests are. Whoever starts at the opening and "
                "takes one task after another is done when the work is done, and not when it is "
                "wanted: begin at the service and walk backward.",
                one_by_one,
                tasks=("plate the covers",),
                looks=begins_at_opening,
            ),
            PlanSlip(
                "plated too early",
                ("hold",),
                "The covers stand on the pass and get cold. To be done early feels safe; but "
                "spare minutes belong in front of the tasks that may wait, and not behind the "
                "last one.",
                lambda kitchen: replace(kitchen, serve_at=earlier(kitchen.serve_at, 8)).plan.starts,
                tasks=("plate the covers",),
            ),
            PlanSlip(
                "forgot the rest",
                ("rest",),
                "A rest is left off. Nobody works then, so it is not on anybody's list; but what "
                "comes next has to wait for it.",
                lambda kitchen: kitchen.without_rests(),
            ),
            PlanSlip(
                "plated too late",
                ("late",),
                "The last covers leave after the guests have sat down. The service is easily "
                "taken for the moment when plating begins; it is when the plates are ready.",
                lambda kitchen: kitchen.with_task("plate the covers", duration=minutes(1)),
            ),
            PlanSlip(
                "began before what it waits for was done",
                ("order",),
                "A task begins before the one it waits for is done. It happens when one moment is "
                "written down for both: add the time that the earlier one takes.",
                lambda kitchen: with_moved(
                    kitchen, "sear the birds", kitchen.plan.starts["roast the birds"]
                ),
            ),
            PlanSlip(
                "held the foam too long",
                ("hold",),
                "The foam stands until it has fallen. It feels safe to have it done; but a foam "
                "is made when the plates lie ready.",
                lambda kitchen: lengthened(kitchen, "whip the cider foam"),
                tasks=("whip the cider foam",),
            ),
            PlanSlip(
                "carved too early",
                ("hold",),
                "To have the carving done feels safe, but carved meat cools and dries while it "
                "waits. Whole birds wait better than slices: let them rest longer and carve last.",
                lambda kitchen: lengthened(kitchen, "carve the birds"),
                tasks=("carve the birds",),
            ),
            PlanSlip(
                "a cook in two places",
                ("cook", "hands"),
                "Hands are counted twice. Each line of the sheet looks possible for itself; draw "
                "a row for each cook, and the clash shows.",
                helped_out,
            ),
            PlanSlip(
                "two things in one oven",
                ("equipment",),
                "More goes in than there is. An oven needs no hands, so it is on nobody's row: "
                "give it, and the burners, a row of their own.",
                lambda kitchen: kitchen.with_more("oven"),
            ),
            PlanSlip(
                "began before the door was open",
                ("opening",),
                "Nobody is there yet to let you in. To have a thing behind you is a good wish; "
                "it has to fit between the opening and the service.",
                lambda kitchen: with_moved(kitchen, "cut the brunoise", "15:00"),
            ),
            PlanSlip(
                "left a task out",
                ("missing",),
                "The sheet is not whole. What is on nobody's list is done by nobody: cross off "
                "each line of the table.",
                lambda kitchen: without(kitchen, "season the cider base"),
            ),
        ),
        working=(
            "stand at the service and walk backward along each chain; rests count too",
            "then give each cook and the oven a row, and move what clashes earlier, "
            "as far as its waiting allows",
        ),
        skill="a whole service plan",
        lesson="10-land-the-plate.ipynb",
    ),
    q6,
)
### END HIDDEN TESTS

# %% [markdown] q7-text
"""
## 7. From your bench (3 points, marked by your instructor)

Take one task of this service that you do yourself: peel and dice for four plates, whip a foam, plate four covers.
Guess first how long it takes. Then time it, three times.
**Write down your guess and the three times. Which one do you plan with, and why?
Then name a task of your plan without slack: what do you do when it is five minutes late?**

Knives: a flat side down, fingertips back. Hot pans: dry cloths, and "hot" said aloud.
A stick blender is unplugged before a hand goes near its blade.
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: guess and three times with units, of one and the same task.
1 point: plans with the longest (or longer, for a full kitchen), with a reason: a plan has to hold on a bad day too. The mean earns it only with spare minutes added.
1 point: a task that really has no slack in the plan of question 6, and a step that works: help from a cook with room, the order of plating changed, a part left off the plate, the pass told at once. Nothing that lets hot food cool or shortens what a probe decides.
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
