"""The desk's form for a college's conventions: the lines below [college] of the class's file."""

import ipywidgets as widgets

from coursework.classes.course_edit import change_lines, typed_value, written_lines
from coursework.desk.parts import BESIDE
from coursework.desk.showing import WIDE
from coursework.errors import CourseError
from coursework.sets.key_text import set_labels
from coursework.words import number
from kitchenmath.conventions import countries
from kitchenmath.conventions.college import CURRENCIES, FOOD_CODES, OVENS, TAXES, UNITS
from kitchenmath.panels.frame import said

TABLE = ("college",)
OWN = ("– as the country has it –", "")
NAMES = {
    "country": "Conventions of",
    "currency": "Money",
    "brunoise_mm": "Edge of a brunoise in mm, 2 to 3",
    "food_code": "Food code that is quoted",
    "units_first": "Measures that stand first",
    "oven": "The ovens' dials",
    "tax": "Tax on the card's price",
    "tax_percent": "Tax in percent",
}
# What the words of the file mean, where they do not say it by themselves.
MEANT = {
    "ours": "Brackwater House", "US": "United States", "UK": "United Kingdom",
    "EU": "European Union", "NZ": "New Zealand", "metric": "grams and °C",
    "us": "ounces, pounds and °F", "plain": "a plain oven", "fan": "a fan oven", "gas": "gas marks",
    "in": "in the price (VAT)", "out": "on top, at the till",
}  # fmt: skip
CHOICES = {
    "country": countries(), "currency": CURRENCIES, "food_code": FOOD_CODES, "units_first": UNITS,
    "oven": OVENS, "tax": TAXES,
}  # fmt: skip


class CollegeForm:
    """The form, filled from the class's file, and what its button does.

    Parameters
    ----------
    desk : Desk

    Attributes
    ----------
    boxes : dict of str to ipywidgets Widget
        By the line of the file.
    holds : ipywidgets HTML
        What holds in the class now, its country's own lines among it.
    """

    def __init__(self, desk):
        self.desk, self.holds = desk, widgets.HTML()
        self.boxes = {name: _box(name, label) for name, label in NAMES.items()}
        for chooser in (desk.classes, desk.sets):
            chooser.observe(self.fill, "value")
        self.fill()

    def fill(self, _=None):
        """Show what the file says, and what holds."""
        if not self.desk.classes.value:
            return
        try:
            course = self.desk.course
        except CourseError:  # the file cannot be read: the desk says why, above
            return
        lines = written_lines(course, TABLE)
        for name, box in self.boxes.items():
            value = lines.get(name, "")
            box.value = value if isinstance(value, str) else number(value)
        self.holds.value = said(f"Now: {_in_words(course.college)}")

    def save(self, _):
        """Write all lines of the form, or none."""
        course = self.desk.course
        change_lines(course, {TABLE: {name: typed_value(box.value)
                                      for name, box in self.boxes.items()}})  # fmt: skip
        self.fill()
        return "\n".join(filter(None, ["The course file has them.", _of_sets_out(course)]))

    def rows(self):
        """The form's parts, in order."""
        return [
            widgets.HTML(said("The college's conventions, by which sets draw, quote and count:")),
            *self.boxes.values(),
            self.holds,
            self.desk.step("Save the conventions", self.save, of_set=False),
        ]


def _box(name, label):
    look = {"description": label, "style": BESIDE, "layout": WIDE}
    if name not in CHOICES:
        return widgets.Text(placeholder="as the country has it", **look)
    first = ("– by the country of the tables –", "") if name == "country" else OWN
    return widgets.Dropdown(options=[first, *map(_option, CHOICES[name])], **look)


def _option(word):
    """A line of a list: the file's word, and what it means."""
    return (f"{word}: {MEANT[word]}" if word in MEANT else word, word)


def _in_words(college):
    """What holds, its country's own lines among it."""
    tax = "" if college.tax == "none" else f" {number(college.tax_percent)} %"
    parts = [
        f"conventions of {_option(college.country)[0]}", f"money in {college.currency}",
        f"a brunoise of {number(college.brunoise_mm)} mm", f"food code {college.food_code}",
        f"{_option(college.units_first)[0]} first", MEANT[college.oven],
        f"tax {MEANT.get(college.tax, college.tax)}{tax}",
    ]  # fmt: skip
    return f"{'; '.join(parts)}."


def _of_sets_out(course):
    """Which sets went out by the earlier conventions: they keep theirs until then."""
    labels = set_labels()
    out = ", ".join(f"“{labels.get(one, one)}”" for one in course.sets_handed_out())
    return out and (
        f"Handed out already: {out}. They keep the numbers they went out with, "
        "until you take the newer key under “What you decide”: look there whose numbers would "
        "change."
    )
