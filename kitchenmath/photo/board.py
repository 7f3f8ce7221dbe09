"""One photo of the mat, measured: each piece's two visible sides, and what to doubt."""

from dataclasses import dataclass, replace

import numpy as np

from kitchenmath.photo import checks, doubts
from kitchenmath.photo.apart import boxes_apart, faces_in
from kitchenmath.photo.boxes import Box, fit_again, fit_box
from kitchenmath.photo.field import flat_field
from kitchenmath.photo.markers import find_markers
from kitchenmath.photo.opening import light, opened
from kitchenmath.photo.outlines import blobs
from kitchenmath.photo.pose import FEWEST, Camera, find_pose
from kitchenmath.photo.rims import rim_seen
from kitchenmath.photo.two_masks import doubtfulness, misfit_share, same_places
from kitchenmath.photo.uncertainty import within_mm

TALL_MM = 8.0  # a lower piece hides no mat 4 mm wide beside it


@dataclass(frozen=True)
class BoardPiece:
    """A piece on the mat.

    Attributes
    ----------
    number : int
        From 1, left to right in rows.
    width_mm, length_mm : float
        The shorter and the longer visible side: mean of opposite sides at half height.
    width_within_mm, length_within_mm : float
        Half of the 95 % interval.
    doubts : tuple of str
        "shape", "double", "edge"; a piece with one is shown and not counted.
    box : Box
    """

    number: int
    width_mm: float
    length_mm: float
    width_within_mm: float
    length_within_mm: float
    doubts: tuple
    box: Box

    @property
    def across_mm(self):
        """The side that runs more across the mat, with half of its interval.

        Chosen by how the piece happens to lie, as a cook takes one edge without looking.
        """
        if abs(np.cos(self.box.turn)) >= np.sqrt(0.5):
            return self.length_mm, self.length_within_mm
        return self.width_mm, self.width_within_mm


@dataclass(frozen=True)
class BoardPhoto:
    """What a photo of the mat shows.

    Attributes
    ----------
    pieces : tuple of BoardPiece
        All that were seen; none where the photo is refused.
    findings : tuple of Finding
    camera : Camera or None
    print_scale : float
    pixels : array of uint8
        The photo, upright and small.
    """

    pieces: tuple
    findings: tuple
    camera: Camera | None
    print_scale: float
    pixels: np.ndarray

    @property
    def refused(self):
        """Whether anything forbids measuring."""
        return any(finding.level == checks.REFUSE for finding in self.findings)

    @property
    def measured(self):
        """The pieces without a doubt."""
        return tuple(piece for piece in self.pieces if not piece.doubts)

    @property
    def clumps(self):
        """The pieces with one."""
        return tuple(piece for piece in self.pieces if piece.doubts)


def measure_board(photo, ruler_mm=None, usual_mm=()):
    """Measure every piece on the printed mat in one photo.

    Parameters
    ----------
    photo : bytes, str or Path
        JPEG or PNG.
    ruler_mm : tuple of float, optional
        The mat's two lines as a ruler shows them [mm]. A photo cannot show how large a page was
        printed: 3 % wrong is 0.3 mm on 10 mm, and nothing looks odd.
    usual_mm : sequence of tuple of float, optional
        (width, length) of a named cut: only to doubt a piece that is two or three of them.

    Returns
    -------
    BoardPhoto

    Raises
    ------
    Unreadable
    OutOfRange
    WrongKind
    NotHere

    Notes
    -----
    The markers give the phone's place and its lens; the field is laid flat; a box is fitted to
    each outline. The cut that was asked for never enters the fit: it would flatter the cook.
    A height is believed from the sides, helped by the rim of the upper face, and not reported.
    Tried on rendered photos only.
    """
    pixels = opened(photo)
    bright = light(pixels)
    scale, findings = checks.print_size(ruler_mm)
    markers = find_markers(pixels, bright.mean(axis=2))
    findings = [*findings, *checks.markers_found(markers)]
    if len(markers) < FEWEST:
        return BoardPhoto((), tuple(findings), None, scale, pixels)
    camera = find_pose(markers, pixels.shape[:2])
    findings += checks.view(markers, camera)
    if any(finding.level == checks.REFUSE for finding in findings):
        return BoardPhoto((), tuple(findings), camera, scale, pixels)
    pairs, depth = _fitted(flat_field(bright, camera), camera)
    findings += checks.graded("shadow", depth)
    if not pairs:
        findings.append(checks.Finding("nothing", checks.WARN, 0.0))
    refused = any(finding.level == checks.REFUSE for finding in findings)
    pieces = () if refused else _numbered(pairs, scale, usual_mm, depth)
    return BoardPhoto(pieces, tuple(findings), camera, scale, pixels)


def _fitted(field, camera):
    """Blobs with their boxes, told apart where they are several pieces; and the shadows."""
    lens_mm = camera.place_mm
    ways = [[(blob, fit_box(blob.points_mm, lens_mm)) for blob in found] for found in blobs(field)]
    seen, pieces = [], []
    for brighter, coloured in same_places(*ways):
        if len(brighter) == len(coloured) == 1:
            chosen = [min(brighter + coloured, key=misfit_share)]
            found = _told_apart(field, chosen, lens_mm)
        else:
            shown = [way for way in (brighter, coloured) if way]
            told = [(_told_apart(field, way, lens_mm), way) for way in shown]
            found, chosen = min(told, key=lambda each: doubtfulness(each[0]))
        seen += [blob for blob, _ in chosen]
        pieces += found
    return pieces, checks.shadow_depth(field, seen)


def _told_apart(field, pairs, lens_mm):
    """Each blob as the one piece that it is, or as several where several upper faces show."""
    return [piece for pair in pairs for piece in _pieces_in(field, *pair, lens_mm)]


def _pieces_in(field, blob, box, lens_mm):
    faces = faces_in(field, blob) if box.width_mm >= TALL_MM and not blob.cut_off else []
    if len(faces) < 2:
        return [(blob, _with_rim(field, blob, box, lens_mm))]
    found = boxes_apart(field, blob, faces, lens_mm)
    if not any(piece.sound for piece in found):
        return [(replace(blob, faces=len(faces)), box)]
    # Its hollows are gaps between pieces: what is left to doubt is how each box fits.
    alone = replace(blob, solidity=1.0)
    return [
        (replace(alone, points_mm=each.points_mm, faces=1 if each.sound else len(faces)), each.box)
        for each in found
    ]


def _with_rim(field, blob, box, lens_mm):
    """The box, set by the rim of its upper face too where that is seen and agrees."""
    rim = rim_seen(field, box, lens_mm)
    if not len(rim) or doubts.of_one(blob, box):
        return box
    again = fit_again(box, blob.points_mm, rim, lens_mm)
    return box if doubts.of_one(blob, again) else again


def _numbered(pairs, scale, usual_mm, depth):
    """Pieces in rows of the mat, true to the ruler, with all their doubts."""
    pairs = sorted(pairs, key=lambda pair: (round(pair[1].middle_mm[1] / 25), pair[1].middle_mm[0]))
    pieces = [_piece(place, pair, scale, depth) for place, pair in enumerate(pairs, 1)]
    single = [piece for piece in pieces if not piece.doubts]
    sizes = np.array([(piece.width_mm, piece.length_mm) for piece in single])
    double = {
        piece.number
        for piece, yes in zip(single, doubts.doubles(sizes, usual_mm), strict=True)
        if yes
    }
    return tuple(
        replace(piece, doubts=(doubts.DOUBLE,)) if piece.number in double else piece
        for piece in pieces
    )


def _piece(number, pair, scale, depth):
    blob, box = pair
    width, length = scale * box.width_mm, scale * box.length_mm
    return BoardPiece(
        number,
        width,
        length,
        within_mm(width, width, box.width_sd_mm, depth),
        within_mm(length, width, box.length_sd_mm, depth),
        doubts.of_one(blob, box),
        box,
    )
