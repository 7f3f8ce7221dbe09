"""A real browser for the tests: JupyterLab on a copy of the kit, and Chromium on JupyterLab.

A test module says that it needs one, and owns its server, so that modules can run side by side:

    pytestmark = NEEDS_CHROMIUM


    @pytest.fixture(scope="module")
    def lab(tmp_path_factory):
        with open_lab(tmp_path_factory.mktemp("lab")) as lab:
            yield lab


    def test_a_lesson_runs(lab):
        with lab.notebook("lessons/04-buy-enough.ipynb") as notebook:
            assert notebook.run_all() == []

Nothing waits by the clock: each wait asks the page until something is so, and fails after WAIT_S.
Chromium is found by its usual names, or by KITCHEN_CHROMIUM. It opens no page but our own.
"""

import json
import os
import secrets
import shutil
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from contextlib import contextmanager, suppress
from pathlib import Path

import pytest

KIT = Path(__file__).resolve().parents[2]
SCREENSHOTS = KIT / "tests" / "screenshots"
WAIT_S = 180  # a busy machine needs most of it to mark a class; a broken kit waits in vain
# KITCHEN_SLOWER=8 holds the browser back as a machine eight times as slow would.
SLOWER = float(os.environ.get("KITCHEN_SLOWER", "1"))
DESK = {"width": 1280, "height": 900}
PHONE = {"width": 390, "height": 844}
NAMES = (
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
)


def chromium():
    """The path of a Chromium, or None."""
    named = os.environ.get("KITCHEN_CHROMIUM")
    return next(filter(None, map(shutil.which, [named] if named else NAMES)), None)


NEEDS_CHROMIUM = [
    pytest.mark.browser,
    pytest.mark.skipif(chromium() is None, reason="no Chromium was found"),
]

# A root shell has no sandbox to offer, and the pages are our own. No name resolves but this
# machine's, so that a page which needs the network is found out.
CHROMIUM_OPTIONS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
]
LAB_OPTIONS = [
    "--no-browser",
    "--ip=127.0.0.1",
    "--ServerApp.port_retries=0",
    "--allow-root",
    "--ServerApp.terminals_enabled=False",
    "--LabApp.expose_app_in_browser=True",  # window.jupyterapp, through which the tests wait
    "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
    "--LabApp.extension_manager=readonly",
]
UNGUESSED, ASKED = "Show me without a guess", "Ask me again"  # a prediction, shut and open
NEWS = "@jupyterlab/apputils-extension:announcements"  # its pop-up would lie over the page


def copy_kit(folder):
    """Copy what lessons, sets and the desk need, without any class, so that tests may write.

    Parameters
    ----------
    folder : Path
        Must not exist.
    """
    for name in ("kitchenmath", "lessons", "assignments", "instructor"):
        shutil.copytree(KIT / name, folder / name, ignore=_made_on_use)


def _made_on_use(folder, names):
    """What a copy of the kit leaves out: real classes, and what Python and Jupyter leave behind."""
    caches = shutil.ignore_patterns("__pycache__", ".ipynb_checkpoints")(folder, names)
    return caches | ({"classes"} if Path(folder) == KIT / "instructor" else set())


@contextmanager
def serve(root, home, library, more=(), environment=None):
    """A Jupyter server on a folder; its address with the token, then the end of it.

    Parameters
    ----------
    root : Path
        What it shows, and where it starts.
    home : Path
        All that it writes for itself goes here.
    library : Path
        A copy of the kit; its packages are the ones that notebooks import.
    more : sequence of str
        Further options of the server.
    environment : dict of str to str, optional
        What the server finds in its environment beside the tests' own.
    """
    port, token = free_port(), secrets.token_hex(16)
    home.mkdir(parents=True)
    pages = home / "config" / "labconfig"
    pages.mkdir(parents=True)
    (pages / "page_config.json").write_text(json.dumps({"disabledExtensions": {NEWS: True}}))
    own = {
        "HOME": home,
        "JUPYTER_CONFIG_DIR": home / "config",
        "JUPYTER_DATA_DIR": home / "data",
        "JUPYTER_RUNTIME_DIR": home / "runtime",
        "JUPYTERLAB_SETTINGS_DIR": home / "settings",
        "JUPYTERLAB_WORKSPACES_DIR": home / "workspaces",
        "IPYTHONDIR": home / "ipython",
        "MPLCONFIGDIR": home / "matplotlib",
    }
    python_path = os.pathsep.join([str(library), str(library / "instructor")])
    options = [
        f"--port={port}",
        f"--IdentityProvider.token={token}",
        f"--ServerApp.root_dir={root}",
    ]
    with (home / "server.log").open("w") as log:
        server = subprocess.Popen(
            [sys.executable, "-m", "jupyterlab", *LAB_OPTIONS, *options, *more],
            cwd=root,
            env=os.environ
            | {key: str(path) for key, path in own.items()}
            | {"PYTHONPATH": python_path}
            | (environment or {}),
            stdin=subprocess.DEVNULL,
            stdout=log,
            stderr=subprocess.STDOUT,
            start_new_session=True,
        )
        try:
            wait_for_server(server, f"http://127.0.0.1:{port}/api?token={token}", log.name)
            yield f"http://127.0.0.1:{port}", token
        finally:
            end(server)


def free_port():
    """A port that nobody listens on."""
    with socket.socket() as trial:
        trial.bind(("127.0.0.1", 0))
        return trial.getsockname()[1]


def wait_for_server(server, address, log):
    """Ask until the server answers; fail with its own words when it has stopped."""
    until = time.monotonic() + WAIT_S
    while time.monotonic() < until and server.poll() is None:
        try:
            with urllib.request.urlopen(address, timeout=5):
                return
        except (urllib.error.URLError, OSError):
            time.sleep(0.05)
    pytest.fail(f"the server did not start:\n{Path(log).read_text()[-2000:]}")


def end(server):
    """Ask the server to stop its kernels and itself; whatever stays of its group is killed."""
    server.terminate()
    with suppress(subprocess.TimeoutExpired):
        server.wait(20)
    if os.name == "posix":
        with suppress(ProcessLookupError):
            os.killpg(server.pid, signal.SIGKILL)
    server.kill()
    server.wait()


@contextmanager
def open_lab(folder):
    """JupyterLab on a copy of the kit in a folder, and a browser beside it.

    Parameters
    ----------
    folder : Path

    Yields
    ------
    Lab
    """
    kit = folder / "kit"
    copy_kit(kit)
    with serve(kit, folder / "home", kit) as (address, token), browse() as page:
        page.goto(f"{address}/lab?token={token}&reset")
        page.wait_for_function("() => window.jupyterapp")
        page.evaluate("() => jupyterapp.restored")
        yield Lab(kit, page)


@contextmanager
def browse():
    """A page of a browser without a screen."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        program = playwright.chromium.launch(executable_path=chromium(), args=CHROMIUM_OPTIONS)
        try:
            page = program.new_page(viewport=DESK)
            page.set_default_timeout(WAIT_S * 1000)
            if SLOWER > 1:
                session = page.context.new_cdp_session(page)
                session.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
            yield page
        finally:
            program.close()


class Lab:
    """A copy of the kit, and JupyterLab on it in a browser.

    Attributes
    ----------
    kit : Path
    page : playwright Page
    """

    def __init__(self, kit, page):
        self.kit, self.page = kit, page

    @contextmanager
    def notebook(self, path):
        """A notebook of the copy, opened as from the list of files, with its kernel ready.

        Parameters
        ----------
        path : str
            Below the kit's folder, such as "lessons/04-buy-enough.ipynb".

        Yields
        ------
        Notebook
        """
        self.page.evaluate(OPEN, path)
        self.page.wait_for_function(READY, arg=path)
        self.page.evaluate(NAME_CELLS)
        notebook = Notebook(self.page, path)
        notebook.at(DESK)
        try:
            yield notebook
        finally:
            self.page.evaluate(CLOSE)


OPEN = "async path => { await jupyterapp.commands.execute('docmanager:open', {path}) }"
READY = """path => {
    const shown = jupyterapp.shell.currentWidget;
    return shown?.context?.path === path
        && shown.sessionContext.session?.kernel?.status === 'idle';
}"""
# Each cell's id goes into the page, so that a test can name the cell it looks at.
NAME_CELLS = """() => {
    for (const cell of jupyterapp.shell.currentWidget.content.widgets)
        cell.node.dataset.cell = cell.model.id;
}"""
RUN_ALL = "async () => { await jupyterapp.commands.execute('notebook:run-all-cells') }"
SAVE = "async () => { await jupyterapp.commands.execute('docmanager:save') }"
CLOSE = """async () => {
    const shown = jupyterapp.shell.currentWidget;
    await shown.sessionContext.shutdown();
    shown.dispose();
}"""
CODE_CELLS = """() => jupyterapp.shell.currentWidget.content.widgets
    .filter(cell => cell.model.type === 'code')
    .map(cell => ({
        id: cell.model.id,
        empty: !cell.model.sharedModel.source.trim(),
        count: cell.model.executionCount,
        outputs: cell.model.outputs.toJSON(),
    }))"""
SOURCE = """id => jupyterapp.shell.currentWidget.content.widgets
    .find(cell => cell.model.id === id).model.sharedModel.source"""
# What a phone's owner sees: one document, and nothing on either side of it.
LAY_OUT = """phone => {
    const shell = jupyterapp.shell;
    shell.mode = phone ? 'single-document' : 'multiple-document';
    for (const side of ['left', 'right'])
        if (shell.isSideTabBarVisible(side) === phone) shell.toggleSideTabBarVisibility(side);
    shell.collapseLeft();
    shell.collapseRight();
}"""


class Notebook:
    """An open notebook.

    Attributes
    ----------
    page : playwright Page
    path : str
        Below the kit's folder.
    pictures : Path
        The folder for its pictures.
    """

    def __init__(self, page, path):
        self.page, self.path = page, path
        self.pictures = SCREENSHOTS / Path(path).with_suffix("")

    def run_all(self):
        """Run every cell to the end.

        Returns
        -------
        list of str
            What went wrong: errors, and code cells that never ran. Empty when all is well.
        """
        self.page.evaluate(RUN_ALL)
        self.page.wait_for_function(READY, arg=self.path)
        return [
            f"{cell['id']}: {output['ename']}: {output['evalue']}"
            for cell in self._cells()
            for output in cell["outputs"]
            if output["output_type"] == "error"
        ] + [
            f"{cell['id']}: did not run"
            for cell in self._cells()
            if not cell["empty"] and not cell["count"]
        ]

    def said(self, cell_id):
        """The text that a cell's outputs show."""
        outputs = next(cell["outputs"] for cell in self._cells() if cell["id"] == cell_id)
        return "\n".join(
            as_text(output.get("text") or output.get("data", {}).get("text/plain", ""))
            for output in outputs
        )

    def panel_ids(self):
        """Ids of the cells that show a panel."""
        view = "application/vnd.jupyter.widget-view+json"
        return [
            cell["id"]
            for cell in self._cells()
            if any(view in output.get("data", {}) for output in cell["outputs"])
        ]

    def cell(self, cell_id):
        """A cell in the page."""
        return self.page.locator(f'[data-cell="{cell_id}"]')

    def panel(self, cell_id):
        """The panel that a cell shows; of a prediction, with all that stands behind it."""
        panel = self.cell(cell_id).locator(".widget-vbox").first
        if "predict_panel(" in self.page.evaluate(SOURCE, cell_id):
            shown = panel.get_by_role("button", name=UNGUESSED)
            shown.or_(panel.get_by_role("button", name=ASKED)).filter(visible=True).first.wait_for()
            open_predictions(panel)
        return panel

    def type_between_quotes(self, cell_id, text):
        """Click into the first line of a cell, go between the last two quotes, and type."""
        self.cell(cell_id).locator(".cm-line").first.click()
        for key in ("End", "ArrowLeft"):
            self.page.keyboard.press(key)
        self.page.keyboard.type(text)

    def at(self, size):
        """Look at the notebook through a window of another size."""
        self.page.set_viewport_size(size)
        self.page.evaluate(LAY_OUT, size == PHONE)

    def save(self):
        """Save, as with File, then Save Notebook."""
        self.page.evaluate(SAVE)

    def picture(self, name, part=None):
        """Keep a picture of the window or of a part of it, for human eyes."""
        if part:
            part.scroll_into_view_if_needed()  # what comes into sight grows, and moves the rest
        (part or self.page).screenshot(path=self.pictures / f"{name}.png")

    def _cells(self):
        return self.page.evaluate(CODE_CELLS)


def open_predictions(part):
    """Press past every prediction in a part of a page, also one that stands behind another.

    Parameters
    ----------
    part : playwright Page or Locator
    """
    unguessed = part.get_by_role("button", name=UNGUESSED).filter(visible=True)
    while left := unguessed.count():
        again = part.get_by_role("button", name=ASKED).filter(visible=True)
        there = again.count()
        unguessed.nth(left - 1).press("Enter")  # a click right after a picture may be lost
        again.nth(there).wait_for()


def as_text(text):
    """Text of an output, which a notebook may keep as a list of lines."""
    return text if isinstance(text, str) else "".join(text)
