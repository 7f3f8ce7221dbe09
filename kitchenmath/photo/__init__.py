"""A board in a photo: each piece's visible sides, measured on a printed mat.

Nothing here loads OpenCV or Pillow before a photo is opened. All figures of its accuracy come
from rendered photos: no real tray has been measured against a calliper yet.
"""

from kitchenmath.photo.board import BoardPhoto, BoardPiece, measure_board
from kitchenmath.photo.evidence import BoardEvidence, board_evidence
from kitchenmath.photo.verdict import PhotoVerdict, judge_board, sizes_seen
from kitchenmath.photo.vision import NotHere
from kitchenmath.photo.with_hand_in import TrayForHandIn, tray_for_hand_in, tray_from_page

__all__ = [
    "BoardEvidence",
    "BoardPhoto",
    "BoardPiece",
    "NotHere",
    "PhotoVerdict",
    "TrayForHandIn",
    "board_evidence",
    "judge_board",
    "measure_board",
    "sizes_seen",
    "tray_for_hand_in",
    "tray_from_page",
]
