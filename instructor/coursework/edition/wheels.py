"""The wheels of an edition: compiled ones by the runtime's own lock, pure ones by pip, and ours."""

import hashlib
import io
import re
import subprocess
import sys
import urllib.error
import urllib.request
import zipfile
from pathlib import Path

from coursework.edition.runtime import PARTS
from coursework.errors import CourseError

HERE = Path(__file__).parent
LISTED = HERE / "wheels.txt"
COMPILED = ("numpy", "matplotlib", "contourpy", "kiwisolver", "pillow")
DRAWING = ["numpy", "numpy-for-lessons", "contourpy", "kiwisolver", "pillow", "cycler",
           "fonttools", "packaging", "pyparsing", "python-dateutil"]  # fmt: skip
DEPENDS = {
    "kitchenmath": ["numpy", "pint"],
    "pint": ["flexcache", "flexparser", "platformdirs", "typing-extensions"],
    "matplotlib": DRAWING,
    "python-dateutil": ["six"],
    "ipywidgets": ["comm", "traitlets"],
}
IMPORTS = {"pillow": ["PIL"], "python-dateutil": ["dateutil"], "fonttools": ["fontTools"]}
OLDEST = (1980, 1, 1, 0, 0, 0)  # a zip's first day: the same files give the same bytes


def wheels(lock, folder=None, home=None):
    """Every wheel but our own, checked.

    Parameters
    ----------
    lock : dict
        The runtime's official lock.
    folder : Path, optional
        Where the compiled wheels lie. Without it they come from where the runtime says that its
        wheels are published, once.
    home : str, optional
        That address; the runtime's own file names it.

    Returns
    -------
    dict of str to bytes
        By file name.

    Raises
    ------
    CourseError
    """
    files = {}
    for name in COMPILED:
        listed = lock["packages"][name]
        files[listed["file_name"]] = _compiled(listed, folder, home)
    return files | _pure()


def home_of(pyodide, version):
    """Where the runtime's wheels are published, as its own script says.

    Parameters
    ----------
    pyodide : bytes
        `pyodide.mjs`, in which a variable of any name stands for the version.
    version : str

    Returns
    -------
    str
        "" where it does not say.

    Examples
    --------
    >>> home_of(b"`https://wheels.example/v${U}/full/`", "1.2")
    'https://wheels.example/v1.2/full/'
    """
    found = re.search(rb"(https://[\w./-]+/v)\$\{[\w$.]+\}(/full/)", pyodide)
    return f"{found[1].decode()}{version}{found[2].decode()}" if found else ""


def own_wheel(package, version, beside=None):
    """The kit's library as a wheel; the same files give the same bytes.

    Parameters
    ----------
    package : Path
        The folder kitchenmath.
    version : str
    beside : dict of str to bytes, optional
        Further files, by their place in the wheel.

    Returns
    -------
    dict of str to bytes
        Content by file name: one.
    """
    info = f"kitchenmath-{version}.dist-info"
    files = {
        path.relative_to(package.parent).as_posix(): path.read_bytes()
        for path in sorted(package.rglob("*"))
        if path.is_file()
        and not {"__pycache__", "static", "templates", "settings"} & set(path.parts)
    }
    files |= beside or {}
    files[f"{info}/METADATA"] = f"Metadata-Version: 2.1\nName: kitchenmath\nVersion: {version}\n"
    files[f"{info}/WHEEL"] = "Wheel-Version: 1.0\nGenerator: kit\nRoot-Is-Purelib: true\n"
    files[f"{info}/WHEEL"] += "Tag: py3-none-any\n"
    files[f"{info}/RECORD"] = "".join(f"{name},,\n" for name in files)
    return {f"kitchenmath-{version}-py3-none-any.whl": zipped(files)}


def zipped(files):
    """Files as a zip whose bytes depend on nothing else.

    Parameters
    ----------
    files : dict of str to (bytes or str)

    Returns
    -------
    bytes
    """
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as archive:
        for name, content in files.items():
            entry = zipfile.ZipInfo(name, OLDEST)
            entry.compress_type, entry.external_attr = zipfile.ZIP_DEFLATED, 0o644 << 16
            archive.writestr(entry, content)
    return made.getvalue()


def lock_of(files, official):
    """A lock that names only files that lie beside it.

    Parameters
    ----------
    files : dict of str to bytes
        Every wheel, ours too.
    official : dict
        The runtime's lock, for what the runtime asks of one.

    Returns
    -------
    dict
    """
    packages = {}
    for file, raw in sorted(files.items()):
        distribution, version = file.removesuffix(".zip").split("-")[:2]
        name = distribution.lower().replace("_", "-")
        packages[name] = {
            "name": name,
            "version": version,
            "file_name": file,
            "install_dir": "site",
            "sha256": hashlib.sha256(raw).hexdigest(),
            "package_type": "package",
            "imports": IMPORTS.get(name, [name.replace("-", "_")]),
            "depends": DEPENDS.get(name, []),
            "unvendored_tests": False,
        }
    return {key: official[key] for key in official if key != "packages"} | {"packages": packages}


def _compiled(listed, folder, home):
    """One compiled wheel, with the sum that the official lock has for it."""
    name = listed["file_name"]
    file = (Path(folder) if folder else PARTS) / name
    if not file.is_file():
        if folder:
            raise CourseError(f"{folder} holds no {name}.")
        _take_down(f"{home}{name}", file)
    raw = file.read_bytes()
    if hashlib.sha256(raw).hexdigest() != listed["sha256"]:
        raise CourseError(f"{file} is not the wheel of the official lock: its sha256 is another.")
    return raw


def _take_down(address, file):
    try:
        with urllib.request.urlopen(address, timeout=60) as answer:
            raw = answer.read()
    except (urllib.error.URLError, OSError, ValueError) as error:
        why = getattr(error, "reason", error)
        raise CourseError(
            f"{file.name} could not be taken from where the browser's Python is published ({why}). "
            "Name a folder that holds it: --wheels FOLDER"
        ) from None
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(raw)


def _pure():
    """The wheels that run everywhere, fetched once by pip, which checks each sum."""
    folder = PARTS / "pure"
    sums = set(re.findall(r"sha256:(\w+)", LISTED.read_text()))
    found = _by_sum(folder, sums)
    if len(found) < len(sums):
        command = [sys.executable, "-m", "pip", "download", "--quiet", "--no-deps",
                   "--only-binary=:all:", "--platform=any", "--python-version=3.14",
                   "--implementation=py", "--require-hashes", "--disable-pip-version-check",
                   f"--requirement={LISTED}", f"--dest={folder}"]  # fmt: skip
        run = subprocess.run(command, capture_output=True, text=True)
        if run.returncode:
            last = (run.stderr.strip().splitlines() or ["nothing"])[-1]
            raise CourseError(f"pip could not fetch what the pages need: {last}")
        found = _by_sum(folder, sums)
    return found


def _by_sum(folder, sums):
    files = {file.name: file.read_bytes() for file in sorted(folder.glob("*.whl"))}
    return {name: raw for name, raw in files.items() if hashlib.sha256(raw).hexdigest() in sums}
