"""Lesson 4's prediction of an order, said on a page by keyboard, and the slider behind it."""

SAYS_OTHER = """([panel, was]) => [...panel.querySelectorAll('[role=status]')]
    .map(part => part.innerText).join() !== was"""
SAYS = "panel => [...panel.querySelectorAll('[role=status]')].map(part => part.innerText).join()"


def say_then_move(page):
    """Say 3.6 kg, go on by Tab to the first slider of what opens, and move it by one step.

    What was said on an earlier visit is forgotten first.

    Parameters
    ----------
    page : playwright Page
        Lesson 4, with all panels live.
    """
    asked = page.locator('[data-cell="purchase-say"]')
    sliders = asked.locator("input[type=range]")
    if sliders.count():
        asked.get_by_role("button", name="Ask me again").click()
        sliders.first.wait_for(state="hidden")
    assert sliders.count() == 0
    asked.get_by_label("I say").fill("3.6 kg")
    asked.get_by_label("I say").press("Enter")
    sliders.first.wait_for()
    page.keyboard.press("Tab")
    assert sliders.first.evaluate("it => it === document.activeElement")
    before = asked.evaluate(SAYS)
    page.keyboard.press("ArrowRight")
    page.wait_for_function(SAYS_OTHER, arg=[asked.element_handle(), before])
