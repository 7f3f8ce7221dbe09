"""Two masks of one tray: a place is what hangs together over both of them."""

import numpy as np
import pytest

pytest.importorskip("cv2", reason="OpenCV is not installed: the extra photo brings it")

from kitchenmath.photo.boxes import Box
from kitchenmath.photo.outlines import Blob
from kitchenmath.photo.two_masks import doubtfulness, same_places


def seen(left, right, misfit_mm=0.1):
    """A patch 20 mm high between two places across, and its box."""
    corners = np.array([(left, 0), (right, 0), (right, 20), (left, 20)], float)
    ring = np.concatenate([np.linspace(corners[k - 1], corners[k], 9) for k in range(4)])
    wide, middle = right - left, np.array([(left + right) / 2, 10.0])
    box = Box(middle, 0.0, min(wide, 20.0), max(wide, 20.0), 20.0, misfit_mm, 0.1, 0.1)
    return Blob(ring, 1.0, False, 20.0 * wide, tuple(middle), 0), box


def test_a_patch_in_one_mask_and_its_two_pieces_in_the_other_are_one_place():
    """Pieces from 0 to 20 and from 24 to 44 mm; a third, 80 mm off, is a place of its own."""
    patch, far = seen(0, 44), seen(80, 100)
    one, two = seen(0, 20), seen(24, 44)
    places = same_places([patch, far], [two, one])

    assert [1, 1] == [len(first) for first, _ in places]
    assert {(1, 2), (1, 0)} == {(len(first), len(second)) for first, second in places}


def test_overlapping_patches_of_both_masks_are_one_place():
    """The first mask joins pieces 1 and 2, the second joins 2 and 3: neither counts 2 twice."""
    first, second = [seen(0, 44), seen(48, 68)], [seen(0, 20), seen(24, 68)]

    assert [(2, 2)] == [(len(one), len(other)) for one, other in same_places(first, second)]


def test_sound_pieces_are_believed_before_a_patch_that_fits_nothing():
    """A misfit of 2 mm on a piece 20 mm wide is over 0.15 + 0.01 · 20 = 0.35 mm: doubted."""
    patch, pieces = [seen(0, 44, misfit_mm=2.0)], [seen(0, 20), seen(24, 44)]

    assert (1, 0) == (doubtfulness(patch)[0], doubtfulness(pieces)[0])
    assert doubtfulness(pieces) < doubtfulness(patch)
