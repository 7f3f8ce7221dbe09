"""A typed plan as a chart in plain numbers: its bars, what is broken, and what would mend it.

Fields only. `chart_words` says them, and whoever draws takes them from here; a record keeps them.
All moments are minutes from the midnight before the service.
"""

from dataclasses import dataclass

__all__ = ["Broken", "Move", "PlanBar", "PlanChart", "Waits"]


@dataclass(frozen=True)
class PlanBar:
    """One task: its work, its rest, and how long what comes of it waits [min]."""

    task: str
    start_min: float
    work_min: float
    rest_min: float = 0.0
    wait_min: float = 0.0

    @property
    def done_min(self):
        """When the work is done."""
        return self.start_min + self.work_min

    @property
    def end_min(self):
        """When nothing is left to wait for."""
        return self.done_min + self.rest_min + self.wait_min


@dataclass(frozen=True)
class Broken:
    """A stretch of the chart in which a rule is broken, by the name that a `Finding` gives it."""

    rule: str
    tasks: tuple[str, ...]
    begin_min: float
    end_min: float


@dataclass(frozen=True)
class Move:
    """A start that works for one task.

    Attributes
    ----------
    task : str
    start_min : float
    alone : bool
        Whether moving this one task ends the first thing that is broken and breaks nothing else.
        If not, it is the start in the plan that works.
    """

    task: str
    start_min: float
    alone: bool


@dataclass(frozen=True)
class Waits:
    """What lies between two tasks of a plan, beyond its limits: the quality of it.

    Attributes
    ----------
    task : str
    until : str
        The task that uses it; "" for the service.
    wait_min : float
    may_min : float or None
        How long it may wait; None where nothing says so.
    long : bool
        Whether it waits long; else it is the place with the fewest spare minutes.
    later_min : float or None
        For a long wait, a later start that breaks nothing; None where there is none.
    """

    task: str
    until: str
    wait_min: float
    may_min: float | None
    long: bool
    later_min: float | None = None


@dataclass(frozen=True)
class PlanChart:
    """A plan as it was typed.

    Attributes
    ----------
    bars : tuple of PlanBar
        Earliest first.
    serve_min : float
    opens_min : float or None
    broken : tuple of Broken
    move : Move or None
        None where nothing is broken.
    quality : Waits or None
        None where every task is part of something broken.
    """

    bars: tuple[PlanBar, ...]
    serve_min: float
    opens_min: float | None = None
    broken: tuple[Broken, ...] = ()
    move: Move | None = None
    quality: Waits | None = None
