"""A brick or a cylinder with ends whose moist surface evaporates: cell by cell, in short steps.

The faces settle at different temperatures, edges lowest, so no product of one-way series holds.
The body is cut into cells from the centre to the faces, and each step passes heat between
neighbours and through the faces, where the surface's balance is solved anew.
"""

import math

import numpy as np

_CELLS = 16  # from the centre to each face: 0.1 K off at worst, see the tests


class Solid:
    """The temperature in an eighth of a brick, or in the upper half of a cylinder's section."""

    def __init__(self, halves, conductivity_W_mK, diffusivity_m2_s, start_C):
        self.conductivity_W_mK, self.diffusivity_m2_s = conductivity_W_mK, diffusivity_m2_s
        self.cells_C = np.full([_CELLS] * len(halves), float(start_C))
        self.widths_m = [half_m / _CELLS for _, half_m in halves]
        edges = np.arange(_CELLS + 1) / _CELLS
        # Along each way, in cells: the area of each wall, and the volume of each cell.
        self.areas = [edges**power for power, _ in halves]
        self.volumes = [np.diff(edges ** (power + 1)) * _CELLS / (power + 1) for power, _ in halves]
        self.faces_C = [np.take(self.cells_C, -1, axis) for axis in range(len(halves))]

    def pass_stage(self, law, times_s):
        """Pass a stage; rows of core, surface and mean at each of these even times."""
        apart_s = float(times_s[0])
        # Three quarters of the longest step that stays stable; a cell at a face passes three
        # times as much as one wall.
        fastest_per_s = self.diffusivity_m2_s * sum(3 / width**2 for width in self.widths_m)
        steps = math.ceil(apart_s * fastest_per_s / 0.75)
        rows = []
        for _ in times_s:
            for _ in range(steps):
                self._step(law, apart_s / steps)
            rows.append(self._row())
        return np.array(rows).T

    def _step(self, law, step_s):
        gained = np.zeros_like(self.cells_C)
        for axis, width_m in enumerate(self.widths_m):
            cells = np.moveaxis(self.cells_C, axis, -1)
            gain = 0.5 * width_m / self.conductivity_W_mK
            face_C = law.surfaces_C(cells[..., -1], gain, self.faces_C[axis])
            self.faces_C[axis] = face_C
            walls = np.zeros((*cells.shape[:-1], _CELLS + 1))
            walls[..., 1:-1] = np.diff(cells, axis=-1) * self.areas[axis][1:-1]
            walls[..., -1] = 2 * (face_C - cells[..., -1])
            change = np.diff(walls, axis=-1) / (self.volumes[axis] * width_m**2)
            gained += np.moveaxis(change, -1, axis)
        self.cells_C = self.cells_C + self.diffusivity_m2_s * step_s * gained

    def _row(self):
        """Core, middle of the nearest face, and mean, of the cells as they are."""
        core, mean = self.cells_C, self.cells_C
        for volumes in self.volumes[::-1]:
            core, mean = _at_centre(core), mean @ volumes / volumes.sum()
        surface = self.faces_C[0]
        for _ in self.volumes[1:]:
            surface = _at_centre(surface)
        return float(core), float(surface), float(mean)


def _at_centre(cells_C):
    """The centre of the last way from its two first cells, level in the middle."""
    return (9 * cells_C[..., 0] - cells_C[..., 1]) / 8
