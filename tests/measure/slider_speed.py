"""What a slider's step costs in each panel of the lessons: Python's time, to the finished picture.

    python -m tests.measure.slider_speed

Counted in processor time, so that a busy machine says the same; the last column is how much of
the 150 ms it takes that a lesson allows. The browser shows the picture in about 20 ms more.
"""

import statistics
import time

from tests.helpers.every_panel import PANELS

ALLOWED_MS, STEPS = 150, 6


def steps_ms(control):
    """Milliseconds of some steps of a slider, to and fro over its middle."""
    middle = control.min + control.step * round((control.max - control.min) / control.step / 2)
    control.value = middle
    for place in range(STEPS):
        start = time.process_time()
        control.value = middle + control.step * (1 - place % 2)
        yield 1000 * (time.process_time() - start)


def main():
    """Print the slowest slider of each panel."""
    print(f"{'panel':38} {'slowest slider':34} {'median ms':>9} {'worst':>6} {'of 150':>7}")
    for name, make in PANELS.items():
        panel = make()
        taken = {
            control.description: list(steps_ms(control))
            for control in panel.controls.values()
            if hasattr(control, "step")
        }
        if taken:
            label = max(taken, key=lambda each: statistics.median(taken[each]))
            middle, worst = statistics.median(taken[label]), max(taken[label])
            print(f"{name:38} {label:34} {middle:9.0f} {worst:6.0f} {middle / ALLOWED_MS:7.0%}")


if __name__ == "__main__":
    main()
