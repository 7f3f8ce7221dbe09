"""The printed mat: one layout on both papers, true to the millimetre, and found again."""

import io

import numpy as np
import pytest

pytest.importorskip("cv2", reason="OpenCV is not installed: the extra photo brings it")

import cv2
from PIL import Image

from kitchenmath.errors import UnknownName
from kitchenmath.figures.board_mat import board_mat, mat_figure
from kitchenmath.photo.layout import marker_cells
from kitchenmath.photo.markers import find_markers
from kitchenmath.photo.opening import light
from kitchenmath.photo.pose import find_pose
from tests.helpers.pdf_shapes import shapes_mm


@pytest.mark.parametrize("number", range(16))
def test_a_marker_is_the_open_dictionarys_own(number):
    """OpenCV draws marker `number` of DICT_4X4_50, a pixel a cell."""
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    drawn = cv2.aruco.generateImageMarker(dictionary, number, 6) > 0

    assert drawn.tolist() == marker_cells(number).tolist()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_page_holds_its_lengths(paper, tmp_path):
    """Read out of the PDF, a point being 1/72 in: field, sixteen markers, two lines of 100 mm."""
    shapes = shapes_mm(board_mat(paper, tmp_path / "mat.pdf").read_bytes())
    sizes = [(round(wide, 2), round(high, 2)) for _, _, wide, high in shapes]

    assert 1 == sizes.count((208.0, 136.0))
    assert 16 == sizes.count((18.0, 18.0))
    assert (100.0, 0.4) in sizes and (0.4, 100.0) in sizes


def test_the_same_paper_gives_the_same_bytes(tmp_path):
    """No date inside."""
    first, second = (board_mat("A4", tmp_path / name).read_bytes() for name in ("a.pdf", "b.pdf"))

    assert first == second
    with pytest.raises(UnknownName):
        board_mat("A3")


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_a_picture_of_the_mat_is_read_as_the_mat(paper):
    """150 dots an inch are 5.906 a millimetre; looked at straight on, all sixteen are found."""
    file = io.BytesIO()
    mat_figure(paper).savefig(file, dpi=150)
    pixels = np.asarray(Image.open(file).convert("RGB"))
    markers = find_markers(pixels, light(pixels).mean(axis=2))
    camera = find_pose(markers, pixels.shape[:2])
    ends = camera.pixels_of(np.array([[0.0, 0.0], [258.0, 0.0]]))

    assert 16 == len(markers)
    assert 258 * 150 / 25.4 == pytest.approx(np.linalg.norm(ends[1] - ends[0]), rel=5e-4)
