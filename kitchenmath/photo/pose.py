"""Where the phone was: its place above the mat, its focal length, and its lens.

The mat is the plane z = 0, with x to the right, y down and z into the table, in millimetres.
"""

from dataclasses import dataclass

import numpy as np

from kitchenmath.photo.fitting import fitted
from kitchenmath.photo.layout import corner_offsets_mm, marker_centres_mm
from kitchenmath.photo.vision import vision

FOCAL_SHARE = 0.8  # of the long side, the usual phone's; only where the fit begins
FOCAL_SD = 0.25  # of its logarithm
LENS_SD = 0.05  # of the one radial term
INK_SD = 0.02  # how much larger or smaller than drawn ink makes a marker
CORNER_PX = 0.1  # what a refined corner is known to
FEWEST = 4  # markers, for any pose at all


@dataclass(frozen=True)
class Camera:
    """A phone over the mat.

    Attributes
    ----------
    turn : array, shape (3, 3)
        From the mat's directions to the camera's.
    shift_mm : array, shape (3,)
    focal_px, lens : float
        The radial term is that of Brown's model: r(1 + lens r²).
    middle_px : array, shape (2,)
    ink : float
        How large the markers are printed, against the layout.
    misfit_mm : float
        Root mean square distance of the markers' corners from where they should be.
    """

    turn: np.ndarray
    shift_mm: np.ndarray
    focal_px: float
    lens: float
    middle_px: np.ndarray
    ink: float
    misfit_mm: float

    @property
    def place_mm(self):
        """Where the lens is, as (x, y, height above the mat)."""
        place = -self.turn.T @ self.shift_mm
        return np.array([place[0], place[1], -place[2]])

    @property
    def tilt_degrees(self):
        """Between the camera's view and straight down."""
        return float(np.degrees(np.arccos(np.clip(self.turn[2, 2], -1, 1))))

    def pixels_of(self, points_mm):
        """Where points of the mat lie in the photo.

        Parameters
        ----------
        points_mm : array, shape (..., 2)

        Returns
        -------
        array, shape (..., 2)
        """
        at = points_mm @ self.turn[:, :2].T + self.shift_mm
        return _through_lens(at, self.focal_px, self.lens) + self.middle_px


def _through_lens(at, focal_px, lens):
    flat = at[..., :2] / at[..., 2:]
    return focal_px * flat * (1 + lens * np.sum(flat**2, axis=-1, keepdims=True))


def find_pose(markers, shape):
    """The camera from the markers that were found.

    Parameters
    ----------
    markers : Markers
        `FEWEST` at least.
    shape : tuple of int
        Rows and columns of the photo.

    Returns
    -------
    Camera
    """
    centres = marker_centres_mm()[markers.numbers][:, None, :]
    return fit_camera(centres, corner_offsets_mm(), markers.corners_px, shape)


def fit_camera(centres_mm, offsets_mm, seen_px, shape):
    """The camera from any marks on a plane whose places are known.

    Parameters
    ----------
    centres_mm : array, shape (marks, 1, 2)
    offsets_mm : array, shape (corners, 2)
        From a mark's middle; all are printed larger or smaller alike.
    seen_px : array, shape (marks, corners, 2)
    shape : tuple of int
        Rows and columns of the photo.

    Returns
    -------
    Camera
    """
    middle = np.array([(shape[1] - 1) / 2, (shape[0] - 1) / 2])
    seen = seen_px - middle
    start = _start(centres_mm + offsets_mm, seen, FOCAL_SHARE * max(shape))
    found, _, _ = fitted(
        lambda many: _residuals(many, centres_mm, offsets_mm, seen, max(shape)),
        start,
        steps=[1e-6] * 3 + [1e-3] * 3 + [1e-5, 1e-5, 1e-5],
        outlying=5.0,
        rounds=60,
    )
    turn, shift, focal_px, lens, ink = _parts(found)
    off_px = (_projected(found, centres_mm, offsets_mm) - seen).reshape(-1, 2)
    far_mm = float(np.mean((centres_mm.reshape(-1, 2) @ turn[:, :2].T + shift)[:, 2]))
    misfit_mm = float(np.sqrt(np.mean(np.sum(off_px**2, axis=1)))) * far_mm / focal_px
    return Camera(turn, shift, focal_px, lens, middle, ink, misfit_mm)


def _start(points_mm, seen, focal_px):
    """A first pose without a lens, from OpenCV's closed form for planes."""
    cv2 = vision()
    points = np.pad(points_mm.reshape(-1, 2), ((0, 0), (0, 1)))
    camera = np.diag([focal_px, focal_px, 1.0])
    _, turn, shift = cv2.solvePnP(
        points, seen.reshape(-1, 2), camera, None, flags=cv2.SOLVEPNP_IPPE
    )
    return np.concatenate([np.ravel(turn), np.ravel(shift), [np.log(focal_px), 0.0, 1.0]])


def _parts(pose):
    return _rotation(pose[:3]), pose[3:6], float(np.exp(pose[6])), float(pose[7]), float(pose[8])


def _rotation(turned):
    """The matrix that turns about a vector by its length (Rodrigues)."""
    angle = float(np.linalg.norm(turned)) or 1e-12
    x, y, z = turned / angle
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    return np.eye(3) + np.sin(angle) * cross + (1 - np.cos(angle)) * cross @ cross


def _projected(pose, centres, offsets):
    turn, shift, focal_px, lens, ink = _parts(pose)
    at = (centres + ink * offsets) @ turn[:, :2].T + shift
    return _through_lens(at, focal_px, lens)


def _residuals(many, centres, offsets, seen, long_side_px):
    """In units of what each is known to: the corners, then what is known beforehand."""
    rows = []
    for pose in many:
        beforehand = (
            (pose[6] - np.log(FOCAL_SHARE * long_side_px)) / FOCAL_SD,
            pose[7] / LENS_SD,
            (pose[8] - 1) / INK_SD,
        )
        corners = (_projected(pose, centres, offsets) - seen).ravel() / CORNER_PX
        rows.append(np.concatenate([corners, beforehand]))
    return np.array(rows)
