"""Going through JSON text value by value, so that most of it is never built.

A notebook of 47 MB is nearly all outputs, which nobody needs for marking: they are stepped over.
A file that breaks off has been read up to the break. The time grows with the length of the text
and with nothing else, a text nested 50,000 deep is refused before anything recurses, and of a text
of millions of pieces only as many are read as any notebook has.
"""

import json
import re

# A plot's description in an output nests to some dozens; recursion of Python ends at about 1,000.
DEEPEST = 500
# No cell that a student typed is longer; what is longer is not built.
LONGEST = 5_000_000

# What reading may cost, in brackets and strings stepped over: some seconds. A value that is stopped
# at takes as long as twenty of them. A notebook with 20,000 cells takes some 4,000,000.
MOST_PIECES, A_STOP = 6_000_000, 20
ORDINARY = 1_000_000  # letters of a notebook without many pictures

SPACE = re.compile(r"[ \t\r\n]*")
BARE = re.compile(r"[-+.\w]+")
STOP = re.compile(r'["\[\]{}]')


class Broken(ValueError):
    """Here the text ends too early or is no JSON any more."""


class TooDeep(ValueError):
    """Lists in lists in lists, deeper than any notebook."""


class TooMuch(Broken):
    """More pieces than any notebook has; up to here it was read."""


class Budget:
    """The pieces that may still be read, of one file or of all that came in one hand-in."""

    def __init__(self, pieces=MOST_PIECES):
        self.left = pieces

    def spend(self, pieces):
        """Take pieces off, or raise `TooMuch` where there are no more."""
        self.left -= pieces
        if self.left < 0:
            raise TooMuch


class Members(tuple):
    """An object as its members in order, so that a name that stands twice is there twice."""


class Built:
    """A text that Python's own reader took whole, gone through as `Walk` does, and much faster."""

    def __init__(self, node, budget=None):
        self.node, self.budget = node, budget or Budget()

    def next_mark(self):
        """How the value begins."""
        marks = {Members: "{", list: "[", str: '"'}
        return marks.get(type(self.node), "0")

    def members(self):
        """As `Walk.members`."""
        members = self.node
        if not isinstance(members, Members):
            raise Broken
        for name, value in members:
            self.budget.spend(A_STOP)
            self.node = value
            yield name

    def elements(self):
        """As `Walk.elements`."""
        elements = self.node
        if not isinstance(elements, list):
            raise Broken
        for place, value in enumerate(elements, start=1):
            self.budget.spend(A_STOP)
            self.node = value
            yield place

    def value(self):
        """As `Walk.value`."""
        try:
            return plain(self.node)
        except RecursionError:
            return None

    def passed(self):
        """As `Walk.passed`."""
        return (self.node,)

    def text_of(self, passed, most):
        """As `Walk.text_of`; where it matters, equal as JSON."""
        return json.dumps(plain(passed[0]))[:most]


def plain(node):
    """A built value as dicts and lists."""
    if isinstance(node, Members):
        return {name: plain(each) for name, each in node}
    return [plain(each) for each in node] if isinstance(node, list) else node


def walk_of(text, budget=None):
    """The way through a JSON text: built where it is of ordinary length and whole, else stepped.

    Parameters
    ----------
    text : str
    budget : Budget, optional

    Returns
    -------
    Built or Walk
    """
    if len(text) <= ORDINARY:
        try:
            return Built(json.loads(text, strict=False, object_pairs_hook=Members), budget)
        except (ValueError, RecursionError):
            pass
    return Walk(text, budget)


class Walk:
    """A JSON text and the place up to which it was read.

    `members` and `elements` stop at each value; the caller reads it with `value`, goes into it
    with `members` or `elements`, or leaves it, and then it is stepped over.
    """

    def __init__(self, text, budget=None):
        self.text, self.at, self.budget = text, 0, budget or Budget()

    def next_mark(self):
        """The next character that is not space, still to be read; empty at the end."""
        self.at = SPACE.match(self.text, self.at).end()
        return self.text[self.at : self.at + 1]

    def take(self, marks):
        """Pass one of `marks` and return it."""
        mark = self.next_mark()
        if not mark or mark not in marks:
            raise Broken
        self.at += 1
        return mark

    def members(self):
        """Stop at the value of each member of an object; gives its name."""
        self.take("{")
        if self.next_mark() == "}":
            self.at += 1
            return
        while True:
            if self.next_mark() != '"':
                raise Broken
            name = self.value()
            self.take(":")
            yield from self.stop_at_value(name)
            if self.take(",}") == "}":
                return

    def elements(self):
        """Stop at each element of a list; gives its place, from 1."""
        self.take("[")
        if self.next_mark() == "]":
            self.at += 1
            return
        place = 0
        while True:
            place += 1
            yield from self.stop_at_value(place)
            if self.take(",]") == "]":
                return

    def stop_at_value(self, name):
        """Let the caller have the value; step over it when the caller did not read it."""
        self.budget.spend(A_STOP)
        self.next_mark()
        start = self.at
        yield name
        if self.at == start:
            self.skip()

    def value(self):
        """The next value; None when its end can be found but not its meaning."""
        self.next_mark()
        start = self.at
        self.skip()
        if self.at - start > LONGEST:
            return None
        try:
            return json.loads(self.text[start : self.at], strict=False)
        except (ValueError, RecursionError):
            return None

    def passed(self):
        """Step over the next value, and keep where it stood."""
        start = self.at
        self.skip()
        return start, self.at

    def text_of(self, passed, most):
        """The text of a value that was passed, cut where it is longer than `most`."""
        start, end = passed
        return self.text[start : min(end, start + most)]

    def skip(self):
        """Step over the next value without building it."""
        mark = self.next_mark()
        if mark == '"':
            self.skip_string()
        elif mark and mark in "[{":
            self.skip_nested()
        else:
            found = BARE.match(self.text, self.at)
            if not found:
                raise Broken
            self.at = found.end()

    def skip_nested(self):
        """Step over a list or an object by counting brackets."""
        depth = 0
        while True:
            found = STOP.search(self.text, self.at)
            if not found:
                raise Broken
            self.at = found.start()
            self.budget.spend(1)
            if found.group() == '"':
                self.skip_string()
                continue
            self.at += 1
            depth += 1 if found.group() in "[{" else -1
            if depth > DEEPEST:
                raise TooDeep
            if depth == 0:
                return

    def skip_string(self):
        """Step over a string: to the first quote with an even number of backslashes before it."""
        end = self.at
        while True:
            end = self.text.find('"', end + 1)
            if end < 0:
                raise Broken
            first = end
            while self.text[first - 1] == "\\":
                first -= 1
            if (end - first) % 2 == 0:
                break
        self.at = end + 1
