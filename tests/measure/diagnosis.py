"""How well the sets diagnose: 200 played students a set, and a table. A script, not a test.

    .venv/bin/python tests/measure/diagnosis.py [SET ...]

Each question is played by itself, on right earlier answers: right in every way that people write
it, with each slip, with two slips at once, and as plain noise. Then whole hand-ins are played, in
which each answer builds on the student's own earlier ones. A question that is no `Question` plays
its own answers (see `Played`).

What is expected. A right answer is right, and a right method on an earlier slip is followed
through. A slip is named, also where it is made on an earlier slip: its formula is run on the
student's own answer too. Now and then two slips cancel, and the answer is right. Two slips in one
number leave a number that is neither's: there the best that can be said is one of the two or
nothing, and the worst is a third. Where the third is met with nearly every student's numbers, it is
no chance: its formula is the two slips at once (flour without butter, for stock that was not
reduced), and the key has a name of its own for that. Where a kind can tell two slips apart, as a
plan can, both are wanted. Noise is a number from a quarter of the right one to four times it. Some
of it meets a slip by chance, and some is right by luck. So is noise a step beyond the right answer
on the wrong side: it earns half, and nobody could tell it from a number that was rounded there.
"""

import sys
from collections import Counter
from pathlib import Path

KIT = Path(__file__).parents[2]
sys.path[:0] = [str(KIT), str(KIT / "instructor")]

from coursework.progress import Progress  # noqa: E402
from coursework.sets.key_text import key_notebook, set_ids  # noqa: E402
from coursework.sets.keys import load_key  # noqa: E402

from kitchenmath.practice.amount_played import dice, noise  # noqa: E402
from kitchenmath.practice.question_kinds import Played  # noqa: E402
from kitchenmath.practice.words import WRONG_SIDE  # noqa: E402
from kitchenmath.units import say  # noqa: E402

STUDENTS = 200
HAND_INS = 5  # by each student
SHARES = {"right": 0.5, "slip": 0.4}  # of the answers of a hand-in; the others are noise
NOTHING = "(nothing named)"
ALWAYS = 0.9  # from this share of the students on, a third slip is the two at once by its own name
NO_NUMBER = (ArithmeticError, ValueError)  # a formula on a student's own nought


def one_by_one(sheet, student, found, confused):
    """Play every question by itself; all answers that were played, by question."""
    answers = {}
    for question, known in sheet.known(student):
        answers[question.id] = list(question.played(known))
        for answer, way, slips in answers[question.id]:
            verdict = question.judge(answer, known)
            count(found, confused, question, way, slips, verdict)
    return answers


def count(found, confused, question, way, slips, verdict):
    """Note one played answer."""
    found[way] += 1
    others = set(verdict.slips) - set(slips)
    if way == "right":
        found["refused"] += verdict.outcome != "right"
    if way == "slip":
        found["named"] += slips[0] in verdict.slips
        others |= set() if verdict.slips else {NOTHING}
    if way == "two slips":
        both = len(set(slips) & set(verdict.slips))
        found[("two", "another" if others else ("none", "one", "both")[both])] += 1
        found[("played", question.id, *slips)] += 1
        found.update(("third", question.id, *slips, other) for other in others)
        return
    lucky = way == "noise" and (verdict.outcome == "right" or verdict.slips == (WRONG_SIDE,))
    found["lucky"] += lucky
    found["accused"] += way in ("right", "noise") and verdict.outcome == "slip" and not lucky
    for other in others:
        confused[(question.id, slips[0] if slips else f"({way})", other)] += 1


def whole_hand_in(sheet, student, number, ways, found, confused):
    """Play one hand-in, each answer on the student's own earlier ones, and mark it as a whole."""
    answers, plans, own = {}, {}, {}
    for question, known in sheet.known(student, answers):  # it sees the answers as they come
        chance = dice("way", student, number, question.id)
        if question.told_in_numbers:
            play = play_on(question, known, own, chance, student)
            own[question.id] = question.look(play.answer)
        else:
            able = [each for each in ways[question.id] if each.way in ("right", "slip")]
            play = able[int(chance * len(able))]
        answers[question.id], *plans[question.id] = play
    wrong = set()
    for question_id, verdict in sheet.mark(student, answers).items():
        (way, slips), question = plans[question_id], sheet.questions[question_id]
        carried = bool(wrong & question.builds_on) and way != "noise"
        if verdict.outcome != "right":
            wrong.add(question_id)
        if carried and way == "right":
            found["carried right"] += 1
            found["carried refused"] += verdict.outcome not in ("right", "close", "follow-through")
        elif carried and verdict.outcome in ("right", "follow-through"):
            found["carried to right"] += 1
        elif carried:
            found["carried slip"] += 1
            found["carried named"] += slips[0] in verdict.slips
            others = (set(verdict.slips) or {NOTHING}) - set(slips)
            confused.update((question_id, f"{slips[0]}, carried", other) for other in others)
        else:
            found["hand-in " + way] += 1
            good = {
                "right": verdict.outcome == "right",
                "slip": set(slips) <= set(verdict.slips),
                "noise": not verdict.slips,
            }
            found["hand-in as expected"] += good[way]


def play_on(question, known, own, chance, student):
    """An answer, its way and its slips, on the student's own earlier answers."""
    started = {**known, **own}
    with_noise = noise(question, question.right(known), chance)
    try:
        if chance < SHARES["right"]:
            return Played(say(question.right(started), 4), "right")
        if chance < sum(SHARES.values()):
            place = (chance - SHARES["right"]) / SHARES["slip"]
            slip = question.slips[int(place * len(question.slips))]
            value = question.slip_value(slip, started)
            if value is not None:
                return Played(say(value, 4), "slip", (slip.name,))
    except NO_NUMBER:
        pass
    return Played(with_noise, "noise")


def measure(set_id, students=STUDENTS, progress=None):
    """Counts of what was found, and how often a slip was taken for something else.

    `confused` counts (question, slip played, slip named) where they differ.
    """
    sheet = load_key(key_notebook(set_id)).sheet
    found, confused = Counter(), Counter()
    for number in range(students):
        if progress:
            progress(number, students, "students")
        student = f"PLAYED-{number}"
        ways = one_by_one(sheet, student, found, confused)
        for hand_in in range(HAND_INS):
            whole_hand_in(sheet, student, hand_in, ways, found, confused)
    return found, confused


def share(found, part, *of):
    """A percentage, or 0 where nothing was played."""
    total = sum(found[each] for each in of)
    return 100 * found[part] / total if total else 0.0


def thirds(found):
    """Third slips named for two at once: those that are the two by a name of their own, and others.

    Returns
    -------
    list of str
        "q6: flour only + not reduced = flour for the whole stock".
    int
        How often another third was named, where numbers meet by chance.
    """
    own_names, chance = [], 0
    for (_, question, one, other, third), times in sorted(_under(found, "third").items()):
        if times >= ALWAYS * found[("played", question, one, other)]:
            own_names.append(f"{question}: {one} + {other} = {third}")
        else:
            chance += times
    return own_names, chance


def _under(found, head):
    return {key: n for key, n in found.items() if isinstance(key, tuple) and key[0] == head}


def table(set_id, found, confused):
    """What was found, as lines to print."""
    two = {end: found[("two", end)] for end in ("both", "one", "none", "another")}
    yield (
        f"{set_id:22} {found['right']:6d} {found['refused']:7d} {found['slip']:6d}"
        f" {share(found, 'named', 'slip'):6.2f}% {found['noise']:6d} {found['lucky']:5d}"
        f" {share(found, 'accused', 'right', 'noise'):6.2f}%"
    )
    yield (
        f"    two slips in one number: {found['two slips']}; both named {two['both']}, one "
        f"{two['one']}, none {two['none']}, a third {two['another']}"
    )
    own_names, chance = thirds(found)
    yield (
        f"    of those a third, {two['another'] - chance} are the two at once, by the key's own "
        f"name for that, and {chance} met by chance. {'; '.join(own_names)}".rstrip()
    )
    hand_ins = [f"hand-in {way}" for way in ("right", "slip", "noise")]
    yield (
        f"    whole hand-ins: {sum(found[way] for way in hand_ins)} answers on right ones, "
        f"{share(found, 'hand-in as expected', *hand_ins):.2f}% as expected; "
        f"{found['carried right']} right methods on earlier slips, {found['carried refused']} "
        f"refused; {found['carried slip']} slips on earlier slips, "
        f"{share(found, 'carried named', 'carried slip'):.2f}% named; "
        f"{found['carried to right']} more came out right"
    )
    yield f"    slip played > what was named: {sum(confused.values())} off the diagonal"
    for (question, played_slip, named), times in confused.most_common():
        yield f"    {times:6d}  {question}: {played_slip} > {named}"


def main(names):
    print(f"{STUDENTS} students a set; accused: right answers or noise told of a slip")
    print("set                     right refused  slips   named  noise lucky accused")
    for set_id in names or set_ids():
        with Progress(set_id, sys.stderr) as progress:
            found, confused = measure(set_id, progress=progress)
        print("\n".join(table(set_id, found, confused)), flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
