"""What a hostile hand-in may try: code of an answer cell, changed notebooks, files that are none.

{…} in the code is a place of this machine; the test that runs it says which.
"""

from tests.helpers.filled_in import COMPUTED, cell, code, copied, filled, raw

# Bounds that strike, or a cell that is ended from outside.
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
    "runs a shell by the notebook's own sign": "!sleep {token}",
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
    "deletes the keys": "import os\nos.remove('{key}')",
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
    "lists the home folder": "import os\nprint('found', os.listdir('{home}'))",
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
