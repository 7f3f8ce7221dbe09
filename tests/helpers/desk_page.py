"""The desk in a browser: press a button, wait for what is said; and note what was operated."""

import re

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
        page.wait_for_function(ALL_THERE)
        page.evaluate(NAME_PANELS)

    def panel(self, heading):
        """The panel below a heading."""
        return self.page.locator(f'[data-panel="{heading}"]')

    def left(self):
        """The controls that were not used yet."""
        return self.page.evaluate(LEFT)

    def fill(self, place, label, text, nth=0):
        """Type into the box of that label."""
        box = self._labelled(place, label, nth)
        box.fill(text)
        box.evaluate(USED)

    def choose(self, place, label, *options, nth=0):
        """Choose in the list of that label, by words or by place."""
        chooser = self._labelled(place, label, nth)
        by = {"index": list(options)} if isinstance(options[0], int) else {"label": list(options)}
        chooser.select_option(**by)
        chooser.evaluate(USED)

    def tick(self, place, label, nth=0):
        """Tick the box of that label."""
        box = self._labelled(place, label, nth)
        box.check()
        box.evaluate(USED)

    def turn(self, place, nth):
        """Press a button that stays down, the one at that place."""
        button = place.locator("button.widget-toggle-button").nth(nth)
        button.click()
        button.evaluate(USED)

    def upload(self, place, button, *files):
        """Choose files, as a name and bytes each, with the button of that name."""
        found = place.locator("button.widget-upload").filter(has_text=button)
        with self.page.expect_file_chooser() as chooser:
            found.click()
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
        named.click()
        fresh = step.locator("[role=status]:not([data-old])")
        fresh.filter(has_not_text=re.compile(r"…$")).wait_for()
        step.locator("button:enabled").wait_for()
        named.evaluate(USED)
        self.said.append(f"{button}: {fresh.inner_text()}")
        return self.said[-1]

    def _labelled(self, place, label, nth):
        return place.get_by_label(label, exact=True).nth(nth)
