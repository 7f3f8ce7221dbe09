"""Drills of lesson 8 on resting: what evens out, when to pull, and what a limit still asks."""

from dataclasses import dataclass

from kitchenmath.conventions.college import OURS, Conventions
from kitchenmath.drills import Drill
from kitchenmath.practice import Question, Slip, Within, steps
from kitchenmath.practice.choices import Choices, Drawn
from kitchenmath.safety import limits
from kitchenmath.units import Q_, say

BY_PROBE = Within(Q_(1, "delta_degC"), "a probe is good to a degree")


def _apart(upper, lower):
    """How far one temperature lies above another."""
    return Q_(upper.magnitude - lower.magnitude, "delta_degC")


EVENED = Drill(
    Question(
        "resting, evening out",
        "temperature difference",
        1,
        BY_PROBE,
        lambda core, mean: _apart(mean, core),
        (
            Slip(
                "up to the surface",
                lambda core, surface: _apart(surface, core),
                "You let the core rise to the rim's temperature. The rim gives heat away and "
                "falls: they meet at the mean.",
            ),
            Slip(
                "from the rim",
                lambda mean, surface: _apart(surface, mean),
                "That is how far the rim falls. The core rises from its own reading to the mean.",
            ),
            Slip(
                "half-way",
                lambda core, surface: Q_((surface.magnitude - core.magnitude) / 2, "delta_degC"),
                "You met half-way between core and rim. There is more meat near the rim than in "
                "the core, so the mean lies nearer to the rim.",
            ),
        ),
        working=(
            "where all of it ends: at its mean = {end}",
            "{end} − {core} = {answer}",
        ),
        on_the_way={
            "end": lambda mean: mean,
        },
    ),
    "A piece leaves the heat with {core} in the core and {surface} at the rim. Its mean is {mean}. "
    "Wrapped so well that nothing is lost, by how much does the core rise?",
    "At last it is one temperature all through. Which?",
    {
        "core": steps(46, 49, 1, "degC", "core"),
        "mean": steps(65, 66, 1, "degC", "mean"),
        "surface": steps(70, 72, 1, "degC", "rim"),
    },
)

PULLED = Drill(
    Question(
        "resting, when to pull",
        "temperature",
        1,
        BY_PROBE,
        lambda pulled, peak, wanted: wanted - _apart(peak, pulled),
        (
            Slip(
                "rest left out",
                lambda wanted: wanted,
                "At that core it would go on past what you want. Take the rise off first.",
            ),
            Slip(
                "rise added",
                lambda pulled, peak, wanted: wanted + _apart(peak, pulled),
                "You added the rise. It comes by itself, after the heat: take it off.",
            ),
            Slip(
                "as last time",
                lambda pulled: pulled,
                "That is where it came out last time. Today you want another peak.",
            ),
        ),
        working=(
            "the rise: {peak} − {pulled} = {rise}",
            "{wanted} − {rise} = {answer}",
        ),
        on_the_way={"rise": lambda peak, pulled: _apart(peak, pulled)},
    ),
    "Last week a loin came out at {pulled} and peaked at {peak}. Today, the same loin and oven, "
    "you want a peak of {wanted}. At what core does it come out?",
    "How much did it rise by itself?",
    {
        "pulled": steps(52, 55, 1, "degC", "core last time, out of the oven"),
        "peak": steps(58, 61, 1, "degC", "peak last time"),
        "wanted": steps(64, 68, 1, "degC", "peak wanted"),
    },
)

SHORT = Drill(
    Question(
        "resting, short of the limit",
        "temperature difference",
        1,
        BY_PROBE,
        lambda probe, limit: Q_((limit.magnitude - probe.magnitude) / 1.8, "delta_degC"),
        (
            Slip(
                "still in °F",
                lambda probe, limit: Q_(limit.magnitude - probe.magnitude, "delta_degC"),
                "Those are Fahrenheit degrees. A Celsius degree is 1.8 of them.",
            ),
            Slip(
                "32 taken off",
                lambda probe, limit: Q_(
                    (limit.magnitude - probe.magnitude - 32) / 1.8, "delta_degC"
                ),
                "You took 32 off a difference. It falls out when one reading is taken from the "
                "other: only divide by 1.8.",
            ),
            Slip(
                "multiplied",
                lambda probe, limit: Q_((limit.magnitude - probe.magnitude) * 1.8, "delta_degC"),
                "You multiplied by 1.8. Celsius degrees are larger, so there are fewer of them.",
            ),
        ),
        working=(
            "the difference in °F: {limit} − {probe} = {difference}",
            "{difference} ÷ 1.8 = {answer}",
        ),
        on_the_way={
            "difference": lambda probe, limit: Q_(limit.magnitude - probe.magnitude, "delta_degF"),
        },
    ),
    "The probe in a fillet shows {probe}. The US code asks {limit}. How many Celsius degrees short "
    "is it?",
    "First the difference in °F. Then: 1.8 °F are one °C.",
    {
        "probe": steps(112, 134, 1, "degF", "probe"),
        "limit": steps(145, 145, 1, "degF", "limit of the US code for fish"),
    },
    alone=("probe", "limit"),
)


@dataclass(frozen=True, repr=False)
class HeldCore(Drawn):
    """A core between two rows of the table of holding times that a class reads.

    Attributes
    ----------
    step : int
        How far up the table it lies, from 0.
    college : Conventions
    """

    step: int
    college: Conventions = OURS

    def in_college(self, college):
        """A core in a class's own table."""
        return HeldCore(self.step, college)

    @property
    def temperature(self):
        """In the scale in which the table is printed first."""
        if "source" in self.college.hold_table:
            return Q_(60 + self.step / 2, "degC")
        return Q_(131 + self.step, "degF")

    @property
    def row(self):
        """The highest row that it has reached."""
        return [row for row in self._rows if row.reached_by(self.temperature)][-1]

    @property
    def next_row(self):
        """The first row that it has not reached."""
        return next(row for row in self._rows if not row.reached_by(self.temperature))

    @property
    def _rows(self):
        rows = limits(**self.college.hold_table)
        return sorted(rows, key=lambda row: row.fahrenheit.magnitude)

    def __repr__(self):
        return say(self.temperature)


def _held_cores(label):
    return Choices(tuple(HeldCore(step) for step in range(9)), label)


def _still(core, held, time):
    """A time less what is over, or None where that is over too, or hardly another one."""
    left, right = time - held, core.row.time - held
    return left if left.magnitude > 0 and abs((left - right).to("min").magnitude) > 1.1 else None


HELD = Drill(
    Question(
        "resting, still to hold",
        "time",
        1,
        Within(Q_(1, "min"), "the table prints whole minutes", safe="up"),
        lambda core, held: core.row.time - held,
        (
            Slip(
                "took the next hotter row",
                lambda core, held: _still(core, held, core.next_row.time),
                "You took a row that the core has not reached. Until it is there, the longer "
                "time stands.",
            ),
            Slip(
                "gave the whole time",
                lambda core: core.row.time,
                "That is what the row asks in all. Take off the time that is over.",
            ),
            Slip(
                "added the time that is over",
                lambda core, held: core.row.time + held,
                "The time that is over counts already: take it off.",
            ),
        ),
        working=(
            "what the table asks: last row reached by {core} = {row}",
            "{row} − {held} = {answer}",
        ),
        on_the_way={"row": lambda core: core.row.time},
    ),
    "{{ hold_rows }} The core of a roast has stood at {core} or above for {held}. How much longer "
    "must it stay there?",
    "Which is the last row that it has reached? Never read between two rows.",
    {
        "core": _held_cores("lowest core so far"),
        "held": steps(4, 10, 1, "min", "held so far"),
    },
)

DRILLS = {
    "evening out": EVENED,
    "when to pull": PULLED,
    "short of the limit": SHORT,
    "still to hold": HELD,
}
