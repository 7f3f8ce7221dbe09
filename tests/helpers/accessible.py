"""Whether people who see little, or use no mouse, can use a page: axe-core looks for us.

    def test_the_page_is_accessible(page):
        page.goto(address)
        assert serious_in(page) == []

axe-core comes by the npm client, pinned with its integrity sum as the browser's Python is, once,
into the folder of such parts. It never travels. Without npm a test says so and is left out.
"""

import functools

import pytest
from coursework.edition.runtime import Package, files_of
from coursework.errors import CourseError

AXE = Package(
    "axe-core",
    "4.14.1",
    "sha512-FHfa+lmNjQZfJz1q8wKqIDwC6DExcHt/pkjNQb09a3NPjCKg2rhu5qb2S4r76ASyFNNtuFooJpZe37OgudVGtQ==",
    ("axe.min.js",),
)
LOOK = """async () => (await axe.run()).violations
    .filter(({ impact }) => ['serious', 'critical'].includes(impact))
    .flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) =>
        `${id}: ${target.join(' ')}: ${failureSummary.split('\\n').slice(1).join(' ').trim()}`))"""

# The browser's setting makes letters twice as large, or its zoom leaves half as many pixels across.
TWICE_AS_LARGE = "twice => { document.documentElement.style.fontSize = twice ? '200%' : '' }"
WIDER = "() => document.scrollingElement.scrollWidth - innerWidth"


@functools.cache
def fetched():
    """axe-core's text and "", or "" and why it cannot be had; asked for once."""
    try:
        return files_of(AXE)["axe.min.js"].decode(), ""
    except CourseError as error:
        return "", str(error)


def serious_in(page, colours=("light", "dark")):
    """What axe-core finds serious or critical in a page as it stands.

    Parameters
    ----------
    page : playwright Page
    colours : sequence of str
        The colours that the reader's device asks for, one after the other.

    Returns
    -------
    list of str
        The colours, the rule, the place and what is wrong there.
    """
    axe, why = fetched()
    if why:
        pytest.skip(f"axe-core cannot be had here: {why}")
    found = []
    for colour in colours:
        page.emulate_media(color_scheme=colour)
        # The page's own policy lets no other script in, so it is read out in the page's world.
        page.evaluate(axe)
        found += [f"{colour}: {each}" for each in page.evaluate(LOOK)]
    page.emulate_media(color_scheme=None)
    return found


def wider_at_200_percent(page, phone):
    """By how many pixels a page reaches beyond a phone whose text is twice as large.

    Referees: WCAG 2.2, success criterion 1.4.4, Resize Text, asks for 200 %; 1.4.10, Reflow, for a
    page 320 CSS pixels across. 200 % on a phone leaves 195 of them, so that is stricter.

    Parameters
    ----------
    page : playwright Page
    phone : dict of str to int
        Its width and height; the page is shown in it afterwards.

    Returns
    -------
    list of int
        With larger letters in the phone's own width, and zoomed to half that width.
    """
    page.set_viewport_size(phone)
    page.evaluate(TWICE_AS_LARGE, True)
    wider = [page.evaluate(WIDER)]
    page.evaluate(TWICE_AS_LARGE, False)
    page.set_viewport_size({name: pixels // 2 for name, pixels in phone.items()})
    wider.append(page.evaluate(WIDER))
    page.set_viewport_size(phone)
    return wider
