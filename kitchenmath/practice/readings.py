"""Ten readings of one thing, as a cook writes them down: "3.5, 3.0, 2.5 mm"."""

import hashlib
import math
import statistics
from dataclasses import dataclass, replace

import numpy as np

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.practice import look_words
from kitchenmath.practice.choices import Choices
from kitchenmath.practice.kinds import a_kind
from kitchenmath.practice.question_kinds import AnswerKind, add_kind
from kitchenmath.practice.words import not_built_on, too_few
from kitchenmath.typed.lists import (
    amounts_in,
    plain_quantity,
    quantity_of,
    saying_what_to_type,
    with_units,
)
from kitchenmath.units.door import amount
from kitchenmath.units.reading import read
from kitchenmath.units.registry import Q_, Quantity, kind_of, same_kind
from kitchenmath.units.saying import as_came, figures, say

FEWEST = 5  # readings that anything can be built on
MOST = 100
SHOWN = 12  # of them in a sentence
LARGEST_MM = 500  # no cut of any kitchen is longer
TENFOLD = (5, 20)  # times the middle one: a decimal point that slipped, and no large piece
WAYS = 64  # invented samples to draw from


@dataclass(frozen=True, repr=False)
class Readings:
    """Lengths in the order they were measured.

    Attributes
    ----------
    lengths : Quantity [mm], array
    unit_said : bool
        Whether a unit stood beside them; bare numbers are taken for millimetres.
    metric : bool
        Whether they were read in mm, cm or m.
    within : Quantity [mm] or None
        How far each may be off, where it was said: a photo of the tray says it.
    """

    lengths: Quantity
    unit_said: bool = True
    metric: bool = True
    within: Quantity | None = None

    def __repr__(self):
        shown = [figures(each) for each in self.lengths.magnitude[:SHOWN]]
        more = ["…"] * (len(self) > SHOWN)
        known = "" if self.within is None else f" ± {figures(self.within.magnitude)} mm"
        return ", ".join(shown + more) + " mm" + known

    def __str__(self):
        low, high = (figures(length.to("inch").magnitude, 2) for length in self.ends)
        return f"{self!r} ({low} to {high} in)"

    def __len__(self):
        return len(self.lengths)

    @property
    def alike(self):
        """Whether all readings are one and the same."""
        return bool(np.ptp(self.lengths.magnitude) < 1e-9)

    @property
    def ends(self):
        """The smallest and the largest reading [mm]."""
        lengths = self.lengths.magnitude
        return Q_(float(lengths.min()), "mm"), Q_(float(lengths.max()), "mm")

    @property
    def middle(self):
        """The middle reading by size [mm]; one that is far off does not move it."""
        return Q_(statistics.median(self.lengths.magnitude), "mm")

    @property
    def tenfold(self):
        """The readings that are about ten times the others, or a tenth of them [mm]."""
        times = self.lengths.magnitude / self.middle.magnitude
        low, high = TENFOLD
        return [
            Q_(float(length), "mm")
            for length, each in zip(self.lengths.magnitude, times, strict=True)
            if low <= each <= high or 1 / high <= each <= 1 / low
        ]

    def finer_than(self, step):
        """The readings that no rule read to `step` can show [mm]; inches are left alone."""
        step_mm = amount(step, "mm", "step", above=0)
        steps = self.lengths.magnitude / step_mm
        off = np.abs(steps - np.round(steps)) > 1e-6
        return [Q_(float(each), "mm") for each in self.lengths.magnitude[off]] * self.metric

    @property
    def ways(self):
        """These readings in the ways that people type them."""
        shown = [figures(each) for each in self.lengths.magnitude]
        yield ", ".join(shown) + " mm"
        yield "; ".join(each.replace(".", ",") for each in shown) + " mm"
        yield "\n".join(f"{each} mm" for each in shown)
        yield [f"{each} mm" for each in shown]
        yield self.lengths

    @property
    def another(self):
        """Readings like these and not the same: the first is put last."""
        return Readings(Q_(np.roll(self.lengths.magnitude, -1), "mm"))

    def same_as(self, other):
        """Whether these are the same lengths in the same order."""
        return len(self) == len(other) and np.allclose(self.lengths.m, other.lengths.m, atol=0.01)

    @property
    def unfit(self):
        """Why later questions cannot be built on these: "few", "alike", or "" where they can."""
        return "few" if len(self) < FEWEST else "alike" if self.alike else ""

    @property
    def sound(self):
        """Whether later questions can be built on these."""
        return not self.unfit


class ReadingsKind(AnswerKind):
    """How a list of lengths is read and said."""

    asked = "a list of lengths"
    example = "3.5, 3.0, 2.5 mm"

    def read(self, answer):
        """The readings in a text, a list or an array.

        Parameters
        ----------
        answer : str, Readings, Quantity, or sequence of str, Quantity or float

        Returns
        -------
        Readings

        Raises
        ------
        Unreadable
        WrongKind
        OutOfRange

        Examples
        --------
        One unit at the end is everybody's; a bare list is taken for millimetres.

        >>> ReadingsKind().read("3,5; 3,0; 2,5 mm")
        3.5, 3, 2.5 mm
        >>> ReadingsKind().read([3.5, 3]).unit_said
        False

        A photo of the tray says how far each may be off.

        >>> ReadingsKind().read("3.1, 2.9 mm ± 0.2 mm")
        3.1, 2.9 mm ± 0.2 mm
        """
        if isinstance(answer, Readings):
            return answer
        with saying_what_to_type(self.asked, self.example):
            lengths, within = _known_to(answer)
            return replace(_readings(_listed(lengths)), within=within)

    def seen(self, value, plausible=None):
        """What can be said about readings before they are marked.

        `plausible` has the smallest and the largest that make sense, and how many are asked for:
        ("1 mm", "10 mm", "10 readings").
        """
        lengths = value.lengths.magnitude
        told, doubts = [look_words.READ_AS.format(value=f"{len(value)} lengths: {value!r}")], []
        if not value.unit_said:
            told.append(look_words.NO_UNIT)
        if value.alike:
            told.append(look_words.ALIKE)
        if value.tenfold:
            far = " and ".join(say(each) for each in value.tenfold)
            doubts.append(look_words.TENFOLD.format(far=far))
        elif plausible:
            low, high = (amount(read(bound), "mm", "plausible") for bound in plausible[:2])
            for odd in lengths[(lengths < low) | (lengths > high)][:1]:
                shown = f"{figures(odd)} mm"
                doubts.append(look_words.LOOK_AGAIN.format(value=shown, where="here"))
        if plausible and len(plausible) > 2 and len(value) < int(plausible[2].split()[0]):
            doubts.append(too_few(len(value), int(plausible[2].split()[0])))
        if value.unfit:
            doubts.append(not_built_on(value.unfit))
        return bool(doubts), " ".join([*told, *doubts])


add_kind("readings", ReadingsKind())


def invented_readings(around, step, label, count=10):
    """Invented samples to draw one from, for a student who could not measure.

    Parameters
    ----------
    around : Quantity [length]
        What the pieces were meant to be.
    step : Quantity [length]
        The step that the ruler shows.
    label : str
    count : int

    Returns
    -------
    Choices

    Notes
    -----
    Each reading lies 0, 1 or 2 steps from `around`, most of them none or one; by SHA-256, so that
    they are the same everywhere.

    Examples
    --------
    >>> invented_readings(Q_(3, "mm"), Q_(0.5, "mm"), "a sample").values[0]
    2.5, 4, 2.5, 3, 4, 3, 3, 3.5, 2, 4 mm
    """
    around_mm, step_mm = amount(around, "mm", "around"), amount(step, "mm", "step")
    samples = []
    for way in range(WAYS):
        dice = hashlib.sha256(f"readings|{way}".encode()).digest()
        off = [dice[2 * i] % 3 + dice[2 * i + 1] % 3 - 2 for i in range(count)]
        lengths_mm = [round(around_mm + step_mm * each, 9) for each in off]
        samples.append(Readings(Q_(lengths_mm, "mm")))
    return Choices(tuple(samples), label)


def _known_to(answer):
    """What was typed before a last ±, and the length after it, or None."""
    if not isinstance(answer, str) or "±" not in answer:
        return answer, None
    lengths, _, within = answer.rpartition("±")
    return lengths, Q_(_length_mm(_in_mm(within), "after ±"), "mm")


def _in_mm(typed):
    """One amount as typed; a bare number is millimetres, as in the list before it."""
    found = read(typed.strip())
    return Q_(found.magnitude, "mm") if kind_of(found) == "number" else found


def _readings(typed):
    """Readings from quantities as they came; a bare one is a count."""
    if not 0 < len(typed) <= MOST:
        raise OutOfRange(f"1 to {MOST} readings are wanted, and {len(typed)} came.")
    filled, unit_said = with_units(typed, "mm")
    lengths_mm = [_length_mm(each, place) for place, each in enumerate(filled, 1)]
    metric = all(str(each.units).endswith("meter") for each in filled)
    return Readings(Q_(lengths_mm, "mm"), unit_said, metric)


def _listed(answer):
    """What was typed or computed, as a flat list of quantities."""
    if isinstance(answer, str):
        pairs = amounts_in(answer)
        return [quantity_of(*pair, f"reading {place}") for place, pair in enumerate(pairs, 1)]
    if isinstance(answer, Quantity):
        return [Quantity(float(each), answer.units) for each in np.ravel(answer.magnitude)]
    if isinstance(answer, np.ndarray):
        answer = list(np.atleast_1d(answer))
    if isinstance(answer, list | tuple):
        return [
            one
            for place, thing in enumerate(answer, 1)
            for one in (
                _listed(thing)
                if isinstance(thing, str)
                else [plain_quantity(thing, f"reading {place}")]
            )
        ]
    raise WrongKind(f"{as_came(answer)} is no list of lengths.")


def _length_mm(reading, place):
    if not same_kind(reading, "mm"):
        came = f"{say(reading)} is {a_kind(kind_of(reading))}"
        raise WrongKind(f"reading {place}: {came}: a length is asked for.")
    length_mm = float(reading.to("mm").magnitude)
    if not (math.isfinite(length_mm) and 0 < length_mm <= LARGEST_MM):
        raise OutOfRange(f"reading {place}: {say(reading)} is no size of a cut piece.")
    return length_mm
