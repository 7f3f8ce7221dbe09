"""Print what pip installs for the tests: the oldest versions that pyproject.toml allows, or any.

    python3 .ci/oldest.py          # numpy==1.26, one a line
    python3 .ci/oldest.py --any    # numpy>=1.26,<3

A lower bound that nobody installs is a guess; so each of them is taken at its word.
"""

import re
import sys
import tomllib
from itertools import chain
from pathlib import Path

LOWER = re.compile(r"(?P<name>[A-Za-z0-9_.-]+)[^>]*>=\s*(?P<version>[0-9.]+)")


def wanted(project):
    """Every dependency of the kit and of its extras as pyproject.toml has it, each once.

    Parameters
    ----------
    project : dict
        The table `project` of pyproject.toml.

    Returns
    -------
    list of str
    """
    listed = [*project["dependencies"], *chain(*project["optional-dependencies"].values())]
    return sorted({each for each in listed if not each.startswith(f"{project['name']}[")})


def oldest(project):
    """The same, each at its lower bound: "numpy==1.26"."""
    found = filter(None, map(LOWER.match, wanted(project)))
    return sorted({f"{each['name']}=={each['version']}" for each in found})


if __name__ == "__main__":
    file = Path(__file__).parents[1] / "pyproject.toml"
    lines = wanted if "--any" in sys.argv else oldest
    print("\n".join(lines(tomllib.loads(file.read_text(encoding="utf-8"))["project"])))
