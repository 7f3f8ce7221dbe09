"""The inside of a piece through one stage after another, along one way from centre to surface.

Between two changes of its surroundings the temperature along one way is a sum of waves (see
`conduction`), each fading at its own pace. At a change the sum is written in the waves of the new
surface, by their products over the body, so a dry stage is exact and needs no steps in time. A wet
surface follows no straight line: there the waves of an insulated body are driven by the heat that
comes in, in short steps, each with the surface's balance solved anew.
"""

from functools import lru_cache

import numpy as np

from kitchenmath.heat.conduction import make_modes, terms_needed

_SEALED = 1e-12  # a Biot number that lets nothing through, yet keeps the first root above nought
_FALL = 16.0  # how far the last wave has faded at the first time that is asked for: exp(-16)
# Waves left out of a wet stage follow the flux at once, though in truth they lag behind it; with
# six times as many waves as the fading asks for the lag is below 0.002 K.
_WET_FALL = 640.0


class Way:
    """The temperature along one way: `base` plus a sum of waves, and the surface as it is now."""

    def __init__(self, power, half_m, conductivity_W_mK, diffusivity_m2_s, start):
        self.power = power
        self.resistance_K_m2_W = half_m / conductivity_W_mK
        self.pace_per_s = diffusivity_m2_s / half_m**2
        self.base = self.surface = start
        self.modes, self.parts = None, None

    def dry(self, surroundings, coefficient_W_m2K, times_s):
        """Pass a dry stage; rows of core, surface and mean at each of these times."""
        fourier = self.pace_per_s * times_s
        biot = max(coefficient_W_m2K * self.resistance_K_m2_W, _SEALED)
        self._rewrite(make_modes(self.power, biot, terms_needed(fourier[0], _FALL)), surroundings)
        fading = np.exp(-np.multiply.outer(self.modes.roots**2, fourier))
        places = np.stack([np.ones_like(self.parts), self.modes.inner, self.modes.mean])
        rows = surroundings + (self.parts * places) @ fading
        self.parts = self.parts * fading[:, -1]
        self.surface = rows[1, -1]
        return rows

    def wet(self, law, times_s, first_s):
        """Pass a wet stage, step by step through these times; rows of core, surface and mean.

        Before `first_s` the rows are only steps on the way, with waves missing.
        """
        waves = _sealed_waves(self.power, terms_needed(self.pace_per_s * first_s, _WET_FALL))
        self._rewrite(waves.modes, 0.0)
        resistance = self.resistance_K_m2_W
        fading, *weights = waves.steps(np.diff(self.pace_per_s * times_s, prepend=0.0))
        gains = (weights[2].sum(axis=1) + waves.tail) * resistance
        at_surface = self.parts * waves.modes.inner
        surface = self.surface
        flux_K = before_K = resistance * law.inward(surface)
        history = np.empty((len(times_s), len(at_surface)))
        surfaces, fluxes_K = np.empty((2, len(times_s)))
        for step, (fade, earlier, old, new) in enumerate(zip(fading, *weights, strict=True)):
            at_surface = fade * at_surface + earlier * before_K + old * flux_K
            # The new flux counts within the step as well, and the surface it makes sets it.
            inside, gain = float(at_surface.sum()), float(gains[step])
            surface = law.surface_C(inside, gain, surface)
            before_K, flux_K = flux_K, resistance * (surface - inside) / gain
            at_surface += new * flux_K
            history[step], surfaces[step], fluxes_K[step] = at_surface, surface, flux_K
        self.parts, self.surface = at_surface / waves.modes.inner, surface
        core = history @ (1 / waves.modes.inner) + waves.core_tail * fluxes_K
        return np.stack([core, surfaces, history[:, 0]])

    def _rewrite(self, modes, base):
        """Write the temperature in other waves about another base."""
        parts = (self.base - base) * modes.weights
        if self.modes is not None:
            parts = parts + _rewritten(self.modes, self.parts, modes)
        self.modes, self.parts, self.base = modes, parts, base


def _rewritten(old, parts, new):
    """The same sum in other waves: of each pair the integral of their product over the body.

    By Green's formula it is (Bi_new - Bi_old) p p' / (x'^2 - x^2), with p and p' at the surface.
    """
    if abs(new.biot - old.biot) < 1e-9 * old.biot:
        same = np.zeros_like(new.roots)
        kept = min(len(parts), len(same))
        same[:kept] = parts[:kept]
        return same
    felt = np.abs(parts) > 1e-12 * np.abs(parts).max()
    together = np.outer(new.inner, old.inner[felt]) * (new.biot - old.biot)
    apart = np.subtract.outer(new.roots**2, old.roots[felt] ** 2)
    return (together / apart) @ parts[felt] / new.norm


class _SealedWaves:
    """The waves of an insulated body, and how heat through its surface drives them.

    `steps` gives what is left of each wave's share in the surface temperature after a step, and
    what the flux (in kelvin: flux x R / k) adds to it. The waves too fast to count follow the flux
    at once: `tail` at the surface, `core_tail` at the centre.
    """

    def __init__(self, power, count):
        self.modes = make_modes(power, _SEALED, count)
        self.paces = self.modes.roots**2
        self.drive = self.modes.inner**2 / self.modes.norm
        lag = self.drive[1:] / self.paces[1:]
        # In steady flux the surface stands 1 / (s + 3) above the mean, the centre
        # (s + 1) / (2 (s + 3)) below it.
        self.tail = 1 / (power + 3) - lag.sum()
        self.core_tail = -(power + 1) / (2 * (power + 3)) - (lag / self.modes.inner[1:]).sum()

    def steps(self, lengths):
        """For steps of these Fourier numbers: fading, and weights of the flux at three moments.

        Within a step the flux is a parabola through its values at the start of the step before, at
        the start and at the end; within the first step a straight line. The weights are integrals
        of such curves times exp(-pace x what is left of the step).
        """
        faded = np.multiply.outer(lengths, self.paces)
        slow = faded < 1e-4
        safe = np.where(slow, 1.0, faded)
        even = np.where(slow, 1 - faded / 2, -np.expm1(-safe) / safe)
        late = np.where(slow, 1 / 2 - faded / 6, (1 - even) / safe)
        later = np.where(slow, 1 / 3 - faded / 12, (1 - 2 * late) / safe)
        ratio = np.concatenate([[0.0], lengths[1:] / lengths[:-1]])[:, None]
        bent = (later - late) * ratio / (1 + ratio)  # nought in the first step
        drive = np.multiply.outer(lengths, self.drive)
        return (
            np.exp(-faded),
            drive * bent * ratio,
            drive * (even - late - bent * (1 + ratio)),
            drive * (late + bent),
        )


_sealed_waves = lru_cache(maxsize=64)(_SealedWaves)
