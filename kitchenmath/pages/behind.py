"""This computer's Python behind one page: a message a line in, a message a line out.

Each page has a process of its own, as each notebook has, and it ends with the page.
"""

import base64
import json
import os
import sys
from pathlib import Path

from kitchenmath.pages.at_home import Home
from kitchenmath.pages.talk import Talk


def main(kit, lines, post):
    """Answer every line until there are no more.

    Parameters
    ----------
    kit : Path
    lines : iterable of str
        JSON: "id", "asked" (as for `Talk.hear`) and "buffers", in base64.
    post : callable
        Takes each answer, a dict.
    """

    def told(message, buffers):
        packed = [base64.b64encode(each).decode() for each in buffers]
        post({"told": json.dumps(message), "buffers": packed})

    talk = Talk(told, Home(kit))
    for line in lines:
        message = json.loads(line)
        buffers = [base64.b64decode(each) for each in message.get("buffers", ())]
        post({"id": message["id"], "heard": talk.hear(message["asked"], buffers)})


if __name__ == "__main__":
    out = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(2, 1)  # what a cell prints by itself is no message

    def post(message):
        out.write(json.dumps(message) + "\n")
        out.flush()

    main(Path(sys.argv[1]), iter(sys.stdin.readline, ""), post)
