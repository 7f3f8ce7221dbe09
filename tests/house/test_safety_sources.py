"""A line about food safety is quoted from a source, or left out: nothing of it is recalled."""

import csv
import re

import pytest

from kitchenmath.conventions import conventions_of, words_of
from kitchenmath.data.tables import table
from kitchenmath.safety import limits
from tests.helpers.read_by_people import KIT, read_by_people
from tests.measure.sources import published

RECALLED = re.compile(r"\b(?:memory|recalled|remembered|I believe)\b", re.IGNORECASE)
SAFETY = re.compile(
    r"\bsafe|food code|\b(?:FDA|FSIS|FSA|ACMSF|CFR)\b|\blimits?\b|poultry|\bcore\b|"
    r"held hot|holding|\bcool|reheat|allerg|nitrite|nitrate|curing|botuli|\bgerms?\b|parasite|"
    r"\braw\b|pasteuri",
    re.IGNORECASE,
)
OF_SAFETY = [*KIT.glob("kitchenmath/safety/*.py"), KIT / "kitchenmath/brine/curing.py"]
STATUSES = {"seen", "quoted", "handed on"}  # each is said where the line is printed
CONDITION = "over 90 % for at least an hour, or a moisture-tight bag"
HUMID = re.compile(r"humid oven|humid\W+(?:at most|any weight)|121 °C \(250 °F\)", re.IGNORECASE)


def tables_of_safety():
    """The tables that the modules on food safety read."""
    texts = "\n".join(file.read_text(encoding="utf-8") for file in OF_SAFETY)
    return sorted(set(re.findall(r"table\(\"(\w+\.csv)\"\)", texts)))


def recalled_safety(text, every=False):
    """The sentences of a text that recall something about food safety; or `every` that recalls."""
    sentences = re.split(r"(?<=[.!?;])\s|\n", text)
    return [each for each in sentences if RECALLED.search(each) and (every or SAFETY.search(each))]


def test_the_tables_of_food_safety_are_found():
    """Those that a limit can stand in: a new one that the modules read is checked with them."""
    known = {"limits.csv", "hold_times.csv", "cooling.csv", "curing_limits.csv", "parasites.csv"}

    assert known <= set(tables_of_safety())


@pytest.mark.parametrize("name", tables_of_safety())
def test_no_row_of_a_safety_table_is_recalled(name):
    """Each was read in its source, in a text that quotes it, or says that it was handed on."""
    rows = table(name)

    assert [] == [row for row in rows if RECALLED.search(" ".join(map(str, row.values())))]
    assert {row["status"] for row in rows if "status" in row} <= STATUSES
    assert all(row["source"] for row in rows if "status" in row)


def test_no_other_table_recalls_a_line_about_food_safety():
    """The figures that are recalled are of composition, of leaves and of tax."""
    found = {}
    for file in sorted(KIT.glob("kitchenmath/data/*.csv")):
        with file.open(encoding="utf-8", newline="") as lines:
            told = [" ".join(row) for row in csv.reader(lines)]
        found[file.name] = [each for row in told for each in recalled_safety(row)]

    assert {} == {name: each for name, each in found.items() if each}


@pytest.mark.parametrize(
    ("file", "text"), [pytest.param(*each, id=each[0].name) for each in read_by_people()]
)
def test_no_line_about_food_safety_is_from_memory(file, text):
    """In lessons, keys, guides, panels and cautions; of what is about nothing else, no line."""
    about_it = file in OF_SAFETY or file.name.startswith("09")

    assert [] == recalled_safety(text, every=about_it), file.relative_to(KIT)


@pytest.mark.parametrize("file", OF_SAFETY, ids=lambda file: file.name)
def test_no_module_on_food_safety_recalls(file):
    """Its docstrings and comments too."""
    assert not RECALLED.search(file.read_text(encoding="utf-8"))


def test_no_value_of_a_food_code_is_checked_against_memory():
    """Nor is a limit tested against a print that nobody read."""
    recalled = [each for each in published() if each.status == "memory"]

    assert [] == [str(each) for each in recalled if SAFETY.search(f"{each.source} {each.name}")]


def test_a_recalled_limit_is_found():
    """And a dose that is recalled is no line about food safety."""
    assert recalled_safety("Weigh it. The core at 63 °C is from memory.")
    assert not recalled_safety("Weights of leaves are from memory. Poultry: 74 °C.")


@pytest.mark.parametrize(
    "said",
    [
        pytest.param(lambda what: str(limits(what)[0]), id="the limit as it prints itself"),
        pytest.param(words_of(conventions_of("US")).limit, id="a text's place, US"),
        pytest.param(words_of(conventions_of("ours")).limit, id="a text's place, ours"),
    ],
)
def test_a_humid_oven_is_never_told_without_its_condition(said):
    """The Food Code's 3-401.11(B)(1) takes 121 °C (250 °F) only from an oven that is so humid."""
    assert CONDITION in said("roast in a humid oven, any weight")


@pytest.mark.parametrize(
    ("file", "text"), [pytest.param(*each, id=each[0].name) for each in read_by_people()]
)
def test_a_text_that_tells_the_humid_oven_tells_its_condition(file, text):
    """Paragraph by paragraph."""
    told = [each for each in re.split(r"\n\s*\n", text) if HUMID.search(each)]

    assert [] == [each for each in told if CONDITION not in each], file.relative_to(KIT)
