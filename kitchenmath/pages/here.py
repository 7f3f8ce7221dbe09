"""The pages in JupyterLab's own server: one server, the pages, and each notebook one click away.

The pages are the edition's. Behind them stands this computer's Python, by a socket in place of the
browser's worker.
"""

import contextlib
import os
import subprocess
import sys
import threading

from jupyter_server.base.handlers import JupyterHandler
from jupyter_server.base.websocket import WebSocketMixin
from tornado import web
from tornado.ioloop import IOLoop
from tornado.websocket import WebSocketClosedError, WebSocketHandler

from kitchenmath.pages.at_home import Home

__all__ = ["open_pages", "options"]

NAME = "kitchen"  # the folder of the address that the pages stand in
LARGEST = 32_000_000  # bytes of one message: a photo of 9 MB, written as text


def open_pages(kit, page, words=()):
    """Start the server and open a page in the browser.

    Parameters
    ----------
    kit : str
        The kit's folder.
    page : str
        "index.html"
    words : sequence of str
        Further words for the server, such as "--no-browser".

    Returns
    -------
    int or None
    """
    from jupyterlab.labapp import main as lab

    settings = os.path.join(os.path.dirname(__file__), "settings")
    known = [settings, os.environ.get("JUPYTER_CONFIG_PATH")]
    os.environ["JUPYTER_CONFIG_PATH"] = os.pathsep.join(filter(None, known))
    return lab(options(kit, page, words))


def options(kit, page, words=()):
    """What JupyterLab's server is started with, so that it opens on a page.

    Parameters
    ----------
    kit, page : str
    words : sequence of str

    Returns
    -------
    list of str
    """
    return [
        f"--ServerApp.root_dir={kit}",
        f"--ServerApp.jpserver_extensions={__name__}=True",
        f"--LabApp.default_url=/{NAME}/{page}",
        "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
        *words,
    ]


def _jupyter_server_extension_points():
    return [{"module": __name__}]


def _load_jupyter_server_extension(server):
    """Add the pages to a server; its root is the kit's folder."""
    start = f"{server.web_app.settings['base_url']}{NAME}/"
    known = {"home": Home(server.root_dir)}
    handlers = [(f"{start}talk", _Talk, known), (f"{start}(.*)", _Page, known)]
    server.web_app.add_handlers(".*$", handlers)


class _Page(JupyterHandler):
    def initialize(self, home):
        self.home = home

    @web.authenticated
    def get(self, name):
        raw, kind = self.home.page(name)
        if raw is None:
            raise web.HTTPError(404)
        self.set_header("Content-Type", f"{kind}; charset=utf-8")
        self.set_header("Cache-Control", "no-store")
        self.finish(raw)


class _Talk(WebSocketMixin, WebSocketHandler, JupyterHandler):
    """One page's socket, and the process that answers it."""

    max_message_size = LARGEST

    def initialize(self, home):
        self.home, self.process = home, None

    async def get(self):
        if not self.current_user:
            raise web.HTTPError(403)
        await super().get()

    def open(self):
        pipe, kit = subprocess.PIPE, self.home.kit
        self.process = subprocess.Popen(
            [sys.executable, "-m", "kitchenmath.pages.behind", str(kit)],
            cwd=self.home.lessons, stdin=pipe, stdout=pipe, encoding="utf-8",
            env=os.environ | {"PYTHONPATH": _with(kit), "PYTHONIOENCODING": "utf-8"},
        )  # fmt: skip
        self.loop = IOLoop.current()
        threading.Thread(target=self._pass_on, daemon=True).start()

    def on_message(self, message):
        self.process.stdin.write(message.rstrip("\n") + "\n")
        self.process.stdin.flush()

    def on_close(self):
        if self.process:
            self.process.stdin.close()  # it ends when nothing more can come
            self.process.terminate()

    def _pass_on(self):
        with self.process.stdout:
            for line in self.process.stdout:
                self.loop.add_callback(self._post, line)
        self.process.wait()
        self.loop.add_callback(self.close)

    def _post(self, line):
        with contextlib.suppress(WebSocketClosedError):  # closed while Python was at work
            self.write_message(line)


def _with(kit):
    """The path for imports, with the kit first."""
    return os.pathsep.join(filter(None, [str(kit), os.environ.get("PYTHONPATH")]))
