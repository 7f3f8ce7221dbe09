"""The form for a day's record: read, judged, kept, and printed; nothing that was typed can run."""

import base64
import re

import pytest

from kitchenmath.conventions import conventions_of
from kitchenmath.panels import day_record
from kitchenmath.panels.day_record import day_record_panel, record_lines
from kitchenmath.safety import control_points
from tests.helpers.panels import words


def page_of(panel):
    return base64.b64decode(re.search(r"base64,([^\"]+)", panel.page.value)[1]).decode()


def said(panel, point):
    return words(panel.told[point])


def test_a_reading_is_judged_beside_its_limit(tmp_path):
    """Cold holding at most 5 °C, hot holding at least 57 °C (FDA Food Code 3-501.16)."""
    panel = day_record_panel(tmp_path)
    panel.boxes["cold room"].value = "5"
    panel.boxes["hot holding"].value = "54 °C"

    assert "in order: 5 °C." == said(panel, "cold room")
    assert said(panel, "hot holding").startswith("OUT OF LIMITS: 54 °C. Usual: find out since when")
    assert "2 of 9 readings are there; 1 out of limits." in words(panel)
    assert "Say what was done about: hot holding." in words(panel)
    panel.boxes["hot holding, done"].value = "2 L thrown away, 20:15, N. N."
    assert "Say what was done" not in words(panel)


@pytest.mark.parametrize("typed", ["warm", "5 kg", "900", "4 5 6"])
def test_what_is_no_reading_is_asked_back_in_a_sentence(typed, tmp_path):
    panel = day_record_panel(tmp_path)
    panel.boxes["delivery"].value = typed

    assert "Type it such as 4.5 °C." in said(panel, "delivery")
    assert "0 of 9 readings are there" in words(panel)


def test_fahrenheit_is_read_and_a_comma_is_a_decimal_sign():
    lines = record_lines({"cold room": "41 °F", "delivery": "4,5"})

    assert lines["cold room"]["state"] is True
    assert ("4.5 °C", True) == (lines["delivery"]["reading"], lines["delivery"]["state"])


def test_a_record_is_kept_and_can_be_emptied(tmp_path):
    panel = day_record_panel(tmp_path)
    panel.boxes["day"].value = "Monday"
    panel.boxes["cold room"].value = "4"

    again = day_record_panel(tmp_path)
    assert ("Monday", "4") == (again.boxes["day"].value, again.boxes["cold room"].value)
    assert "in order: 4 °C." == said(again, "cold room")
    again.empty.click()
    assert "" == day_record_panel(tmp_path).boxes["cold room"].value
    assert "" == again.told["cold room"].value


def test_the_page_to_print_has_every_line_and_runs_nothing(tmp_path):
    panel = day_record_panel(tmp_path)
    panel.boxes["day"].value = "<script>alert(1)</script>"
    panel.boxes["cold room"].value = "8"
    page = page_of(panel)

    assert all(point in page for point in control_points())
    assert "OUT OF LIMITS" in page
    assert "<script>" not in page
    assert "at most 5 °C (41 °F)" in page


def test_a_record_names_the_food_code_of_its_class_and_judges_by_no_other(tmp_path, monkeypatch):
    """71 °C in a bird: by the UK's advice (70 °C for 2 min) in order; a cold room: not covered."""
    monkeypatch.setattr(day_record, "college_here", lambda: conventions_of("UK"))
    panel = day_record.day_record_panel(tmp_path)
    panel.boxes["core of poultry"].value = "71"
    panel.boxes["cold room"].value = "4"
    page = page_of(panel)

    assert "in order: 71 °C." == said(panel, "core of poultry")
    assert "no limit here: 4 °C." == said(panel, "cold room")
    assert "2 of 9 readings are there; 0 out of limits." in words(panel)
    assert "Limits, as quoted: UK FSA and ACMSF (core of poultry)." in page
    assert "not covered here: ask your food code" in page
    assert "FDA" not in page


def test_without_a_food_code_that_was_read_the_record_says_so(tmp_path, monkeypatch):
    monkeypatch.setattr(day_record, "college_here", lambda: conventions_of("NZ"))

    assert "No limit of your country was read here." in page_of(
        day_record.day_record_panel(tmp_path)
    )
