"""The start: what a bare machine gets, and what it is told when something is in the way.

Nothing here leaves this machine. A tiny kit asks for packages called brackwater-something,
and pip is told to take them from a package index that these tests serve, and nowhere else.
"""

import ast
import errno
import functools
import http.server
import json
import os
import runpy
import shutil
import signal
import socket
import subprocess
import sys
import threading
import time
import tomllib
import zipfile
from pathlib import Path

import pytest

KIT = Path(__file__).resolve().parents[2]
START = KIT / "kitchenmath" / "start.py"
COMMANDS = ["assignments", "instructor", "lessons", "tests"]
PIP = {
    "PIP_CONFIG_FILE": os.devnull,
    "PIP_DEFAULT_TIMEOUT": "100",
    "PIP_NO_CACHE_DIR": "1",
    "PIP_RETRIES": "0",
}
STARTED_BY_PATH = [START, *(KIT / command / "__main__.py" for command in COMMANDS)]

LISTS = """
[project]
name = "kitchenmath"
dependencies = ["brackwater-salt>=1,<2"]
[project.optional-dependencies]
lessons = ["brackwater-pepper>=2.1"]
herbs = ["brackwater-thyme>=1"]
tests = ["kitchenmath[lessons]", "kitchenmath[herbs]"]
"""
COMMAND = """
import json, os, runpy, sys
here = os.path.dirname(os.path.abspath(__file__))
start = runpy.run_path(os.path.join(os.path.dirname(here), "kitchenmath", "start.py"))
start["ready"](os.path.basename(here))
import brackwater_salt, kitchenmath
from importlib.metadata import version
print(json.dumps({
    "prefix": sys.prefix, "words": sys.argv[1:], "pepper": version("brackwater-pepper"),
    "library": kitchenmath.__file__, "for kernels": os.environ["PYTHONPATH"],
}))
sys.exit(len(sys.argv) - 1)
"""


def make_kit(folder, lists=LISTS, command=COMMAND):
    """A kit with the real start.py, an empty library, and two commands that tell what they see."""
    for name in ("lessons", "tests"):
        (folder / name).mkdir(parents=True)
        (folder / name / "__main__.py").write_text(command, encoding="utf-8")
    (folder / "kitchenmath").mkdir()
    (folder / "kitchenmath" / "__init__.py").touch()
    shutil.copy(START, folder / "kitchenmath")
    (folder / "pyproject.toml").write_text(lists, encoding="utf-8")
    return folder


def make_wheel(shelf, name, version):
    """The smallest package that pip takes: one empty module and what pip wants to know of it."""
    module, info = f"brackwater_{name}", f"brackwater_{name}-{version}.dist-info"
    files = {
        f"{module}.py": "",
        f"{info}/METADATA": f"Metadata-Version: 2.1\nName: brackwater-{name}\nVersion: {version}\n",
        f"{info}/WHEEL": "Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n",
    }
    files[f"{info}/RECORD"] = "".join(f"{file},,\n" for file in [*files, f"{info}/RECORD"])
    wheel = shelf / f"brackwater-{name}" / f"{module}-{version}-py3-none-any.whl"
    wheel.parent.mkdir(parents=True)
    with zipfile.ZipFile(wheel, "w") as archive:
        for file, text in files.items():
            archive.writestr(file, text)
    return wheel


class Quiet(http.server.SimpleHTTPRequestHandler):
    """Its lists of files are just what pip reads as a package index."""

    def log_message(self, *_):
        pass


@pytest.fixture(scope="module")
def shop(tmp_path_factory):
    """A web server for shelves of packages: its folder, and the address of that folder."""
    folder = tmp_path_factory.mktemp("shop")
    handler = functools.partial(Quiet, directory=str(folder))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        thread = threading.Thread(target=server.serve_forever)
        thread.start()
        yield folder, f"http://127.0.0.1:{server.server_port}"
        server.shutdown()
        thread.join()


@pytest.fixture(scope="module")
def index(shop):
    """The address of a shelf with salt, pepper and thyme."""
    folder, address = shop
    for name, version in [("salt", "1.2"), ("pepper", "2.1.0"), ("thyme", "1.0")]:
        make_wheel(folder / "spices", name, version)
    return f"{address}/spices"


@pytest.fixture
def silent_index():
    """A package index that takes a call and does not answer."""
    with socket.create_server(("127.0.0.1", 0)) as server:
        server.settimeout(60)
        yield server


def address(server):
    return f"http://127.0.0.1:{server.getsockname()[1]}"


def environment(index, **more):
    """This machine's environment, with its settings for Python, pip and proxies set aside."""
    kept = {
        name: value
        for name, value in os.environ.items()
        if not name.startswith(("PIP_", "PYTHON")) and not name.lower().endswith("_proxy")
    }
    where = {"PIP_INDEX_URL": index} if index else {"PIP_NO_INDEX": "1"}
    return {**kept, **where, **PIP, **more}


def call(kit, purpose, *words):
    """What to type to start a command of the tiny kit."""
    return [sys.executable, str(kit / purpose), *words]


def start(kit, purpose, *words, index=None, cwd=None, **more):
    """Start a command and wait for its end."""
    return subprocess.run(
        call(kit, purpose, *words),
        env=environment(index, **more),
        cwd=cwd,
        capture_output=True,
        encoding="utf-8",
        timeout=120,
    )


def begin(kit, purpose, index):
    """Start a command and go on at once."""
    return subprocess.Popen(
        call(kit, purpose),
        env=environment(index),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        encoding="utf-8",
    )


def last_line(text):
    return text.strip().splitlines()[-1]


@pytest.fixture(scope="module")
def first_start(tmp_path_factory, index):
    """The one first start that most tests look at: its kit and what it said."""
    kit = make_kit(tmp_path_factory.mktemp("start") / "kit à la crème (1)")
    elsewhere = tmp_path_factory.mktemp("elsewhere")
    return kit, start(kit, "lessons", "brine", "4 %", index=index, cwd=elsewhere)


@pytest.fixture
def whole_kit(first_start, tmp_path):
    """A copy of the kit after its first start, to be spoiled freely."""

    def copy(source, target):
        # Most files are pip's own, which nobody writes to, so a second name will do for them.
        return (os.link if "pip" in Path(source).parts else shutil.copy2)(source, target)

    kit = shutil.copytree(first_start[0], tmp_path / "kit", symlinks=True, copy_function=copy)
    return Path(kit)


@pytest.fixture
def loaded(tmp_path, monkeypatch):
    """The functions of start.py, loaded into this process for a tiny kit with nothing set up."""
    monkeypatch.setenv("PYTHONPATH", "")
    monkeypatch.setattr(sys, "path", list(sys.path))
    kit = make_kit(tmp_path / "kit")
    return runpy.run_path(str(kit / "kitchenmath" / "start.py"))


def refusal(functions):
    """The sentence with which ready() stops."""
    with pytest.raises(SystemExit) as stopped:
        functions["ready"]("lessons")
    return stopped.value.code  # Python prints it and leaves with 1


# What is needed, and is it here?


def test_a_reference_to_another_list_stands_for_that_list(loaded):
    """By hand from LISTS: tests is lessons and herbs, and salt belongs to all."""
    salt, pepper, thyme = "brackwater-salt>=1,<2", "brackwater-pepper>=2.1", "brackwater-thyme>=1"
    expected = {
        "lessons": [pepper, salt],
        "herbs": [salt, thyme],
        "tests": [pepper, salt, thyme],
    }

    assert expected == loaded["requirement_lists"]()


def test_the_kits_own_lists_can_be_read():
    """Each line of the real pyproject.toml has bounds that start.py understands."""
    functions = runpy.run_path(str(START))
    lists = functions["requirement_lists"]()
    lines = sorted({line for wanted in lists.values() for line in wanted})

    assert {"instructor", "lessons", "tests"} <= set(lists)
    assert not [line for line in lines if line.startswith("kitchenmath")]
    assert len(lines) == len(list(functions["missing"](lines, [])))  # reads all, finds none


@pytest.mark.parametrize(
    ("version", "bounds", "expected"),
    [
        ("1.26", ">=1.26,<3", True),
        ("1.25.9", ">=1.26,<3", False),
        ("3.0", ">=1.26,<3", False),
        ("2.10", ">=2.9", True),
        ("8.1", ">=8.1.0", True),
        ("8.1.0", ">=8.1", True),
        ("0.10.0", ">=0.9.6,<0.10", False),
        ("4.0.0rc1", ">=3,<4", False),
        ("2.13.0+cpu", ">=2.13", True),
        ("7", "", True),
        (None, ">=1", False),
    ],
)
def test_a_version_is_compared_number_by_number(loaded, version, bounds, expected):
    """By hand: 2.10 comes after 2.9, 8.1 is 8.1.0, and a package without version meets nothing."""
    assert expected is loaded["within"](version, bounds)


def test_a_bound_of_another_kind_is_refused(loaded):
    """start.py reads >= and < only, so a contributor who writes == must hear of it."""
    with pytest.raises(ValueError, match=r"pyproject.toml: .* not '==1.2'"):
        loaded["within"]("1.2", "==1.2")


def test_a_python_that_has_all_is_used_as_it_is(tmp_path):
    """The packages lie on PYTHONPATH, so no .venv appears and this very Python goes on."""
    kit = make_kit(tmp_path / "kit")
    site = tmp_path / "site"
    for name, version in [("salt", "1.2"), ("pepper", "2.1")]:
        shutil.unpack_archive(make_wheel(tmp_path, name, version), site, "zip")
    run = start(kit, "lessons", PYTHONPATH=str(site))
    seen = json.loads(run.stdout)

    assert "" == run.stderr
    assert sys.prefix == seen["prefix"]
    assert [str(kit), str(site)] == seen["for kernels"].split(os.pathsep)
    assert not (kit / ".venv").exists()


# The first start, and the next ones


def test_a_first_start_goes_on_in_its_own_venv(first_start):
    """Called from another folder, in a folder with accents, blanks and brackets in its name."""
    kit, run = first_start
    seen = json.loads(run.stdout)

    assert str(kit / ".venv") == seen["prefix"]
    assert str(kit / "kitchenmath" / "__init__.py") == seen["library"]
    assert str(kit) == seen["for kernels"]


def test_words_and_exit_code_pass_through(first_start):
    """The tiny command leaves with the number of its words."""
    _, run = first_start

    assert ["brine", "4 %"] == json.loads(run.stdout)["words"]
    assert 2 == run.returncode


def test_progress_counts_what_is_fetched(first_start):
    """Standard error is no terminal here, so each step is a line of its own."""
    expected = [
        "Setting up the kit in its folder .venv. This happens once and can take minutes.",
        "Fetching package 1: brackwater-pepper",
        "Fetching package 2: brackwater-salt",
        "Putting the packages in their place: 2",
        "The kit is set up.",
    ]

    assert expected == first_start[1].stderr.splitlines()


def test_a_second_start_runs_no_pip(first_start):
    """pip's log stays untouched, nothing is said, and there is nowhere to fetch from."""
    kit, _ = first_start
    log = kit / ".venv" / "set-up.log"
    before = log.stat().st_mtime_ns
    began = time.perf_counter()
    run = start(kit, "lessons")
    took = time.perf_counter() - began
    print(f"A second start took {took:.3f} s, with the command itself.")

    assert (0, "") == (run.returncode, run.stderr)
    assert before == log.stat().st_mtime_ns


def test_a_whole_venv_is_used_without_a_lock(whole_kit):
    """So a kit on a read-only disk starts too. A folder in the lock's place cannot be locked."""
    lock = whole_kit / ".venv" / "kit-lock"
    lock.unlink()
    lock.mkdir()
    run = start(whole_kit, "lessons")

    assert (0, "") == (run.returncode, run.stderr)


def test_an_editor_finds_the_library_through_the_venv(whole_kit):
    """The Python in .venv with no help from the environment, after the kit's folder has moved."""
    python = next((whole_kit / ".venv").glob("[bS]*/python*"))
    line = next((whole_kit / ".venv").rglob("kit.pth")).read_text(encoding="ascii")
    run = subprocess.run(
        [str(python), "-I", "-c", "import kitchenmath; print(kitchenmath.__file__)"],
        capture_output=True,
        encoding="utf-8",
        check=True,
    )

    assert not os.path.isabs(line)
    assert whole_kit / "kitchenmath" / "__init__.py" == Path(run.stdout.strip())


def test_another_purpose_adds_only_what_is_missing(whole_kit, index):
    """tests is lessons and thyme; with tests there, lessons and herbs need no pip."""
    run = start(whole_kit, "tests", index=index)
    stamp = json.loads((whole_kit / ".venv" / "kit-is-ready.json").read_text(encoding="utf-8"))

    assert 0 == run.returncode
    assert "Fetching package 1: brackwater-thyme" in run.stderr
    assert "Putting the packages in their place" in run.stderr
    assert {"lessons", "herbs", "tests"} == set(stamp["held"])


def test_a_package_on_pythonpath_does_not_pass_for_installed(whole_kit, index, tmp_path):
    """It may be gone at the next start, so pip must fetch thyme although it could be imported."""
    shutil.unpack_archive(make_wheel(tmp_path, "thyme", "1.0"), tmp_path / "site", "zip")
    run = start(whole_kit, "tests", index=index, PYTHONPATH=str(tmp_path / "site"))

    assert "Fetching package 1: brackwater-thyme" in run.stderr


def test_a_changed_list_is_installed(whole_kit, shop):
    """pyproject.toml now asks for pepper 3, so what .venv holds is not enough."""
    folder, address = shop
    make_wheel(folder / "more", "pepper", "3.0")
    changed = LISTS.replace("pepper>=2.1", "pepper>=3")
    (whole_kit / "pyproject.toml").write_text(changed, encoding="utf-8")
    run = start(whole_kit, "lessons", index=f"{address}/more")

    assert "3.0" == json.loads(run.stdout)["pepper"]


# A set-up that broke


@pytest.fixture
def stamped(loaded):
    """The functions of start.py for a tiny kit whose stamp says that lessons are whole."""
    Path(loaded["PYTHON"]).parent.mkdir(parents=True)
    Path(loaded["PYTHON"]).touch()
    Path(loaded["LOG"]).touch()
    stamp = {"python": "3.9", "made from": loaded["LOG"], "held": {"lessons": []}}
    Path(loaded["STAMP"]).write_text(json.dumps(stamp), encoding="utf-8")
    return loaded


@pytest.mark.parametrize(
    ("file", "content"),
    [
        ("STAMP", None),
        ("STAMP", ""),
        ("STAMP", '{"python": "3.9", "made fr'),
        ("STAMP", "[]"),
        ("STAMP", "{}"),
        ("PYTHON", None),
        ("LOG", None),
    ],
)
def test_a_half_made_venv_counts_for_nothing(stamped, file, content):
    """held() is the one judge of what .venv has. LOG plays the Python that .venv is made from."""
    assert {"lessons": []} == stamped["held"]()

    Path(stamped[file]).unlink()
    if content is not None:
        Path(stamped[file]).write_text(content, encoding="utf-8")

    assert {} == stamped["held"]()


def test_a_venv_of_an_upgraded_python_counts_for_nothing(stamped):
    """Seen from outside it may be whole; the Python in it is not 3.9, as the stamp says."""
    assert {"lessons": []} == stamped["held"]()

    stamped["held"].__globals__["INSIDE"] = True

    assert {} == stamped["held"]()


def test_after_an_upgrade_of_python_the_venv_is_made_again(whole_kit, index):
    """The stamp is of 3.9, so the Python in .venv finds out, and makes its own .venv anew."""
    stamp = whole_kit / ".venv" / "kit-is-ready.json"
    now = f"{sys.version_info[0]}.{sys.version_info[1]}"
    stamp.write_text(stamp.read_text(encoding="utf-8").replace(f'"{now}"', '"3.9"'), "utf-8")
    run = start(whole_kit, "lessons", index=index)

    assert (0, "The kit is set up.") == (run.returncode, last_line(run.stderr))
    assert now == json.loads(stamp.read_text(encoding="utf-8"))["python"]


def test_a_venv_that_someone_else_made_is_left_alone(tmp_path):
    """It has no lock of the kit's, so whatever is in it stays."""
    kit = make_kit(tmp_path / "kit")
    mine = kit / ".venv" / "mine"
    mine.mkdir(parents=True)
    run = start(kit, "lessons")
    expected = (
        f"The kit did not make {kit / '.venv'}. Rename it, or start with the Python in it. "
        "Then type the same command again."
    )

    assert (1, expected) == (run.returncode, last_line(run.stderr))
    assert mine.exists()


def test_a_killed_start_is_made_good_by_the_next(whole_kit, index, silent_index):
    """Killed while pip waits for thyme: no stamp is left, and the next start waits for that pip.

    Salt's file is taken away as well, as a pip killed while it copies could leave it: only a
    .venv that is made anew has it again.
    """
    with begin(whole_kit, "tests", address(silent_index)) as first:
        line_to_pip, _ = silent_index.accept()
        first.kill()
    next((whole_kit / ".venv").rglob("brackwater_salt.py")).unlink()

    assert not (whole_kit / ".venv" / "kit-is-ready.json").exists()

    with begin(whole_kit, "tests", index) as second:
        if os.name != "nt":
            waiting = second.stderr.readline()

            assert "Another start is setting up the kit. Waiting for it.\n" == waiting
        line_to_pip.close()
        seen, said = second.communicate(timeout=120)

    assert str(whole_kit / ".venv") == json.loads(seen)["prefix"]
    assert "The kit is set up." == last_line(said)


@pytest.mark.skipif(os.name == "nt", reason="Windows has no SIGINT for one process alone")
def test_ctrl_c_gets_a_sentence_and_spoils_nothing(whole_kit, index, silent_index):
    """Stopped while pip fetches thyme for tests: what lessons need was whole and stays so."""
    # Where these tests run in the background, Ctrl-C may be switched off for all they start.
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    with begin(whole_kit, "tests", address(silent_index)) as stopped:
        signal.signal(signal.SIGINT, before)
        line_to_pip, _ = silent_index.accept()
        stopped.send_signal(signal.SIGINT)
        _, said = stopped.communicate(timeout=60)
        line_to_pip.close()

    expected = "The set-up was stopped before its end. To go on, type the same command again."

    assert (1, expected) == (stopped.returncode, last_line(said))
    assert 0 == start(whole_kit, "lessons").returncode


def test_of_two_starts_at_once_one_waits(tmp_path, index):
    """The second begins while the first is at work; both then go on, and pip ran once."""
    kit = make_kit(tmp_path / "kit")
    with begin(kit, "lessons", index) as first, begin(kit, "lessons", index) as second:
        said = [process.communicate(timeout=120)[1] for process in (first, second)]

    assert [0, 0] == [first.returncode, second.returncode]
    assert ["Another start is setting up the kit. Waiting for it.\n"] == [
        words for words in said if "The kit is set up." not in words
    ]


# One sentence for each obstacle


def test_no_network_gets_a_sentence_and_spoils_nothing(whole_kit, silent_index):
    """Nobody listens at the index's address. What lessons need was whole and stays so."""
    nobody = address(silent_index)
    silent_index.close()
    run = start(whole_kit, "tests", index=nobody)
    log = whole_kit / ".venv" / "set-up.log"
    expected = (
        "pip could not fetch brackwater-thyme: its package registry does not answer, or lacks "
        "it. Check the network. Then type the same command again. "
        f"All it said is in {log}."
    )

    assert (1, expected) == (run.returncode, last_line(run.stderr))
    assert 0 == start(whole_kit, "lessons").returncode


def test_any_other_failure_shows_the_last_error_and_the_log(whole_kit, shop):
    """The wheel of thyme is no zip, which pip calls an invalid wheel."""
    folder, address = shop
    make_wheel(folder / "torn", "thyme", "1.0").write_text("no zip", encoding="utf-8")
    run = start(whole_kit, "tests", index=f"{address}/torn")
    log = whole_kit / ".venv" / "set-up.log"
    said = last_line(run.stderr)

    assert 1 == run.returncode
    assert said.startswith("The set-up failed. The last words of pip: ERROR: ")
    assert "brackwater" in said
    assert said.endswith(f" All it said is in {log}.")
    assert "is invalid" in log.read_text(encoding="utf-8")


def test_packages_that_went_elsewhere_do_not_count(whole_kit, index, tmp_path):
    """pip may be set to install into another folder: then .venv is not whole, and is told so."""
    run = start(whole_kit, "tests", index=index, PIP_TARGET=str(tmp_path / "target"))
    expected = (
        "pip put brackwater-thyme>=1 outside .venv. Undo its setting of a target folder. "
        "Then type the same command again."
    )

    assert (1, expected) == (run.returncode, last_line(run.stderr))


@pytest.mark.parametrize(
    ("number", "expected"),
    [
        (errno.ENOSPC, "The disk is full. Make room where {kit} lies."),
        (errno.EROFS, "The kit cannot write here ({words}). Copy it to a folder of your own."),
        (errno.EACCES, "The kit cannot write here ({words}). Copy it to a folder of your own."),
        (errno.EPERM, "The kit cannot write here ({words}). Copy it to a folder of your own."),
    ],
    ids=["full disk", "read-only disk", "another's folder", "USB stick"],
)
def test_a_folder_that_takes_nothing_gets_a_sentence(loaded, monkeypatch, number, expected):
    """The operating system refuses to make .venv, or, on a USB stick, the links in it."""

    def refuse(*_, **__):
        raise OSError(number, os.strerror(number), loaded["VENV"])

    monkeypatch.setattr(os, "makedirs", refuse)
    reason = f"{os.strerror(number)}: [Errno {number}] {os.strerror(number)}: {loaded['VENV']!r}"
    sentence = expected.format(kit=loaded["KIT"], words=reason)

    assert f"{sentence} Then type the same command again." == refusal(loaded)


def test_a_disk_that_fills_up_under_pip_is_called_full(loaded):
    """pip's own last line when this happened for real, on a disk of 100 MB."""
    words = [
        "Installing collected packages: webencodings, wcwidth",
        "ERROR: Could not install packages due to an OSError: [Errno 28] No space left on device",
        "",
    ]

    assert loaded["explain"](words, "pip").startswith("The disk is full. ")


def test_an_error_outweighs_the_hints_after_it(loaded):
    """pip closes with a note or two when a package cannot be built."""
    words = ["ERROR: Failed to build brackwater-thyme", "", "note: not an issue with pip.", ""]
    expected = "The set-up failed. The last words of pip: ERROR: Failed to build brackwater-thyme"

    assert expected == loaded["explain"](words, "pip")


@pytest.mark.parametrize("module", ["venv", "ensurepip"])
def test_a_python_that_cannot_make_a_venv_is_told_the_package(loaded, monkeypatch, module):
    """Debian keeps these modules in a package of their own, named after the version."""
    monkeypatch.setitem(sys.modules, module, None)  # Python's own way to say: not there
    expected = (
        f"This Python lacks its module {module}, which makes .venv. On Debian or Ubuntu, type: "
        f"apt install python{sys.version_info[0]}.{sys.version_info[1]}-venv. Elsewhere, install "
        "a full Python. Then type the same command again."
    )

    assert expected == refusal(loaded)


@pytest.mark.skipif(os.name == "nt", reason="Windows allows no such name")
@pytest.mark.parametrize(("name", "sign"), [("kit: mine", ":"), ("kit [4]", "["), ("kit?", "?")])
def test_a_folder_whose_name_breaks_the_programs_is_refused(tmp_path, name, sign):
    """A colon parts PYTHONPATH; in "kit [4]" JupyterLab finds no widgets and pytest no tests."""
    run = start(make_kit(tmp_path / name), "lessons")
    expected = (
        f"The kit takes no {sign!r} in a folder's name. Rename {tmp_path / name}. "
        "Then type the same command again."
    )

    assert (1, expected) == (run.returncode, last_line(run.stderr))


# Old Pythons


def test_the_oldest_python_is_the_one_in_pyproject():
    """The number stands in both places, because an old Python cannot read TOML."""
    project = tomllib.loads((KIT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    oldest = runpy.run_path(str(START))["OLDEST"]

    assert project["requires-python"] == f">={oldest[0]}.{oldest[1]}"


@pytest.mark.parametrize("file", STARTED_BY_PATH, ids=lambda file: file.parent.name)
def test_an_old_python_can_parse_it(file):
    """3.7 is the oldest grammar that the parser of every supported Python still knows."""
    ast.parse(file.read_text(encoding="utf-8"), feature_version=(3, 7))


@functools.cache
def old_python():
    """A Python older than the kit's, from PATH or from pyenv, or None."""
    pyenv = Path(os.environ.get("PYENV_ROOT") or Path.home() / ".pyenv")
    found = [shutil.which(f"python3.{minor}") for minor in range(6, 11)]
    found += sorted(pyenv.glob("versions/3.[6-9].*/bin/python"))
    for python in filter(None, found):
        tell = [str(python), "-c", "import sys; print(sys.version_info < (3, 11))"]
        run = subprocess.run(tell, capture_output=True, encoding="utf-8")
        if run.stdout.strip() == "True":
            return str(python)
    return None


@pytest.mark.parametrize("command", COMMANDS)
def test_an_old_python_gets_one_sentence(command):
    """A real old Python, where this machine has one."""
    python = old_python()
    if python is None:
        pytest.skip("this machine has no Python from 3.6 to 3.10")
    run = subprocess.run([python, str(KIT / command)], capture_output=True, encoding="utf-8")
    said = run.stderr.splitlines()

    assert (1, "", 1) == (run.returncode, run.stdout, len(said))
    assert said[0].startswith("This is Python 3.")
    assert "needs Python 3.11 or newer" in said[0]


# The commands


STUBS = {
    "jupyterlab/__init__.py": "",
    "jupyterlab/labapp.py": "def main(words): print('lab', *words, sep='\\n')",
    "pytest.py": "def main(words, plugins): print('pytest', *words, sep='\\n')",
    "kitchenmath/practice/before_handing_in.py": (
        "def main(words): print('hand in', *words, sep='\\n'); return 4"
    ),
    "instructor/coursework/__init__.py": "",
    "instructor/coursework/desk/__init__.py": "",
    "instructor/coursework/desk/serving.py": (
        "def open_desk(words): print('desk', *words, sep='\\n'); return 0"
    ),
    "instructor/coursework/command.py": "def main(words): print('do', *words, sep='\\n'); return 5",
    "kitchenmath/pages/__init__.py": "",
    "kitchenmath/pages/here.py": (
        "def open_pages(*words): print('page', *words[:2], *words[2], sep='\\n'); return 0"
    ),
    "lessons/04-brine.ipynb": "",
    "lessons/05-yields.ipynb": "",
    "assignments/04-brine/04-brine.ipynb": "",
    "assignments/04r-review-1/04r-review-1.ipynb": "",
}
NOTHING = """
[project]
name = "kitchenmath"
dependencies = []
[project.optional-dependencies]
lessons = []
instructor = []
tests = []
"""


@pytest.fixture
def commands(tmp_path):
    """A function that starts a real command in a kit where all that it calls is a stub."""
    kit = make_kit(tmp_path / "kit (1)", NOTHING)
    for command in COMMANDS:
        (kit / command).mkdir(exist_ok=True)
        shutil.copy(KIT / command / "__main__.py", kit / command)
    for name, text in STUBS.items():
        (kit / name).parent.mkdir(parents=True, exist_ok=True)
        (kit / name).write_text(text, encoding="utf-8")

    def run(command, *words, cwd=kit):
        run = start(kit, command, *words, cwd=cwd)
        return run.returncode, (run.stdout or run.stderr).replace(str(kit), "KIT").splitlines()

    return run


def test_the_instructor_without_a_command_gets_the_desk(commands):
    """The stub says what it was called with; a word for the server is no command."""
    assert (0, ["desk"]) == commands("instructor")
    assert (0, ["desk", "--allow-root"]) == commands("instructor", "--allow-root")


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        (["lessons"], ["index.html"]),
        (["lessons", "4"], ["lesson-04-brine.html"]),
        (["lessons", "05", "--no-browser"], ["lesson-05-yields.html", "--no-browser"]),
        (["lessons", "--port=1"], ["index.html", "--port=1"]),
        (["assignments", "4"], ["set-04-brine.html"]),
        (["assignments", "review", "1"], ["set-04r-review-1.html"]),
    ],
)
def test_lessons_and_sets_open_as_pages(commands, words, expected):
    """The stub says what it was called with: the kit's folder, the page, and further words."""
    assert (0, ["page", "KIT", *expected]) == commands(*words)


def test_an_unknown_lesson_gets_the_list_of_lessons(commands):
    """Lessons 4 and 5 are all that this kit has."""
    expected = [
        "There is no lesson '12'. Type the number that one of these begins with, "
        "for example: python3 lessons 1",
        "04-brine.ipynb",
        "05-yields.ipynb",
    ]

    assert (1, expected) == commands("lessons", "12")


def test_help_for_lessons_is_the_kits_own(commands):
    """JupyterLab's help has hundreds of lines, none of them about lessons."""
    code, said = commands("lessons", "--help")

    assert 0 == code
    assert "python3 lessons 4" in said[0]


def test_instructor_commands_go_to_coursework(commands):
    """The stub answers with 5, and any command's exit code is passed on."""
    assert (5, ["do", "mark", "--help"]) == commands("instructor", "mark", "--help")


def test_assignments_go_to_handing_in(commands):
    """The stub answers with 4."""
    assert (4, ["hand in", "brine.ipynb"]) == commands("assignments", "brine.ipynb")
    assert (4, ["hand in", "4"]) == commands("assignments", "look", "4")
    assert (4, ["hand in"]) == commands("assignments")


def test_tests_run_everything_when_no_path_is_named(commands, tmp_path):
    """Tests and lessons, from whatever folder; "-k lessons" is a word and not a path."""
    _, said = commands("tests", "-k", "lessons")
    expected = ["tests", "lessons/04-brine.ipynb", "lessons/05-yields.ipynb"]

    assert [f"KIT/{name}" for name in expected] == [line.replace("\\", "/") for line in said[-3:]]
    assert ["-k", "lessons"] == said[-5:-3]
    assert "--nbval" in said
    assert said == commands("tests", "-k", "lessons", cwd=tmp_path)[1]


def test_tests_run_only_the_paths_that_are_named(commands, tmp_path):
    """A path counts from where the user stands, and "-n 0" comes after the kit's "-n 2"."""
    (tmp_path / "test_one.py").touch()
    _, said = commands("tests", "test_one.py::test_it", "-n", "0", cwd=tmp_path)

    assert [str(tmp_path / "test_one.py::test_it"), "-n", "0"] == said[-3:]
    assert "-n" in said[:-3]


def test_tests_without_chromium_are_named_at_the_end(tmp_path):
    """The real pytest, on one test that is left out for want of a browser and one that passes."""
    kit = make_kit(tmp_path / "kit", NOTHING)
    shutil.copy(KIT / "tests" / "__main__.py", kit / "tests")
    (kit / "tests" / "test_it.py").write_text(
        "import pytest\n"
        "def test_page(): pytest.skip('no Chromium here')\n"
        "def test_other(): pytest.skip('no scales here')\n",
        encoding="utf-8",
    )
    run = start(kit, "tests", "-n", "0", "-p", "no:cacheprovider")
    lines = run.stdout.splitlines()
    heading = next(n for n, line in enumerate(lines) if "left out, for no Chromium" in line)

    assert 0 == run.returncode
    assert "tests/test_it.py::test_page" == lines[heading + 1]
    assert "apt install chromium" in lines[heading + 2]
    assert "KITCHEN_CHROMIUM" in lines[heading + 2]
