"""What a newer key or library would change, in words: by name, before anybody takes it."""

from coursework.words import number, plural

KEY, NUMBERS = "the kit's newer key", "the numbers that the kit asks for now"
SAME = "With {} nobody's numbers, right answers or points change."
HEAD = "With {}, of {} on the roster:"


def in_words(other, roster, what=KEY):
    """Whose numbers, right answers and points would change, a line each, with an example.

    Parameters
    ----------
    other : Other
    roster : dict of str to str
        Student number to name.
    what : str
        `KEY` or `NUMBERS`: what would be taken.

    Returns
    -------
    str
    """
    if not other.moved:
        return "\n".join([SAME.format(what), *_texts(other)])
    head = HEAD.format(what, plural(len(roster), "student"))
    lines = [head, *_counts(other), *_alike(other, roster), *_example(other, roster)]
    return "\n".join([*lines, *_texts(other)])


def _counts(other):
    """How many students each kind of change would meet; none of it hides behind the names."""
    kinds = {
        "other numbers drawn": "numbers_differ",
        "another answer right": "right_differs",
        "other points for work that is marked": "points_differ",
    }
    for words, differs in kinds.items():
        count = sum(any(getattr(one, differs) for one in those) for those in other.moved.values())
        yield f"– {words}: {plural(count, 'student')}"


def _alike(other, roster):
    """Every student by name, those for whom the same changes in one line."""
    alike = {}
    for student in other.moved:
        alike.setdefault(_of_one(other, student), []).append(student)
    for words, students in alike.items():
        names = ", ".join(f"{roster.get(one, one)} ({one})" for one in students)
        yield f"  {words}: {names}."


def _of_one(other, student):
    """What differs for a student, and how far their work has come."""
    those = other.moved[student]
    parts = [_stand(other, student)]
    for words, differs in (("other numbers in", "numbers_differ"),
                           ("another right answer in", "right_differs")):  # fmt: skip
        questions = [one.question for one in those if getattr(one, differs)]
        parts += [f"{words} {', '.join(questions)}"] if questions else []
    points = [
        f"{one.question} {_points(one.points[0])} → {_points(one.points[1])}"
        for one in those
        if one.points_differ
    ]
    if student in other.marked:
        parts.append(f"points {', '.join(points)}" if points else "the same points")
    return "; ".join(parts)


def _stand(other, student):
    if student in other.marked:
        return "Marked"
    return "Handed in, not marked" if student in other.handed_in else "Nothing handed in"


def _points(points):
    return "open" if points is None else number(points)


def _example(other, roster):
    """The first numbers that differ, before and after."""
    for student, those in other.moved.items():
        for one in those:
            before, after = one.given
            pairs = zip(before, after, strict=False)
            differ = [f"{old} → {new.rpartition(': ')[2]}" for old, new in pairs if old != new]
            if differ:
                right = f" Right: {one.right[0]} → {one.right[1]}." if one.right_differs else ""
                name = roster.get(student, student)
                return [f"For example, {name}, {one.question}: {'; '.join(differ)}.{right}"]
    return []


def _texts(other):
    if not other.texts:
        return []
    return [f"Other words, tolerance, points or slips: {', '.join(other.texts)}."]
