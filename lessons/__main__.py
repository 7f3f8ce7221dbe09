"""Open the lessons and sets: "python3 lessons" shows them all, "python3 lessons 4" opens lesson 4.

They open as pages, and each page opens as a notebook by one click.

"python3 lessons card dish.txt --make 36" makes the card of a recipe that you typed into a file.
"python3 lessons tray" adds, once, what measuring a photo of a tray needs.
Further words go on to the server, for example: python3 lessons 4 --no-browser
"""

import os
import runpy
import sys

KIT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
start = runpy.run_path(os.path.join(KIT, "kitchenmath", "start.py"))


def lesson(number):
    """Return the name of the lesson with this number, or stop with the list of lessons."""
    names = os.listdir(os.path.join(KIT, "lessons"))
    lessons = sorted(name for name in names if name.endswith(".ipynb"))
    found = [name for name in lessons if name.startswith(number.zfill(2) + "-")]
    if not found:
        sys.exit(
            f"There is no lesson {number!r}. Type the number that one of these begins with, "
            "for example: python3 lessons 1\n" + "\n".join(lessons)
        )
    return found[0]


def main(words):
    """Open the page of all lessons, or of the one whose number comes first in ``words``."""
    if words in (["-h"], ["--help"]):
        return print(__doc__)
    start["ready"]("tray" if words == ["tray"] else "lessons")
    if words == ["tray"]:
        return print("Ready: lesson 3 can now measure a photo of your tray.")
    if words[:1] == ["card"]:
        from kitchenmath.figures.card_command import main as card

        return card(words[1:])
    page = "index.html"
    if words and not words[0].startswith("-"):
        page = "lesson-" + lesson(words[0])[: -len(".ipynb")] + ".html"
        words = words[1:]

    from kitchenmath.pages.here import open_pages

    return open_pages(KIT, page, words)


sys.exit(main(sys.argv[1:]))
