"""A service plan as a picture: a bar for each task on a clock axis.

Grouped by cook or by equipment, in greys and hatches that survive a black-and-white printer.
`plan_rows` makes the numbers and `plan_in_words` says them. Needs matplotlib.
"""

from matplotlib.patches import Rectangle

from kitchenmath.figures.frame import FOOD, INK, LOST, PAPER, Words, quiet
from kitchenmath.figures.plan_rows import AT_WORK, NOBODY, ON_ITS_OWN, lanes
from kitchenmath.service.clock import say_clock

STEPS_MIN = (5, 10, 15, 30, 60, 120, 240, 480, 1440)
MOST_TICKS = 8
KEY_BELOW_IN = 0.25  # under the clock times
CHARACTER_IN = 0.072  # width of a letter at 9 points, on the generous side
CLEAR = {"facecolor": PAPER, "edgecolor": "none", "pad": 1}  # keeps lines out of the words
WORDS = {"va": "center", "fontsize": 9, "color": INK}
LOOKS = {
    AT_WORK: {"facecolor": FOOD, "hatch": "", "linewidth": 0.6},
    ON_ITS_OWN: {"facecolor": LOST, "hatch": "", "linewidth": 0.6},
    NOBODY: {"facecolor": PAPER, "hatch": "xxxx", "linewidth": 1.8},
    "rests": {"facecolor": PAPER, "hatch": "...", "linewidth": 0.6},
    "waits": {"facecolor": PAPER, "hatch": "////", "linewidth": 0.6},
}


class PlanChart:
    """A bar for each row, its rest dotted and its wait hatched behind it, under the lane's name.

    Parameters
    ----------
    picture : Picture
        About 0.27 inch high for each row and each lane, with 0.95 inch below for times and key.
    clock_min : (float, float), optional
        The ends of the clock axis [min from midnight]; by default as far as what is shown first
        and its service reach.

    Attributes
    ----------
    bars : dict of str to list of Rectangle
        For each look, and for "rests" and "waits", those that are seen.
    labels, lanes : list of Words
        The names beside the bars with those of the moments, and the names of the lanes.
    service, opens : Line2D
        Moments; the second is hidden without an opening.
    key : Legend or None
    """

    def __init__(self, picture, clock_min=None):
        picture.figure.set_dpi(112)  # twenty bars and their names: still 480 dots wide
        height = picture.figure.get_figheight()
        self.ax = picture.axes(bottom=0.95 / height, top=1 - 0.05 / height)
        quiet(self.ax)
        self.clock_min, self.key, self._clock_is_set = clock_min, None, False
        self._slots, self._titles = [], []
        self.service, self.opens = (self._moment(style) for style in ("--", ":"))
        self._marks = [self.ax.add_artist(Words(0, -0.75, "", ha=side, **WORDS))
                       for side in ("right", "left")]  # fmt: skip

    def show(self, plan):
        """Move the bars to the rows of a plan; the clock axis stays.

        Parameters
        ----------
        plan : PlanRows
        """
        if not self._clock_is_set:
            self._set_clock(plan)
        self.bars = {look: [] for look in LOOKS}
        self.labels, self.lanes, row = [], [], 0
        for lane, bars in lanes(plan):
            self.lanes.append(self._title(row, lane))
            for place, each in enumerate(bars, start=row + 1):
                self._lay(place, each)
            row += 1 + len(bars)
        self._hide_the_rest()
        self.ax.set_ylim(max(row, 1) - 0.4, -1.2)
        self._mark(self.service, self._marks[0], plan.serve_min, "service {} ")
        self._mark(self.opens, self._marks[1], plan.opens_min, " opens {}")
        self.labels += [mark for mark in self._marks if mark.get_visible()]
        self.key = _key(self.ax, self.key, [look for look in LOOKS if self.bars[look]])

    def _set_clock(self, plan):
        starts = [row.start_min for row in plan.rows]
        reach = (min(starts, default=plan.serve_min - 60),
                 max([plan.serve_min, *(row.end_min for row in plan.rows)]))  # fmt: skip
        first, last = self.clock_min or reach
        margin = 0.03 * (last - first)
        self.ax.set_xlim(first - margin, last + margin)
        _clock_axis(self.ax, first, last)
        self._clock_is_set = True

    def _moment(self, style):
        """An upright line for one moment."""
        return self.ax.axvline(0, color=INK, linestyle=style, linewidth=1)

    @staticmethod
    def _mark(line, words, at_min, text):
        for part in (line, words):
            part.set_visible(at_min is not None)
        if at_min is not None:
            line.set_xdata([at_min, at_min])
            words.set(x=at_min, text=text.format(_clock(at_min)))

    def _lay(self, place, row):
        """The three bars of a row and its name; made when first wanted."""
        number = len(self.labels)
        if len(self._slots) <= number:
            made = [self.ax.add_artist(Rectangle((0, 0), 1, 1, edgecolor=INK)) for _ in range(3)]
            self._slots.append((made, self.ax.add_artist(Words(0, 0, "", **WORDS))))
        bars, label = self._slots[number]
        ends = row.start_min
        parts = ((row.look, row.work_min), ("rests", row.rest_min), ("waits", row.wait_min))
        for bar, (look, length) in zip(bars, parts, strict=True):
            bar.set_visible(length > 0)
            if length > 0:
                bar.set(bounds=(ends, place - 0.3, length, 0.6), **LOOKS[look])
                self.bars[look].append(bar)
            ends += length
        label.set_visible(True)
        self.labels.append(_put_label(label, place, row.name, row.start_min, ends))

    def _title(self, row, lane):
        """The lane's name in a row of its own, over a thin line."""
        number = len(self.lanes)
        if len(self._titles) <= number:
            text = Words(0.005, 0, "", transform=self.ax.get_yaxis_transform(), ha="left",
                         fontweight="bold", bbox=CLEAR, **WORDS)  # fmt: skip
            self._titles.append((self.ax.add_artist(text), self.ax.axhline(color=INK, lw=0.4)))
        text, line = self._titles[number]
        text.set(y=row, text=lane, visible=True)
        line.set(ydata=[row - 0.5, row - 0.5], visible=row > 0)
        return text

    def _hide_the_rest(self):
        """What an earlier, longer plan needed and this one does not."""
        for bars, label in self._slots[len(self.labels) :]:
            for part in (*bars, label):
                part.set_visible(False)
        for text, line in self._titles[len(self.lanes) :]:
            text.set_visible(False)
            line.set_visible(False)


def _put_label(label, row, name, start, end):
    """The task's name on the roomier side of its bar, or on the bar where neither has room."""
    ax = label.axes
    low, high = ax.get_xlim()
    width_in = ax.get_position().width * ax.figure.get_figwidth()
    needed = CHARACTER_IN * (len(name) + 1) * (high - low) / width_in
    label.set_bbox(None)
    if max(start - low, high - end) < needed:
        label.set(x=(start + end) / 2, y=row, text=name, ha="center")
        label.set_bbox(CLEAR)
    elif start - low > high - end:
        label.set(x=start, y=row, text=f"{name} ", ha="right")
    else:
        label.set(x=end, y=row, text=f" {name}", ha="left")
    return label


def _clock_axis(ax, first, last):
    """Ticks at whole steps of the clock, at most eight or so."""
    fitting = [step for step in STEPS_MIN if (last - first) / step <= MOST_TICKS]
    step = fitting[0] if fitting else STEPS_MIN[-1]
    ticks = [step * n for n in range(int(first // step), int(last // step) + 1)]
    ticks = [tick for tick in ticks if tick >= first]
    ax.set_xticks(ticks, [_clock(tick) for tick in ticks])


def _key(ax, key, shown):
    """What the greys and hatches mean, for those that occur; made anew only when these change."""
    if key is not None and [text.get_text() for text in key.get_texts()] == shown:
        return key
    if key is not None:
        key.remove()
    if not shown:
        return None
    height_in = ax.get_position().height * ax.figure.get_figheight()
    samples = [Rectangle((0, 0), 1, 1, edgecolor=INK, **LOOKS[look]) for look in shown]
    return ax.legend(samples, shown, loc="upper center", ncols=len(shown) if len(shown) < 5 else 3,
                     bbox_to_anchor=(0.5, -KEY_BELOW_IN / height_in), frameon=False,
                     fontsize=9)  # fmt: skip


def _clock(minutes):
    """The clock time without the day: the axis shows which comes first."""
    return say_clock(round(60 * minutes)).split(" ")[0]
