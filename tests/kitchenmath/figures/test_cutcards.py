"""Cut cards, read back out of the printed file: the lengths, the words, the bytes.

The referee is the PDF itself: one point is 1/72 in (ISO 32000-1, 8.3.2.3) and its operators
m, l, h, f, re and cm (ISO 32000-1, 8.5 and 8.4.4) say where a filled shape lies.
"""

import re
import subprocess
import sys
from collections import Counter

import matplotlib
import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.patches import Polygon

from kitchenmath.cuts import CUTS, Cut
from kitchenmath.errors import OutOfRange, UnknownName
from kitchenmath.figures.cut_cards import card_figure, cut_card
from kitchenmath.units.registry import Q_
from tests.helpers.pdf_shapes import POINTS_PER_MM, content, shapes_mm

# ISO 216: A4 is 210 x 297 mm; ANSI/ASME Y14.1: Letter is 8.5 x 11 in.
PAPERS = {"A4": (210, 297), "Letter": (8.5 * 25.4, 11 * 25.4)}


@pytest.fixture(scope="module", params=PAPERS)
def card(request, tmp_path_factory):
    """A card of all cuts: the paper's name, and the bytes of the file."""
    path = cut_card(paper=request.param, path=tmp_path_factory.mktemp("card") / "card.pdf")
    return request.param, path.read_bytes()


def sizes_mm(pdf):
    """How often each width x height is there, to a hundredth of a millimetre."""
    return Counter((round(width, 2), round(height, 2)) for _, _, width, height in shapes_mm(pdf))


def expected_sizes(cut):
    """What a card must show of a cut whose sizes are all fixed."""
    size = {key: value.magnitude for key, value in cut.dimensions.items()}
    if cut.shape == "cube":
        return 2 * [(size["edge"], size["edge"])]
    if cut.shape == "stick" and "length" in size:
        return [(size["length"], size["side"]), (size["side"], size["side"])]
    if cut.shape == "stick":
        return [(size["side"], size["side"])]
    if cut.shape == "flat":
        return [(size["width"], size["width"]), (size["width"], size["thickness"])]
    return []


def test_the_page_is_as_large_as_the_paper(card):
    """MediaBox in points against the paper's standard, and no unit that would stretch a point."""
    paper, pdf = card
    box = re.search(rb"/MediaBox \[ ([\d. ]+) \]", pdf)[1].split()
    expected = [0, 0, *(side * POINTS_PER_MM for side in PAPERS[paper])]

    assert expected == pytest.approx([float(number) for number in box], abs=1e-6)
    assert b"/UserUnit" not in pdf
    assert b"/Rotate" not in pdf


def test_nothing_scales_what_is_drawn(card):
    """No transformation in the page but shifts, so that lengths in it are lengths on paper."""
    matrices = re.findall(r"((?:[-\d.]+ ){6})cm\b", content(card[1]))

    assert matrices
    for matrix in matrices:
        assert [1, 0, 0, 1] == [float(number) for number in matrix.split()[:4]]


def test_the_bars_are_a_hundred_millimetres_and_four_inches(card):
    """100 mm is 283.4646 points and 4 in is 288; the ticks stand 10 mm and 1 in apart."""
    shapes = shapes_mm(card[1])
    bars = [shape for shape in shapes if shape[2] == pytest.approx(100, abs=1e-4)]
    bars += [shape for shape in shapes if shape[2] == pytest.approx(101.6, abs=1e-4)]
    assert 2 == len(bars)

    for (left, bottom, width, height), steps in zip(bars, (10, 4), strict=True):
        ticks = sorted(
            shape[0] + shape[2] / 2
            for shape in shapes
            if shape[1] == pytest.approx(bottom + height, abs=1e-3)
        )
        expected = [left + width * i / steps for i in range(steps + 1)]

        assert expected == pytest.approx(ticks, abs=1e-3)


def test_every_fixed_size_is_on_the_paper_as_long_as_it_is(card):
    """Each cut's rectangles, from above and from the side, to a hundredth of a millimetre."""
    sizes = sizes_mm(card[1])
    wanted = Counter(size for cut in CUTS.values() for size in expected_sizes(cut))

    # By hand: seven cubes twice, five sticks twice, the end of a pont-neuf, a flat twice.
    assert 14 + 10 + 1 + 2 == wanted.total()
    for size, times in wanted.items():
        assert times <= sizes[size], size


def test_open_sizes_keep_what_is_fixed(card):
    """A rondelle is 5 mm thick, a chiffonade 5 mm wide, a pont-neuf 10 mm, a tourné 50 mm long."""
    heights = Counter(height for _, height in sizes_mm(card[1]).elements())
    widths = Counter(width for width, _ in sizes_mm(card[1]).elements())

    # 5 mm high: macédoine twice, rondelle from the side, chiffonade from above.
    assert 4 == heights[5.0]
    # 10 mm high: mirepoix twice, pont-neuf twice, paysanne from above.
    assert 5 == heights[10.0]
    # 50 mm wide: bâtonnet, allumette, and the three faces of a tourné.
    assert 5 == widths[50.0]


def test_shapes_do_not_touch_and_stay_inside_the_margin(card):
    """Two pieces that touch would be measured as one; printers leave 6 mm white."""
    paper, pdf = card
    width, height = PAPERS[paper]
    shapes = shapes_mm(pdf)
    pieces = [shape for shape in shapes if shape[2] > 0.3 and shape[3] > 0.3]

    for left, bottom, wide, high in shapes:
        assert 6 <= left and left + wide <= width - 6
        assert 6 <= bottom and bottom + high <= height - 6
    for i, (left, bottom, wide, high) in enumerate(pieces):
        for left_2, bottom_2, wide_2, high_2 in pieces[:i]:
            # The three faces of a tourné are one piece: as long, and with a bend between them.
            one_piece = wide == wide_2 == pytest.approx(50) and left == pytest.approx(left_2)
            apart = (
                left + wide <= left_2
                or left_2 + wide_2 <= left
                or bottom + high <= bottom_2
                or bottom_2 + high_2 <= bottom
            )
            assert apart or one_piece


@pytest.mark.parametrize("paper", PAPERS)
def test_no_label_lies_on_another_or_on_a_piece(paper):
    """Boxes of all texts and shapes on the drawn page, and all of them inside the margin."""
    figure = card_figure(paper)
    canvas = FigureCanvasAgg(figure)
    canvas.draw()
    page = figure.axes[0]
    texts = [(text.get_text(), text.get_window_extent(canvas.renderer)) for text in page.texts]
    shapes = [
        ("a shape", patch.get_window_extent(canvas.renderer).padded(-0.5))
        for patch in page.patches
        if isinstance(patch, Polygon)
    ]
    margin = 6 / 25.4 * figure.dpi

    assert 17 * 3 < len(texts)
    for i, (words, box) in enumerate(texts):
        assert margin <= box.x0 and box.x1 <= figure.bbox.x1 - margin, words
        assert margin <= box.y0 and box.y1 <= figure.bbox.y1 - margin, words
        for other, other_box in texts[:i] + shapes:
            inner = box.padded(-0.75)  # a font's box is a little higher than its letters
            assert not inner.overlaps(other_box.padded(-0.25)), (words, other)


@pytest.mark.parametrize("paper", PAPERS)
def test_the_card_says_what_a_cook_must_know(paper):
    """How to print, that the sizes are a convention, the caution for knives; mm and inches."""
    texts = [text.get_text() for text in card_figure(paper).axes[0].texts]
    words = " ".join(texts)

    for needed in ("Print at 100 %, measure the bar", "100 mm", "4 in", "teaching convention",
                   "Knives: a sharp blade", "fingertips curled", "3 mm (0.12 in)",
                   "6 × 6 × 50 mm", "0.24 × 0.24 × 1.97 in", "7 faces"):  # fmt: skip
        assert needed in words
    assert set(CUTS) <= set(texts)


def test_a_kitchens_own_cut_is_drawn(tmp_path):
    """Two views of a 2 mm cube, and no other cut."""
    house = Cut("house brunoise", "cube", {"edge": Q_(2, "mm")})
    sizes = sizes_mm(cut_card(path=tmp_path / "own.pdf", cuts=house).read_bytes())

    assert 2 == sizes[2.0, 2.0]
    assert 0 == sizes[3.0, 3.0]


def test_an_inch_kitchen_gets_its_inches(tmp_path):
    """A quarter inch is 6.35 mm, 18 points."""
    quarter = Cut("quarter inch", "cube", {"edge": Q_(0.25, "inch")})
    pdf = cut_card(paper="Letter", path=tmp_path / "inch.pdf", cuts=[quarter]).read_bytes()

    assert 2 == sizes_mm(pdf)[6.35, 6.35]


PRINT = (
    "import sys; from kitchenmath.figures.cut_cards import cut_card; "
    "cut_card(sys.argv[1], sys.argv[2])"
)


def test_the_same_card_is_the_same_bytes_in_every_process(card, tmp_path, monkeypatch):
    """Another process with another hash seed, another date and a user's own drawing settings."""
    paper, pdf = card
    (tmp_path / "matplotlibrc").write_text(
        "font.size: 20\npatch.linewidth: 5\nsavefig.bbox: tight\n", encoding="utf-8"
    )
    monkeypatch.setenv("MATPLOTLIBRC", str(tmp_path))
    monkeypatch.setenv("PYTHONHASHSEED", "7")
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1000000000")
    subprocess.run([sys.executable, "-c", PRINT, paper, tmp_path / "again.pdf"], check=True)

    assert pdf == (tmp_path / "again.pdf").read_bytes()
    assert b"Date" not in pdf


def test_drawing_leaves_the_settings_of_matplotlib_alone(tmp_path):
    """A notebook's own settings are as they were."""
    with matplotlib.rc_context({"font.size": 21.0, "pdf.compression": 6}):
        before = dict(matplotlib.rcParams)
        cut_card(path=tmp_path / "card.pdf", cuts=["brunoise"])

        assert before == dict(matplotlib.rcParams)


LIGHT = """
import sys
import kitchenmath.cuts, kitchenmath.ratios
assert "matplotlib" not in sys.modules
sys.modules["matplotlib"] = None
try:
    import kitchenmath.figures.cut_cards
except ModuleNotFoundError as error:
    print(error)
"""


def test_only_the_cards_need_matplotlib_and_they_say_so():
    """Cuts and ratios load without it; without it the cards give one sentence."""
    said = subprocess.run([sys.executable, "-c", LIGHT], check=True, capture_output=True, text=True)

    assert "Cut cards need matplotlib" in said.stdout


@pytest.mark.parametrize(
    ("cuts", "paper", "error", "words"),
    [
        (None, "A5", UnknownName, "paper: 'A5' is not one of 'A4', 'Letter'"),
        (["fancy"], "A4", UnknownName, "cut: 'fancy'"),
        (["large dice"] * 40, "Letter", OutOfRange, "cuts: 40 cuts need .* more than a page of"),
        ([Cut("thin", "flat", {"width": Q_(9, "mm")})], "A4", OutOfRange, "thin cannot be drawn"),
        ([Cut("log", "stick", {"side": Q_(9, "mm"), "length": Q_(30, "cm")})], "A4", OutOfRange,
         "cuts: log needs 311.5 mm"),
    ],
)  # fmt: skip
def test_what_cannot_be_drawn_is_refused(tmp_path, cuts, paper, error, words):
    """And no file is left behind."""
    with pytest.raises(error, match=words):
        cut_card(paper=paper, path=tmp_path / "card.pdf", cuts=cuts)

    assert not (tmp_path / "card.pdf").exists()
