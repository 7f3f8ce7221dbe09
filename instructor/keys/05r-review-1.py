# %% [markdown] title
"""
# Review 1: Back over lessons 1 to 5

Half the term is over at Brackwater House, and a week of its own goes to what was learned in it.
The questions come from the first five sets, out of order and with other numbers: first say to yourself which sum it is.

**Seven questions, 20 points.**
Your numbers are your own: your neighbour has others.
Type each answer between the quotes, as you would write it on a card: `"4.2 kg"`, `"2 1/4 oz"`, `"35 %"`.
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

sheet = open_set("05r-review-1", term="demo", student=student)
sheet

# %% [markdown] q1-again
"""
05-season-and-brine, q3
"""

# %% [markdown] q2-again
"""
03-cut-to-size, q5
"""

# %% [markdown] q3-again
"""
01-measure-and-scale, q4
"""

# %% [markdown] q4-again
"""
04-buy-enough, q1
"""

# %% [markdown] q5-again
"""
04-buy-enough, q2
"""

# %% [markdown] q6-again
"""
02-mix-by-ratio, q3
"""

# %% [markdown] q7-text
"""
## 7. From your bench (3 points, marked by your instructor)

Choose one question of an earlier set in which you lost points.
If you lost none, choose the one that took you longest.
**Write down what you did then, why it looked right, and how you would now see at the stove that the number cannot be right.**
"""

# %% [markdown] q7-answer
"""
**Mark scheme.**
1 point: what was done is said so that another cook could do it again, with its number.
1 point: why it looked right: the habit, the word or the number at hand that led there.
1 point: a check that really catches it, such as which of two weights must be the larger, a round number in the head, or a look at pot, scale or tray.
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
