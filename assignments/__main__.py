"""Open a set, or look at your answers before you hand them in.

"python3 assignments 4" opens the page of set 4, "python3 assignments review 1" that of the first
review. "python3 lessons" shows all lessons and sets.
"python3 assignments" says of every answer whether it can be read, and which file to hand in;
"python3 assignments look 4", or a file's name, looks at one.
"""

import os
import runpy
import sys

KIT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
start = runpy.run_path(os.path.join(KIT, "kitchenmath", "start.py"))


def page_of(kind, number):
    """Return the page of the set or review with this number, or stop with the list of both."""
    folder = os.path.join(KIT, "assignments")
    sets = sorted(name for name in os.listdir(folder) if name[:2].isdigit())
    if kind == "review":
        found = [name for name in sets if name.endswith("-review-" + number)]
    else:
        found = [name for name in sets if name.startswith(number.zfill(2) + "-")]
    if not found:
        sys.exit(
            f"There is no {kind} {number!r}. Type the number of one of these, for example: "
            "python3 assignments 1, or python3 assignments review 1\n" + "\n".join(sets)
        )
    return "set-" + found[0] + ".html"


def main(words):
    """Open a page, or look at the answers in the files that ``words`` name."""
    if words in (["-h"], ["--help"]):
        return print(__doc__)
    # A page and a notebook need the same as lessons do.
    start["ready"]("lessons")
    kind = "review" if words[:1] == ["review"] else "set"
    number, *rest = (words[1:] if kind == "review" else words) or [""]
    if kind == "set" and not number.isdigit():
        from kitchenmath.practice.before_handing_in import main as hand_in

        return hand_in(words[1:] if words[:1] == ["look"] else words)
    page = page_of(kind, number)

    from kitchenmath.pages.here import open_pages

    return open_pages(KIT, page, rest)


sys.exit(main(sys.argv[1:]))
