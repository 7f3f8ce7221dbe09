# %% [markdown] title
"""
# Set 9: Keep it safe, write it down

A day at Brackwater House, from the delivery to the pass, and what was written down of it.
You say what is out of limits, since when, and what becomes of it.

**Seven questions, 20 points.**
Your records are your own: your neighbour has others.
Type each answer between the quotes, as you would write it on a card: `"B, F"`, `"02:30"`, `"{{ either: 4.2 kg | 9 lb 4 oz }}"`, `"{{ either: 75 °C | 167 °F }}"`, `"milk, celery"`.
Then press Shift + Enter in each cell, from the top down.

Lesson 9, *Keep it safe, write it down*, has all you need.
The house and all of its records are invented.

**Before anything else.** {{ record_sources }}
Lesson 9 prints them. Your local food code comes first.
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
from kitchenmath.drills.allergen_rows import EXTRAS, MAINS, SIDES, menu
from kitchenmath.drills.keeping import bird_core, height_above_the_sea, shown_in_boiling
from kitchenmath.practice import open_set
from kitchenmath.practice.drawn_days import cases, days
from kitchenmath.practice.drawn_logs import nights, tubs

sheet = open_set("09-keep-it-safe", term="demo", student=student)
sheet

# %% [markdown] q1-text
"""
## 1. What is out of limits? (3 points)

A day's record has ten lines, each with its reading and its limit.
A reading **on** its limit is in order. One of them is in {{ other_scale }}.
**Three lines are out of limits. Which?**

Type their letters, such as `"B, F, H"`.
A letter that is missing costs 1 point, one too many costs half a point.
"""

# %% q1-given
one = sheet.given("q1", day=days("a day's record, invented"))
one

# %% q1-answer
q1 = ""
### BEGIN SOLUTION
q1 = [each.letter for each in one.day.lines if not each.keeps]
### END SOLUTION

# %% q1-check
sheet.look("q1", q1, "letters", plausible=("A", "B", "C", "D", "E", "F", "G", "H", "I", "J"))
### BEGIN HIDDEN TESTS
from dataclasses import replace

from kitchenmath import Q_
from kitchenmath.drills import allergen_rows, keeping, records
from kitchenmath.practice import ClockQuestion, ListedQuestion, Question, Within

TOLD = {
    "counted a reading on the limit": "One line among yours reads just what its limit says. “At "
    "most” and “at least” take that number in, so it stays; it looks like a fault because it has "
    "no room to spare.",
    "took °F for °C": "One line is in {{ other_scale }}, and you read its number as "
    "{{ scale }}. On a page full of {{ scale }} the eye does not stop at the scale, and "
    "{{ either: a cold room at 38 would be a sauna | a roast at 78 would be raw }}.",
    "held all hot food against one limit": "You held everything hot against 74 °C (165 °F), the number that "
    "everybody has learnt. Each line has its own limit beside it; pork, and food that is kept hot, "
    "have lower ones.",
    "looked at the cold food only": "Your letters stop where the hot food begins. The fridge is "
    "what one thinks of first; hot food is out where it is too cold.",
    "looked at the hot food only": "Your letters are all hot food, where the cooking happens. The "
    "cold lines have limits too, from above.",
    "named those in order": "You listed what is in order, as one ticks a list. The question wants "
    "the others.",
    "took the first reading that is out": "You took the first reading that shows it, as it is the "
    "first bad number. It went over between two readings, and from the one before on nobody "
    "can vouch.",
    "shared the step out": "You laid a straight line between two readings, as for a probe log in "
    "lesson 8. That is fair for an estimate; for what people eat count from the last reading "
    "that was in order.",
    "took the limit itself for out": "You took the reading of 5 °C (41 °F) for out, and so went one back. "
    "It is the limit itself, which is in order, so the count begins with it.",
    "took the time when it was found": "This is the last line of the log, when somebody came and "
    "looked. It had been warm for some time by then.",
    "looked at the end only": "You went by the last column, because the tub is cold now. What was "
    "above 21 °C (70 °F) after two hours had time to spoil first, and cold does not undo it.",
    "looked at the first two hours only": "You went by the first column, which comes first. A tub "
    "that is not at 5 °C (41 °F) after six hours goes as well.",
    "threw away what stands on the limit": "You also threw away the tub that reads {{ either: 21 °C and 5 °C | 70 °F and 41 °F }}. "
    "It was just in time, so it stays, though it looks close.",
    "gave what is kept": "You weighed what may stay. The question asks what goes.",
    "threw everything away": "You threw the whole batch away. That is on the safe side, and good "
    "food goes with it: each tub has its own two readings.",
    "heated what had stood too long": "Something among yours has stood too long, and you would "
    "heat or chill it. Heat kills most germs and not the poison that some have made by then, so "
    "what is over its time goes.",
    "threw away what only needs more heat": "You gave up what was only short of heat. A core that "
    "is too low a minute after the oven goes back in; nothing is lost yet.",
    "took the delivery in": "You took the warm delivery in, as one does when the van has left. How "
    "long it was warm nobody can say, so it goes back.",
    "washed what raw food has touched": "You kept what raw poultry dripped onto. It looks clean "
    "after a wash, and the water carries the germs further.",
    "named what goes": "You listed what goes. The question wants what can still be served.",
    "took the error off": "You took the error off, as one corrects a reading. Here you want what "
    "the probe will show, and one that shows too much shows more than the limit by then.",
    "held it against 100 °C": "You held the probe against 100 °C (212 °F), where water boils by the sea. At "
    "this height it boils sooner, so the probe is further off than it seems.",
    "left the error out": "You left the printed limit as it is. By this probe a bird would come "
    "out too early.",
    "named the main part only": "You named what the main part holds, the name on the menu. Beside "
    "it and on it lies more.",
    "went by the list of nine": "You went by the list of the US, which has nine. Celery and "
    "mustard stand on that of the EU and the UK.",
    "left out what gives no taste": "What binds and glosses is missing: flour, butter, yolk or "
    "lecithin, which nobody sees or tastes. Go through the items and not through the look.",
    "did not know celeriac for celery": "Celery is missing. Celeriac is its root and has another "
    "name, so it slips through.",
    "added what only a label tells": "You named what such items often hold as well. Careful, and "
    "a guest is then refused what they might eat: ask the label first.",
}


# A class that reads °F has its one line in °C.
NAMED = {"took °F for °C": "{{ either: took °F for °C | took °C for °F }}"}


def told(slips):
    """The slips of a drill in this set's own words."""
    return tuple(
        replace(slip, name=NAMED.get(slip.name, slip.name), sentence=TOLD[slip.name])
        for slip in slips
    )


sheet.award(
    ListedQuestion(
        "q1",
        "letters",
        3,
        records.out_of_limits,
        left_out=1,
        too_many=0.5,
        slips=told(records.RECORD_SLIPS),
        working=(
            "cold food is out above its limit, hot food below; on it is in order",
            "out of limits: {answer}",
        ),
        skill="reading a day's record",
        lesson="09-keep-it-safe.ipynb",
    ),
    q1,
)
### END HIDDEN TESTS

# %% [markdown] q2-text
"""
## 2. Since when? (3 points)

A cold room was read every half hour through the night.
{{ by: cold holding }}, its limit is at most {{ house: cold holding }}.
In the morning it was found too warm.
This house counts from **the last reading that was in order**: what came after it nobody knows.
**Since when can nobody vouch for the food in it?**

Type the time as the log has it, such as `"02:30"`.
"""

# %% q2-given
two = sheet.given("q2", night=nights("the cold room's log, invented"))
two

# %% q2-answer
q2 = ""
### BEGIN SOLUTION
from kitchenmath.drills.records import since_when
from kitchenmath.practice.clock_question import clock_time

q2 = str(clock_time(since_when(two.night)))
### END SOLUTION

# %% q2-check
sheet.look("q2", q2, "clock time", plausible=("22:00", "04:00"))
### BEGIN HIDDEN TESTS
sheet.award(
    ClockQuestion(
        "q2",
        3,
        records.since_when,
        told(records.since_slips((2, 2, 2, 0))),
        working=(
            "go down the log to the first reading above 5 °C (41 °F), and one back",
            "the last in order is that of {answer}",
        ),
        skill="since when a limit is broken",
        lesson="09-keep-it-safe.ipynb",
    ),
    q2,
)
### END HIDDEN TESTS

# %% [markdown] q3-text
"""
## 3. The cooling log (3 points)

Five tubs of velouté cooled from 57 °C (135 °F). Each was read after two hours and after six.
{{ by: cooling }}, it must be at 21 °C (70 °F) or below within 2 h, and at 5 °C (41 °F) or below within 6 h **in all**.
A tub that broke one of the two is thrown away.
**How much is thrown away?**

Answer within {{ either: 50 g | 0.1 lb }}: the store's scale shows no more.

Throw it away covered and marked, so that nobody takes it back. **Allergens** in the velouté: gluten and milk.
"""

# %% q3-given
three = sheet.given("q3", sauce=tubs("five tubs, invented"))
three

# %% q3-answer
q3 = ""
### BEGIN SOLUTION
q3 = sum(
    tub.weight
    for tub in three.sauce.lines
    if tub.after_two.magnitude > 21 or tub.after_six.magnitude > 5
)
### END SOLUTION

# %% q3-check
sheet.look("q3", q3, "weight", plausible=("500 g", "20 kg"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q3",
        "weight",
        3,
        Within(Q_(50, "g"), "the store's scale shows no more"),
        formula=keeping.thrown_away,
        slips=told(keeping.tub_slips((1, 1, 2, 1, 1))),
        working=(
            "above 21 °C (70 °F) after 2 h: {warm} = {first}",
            "above 5 °C (41 °F) only after 6 h: {late} = {then}",
            "{first} + {then} = {answer}",
        ),
        on_the_way=keeping.thrown_away_in_steps(),
        skill="a cooling log in two stages",
        lesson="09-keep-it-safe.ipynb",
    ),
    q3,
)
### END HIDDEN TESTS

# %% [markdown] q4-text
"""
## 4. What can be put right? (3 points)

On your round you find what is shown.
The first stage of cooling, from 57 °C (135 °F) to 21 °C (70 °F), may take 2 h, and so may reheating to {{ house: reheating }}.
Guinea fowl is cooked to {{ house: poultry }}, pork to {{ house: intact meat }}. Cold food is received and kept at {{ house: cold holding }} or below, hot food at {{ house: hot holding }} or above.
Whose limits these are stands at the top of the set.
**Which of these can still be put right, by heat or by cold, so that it may be served?** All others are thrown away or sent back.

Type their letters. One too many costs 1 point, because somebody eats it; one that is missing costs half a point.
"""

# %% q4-given
four = sheet.given("q4", found=cases("what you find, invented"))
four

# %% q4-answer
q4 = ""
### BEGIN SOLUTION
q4 = [each.letter for each in four.found.lines if each.state == "right"]
### END SOLUTION

# %% q4-check
sheet.look("q4", q4, "letters", plausible=("A", "B", "C", "D", "E", "F", "G", "H"))
### BEGIN HIDDEN TESTS
sheet.award(
    ListedQuestion(
        "q4",
        "letters",
        3,
        records.can_be_put_right,
        left_out=0.5,
        too_many=1,
        among=records.CASES,
        slips=told(records.CASE_SLIPS),
        working=(
            "heat or cold can still come: a core too low, a time that is not over",
            "time that is gone, and what raw food touched, cannot be undone",
            "to be put right: {answer}",
        ),
        skill="what to do about a fault",
        lesson="09-keep-it-safe.ipynb",
    ),
    q4,
)
### END HIDDEN TESTS

# %% [markdown] q5-text
"""
## 5. A probe in the mountains (2 points)

A sister house lies high up. In water at a rolling boil its probe shows what is printed here.
Water boils about 1 °C (1.8 °F) sooner for each 300 m (1000 ft) above the sea.
{{ by: poultry }}, a guinea fowl's core must reach {{ house: poultry }}.
Take the probe to be off by as much there as it is at the boil.
**What must it show before a guinea fowl is truly at its limit?**

Answer within {{ either: 0.2 °C | 0.4 °F }}, or **rounded up** to the next whole degree.
Never round down: then the bird comes out too early.

Steam burns: hold the probe from the side, with a dry cloth.
"""

# %% q5-given
five = sheet.given(
    "q5",
    height=height_above_the_sea(),
    shows=shown_in_boiling(98.5, 100),
    core=bird_core("limit for a guinea fowl's core"),
)
five

# %% q5-answer
q5 = ""
### BEGIN SOLUTION
from kitchenmath import Q_
from kitchenmath.heat import boiling_point

q5 = five.core + (five.shows - boiling_point(altitude=five.height))
### END SOLUTION

# %% q5-check
sheet.look("q5", q5, "temperature", plausible=("60 °C", "90 °C"))
### BEGIN HIDDEN TESTS
sheet.award(
    Question(
        "q5",
        "temperature",
        2,
        Within(Q_(0.2, "delta_degC"), "a probe shows no more", "up", Q_(1, "delta_degC")),
        formula=keeping.must_show,
        slips=told(keeping.probe_slips((1, 1, 0))),
        working=(
            "water boils: 100 °C (212 °F) less 1 °C (1.8 °F) for each 300 m (984 ft) of {height} = "
            "{boils}",
            "too much: {shows} − {boils} = {off}",
            "{core} + {off} = {answer}",
        ),
        on_the_way=keeping.PROBE_STEPS,
        skill="checking a probe",
        lesson="09-keep-it-safe.ipynb",
    ),
    q5,
)
### END HIDDEN TESTS

# %% [markdown] q6-text
"""
## 6. The allergen row (3 points)

A guest asks what your plate holds. It has the three parts shown, with all their items.
**Write its row, by the {{ by_its_list: list of fourteen of the EU and the UK | list of nine of the US }}.** Name only what is sure without a label.

Type the names, such as `"fish, egg"`. Their names are: {{ by_its_list: gluten, crustaceans, egg, fish, peanuts, soya, milk, nuts, celery, mustard, sesame, sulphites, lupin, molluscs. | wheat, crustacean shellfish, egg, fish, peanuts, soybeans, milk, tree nuts, sesame. }}
An allergen that is missing costs 1 point, because somebody may be hurt; one too many costs half a point.

What only a label tells is asked at the label, and what else touched the plate at the stove.
"""

# %% q6-given
six = sheet.given(
    "q6",
    main=menu(MAINS, "main part"),
    side=menu(SIDES, "beside it"),
    extra=menu(EXTRAS, "with it"),
)
six

# %% q6-answer
q6 = ""
### BEGIN SOLUTION
from kitchenmath.drills.allergen_rows import items_of
from kitchenmath.safety import plate_allergens

q6 = list(plate_allergens(items_of(six.main, six.side, six.extra), six.main.list_of).holds)
### END SOLUTION

# %% q6-check
sheet.look("q6", q6, "{{ allergens }}")
### BEGIN HIDDEN TESTS
sheet.award(
    ListedQuestion(
        "q6",
        "{{ allergens }}",
        3,
        allergen_rows.plate_holds,
        left_out=1,
        too_many=0.5,
        slips=told(allergen_rows.PLATE_SLIPS),
        working=(
            "item by item: {held}",
            "the row: {answer}",
        ),
        on_the_way={"held": allergen_rows.held_by_each},
        skill="allergens of a plate",
        lesson="09-keep-it-safe.ipynb",
    ),
    q6,
)
### END HIDDEN TESTS

# %% [markdown] q7-text
"""
## 7. A record of your own (3 points, marked by your instructor)

Fill in the record of lesson 9 on one day in a kitchen, at home or here, with your own probe.
**Write down four of its lines: the point, the limit, the reading, the time.
Say what your probe showed in melting ice, and what you did about it.
Take the three faults of question 1: for one of them write what you would put into the column “what was done”, so that somebody who was not there could check it.**

Hands are washed, and the probe is wiped and disinfected between raw and ready.
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: four lines with point, limit, reading and time; readings as a probe shows them, and the scale said.
1 point: the reading in melting ice (crushed ice with water, stirred, the tip in the middle), and the error added to or taken off what it shows, or the probe put aside.
1 point: what was done is said with amount, time and name (“2 L velouté thrown away, 20:15, by whom; bain-marie turned up, 63 °C (145 °F) at 20:40”), and not “checked”.
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
