"""What holds now: the list of decisions read from its first line to its last.

Of several decisions about the same thing the last one holds. A line that was taken back never
was; taking back a taking-back lets the line hold again.
"""

from dataclasses import dataclass, field, replace

__all__ = ["Holding", "holding", "live"]


@dataclass(frozen=True)
class Holding:
    """What holds, by what it is about. Each value is the decision itself.

    Attributes
    ----------
    files : dict of str to Decision
        A file's SHA-256 to where it is placed, or that it is set aside.
    ever_placed : frozenset of str
        Files that somebody placed or set aside at some time.
    counts, handed_in, excused, on_paper : dict
        By (student, set); `handed_in` by file as well.
    extensions : dict of (str, str) to Decision
        By set and student; the student is "" for the whole class.
    points : dict of (str, str, str) to Decision
        By set, student and question.
    dropped, full : dict of (str, str) to Decision
        By set and question.
    accepted : dict of (str, str) to tuple of Decision
        By set and question.
    practical : dict of (str, str) to Decision
        By student and name of the practical mark.
    newer_keys : dict of str to Decision
        By set: the kit's key that was taken in place of the one handed out.
    newer_numbers : dict of str to Decision
        By set: the numbers and right answers that were taken in place of those that went out.
    declined_keys : dict of (str, str) to Decision
        By set and the SHA-256 of the kit's key that the class does not want.
    """

    files: dict = field(default_factory=dict)
    ever_placed: frozenset = frozenset()
    counts: dict = field(default_factory=dict)
    handed_in: dict = field(default_factory=dict)
    excused: dict = field(default_factory=dict)
    on_paper: dict = field(default_factory=dict)
    extensions: dict = field(default_factory=dict)
    points: dict = field(default_factory=dict)
    dropped: dict = field(default_factory=dict)
    full: dict = field(default_factory=dict)
    accepted: dict = field(default_factory=dict)
    practical: dict = field(default_factory=dict)
    newer_keys: dict = field(default_factory=dict)
    newer_numbers: dict = field(default_factory=dict)
    declined_keys: dict = field(default_factory=dict)

    def due(self, rule, set_id, student):
        """A set's rule with the due time that holds for a student.

        An extension for one student goes before one for the class, also where it is shorter. It
        moves the time for every attempt: a second due time that would come before it moves too.

        Parameters
        ----------
        rule : SetRule
        set_id, student : str

        Returns
        -------
        SetRule
        """
        found = self.extensions.get((set_id, student)) or self.extensions.get((set_id, ""))
        if found is None or rule.due is None:
            return rule
        second = rule.second_due and max(rule.second_due, found.seconds)
        return replace(rule, due=found.seconds, second_due=second)

    def apart(self, set_id):
        """Students whose mark of a set does not come from their file: on paper, or excused.

        Parameters
        ----------
        set_id : str

        Returns
        -------
        dict of str to Decision
            By student; who is excused and has marks on paper too is excused.
        """
        both = [*self.on_paper.values(), *self.excused.values()]
        return {one.student: one for one in both if one.set_id == set_id}

    def timed(self, arrived):
        """Arrivals with the times that a person said, earliest first.

        Parameters
        ----------
        arrived : list of Arrival

        Returns
        -------
        list of Arrival
        """
        said = [self._timed(one) for one in arrived]
        return sorted(said, key=lambda one: one.seconds or 0)

    def _timed(self, one):
        found = self.handed_in.get((one.student, one.set_id, one.sha256))
        return replace(one, seconds=found.seconds) if found else one


def live(decisions):
    """The lines that were not taken back, in order, without the taking back itself.

    Parameters
    ----------
    decisions : sequence of Decision
        In the order of their numbers.

    Returns
    -------
    list of Decision
    """
    gone = set()
    for one in reversed(decisions):  # a later line decides whether an earlier taking-back holds
        if one.kind == "take back" and one.number not in gone:
            gone.add(one.line)
    return [one for one in decisions if one.number not in gone and one.kind != "take back"]


def holding(decisions):
    """What holds after all these lines.

    Parameters
    ----------
    decisions : sequence of Decision

    Returns
    -------
    Holding
    """
    placing = ("place", "set aside")
    found = Holding(ever_placed=frozenset(one.file for one in decisions if one.kind in placing))
    for one in live(decisions):
        _ENTER[one.kind](found, one)
    return found


def _student_and_set(where):
    def enter(found, one):
        getattr(found, where)[one.student, one.set_id] = one

    return enter


def _set_and_question(where):
    def enter(found, one):
        getattr(found, where)[one.set_id, one.question] = one

    return enter


def _file(found, one):
    found.files[one.file] = one


def _handed_in(found, one):
    found.handed_in[one.student, one.set_id, one.file] = one


def _extension(found, one):
    found.extensions[one.set_id, one.student] = one


def _points(found, one):
    found.points[one.set_id, one.student, one.question] = one


def _accepted(found, one):
    key = one.set_id, one.question
    found.accepted[key] = (*found.accepted.get(key, ()), one)


def _practical(found, one):
    found.practical[one.student, one.question] = one


def _newer_key(found, one):
    found.newer_keys[one.set_id] = one


def _newer_numbers(found, one):
    found.newer_numbers[one.set_id] = one


def _own_key(found, one):
    found.declined_keys[one.set_id, one.file] = one


_ENTER = {
    "place": _file,
    "set aside": _file,
    "this one counts": _student_and_set("counts"),
    "handed in at": _handed_in,
    "extension": _extension,
    "excused": _student_and_set("excused"),
    "on paper": _student_and_set("on_paper"),
    "points by hand": _points,
    "back to the machine": _points,
    "dropped question": _set_and_question("dropped"),
    "accept this too": _accepted,
    "full marks": _set_and_question("full"),
    "practical mark": _practical,
    "copies discarded": lambda *_: None,  # it changes nobody's mark
    "newer key": _newer_key,
    "own key": _own_key,
    "newer numbers": _newer_numbers,
}
