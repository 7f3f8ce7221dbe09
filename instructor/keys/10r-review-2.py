# %% [markdown] title
"""
# Review 2: Back over the whole term

The term ends at Brackwater House, and its numbers stay with you.
The questions come from sets of the whole term, out of order and with other numbers: first say to yourself which sum it is.

**Seven questions, 20 points.**
Your numbers are your own: your neighbour has others.
Type each answer between the quotes, as you would write it on a card: `"4.2 kg"`, `"{{ either: 63 °C | 145 °F }}"`, `"1 h 40 min"`.
Or compute it with the numbers shown, for example `q5 = q4 / 2`.
Then press Shift + Enter in each cell, from the top down.

Look at what came back of your sets before you start. In each lesson a drill gives more of the same.
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
from kitchenmath.practice.drawn_logs import tubs

sheet = open_set("10r-review-2", term="demo", student=student)
sheet

# %% [markdown] q1-again
"""
08-heat-gently, q6
"""

# %% [markdown] q2-again
"""
06-foam, q4
"""

# %% [markdown] q3-again
"""
10-land-the-plate, q1
"""

# %% [markdown] q4-again
"""
07-thicken-and-set, q3
"""

# %% [markdown] q5-again
"""
05-season-and-brine, q5
"""

# %% [markdown] q6-again
"""
09-keep-it-safe, q3
"""

# %% [markdown] q7-text
"""
## 7. From your bench (3 points, marked by your instructor)

Choose one number of this term that you now use in your own kitchen, or at work.
**Write down where it came from, how you measured or worked it out, and what you do otherwise since.**
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: the number with its unit, and where it came from: a lesson, a log, a tray, a card.
1 point: how it was measured or worked out, so that another cook gets the same.
1 point: what is done otherwise since, and how one would see at the stove if the number no longer held.
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
