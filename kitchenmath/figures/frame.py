"""What all drawings share: a figure without pyplot, our few colours, quiet axes."""

import io

try:
    from matplotlib import rc_context
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure
except ImportError as missing:
    raise ImportError(
        "Drawing needs matplotlib: start the lessons with `python3 lessons`, which sets it up."
    ) from missing

# Dark, middle and light: told apart in grey too. Hatches mark what is lost.
INK, FOOD, LOST, ACCENT, PAPER = "#2b2622", "#8a5a2b", "#e6d3b3", "#1f5f5b", "#ffffff"


class Picture:
    """A figure of its own and its picture as PNG bytes.

    Parameters
    ----------
    width, height : float [inch]
        4.3 wide, so that text of 10 points is still read when a phone shows it 340 dots wide.
        At 150 dots an inch it stays sharp on a phone's screen.
    """

    def __init__(self, width=4.3, height=2.6):
        self.figure = Figure(figsize=(width, height), dpi=150, facecolor=PAPER)
        self.canvas = FigureCanvasAgg(self.figure)

    def axes(self, left=0.03, bottom=0.2, right=0.97, top=0.9):
        """One set of axes, placed in shares of the figure."""
        return self.figure.add_axes([left, bottom, right - left, top - bottom])

    @property
    def tall(self):
        """Whether it fills a screen by itself."""
        return self.figure.get_figheight() > self.figure.get_figwidth()

    def png(self):
        """The picture as it is now."""
        file = io.BytesIO()
        # A slider waits for this: letters that are not fitted to the dots are drawn a fifth
        # faster and look alike at this size, and a tighter file takes longer than it saves.
        with rc_context({"text.hinting": "none"}):
            self.canvas.print_png(
                file, metadata={"Software": None}, pil_kwargs={"compress_level": 1}
            )
        return file.getvalue()


def quiet(ax, keep=("bottom",)):
    """Take away the lines that carry nothing."""
    for side, spine in ax.spines.items():
        spine.set_visible(side in keep)
        spine.set_color(INK)
    ax.tick_params(colors=INK, labelsize=10, length=3)
    if "left" not in keep:
        ax.set_yticks([])
