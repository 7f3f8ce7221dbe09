"""The blue field seen from straight above, and how the light falls on it."""

from dataclasses import dataclass

import numpy as np

from kitchenmath.photo.layout import FIELD_MM
from kitchenmath.photo.vision import vision

FINEST, COARSEST = 8.0, 4.0  # pixels of the flat picture for a millimetre
TRIMMED_MM = 0.8  # of the field's own printed edge
DARKEST = 1e-3  # of full light; below it a camera's numbers say nothing


@dataclass(frozen=True)
class Field:
    """The field without perspective and lens.

    Attributes
    ----------
    light : array of float32, shape (rows, columns, 3)
    against_mat : array of float32, shape (rows, columns, 3)
        Natural logarithm of the light over that of the bare, lit mat.
    px_per_mm : float
    """

    light: np.ndarray
    against_mat: np.ndarray
    px_per_mm: float

    def mm_of(self, points_px):
        """Where points of the flat picture lie on the mat.

        Parameters
        ----------
        points_px : array, shape (..., 2)

        Returns
        -------
        array, shape (..., 2)
        """
        return np.asarray(points_px, float) / self.px_per_mm + _corner_mm()

    def pixels_of(self, points_mm):
        """Where points of the mat lie in the flat picture.

        Parameters
        ----------
        points_mm : array, shape (..., 2)

        Returns
        -------
        array, shape (..., 2)
        """
        return (np.asarray(points_mm, float) - _corner_mm()) * self.px_per_mm


def _corner_mm():
    return np.array(FIELD_MM[:2]) + TRIMMED_MM


def flat_field(bright, camera):
    """The field of a photo, flat.

    Parameters
    ----------
    bright : array of float32, shape (rows, columns, 3)
        Light of the photo.
    camera : Camera

    Returns
    -------
    Field
    """
    cv2 = vision()
    left, top, right, bottom = FIELD_MM
    px_per_mm = float(np.clip(1.25 * sharpness(camera), COARSEST, FINEST))
    across = int((right - left - 2 * TRIMMED_MM) * px_per_mm)
    down = int((bottom - top - 2 * TRIMMED_MM) * px_per_mm)
    grid = np.stack(np.meshgrid(np.arange(across), np.arange(down)), axis=-1) / px_per_mm
    at = camera.pixels_of(grid + _corner_mm()).astype(np.float32)
    flat = cv2.remap(bright, at, None, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    logs = np.log(np.maximum(flat, DARKEST))
    return Field(flat, logs - _bare_mat(logs), px_per_mm)


def sharpness(camera):
    """Pixels of the photo for a millimetre in the middle of the mat, in its worst direction.

    Parameters
    ----------
    camera : Camera

    Returns
    -------
    float
    """
    middle = np.array([(FIELD_MM[0] + FIELD_MM[2]) / 2, (FIELD_MM[1] + FIELD_MM[3]) / 2])
    near = camera.pixels_of(middle + np.array([(0, 0), (1, 0), (0, 1)]))
    return float(np.linalg.svd(near[1:] - near[0])[1].min())


def _bare_mat(logs):
    """A smooth surface through the lit mat: a quadratic for each colour, without the food.

    Food and shadow are left out by turns, as what lies far from the surface so far. The mat is
    the commonest colour of the field, so the first surface is the median.
    """
    rows, columns = logs.shape[:2]
    step = max(1, int(np.sqrt(rows * columns / 12_000)))
    thin = logs[::step, ::step].reshape(-1, 3).astype(float)
    terms = _terms(rows, columns)
    thin_terms = terms[::step, ::step].reshape(-1, 6)
    kept = np.max(np.abs(thin - np.median(thin, axis=0)), axis=1) < 0.7
    for within in (0.5, 0.3, 0.2, 0.15, 0.15):
        if kept.sum() < 100:
            kept = np.ones(len(thin), bool)
        shape, *_ = np.linalg.lstsq(thin_terms[kept], thin[kept], rcond=None)
        off = thin - thin_terms @ shape
        kept = np.max(np.abs(off), axis=1) < within
    return (terms @ shape).astype(np.float32)


def _terms(rows, columns):
    x, y = np.meshgrid(np.linspace(-1, 1, columns), np.linspace(-1, 1, rows))
    return np.stack([np.ones_like(x), x, y, x * x, x * y, y * y], axis=-1)
