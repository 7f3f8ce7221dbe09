"""How fast `cook` is, beside scipy's solve_ivp on a mesh that errs no less: ratios from one run.

    python -m tests.measure.heat_speed

A dry and a wet cook of two stages each (oven, rest) on the three one-way shapes. The rival is
LSODA on 100 cells, banded, to 1e-6, with the same readings and the same surface balance. What
counts is the ratio; milliseconds belong to the machine. The last column is the largest error of
each against the exact series (dry), or against 3200 steps (wet), at all readings of the oven.
"""

import statistics
import time

import numpy as np
import scipy.integrate

from kitchenmath.heat import Piece, Stage, WetSurface, cook, solid, temperature_after
from kitchenmath.heat.stepping import Way
from kitchenmath.units.registry import Q_

CELLS, ROUNDS = 100, 15
SHAPES = {
    "slab": (0, Piece("slab", thickness=Q_(50, "mm"), conductivity=Q_(0.48, "W/m/K"),
                      diffusivity=Q_(0.13, "mm**2/s"))),
    "cylinder": (1, Piece("cylinder", diameter=Q_(80, "mm"), conductivity=Q_(0.48, "W/m/K"),
                          diffusivity=Q_(0.13, "mm**2/s"))),
    "sphere": (2, Piece("sphere", diameter=Q_(120, "mm"), conductivity=Q_(0.48, "W/m/K"),
                        diffusivity=Q_(0.13, "mm**2/s"))),
}  # fmt: skip
REST = Stage(Q_(22, "degC"), Q_(10, "W/m**2/K"), Q_(30, "min"))


def oven(wet):
    return Stage(Q_(180, "degC"), Q_(25, "W/m**2/K"), Q_(60, "min"), wet=wet)


def solver(power, piece, stages, times_s):
    """Rows of core, surface and mean at the times of each stage, by solve_ivp on a mesh."""
    edges, width = np.linspace(0, 1, CELLS + 1), 1 / CELLS
    volumes, half_m = np.diff(edges ** (power + 1)) / (power + 1), piece.halves[0][1]
    gain, pace = half_m * width / 2 / 0.48, 0.13e-6 / half_m**2
    values, rows = np.full(CELLS, 5.0), []
    for stage, read_s in zip(stages, times_s, strict=True):
        law = stage.law

        def change(_, now, law=law):
            flux = np.zeros(CELLS + 1)
            flux[1:-1] = edges[1:-1] ** power * np.diff(now) / width
            flux[-1] = 2 * (law.surface_C(float(now[-1]), gain, float(now[-1])) - now[-1]) / width
            return pace * np.diff(flux) / volumes

        found = scipy.integrate.solve_ivp(
            change, (0, read_s[-1]), values, "LSODA", t_eval=read_s, rtol=1e-6, atol=1e-6,
            lband=1, uband=1,
        ).y  # fmt: skip
        surface = [law.surface_C(float(end), gain, float(end)) for end in found[-1]]
        rows.append(np.stack([found[0], surface, volumes @ found / volumes.sum()]))
        values = found[:, -1]
    return rows


def milliseconds(work):
    """The middle of several runs, after one that does not count."""
    work()
    taken = []
    for _ in range(ROUNDS):
        begin = time.perf_counter()
        work()
        taken.append(1000 * (time.perf_counter() - begin))
    return statistics.median(taken)


def reference(power, piece, stage, read_s):
    """The oven's readings, exact or in very fine steps."""
    if stage.wet is None:
        return np.stack([
            temperature_after(piece, Q_(5, "degC"), stage.surroundings, stage.surface_coefficient,
                              Q_(read_s, "s"), place).magnitude
            for place in ("centre", "surface", "mean")
        ])  # fmt: skip
    steps_s = stage._duration_s * (np.arange(1, 3201) / 3200) ** 3
    rows = Way(power, piece.halves[0][1], 0.48, 0.13e-6, 5.0).wet(stage.law, steps_s, read_s[0])
    return rows[:, 15::16][:, -len(read_s) :]


def wet_brick():
    """A wet terrine in an oven: milliseconds, and how far 28 cells a way and more steps move it."""
    piece = Piece("brick", length=Q_(160, "mm"), width=Q_(100, "mm"), thickness=Q_(50, "mm"),
                  conductivity=Q_(0.48, "W/m/K"), diffusivity=Q_(0.13, "mm**2/s"))  # fmt: skip
    stages = [oven(WetSurface(steam=Q_(30, "percent")))]
    ours = milliseconds(lambda: cook(piece, Q_(5, "degC"), stages))
    coarse = cook(piece, Q_(5, "degC"), stages)
    solid._CELLS, solid._FIRST_STEPS = 28, 48
    finer = milliseconds(lambda: cook(piece, Q_(5, "degC"), stages))
    fine = cook(piece, Q_(5, "degC"), stages)
    apart = [
        np.abs(getattr(coarse, part).magnitude - getattr(fine, part).magnitude).max()
        for part in ("core", "mean")
    ]
    print(f"wet brick {ours:15.0f} ms, 28 cells {finer:.0f} ms; "
          f"core {apart[0]:.3f} K apart, mean {apart[1]:.3f} K")  # fmt: skip


def main():
    """Print one line for each shape and surface."""
    print(
        f"{'':16}{'cook ms':>9}{'solve_ivp ms':>14}{'ratio':>8}{'error K':>10}{'its error K':>13}"
    )
    for wet in (None, WetSurface(steam=Q_(30, "percent"))):
        for shape, (power, piece) in SHAPES.items():
            stages = [oven(wet), REST]
            done = cook(piece, Q_(5, "degC"), stages)
            time_s = 60 * done.time.magnitude[1:]
            inside = time_s <= 3600 * (1 + 1e-12)
            times_s = [np.minimum(time_s[inside], 3600), np.minimum(time_s[~inside] - 3600, 1800)]
            ours = milliseconds(lambda p=piece, s=stages: cook(p, Q_(5, "degC"), s))
            theirs = milliseconds(lambda w=power, p=piece, s=stages, t=times_s: solver(w, p, s, t))
            exact = reference(power, piece, stages[0], times_s[0])
            own = np.stack([part.magnitude for part in (done.core, done.surface, done.mean)])
            own = own[:, 1:][:, inside]
            rival = solver(power, piece, stages, times_s)[0]
            errors = [np.abs(found - exact).max() for found in (own, rival)]
            label = f"{'wet' if wet else 'dry'} {shape}"
            print(
                f"{label:16}{ours:9.2f}{theirs:14.2f}{ours / theirs:8.3f}"
                f"{errors[0]:10.5f}{errors[1]:13.5f}"
            )
    wet_brick()


if __name__ == "__main__":
    main()
