"""The two kinds of prediction: an amount that is typed, and one of a few words that is picked."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Amount:
    """What is asked before anything is moved, the amount that comes out, and why."""

    ask: str
    right: object  # Quantity
    why: str


@dataclass(frozen=True)
class Pick:
    """A choice of a few words. Where they go from less to more, `sides` names the two ways off."""

    ask: str
    options: tuple
    right: str
    why: str
    sides: tuple = ("too low", "too high")

    def steps_off(self, said):
        """How many words too far, below 0 to the side of the first.

        Parameters
        ----------
        said : str
            One of `options`.

        Returns
        -------
        int
        """
        return self.options.index(said) - self.options.index(self.right)
