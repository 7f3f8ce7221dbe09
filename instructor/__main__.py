"""Run a class: "python3 instructor" opens the desk, "python3 instructor --help" lists the rest.

JupyterLab refuses to run as root unless it is told: python3 instructor --allow-root
"""

import os
import runpy
import sys

KIT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
start = runpy.run_path(os.path.join(KIT, "kitchenmath", "start.py"))


def main(words):
    """Run the command that ``words`` name, or open the instructor's desk where there are none."""
    needs = {"college": "college", "board": "board"}
    start["ready"](needs.get(words[0] if words else "", "instructor"))
    start["reach"](os.path.join(KIT, "instructor"))
    if words[:1] == ["mark"] and "--cluster" not in words and "--help" not in words:
        from coursework.marking.room.starting import start_early

        start_early()  # while this process loads its own things
    if words and words != ["--allow-root"]:
        from coursework.command import main as command

        return command(words)

    from coursework.desk.serving import open_desk

    return open_desk(words)


try:
    ended = main(sys.argv[1:])
except KeyboardInterrupt:  # while it was still loading; a step says the same of itself
    print("\nStopped. Nothing is lost: the same command goes on from here.", file=sys.stderr)
    ended = 130
# Where Ctrl-C came within code that is run as text, as a dataclass's own is, Python ends by the
# signal, although it was caught. Running some more text makes it forget.
exec("pass")
sys.exit(ended)
