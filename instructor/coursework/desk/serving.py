"""The desk in the browser: a page of its own, with JupyterLab one click away.

Voilà shows the panels of one small notebook without its cells, menus and run buttons. It runs in
the same server as JupyterLab, so files open from the desk, and a key opens as a notebook.
"""

import os
from pathlib import Path

from coursework.classes.course import INSTRUCTOR

PAGE = "instructor/desk.ipynb"
LOOK = Path(__file__).with_name("page")


def options(words=()):
    """What JupyterLab's server is started with, so that it opens on the desk.

    Parameters
    ----------
    words : sequence of str
        Further words, such as "--no-browser".

    Returns
    -------
    list of str
    """
    return [
        f"--ServerApp.root_dir={INSTRUCTOR.parent}",
        f"--LabApp.default_url=/voila/render/{PAGE}",
        "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
        *words,
    ]


def prepare():
    """Let Jupyter find the desk's own look and settings; before its server is started."""
    for name in ("JUPYTER_PATH", "JUPYTER_CONFIG_PATH"):
        os.environ[name] = os.pathsep.join(filter(None, [str(LOOK), os.environ.get(name)]))


def open_desk(words=()):
    """Start the server and open the desk.

    Parameters
    ----------
    words : sequence of str

    Returns
    -------
    int or None
    """
    prepare()
    from jupyterlab.labapp import main as lab

    return lab(options(words))
