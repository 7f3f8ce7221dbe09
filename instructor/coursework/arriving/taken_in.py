"""What one taking-in brought: as data for a page, and as a few lines for the terminal."""

from dataclasses import dataclass

from coursework.arriving.arrivals import said
from coursework.arriving.clock import on_the_clock, still_to_come
from coursework.arriving.states import AGAIN, COUNTS, NOT_PLACED, REPLACED, SET_ASIDE, WAITS
from coursework.words import plural

__all__ = ["AT_THE_DESK", "TYPED", "TakenIn"]

IN_DOUBT = "in doubt"
_STAYS = "What is marked stays until you say which one counts:"
_KEPT = "What is not placed is kept. Mend the roster and take it in again, or say whose it is:"
_OWN_WORD = "A file's own word decides nothing. Where you know better:"
# What to do next, by what became of a file: for who types commands, and for who sits at the desk.
TYPED = {
    WAITS: f"{_STAYS} at the desk, or with python3 instructor counts.",
    NOT_PLACED: f"{_KEPT} at the desk, or with python3 instructor place.",
    IN_DOUBT: f"{_OWN_WORD} python3 instructor handed-in.",
}
AT_THE_DESK = {
    WAITS: f"{_STAYS} below, in the inbox.",
    NOT_PLACED: f"{_KEPT} below, in the inbox.",
    IN_DOUBT: f"{_OWN_WORD} below, under “What you decide”, say when it was handed in.",
}

MOST_LINES = 20  # of a kind; the list has them all


@dataclass(frozen=True)
class TakenIn:
    """What one taking-in brought; as text, a few lines for the instructor at a terminal.

    Attributes
    ----------
    came : tuple of Arrival
        Every file that was found this time, new or not, in order.
    new : tuple of Arrival
        Those that were not in the list before.
    mended : tuple of Arrival
        Those that could not be placed before and now are: on a mended roster, for instance.
    in_doubt : tuple of (Arrival, int, int)
        Those among the new ones that are late, and in time by their own word, with both times.
    """

    came: tuple
    new: tuple
    mended: tuple
    in_doubt: tuple = ()

    def __str__(self):
        return self.in_words(TYPED)

    def in_words(self, to_do):
        """A few lines for the instructor.

        Parameters
        ----------
        to_do : dict of str to str
            `TYPED` or `AT_THE_DESK`: what to do next, where this reader does it.

        Returns
        -------
        str
        """
        lines = self._of_new(to_do) if self.came else ["There is no file to take in."]
        if self.mended:
            lines.append(f"{counted(self.mended)} that had no place before:")
            lines += some(self.mended)
        return "\n".join([*lines, *self._of_persons(), *self._of_times(to_do)])

    def _of_new(self, to_do):
        """What became of the new files, and where there is something to do, what to do."""
        older = counted(self.came[len(self.new) :])
        if not self.new:
            return [f"Nothing new: {older} came before."]
        by = {one: [] for one in (COUNTS, REPLACED, AGAIN, WAITS, NOT_PLACED, SET_ASIDE)}
        for arrival in self.new:
            by[arrival.became].append(arrival)
        words = {} if len(by[COUNTS]) == 1 else {COUNTS: "count"}
        words |= {} if len(by[WAITS]) == 1 else {WAITS: "wait for your word"}
        parts = [f"{len(those)} {words.get(one, one)}" for one, those in by.items() if those]
        lines = [f"{counted(self.new)} taken in: {', '.join(parts)}."]
        if len(self.came) > len(self.new):
            lines.append(f"{older} came before.")
        lines += some(by[REPLACED])
        for state in (WAITS, NOT_PLACED):
            lines += [*some(by[state]), to_do[state]] if by[state] else []
        return lines

    def _of_persons(self):
        """Codes that do not fit, and a file that came before under another student's name."""
        for one in self.new:
            if one.became in (COUNTS, REPLACED, WAITS) and one.code in ("wrong", "missing"):
                yield f"  {one.name}: {one.student}, {one.set_id}, the code is {one.code}."
            if one.became == AGAIN and one.student and one.sender not in ("", one.student):
                yield f"  {one.name}: from {one.sender}, and the very same file as {one.student}'s."

    def _of_times(self, to_do):
        """Times that a person should look at: those still to come, and those in doubt."""
        for one in filter(still_to_come, self.new):
            yield (f"  {one.name}: it says {one.own_time}, which is still to come; "
                   f"{one.handed_in} counts.")  # fmt: skip
        for one, counts, says in self.in_doubt:
            yield (f"  {one.name}: {one.student}, {one.set_id}, {on_the_clock(counts)} counts, "
                   f"which is late; by its own word it is from {on_the_clock(says)}.")  # fmt: skip
        if self.in_doubt:
            yield to_do[IN_DOUBT]


def some(those):
    """A line for each, or for the first ones and one that says where the others stand."""
    lines = [f"  {said(one)}" for one in those[:MOST_LINES]]
    more = len(those) - MOST_LINES
    return [*lines, f"  and {more} more: arrived/list.csv has them all."] if more > 0 else lines


def counted(those):
    """How many files, in words."""
    return plural(len(those), "file")
