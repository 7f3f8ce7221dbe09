"""How long a lesson takes: at home by what is in it, at the bench by what is measured there.

The one place that says it. A lesson's head is written from here by `python3 instructor refresh`,
the start page and the session plans say the same, and a test compares them.
"""

import json
import re
from dataclasses import dataclass

from kitchenmath.bench import BENCHES
from kitchenmath.pages.folds import fold_of

__all__ = ["Times", "times_of"]

# Slow reading of a text with numbers, for whoever learns the language with it (our estimate).
WORDS_A_MINUTE = 150
# By the kind of panel, tried until it is understood (our estimates): a drill is three rounds.
PANEL_MIN = {"recall": 5, "drill": 4, "eye": 3, "predict": 1, "bench": 0}
OTHER_PANEL_MIN = 3
PRINTED_MIN = 0.5  # a result to look at
PANEL = re.compile(r"(?:(recall|drill|eye|predict|bench)|\w+)_panel\b")
BENCH = re.compile(r'bench_panel\("([^"]+)"')


@dataclass(frozen=True)
class Times:
    """Minutes, each to the next five."""

    home_min: int
    bench_min: int

    @property
    def words(self):
        """As it stands in a lesson's head, on the start page and in a session plan."""
        return f"about {self.home_min} minutes at home, {self.bench_min} at the bench"


def times_of(raw):
    """The time for reading and trying a lesson, and the time for what it has measured.

    What lies folded is not counted: nobody has to open it.

    Parameters
    ----------
    raw : bytes
        The lesson's notebook.

    Returns
    -------
    Times
    """
    cells = [cell for cell in json.loads(raw)["cells"] if not fold_of(cell)]
    sources = {
        kind: ["".join(cell["source"]) for cell in cells if cell["cell_type"] == kind]
        for kind in ("markdown", "code")
    }
    words = len(re.sub(r"<[^>]+>", "", "\n".join(sources["markdown"])).split())
    code = "\n".join(line for line in sources["code"] if "import " not in line)
    panels = sum(PANEL_MIN.get(each, OTHER_PANEL_MIN) for each in PANEL.findall(code))
    printed = sum(bool(cell.get("outputs")) for cell in cells)
    return Times(
        _to_five(words / WORDS_A_MINUTE + panels + PRINTED_MIN * printed),
        _to_five(sum(BENCHES[name].minutes for name in BENCH.findall(code))),
    )


def _to_five(minutes):
    return 5 * round(minutes / 5)
