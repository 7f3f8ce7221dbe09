"""Guides: how long a lesson takes, what a class goes by, limits quoted, and what is not covered."""

import re

from coursework.classes.course import INSTRUCTOR
from coursework.safe_files import write_safely
from kitchenmath.conventions import OURS, words_of
from kitchenmath.pages.times import times_of
from kitchenmath.safety import not_covered

__all__ = ["LIMITS", "limits_page", "write_guide", "write_limits", "write_times"]

GUIDES = INSTRUCTOR / "guide"
LIMITS = GUIDES / "limits.md"
QUOTED = ("poultry", "stuffed food", "ground meat", "injected meat", "intact meat", "fish", "eggs",
          "eggs for later", "cold holding", "hot holding", "reheating")  # fmt: skip
OVENS = {"plain": "°C and °F", "fan": "°C, and the fan oven's dial", "gas": "°C, and the gas mark"}
TAXES = {"none": "no tax", "in": "{name} of {percent:g} % in it", "out": "{name} added at the till"}

NEEDED = re.compile(r"^A student needs [^\n]*$", re.MULTILINE)  # a line of a session plan


def limits_page(college=OURS):
    """What a class goes by, in markdown: conventions, quoted limits, and what is not covered.

    Parameters
    ----------
    college : Conventions

    Returns
    -------
    str
    """
    words = words_of(college)
    tax = TAXES[college.tax].format(name=words.tax_name(), percent=college.tax_percent)
    lines = [
        "# What this class goes by",
        "",
        f"- **Money**: {words.currency()}. The card's price has {tax}.",
        f"- **Brunoise**: {words.cut('brunoise')}.",
        f"- **Ovens** are said in {OVENS[college.oven]}: {words.oven('180')}.",
        "",
        "## Limits, quoted",
        "",
        "Your local food code comes first, and a probe decides.",
        "",
        *(f"- **{what[0].upper()}{what[1:]}**: {words.limit(what)}." for what in QUOTED),
        f"- **Cooling of cooked food**: {words.cooling()}.",
        "",
        "## Not covered here",
        "",
        "No limit is given for these. Ask your food code before a session needs one.",
        "",
        *(f"- {line[0].upper()}{line[1:]}" for line in not_covered()),
    ]
    return "\n".join(lines) + "\n"


def write_limits():
    """Write the page of the kit's own conventions beside the guides.

    Returns
    -------
    Path
    """
    write_safely(LIMITS, limits_page())
    return LIMITS


def write_times():
    """Write into each session plan how long its lesson takes a student.

    Returns
    -------
    list of Path
    """
    lessons = INSTRUCTOR.parent / "lessons"
    plans = [GUIDES / f"{lesson.stem}.md" for lesson in sorted(lessons.glob("*.ipynb"))]
    for plan in plans:
        needed = times_of((lessons / f"{plan.stem}.ipynb").read_bytes()).words
        text = plan.read_text(encoding="utf-8")
        write_safely(plan, NEEDED.sub(f"A student needs {needed}.", text, count=1))
    return plans


def write_guide(course):
    """Write the page of a class's conventions into its folder, for whoever teaches it.

    Parameters
    ----------
    course : Course

    Returns
    -------
    Path
    """
    file = course.folder / "guide" / LIMITS.name
    write_safely(file, limits_page(course.college))
    return file
