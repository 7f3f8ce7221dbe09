"""How soon an edition can be used: sizes, first field, first panel, an answer said back, and reach.

    python tests/measure/edition_speed.py WHEELS [AXE]

WHEELS is the folder with the compiled wheels, AXE an axe.min.js for the look at accessibility
(`npm pack axe-core`). A host that lets nothing be cached is the hardest case, so that is the one
that is measured; on a busy machine every time is long, and the ratio to the first line tells more.
"""

import functools
import gzip
import sys
import threading
import time
from pathlib import Path

from coursework.edition import serve
from coursework.edition.site import edition, write

from tests.helpers.browser import DESK, PHONE, browse

SET, LESSON = "set-04-buy-enough.html", "lesson-04-buy-enough.html"
READY = "html[data-ready=yes]"
LESSONS_ONLY = (
    "matplotlib", "contourpy", "kiwisolver", "pillow", "cycler", "fonttools", "six",
    "pyparsing", "python_dateutil", "packaging", "ipywidgets", "comm", "traitlets",
    "numpy_for_lessons",
)  # fmt: skip
WIDER = "() => document.scrollingElement.scrollWidth - innerWidth"
SERIOUS = """async () => (await axe.run()).violations
    .filter(one => ['serious', 'critical'].includes(one.impact)).map(one => one.id)"""


class _NoStore(serve._Handler):
    """A host that forbids caching, and counts what it sends."""

    sent = 0

    def end_headers(self):
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def copyfile(self, source, outputfile):
        _NoStore.sent += Path(source.name).stat().st_size
        super().copyfile(source, outputfile)


def main(wheels, folder, axe=""):
    """Build an edition into a folder, open it as a student does, and print the figures."""
    began = time.perf_counter()
    files = edition(wheel_folder=Path(wheels))
    write(files, folder)
    say("built", time.perf_counter() - began)
    sizes(files)
    serve.http.server.ThreadingHTTPServer.daemon_threads = True
    made = serve.http.server.ThreadingHTTPServer(
        ("127.0.0.1", 0), functools.partial(_NoStore, directory=str(folder))
    )
    threading.Thread(target=made.serve_forever, daemon=True).start()
    address = serve.address_of(made)
    for page_name, mark, cold, warm in (
        (SET, READY, 5, 4),
        (LESSON, "html[data-first=yes]", 12, 8),
    ):
        with browse() as page:
            times(page, address, page_name, mark, (cold, warm, warm))
    with browse() as page:
        reach(page, address, axe)
    made.shutdown()


def say(what, seconds, wanted=""):
    """One figure, with what was wanted."""
    print(f"{what:<46}{seconds:8.2f} s{f'   (wanted {wanted} s)' if wanted else ''}")


def sizes(files):
    """What a first set and a first lesson load."""
    python = {name: raw for name, raw in files.items() if name.startswith("python/")}
    few = [raw for name, raw in python.items() if not name.split("/")[1].startswith(LESSONS_ONLY)]
    for what, loaded in (("a set", few), ("a lesson", list(python.values()))):
        plain = sum(map(len, loaded)) / 1e6
        packed = sum(len(gzip.compress(raw, 6)) for raw in loaded) / 1e6
        print(f"{f'first load of {what}':<46}{plain:8.1f} MB, {packed:.1f} MB gzipped")


def times(page, address, name, mark, wanted):
    """Cold, warm and without a network, until a page can be used; and one answer said back."""
    page.set_viewport_size(PHONE)
    for how, limit in zip(("cold", "warm", "no network"), wanted, strict=True):
        page.context.set_offline(how == "no network")
        before, began = _NoStore.sent, time.perf_counter()
        page.goto(f"{address}{name}", wait_until="domcontentloaded")
        text = time.perf_counter() - began
        page.locator(mark).wait_for(state="attached")
        say(f"{name.partition('-')[0]}, {how}: text", text)
        say(f"{name.partition('-')[0]}, {how}: ready", time.perf_counter() - began, str(limit))
        print(f"{'':<46}{(_NoStore.sent - before) / 1e6:8.1f} MB sent")
        page.locator(READY).wait_for(state="attached")
    page.context.set_offline(False)
    if name == SET:
        page.locator("#student").fill("BH-1007")
        for answer in ("3 kg", "4 kg", "5 kg"):
            field = page.locator('[data-field="q1"]')
            field.fill(answer)
            began = time.perf_counter()
            field.blur()
            page.locator('[data-said="q1"]').filter(has_text=answer).wait_for()
        say("an answer said back", time.perf_counter() - began, "0.15")


def reach(page, address, axe):
    """Whether a page scrolls sideways, also with text twice as large; what axe finds serious."""
    for name in (
        "index.html",
        SET,
        "set-03-cut-to-size.html",
        "set-10-land-the-plate.html",
        LESSON,
    ):
        wide = []
        # 200 % on a phone: half as many of the page's own pixels across.
        for size in (DESK, PHONE, {"width": PHONE["width"] // 2, "height": 422}):
            page.set_viewport_size(size)
            page.goto(f"{address}{name}")
            wide.append(page.evaluate(WIDER))
        found = "not looked at"
        if axe and name != LESSON:
            # The page's own policy lets no other script in, so it is read out in its world.
            page.evaluate(Path(axe).read_text(encoding="utf-8"))
            found = page.evaluate(SERIOUS)
        print(f"{name:<46} wider by {wide} px, serious: {found}")


if __name__ == "__main__":
    import tempfile

    with tempfile.TemporaryDirectory() as folder:
        main(sys.argv[1], Path(folder), *sys.argv[2:3])
