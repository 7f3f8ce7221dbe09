"""The browser's Python made smaller, after every sum was checked.

`left_out.txt` says what no page asks for; `lessons_only.txt` what no set does.
"""

import fnmatch
import io
import zipfile
from pathlib import Path

from coursework.edition.wheels import zipped

LEFT_OUT = Path(__file__).with_name("left_out.txt")
LESSONS_ONLY = Path(__file__).with_name("lessons_only.txt")
FOR_LESSONS = "for_lessons"  # numpy_for_lessons-2.4.3.zip lies beside numpy's wheel
STDLIB = "python_stdlib.zip"


def without_what_no_page_asks_for(files):
    """Wheels, or the standard library, with less in them.

    Parameters
    ----------
    files : dict of str to bytes
        By file name.

    Returns
    -------
    dict of str to bytes
        The same inputs give the same bytes.
    """
    return {name: _thinned(name, raw) for name, raw in files.items()}


def lessons_apart(files):
    """Wheels, with what only lessons ask for in a file of its own, so that no set loads it.

    Parameters
    ----------
    files : dict of str to bytes
        By file name.

    Returns
    -------
    dict of str to bytes
        The same inputs give the same bytes.
    """
    apart = {}
    for name, raw in files.items():
        for_sets, for_lessons = _parted(raw, _patterns(name, LESSONS_ONLY))
        apart[name] = zipped(for_sets) if for_lessons else raw
        if for_lessons:
            distribution, version = name.split("-")[:2]
            apart[f"{distribution}_{FOR_LESSONS}-{version}.zip"] = zipped(for_lessons)
    return apart


def _thinned(name, raw):
    stays, _ = _parted(raw, _patterns(name, LEFT_OUT))
    return zipped(stays)


def _parted(raw, patterns):
    """The files of a zip that no pattern names, and the others; by name, in order."""
    stay, go = {}, {}
    with zipfile.ZipFile(io.BytesIO(raw)) as archive:
        for name in sorted(each.filename for each in archive.infolist() if not each.is_dir()):
            wanted = not any(fnmatch.fnmatchcase(name, pattern) for pattern in patterns)
            (stay if wanted else go)[name] = archive.read(name)
    return stay, go


def _patterns(name, listed):
    """What a list says of a file, such as a wheel, by the name of its distribution."""
    whose = ("python",) if name == STDLIB else ("*", name.split("-")[0].lower())
    lines = listed.read_text("utf-8").splitlines()
    pairs = [line.split() for line in lines if line.strip() and not line.startswith("#")]
    return [pattern for distribution, pattern in pairs if distribution in whose]
