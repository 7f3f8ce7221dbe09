"""The desk in a browser: press a button, wait for what is said."""

import re


def press(desk, cell, button, until):
    """Press a button of a panel, wait for words beside it, and give back all that is said there."""
    named = desk.page.get_by_role("button", name=button, exact=True)
    step = desk.cell(cell).locator(".widget-vbox").filter(has=named).last  # the innermost
    step.get_by_role("button").click()
    step.locator("[role=status]").filter(has_text=re.compile(until)).wait_for()
    return step.locator("[role=status]").inner_text()
