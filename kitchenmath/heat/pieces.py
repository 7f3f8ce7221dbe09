"""A piece of food as the heat sees it: a shape, its measures, and what it is made of."""

import math
from dataclasses import dataclass

from kitchenmath.errors import UnknownName, WrongKind
from kitchenmath.foods.mixture import Food
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_, Quantity

__all__ = ["Piece", "biot", "fourier"]

# Of each shape the measures it needs, those it may have, and an example to type.
MEASURES = {
    "sphere": (("diameter",), (), 'Piece("sphere", diameter=Q_(60, "mm"), …)'),
    "slab": (("thickness",), (), 'Piece("slab", thickness=Q_(25, "mm"), …)'),
    "cylinder": (("diameter",), ("length",), 'Piece("cylinder", diameter=Q_(60, "mm"), …)'),
    "brick": (
        ("length", "width", "thickness"),
        (),
        'Piece("brick", length=Q_(90, "mm"), width=Q_(60, "mm"), thickness=Q_(25, "mm"), …)',
    ),
}
SLAB, CYLINDER, SPHERE = 0, 1, 2  # the power of r in the area that the heat crosses


@dataclass(frozen=True)
class Piece:
    """A piece of food to heat or to cool: its shape, its measures and its thermal properties.

    Easily confused: every measure is the whole one, across the piece, heated from both sides. A
    slab that takes its heat from one side only counts as one of twice the thickness.

    Parameters
    ----------
    shape : str
        "sphere"; "slab" (a fillet, a steak: wide against its thickness); "cylinder" (a loin, a
        sausage, a can); "brick" (a terrine, a cube).
    diameter, length, width, thickness : Quantity [length]
        A sphere has a diameter, a slab a thickness, a cylinder a diameter and perhaps a length
        (left out, it is long), a brick all three but a diameter.
    food : Food, optional
    at : Quantity [temperature], optional
        Where the food's properties are taken: 40 °C unless said otherwise.
    conductivity : Quantity [W/m/K], optional
    diffusivity : Quantity [mm**2/s], optional
        These two instead of a food.

    Raises
    ------
    UnknownName
    WrongKind
        When a measure or a property is missing, too many, or of another kind.
    OutOfRange

    Notes
    -----
    No food is a sphere or a brick, and none is alike throughout: bones, fat and grain lead heat
    otherwise. Expect the time to be out by a fifth, and let a probe decide.

    Examples
    --------
    An egg as a sphere.

    >>> egg = Piece("sphere", diameter=Q_(50, "mm"), conductivity=Q_(0.627, "W/m/K"),
    ...             diffusivity=Q_(0.151, "mm**2/s"))
    >>> print(say(egg.volume.to("mL"), 3))
    65.4 mL
    """

    shape: str
    diameter: Quantity = None
    length: Quantity = None
    width: Quantity = None
    thickness: Quantity = None
    food: Food = None
    at: Quantity = None
    conductivity: Quantity = None
    diffusivity: Quantity = None

    def __post_init__(self):
        one_of(self.shape, MEASURES, "shape")
        measures_m = self._measures()
        conductivity_W_mK, diffusivity_m2_s = self._properties()
        object.__setattr__(self, "halves", _half_sizes(self.shape, measures_m))
        object.__setattr__(self, "_measures_m", measures_m)
        object.__setattr__(self, "conductivity_W_mK", conductivity_W_mK)
        object.__setattr__(self, "diffusivity_m2_s", diffusivity_m2_s)

    def _measures(self):
        """The measures in metres, all that the shape needs and none that it has not."""
        needed, allowed, example = MEASURES[self.shape]
        measures_m = {}
        for name in ("diameter", "length", "width", "thickness"):
            measure = getattr(self, name)
            if measure is None:
                if name in needed:
                    raise WrongKind(f"{name}: a {self.shape} needs its {name}: {example}.")
                continue
            if name not in needed + allowed:
                raise WrongKind(
                    f"{name}: a {self.shape} has no {name}, only {' and '.join(needed + allowed)}: "
                    f"{example}."
                )
            measures_m[name] = amount(measure, "m", name, above=0)
        return measures_m

    def _properties(self):
        """Conductivity [W/m/K] and diffusivity [m2/s], from the food or as given."""
        given = (self.conductivity is not None, self.diffusivity is not None)
        if self.food is not None:
            if any(given):
                raise WrongKind(
                    "food: its conductivity and diffusivity follow from it; give the food or the "
                    "two, not both."
                )
            if not isinstance(self.food, Food):
                raise WrongKind(
                    f'food: needs a Food such as food("carrot"), and {self.food!r} came.'
                )
            at = Q_(40, "degC") if self.at is None else self.at
            conductivity, diffusivity = self.food.conductivity(at), self.food.diffusivity(at)
        elif all(given):
            conductivity, diffusivity = self.conductivity, self.diffusivity
        else:
            raise WrongKind(
                'food: give food=food("cod"), or both conductivity=Q_(0.5, "W/m/K") and '
                'diffusivity=Q_(0.14, "mm**2/s").'
            )
        return (
            amount(conductivity, "W/m/K", "conductivity", above=0),
            amount(diffusivity, "m**2/s", "diffusivity", above=0),
        )

    @property
    def volume(self):
        """What it fills [mL]; a slab or a long cylinder has no end and so no volume."""
        size = self._measures_m
        if self.shape == "sphere":
            volume_m3 = math.pi / 6 * size["diameter"] ** 3
        elif self.shape == "brick":
            volume_m3 = size["length"] * size["width"] * size["thickness"]
        elif "length" in size:
            volume_m3 = math.pi / 4 * size["diameter"] ** 2 * size["length"]
        else:
            raise UnknownName(
                f"volume: a {self.shape} without end has none; take a brick, or a cylinder with "
                "a length."
            )
        return Q_(1e6 * volume_m3, "mL")


def _half_sizes(shape, measures_m):
    """The bodies whose product is this one: (power, half measure in metres), thinnest first."""
    half = {name: measure / 2 for name, measure in measures_m.items()}
    if shape == "sphere":
        return ((SPHERE, half["diameter"]),)
    if shape == "cylinder":
        bodies = [(CYLINDER, half["diameter"])]
        bodies += [(SLAB, half["length"])] if "length" in half else []
    else:
        bodies = [(SLAB, each) for each in half.values()]
    return tuple(sorted(bodies, key=lambda body: body[1]))


def biot(surface_coefficient, length, conductivity):
    """How hard the surface is for heat against the inside: h L / k.

    Easily confused: in the charts and in `theta` the length is the radius or the half-thickness;
    in the rule that a body below 0.1 warms evenly it is the volume over the area, a third of a
    sphere's radius.

    Parameters
    ----------
    surface_coefficient : Quantity [W/m**2/K]
    length : Quantity [length]
    conductivity : Quantity [W/m/K]

    Returns
    -------
    float
        Far below 1: the inside keeps up and is even. Far above: the surface is at once as hot as
        what surrounds it, and stirring harder does not help.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    An apple of 10 cm in air, by volume over area (10 / 6 cm): 10 x 0.01667 / 0.6 = 0.278.

    >>> round(biot(Q_(10, "W/m**2/K"), Q_(100 / 6, "mm"), Q_(0.6, "W/m/K")), 4)
    0.2778

    References
    ----------
    Som, *Introduction to Heat Transfer*, Example 4.1.
    """
    coefficient_W_m2K = amount(surface_coefficient, "W/m**2/K", "surface_coefficient", least=0)
    length_m = amount(length, "m", "length", above=0)
    return coefficient_W_m2K * length_m / amount(conductivity, "W/m/K", "conductivity", above=0)


def fourier(diffusivity, duration, length):
    """How far heat has had time to come, against the way it has to go: a t / L^2.

    Doubling the thickness makes a given state take four times as long.

    Parameters
    ----------
    diffusivity : Quantity [mm**2/s]
    duration : Quantity [time]
    length : Quantity [length]
        Half the thickness or the radius.

    Returns
    -------
    float
        0.01: the centre knows nothing yet. 1: most is over.

    Raises
    ------
    WrongKind
    OutOfRange

    Examples
    --------
    A fillet of 25 mm for ten minutes: 0.14 x 600 / 12.5^2 = 0.54.

    >>> round(fourier(Q_(0.14, "mm**2/s"), Q_(10, "min"), Q_(12.5, "mm")), 2)
    0.54
    """
    diffusivity_m2_s = amount(diffusivity, "m**2/s", "diffusivity", above=0)
    duration_s = amount(duration, "s", "duration", least=0, many=True)
    return diffusivity_m2_s * duration_s / amount(length, "m", "length", above=0) ** 2


def surface_at(surface_coefficient):
    """A surface coefficient in W/m2/K, from 0 (wrapped, nothing passes).

    Raises
    ------
    WrongKind
    OutOfRange
    """
    return amount(surface_coefficient, "W/m**2/K", "surface_coefficient", least=0)


def check_piece(piece):
    """`piece` if it is one.

    Raises
    ------
    WrongKind
    """
    if not isinstance(piece, Piece):
        raise WrongKind(
            f'piece: needs a Piece such as Piece("slab", thickness=Q_(25, "mm"), '
            f'food=food("cod")), and {piece!r} came.'
        )
    return piece


def celsius(temperature, name):
    """A kitchen temperature in °C: from -100 to 500, so that a slip in the unit is seen.

    Raises
    ------
    WrongKind
    OutOfRange
    """
    return float(amount(temperature, "degC", name, least=-100, most=500))
