"""The order list of a lesson, worked out by the kit itself from what each student needs.

Beside each session plan in `instructor/guide` lies a CSV that says what one student, or a bench
that shares, takes. The plan holds the finished list between two marks, and a test compares them.
"""

import csv

from coursework.classes.course import INSTRUCTOR
from kitchenmath.safety.allergens import plate_allergens
from kitchenmath.units.reading import read
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say
from kitchenmath.yields import as_purchased
from kitchenmath.yields.ordering import Pack, order

GUIDE = INSTRUCTOR / "guide"
BEGIN, END = "<!-- order list -->", "<!-- end of the order list -->"


def order_list(lesson, students=24):
    """The order list of one lesson as a table in Markdown.

    Parameters
    ----------
    lesson : str
        Such as "04-buy-enough".
    students : int

    Returns
    -------
    str
    """
    lines = ["| item | for | needed | order | left over | allergen |", "|---|---|---|---|---|---|"]
    for row in _rows(lesson):
        benches = -(
            -students // int(row["students_sharing"])
        )  # a bench that is not full still cooks
        need = as_purchased(
            edible=benches * read(row["each_student"]),
            yield_=Q_(float(row["yield_percent"]), "percent"),
        )
        line = order({row["item"]: need}, {row["item"]: Pack(read(row["pack"]))})[0]
        packs = " + ".join(f"{number} x {say(pack.size)}" for number, pack in line.packs)
        shared = f"{benches} x {row['each_student']}"
        left = say(line.left_over, 3) if line.left_over.magnitude > 1e-9 else "none"
        columns = (row["item"], shared, say(need, 3), packs, left, _allergens(row["item"]))
        lines.append(f"| {' | '.join(columns)} |")
    return "\n".join(lines)


def _allergens(item):
    """What the item holds, and what its label must be read for."""
    found = plate_allergens([item])
    labels = ", ".join(found.read_the_label_for)
    return ", ".join([*found.holds, *([f"read the label: {labels}"] if labels else [])])


def items_of(lesson):
    """What the order list of a lesson orders.

    Parameters
    ----------
    lesson : str

    Returns
    -------
    list of str
    """
    return [row["item"] for row in _rows(lesson)]


def _rows(lesson):
    with (GUIDE / f"{lesson}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def with_order_list(page, lesson):
    """A session plan with its order list worked out anew.

    Parameters
    ----------
    page : str
        Markdown with the two marks in it.
    lesson : str

    Returns
    -------
    str
    """
    before, _, rest = page.partition(BEGIN)
    _, _, after = rest.partition(END)
    return f"{before}{BEGIN}\n{order_list(lesson)}\n{END}{after}"
