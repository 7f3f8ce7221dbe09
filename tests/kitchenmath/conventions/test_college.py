"""One line of text says what a class takes for granted; every number and limit follows it."""

import pytest

from kitchenmath.conventions import as_text, college_here, conventions_of, countries, words_of
from kitchenmath.conventions.college import HERE
from kitchenmath.conventions.in_words import filled
from kitchenmath.cuts import sizes_printed
from kitchenmath.data import tables
from kitchenmath.data.tables import table
from kitchenmath.errors import OutOfRange, UnknownName


def test_every_country_says_every_line_once_with_its_source():
    """Seven lines for each of five countries, each with a source and a status."""
    rows = table("conventions.csv")

    assert ("ours", "US", "UK", "EU", "NZ") == countries()
    assert 5 * 7 == len({(row["country"], row["line"]) for row in rows}) == len(rows)
    assert all(row["source"] and row["status"] for row in rows)


def test_the_brunoise_of_a_country_is_what_its_sources_print():
    """Wikipedia prints 3 mm; NZ slides, UK notes and French sources print 2 mm."""
    printed = sizes_printed("brunoise")
    sizes = {country: conventions_of(country).brunoise_mm for country in countries()}

    assert {"ours": 3, "US": 3, "UK": 2, "EU": 2, "NZ": 2} == sizes
    assert "3 mm" == printed["Wikipedia, list of culinary knife cuts"]
    for source in ("NZ teaching slides (unit standard 13280)", "UK teaching notes",
                   "French sources"):  # fmt: skip
        assert "2 mm" in printed[source]


def test_a_line_that_is_said_takes_the_place_of_the_countrys():
    """A British college that cuts 3 mm keeps its pounds."""
    college = conventions_of("UK; brunoise_mm = 3; oven = fan")

    assert (3, "sterling", "fan") == (college.brunoise_mm, college.currency, college.oven)
    assert "UK; brunoise_mm = 3; oven = fan" == as_text(college)


@pytest.mark.parametrize("country", countries())
def test_what_conventions_say_can_be_read_again(country):
    """There and back."""
    college = conventions_of(country)

    assert college == conventions_of(as_text(college))
    assert country == as_text(college)


@pytest.mark.parametrize(
    ("odd", "names"),
    [
        ("Mars", "country"),
        ("UK; brunoise_mm = 5", "brunoise_mm"),
        ("UK; currency = shells", "currency"),
        ("UK; colour = red", "conventions"),
        ("UK; tax = none", "tax_percent"),
        ("UK; brunoise_mm = two", "brunoise_mm"),
    ],
)
def test_an_odd_line_is_refused_by_its_name(odd, names):
    """5 mm is no brunoise in any source; a tax of 20 % is no tax of none."""
    with pytest.raises((UnknownName, OutOfRange), match=names):
        conventions_of(odd)


def test_a_limit_is_quoted_from_the_class_s_food_code():
    """FDA Food Code 3-401.11(A)(3) prints 165 °F for 15 s; the UK's advice 70 °C for 2 min."""
    said = {country: words_of(conventions_of(country)).limit("poultry") for country in countries()}

    assert "74 °C (165 °F) for 15 s (FDA Food Code 3-401.11(A)(3))" == said["ours"]
    assert "165 °F (74 °C) for 15 s (FDA Food Code 3-401.11(A)(3))" == said["US"]
    assert "70 °C (158 °F) for 2 min (UK FSA and ACMSF)" == said["UK"]
    assert "not covered here in New Zealand: ask your food code" == said["NZ"]
    assert "not covered here in the EU: ask your food code" == said["EU"]


@pytest.mark.parametrize("what", ["hot holding", "cold holding", "fish", "reheating"])
def test_no_number_is_given_where_a_country_s_rule_was_not_read(what):
    """Holding, fish and reheating in the UK: no source was read, so no degree stands there."""
    said = words_of(conventions_of("UK")).limit(what)

    assert "not covered here in the UK: ask your food code" == said
    assert "°" not in words_of(conventions_of("UK")).cooling()


def test_cooling_is_quoted_in_both_stages():
    """FDA Food Code 3-501.14: to 21 °C in 2 h, to 5 °C in 6 h altogether."""
    assert (
        "to 21 °C (70 °F) within 2 h and to 5 °C (41 °F) within 6 h in all (FDA Food Code 3-501.14)"
    ) == words_of(conventions_of("ours")).cooling()


def test_an_oven_is_said_by_its_dial():
    """220 °C is 428 °F, a dial's 425 °F, which is mark 7; a fan oven's dial stands 20 °C lower."""
    said = [words_of(conventions_of(each)).oven("220") for each in ("ours", "UK", "EU", "US")]

    assert ["220 °C (425 °F)", "220 °C (425 °F, gas mark 7)", "220 °C (425 °F, fan 200 °C)",
            "425 °F (220 °C)"] == said  # fmt: skip


def test_a_place_that_nobody_can_fill_is_refused():
    """A key's author hears of it at once."""
    with pytest.raises(UnknownName, match="place"):
        filled("{{ colour }}", conventions_of("UK"))


def test_the_file_of_a_class_s_copy_is_read_once(tmp_path, monkeypatch):
    """A hundred rounds of a drill ask; with the file gone after the first they still know."""
    file = tmp_path / HERE
    file.write_text("UK; brunoise_mm = 3", encoding="utf-8")
    monkeypatch.setattr(tables, "__file__", str(tmp_path / "tables.py"))
    college_here.cache_clear()
    try:
        first = college_here()
        file.unlink()

        assert ("UK", 3) == (first.country, first.brunoise_mm)
        assert all(college_here() is first for _ in range(100))
    finally:
        college_here.cache_clear()


def test_a_hold_table_is_printed_row_by_row():
    """FDA Food Code 3-401.11(B)(2): 54.4 °C (130 °F) for 112 min stands in it."""
    lines = words_of(conventions_of("US")).hold_table().splitlines()

    assert "| core at least | held for |" in lines
    assert "| 130 °F (54.4 °C) | 112 min |" in [line.replace("\xa0", " ") for line in lines]


def test_the_first_line_that_may_be_said_is_the_currency():
    assert "euro" == conventions_of("UK; currency = euro").currency
