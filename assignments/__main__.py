"""Open a set, or look at your answers before you hand them in.

"python3 assignments 4" opens the page of set 4. "python3 lessons" shows all lessons and sets.
"python3 assignments" says of every answer whether it can be read, and which file to hand in;
"python3 assignments look 4", or a file's name, looks at one.
"""

import os
import runpy
import sys

KIT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
start = runpy.run_path(os.path.join(KIT, "kitchenmath", "start.py"))


def page_of(number):
    """Return the page of the set with this number, or stop with the list of sets."""
    folder = os.path.join(KIT, "assignments")
    sets = sorted(name for name in os.listdir(folder) if name[:2].isdigit())
    found = [name for name in sets if name.startswith(number.zfill(2) + "-")]
    if not found:
        sys.exit(
            f"There is no set {number!r}. Type the number that one of these begins with, "
            "for example: python3 assignments 1\n" + "\n".join(sets)
        )
    return "set-" + found[0] + ".html"


def main(words):
    """Open a page, or look at the answers in the files that ``words`` name."""
    if words in (["-h"], ["--help"]):
        return print(__doc__)
    # A page and a notebook need the same as lessons do.
    start["ready"]("lessons")
    if not words or not words[0].isdigit():
        from kitchenmath.practice.before_handing_in import main as hand_in

        return hand_in(words[1:] if words[:1] == ["look"] else words)
    page = page_of(words[0])

    from kitchenmath.pages.here import open_pages

    return open_pages(KIT, page, words[1:])


sys.exit(main(sys.argv[1:]))
