"""Panels of lesson 10: the plan of one service, what waits too long, and what a cover costs."""

from dataclasses import replace
from functools import cache
from itertools import product

from kitchenmath.data.tables import table
from kitchenmath.figures.clocks import Clocks
from kitchenmath.figures.landing import Packs
from kitchenmath.figures.plan import PlanChart
from kitchenmath.figures.plan_rows import NOBODY, lane_in_words, lanes, plan_rows
from kitchenmath.panels.frame import choice, slider, wire
from kitchenmath.service import check_plan, plan_back, read_tasks
from kitchenmath.units import Q_, say
from kitchenmath.units.reading import read
from kitchenmath.units.saying import plural
from kitchenmath.yields import Pack, as_purchased, order, portion_cost


def _of(text):
    """An amount of the menu's table; a bare number counts pieces."""
    return Q_(float(text), "count") if text.replace(".", "").isdigit() else read(text)


OPENS = "16:00"
SERVING_TIMES = ("18:45", "19:15", "19:30")
BURNERS, COOKS = (1, 2, 3), (2, 3, 4)
CLOCK_MIN = (15 * 60 + 30, 19 * 60 + 30)  # from before the earliest start to the latest service
# What plating takes up: the task, and its plain name in the panel.
LANDING = {
    "aerate the cider foam": "cider foam",
    "carve the birds": "carved birds",
    "warm the brunoise in butter": "warm brunoise",
    "cook the mustard velouté": "mustard velouté",
}
# The invented menu: item, on each plate, yield in percent, pack, price of the pack.
MENU = tuple(
    (
        row["item"],
        _of(row["each_plate"]),
        float(row["yield_percent"]),
        _of(row["pack"]),
        Q_(float(row["price_dollar"]), "dollar"),
    )
    for row in table("menu.csv")
)


@cache
def service_plan(serve_at, cooks, burners):
    """The plan of the invented service when any cook may do any task.

    Parameters
    ----------
    serve_at : str
    cooks, burners : int

    Returns
    -------
    Plan
        With two oven shelves, one stick blender, and an opening at 16:00.
    """
    return plan_back(
        serve_at,
        [replace(task, cook=None) for task in read_tasks()],
        cooks=cooks,
        equipment={"burner": burners, "oven shelf": 2, "stick blender": 1},
        opens=OPENS,
    )


def service(serve_at, burners, cooks):
    """The plan's rows for the chart, and what it says.

    Parameters
    ----------
    serve_at : str
    burners, cooks : int

    Returns
    -------
    dict
        `plan` (see `plan_rows`) and `sentence`.
    """
    plan = service_plan(serve_at, cooks, burners)
    rows = plan_rows(plan)
    wait = plan.waits["cook the mustard velouté"]
    undone = [lane_in_words(lane, bars) for lane, bars in lanes(rows) if lane == NOBODY]
    sentence = "\n".join(
        [
            f"{cooks} cooks, {plural(burners, 'burner')}. "
            f"Service at {plan.serve_at}, work begins at {plan.starts[plan.sequence[0]]}.",
            f"The velouté waits {say(wait)}, hot." if wait else "The velouté does not wait.",
            *([f"✗ {each}" for each in plan.conflicts] or ["Every limit is kept."]),
            *(f"In the chart, {line}" for line in undone),
        ]
    )
    return {"plan": rows, "sentence": sentence}


def service_panel():
    """Serving time, burners and cooks; the chart of the plan, and what breaks.

    Returns
    -------
    ipywidgets VBox
    """
    for setting in product(SERVING_TIMES, COOKS, BURNERS):
        service_plan(*setting)  # made beforehand, so that a slider only waits for the drawing
    return wire(
        {
            "serve_at": choice("Service at", SERVING_TIMES, "19:30"),
            "burners": slider("Burners (number)", BURNERS[0], BURNERS[-1], 1, 3),
            "cooks": slider("Cooks (number)", COOKS[0], COOKS[-1], 1, 3),
        },
        service,
        lambda picture: PlanChart(picture, CLOCK_MIN),
        height=5.9,
    )


@cache
def usual_plan():
    """The invented service at 19:30 with its three named cooks and three burners."""
    kit = {"burner": 3, "oven shelf": 2, "stick blender": 1}
    return plan_back("19:30", read_tasks(), equipment=kit)


def moved_earlier(part, earlier_min):
    """What one part's earlier start does to its wait, all else as planned.

    Parameters
    ----------
    part : str
        A plain name of `LANDING`.
    earlier_min : int

    Returns
    -------
    dict
        `minutes`, `limits_min`, `words` (lists in the order of `LANDING`) and `sentence`.
    """
    plan = usual_plan()
    moved = next(task for task, name in LANDING.items() if name == part)
    start_min = plan.starts_s[moved] // 60 - earlier_min
    starts = {**plan.starts, moved: f"{start_min // 60:02d}:{start_min % 60:02d}"}
    waits_min = [
        plan.waits[task].to("min").magnitude + (earlier_min if task == moved else 0)
        for task in LANDING
    ]
    holds_min = [plan.tasks[task].hold.to("min").magnitude for task in LANDING]
    found = check_plan(starts, list(plan.tasks.values()), plan.serve_at, plan.crew, plan.equipment)
    slack = plan.slack[moved]
    sentence = "\n".join(
        [
            f"{part.capitalize()}: start at {starts[moved]}, {earlier_min} min earlier than "
            f"planned. Its slack is {say(slack)}.",
            *([f"✗ {each}" for each in found] or ["Every limit is kept."]),
        ]
    )
    words = [
        f"{name.replace(' ', chr(10), 1)}\n{wait:.0f} of {hold:.0f} min"
        for name, wait, hold in zip(LANDING.values(), waits_min, holds_min, strict=True)
    ]
    return {"minutes": waits_min, "limits_min": holds_min, "words": words, "sentence": sentence}


def slack_panel():
    """One part of the plate started earlier; its wait against its limit, and what breaks.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "part": choice("Started earlier", list(LANDING.values())),
            "earlier_min": slider("Earlier by (min)", 0, 60, 1, 4),
        },
        moved_earlier,
        lambda picture: Clocks(picture, len(LANDING)),
        height=1.9,
    )


def menu_needs(covers):
    """What the invented menu needs to buy, by item.

    Parameters
    ----------
    covers : int

    Returns
    -------
    dict of str to Quantity
    """
    return {
        item: covers * portion if share == 100 else as_purchased(
            edible=covers * portion, yield_=Q_(share, "percent")
        )
        for item, portion, share, _, _ in MENU
    }  # fmt: skip


def menu_packs(bird=14.00):
    """How the items of the invented menu are sold.

    Parameters
    ----------
    bird : float
        Dollars for one guinea fowl.

    Returns
    -------
    dict of str to Pack
    """
    packs = {item: Pack(size, price) for item, _, _, size, price in MENU}
    return packs | {"guinea fowl": Pack(Q_(1, "count"), Q_(bird, "dollar"))}


def cover_cost(covers, bird):
    """What a cover costs, what of it is eaten, and what is left over in opened packs.

    Parameters
    ----------
    covers : int
    bird : float
        Dollars for one guinea fowl.

    Returns
    -------
    dict
        `packs` (bought), `spare` (of them, left over), `words` (all in the order of `MENU`) and
        `sentence`.
    """
    lines = order(menu_needs(covers), menu_packs(bird))
    paid = [portion_cost(line.cost, covers).to("dollar").magnitude for line in lines]
    spare = [
        cost * (line.left_over / (line.left_over + line.need)).to("").magnitude
        for cost, line in zip(paid, lines, strict=True)
    ]
    total = sum((line.cost for line in lines), start=Q_(0, "dollar"))
    sentence = (
        f"{covers} covers: {say(total)} in whole packs, "
        f"{say(portion_cost(total, covers))} a cover.\n"
        f"Of that, {say(Q_(sum(spare), 'dollar'))} a cover is left over in packs.\n"
        f"The birds alone are {say(Q_(paid[0], 'dollar'))} a cover."
    )
    whole = [sum(number for number, _ in line.packs) for line in lines]
    shares = [(line.left_over / (line.left_over + line.need)).to("").magnitude for line in lines]
    words = [
        f"{line.item}: ${cost - rest:.2f} + ${rest:.2f} left"
        for line, cost, rest in zip(lines, paid, spare, strict=True)
    ]
    over = [number * share for number, share in zip(whole, shares, strict=True)]
    return {"packs": whole, "spare": over, "words": words, "sentence": sentence}


def cover_cost_panel():
    """Covers and the price of a bird; what each item costs a cover.

    Returns
    -------
    ipywidgets VBox
    """
    return wire(
        {
            "covers": slider("Covers", 6, 60, 1, 24),
            "bird": slider("One guinea fowl ($)", 8.0, 20.0, 0.5, 14.0),
        },
        cover_cost,
        lambda picture: Packs(picture, len(MENU), most=16),
        height=3.6,
    )
