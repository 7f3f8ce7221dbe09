"""What a PDF of matplotlib draws, read back out of the file: ISO 32000-1, 8.3.2.3 and 8.5."""

import re

POINTS_PER_MM = 72 / 25.4


def content(pdf):
    """The operators that draw the page, as text."""
    number = re.search(rb"/Contents (\d+) 0 R", pdf)[1]
    stream = re.search(rb"\b%b 0 obj.*?stream\r?\n(.*?)endstream" % number, pdf, re.DOTALL)[1]
    return stream.decode("latin-1")


def shapes_mm(pdf):
    """Each filled shape as (left, bottom, width, height) in mm from the lower left corner."""
    found = []
    for path in re.findall(r"((?:[-\d.]+ [-\d.]+ [ml]\s+)+)h\s+f\b", content(pdf)):
        numbers = [float(each) / POINTS_PER_MM for each in re.findall(r"[-\d.]+", path)]
        xs, ys = numbers[::2], numbers[1::2]
        found.append((min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys)))
    return found
