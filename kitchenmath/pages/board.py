"""A plan as a board: the question's table with the student's own minutes, and who is busy when.

The table and the sentence below it in the question's text are all there is to read: what a plan
is judged by stays in the key.
"""

import itertools
import re

from kitchenmath.errors import KitchenError
from kitchenmath.practice.plan_kitchen import later
from kitchenmath.practice.plan_lines import placed, read_plan
from kitchenmath.service.clock import read_clock
from kitchenmath.service.plan_check import look_over
from kitchenmath.service.tasks import Task
from kitchenmath.units.door import amount
from kitchenmath.units.reading import read
from kitchenmath.units.saying import say

COUNTS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5}
OWN = "yours"
NOBODY = "nobody"
BUSY = (
    "cook",
    "hands",
    "equipment",
)  # the rules of a clash; all else is judged later
ITEM = re.compile(r"\b(one|two|three|four|five)\W+(cooks?|ovens?|burners?)\b", re.IGNORECASE)


def board_of(text, numbers, answer, names):
    """The board of a plan, as plain values for a page.

    Parameters
    ----------
    text : str
        The question, with its table of tasks in Markdown.
    numbers : dict of str to Quantity
        The student's numbers by their label.
    answer : object
        What was typed.
    names : sequence of str
        The tasks, as the question calls them.

    Returns
    -------
    dict or None
        "table" (by task, the words of each column), "starts" (clock time by task), "rows" (name
        and pieces: task, begin, end in minutes, whether it clashes), "clashes" (sentences) and
        "serve"; None where the text holds no such table.
    """
    table = _filled_in(_table(text), numbers)
    counts = {word.rstrip("s").lower(): COUNTS[count.lower()] for count, word in ITEM.findall(text)}
    opens = re.search(r"opens at (\d{1,2}:\d\d)", text)
    if not table or set(table) != set(names or ()) or not opens:
        return None
    serve_at = _served(numbers)
    cooks = sorted({row["who"] for row in table.values() if row["who"].endswith("cook")})
    equipment = {item: count for item, count in counts.items() if item != "cook"}
    tasks = [_task(name, row, cooks) for name, row in table.items()]
    starts = _starts(answer, names)
    found = look_over(starts, tasks, serve_at, tuple(cooks), equipment, opens[1])
    clashes = [finding for finding in found if finding.rule in BUSY]
    return {
        "table": table,
        "starts": starts,
        "rows": _rows(tasks, starts, cooks, equipment, clashes),
        "clashes": [finding.sentence for finding in clashes],
        "opens": read_clock(opens[1], "opens") / 60,
        "serve": read_clock(serve_at, "serve_at") / 60,
        "serve_at": serve_at,
    }


def _table(text):
    """The rows of a Markdown table by the first column, each a dict by the heads."""
    lines = [line.strip().strip("|").split("|") for line in text.splitlines() if "|" in line]
    rows = [[cell.strip() for cell in line] for line in lines]
    if len(rows) < 3:
        return {}
    heads = rows[0]
    return {row[0]: dict(zip(heads[1:], row[1:], strict=False)) for row in rows[2:]}


def _filled_in(table, numbers):
    """The table with the student's own minutes where it says "yours"."""
    for name, row in table.items():
        thing = name.split(" ", 1)[-1]
        for column, label in (("takes", name), ("rests", f"rest {thing}")):
            if row.get(column, "") == OWN and label in numbers:
                row[column] = say(numbers[label])
    return table


def _served(numbers):
    """The service: the clock time in a label, and later by the number beside it."""
    for label, number in numbers.items():
        clock = re.search(r"service is .*?(\d{1,2}:\d\d)", label)
        if clock:
            return later(clock[1], number)
    return "19:00"


def _task(name, row, cooks):
    who = row.get("who", "")
    hands = 0 if who == NOBODY else 1 if who in cooks else len(cooks)
    item = re.sub(r"^(an?|the) ", "", row.get("needs", ""))
    rest = re.match(r"\d+ min", row.get("rests", ""))
    return Task(
        name,
        read(row["takes"]),
        hands=hands,
        rest=read(rest[0]) if rest else None,
        equipment=item or (),
        cook=who if who in cooks else None,
    )


def _starts(answer, names):
    try:
        return placed(read_plan(answer), names).starts
    except KitchenError:
        return {}


def _rows(tasks, starts, cooks, equipment, clashes):
    """A row for each cook, burner and oven: what is on it, and when."""
    clashing = {name for finding in clashes for name in finding.tasks}
    pieces = []
    for task in tasks:
        if task.name in starts:
            begin = read_clock(starts[task.name], task.name) / 60
            end = begin + amount(task.duration, "min", "duration")
            pieces.append((task, [task.name, begin, end, task.name in clashing]))
    rows = [
        {"name": cook, "pieces": [piece for task, piece in pieces if _is_busy(cook, task, cooks)]}
        for cook in cooks
    ]
    for item, count in equipment.items():
        on_it = sorted((piece for task, piece in pieces if item in task.equipment),
                       key=lambda piece: piece[1])  # fmt: skip
        for place, lane in enumerate(_lanes(on_it, count), 1):
            rows.append({"name": f"{item} {place}" if count > 1 else item, "pieces": lane})
    return rows


def _is_busy(cook, task, cooks):
    return task.cook == cook or task.hands == len(cooks)


def _lanes(pieces, count):
    """The pieces on the first burner that is free, and on the last where none is."""
    lanes = [[] for _ in range(count)]
    for piece in pieces:
        free = (lane for lane in lanes if not lane or lane[-1][2] <= piece[1])
        next(itertools.chain(free, [lanes[-1]])).append(piece)
    return lanes
