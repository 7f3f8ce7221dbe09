"""A food as a mixture of water, protein, fat, carbohydrate, fibre and ash, and its properties."""

from dataclasses import dataclass

from kitchenmath.errors import OutOfRange
from kitchenmath.foods.components import CELSIUS_RANGE, component_values, specific_heats
from kitchenmath.units.door import amount, one_of
from kitchenmath.units.registry import Q_, Quantity
from kitchenmath.units.saying import figures

COMPONENTS = ("water", "protein", "fat", "carbohydrate", "fibre", "ash", "ice")
LAYERS = ("parallel", "series")


@dataclass(frozen=True)
class Food:
    """A food as a mixture, in percent of its weight, and its thermal properties.

    Easily confused: many tables count fibre within the carbohydrate. Here they stand apart, so
    take the fibre off such a figure first.

    Parameters
    ----------
    water, protein, fat, carbohydrate, fibre, ash : Quantity [percent], optional
        What is not named is nought. They add up to 100 %; from 97 to 103 % it is taken as the
        table's inexactness: the water, which is surest, is kept and the rest made to fit.
    ice : Quantity [percent], optional
        The part of the water that is frozen, counted here and not under `water`.

    Raises
    ------
    WrongKind
    OutOfRange
        When the parts do not add up.

    Notes
    -----
    Choi and Okos's polynomials for each component, from -40 to 150 °C, and their mixing rules.
    Against measurements of whole foods they are good to about 10 %. There is no air in them:
    bread, sponge and foam carry heat far worse. They know nothing of freezing, so below the
    freezing point say how much is ice.

    Examples
    --------
    A lean bird, three quarters water: 0.75 x 4.177 + 0.23 x 2.032 + 0.01 x 2.012 + 0.01 x 1.129
    = 3.631 kJ for a kilo and a degree.

    >>> bird = Food(water=Q_(75, "percent"), protein=Q_(23, "percent"), fat=Q_(1, "percent"),
    ...             ash=Q_(1, "percent"))
    >>> print(round(bird.specific_heat(Q_(20, "degC")).magnitude, 3))
    3.631

    References
    ----------
    Choi and Okos (1986), in *Food Engineering and Process Applications*, vol. 1, pp. 93-101;
    ASHRAE *Handbook - Refrigeration* (2006), ch. 9, with water's specific heat after the former.
    """

    water: Quantity = None
    protein: Quantity = None
    fat: Quantity = None
    carbohydrate: Quantity = None
    fibre: Quantity = None
    ash: Quantity = None
    ice: Quantity = None

    def __post_init__(self):
        given = {name: getattr(self, name) for name in COMPONENTS}
        shares = {
            name: amount(part, "percent", name, least=0, most=103) / 100
            if part is not None
            else 0.0
            for name, part in given.items()
        }
        whole = sum(shares.values())
        if not 0.97 <= whole <= 1.03:
            raise OutOfRange(
                f"water, protein, fat, carbohydrate, fibre, ash, ice: together they are "
                f"{figures(100 * whole)} % and should be 100 %; is one missing, "
                "or is the fibre counted twice?"
            )
        object.__setattr__(self, "_shares", _made_whole(shares))

    def density(self, temperature):
        """What a millilitre weighs: 1 / sum of (share / component's density).

        Parameters
        ----------
        temperature : Quantity [temperature], -40 to 150 °C

        Returns
        -------
        Quantity [g/mL]

        Raises
        ------
        WrongKind
        OutOfRange
        """
        return Q_(self._density(_celsius(temperature)) / 1000, "g/mL")

    def specific_heat(self, temperature, after="Choi and Okos 1986"):
        """The heat that warms a kilo by one degree.

        Parameters
        ----------
        temperature : Quantity [temperature], -40 to 150 °C
        after : str
            Whose equation. The older ones know no temperature: "Heldman 1975",
            "Heldman and Singh 1981", "Chen 1985" (solids only), "Earle 1983" (water only).

        Returns
        -------
        Quantity [kJ/kg/K]

        Raises
        ------
        WrongKind
        OutOfRange
        UnknownName
        """
        temperature_C = _celsius(temperature)
        equation = specific_heats()[one_of(after, specific_heats(), "after")]
        return Q_(equation(self._shares, temperature_C), "kJ/kg/K")

    def conductivity(self, temperature, layers="parallel"):
        """How readily heat runs through: watts through a metre's cube for a degree across it.

        Parameters
        ----------
        temperature : Quantity [temperature], -40 to 150 °C
        layers : str
            "parallel": heat runs along the components' layers, the upper bound and the usual
            choice. "series": it crosses them one after the other, the lower bound, nearer to
            meat measured across the grain.

        Returns
        -------
        Quantity [W/m/K]

        Raises
        ------
        WrongKind
        OutOfRange
        UnknownName
        """
        one_of(layers, LAYERS, "layers")
        temperature_C = _celsius(temperature)
        volumes = self._volumes(temperature_C)
        conductivities = component_values("conductivity", temperature_C)
        if layers == "parallel":
            mixed = sum(part * conductivities[name] for name, part in volumes.items())
        else:
            mixed = 1 / sum(part / conductivities[name] for name, part in volumes.items())
        return Q_(mixed, "W/m/K")

    def diffusivity(self, temperature, layers="parallel"):
        """How fast warmth spreads: conductivity over heat held by a volume.

        Parameters
        ----------
        temperature : Quantity [temperature], -40 to 150 °C
        layers : str
            As for the conductivity.

        Returns
        -------
        Quantity [mm**2/s]
            About 0.13 for moist foods, whatever they are.

        Raises
        ------
        WrongKind
        OutOfRange
        UnknownName
        """
        carried = self.conductivity(temperature, layers=layers).magnitude
        held = self._density(_celsius(temperature)) * self.specific_heat(temperature).magnitude
        return Q_(1e6 * carried / (1000 * held), "mm**2/s")

    def _density(self, temperature_C):
        """In kg/m3."""
        densities = component_values("density", temperature_C)
        return 1 / sum(part / densities[name] for name, part in self._shares.items())

    def _volumes(self, temperature_C):
        """The share of the volume that each component fills."""
        densities = component_values("density", temperature_C)
        whole = self._density(temperature_C)
        return {name: whole * part / densities[name] for name, part in self._shares.items()}


def _made_whole(shares):
    """Shares that add up to one: the solids are stretched, or all of it where there are none."""
    wet = shares["water"] + shares["ice"]
    solids = sum(shares.values()) - wet
    if wet >= 1 or solids == 0:
        return {name: part / (wet + solids) for name, part in shares.items()}
    stretch = (1 - wet) / solids
    return {
        name: part if name in ("water", "ice") else part * stretch for name, part in shares.items()
    }


def _celsius(temperature):
    lowest, highest = CELSIUS_RANGE
    return amount(temperature, "degC", "temperature", least=lowest, most=highest, many=True)
