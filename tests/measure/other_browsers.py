"""Two lessons and two set pages in Firefox, WebKitGTK and Chromium: when each can be used.

    python -m tests.measure.other_browsers EDITION [firefox webkit chromium set lesson]

EDITION is a built edition, from `python3 instructor edition --to EDITION`. The drivers are for
this script only, and no part of the kit's own needs:

    pip install selenium marionette_driver
    apt install firefox-esr webkit2gtk-driver        # WebKitGTK wants a screen, or Xvfb's DISPLAY

Each page is opened by a browser that never saw it, then a second time. One field is answered on a
set's page, and on a lesson's one slider is moved; what the page says then is read back. The page
takes its times itself, so that all three drivers are measured alike.
"""

import json
import os
import shutil
import sys
import tempfile
import threading
import time
from collections.abc import Callable
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from coursework.edition.serve import address_of, server

from tests.helpers.browser import UNGUESSED, WAIT_S, browse

# By page, what is typed into the first field; nothing where a slider is moved.
PAGES = {
    "lesson-04-*.html": "",
    "lesson-06-*.html": "",
    "set-04-*.html": "3 kg",
    "set-10-*.html": "1 h 45 min",
}
KEYS = {"ArrowRight": "\ue014", "Tab": "\ue004"}  # as WebDriver names them, W3C, section 17.4.2
SLIDER, SAID_BY_PANEL = "input[type=range]", ".kitchen:has(input[type=range]) [role=status]"
# The panel behind a prediction, asked for without a guess.
OPEN_PANEL = f"""[...document.querySelectorAll('[data-cell] button')]
    .find(each => each.textContent === '{UNGUESSED}' && each.closest('[data-cell$=say]')).click()"""
# Put before a page's own scripts, as a file of the edition: its policy lets nothing else in.
LISTEN = """
const page = document.documentElement, heard = { errors: [], text: null, usable: null, said: null };
const now = () => Math.round(performance.now());
const tell = () => { page.dataset.heard = JSON.stringify(heard); };
const wrong = words => { heard.errors.push(String(words)); tell(); };
addEventListener("error", event =>
  wrong(event.message ?? `not loaded: ${event.target.src ?? event.target.href}`), true);
addEventListener("unhandledrejection", event => wrong(event.reason));
document.addEventListener("securitypolicyviolation", event => wrong(`refused ${event.blockedURI}`));
for (const level of ["error", "warn"]) {
  const told = console[level];
  console[level] = (...words) => { wrong(words.join(" ")); told(...words); };
}
document.addEventListener("readystatechange", () => { heard.text ??= now(); tell(); });
new MutationObserver(() => { heard.usable ??= now(); tell(); })
  .observe(page, { attributeFilter: ["data-ready", "data-first"] });
let left = null;
for (const name of ["input", "change"])
  document.addEventListener(name, () => { left = now(); }, true);
const saying = "[role=status]";
new MutationObserver(changes => {
  const told = changes.some(({ target }) =>
    (target.closest ? target : target.parentElement)?.closest(saying)
      ?? target.querySelector?.(saying));
  if (left === null || !told) return;
  heard.said = now() - left;
  left = null;
  tell();
}).observe(document, { subtree: true, childList: true, characterData: true });
"""


@dataclass(frozen=True)
class Browser:
    """What this script asks of a browser, whatever drives it.

    Attributes
    ----------
    name : str
        With its version.
    go : callable
        Opens an address.
    run : callable
        Runs the body of a function in the page, and gives what it returns.
    keys : callable
        Types text into the first element that a selector finds; a name in `KEYS` is that key.
    """

    name: str
    go: Callable[[str], None]
    run: Callable[[str], object]
    keys: Callable[[str, str], None]


@contextmanager
def chromium():
    """Chromium, through the driver that the tests use."""
    with browse() as page:

        def keys(selector, text):
            field = page.locator(selector).first
            (field.press if text in KEYS else field.press_sequentially)(text)

        version = page.context.browser.version
        yield Browser(
            f"Chromium {version}", page.goto, lambda body: page.evaluate(f"() => {{{body}}}"), keys
        )


@contextmanager
def firefox():
    """Firefox, through its own Marionette."""
    import mozlog
    from marionette_driver.marionette import Marionette

    # Where nobody made a log, its library prints all that it finds out of the program.
    mozlog.structuredlog.set_default_logger(mozlog.structuredlog.StructuredLogger("quiet"))
    firefox = shutil.which("firefox-esr") or shutil.which("firefox")
    driver = Marionette(bin=firefox, headless=True, gecko_log=os.devnull)
    try:
        driver.start_session()
        version = driver.session_capabilities["browserVersion"]
        yield Browser(
            f"Firefox {version}", driver.navigate, driver.execute_script, _web_keys(driver)
        )
    finally:
        driver.cleanup()


@contextmanager
def webkit():
    """WebKitGTK's own small browser, through WebDriver."""
    from selenium import webdriver
    from selenium.webdriver.webkitgtk.options import Options
    from selenium.webdriver.webkitgtk.service import Service

    options = Options()
    options.binary_location = str(next(Path("/usr/lib").glob("*/webkit2gtk-4.1/MiniBrowser")))
    options.add_argument("--automation")
    driver = webdriver.WebKitGTK(options, Service(shutil.which("WebKitWebDriver")))
    try:
        version = driver.capabilities["browserVersion"]
        yield Browser(f"WebKitGTK {version}", driver.get, driver.execute_script, _web_keys(driver))
    finally:
        driver.quit()


BROWSERS = {"firefox": firefox, "webkit": webkit, "chromium": chromium}


def _web_keys(driver):
    return lambda selector, text: driver.find_element("css selector", selector).send_keys(
        KEYS.get(text, text)
    )


def wait_until(browser, condition):
    """Ask the page until a condition, in its own language, holds."""
    until = time.monotonic() + WAIT_S
    while not browser.run(f"return {condition}"):
        if time.monotonic() > until:
            raise TimeoutError(f"{browser.name}: {condition}")
        time.sleep(0.1)


def heard(browser):
    """What the page wrote down of itself."""
    return json.loads(browser.run("return document.documentElement.dataset.heard"))


def opened(browser, address):
    """Open a page and wait until all of it is live."""
    browser.go(address)
    wait_until(browser, "document.documentElement.dataset.ready === 'yes'")
    return heard(browser)


def answer(browser, typed):
    """Answer the first field, or move the first slider; what the page then says."""
    said = '[data-said="q1"]' if typed else SAID_BY_PANEL
    text = f"document.querySelector({json.dumps(said)}).textContent"
    if typed:
        student = "document.querySelector('[data-said=student]').textContent"
        browser.keys("#student", "BH-1007")
        browser.keys("#student", "Tab")
        wait_until(browser, f"{student}.includes('BH-1007')")
    else:
        browser.run(OPEN_PANEL)
        wait_until(browser, f"document.querySelector('{SLIDER}')")
    before = json.dumps(browser.run(f"return {text}"))
    for keys in (typed, "Tab") if typed else ("ArrowRight",):
        browser.keys('[data-field="q1"]' if typed else SLIDER, keys)
    wait_until(browser, f"{text} !== {before}")
    return browser.run(f"return {text}")


@contextmanager
def listening(edition):
    """A copy of an edition whose pages take their own times, served; its address and its pages."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch, "edition")
        shutil.copytree(edition, folder)
        (folder / "listen.js").write_text(LISTEN, encoding="utf-8")
        for page in folder.glob("*.html"):
            text = page.read_text(encoding="utf-8")
            first = '<script src="listen.js"></script>\n<link rel="stylesheet"'
            page.write_text(text.replace('<link rel="stylesheet"', first, 1), encoding="utf-8")
        made = server(folder)
        threading.Thread(target=made.serve_forever, daemon=True).start()
        try:
            yield address_of(made), {next(folder.glob(each)).name: PAGES[each] for each in PAGES}
        finally:
            made.shutdown()
            made.server_close()


def main(edition, wanted):
    """Print a line for each browser and page, and after it what the page said.

    Parameters
    ----------
    edition : Path
    wanted : list of str
        Browsers, and beginnings of pages' names; of each that is not named, all.
    """
    print(f"{'browser, page':48}{'text':>6}{'usable':>8}{'again':>7} s{'said':>7} ms  errors")
    with listening(edition) as (address, pages):
        kinds = tuple(each for each in wanted if each not in BROWSERS) or ("lesson", "set")
        pages = {page: typed for page, typed in pages.items() if page.startswith(kinds)}
        for name in [each for each in BROWSERS if each in wanted] or BROWSERS:
            for page, typed in pages.items():
                with BROWSERS[name]() as browser:
                    cold, warm = (opened(browser, f"{address}{page}") for _ in range(2))
                    said = answer(browser, typed)
                    after = heard(browser)
                    title = f"{browser.name}, {page.removesuffix('.html')}"
                times = [one / 1000 for one in (cold["text"], cold["usable"], warm["usable"])]
                errors = cold["errors"] + after["errors"]
                print(
                    f"{title:48}{times[0]:6.2f}{times[1]:8.1f}{times[2]:7.1f}  "
                    f"{after['said']:7.0f}     {errors or 'none'}\n    {' '.join(said.split())}",
                    flush=True,
                )


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2:])
