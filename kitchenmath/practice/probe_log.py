"""A probe's log as a cook writes it down: a line for each reading, "10 min 18.5 °C"."""

import itertools
from dataclasses import dataclass

import numpy as np

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.practice import look_words
from kitchenmath.practice.choices import Choices
from kitchenmath.practice.kinds import a_kind
from kitchenmath.practice.meant import point_slipped
from kitchenmath.practice.question_kinds import AnswerKind, add_kind
from kitchenmath.practice.words import by_the_clock, not_built_on, too_few, too_flat
from kitchenmath.typed.lists import saying_what_to_type, with_units
from kitchenmath.typed.log_lines import read_log_lines
from kitchenmath.units.door import amount
from kitchenmath.units.reading import read
from kitchenmath.units.registry import Q_, Quantity, kind_of, same_kind
from kitchenmath.units.saying import figures, say

FEWEST = 5  # readings that anything can be built on
MOST = 500
RISE_C = 5  # a log that rises less says nothing about warming
COLDEST_C, HOTTEST_C = -40, 400  # colder or hotter no kitchen's probe reads
LONGEST_MIN = 48 * 60
STEP_MIN, LAST_MIN = 5, 45  # of the invented logs
WAIT = 1.3  # an invented core's gap at the start, over the real one: the core waits at first


@dataclass(frozen=True, repr=False)
class ProbeLog:
    """Times and core temperatures, earliest first.

    Attributes
    ----------
    times : Quantity [min], array
    temperatures : Quantity [degC], array
    typed : Quantity, array
        The temperatures in the scale in which they came.
    scale_said : bool
        Whether °C or °F stood beside them; bare numbers are taken for °C.
    in_order : bool
        Whether the readings came in the order of time.
    began : str
        When the first reading was, where times were read off a clock: "18:05".
    """

    times: Quantity
    temperatures: Quantity
    typed: Quantity
    scale_said: bool = True
    in_order: bool = True
    began: str = ""

    def __repr__(self):
        first, last = self.pairs[0], self.pairs[-1]
        return f"{len(self)} readings, from {_pair_said(first)} to {_pair_said(last)}"

    def __str__(self):
        other = "degC" if self.typed.units == Q_(0, "degF").units else "degF"
        first, last = (say(self.typed[place].to(other), 3) for place in (0, -1))
        return f"{'; '.join(self.lines)} (from {first} to {last})"

    def __len__(self):
        return len(self.times)

    @property
    def pairs(self):
        """(time, temperature) of each reading, the temperature in the scale in which it came."""
        return list(zip(self.times, self.typed, strict=True))

    @property
    def lines(self):
        """The log as it is typed, a line for each reading."""
        return [_pair_said(pair) for pair in self.pairs]

    @property
    def ways(self):
        """This log in the ways that people type it."""
        yield "\n".join(self.lines)
        yield "; ".join(self.lines)
        yield "\n".join(line.replace(" min", ",").replace(".", ",") for line in self.lines)
        yield self.lines
        yield dict(line.split(" min ") for line in self.lines)
        yield list(zip(self.times, self.typed.to("degF"), strict=True))

    @property
    def another(self):
        """A log like this and not the same: each reading half a degree higher."""
        cores = Q_(self.temperatures.magnitude + 0.5, "degC")
        return ProbeLog(self.times, cores, cores)

    def same_as(self, other):
        """Whether these are the same temperatures at the same times, in whatever scale."""
        return len(self) == len(other) and all(
            np.allclose(mine.m, theirs.m, atol=0.06)
            for mine, theirs in (
                (self.times, other.times),
                (self.temperatures, other.temperatures),
            )
        )

    @property
    def doubled(self):
        """Whether two readings share a time."""
        return bool((np.diff(self.times.magnitude) <= 0).any())

    @property
    def rise(self):
        """From the first reading to the last, as a difference in °C."""
        cores_C = self.temperatures.magnitude
        return Q_(float(cores_C[-1] - cores_C[0]), "delta_degC")

    @property
    def unfit(self):
        """Why later questions cannot be built on this log; "" where they can.

        "few", "doubled" times, "flat" (it hardly rises) or "falling" (it cools at the end).
        """
        if len(self) < FEWEST:
            return "few"
        if self.doubled:
            return "doubled"
        if self.rise.magnitude < RISE_C:
            return "flat"
        cores_C = self.temperatures.magnitude
        return "" if cores_C[-1] > cores_C[-2] else "falling"

    @property
    def sound(self):
        """Whether later questions can be built on this log: the core warms, to the end."""
        return not self.unfit


class ProbeLogKind(AnswerKind):
    """How a probe's log is read and said."""

    asked = "a probe's log"
    example = look_words.LOG_EXAMPLE

    def read(self, answer):
        """The log in a text, in lines, in pairs or in two columns.

        Parameters
        ----------
        answer : str, ProbeLog, dict, or sequence
            A text has a line for each reading; a time without a unit is in minutes, and may be
            read off the clock ("18:05", "18.05"). A dictionary gives a temperature for each time.

        Returns
        -------
        ProbeLog

        Raises
        ------
        Unreadable
        WrongKind
        OutOfRange

        Examples
        --------
        >>> ProbeLogKind().read("0 min 5 °C; 5 min 6.5; 10 min 11")
        3 readings, from 0 min 5 °C to 10 min 11 °C
        """
        if isinstance(answer, ProbeLog):
            return answer
        with saying_what_to_type(self.asked, self.example):
            found = read_log_lines(answer)
            return _log(found.pairs, found.began)

    def seen(self, value, plausible=None):
        """What can be said about a log before it is marked.

        `plausible` has the coldest and the hottest that make sense, and how many readings and what
        rise the question asks for: ("-5 °C", "100 °C", "8 readings", "20 °C").
        """
        told = [look_words.READ_AS.format(value=repr(value))]
        if value.began:
            told.append(by_the_clock(value.began, say(value.times[-1])))
        if not value.scale_said:
            told.append(look_words.NO_SCALE)
        if not value.in_order:
            told.append(look_words.OUT_OF_ORDER)
        if value.doubled:
            told.append(look_words.DOUBLED)
        doubts = [*_hard_to_believe(value, plausible), *_asked_for(value, plausible)]
        if value.unfit:
            doubts.append(not_built_on(value.unfit))
        return bool(doubts), " ".join([*told, *doubts])


def _hard_to_believe(log, plausible):
    if plausible:
        low, high = (amount(read(bound), "degC", "plausible") for bound in plausible[:2])
        cores_C = log.temperatures.magnitude
        for odd in cores_C[(cores_C < low) | (cores_C > high)][:1]:
            yield look_words.LOOK_AGAIN.format(value=f"{figures(odd)} °C", where="in a core")


def _asked_for(log, plausible):
    """What the question asks of a log and this one has not."""
    if not plausible or len(plausible) < 4:
        return
    fewest, rise = int(plausible[2].split()[0]), read(plausible[3])
    if len(log) < fewest:
        yield too_few(len(log), fewest)
    if log.rise.magnitude < amount(rise, "degC", "plausible"):
        yield too_flat(say(log.rise.to("delta_degC"), 3), say(rise))


add_kind("probe log", ProbeLogKind())


def invented_logs(starts, baths, halvings, label):
    """Invented logs to draw one from, for a student who could not measure.

    Parameters
    ----------
    starts, baths : sequence of float
        Core at the start and bath, in °C.
    halvings : sequence of float
        Minutes in which the gap between bath and core halves.
    label : str

    Returns
    -------
    Choices

    Notes
    -----
    The core waits at its start, and then the gap to the bath halves again and again; read every
    5 min for 45 min, to half a degree.

    Examples
    --------
    From 8 °C in a bath of 80 °C the gap is 72 °C. Halved every 20 min, after 45 min 1.3 · 72 is
    halved 2.25 times: 93.6 / 4.757 = 19.7, so the core is at 60.3 °C, and the probe shows 60.5.

    >>> invented_logs([8], [80], [20], "a log").values[0]
    10 readings, from 0 min 8 °C to 45 min 60.5 °C
    """
    logs = []
    minutes = np.arange(0, LAST_MIN + 1, STEP_MIN, dtype=float)
    for start, bath, half in itertools.product(starts, baths, halvings):
        left = np.minimum(1, WAIT * 0.5 ** (minutes / half))
        cores_C = Q_(np.round(2 * (bath - (bath - start) * left)) / 2, "degC")
        logs.append(ProbeLog(Q_(minutes, "min"), cores_C, cores_C))
    return Choices(tuple(logs), label)


def _log(pairs, began=""):
    """A log from pairs as they came; a bare number is a count."""
    if not 2 <= len(pairs) <= MOST:
        raise OutOfRange(
            f"2 to {MOST} readings are wanted, a time and a temperature each; {len(pairs)} came."
        )
    minutes = [_minutes(time, place) for place, (time, _) in enumerate(pairs, 1)]
    typed, scale_said = with_units([core for _, core in pairs], "degC")
    cores_C = [_celsius(core, place) for place, core in enumerate(typed, 1)]
    scales = {str(core.units) for core in typed}
    scale = scales.pop() if len(scales) == 1 else "degC"
    order = np.argsort(minutes, kind="stable")
    return ProbeLog(
        Q_(np.array(minutes)[order], "min"),
        Q_(np.array(cores_C)[order], "degC"),
        Q_(np.array([core.to(scale).magnitude for core in typed])[order], scale),
        scale_said,
        bool((order == np.arange(len(order))).all()),
        began,
    )


def _pair_said(pair):
    time, core = pair
    return f"{say(time)} {say(core)}"


def _minutes(time, place):
    time = Q_(time.magnitude, "min") if kind_of(time) == "number" else time
    if not same_kind(time, "min"):
        came = f"{say(time)} is {a_kind(kind_of(time))}"
        raise WrongKind(f"reading {place}: {came}: a time comes first.")
    minutes = float(time.to("min").magnitude)
    if not 0 <= minutes <= LONGEST_MIN:
        raise OutOfRange(f"reading {place}: {say(time)} is no time of a log; the first is 0 min.")
    return minutes


def _celsius(core, place):
    if not same_kind(core, "degC"):
        came = f"{say(core)} is {a_kind(kind_of(core))}"
        raise WrongKind(f"reading {place}: {came}: a temperature follows the time.")
    core_C = float(core.to("degC").magnitude)
    if not COLDEST_C <= core_C <= HOTTEST_C:
        told = point_slipped(core, Q_(COLDEST_C, "degC"), Q_(HOTTEST_C, "degC"))
        came = look_words.NO_PROBE_SHOWS.format(core=say(core))
        raise OutOfRange(f"reading {place}: {came}.{told}")
    return core_C
