"""Start the kit: see that a command has the packages it needs, then let it go on.

Each command (python3 instructor, lessons, assignments, tests) loads this file by its path,
before anything is installed. So it imports the standard library only, and it parses on
Python 3.6, so that an old Python gets a sentence and not a syntax error.
"""

import json
import os
import re
import sys
import time

OLDEST = (3, 11)  # as requires-python in pyproject.toml; a test compares the two
RUNNING = f"{sys.version_info[0]}.{sys.version_info[1]}"
KIT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
VENV = os.path.join(KIT, ".venv")
PYTHON = os.path.join(VENV, *(["Scripts", "python.exe"] if os.name == "nt" else ["bin", "python"]))
LOCK = os.path.join(VENV, "kit-lock")  # made first: a .venv without it is not the kit's own
STAMP = os.path.join(VENV, "kit-is-ready.json")  # made last: says what is whole
LOG = os.path.join(VENV, "set-up.log")
INSIDE = os.path.exists(LOCK) and os.path.samefile(sys.prefix, VENV)
AGAIN = "Then type the same command again."


def ready(purpose):
    """Return once the running Python has what ``purpose`` needs, or stop with one sentence.

    ``purpose`` is an extra of pyproject.toml. A Python that has all of it is used as it is.
    Otherwise .venv in the kit's folder gets it, and the command starts afresh in there.
    """
    if sys.version_info < OLDEST:
        sys.exit(
            f"This is Python {RUNNING}, but the kit needs Python {OLDEST[0]}.{OLDEST[1]} or newer. "
            "Install a newer Python and type the same command with it."
        )
    # Python parts paths at the first; JupyterLab and pytest take the others for patterns.
    for sign in filter(KIT.__contains__, (os.pathsep, "[", "*", "?")):
        sys.exit(f"The kit takes no {sign!r} in a folder's name. Rename {KIT}. {AGAIN}")
    reach(KIT)
    lists = requirement_lists()
    in_venv = held().get(purpose) == lists[purpose]
    if in_venv if INSIDE else not any(missing(lists[purpose], sys.path)):
        return
    try:
        if not in_venv:
            set_up(purpose, lists)
        go_inside()
    except KeyboardInterrupt:
        sys.exit("The set-up was stopped before its end. To go on, type the same command again.")
    except OSError as error:
        # strerror is in English on every system, and explain looks for its words.
        sys.exit(explain([f"{os.strerror(error.errno or 0)}: {error}"], "Python"))


def reach(folder):
    """Let this process, and every notebook kernel that it starts, import from ``folder``."""
    path = os.environ.get("PYTHONPATH", "").split(os.pathsep)
    others = [other for other in path if other not in ("", folder)]
    os.environ["PYTHONPATH"] = os.pathsep.join([folder, *others])
    if folder not in sys.path:
        sys.path.insert(1, folder)


def requirement_lists():
    """Return {purpose: [requirement, ...]} as pyproject.toml has them.

    A reference such as kitchenmath[lessons] becomes that extra's own list, and the base
    dependencies belong to every purpose.
    """
    import tomllib

    with open(os.path.join(KIT, "pyproject.toml"), "rb") as file:
        project = tomllib.load(file)["project"]
    extras = project["optional-dependencies"]

    def flat(lines):
        for line in lines:
            reference = re.match(re.escape(project["name"]) + r"\[(.+)\]$", line)
            yield from flat(extras[reference.group(1)]) if reference else [line]

    base = project["dependencies"]
    return {purpose: sorted({*base, *flat(lines)}) for purpose, lines in extras.items()}


def missing(wanted, path):
    """Yield each requirement in ``wanted`` that no distribution on ``path`` meets."""
    from importlib import metadata

    for line in wanted:
        name, bounds = re.match(r"([\w.-]+)(.*)", line).groups()
        found = next(iter(metadata.distributions(name=name, path=path)), None)
        if found is None or not within(found.version, bounds):
            yield line


def within(version, bounds):
    """Say whether ``version`` lies within ``bounds``, such as ">=1.26,<3"."""

    def numbers(text):
        return [int(number) for number in re.sub(r"(\.0)+$", "", text).split(".")]

    release = re.match(r"\d+(\.\d+)*", version or "")  # a broken package has no version
    for bound in filter(None, bounds.split(",")):
        read = re.match(r"\s*(>=|<)\s*(\d+(?:\.\d+)*)\s*$", bound)
        if not read:
            raise ValueError(f"pyproject.toml: a bound is >= or < and a number, not {bound!r}")
        sign, limit = read.groups()
        if not release or (numbers(release.group()) >= numbers(limit)) != (sign == ">="):
            return False
    return True


def held():
    """Return what .venv surely holds, as {purpose: [requirement, ...]}.

    That is nothing unless the stamp is sound, and the Python that .venv was made from is
    still there in the same version.
    """
    try:
        with open(STAMP, encoding="utf-8") as file:
            stamp = json.load(file)
        sound = os.path.exists(PYTHON) and os.path.exists(stamp["made from"])
        # Only the Python in .venv can see that an upgrade changed it underneath.
        sound = sound and (stamp["python"] == RUNNING or not INSIDE)
        return dict(stamp["held"]) if sound else {}
    except (OSError, ValueError, KeyError, TypeError):
        return {}


def write_stamp(holds):
    """Record, all at once or not at all, what .venv holds."""
    stamp = {"python": RUNNING, "made from": sys._base_executable, "held": holds}
    with open(STAMP + ".new", "w", encoding="utf-8") as file:
        json.dump(stamp, file, indent=1)
    os.replace(STAMP + ".new", STAMP)


def set_up(purpose, lists):
    """Install the list of ``purpose`` into .venv, and make .venv first where it is not whole."""
    import sysconfig

    os.makedirs(VENV, exist_ok=True)
    if os.listdir(VENV) and not os.path.exists(LOCK):
        sys.exit(f"The kit did not make {VENV}. Rename it, or start with the Python in it. {AGAIN}")
    lock = take_lock()
    try:
        before = held()
        # Another start may just have done it; and only the Python in .venv may add to it.
        if before and (before.get(purpose) == lists[purpose] or not INSIDE):
            return
        say("Setting up the kit in its folder .venv. This happens once and can take minutes.")
        if before:
            os.remove(STAMP)  # so that a kill at any moment leaves no stamp
        else:
            make_venv(lock)
        options = ["--no-user", "--no-input", "--prefer-binary", "--disable-pip-version-check"]
        words = []
        try:
            run(["pip", "install", "--progress-bar=off", *options, *lists[purpose]], lock, words)
        except BaseException:
            if before and not any(line.startswith("Installing") for line in words):
                write_stamp(before)  # nothing was touched yet
            raise
        site = sysconfig.get_path("purelib", "venv", {"base": VENV})
        lost = ", ".join(missing(lists[purpose], [site]))
        if lost:
            sys.exit(f"pip put {lost} outside .venv. Undo its setting of a target folder. {AGAIN}")
        # For editors that use .venv directly. A relative line holds no accents, whose
        # encoding could be misread, and still fits when the kit's folder moves.
        with open(os.path.join(site, "kit.pth"), "w", encoding="ascii") as file:
            file.write(os.path.relpath(KIT, site) + "\n")
        holds = {
            name: wanted
            for name, wanted in lists.items()
            if wanted == before.get(name) or set(wanted) <= set(lists[purpose])
        }
        write_stamp(holds)
        say("The kit is set up.")
    finally:
        os.close(lock)


def take_lock():
    """Return an open file that one start holds at a time; wait while another has it."""
    lock = os.open(LOCK, os.O_RDWR | os.O_CREAT, 0o666)
    waiting = False
    while True:
        try:
            if os.name == "nt":
                import msvcrt

                msvcrt.locking(lock, msvcrt.LK_NBLCK, 1)
            else:
                import fcntl

                fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
            return lock
        except (BlockingIOError, PermissionError):
            if not waiting:
                say("Another start is setting up the kit. Waiting for it.")
            waiting = True
            time.sleep(0.2)


def make_venv(lock):
    """Make .venv anew, whatever a broken set-up left in it."""
    import importlib.util
    import shutil

    for module in ("venv", "ensurepip"):
        if importlib.util.find_spec(module) is None:
            sys.exit(
                f"This Python lacks its module {module}, which makes .venv. On Debian or Ubuntu, "
                f"type: apt install python{RUNNING}-venv. Elsewhere, install a full Python. {AGAIN}"
            )
    import venv

    for path in [os.path.join(VENV, name) for name in os.listdir(VENV)]:
        if os.path.isdir(path) and not os.path.islink(path):
            shutil.rmtree(path)
        elif path != LOCK:
            os.remove(path)
    venv.create(VENV, symlinks=os.name != "nt")
    run(["ensurepip"], lock, [])


def run(command, lock, words):
    """Run a module of .venv's Python, add its lines to ``words``, and stop where it fails."""
    import subprocess

    # -I: what lies on the user's own PYTHONPATH must not pass for installed.
    command = [PYTHON, "-I", "-X", "utf8", "-m", *command]
    how = {"stdout": subprocess.PIPE, "stderr": subprocess.STDOUT}
    how.update(encoding="utf-8", errors="replace")
    if os.name != "nt":
        how["pass_fds"] = [lock]  # so that a start after a kill waits for pip's end
    names = set()
    with open(LOG, "w", encoding="utf-8") as log, subprocess.Popen(command, **how) as child:
        try:
            for line in child.stdout:
                log.write(line)
                words.append(line.rstrip())
                show(line, names)
        except BaseException:
            child.terminate()
            words.extend(child.stdout)  # what it did before it ended
            raise
    if child.returncode:
        sys.exit(explain(words, command[5]))


def show(line, names):
    """Say what a line of pip means; ``names`` gathers what was fetched."""
    if line.startswith("Collecting "):
        name = re.match(r"[\w.-]+", line[11:]).group()
        names.add(name)
        say(f"Fetching package {len(names)}: {name}", passing=True)
    elif "WARNING: Retrying" in line:
        say("The network does not answer. Trying again.", passing=True)
    elif line.startswith("Installing collected packages:") and names:
        say(f"Putting the packages in their place: {line.count(',') + 1}")


def explain(words, speaker):
    """Return the sentence for a failure, from the last lines that ``speaker`` wrote."""
    end = "\n".join(words[-20:])
    errors = [line for line in words if line.lower().startswith("error")]
    last = (errors or [line for line in words if line] or ["(none)"])[-1]
    log = f" All it said is in {LOG}." if os.path.exists(LOG) else ""
    if re.search("No space left|not enough space|quota exceeded", end, re.IGNORECASE):
        return f"The disk is full. Make room where {KIT} lies. {AGAIN}"
    if re.search(r"from versions: none|Retrying \(|timed out|ConnectionError|Incomplete", end):
        sought = re.findall(r"(?:satisfies the requirement|Collecting) ([\w.-]+)", end)
        return (
            f"pip could not fetch {sought[-1] if sought else 'the packages'}: its package registry "
            f"does not answer, or lacks it. Check the network. {AGAIN}{log}"
        )
    if re.search("Permission denied|Operation not permitted|Read-only file system", end):
        return f"The kit cannot write here ({last}). Copy it to a folder of your own. {AGAIN}"
    return f"The set-up failed. The last words of {speaker}: {last}{log}"


def go_inside():
    """Start the same command again with the Python in .venv."""
    command = [PYTHON, os.path.abspath(sys.argv[0]), *sys.argv[1:]]
    if os.name == "nt":
        import signal
        import subprocess

        signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C is the command's own affair
        sys.exit(subprocess.call(command))
    os.execv(PYTHON, command)


def say(sentence, passing=False):
    """Print to standard error. On a terminal, the next sentence replaces a passing one."""
    passing = passing and sys.stderr.isatty()
    print(f"{sentence:72}" if passing else sentence, end="\r" if passing else "\n", file=sys.stderr)
    sys.stderr.flush()
