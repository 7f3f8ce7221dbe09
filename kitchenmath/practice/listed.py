"""A question whose answer is a choice out of a list: lines of a record, allergens of a plate.

Each name that is left out and each that is too many costs stated points, so that half of an answer
is worth something. A slip is told where it explains all that differs.
"""

import itertools
import math
import re
from collections.abc import Callable
from dataclasses import dataclass, field, replace

from kitchenmath.conventions.system_order import in_its_words
from kitchenmath.errors import Unreadable
from kitchenmath.practice import look_words
from kitchenmath.practice.amount_played import dice
from kitchenmath.practice.question_kinds import (
    ANSWER_KINDS,
    AnswerKind,
    AskedQuestion,
    Played,
    add_kind,
)
from kitchenmath.practice.questions import value_of
from kitchenmath.practice.verdicts import Found, Verdict, refuse_doubled
from kitchenmath.practice.words import names_off
from kitchenmath.safety.allergens import allergen_names
from kitchenmath.units.door import one_of
from kitchenmath.units.saying import as_came

__all__ = ["ListedKind", "ListedQuestion", "Names"]

NONE = ("none", "nothing", "none of them", "no", "-", "–")
# Words around the names that say nothing of their own.
AROUND = {"a", "and", "allergen", "allergens", "contains", "holds", "line", "lines", "case",
          "cases", "the", "only", "cereals", "containing"}  # fmt: skip
PARTS = re.compile(r"[,;/\n+&.:]|\band\b|\s-\s", re.IGNORECASE)
NOISE_WORDS = ("all that looks wrong", "see my record")
NOISE_SETS = 4
PAIRS_FROM = 10  # names: in a shorter list a guess meets two slips at once too often by chance


class Names(tuple):
    """Names in the order of their list; says itself with commas, or "none"."""

    def __str__(self):
        return ", ".join(self) or "none"


class ListedKind(AnswerKind):
    """How names out of a list are read and said.

    Parameters
    ----------
    asked, example : str
    others : dict of str to tuple of str
        Each name of the list, with other words that mean it.
    """

    def __init__(self, asked, example, others):
        self.asked, self.example, self.names = asked, example, tuple(others)
        words = {word: name for name, also in others.items() for word in (name, *also)}
        self._meant = {word.casefold(): name for word, name in words.items()}
        self._letters = all(len(name) == 1 for name in self.names)

    def read(self, answer):
        """The names that were typed, in whatever order and with whatever between them.

        Raises
        ------
        Unreadable
            For a word that is not on the list.

        Examples
        --------
        >>> LETTERS.read("f and B"), str(ALLERGENS.read("Milk, wheat (flour), soy"))
        (('B', 'F'), 'gluten, soya, milk')
        """
        if isinstance(answer, list | tuple | set) and all(isinstance(one, str) for one in answer):
            answer = ", ".join(answer)
        if not isinstance(answer, str):
            raise Unreadable(f"{as_came(answer)} is no list of names: {self._such_as}")
        text = re.sub(r"\([^)]*\)", " ", answer[:400]).strip().casefold()
        if text in NONE:
            return Names()
        found = set()
        for part in PARTS.split(text):
            found |= self._in(" ".join(part.split()))
        if not found:
            raise Unreadable(f"{as_came(answer)} names nothing of the list: {self._such_as}")
        return Names(name for name in self.names if name in found)

    @property
    def _such_as(self):
        return look_words.TYPE_SUCH_AS.format(asked=self.asked, example=self.example)

    def _in(self, part):
        """The names in a part between two commas."""
        if part in self._meant:
            return {self._meant[part]}
        found = set()
        for word in (each for each in part.split() if each not in AROUND or each in self._meant):
            if word in self._meant:
                found.add(self._meant[word])
            elif self._letters and all(letter in self._meant for letter in word):
                found |= {self._meant[letter] for letter in word}
            else:
                raise Unreadable(
                    f"{as_came(word)} is not on this list: {', '.join(self.names)}. "
                    f"So {self._such_as}"
                )
        return found

    def seen(self, value, plausible):
        """What can be said of names; `plausible` has those that the question has."""
        odd = [name for name in value if plausible and name not in plausible]
        if odd:
            names = {"odd": ", ".join(odd), "there": ", ".join(plausible)}
            return True, look_words.READ_AS.format(value=value) + look_words.NOT_AMONG.format(
                **names
            )
        return False, look_words.READ_AS.format(value=value)


ALSO = {
    "gluten": ("wheat", "flour", "barley", "rye", "oats"),
    "crustaceans": ("crustacean", "shellfish"),
    "egg": ("eggs",),
    "peanuts": ("peanut",),
    "soya": ("soy", "soybean", "soybeans", "soja"),
    "milk": ("dairy", "butter", "cream", "lactose"),
    "nuts": ("nut", "tree nuts"),
    "celery": ("celeriac",),
    "sulphites": ("sulphite", "sulfites", "sulfite", "sulphur dioxide", "so2"),
    "molluscs": ("mollusc", "mollusks"),
    "sesame": ("sesame seeds",),
}
LETTERS = ListedKind(
    "letters of the lines", "B, F", {letter: (letter.lower(),) for letter in "ABCDEFGHIJ"}
)
ALLERGENS = ListedKind(
    "allergens of the list", "milk, celery", {name: ALSO.get(name, ()) for name in allergen_names()}
)
US_ALSO = {
    "wheat": ("gluten", "flour"), "soybeans": ("soybean", "soya", "soy", "soja"),
    "crustacean shellfish": ("crustaceans", "crustacean", "shellfish"),
    "tree nuts": ("tree nut", "nuts", "nut"),
}  # fmt: skip
US_ALLERGENS = ListedKind(
    "allergens of the list",
    "milk, egg",
    {name: US_ALSO.get(name, ALSO.get(name, ())) for name in allergen_names("US")},
)
add_kind("letters", LETTERS)
add_kind("allergens", ALLERGENS)
add_kind("US allergens", US_ALLERGENS)


@dataclass(frozen=True)
class ListedQuestion(AskedQuestion):
    """A question with one right choice out of a list.

    Parameters
    ----------
    id, kind : str
        The kind is one that was added as a `ListedKind`.
    points : float
    formula : callable
        The right names from given numbers, taken by name.
    left_out, too_many : float
        What each name costs that is missing, and each that does not belong there.
    among : tuple of str
        The names to choose from, where they are not all of the kind's.
    slips : tuple of Slip
        Their formulas give names, or None where the slip makes no difference; what one costs
        follows from the two numbers above.
    working, on_the_way, skill, lesson
        As for a `Question`.
    """

    id: str
    kind: str
    points: float
    formula: Callable
    left_out: float
    too_many: float
    among: tuple = ()
    slips: tuple = ()
    working: tuple = ()
    on_the_way: dict = field(default_factory=dict, repr=False, hash=False)
    skill: str = ""
    lesson: str = ""

    def __post_init__(self):
        one_of(self.kind, ANSWER_KINDS, "kind")
        refuse_doubled(self)

    @property
    def names(self):
        """The names to choose from, in order."""
        return self.among or ANSWER_KINDS[self.kind].names

    def right(self, known):
        """The right names with these numbers."""
        return self._ordered(value_of(self.formula, known))

    def look(self, answer):
        """What the student typed, as names; a KitchenError carries what they see."""
        return ANSWER_KINDS[self.kind].read(answer)

    def in_college(self, college):
        """The same question by the class's list of allergens, its own system first."""
        kind = college.allergens if self.kind == "allergens" else self.kind
        return replace(self, kind=kind, **in_its_words(self, college))

    def judge(self, answer, known, own=None, sound=()):
        """The verdict on an answer; `own` and `sound` are not needed, as it builds on none."""
        right = self.right(known)
        value, verdict = self.looked(answer, right, known)
        if verdict:
            return verdict
        if value == right:
            return self._verdict("right", self.points, value, right, known)
        off = _off(value, right)
        points = math.floor(2 * max(0.0, self.points - self._costs(off)) + 1e-9) / 2
        told, either = self._told(off, right, known)
        notes = () if told else (names_off(*map(self._ordered, off)),)
        outcome = "slip" if told else "wrong"
        return self._verdict(outcome, points, value, right, known, told, notes, either)

    def slip_value(self, slip, known):
        """The names that a slip leads to, or None where it makes no difference."""
        names = value_of(slip.formula, known)
        names = None if names is None else self._ordered(names)
        return None if names == self.right(known) else names

    def collisions(self, known):
        """A slip that leads to the right names is taken for one that makes no difference."""
        return []

    def played(self, known):
        """Answers as students give them, and what is to be found about each."""
        right = self.right(known)
        ways = (", ".join(right), "\n".join(right), " and ".join(reversed(right)))
        yield from (Played(typed or "none", "right") for typed in (*ways, ways[0].upper()))
        led = {slip.name: self.slip_value(slip, known) for slip in self.slips}
        led = {name: names for name, names in led.items() if names is not None}
        for name, names in led.items():
            yield Played(str(names), "slip", (name,))
        for one, other in itertools.combinations(led, 2):
            (left, more), (less, extra) = _off(led[one], right), _off(led[other], right)
            both = (set(right) - left - less) | more | extra
            yield Played(str(self._ordered(both)), "two slips", (one, other))
        yield from (Played(words, "noise") for words in NOISE_WORDS)
        for place in range(NOISE_SETS):
            some = [n for n in self.names if dice("listed", self.id, str(right), place, n) < 0.5]
            yield Played(str(self._ordered(some)), "noise")

    def _ordered(self, names):
        names = set(names)
        return Names(name for name in ANSWER_KINDS[self.kind].names if name in names)

    def _costs(self, off):
        left, extra = off
        return self.left_out * len(left) + self.too_many * len(extra)

    def _told(self, off, right, known):
        """The slips that explain all that differs: one, else two; and whether either may be it."""
        led = [(slip, self.slip_value(slip, known)) for slip in self.slips]
        shows = [(slip, _off(names, right)) for slip, names in led if names is not None]
        alone = [(slip, its) for slip, its in shows if its == off]
        if alone:
            return alone, len(alone) > 1
        if len(self.names) < PAIRS_FROM:
            return (), False
        for two in itertools.combinations(shows, 2):
            if tuple(one | other for one, other in zip(two[0][1], two[1][1], strict=True)) == off:
                return two, False
        return (), False

    def _verdict(self, outcome, points, answer, right, known, told=(), notes=(), either=False):
        between = {name: value_of(each, known) for name, each in self.on_the_way.items()}
        shown = {name: str(value) for name, value in (known | between).items()}
        return Verdict(
            question=self.id,
            outcome=outcome,
            points=float(points),
            out_of=float(self.points),
            found=tuple(Found(slip.name, slip.sentence, self._costs(its)) for slip, its in told),
            alternatives=either,
            notes=notes,
            answer=str(answer),
            right=str(right),
            working=tuple(line.format(answer=right, **shown) for line in self.working),
        )


def _off(names, right):
    """What is left out of the right names, and what is too many."""
    return frozenset(right) - frozenset(names), frozenset(names) - frozenset(right)
