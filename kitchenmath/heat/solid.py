"""A brick or a cylinder with ends whose moist surface evaporates: one way after the other.

The faces settle at different temperatures, edges lowest, so no product of one-way series holds.
The body is cut into cells from the centre to the faces, finer towards them. Along each way the
cells pass heat by the exact exponential of that way's exchange, for any length of step; the ways
take turns by halves (first, second, third, second, first), which errs with the square of the step.
Through a face the flux is taken as a straight line in time, from the surface's balance at the start
of the step to that at its end.
"""

import numpy as np

_CELLS = 20  # from the centre to each face: 0.05 K off at worst in core and mean, see the tests
_FIRST_STEPS = 12  # within the first reading, growing, as the first change is the fastest


class Solid:
    """The temperature in an eighth of a brick, or in the upper half of a cylinder's section."""

    def __init__(self, halves, conductivity_W_mK, diffusivity_m2_s, start_C):
        self.ways = [_Cells(power, half_m, conductivity_W_mK, diffusivity_m2_s)
                     for power, half_m in halves]  # fmt: skip
        self.cells_C = np.full([_CELLS] * len(halves), float(start_C))
        self.faces_C = [np.take(self.cells_C, -1, axis) for axis in range(len(halves))]

    def pass_stage(self, law, times_s):
        """Pass a stage; rows of core, surface and mean at each of these even times."""
        apart_s = float(times_s[0])
        growing_s = np.diff(apart_s * (np.arange(_FIRST_STEPS + 1) / _FIRST_STEPS) ** 2)
        rows = []
        for place in range(len(times_s)):
            for step_s in growing_s if place == 0 else [apart_s]:
                self._step(law, float(step_s))
            rows.append(self._row())
        return np.array(rows).T

    def _step(self, law, step_s):
        last = len(self.ways) - 1
        for axis in [*range(last), last, *reversed(range(last))]:
            self._along(axis, law, step_s if axis == last else step_s / 2)

    def _along(self, axis, law, step_s):
        """One way's exchange for a while, all its rows of cells at once."""
        way = self.ways[axis]
        passed, by_old, by_new = way.over(step_s)
        cells = np.moveaxis(self.cells_C, axis, 0)
        shape, cells = cells.shape, cells.reshape(_CELLS, -1)
        faces = self.faces_C[axis].reshape(-1)
        # The flux at the start, from the surface as it is now, between its cell and the air.
        faces = law.surfaces_C(cells[-1], way.gain_K_m2_W, faces)
        flux = (faces - cells[-1]) / way.gain_K_m2_W
        cells = passed @ cells + np.outer(by_old, flux)
        # The flux at the end counts within the step as well, and the surface it makes sets it.
        gain = by_new[-1] + way.gain_K_m2_W
        faces = law.surfaces_C(cells[-1], gain, faces)
        cells = cells + np.outer(by_new, (faces - cells[-1]) / gain)
        self.cells_C = np.moveaxis(cells.reshape(shape), 0, axis)
        self.faces_C[axis] = faces.reshape(self.faces_C[axis].shape)

    def _row(self):
        """Core, middle of the nearest face, and mean, of the cells as they are."""
        core, mean = self.cells_C, self.cells_C
        for way in self.ways[::-1]:
            core, mean = core @ way.centre, mean @ way.shares
        surface = self.faces_C[0]
        for way in self.ways[:0:-1]:
            surface = surface @ way.centre
        return float(core), float(surface), float(mean)


class _Cells:
    """The cells of one way: their exchange as waves that fade, and what a flux adds to them."""

    def __init__(self, power, half_m, conductivity_W_mK, diffusivity_m2_s):
        # The places of the walls: a sine and a straight line, so that the last cell is a sixth of
        # the first.
        even = np.arange(_CELLS + 1) / _CELLS
        walls_m = half_m * (0.8 * np.sin(np.pi / 2 * even) + 0.2 * even)
        areas = walls_m**power
        volumes = np.diff(walls_m ** (power + 1)) / (power + 1)
        middles_m = (walls_m[1:] + walls_m[:-1]) / 2
        passing = diffusivity_m2_s * areas[1:-1] / np.diff(middles_m)
        exchange = np.zeros((_CELLS, _CELLS))
        cells = np.arange(_CELLS - 1)
        exchange[cells, cells + 1] = exchange[cells + 1, cells] = passing
        exchange -= np.diag(exchange.sum(axis=1))
        root = np.sqrt(volumes)
        self.paces_per_s, waves = np.linalg.eigh(exchange / np.outer(root, root))
        self.paces_per_s = np.minimum(self.paces_per_s, 0.0)
        self.out, self.into = waves / root[:, None], waves.T * root
        fed = np.zeros(_CELLS)
        fed[-1] = diffusivity_m2_s / conductivity_W_mK * areas[-1] / volumes[-1]
        self.fed = self.into @ fed
        self.gain_K_m2_W = (half_m - middles_m[-1]) / conductivity_W_mK
        self.shares = volumes / volumes.sum()
        # Level in the middle: a parabola through the two first cells.
        near, far = middles_m[:2] ** 2
        self.centre = np.zeros(_CELLS)
        self.centre[:2] = far / (far - near), -near / (far - near)
        self.kept = {}

    def over(self, step_s):
        """What a step makes of the cells, and of a flux at its start and at its end [K m2/W]."""
        if step_s not in self.kept:
            fades = self.paces_per_s * step_s
            faded, old, new = np.exp(fades), *_line(fades)
            self.kept[step_s] = (
                (self.out * faded) @ self.into,
                self.out @ (step_s * old * self.fed),
                self.out @ (step_s * new * self.fed),
            )
        return self.kept[step_s]


def _line(fades):
    """What is left at the end of a step of a feed that falls from 1 to 0, and of one that rises.

    The integrals of (1 - t) e^(z (1 - t)) and of t e^(z (1 - t)) from 0 to 1, for z below nought.
    """
    slow = np.abs(fades) < 1e-3
    z = np.where(slow, -1.0, fades)
    whole, rising = np.expm1(z) / z, (np.expm1(z) - z) / z**2
    rising = np.where(slow, 0.5 + fades / 6 + fades**2 / 24, rising)
    whole = np.where(slow, 1 + fades / 2 + fades**2 / 6, whole)
    return whole - rising, rising
