"""What an estimate found against the truth of a scene: matched by place, then counted."""

from dataclasses import dataclass, field

import numpy as np

NEAR = 0.6  # of a piece's length, at least 3 mm: farther away, a find is no find of it


@dataclass
class Score:
    """Counts and errors over scenes.

    Attributes
    ----------
    errors : list of tuple
        (width error, length error, width's interval, length's interval) of each trusted piece.
    true, missed, flagged, false : int
        True pieces; those never seen; those seen with a doubt; trusted finds of nothing.
    """

    errors: list = field(default_factory=list)
    true: int = 0
    missed: int = 0
    flagged: int = 0
    false: int = 0
    refused: int = 0

    def add(self, scene, board):
        """Count one scene.

        Parameters
        ----------
        scene : Scene
        board : BoardPhoto
        """
        self.true += len(scene.pieces)
        self.refused += board.refused
        taken = set()
        for piece in scene.pieces:
            near = max(3.0, NEAR * piece.width)
            # The ends of a stick drift along it; a look at the side's middle is enough.
            places = [
                (np.hypot(*(found.box.middle_mm - [piece.x, piece.y])), found)
                for found in board.pieces
                if found.number not in taken
            ]
            apart, found = min(places, key=lambda each: each[0], default=(np.inf, None))
            if apart > near:
                self.missed += 1
                continue
            taken.add(found.number)
            if found.doubts:
                self.flagged += 1
                continue
            self.errors.append(
                (found.width_mm - piece.width, found.length_mm - piece.length,
                 found.width_within_mm, found.length_within_mm)
            )  # fmt: skip
        self.false += sum(found.number not in taken and not found.doubts for found in board.pieces)

    def figures(self):
        """Bias and the 95th percentile of width, length and both [mm], and the share covered.

        Returns
        -------
        dict of str to float
        """
        if not self.errors:
            return dict.fromkeys(
                ("width bias", "width 95 %", "length bias", "length 95 %", "sides 95 %", "covered"),
                np.nan,
            )
        off = np.array(self.errors)
        covered = np.abs(off[:, :2]) <= off[:, 2:]
        return {
            "width bias": float(off[:, 0].mean()),
            "width 95 %": float(np.percentile(np.abs(off[:, 0]), 95)),
            "length bias": float(off[:, 1].mean()),
            "length 95 %": float(np.percentile(np.abs(off[:, 1]), 95)),
            "sides 95 %": float(np.percentile(np.abs(off[:, :2]), 95)),
            "covered": float(covered.mean()),
        }
