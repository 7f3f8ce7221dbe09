"""A class of 24 at Brackwater House, played through one set. Students and answers are invented.

Everything is real but the people: notebooks are filled in, saved and handed in the way they are
in life, and go through the same steps as a real class's work.
"""

import json
import os
import random
import shutil
import time
import zipfile
from dataclasses import dataclass
from pathlib import Path

from coursework.classes.course import CLASSES, new_course
from coursework.sets.hand_out import hand_out
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import figures, say

SET = "04-buy-enough"
TERM = "demo"
# Invented names; any likeness is chance.
NAMES = (
    "Ada Quill", "Bram Oakes", "Chidi Morrow", "Dolores Pane", "Emre Salt", "Fenna Brook",
    "Gwil Thatch", "Hana Reed", "Idris Marl", "Jolanta Fisk", "Kofi Larder", "Lotte Vane",
    "Mirek Dell", "Noor Hazel", "Orla Finch", "Pavel Rusk", "Quentin Loam", "Rosa Tansy",
    "Søren Kelp", "Tamsin Crook", "Ulla Sedge", "Viktor Bane", "Wanjiru Holt", "Zoë Ferny",
)  # fmt: skip
ROSTER = {f"BH-{1001 + place}": name for place, name in enumerate(NAMES)}
HANDED_IN = time.mktime((2026, 10, 2, 18, 30, 0, 0, 0, -1))  # any fixed evening will do

# One of each line, so that no two of the class write the same and none repeats a whole sentence.
WRITTEN = (
    ("My root was", "The celeriac was", "Mine was", "Ours was"),
    ("small and knobbly,", "round and heavy,", "a bit pithy,", "old and woody,", "fresh and firm,"),
    ("and I peeled", "so I peeled", "and the peel went"),
    ("thick.", "thin.", "too deep.", "down to the white.", "off twice in places."),
    ("Squaring off cost", "The sides took", "Trimming it square lost"),
    ("a good deal.", "more than planned.", "next to nothing.", "about as much again."),
    ("I would order", "Next time order", "We should buy"),
    ("a kilo more", "by my own yield", "as the paper says", "a little less", "one root extra"),
    ("and keep the trim", "and weigh it again", "and test it", "and cut slower"),
    ("for the velouté.", "before service.", "with the next delivery."),
)
OTHER_UNITS = {"kg": "lb", "g": "oz", "lb": "kg"}


@dataclass(frozen=True)
class Way:
    """How an invented student answers: what happens in how many of a hundred answers."""

    right: int = 0
    rounded: int = 0
    other_unit: int = 0
    slip: int = 0
    blank: int = 0
    noise: int = 0


WAYS = (
    Way(right=60, rounded=20, other_unit=15, slip=5),
    Way(right=40, rounded=25, other_unit=10, slip=20, noise=5),
    Way(right=20, rounded=20, other_unit=10, slip=40, blank=5, noise=5),
)


def play(folder=None, seed=1, progress=None):
    """Make the invented class, hand the set out, and let the 24 fill it in and hand it in.

    Parameters
    ----------
    folder : Path, optional
        The class's folder; what an earlier demonstration left there is cleared.
    seed : int
        The same seed gives the same answers.
    progress : callable, optional

    Returns
    -------
    Course
    list of Path
        A folder and a zip, as hand-ins arrive.
    """
    folder = Path(folder or CLASSES / "demo")
    if folder.exists():
        shutil.rmtree(folder)
    course = new_course(folder, "Brackwater House, demonstration class (invented)", TERM, ROSTER)
    notebook = json.loads(hand_out(course, SET).read_bytes())
    chance = random.Random(seed)
    sheet = load_key(key_notebook(SET), TERM).sheet
    filled = {}
    for done, student in enumerate(ROSTER, start=1):
        answers = _answers(sheet, student, WAYS[chance.choice((0, 1, 1, 2))], chance)
        filled[student] = _filled(notebook, student, answers, _written(student, chance))
        if progress:
            progress(done, len(ROSTER), ROSTER[student])
    return course, _arrive(folder / "post", filled, notebook, chance)


def _answers(sheet, student, way, chance):
    """What one student types for each question, by the student's own way."""
    answers, own = {}, {}
    for question, known in sheet.known(student):
        known = {**known, **own}  # a student builds on their own earlier answer
        value = question.right(known)
        happens = chance.choices(list(vars(way)), weights=vars(way).values())[0]
        if happens == "slip":
            values = [question.slip_value(slip, known) for slip in question.slips]
            values = [each for each in values if each is not None]
            value = chance.choice(values).to(value.units)
        elif happens == "noise":
            value = value * chance.choice((1.37, 0.61, 2.3))
        answers[question.id] = "" if happens == "blank" else _typed(value, happens, chance)
        if happens != "blank":
            own[question.id] = value
    return answers


def _written(student, chance):
    """What one student writes about a celeriac of their own; every fourth writes nothing."""
    if chance.choice(range(4)) == 3:
        return ""
    own = random.Random(student)  # so that other words do not change the other answers
    bought = own.randrange(620, 1900, 10)
    left = round(bought * own.uniform(0.55, 0.76), -1)
    said = " ".join(own.choice(phrases) for phrases in WRITTEN)
    return f"{bought} g in, {left:g} g out: {100 * left / bought:.0f} %. {said}"


def _typed(value, happens, chance):
    """An amount as people write it: some with a comma, some without a space."""
    unit = f"{value.units:~}"
    if happens == "other_unit" and unit in OTHER_UNITS:
        value = value.to(OTHER_UNITS[unit])
    digits = 3 if happens == "rounded" else 4
    text = say(value, digits)
    if text.startswith("$") or not any(sign in text for sign in ". "):
        return text
    if value.units == Q_(1, "count").units:
        return figures(value.magnitude, 3)
    return text.replace(" ", "") if chance.random() < 0.2 else text


def _filled(notebook, student, answers, written):
    """A student's notebook, saved with the answers in it."""
    copy = json.loads(json.dumps(notebook))
    texts = {f"{question}-answer": f'{question} = "{text}"' for question, text in answers.items()}
    texts |= {"me": f'student = "{student}"', "q6-answer": written or "*Write here.*"}
    for cell in copy["cells"]:
        if cell["id"] in texts:
            cell["source"] = texts[cell["id"]]
    return json.dumps(copy, indent=1, ensure_ascii=False).encode()


def _arrive(post, filled, notebook, chance):
    """The files as they come in life: half in a folder, half in a zip, some of them trouble."""
    files, students = [], list(filled)
    for place, student in enumerate(students):
        first = ROSTER[student].split()[0].lower()
        name = chance.choice((f"{first}.ipynb", f"set4 {first} FINAL.ipynb", "04-buy-enough.ipynb",
                              f"Untitled{place}.ipynb", f"{first}_hw(2).ipynb"))  # fmt: skip
        files.append([f"{place:02d}/{name}", filled[student], place])
    copied, copier = students[3], students[18]
    files[18][1] = filled[copied].replace(copied.encode(), copier.encode())
    again = filled[students[5]].replace(
        b'q2 = \\"', b'q2 = \\"1'
    )  # a second thought, for the worse
    nobody = _filled(notebook, "", {"q1": "3 kg", "q2": "2"}, "")
    stranger = _filled(notebook, "BH-9917", {"q1": "2.9 kg"}, "")
    files += [
        ["late/fenna again.ipynb", again, 40],
        ["05/no name.ipynb", nobody, 41],
        ["05/cousin.ipynb", stranger, 42],
        ["05/broken.ipynb", filled[students[8]][:400], 43],
        ["05/shopping list.txt", b"celeriac, cider, mustard", 44],
    ]
    folder, archive = post / "by hand", post / "download.zip"
    folder.mkdir(parents=True)
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED) as zipped:
        for place, (name, raw, minute) in enumerate(files):
            moment = HANDED_IN + 60 * minute
            if place % 2:
                zipped.writestr(zipfile.ZipInfo(name, time.localtime(moment)[:6]), raw)
            else:
                file = folder / name
                file.parent.mkdir(exist_ok=True)
                file.write_bytes(raw)
                os.utime(file, (moment, moment))
    return [folder, archive]


def told(folder, seed):
    """Play the demonstration from handing out to the reports, and say on the terminal how it went.

    Parameters
    ----------
    folder : Path
        Where the class goes.
    seed : int
        The same seed gives the same marks.
    """
    from coursework.arriving.take_in import take_in
    from coursework.arriving.taken_in_words import in_words
    from coursework.marking.mark_set import mark_set
    from coursework.progress import Progress
    from coursework.reports.hand_back import hand_back
    from coursework.reports.in_lines import marks_in_lines
    from coursework.reports.report import report

    print("A demonstration class at Brackwater House. The students and their answers are invented.")
    with Progress("Handing out, and 24 students fill it in") as progress:
        course, places = play(folder, seed, progress)
    with Progress("Taking in a folder and a zip") as progress:
        taken = take_in(course, places, progress)
    with Progress("Marking") as progress:
        mark_set(course, SET, progress)
    with Progress("Handing back") as progress:
        hand_back(course, SET, progress)
    with Progress("Reporting") as progress:
        sheet, page = report(course, SET, progress)
    print()
    print(f"{marks_in_lines(course, SET)}\n\n{in_words(taken)}\n")
    print(
        "Question 6 is a written answer and waits for you. Mark it at the desk: python3 instructor"
    )
    print(f"A page for each student: {course.folder / 'feedback'}")
    print(f"Mark sheet:              {sheet}\nThe class's page:        {page}")
