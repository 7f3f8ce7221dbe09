"""What `import kitchenmath` costs beside a bare `import pint`: a ratio from one run.

    .venv/bin/python tests/import_speed.py

Both are started fresh, in turn, fifteen times; the medians are compared. The goal is 1.15.
"""

import os
import statistics
import subprocess
import sys
import time
from pathlib import Path

KIT = Path(__file__).parents[2]
ROUNDS = 15


def seconds(statement):
    """Wall time of a fresh interpreter that runs one statement."""
    start = time.perf_counter()
    environment = os.environ | {"PYTHONPATH": str(KIT)}
    subprocess.run([sys.executable, "-c", statement], check=True, env=environment)
    return time.perf_counter() - start


def main():
    times = {"pass": [], "import pint": [], "import kitchenmath": []}
    for _ in range(ROUNDS):
        for statement, taken in times.items():
            taken.append(seconds(statement))
    bare, pint, ours = (statistics.median(taken) for taken in times.values())
    print(f"python alone {bare * 1e3:.0f} ms, import pint {(pint - bare) * 1e3:.0f} ms more,")
    print(f"import kitchenmath {(ours - bare) * 1e3:.0f} ms more.")
    print(f"ratio {(ours - bare) / (pint - bare):.3f} (with the interpreter: {ours / pint:.3f})")


if __name__ == "__main__":
    main()
