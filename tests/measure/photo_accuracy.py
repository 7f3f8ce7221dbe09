"""How near a photo of the mat comes to the truth: the whole table, failures included.

    python tests/measure/photo_accuracy.py             # rendered trays, seeds never tuned on
    python tests/measure/photo_accuracy.py 90000       # others still
    python tests/measure/photo_accuracy.py --trays DIR # real photos with calliper readings

A folder of real trays holds photos and `readings.csv`: photo, piece, width_mm, length_mm,
line_1_mm, line_2_mm (see instructor/guide/board-photos.md). Until somebody sends one, every
figure that the kit states is called rendered.
"""

import csv
import sys
import time
from collections import defaultdict
from pathlib import Path

import numpy as np

KIT = Path(__file__).parents[2]
sys.path[:0] = [str(KIT), str(KIT / "instructor")]

from kitchenmath.photo import measure_board  # noqa: E402
from tests.helpers.rendered import photo  # noqa: E402
from tests.helpers.scored import Score  # noqa: E402
from tests.helpers.trays import CUTS, HARD_LIGHT, pairs, tray  # noqa: E402

FRESH = 81_000  # the method was set on seeds below 30,000
FOODS = ("carrot", "potato", "courgette")
BARS_MM = {
    "dice 3": 0.35, "dice 5": 0.35, "dice 10": 0.40, "dice 20": 0.60,
    "stick 3 x 50": 0.30, "stick 5 x 50": 0.30,
}  # fmt: skip
RULED = (100.0, 100.0)
HEAD = (
    f"{'cut':13} {'food':10} {'true':>4} {'miss':>4} {'flag':>4} {'false':>5} "
    f"{'width bias':>10} {'95 %':>5} {'length bias':>11} {'95 %':>5} {'covered':>7} {'s':>5}"
)


def measured(scene, usual=()):
    """The board of a scene, and the processor seconds that it took."""
    data = photo(scene)
    start = time.process_time()
    board = measure_board(data, RULED, usual)
    return board, time.process_time() - start


def line(name, food, score, seconds):
    """One row of the table."""
    found = score.figures()
    return (
        f"{name:13} {food:10} {score.true:4} {score.missed:4} {score.flagged:4} {score.false:5} "
        f"{found['width bias']:+10.2f} {found['width 95 %']:5.2f} {found['length bias']:+11.2f} "
        f"{found['length 95 %']:5.2f} {100 * found['covered']:6.0f}% {seconds:5.1f}"
    )


def single_pieces(seed, foods, light=None):
    """Trays of single pieces, one photo for each cut and food."""
    everything = Score()
    for place, cut in enumerate(CUTS):
        of_cut = Score()
        for number, food in enumerate(foods):
            scene = tray(seed + 100 * place + number, cut, food, **(light or {}))
            board, seconds = measured(scene)
            score = Score()
            for each in (score, of_cut, everything):
                each.add(scene, board)
            print(line(cut, food, score, seconds), *reasons(board), flush=True)
        width = of_cut.figures()["width 95 %"]
        print(f"  {cut}: width within {width:.2f} mm, the bar is {BARS_MM[cut]:.2f} mm")
    print(line("all", "", everything, 0), f"  refused: {everything.refused}\n", flush=True)


def reasons(board):
    """What was found to say about a photo."""
    return [f"{finding.about}:{finding.level}" for finding in board.findings]


def touching(seed):
    """Pairs that touch: how many are counted as one sound piece."""
    print("pairs that touch: seen as one piece without a doubt")
    for cut in ("dice 5", "dice 10", "stick 5 x 50"):
        (width, length, _), _, _ = CUTS[cut]
        for kind in ("offset", "corner", "flush"):
            scene = pairs(seed, cut, "carrot", kind)
            board, _ = measured(scene, [(width, length)])
            print(
                f"  {cut:13} {kind:7} {len(scene.pieces) // 2:3} pairs, {len(board.clumps):3} "
                f"flagged, {len(board.measured):3} not",
                *reasons(board),
                flush=True,
            )


def real_trays(folder):
    """Real photos against callipers; pieces are numbered as the picture of the command shows."""
    rows = defaultdict(list)
    with (folder / "readings.csv").open(encoding="utf-8-sig") as file:
        for row in csv.DictReader(file):
            rows[row["photo"], float(row["line_1_mm"]), float(row["line_2_mm"])].append(row)
    off = []
    for (name, *lines), pieces in rows.items():
        board = measure_board(folder / name, tuple(lines))
        found = {piece.number: piece for piece in board.measured}
        seen = [(found[int(row["piece"])], row) for row in pieces if int(row["piece"]) in found]
        print(f"{name}: {len(seen)} of {len(pieces)} read pieces measured", *reasons(board))
        for piece, row in seen:
            true = sorted((float(row["width_mm"]), float(row["length_mm"])))
            off += [
                (piece.width_mm - true[0], piece.width_within_mm),
                (piece.length_mm - true[1], piece.length_within_mm),
            ]
    if off:
        errors, within = np.array(off).T
        print(
            f"{len(errors)} sides: bias {errors.mean():+.2f} mm, 95 % within "
            f"{np.percentile(np.abs(errors), 95):.2f} mm, covered "
            f"{100 * np.mean(np.abs(errors) <= within):.0f} %"
        )


def main(words):
    """Print what was asked for."""
    if words[:1] == ["--trays"]:
        return real_trays(Path(words[1]))
    seed = int(words[0]) if words else FRESH
    print(f"Rendered, seeds from {seed}, 3 megapixels. mm; s: processor seconds a photo.\n{HEAD}")
    single_pieces(seed, FOODS)
    print("beetroot")
    single_pieces(seed + 1000, ("beetroot",))
    print("hard near lamp")
    single_pieces(seed + 2000, ("carrot", "beetroot"), HARD_LIGHT)
    return touching(seed + 3000)


if __name__ == "__main__":
    main(sys.argv[1:])
