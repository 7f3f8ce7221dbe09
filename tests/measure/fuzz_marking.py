"""Fuzz what reads strangers' bytes: taking in, pouring, and the stream that a room sends.

A script and no test: `python tests/measure/fuzz_marking.py 12000 7` makes 12,000 inputs from
seed 7, prints how far it is and what came of them, and stops at the first one that breaks a rule,
with its seed. A third word names the one kind that is wanted: `50000 7 answers` marks 50,000
hand-ins of all sets, reviews among them, and `10000 7 answers 09-keep-it-safe` of those named.
`test_fuzz_marking.py` runs some hundreds of the same inputs.
"""

import contextlib
import hashlib
import io
import json
import math
import os
import random
import re
import sys
import tempfile
import zipfile
from collections import Counter
from dataclasses import asdict
from functools import lru_cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT), str(ROOT / "instructor")]

from coursework.arriving.arrivals import read_list, writable  # noqa: E402
from coursework.arriving.reading_in import UnreadableNotebook, read_notebook  # noqa: E402
from coursework.arriving.take_in import take_in  # noqa: E402
from coursework.classes.course import Bounds, new_course  # noqa: E402
from coursework.marking.pour import pour  # noqa: E402
from coursework.marking.room.plain import (  # noqa: E402
    MOST_ITEMS,
    MOST_TEXT,
    Odd,
    from_plain,
    to_plain,
)
from coursework.marking.room.visit import _read, asked_in  # noqa: E402
from coursework.sets.key_text import key_notebook, set_ids  # noqa: E402
from coursework.sets.keys import grade_id, load_key, source  # noqa: E402

from kitchenmath.practice import in_words, sentences  # noqa: E402
from kitchenmath.units.registry import Quantity, registry  # noqa: E402
from tests.helpers.filled_in import KEY, RELEASED, SET, STUDENT, honest, raw  # noqa: E402

BOUNDS = Bounds(file_bytes=200_000)
OURS = json.loads(RELEASED)["cells"]
ASKS = {place: asked_in(cell) for place, cell in enumerate(OURS) if cell["cell_type"] == "code"}
CHECKS = [place for place, asked in ASKS.items() if asked]
HAND_IN = raw(honest())
SHEET = load_key(KEY, "demo", tried=()).sheet
# Worked by hand in filled_in.py: g, nets, g, dollars a gram, dollars; and the steps of the key.
HAND = {"q1": (3000, 50), "q2": (2, 0.05), "q3": (168.92, 5), "q4": (0.02444, 0.0001),
        "q5": (16.651, 0.25)}  # fmt: skip
BASE = {"q1": "g", "q2": "count", "q3": "g", "q4": "dollar/g", "q5": "dollar"}


def mutated(chance, data, pieces=(b'"', b"}", b"]", b"\\", b"\n", b"\0", b"\xff", b'{"cell": 8')):
    """Bytes with some of them flipped, cut out, doubled, moved or put in."""
    data = bytearray(data)
    for _ in range(chance.choice((0, 1, 1, 2, 3, 8))):
        at, many = chance.randrange(len(data) + 1), chance.choice((1, 2, 5, 30, 200, 3000))
        how = chance.randrange(7)
        if how == 0 and at < len(data):
            data[at] ^= 1 << chance.randrange(8)
        elif how == 1:
            del data[at:]
        elif how == 2:
            del data[at : at + many]
        elif how == 3:
            data[at:at] = data[at : at + many]
        elif how == 4:
            piece = data[at : at + many]
            del data[at : at + many]
            there = chance.randrange(len(data) + 1)
            data[there:there] = piece
        elif how == 5:
            data[at:at] = chance.choice(pieces) * chance.choice((1, 1, 2, 600))
        else:
            data[at:at] = chance.randbytes(many)
    return bytes(data)


# A stranger's file ---------------------------------------------------------------------------


def a_file(chance):
    """A hand-in, a zip or something else, mostly damaged."""
    kind = chance.randrange(6)
    if kind == 0:
        return chance.randbytes(chance.randrange(600))
    if kind in (1, 2):
        return mutated(chance, HAND_IN)
    packed = io.BytesIO()
    method = chance.choice((zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED, zipfile.ZIP_LZMA))
    with zipfile.ZipFile(packed, "w", method) as archive:
        for number in range(chance.randrange(4)):
            inner = a_file(chance) if chance.random() < 0.3 else mutated(chance, HAND_IN)
            name = chance.choice(("a", "../a", "/a", "C:a", "é", "a/b", ".a", "x" * 300))
            archive.writestr(f"{name}{number}", inner)
    return mutated(chance, packed.getvalue(), (b"PK\x03\x04", b"PK\x01\x02", b"PK\x05\x06"))


def take_in_files(files):
    """Take files in and check that none is lost: each is kept by its SHA-256, or said why not.

    Returns
    -------
    Counter
        What became of them.
    """
    with tempfile.TemporaryDirectory() as folder:
        post = Path(folder) / "post"
        post.mkdir()
        for number, data in enumerate(files):
            (post / f"file-{number:03}").write_bytes(data)
        course = new_course(Path(folder) / "class", "Class", "demo", {STUDENT: "Ada Quill"})
        course.release(SET).parent.mkdir(parents=True)
        course.release(SET).write_bytes(RELEASED)
        outside = sorted(os.listdir(folder))
        take_in(course, post)
        listed = read_list(course)
        assert outside == sorted(os.listdir(folder)), "something was written outside"
        for number, data in enumerate(files):
            name = f"file-{number:03}"
            mine = [one for one in listed if one.name.split("/")[0] == name]
            whole = hashlib.sha256(data).hexdigest() in {one.sha256 for one in mine}
            for line in [] if whole else owed(data, name):
                assert any(one.name.startswith(line) for one in mine), f"{line} is lost"
        for one in listed:
            assert one.became and one.reason, one
            if one.kept:
                kept = (course.arrived / one.kept).read_bytes()
                assert one.sha256 == hashlib.sha256(kept).hexdigest(), one
            else:
                assert one.reason.endswith("."), one
        return Counter(one.became for one in listed)


def owed(data, name):
    """Beginnings of the lines that a zip owes to the list: one for each entry that is not hidden.

    Referee: the standard library's own listing. What is no zip, or an empty one, owes its whole
    self.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            entries = [info.filename for info in archive.infolist() if not info.is_dir()]
    except Exception:  # whatever a damaged one raises
        return [name]
    shown = [each for each in entries if not re.search(r"(^|[/\\])\.(?!\.?([/\\]|$))", each)]
    return [writable(f"{name}/{each}") for each in shown] or [name]


# A stranger's notebook -----------------------------------------------------------------------


def pour_notebook(data):
    """Read and pour a notebook; check that what is marked is ours but for the answers' text."""
    try:
        read = read_notebook(data, BOUNDS.file_bytes)
    except UnreadableNotebook as error:
        assert str(error).endswith("."), error
        return "refused"
    poured = pour(RELEASED, read.cells, BOUNDS.answer_bytes, BOUNDS.own_cells)
    cells = poured.notebook["cells"]
    own = [cell for cell in cells if cell["id"].startswith("own-")]
    kept = [cell for cell in cells if not cell["id"].startswith("own-")]
    assert len(own) <= BOUNDS.own_cells
    assert [cell["id"] for cell in OURS] == [cell["id"] for cell in kept]
    for ours, cell in zip(OURS, kept, strict=True):
        assert ours["metadata"] == cell["metadata"]
        assert ours["cell_type"] == cell["cell_type"]
        if not ours["metadata"]["nbgrader"]["solution"]:
            assert ours == cell
    assert {grade_id(cell) for cell in OURS if cell["metadata"]["nbgrader"]["solution"]} == set(
        poured.answers
    )
    for cell in cells:
        assert len(source(cell).encode()) <= max(BOUNDS.answer_bytes, len(RELEASED))
        assert not cell.get("outputs")
    json.dumps(poured.notebook, ensure_ascii=False).encode()
    return "poured, something said" if read.findings or poured.findings else "poured"


# A room's stream -----------------------------------------------------------------------------

TEXTS = ("", "3 kg", "3000 g", "2", "168.9 g", "$24.44 per kg", "$16.65", "1.307 kg", "1", "3",
         "3 kg or 4 kg", "-3 kg", "1e400 kg", "nan", "inf kg", "\ud800 3 kg", "½ kg", "3 " * 9000,
         "3 kg" * 6000, "0x3 kg", "3_0 kg", "३ kg", "3 kg**2", "__import__('os')", "\0", "9" * 5000,
         "1.98 kg", "4.03 kg", "8.82 kg", "83.3 g", "157.5 g", "$19.33", "$5.30")  # fmt: skip
NUMBERS = (0, 1, 2, 3, -1, 2.0, 3.0, 168.9, 24.44, 1e308, -1e308, 5e-324, 10**300, 2**63, 0.1)
BAD_NUMBERS = ("NaN", "Infinity", "-Infinity", "1e999", "9" * 400, "9" * 5000, "true", "null")
UNITS = ("gram", "kilogram", "pascal", "count", "dollar", "degree_Celsius", "degree_Fahrenheit", "",
         "percent", "nonsense", "delta_degree_Celsius", "pound", "liter", "__class__")  # fmt: skip


def a_value(chance, depth=0):
    """A plain value as JSON text: of the allowed shapes, nearly so, or not at all."""
    kind = chance.randrange(12)
    number = json.dumps(chance.choice(NUMBERS))
    if chance.random() < 0.15:
        number = chance.choice(BAD_NUMBERS)
    if kind < 3:
        return json.dumps({"text": chance.choice(TEXTS)})
    if kind < 5:
        return f'{{"number": {number}}}'
    if kind < 8:
        units = {chance.choice(UNITS): chance.choice((1, -1, 1.0, 2, 0, 7, -6, 0.5, True, "x"))
                 for _ in range(chance.choice((0, 1, 1, 2, 2, 9)))}  # fmt: skip
        right = {"gram": 1}, {"kilogram": 1}, {"dollar": 1, "kilogram": -1}, {"dollar": 1}
        units = chance.choice(right) if chance.random() < 0.5 else units
        return f'{{"number": {number}, "units": {json.dumps(units)}}}'
    if kind < 10 and depth < 5:
        many = chance.choice((0, 1, 2, 3, 201)) if depth < 2 else 1
        inner = [a_value(chance, depth + 1) for _ in range(min(many, 3))] * (1 + many // 3)
        if kind == 8:
            return f'{{"list": [{", ".join(inner)}]}}'
        rows = (f"[{json.dumps(chance.choice(TEXTS))}, {each}]" for each in inner)
        return f'{{"table": [{", ".join(rows)}]}}'
    odd = ("null", "3", "[]", '"3 kg"', "{}", '{"type": 7}', '{"type": "\\ud800"}', "[" * 3000,
           '{"list": {"a": 1}}', '{"table": [["a"]]}', '{"table": [[1, 2]]}', '{"text": 3}',
           '{"list": [' * 900, '{"points": 4, "outcome": "right"}')  # fmt: skip
    return chance.choice(odd)


STRAY = ('{"done": true}', '{"lost": ["calls"]}', "null", "[]", "7", '{"done": 1}', "[" * 40_000,
         "{", '{"cell": {}}', '{"cell": 1e999}')  # fmt: skip


def a_stream(chance):
    """What a room may send: honest lines, forged ones, and bytes of all kinds between."""
    lines = []
    # Now and then a student who carries a slip on, as people do.
    carried = {"q1": "1.307 kg", "q2": "1", "q5": "$19.33"} if chance.random() < 0.1 else {}
    for place in [*chance.sample(CHECKS, chance.randrange(len(CHECKS) + 1)), -1, 999, True]:
        if chance.random() < 0.7:
            lines.append(f'{{"began": {json.dumps(place)}}}')
        output = json.dumps(chance.choice(("", "4 of 4 points", "x" * 3000, "\udfff", 7, None)))
        struck = json.dumps(chance.choice(([], ["figures"], ["seconds", 3, []], {"a": 1}, "files")))
        text = carried.get(ASKS.get(place))
        value = json.dumps({"text": text}) if text else a_value(chance)
        lines.append(
            f'{{"cell": {json.dumps(place)}, "output": {output}, "failed": false, '
            f'"struck": {struck}, "value": {value}}}'
        )
        if chance.random() < 0.2:
            lines.append(chance.choice(STRAY))
    data = "\n".join(lines).encode("utf-8", "surrogatepass") + b"\n"
    return mutated(chance, data) if chance.random() < 0.5 else data


def read_stream(data):
    """Read a room's stream and let the key judge; check values, points and findings.

    Returns
    -------
    Counter
        Outcomes of the verdicts.
    """
    found = _read(data, ASKS, vars(BOUNDS), OURS)
    assert set(found.answers) <= set(ASKS.values())
    for value in found.answers.values():
        check_value(value)
    for place, text in found.outputs.items():
        assert place in ASKS and isinstance(text, str)
    assert all(isinstance(each, str) and len(each) < 300 for each in found.struck)
    verdicts = SHEET.mark(STUDENT, found.answers)
    for question, verdict in verdicts.items():
        assert 0 <= verdict.points <= verdict.out_of
        if verdict.points > 0:
            check_deserved(question, verdict, found.answers)
        json.dumps(asdict(verdict), ensure_ascii=False).encode()
    return Counter(verdict.outcome for verdict in verdicts.values())


def check_value(value, depth=0):
    """Only what `from_plain` may give, finite, bounded, and writable to a file."""
    assert depth <= 3
    if isinstance(value, str):
        assert type(value) is str and len(value) <= MOST_TEXT
        value.encode()
    elif isinstance(value, list):
        assert len(value) <= MOST_ITEMS
        for each in value:
            check_value(each, depth + 1)
    elif isinstance(value, dict):
        assert len(value) <= MOST_ITEMS
        for name, each in value.items():
            name.encode()
            check_value(each, depth + 1)
    elif isinstance(value, Quantity):
        assert value._REGISTRY is registry or value._REGISTRY is Quantity._REGISTRY
        assert math.isfinite(value.magnitude)
    elif isinstance(value, Odd):
        repr(value).encode()
    else:
        assert value is None or (type(value) in (int, float) and math.isfinite(value)), value


def check_deserved(question, verdict, answers):
    """Points are for an amount that is right by hand, or earned in part by a named way.

    Referee: arithmetic on plain numbers, with the hand calculations in `filled_in.py`.
    """
    amount = by_hand(question, answers[question])
    assert amount is not None, (question, answers[question])
    right, step = HAND[question]
    if verdict.outcome == "right":
        assert abs(amount - right) <= 1.01 * step, (question, answers[question])
    elif verdict.outcome == "follow-through":
        assert any(abs(amount - each) <= 1.01 * step for each in followed(question, answers))
    else:
        assert verdict.outcome == "slip" and verdict.points < verdict.out_of


def followed(question, answers):
    """What the right method gives on one's own earlier answers, and on right ones beside them."""
    own = {name: [HAND[name][0]] for name in HAND}
    for name in own:
        with contextlib.suppress(KeyError, TypeError):
            own[name].append(float(by_hand(name, answers[name])))
    if question == "q2":
        return [math.ceil(weight / 2500 - 1e-9) for weight in own["q1"]]
    if question == "q5":
        return [(q3 * q4 + 1.70) / 0.35 for q3 in own["q3"] for q4 in own["q4"]]
    return []


TYPED_AMOUNT = re.compile(r"\s*\$?\s*([\d.]+|½)\s*(kg|g|)\s*(per kg|/kg|)\s*")


def by_hand(question, value):
    """An answer in the question's base unit, by rules simpler than the kit's; None if not one."""
    if isinstance(value, Quantity):
        try:
            return value.m_as(BASE[question])
        except Exception:
            return None
    if isinstance(value, str) and (found := TYPED_AMOUNT.fullmatch(value)):
        number, unit, per = found.groups()
        scale = {"kg": 1000, "g": 1, "": 1}[unit] / (1000 if per else 1)
        with contextlib.suppress(ValueError):
            return float(number.replace("½", "0.5")) * scale
        return None
    return value if question == "q2" and type(value) in (int, float) else None


# Answers of every set and every kind of question ------------------------------------------------

SETS = []  # those named on the command line; all where none is
STUDENTS = tuple(f"BH-{number}" for number in range(1001, 1007))
OTHER_TEXTS = (
    "2.5, 3, 3.5 mm", "3 3 3 3 3 3 3 3 3 3 mm", "0 min 4 °C\n5 min 12 °C\n10 min 31 °C",
    "15:30 start roast, roast cook", "25:99", "-5:00 to 7 pm", "every 5 min: 4, 9, 20 °C",
    "1:8:120", "65 °Bx", "10³ g", "2² kg", "4 °C²", "%", "$", "½½", "3 kg 3 kg",
)  # fmt: skip


@lru_cache
def the_sheet(set_id):
    """A set's sheet, and for some students the answers that are played by each question."""
    sheet = load_key(key_notebook(set_id), "demo", tried=()).sheet
    played = {
        student: {
            question.id: [answer for answer, _, _ in question.played(known)]
            for question, known in sheet.known(student)
        }
        for student in STUDENTS
    }
    return sheet, played


def crossed(value):
    """An answer as it comes out of a room."""
    return from_plain(json.loads(json.dumps(to_plain(value))))


def an_answer(chance, played):
    """One that students give, the same damaged, or whatever a room may send."""
    how = chance.random()
    if how < 0.4:
        return crossed(chance.choice(played))
    if how < 0.6:
        text = chance.choice([str(chance.choice(played)), *OTHER_TEXTS, *TEXTS])
        return crossed(mutated(chance, text.encode("utf-8", "replace")).decode("utf-8", "replace"))
    if how < 0.7:
        return crossed(chance.choice(OTHER_TEXTS))
    try:
        return from_plain(json.loads(a_value(chance)))
    except (ValueError, RecursionError):
        return None


def mark_answers(chance):
    """Mark one hand-in of any set; check points, words and what can be written to a file.

    Returns
    -------
    Counter
        Outcomes of the verdicts.
    """
    sheet, played = the_sheet(chance.choice(SETS or set_ids()))
    student = chance.choice(STUDENTS)
    answers = {
        question: an_answer(chance, choices)
        for question, choices in played[student].items()
        if chance.random() < 0.9
    }
    verdicts = sheet.mark(student, answers)
    assert set(sheet.questions) == set(verdicts)
    for question, verdict in verdicts.items():
        assert 0 <= verdict.points <= verdict.out_of, (sheet.set_id, question, answers)
        if answers.get(question) is None or isinstance(answers[question], Odd):
            assert verdict.points == 0, (sheet.set_id, question, answers)
        said = [in_words(verdict), *sentences(verdict)]
        json.dumps([asdict(verdict), said], ensure_ascii=False).encode()
    return Counter(verdict.outcome for verdict in verdicts.values())


# All of it -----------------------------------------------------------------------------------


def run(seed, kind):
    """One input of one kind, from a seed; returns what became of it, to be counted."""
    chance = random.Random(f"{kind}-{seed}")
    if kind == "files":
        return take_in_files([a_file(chance) for _ in range(FILES_AT_ONCE)])
    if kind == "notebooks":
        return Counter([pour_notebook(mutated(chance, HAND_IN))])
    if kind == "answers":
        return mark_answers(chance)
    return read_stream(a_stream(chance))


FILES_AT_ONCE = 40
ALL_KINDS = ("files", "notebooks", "streams", "answers")


def main(wanted, seed, kinds=ALL_KINDS):
    """Run `wanted` inputs, as many of each kind; one line of progress, then the counts."""
    counts = {kind: Counter() for kind in kinds}
    each = math.ceil(wanted / len(kinds))
    for kind, came in counts.items():
        at_once = FILES_AT_ONCE if kind == "files" else 1
        for number in range(math.ceil(each / at_once)):
            try:
                came += run(seed + number, kind)
            except BaseException:
                print(f"\n{kind}: broken by seed {seed + number}")
                raise
            if number % 10 == 9:
                print(f"\r{kind}: {(number + 1) * at_once} of {each}", end="", flush=True)
        print()
    for kind, came in counts.items():
        print(f"{kind}: {', '.join(f'{many} {what}' for what, many in came.most_common())}")


if __name__ == "__main__":
    words = [int(word) for word in sys.argv[1:3]] or [12_000]
    seed = words[1] if len(words) > 1 else random.SystemRandom().randrange(2**32)
    SETS += [word for word in sys.argv[3:] if word in set_ids()]
    main(words[0], seed, [word for word in sys.argv[3:] if word not in SETS] or ALL_KINDS)
