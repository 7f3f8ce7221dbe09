"""A photographed tray as evidence: table, picture and verdict from the bytes of one photo."""

from dataclasses import dataclass

from kitchenmath.cuts import cut_named
from kitchenmath.errors import KitchenError
from kitchenmath.photo.board import BoardPhoto, measure_board
from kitchenmath.photo.picture import outlined, small_copy
from kitchenmath.photo.verdict import PhotoVerdict, against, judge_board, usual_sizes_mm
from kitchenmath.photo.words import counted, finding_in_words, table_lines


@dataclass(frozen=True)
class BoardEvidence:
    """What a photo shows, ready for a reader.

    Attributes
    ----------
    board : BoardPhoto
    verdict : PhotoVerdict or None
        None where no cut was named, or where nothing can be said.
    table : tuple of str
        Lines of equal columns.
    picture_png : bytes
    small_jpeg : bytes
        The same picture, small enough to go with a hand-in or into a class's folder.
    sentences : tuple of str
        Count, verdict, what to doubt; one each.
    """

    board: BoardPhoto
    verdict: PhotoVerdict | None
    table: tuple
    picture_png: bytes
    small_jpeg: bytes
    sentences: tuple


def board_evidence(photo, cut=None, tolerance=None, ruler_mm=None):
    """Measure a photo of the mat, and judge its pieces against a cut.

    Parameters
    ----------
    photo : bytes, str or Path
    cut : str or Cut, optional
    tolerance : Quantity [length or percent], optional
        Half the width of the band; else 15 % of the size.
    ruler_mm : tuple of float, optional
        The mat's two lines as a ruler shows them [mm].

    Returns
    -------
    BoardEvidence

    Raises
    ------
    Unreadable
    OutOfRange
    WrongKind
    UnknownName
    NotHere
    """
    board = measure_board(photo, ruler_mm, usual_sizes_mm(cut) if cut else ())
    verdict, said = _judged(board, cut, tolerance)
    sentences = [counted(board), *said, *map(finding_in_words, board.findings)]
    table = () if board.refused else tuple(table_lines(board))
    pictures = outlined(board), small_copy(board)
    return BoardEvidence(board, verdict, table, *pictures, tuple(sentences))


def _judged(board, cut, tolerance):
    if cut is None or board.refused:
        return None, []
    try:
        verdict = judge_board(board, cut, tolerance)
    except KitchenError as nothing_to_say:
        if len(board.measured) >= 2:  # then it is the question that is wrong, not the photo
            raise
        return None, [str(nothing_to_say)]
    return verdict, [f"Judged as {cut_named(cut).name}: {against(verdict)}.", verdict.words]
