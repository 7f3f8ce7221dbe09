"""The desk in a browser, by the keyboard alone: press, wait for what is said, note what was used.

Every control is operated as who has no mouse does it: Enter on a button, Space on a tick, arrow
keys in a list, letters in a box. That Tab alone leads there, and that one sees where it stands, is
walked by `tab_through`.
"""

import re
import time

from tests.helpers.browser import WAIT_S

# Each panel gets the heading above it as its name, so that a test can say which one it means.
NAME_PANELS = """() => {
    const found = document.querySelectorAll('#rendered_cells h2, #rendered_cells .widget-vbox');
    let heading = '';
    for (const one of found) {
        if (one.tagName === 'H2') heading = one.textContent.replace('¶', '').trim();
        else if (heading) { one.dataset.panel = heading; heading = ''; }
    }
}"""
# Panels come in any order: each heading has its own below it, before the next heading.
ALL_THERE = """() => {
    const wanted = '#rendered_cells h2, #rendered_cells .widget-vbox';
    const found = [...document.querySelectorAll(wanted)];
    const heads = found.filter(one => one.tagName === 'H2');
    return heads.length > 0 && heads.every(
        one => found[found.indexOf(one) + 1]?.classList.contains('widget-vbox'));
}"""
# What nobody has operated yet, by panel and name.
LEFT = """() => [...document.querySelectorAll('[data-panel]')].flatMap(panel =>
    [...panel.querySelectorAll('button, input, select, textarea')]
        .filter(one => !one.dataset.used && one.closest('[data-panel]') === panel)
        .map(one => `${panel.dataset.panel}: ` +
            (one.labels?.[0]?.textContent || one.textContent || one.title)))"""
USED = "one => { one.dataset.used = 'yes' }"
OLD = "one => { for (const said of one.querySelectorAll('[role=status]')) said.dataset.old = 'y' }"


def press(desk, cell, button, until):
    """Press a button of a panel, wait for words beside it, and give back all that is said there."""
    named = desk.page.get_by_role("button", name=button, exact=True)
    step = desk.cell(cell).locator(".widget-vbox").filter(has=named).last  # the innermost
    step.get_by_role("button").click()
    step.locator("[role=status]").filter(has_text=re.compile(until)).wait_for()
    return step.locator("[role=status]").inner_text()


class DeskPage:
    """The desk as its own page; every control that is used here is noted in the page.

    Parameters
    ----------
    page : playwright Page
        With the desk's panels in it.

    Attributes
    ----------
    said : list of str
        What the buttons answered, in order.
    """

    def __init__(self, page):
        self.page, self.said = page, []
        # A chooser is told of only once somebody listens, and that takes a moment: a key is faster.
        page.on("filechooser", lambda _: None)
        page.wait_for_function(ALL_THERE)
        page.evaluate(NAME_PANELS)

    def headings(self):
        """The headings of all panels, in order."""
        return self.page.locator("[data-panel]").evaluate_all(
            "all => all.map(one => one.dataset.panel)"
        )

    def panel(self, heading):
        """The panel below a heading."""
        return self.page.locator(f'[data-panel="{heading}"]')

    def left(self):
        """The controls that were not used yet."""
        return self.page.evaluate(LEFT)

    def fill(self, place, label, text, nth=0):
        """Type into the box of that label."""
        self.type_into(self._labelled(place, label, nth), text)

    def type_into(self, box, text):
        """Type into a box, over what stands there."""
        self._focus(box)
        self.page.keyboard.press("ControlOrMeta+a")
        if text:
            self.page.keyboard.insert_text(text)
        else:
            self.page.keyboard.press("Delete")
        box.evaluate(USED)

    def choose(self, place, label, *options, nth=0):
        """Choose in the list of that label, by words or by place; several lie below each other."""
        chooser = self._labelled(place, label, nth)
        self._focus(chooser)
        # A list's lines have blanks that do not break; people and tests type plain ones.
        there = chooser.evaluate(
            "one => [...one.options].map(each => each.text.replaceAll('\\u00a0', ' '))"
        )
        wanted = [one if isinstance(one, int) else there.index(one) for one in options]
        if chooser.evaluate("one => one.multiple"):
            self._keys("Home", *["ArrowDown"] * wanted[0], *["Shift+ArrowDown"] * len(wanted[1:]))
        else:
            self._go_to(chooser, wanted[0])
        chosen = chooser.evaluate("one => [...one.selectedOptions].map(each => each.index)")
        assert wanted == chosen, f"{label}: {wanted} was wanted, {chosen} is chosen"
        chooser.evaluate(USED)

    def _go_to(self, chooser, wanted):
        """By arrow keys, from where it stands or from an end of the list, whichever is nearer."""
        now, last = chooser.evaluate("one => [one.selectedIndex, one.options.length - 1]")
        ways = (
            (abs(wanted - now), [], wanted - now),
            (1 + wanted, ["Home"], wanted),
            (1 + last - wanted, ["End"], wanted - last),
        )
        _, jump, away = min(ways, key=lambda way: way[0])
        self._keys(*jump, *["ArrowDown" if away > 0 else "ArrowUp"] * abs(away))

    def tick(self, place, label, nth=0):
        """Tick the box of that label."""
        self.check(self._labelled(place, label, nth))

    def check(self, box):
        """Tick a box; one that is ticked stays so."""
        self._focus(box)
        if not box.is_checked():
            self._keys("Space")
        assert box.is_checked()
        box.evaluate(USED)

    def turn(self, place, nth):
        """Press a button that stays down, the one at that place."""
        button = place.locator("button.widget-toggle-button").nth(nth)
        self._focus(button)
        self._keys("Space")
        button.evaluate(USED)

    def upload(self, place, button, *files):
        """Choose files, as a name and bytes each, with the button of that name."""
        found = place.locator("button.widget-upload").filter(has_text=button)
        self._focus(found)
        with self.page.expect_file_chooser() as chooser:
            self._keys("Enter")
        found.evaluate(USED)
        kind = "application/octet-stream"
        chooser.value.set_files(
            [{"name": name, "mimeType": kind, "buffer": raw} for name, raw in files]
        )
        found.filter(has_text=f"({len(files)})").wait_for()

    def press(self, place, button):
        """Press a button, wait until its work is done, and give back what it said.

        Its words are new ones, and it answers again: then the desk has shown all that follows.
        """
        named = self.page.get_by_role("button", name=button, exact=True)
        step = place.locator(".widget-vbox").filter(has=named).last  # the innermost
        named = step.get_by_role("button")
        step.evaluate(OLD)
        self._focus(named)
        self._keys("Enter")
        fresh = step.locator("[role=status]:not([data-old])")
        fresh.filter(has_not_text=re.compile(r"…$")).wait_for()
        step.locator("button:enabled").wait_for()
        named.evaluate(USED)
        self.said.append(f"{button}: {fresh.inner_text()}")
        return self.said[-1]

    def _focus(self, control):
        """Stand on a control, once it can be used."""
        control.and_(self.page.locator(":enabled")).wait_for()
        control.focus()
        assert control.evaluate("one => one === document.activeElement")

    def _keys(self, *keys):
        for key in keys:
            self.page.keyboard.press(key)

    def _labelled(self, place, label, nth):
        return place.get_by_label(label, exact=True).nth(nth)


# Words wider than their place push others out of view; a long label pushes its own box out.
OUT_OF_VIEW = """() => [
    ...[...document.querySelectorAll('#rendered_cells .widget-html')]
        .filter(one => one.scrollWidth > one.parentElement.clientWidth + 1),
    ...[...document.querySelectorAll('#rendered_cells :is(input, select, textarea)')]
        .filter(one => one.checkVisibility() && !['checkbox', 'file'].includes(one.type) &&
            (one.getBoundingClientRect().width < 40 ||
             one.getBoundingClientRect().right > innerWidth))
].map(one => one.labels?.[0]?.textContent || one.textContent.slice(0, 80))"""


def out_of_view(page):
    """Words of the desk that are wider than their place, and boxes that one cannot see or read.

    Parameters
    ----------
    page : playwright Page

    Returns
    -------
    list of str
        The words, or a box's label.
    """
    return page.evaluate(OUT_OF_VIEW)


# Where Tab stands: noted on the control, and its look kept, to be compared when Tab has left it.
# Between a frame and its page the browser stands nowhere for a moment: that is no place to look.
STAND = """() => {
    const look = one => { const { outlineStyle, outlineWidth, boxShadow, borderColor } =
        getComputedStyle(one); return [outlineStyle, outlineWidth, boxShadow, borderColor] + '' };
    const now = document.activeElement, old = window.stood;
    if (now === document.body) return null;
    if (old && old !== now && old.isConnected && look(old) === window.stoodLook)
        old.dataset.unseen = 'yes';
    [window.stood, window.stoodLook] = [now, look(now)];
    now.dataset.reached ||= ++window.reached;
    return now.id === 'the-end' ? 'the end' : now.dataset.reached }"""
INSIDE = "() => [...document.querySelectorAll('*')].indexOf(document.activeElement)"
# Before the first control and behind the last one: so the walk has a start and an end in the page.
ENDS = """() => { window.reached = 0;
    for (const [id, where] of [['the-start', 'afterbegin'], ['the-end', 'beforeend']])
        document.body.insertAdjacentHTML(where, `<span id="${id}" tabindex="0">${id}</span>`);
    document.getElementById('the-start').focus() }"""
AWAY = "() => ['start', 'end'].forEach(one => document.getElementById(`the-${one}`).remove())"
NAMED = """one => `${one.closest('[data-panel]')?.dataset.panel || 'page'}: ` +
    (one.labels?.[0]?.textContent || one.textContent || one.title).trim().slice(0, 40)"""
CONTROLS = (
    "button, input:not([type=file]), select, textarea, a[href]:not(.anchor-link), [tabindex='0']"
)
NAMED_NOW = f"() => ({NAMED})(document.activeElement)"
MOST_TABS = 3000  # far more than the desk has controls: a page with a trap ends here


def tab_through(page):
    """Walk through a page by Tab alone, from its top to its end, through its frames too.

    Parameters
    ----------
    page : playwright Page

    Returns
    -------
    dict of str to list of str
        The controls that were not "reached", and those where the focus is not "seen".
    """
    page.add_style_tag(content="* { transition: none !important }")
    page.evaluate(ENDS)
    stood = _stand(page)
    for _ in range(MOST_TABS):
        page.keyboard.press("Tab")
        stood = _moved_on(page, stood)
        if stood[0] == "the end":
            break
    else:
        raise AssertionError("Tab comes to no end")
    page.evaluate(AWAY)
    found = page.locator(CONTROLS).and_(page.locator(":visible:not(:disabled)"))
    named = f"all => all.filter(one => CHECK).map({NAMED})"
    return {
        "reached": found.evaluate_all(named.replace("CHECK", "!one.dataset.reached")),
        "seen": found.evaluate_all(named.replace("CHECK", "one.dataset.unseen")),
    }


def _stand(page):
    """Where the focus is: in the page, and in each frame of it."""
    return page.evaluate(STAND), [each.evaluate(INSIDE) for each in page.frames[1:]]


def _moved_on(page, before):
    """Where the focus is, once Tab has led somewhere else; a trap is an error."""
    until = time.monotonic() + WAIT_S
    while time.monotonic() < until:
        now = _stand(page)
        if now[0] is not None and now != before:
            return now
        page.wait_for_timeout(20)  # asked again, and no condition that a page could tell
    raise AssertionError(f"Tab leads nowhere from {page.evaluate(NAMED_NOW)}")
