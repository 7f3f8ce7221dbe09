"""An edition built into a folder and served, for the tests that open it in a browser."""

import os
import shutil
import threading
from contextlib import contextmanager
from pathlib import Path

import pytest
from coursework.edition.serve import address_of, server
from coursework.edition.site import edition, write

from tests.helpers.browser import NEEDS_CHROMIUM

WHEELS = os.environ.get("KITCHEN_WHEELS", "")
NEEDS_WHEELS = [
    *NEEDS_CHROMIUM,
    pytest.mark.slow,
    pytest.mark.skipif(
        not (WHEELS and shutil.which("npm")), reason="no npm client, or KITCHEN_WHEELS is not set"
    ),
]


@contextmanager
def shown(folder, course=None, **more):
    """Build an edition, and serve it as long as it is looked at.

    Parameters
    ----------
    folder : Path
    course : Course, optional
    **more
        As `edition` takes it.

    Yields
    ------
    str
        Its address.
    dict of str to bytes
        Its files.
    """
    files = edition(course, wheel_folder=Path(WHEELS), **more)
    write(files, folder)
    made = server(folder)
    thread = threading.Thread(target=made.serve_forever, daemon=True)
    thread.start()
    try:
        yield address_of(made), files
    finally:
        made.shutdown()
        made.server_close()
        thread.join()


def listen(page):
    """Gather what a page asks for and what fails in it, as its `asked` and `errors`."""
    page.asked, page.errors = [], []
    page.on("requestfinished", lambda request: page.asked.append(request.url))
    page.on("pageerror", lambda error: page.errors.append(str(error)))


def outside(page, address):
    """What a page asked of another host."""
    return [url for url in page.asked if not url.startswith((address, "data:", "blob:"))]
