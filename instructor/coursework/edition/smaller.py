"""The browser's Python made smaller, after every sum was checked: `left_out.txt` says by what."""

import fnmatch
import io
import zipfile
from pathlib import Path

from coursework.edition.wheels import zipped

LISTED = Path(__file__).parent / "left_out.txt"
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


def _thinned(name, raw):
    whose = ("python",) if name == STDLIB else ("*", name.split("-")[0].lower())
    unwanted = [pattern for distribution, pattern in _listed() if distribution in whose]
    with zipfile.ZipFile(io.BytesIO(raw)) as archive:
        stays = [
            entry.filename
            for entry in archive.infolist()
            if not entry.is_dir()
            and not any(fnmatch.fnmatchcase(entry.filename, pattern) for pattern in unwanted)
        ]
        return zipped({each: archive.read(each) for each in sorted(stays)})


def _listed():
    lines = LISTED.read_text("utf-8").splitlines()
    return [line.split() for line in lines if line.strip() and not line.startswith("#")]
