"""What all drawings share: a figure without pyplot, our few colours, quiet axes."""

import io
from functools import lru_cache

try:
    from matplotlib import rc_context
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.colors import to_rgba
    from matplotlib.figure import Figure
    from matplotlib.font_manager import FontProperties
    from matplotlib.patches import Polygon
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

    def in_words(self):
        """Every text that is seen in it, but the numbers along an axis."""
        texts = [*self.figure.texts, *(text for ax in self.figure.axes for text in ax.texts)]
        seen = [" ".join(text.get_text().split()) for text in texts if text.get_visible()]
        return "; ".join(each for each in seen if each.strip("0123456789. "))

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


class Scene:
    """A picture of things: 100 units wide, the same scale both ways, nothing but what is put in.

    A drawing of this kit is a class: it makes its artists once, and its `show` moves them to new
    numbers, because a slider waits for it. Two rules keep it legible on a phone and in grey:
    text is 10 points, and what differs differs in lightness, hatch or line, not in hue alone.

    Parameters
    ----------
    picture : Picture

    Attributes
    ----------
    ax : matplotlib Axes
    high : float
        The height of the picture, in hundredths of its width.
    """

    def __init__(self, picture):
        width, height = picture.figure.get_size_inches()
        self.high = 100 * height / width
        self.ax = picture.axes(0, 0, 1, 1)
        self.ax.set(xlim=(0, 100), ylim=(0, self.high))
        self.ax.set_axis_off()

    def part(self, colour=PAPER, hatch="", line="-", order=2):
        """A filled shape; `set_xy` gives it an outline."""
        shape = Polygon(
            [(0, 0), (0, 0)], facecolor=colour, edgecolor=INK, hatch=hatch, linestyle=line,
            linewidth=1.0, zorder=order, joinstyle="round",
        )  # fmt: skip
        return self.ax.add_patch(shape)

    def line(self, line="-", width=2.0, colour=INK, order=3):
        """A line, such as the wall of a pot; `set_data` gives it its corners."""
        [drawn] = self.ax.plot([], [], line, color=colour, linewidth=width, zorder=order,
                               solid_capstyle="round")  # fmt: skip
        return drawn

    def grains(self, colour=INK, size=2.5):
        """Small dots, such as grains of salt; `set_data` says where."""
        return self.ax.plot([], [], ".", color=colour, markersize=size, zorder=4)[0]

    def words(self, x=0, y=0, text="", ha="center", va="center", **how):
        """A line or two of text; a "$" is a dollar and not the start of a formula."""
        how = {"fontsize": 10, "color": INK, "zorder": 6, "linespacing": 1.15} | how
        return self.ax.text(x, y, text, ha=ha, va=va, parse_math=False, **how)


def put(line, corners):
    """Give a line of a scene its corners."""
    line.set_data(corners[:, 0], corners[:, 1])


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
