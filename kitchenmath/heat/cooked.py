"""What comes out of `cook`: readings along the way, the peak after the heat, the cautions."""

from dataclasses import dataclass

import numpy as np

from kitchenmath.errors import OutOfRange
from kitchenmath.numeric.roots import bisect
from kitchenmath.units.door import amount
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import figures, say

__all__ = ["Cooked"]

ESTIMATE = "These times are an estimate: a probe in the thickest part decides."
# An unwrapped surface in air; water, fat and pans pass far more heat (Çengel's bands, see
# surface_coefficients.csv).
_AIR_AT_MOST_W_M2K = 100
_WARM_C = 60.0
# US Food Code 3-401.11 in °C: fish and whole cuts; ground or injected meat; poultry.
_WHOLE_CUTS_C, _GROUND_C, _POULTRY_C = 63.0, 68.0, 74.0


@dataclass(frozen=True)
class Cooked:
    """A piece's way through its stages. All times count from the start of the first stage.

    Parameters
    ----------
    time : Quantity [min], array
    core, surface, mean : Quantity [degC], array
        At those times. For a body with ends, the surface is the middle of the nearest face.
    stage_ends : Quantity [min], array
    cautions : tuple of str
        What the model leaves out, and what the food code asks for. Show them beside the numbers.
    heat_ends : int
        The reading at which the piece leaves the last stage that heats it; -1 where none does.
    """

    time: Quantity
    core: Quantity
    surface: Quantity
    mean: Quantity
    stage_ends: Quantity
    cautions: tuple
    heat_ends: int

    @classmethod
    def from_rows(cls, piece, start_C, stages, times_s, rows):
        """Put the readings of all stages in a row behind the start."""
        ends_s = np.cumsum([stage._duration_s for stage in stages])
        begins_s = np.concatenate([[0.0], ends_s[:-1]])
        time_s = np.concatenate(
            [[0.0], *(begin + time for begin, time in zip(begins_s, times_s, strict=True))]
        )
        core_C, surface_C, mean_C = np.concatenate([np.full((3, 1), start_C), *rows], axis=1)
        heat_ends = _last_heat(start_C, stages, rows)
        return cls(
            Q_(time_s / 60, "min"),
            Q_(core_C, "degC"),
            Q_(surface_C, "degC"),
            Q_(mean_C, "degC"),
            Q_(ends_s / 60, "min"),
            _cautions(stages, core_C, heat_ends),
            heat_ends,
        )

    @property
    def leaves_heat(self):
        """When the last stage that heats the piece ends [min]."""
        return Q_(float(self.time.magnitude[self._heat_ends()]), "min")

    @property
    def pulled(self):
        """The core at that moment [degC]."""
        return Q_(float(self.core.magnitude[self._heat_ends()]), "degC")

    @property
    def peak(self):
        """The highest that the core comes to from then on [degC]."""
        return Q_(self._peak()[1], "degC")

    @property
    def peak_after(self):
        """How long after leaving the heat the core peaks [min]."""
        return Q_(self._peak()[0] - self.leaves_heat.magnitude, "min")

    @property
    def carry_over(self):
        """By how much the core rises after it left the heat [delta_degC]."""
        return Q_(self._peak()[1] - self.pulled.magnitude, "delta_degC")

    def when(self, core):
        """When the core first has a temperature.

        Parameters
        ----------
        core : Quantity [temperature]

        Returns
        -------
        Quantity [min]
            Between readings by a curve through the four nearest.

        Raises
        ------
        WrongKind
        OutOfRange
            When it never does.
        """
        core_C = amount(core, "degC", "core")
        minutes, above = self.time.magnitude, self.core.magnitude - core_C
        crossed = np.flatnonzero(above[:-1] * above[1:] <= 0)
        if not len(crossed):
            lowest, highest = self.core.magnitude.min(), self.core.magnitude.max()
            raise OutOfRange(
                f"core: it goes from {figures(lowest, 3)} to {figures(highest, 3)} °C and never "
                f"to {say(core)}; make a stage longer or hotter."
            )
        return Q_(_crossing(minutes, above, int(crossed[0])), "min")

    def _heat_ends(self):
        if self.heat_ends < 0:
            raise OutOfRange("stages: none of them is hotter than the piece, so none heats it.")
        return self.heat_ends

    def _peak(self):
        """Minute and °C of the core's peak after the heat: a parabola through three readings."""
        first = self._heat_ends()
        minutes, core_C = self.time.magnitude[first:], self.core.magnitude[first:]
        if len(core_C) == 1:
            raise OutOfRange(
                'stages: nothing follows the heat; add a rest such as Stage(Q_(22, "degC"), '
                'Q_(10, "W/m**2/K"), Q_(20, "min")).'
            )
        top = int(core_C.argmax())
        if top in (0, len(core_C) - 1):
            return float(minutes[top]), float(core_C[top])
        apart = minutes[top - 1 : top + 2] - minutes[top]
        bend, tilt, height = np.polyfit(apart, core_C[top - 1 : top + 2], 2)
        shift = -tilt / (2 * bend) if bend < 0 else 0.0
        return float(minutes[top] + shift), float(height + tilt * shift / 2)


def _crossing(minutes, above, before):
    """Where a curve through four readings is nought, in the gap behind reading `before`."""
    first = min(max(before - 1, 0), len(minutes) - 4)
    low, high = minutes[before], minutes[before + 1]
    near = slice(first, first + 4)
    curve = np.polyfit(minutes[near] - low, above[near], 3)
    ends_above = above[before + 1] > above[before]
    crossing = bisect(
        lambda minute: (np.polyval(curve, minute) > 0) == ends_above, 0.0, float(high - low)
    )
    return float(low + crossing)


def _last_heat(start_C, stages, rows):
    """The reading at the end of the last stage whose surroundings are above the piece's mean."""
    reading, heat_ends, mean_C = 0, -1, start_C
    for stage, stage_rows in zip(stages, rows, strict=True):
        reading += stage_rows.shape[1]
        if stage.law.air_C > mean_C:
            heat_ends = reading
        mean_C = stage_rows[2, -1]
    return heat_ends


def _cautions(stages, core_C, heat_ends):
    """The sentences that belong beside these numbers."""
    said = [ESTIMATE]
    if any(_dry_in_hot_air(stage) for stage in stages):
        said.append(
            "A stage in hot air was worked out with a dry surface. A moist surface stays near the "
            "wet-bulb temperature, so a real joint heats far more slowly and carries over far "
            "less: give the stage wet=WetSurface(...) unless the piece is wrapped or crusted."
        )
    if any(stage.wet is not None for stage in stages):
        said.append(
            "The wet surface was taken to stay wet. Where it dries and browns it gets hotter, and "
            "the core comes sooner."
        )
    if 0 <= heat_ends < len(core_C) - 1 and core_C[-1] >= core_C.max():
        said.append("The core was still rising when the last stage ended: its peak is higher yet.")
    if heat_ends >= 0 and core_C.max() < _POULTRY_C:
        said.append(
            f"The core comes to {figures(core_C.max(), 3)} °C. The US Food Code (3-401.11) "
            f"asks for {_WHOLE_CUTS_C:.0f} °C for 15 seconds in fish and whole cuts, "
            f"{_GROUND_C:.0f} °C for 17 seconds in ground or injected meat and "
            f"{_POULTRY_C:.0f} °C in poultry; your local food code decides, and a menu that "
            "serves less needs its consent."
        )
    return tuple(said)


def _dry_in_hot_air(stage):
    law = stage.law
    return not law.wet and law.air_C > _WARM_C and 0 < law.coefficient_W_m2K <= _AIR_AT_MOST_W_M2K
