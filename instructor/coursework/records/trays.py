"""Trays photographed at the station: evidence that stays with a student's practical mark.

Kept are a small copy of the photo with its outlines and what was measured on it, never the photo
itself. The file's name is the SHA-256 of the copy: the decision that gives the mark names it.
"""

import json
from dataclasses import dataclass

from coursework.errors import CourseError
from coursework.safe_files import digest, write_safely

__all__ = ["TRAYS", "Tray", "keep_tray", "trays_of"]

TRAYS = "trays"  # in the class's folder, below it one folder a student


@dataclass(frozen=True)
class Tray:
    """One tray as it was kept.

    Attributes
    ----------
    file : str
        SHA-256 of the picture.
    practical : str
        The practical mark that it is evidence of.
    sentences : tuple of str
        What the photo said.
    pieces : tuple of dict
        `number`, `width_mm`, `length_mm`, `width_within_mm`, `length_within_mm`, `doubts`.
    picture_jpeg : bytes
    """

    file: str
    practical: str
    sentences: tuple
    pieces: tuple
    picture_jpeg: bytes


def keep_tray(course, student, practical, found):
    """Keep a measured tray with a student.

    Parameters
    ----------
    course : Course
    student, practical : str
    found : BoardEvidence

    Returns
    -------
    str
        The SHA-256 of the picture, for the decision that rests on it.

    Raises
    ------
    CourseError
        When the photo was refused: it is evidence of nothing.
    """
    if found.board.refused:
        raise CourseError(f"photo: it is not measured, so it is not kept. {found.sentences[1]}")
    file = digest(found.small_jpeg)
    pieces = [
        {"number": piece.number, "width_mm": round(piece.width_mm, 3),
         "length_mm": round(piece.length_mm, 3),
         "width_within_mm": round(piece.width_within_mm, 3),
         "length_within_mm": round(piece.length_within_mm, 3), "doubts": list(piece.doubts)}
        for piece in found.board.pieces
    ]  # fmt: skip
    said = {"practical": practical, "sentences": list(found.sentences), "pieces": pieces}
    folder = course.folder / TRAYS / student
    write_safely(folder / f"{file}.jpg", found.small_jpeg)
    write_safely(folder / f"{file}.json", json.dumps(said, indent=1, ensure_ascii=False) + "\n")
    return file


def trays_of(course, student):
    """The trays that are kept with a student; what is damaged is left out.

    Parameters
    ----------
    course : Course
    student : str

    Returns
    -------
    list of Tray
    """
    found = []
    for file in sorted((course.folder / TRAYS / student).glob("*.json")):
        try:
            said, picture = json.loads(file.read_bytes()), file.with_suffix(".jpg").read_bytes()
            parts = said["practical"], tuple(said["sentences"]), tuple(said["pieces"])
        except (OSError, ValueError, KeyError, TypeError):
            continue
        found.append(Tray(file.stem, *parts, picture))
    return found
