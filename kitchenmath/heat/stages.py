"""Pan, oven, board, fridge: a piece that moves while it is unevenly hot, and what its core does."""

from dataclasses import dataclass

import numpy as np

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.heat.cooked import Cooked
from kitchenmath.heat.pieces import celsius, check_piece, surface_at
from kitchenmath.heat.solid import Solid
from kitchenmath.heat.stepping import Way
from kitchenmath.heat.wet import SurfaceLaw, WetSurface
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import figures, say

__all__ = ["Stage", "cook"]

_READINGS = 60  # readings a stage, evenly spread
_WET_STEPS = 200  # steps through a wet stage: 0.002 K off at worst, see the tests
_SHORTEST = 1e-5  # Fourier number of the shortest stage along the shortest way


@dataclass(frozen=True)
class Stage:
    """One place that the piece is in, and for how long.

    Parameters
    ----------
    surroundings : Quantity [temperature]
        Of the air, the water, the fat, the pan.
    surface_coefficient : Quantity [W/m**2/K]
        0 for wrapped so well that nothing passes. See `surface_coefficient` for bands.
    duration : Quantity [time]
    wet : WetSurface, optional
        For a moist surface in air. Left out, the surface is taken as dry, or under water or fat,
        or in a bag.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    >>> oven = Stage(surroundings=Q_(180, "degC"), surface_coefficient=Q_(25, "W/m**2/K"),
    ...              duration=Q_(1, "h"), wet=WetSurface(steam=Q_(30, "percent")))
    >>> print(say(oven.settles_at, 3))
    73 °C
    """

    surroundings: Quantity
    surface_coefficient: Quantity
    duration: Quantity
    wet: WetSurface = None

    def __post_init__(self):
        surroundings_C = celsius(self.surroundings, "surroundings")
        duration_s = float(amount(self.duration, "s", "duration", above=0))
        if self.wet is not None and not isinstance(self.wet, WetSurface):
            raise WrongKind(
                f'wet: needs a WetSurface such as WetSurface(steam=Q_(30, "percent")), '
                f"and {self.wet!r} came."
            )
        if self.wet is not None and surroundings_C < 0:
            raise OutOfRange(
                "surroundings: a wet surface needs air of 0 °C or more, and "
                f"{figures(surroundings_C)} °C came."
            )
        law = SurfaceLaw(surroundings_C, surface_at(self.surface_coefficient), self.wet)
        object.__setattr__(self, "_duration_s", duration_s)
        object.__setattr__(self, "law", law)

    @property
    def settles_at(self):
        """Where the surface goes in the end [degC]: the surroundings, or lower when it is wet."""
        return Q_(self.law.settled_C(), "degC")


def cook(piece, start, stages):
    """Take a piece through one stage after another: core, surface and mean all along.

    Easily confused: the core goes on rising when it leaves the heat, because the outside is
    hotter. That rise is the carry-over.

    Parameters
    ----------
    piece : Piece
    start : Quantity [temperature]
    stages : list of Stage

    Returns
    -------
    Cooked

    Raises
    ------
    WrongKind
    OutOfRange

    Notes
    -----
    An estimate: let a probe decide. As mathematics, dry stages are exact for any shape, wet stages
    err by less than 0.005 K, and by 0.05 K in core and mean where the piece has ends. Out of it:
    drying, browning, melting, shrinking, drip.

    Examples
    --------
    A ball of meat in a moist oven: its surface stays near 73 °C, so the core rises by little.

    >>> from kitchenmath.heat import Piece
    >>> roast = Piece("sphere", diameter=Q_(120, "mm"), conductivity=Q_(0.48, "W/m/K"),
    ...               diffusivity=Q_(0.13, "mm**2/s"))
    >>> oven = Stage(Q_(180, "degC"), Q_(25, "W/m**2/K"), Q_(100, "min"),
    ...              wet=WetSurface(steam=Q_(30, "percent")))
    >>> board = Stage(Q_(22, "degC"), Q_(10, "W/m**2/K"), Q_(40, "min"))
    >>> done = cook(roast, start=Q_(5, "degC"), stages=[oven, board])
    >>> print(say(done.pulled, 3), "+", say(done.carry_over, 2))
    56.3 °C + 7.1 °C

    References
    ----------
    Carslaw and Jaeger (1959), 1.14-1.15; McGee, *On Food and Cooking* (2004): up to 10 °C.
    """
    check_piece(piece)
    start_C = celsius(start, "start")
    stages = _checked(piece, stages)
    if len(piece.halves) == 1:
        times_s, rows = _along_one_way(piece, start_C, stages)
    elif any(stage.wet is not None for stage in stages):
        times_s, rows = _cell_by_cell(piece, start_C, stages)
    else:
        times_s, rows = _as_product(piece, start_C, stages)
    return Cooked.from_rows(piece, start_C, stages, times_s, rows)


def _checked(piece, stages):
    """The stages as a list, each one possible for this piece."""
    stages = [stages] if isinstance(stages, Stage) else stages
    if (
        not isinstance(stages, list | tuple)
        or not stages
        or not all(isinstance(stage, Stage) for stage in stages)
    ):
        raise WrongKind(
            'stages: needs a list such as [Stage(Q_(180, "degC"), Q_(25, "W/m**2/K"), '
            f'Q_(1, "h"))], and {stages!r} came.'
        )
    shortest_s = _SHORTEST * piece.halves[0][1] ** 2 / piece.diffusivity_m2_s
    for stage in stages:
        if stage._duration_s < shortest_s:
            raise OutOfRange(
                f"stages: a stage of {say(stage.duration)} is too short to work out on this piece; "
                f"it needs at least {say(Q_(shortest_s, 's'), 2)}."
            )
    return stages


def _ways(piece, start_C):
    return [
        Way(power, half_m, piece.conductivity_W_mK, piece.diffusivity_m2_s, start_C)
        for power, half_m in piece.halves
    ]


def _along_one_way(piece, start_C, stages):
    """Times within each stage, and rows of core, surface and mean in °C."""
    (way,) = _ways(piece, start_C)
    times_s, rows = [], []
    for stage in stages:
        read_s = _even_times(stage)
        if stage.wet is None:
            law = stage.law
            rows.append(way.dry(law.air_C, law.coefficient_W_m2K, read_s))
        else:
            # Steps grow with time, as the first change is the fastest.
            steps_s = stage._duration_s * (np.arange(1, _WET_STEPS + 1) / _WET_STEPS) ** 3
            read = steps_s >= read_s[0]
            rows.append(way.wet(stage.law, steps_s, read_s[0])[:, read])
            read_s = steps_s[read]
        times_s.append(read_s)
    return times_s, rows


def _as_product(piece, start_C, stages):
    """The same for a body of several ways, each stage dry.

    The first stage fades from the start to its surroundings as a product of the ways. A later
    stage moves the surroundings by a step, which is one more product that starts as a whole; the
    earlier ones go on fading under the new surface. Their sum is exact.
    """
    before_C, products = start_C, []
    times_s, rows = [], []
    for stage in stages:
        law, read_s = stage.law, _even_times(stage)
        products.append((before_C - law.air_C, _ways(piece, 1.0)))
        before_C = law.air_C
        total = np.full((3, len(read_s)), law.air_C)
        for step_C, ways in products:
            faded = [way.dry(0.0, law.coefficient_W_m2K, read_s) for way in ways]
            # Nearest face: at the surface of the shortest way and the centre of the others.
            core = np.prod([each[0] for each in faded], axis=0)
            surface = faded[0][1] * np.prod([each[0] for each in faded[1:]], axis=0)
            mean = np.prod([each[2] for each in faded], axis=0)
            total += step_C * np.stack([core, surface, mean])
        times_s.append(read_s)
        rows.append(total)
    return times_s, rows


def _cell_by_cell(piece, start_C, stages):
    """The same for a body of several ways with a wet stage."""
    solid = Solid(piece.halves, piece.conductivity_W_mK, piece.diffusivity_m2_s, start_C)
    times_s = [_even_times(stage) for stage in stages]
    rows = [
        solid.pass_stage(stage.law, read_s) for stage, read_s in zip(stages, times_s, strict=True)
    ]
    return times_s, rows


def _even_times(stage):
    return stage._duration_s * np.arange(1, _READINGS + 1) / _READINGS
