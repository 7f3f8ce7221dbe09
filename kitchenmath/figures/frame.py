"""What all drawings share: a figure without pyplot, our few colours, quiet axes."""

import io
from functools import lru_cache

try:
    from matplotlib import rc_context
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.colors import to_rgba
    from matplotlib.figure import Figure
    from matplotlib.font_manager import FontProperties
    from matplotlib.text import Text
    from matplotlib.textpath import TextPath, text_to_path
    from matplotlib.transforms import Affine2D
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


class Words(Text):
    """A line of text that is drawn from its outlines, which are made once for each wording.

    Matplotlib sets the letters of a text anew for each drawing. In a picture with twenty names
    that is a third of what a slider waits for. For one level line, centred upright.
    """

    def draw(self, renderer):
        """Draw the outlines where `Text` would set the letters."""
        if not self.get_visible() or not self.get_text():
            return
        if self.get_bbox_patch() is not None:
            self.update_bbox_position_size(renderer)
            self.get_bbox_patch().draw(renderer)
        outlines, width, up = _outlines(
            self.get_text(), self.get_fontsize(), self.get_fontfamily()[0], self.get_fontweight()
        )
        left = {"left": 0, "center": -width / 2, "right": -width}[self.get_horizontalalignment()]
        at = self.get_transform().transform(self.get_unitless_position())
        place = Affine2D().translate(left, up).scale(self.figure.dpi / 72).translate(*at)
        gc = renderer.new_gc()
        gc.set_linewidth(0)
        renderer.draw_path(gc, outlines, place, to_rgba(self.get_color()))
        gc.restore()
        self.stale = False


@lru_cache(maxsize=512)
def _outlines(text, size, family, weight):
    """The outlines of a line, its width, and its base line against its middle, in points."""
    font = FontProperties(family=family, weight=weight, size=size)
    width, height, below = text_to_path.get_text_width_height_descent(text, font, ismath=False)
    # As high as a line with long letters, so that all lines stand alike.
    _, tall, deep = text_to_path.get_text_width_height_descent("lp", font, ismath=False)
    height, below = max(height, tall), max(below, deep)
    return TextPath((0, 0), text, prop=font), width, below - height / 2


def quiet(ax, keep=("bottom",)):
    """Take away the lines that carry nothing."""
    for side, spine in ax.spines.items():
        spine.set_visible(side in keep)
        spine.set_color(INK)
    ax.tick_params(colors=INK, labelsize=10, length=3)
    if "left" not in keep:
        ax.set_yticks([])
