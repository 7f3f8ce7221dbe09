"""A rendered tray, measured: near the truth, and no nearer with a part of the method left out.

All figures here are rendered: a ray caster with another lens model and another tone curve knows
the truth. tests/measure/photo_accuracy.py prints the whole table on seeds of its own.
"""

from dataclasses import replace

import numpy as np
import pytest

pytest.importorskip("cv2", reason="OpenCV is not installed: the extra photo brings it")

from kitchenmath.photo import boxes, checks, doubts, measure_board, pose
from tests.helpers.rendered import photo
from tests.helpers.scored import Score
from tests.helpers.trays import close_together, pairs, tray

BAR_MM = {"dice 5": 0.35, "dice 10": 0.40}  # 95 % of unflagged sides
MOST_BIAS_MM = 0.12


@pytest.fixture(scope="module")
def tens():
    """A tray of 24 dice of 10 mm from the bent lens of a wide view, and its photo."""
    scene = tray(70_001, "dice 10", "carrot", lens=-0.2)
    return scene, photo(scene)


def scored(scene, data, ruler_mm=(100.0, 100.0)):
    """The errors of one photo."""
    score = Score()
    score.add(scene, measure_board(data, ruler_mm))
    return score


def within_bar(score, bar_mm):
    """Whether a tray keeps to the bar: sides, bias, and nothing missed or flagged."""
    found = score.figures()
    near = max(found["width 95 %"], found["length 95 %"]) <= bar_mm
    fair = max(abs(found["width bias"]), abs(found["length bias"])) <= MOST_BIAS_MM
    return bool(near and fair and not score.missed and not score.false)


def test_dice_of_10_mm_are_measured_within_four_tenths(tens):
    """Rendered: 24 pieces, 95 % of the sides within 0.40 mm, bias at most 0.12 mm."""
    score = scored(*tens)

    assert (24, 0, 0, 0) == (score.true, score.missed, score.false, score.flagged)
    assert within_bar(score, BAR_MM["dice 10"])


def test_pale_small_dice_are_measured_within_a_third():
    """Rendered: potato of 5 mm, 95 % of the sides within 0.35 mm."""
    scene = tray(70_002, "dice 5", "potato")

    assert within_bar(scored(scene, photo(scene)), BAR_MM["dice 5"])


def test_without_the_lens_term_the_tray_misses_the_bar(tens, monkeypatch):
    """Held to nought, the lens bends the mat: the photo is refused. Let through all the same, its
    outer pieces are off by more than the bar."""
    monkeypatch.setattr(pose, "LENS_SD", 1e-7)
    refused = measure_board(tens[1], (100.0, 100.0))
    monkeypatch.setitem(checks.BOUNDS, "bent", (9.0, 9.0))
    score = scored(*tens)

    assert [("bent", "refuse")] == [(each.about, each.level) for each in refused.findings]
    assert 24 == len(score.errors)
    assert not within_bar(score, BAR_MM["dice 10"])


def test_without_a_height_the_tray_misses_the_bar(tens, monkeypatch):
    """A piece as flat as paper: its sides swell by what its height throws outwards."""
    monkeypatch.setattr(boxes, "HEIGHT_SHARE", 0.0)

    assert not within_bar(scored(*tens), BAR_MM["dice 10"])


def test_a_wrong_print_scale_misses_the_bar(tens):
    """3 % of 10 mm is a bias of 0.3 mm, and nothing in the photo shows it."""
    score = scored(*tens, ruler_mm=(97.0, 97.0))

    assert -0.3 == pytest.approx(score.figures()["width bias"], abs=0.12)
    assert not within_bar(score, BAR_MM["dice 10"])


def test_the_least_rectangle_alone_misses_the_bar(tens):
    """The naive way, rectangles around outlines, is millimetres wrong: it measures side faces."""
    scene, data = tens
    board = measure_board(data, (100.0, 100.0))
    lens_mm = board.camera.place_mm
    outlines = [
        np.concatenate([piece.box.corners_mm(), piece.box.upper_mm(lens_mm)])
        for piece in board.pieces
    ]
    widths = [boxes.least_rectangle(outline)[1][1] for outline in outlines]
    true = np.mean([piece.width for piece in scene.pieces])

    assert np.mean(widths) - true > 1.0


def test_sticks_four_millimetres_apart_are_each_found_once():
    """Rendered: eight sticks of 3 by 50 mm whose middles lie 7 mm apart, nearer than they are long.

    Two masks show each stick; what one shows of a stick is no second opinion on its neighbour.
    """
    scene = close_together(335_004, "stick 3 x 50", "potato", 4.0)
    score = scored(scene, photo(scene))

    assert (8, 0, 0, 0) == (score.true, score.missed, score.false, score.flagged)


def test_tall_dice_that_hide_the_mat_between_them_are_told_apart():
    """Rendered: twelve dice of 20 mm, 4 mm apart; some merge in the photo, and their upper faces
    tell them apart. The sides keep to 0.60 mm."""
    scene = close_together(315_033, "dice 20", "carrot", 4.0)
    score = scored(scene, photo(scene))

    assert (12, 0, 0, 0) == (score.true, score.missed, score.false, score.flagged)
    assert max(score.figures()[side] for side in ("width 95 %", "length 95 %")) <= 0.60


def test_pieces_that_touch_are_flagged_and_flush_ones_are_doubled():
    """Rendered: on the left 12 offset pairs, by their shape; on the right 12 flush ones, which
    the double-size rule alone would find: a side is twice the named cut's."""
    offset, flush = (pairs(70_003, "dice 10", "carrot", kind) for kind in ("offset", "flush"))
    scene = replace(offset, pieces=offset.pieces[:24] + flush.pieces[24:])
    board = measure_board(photo(scene), (100.0, 100.0), [(10.0, 10.0)])
    right = [piece for piece in board.clumps if piece.box.middle_mm[0] > 129]
    sizes = np.array([(piece.width_mm, piece.length_mm) for piece in right])

    assert not board.refused
    assert (0, 24) == (len(board.measured), len(board.clumps))
    assert [True] * 12 == doubts.doubles(sizes, [(10.0, 10.0)]).tolist()


def test_a_piece_with_others_all_around_is_measured():
    """Rendered: nine dice of 20 mm hang together in this photo, and the one in the middle has no
    outline of its own: the rim of its upper face is enough. Each mask shows another patch of
    them, and none is counted twice."""
    scene = close_together(381_003, "dice 20", "carrot", 4.0)
    score = scored(scene, photo(scene))

    assert (12, 0, 0, 0) == (score.true, score.missed, score.false, score.flagged)


def test_side_faces_at_the_outline_do_not_tie_two_upper_faces_together():
    """Rendered: the strip between two dice of 20 mm runs into a dark side face along their
    outline; the two were taken for one piece of 19 by 44 mm."""
    scene = close_together(320_018, "dice 20", "courgette", 4.0)
    score = scored(scene, photo(scene))

    assert (12, 0, 0, 0) == (score.true, score.missed, score.false, score.flagged)
