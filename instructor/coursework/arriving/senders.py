"""Who sent a file, where the name under which a platform keeps it says so.

A student types a number into the notebook; anybody can type any. A platform writes the sender's
name or number into the name of a folder or a file, and that is another witness.
"""

import re

from kitchenmath.typed.bare_words import bare_words

__all__ = ["Senders"]

# Shorter ones occur in any name: the 4 of "04-buy-enough", the year, the month of May.
FEWEST_FIGURES = 5
FEWEST_SIGNS = 4
MOST_PARTS = 8  # of a student number that is written with spaces or strokes


class Senders:
    """The students of a roster, to be found in the names of folders and files.

    Parameters
    ----------
    roster : dict of str to str
        Student number to name.
    """

    def __init__(self, roster):
        self._as_one, self._by_first = {}, {}
        for student, name in roster.items():
            number, words = "".join(bare_words(student)), bare_words(name)
            if len(number) >= (FEWEST_FIGURES if number.isdigit() else FEWEST_SIGNS):
                self._as_one.setdefault(number, set()).add(student)
            if len("".join(words)) >= FEWEST_SIGNS:
                self._by_first.setdefault(words[0], []).append((student, words))
                for run in ("".join(words), "".join([*words[-1:], *words[:-1]])):
                    self._as_one.setdefault(run, set()).add(student)

    def of(self, outer):
        """The one student whose number or whole name stands in a name; "" for none, or several.

        Parameters
        ----------
        outer : str
            Folders and file as the platform names them. The outermost part that names anybody is
            the platform's; what is below it may be named by the student.

        Returns
        -------
        str
            A student number.

        Examples
        --------
        >>> senders = Senders({"BH-1001": "Ada Quill", "BH-1002": "Bram Oakes"})
        >>> senders.of("Quill, Ada - 12/about BH-1002.ipynb")
        'BH-1001'
        >>> senders.of("for Bram Oakes from Ada Quill.ipynb")
        ''
        """
        for part in re.split(r"[/\\]", outer):
            found = self._in(bare_words(part))
            # "Ada Mary Quill" is not "Ada Quill" too.
            whole = [student for student, places in found.items()
                     if not any(places < other for other in found.values())]  # fmt: skip
            if whole:
                return whole[0] if len(whole) == 1 else ""
        return ""

    def _in(self, words):
        """Each student named in these words, with the places of the words that do it."""
        found = {}
        for start, word in enumerate(words):
            for stop in range(start + 1, min(start + MOST_PARTS, len(words)) + 1):
                for student in self._as_one.get("".join(words[start:stop]), ()):
                    found[student] = frozenset(range(start, stop))
            for student, wanted in self._by_first.get(word, ()):
                if all(one in words for one in wanted):
                    found[student] = frozenset(words.index(one) for one in wanted)
        return found
