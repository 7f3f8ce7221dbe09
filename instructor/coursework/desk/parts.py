"""What the desk's panels are made of: a button with its progress and what happened."""

import tempfile
import traceback
from contextlib import contextmanager
from pathlib import Path

import ipywidgets as widgets

from coursework.desk.showing import told
from kitchenmath.errors import KitchenError
from kitchenmath.panels.frame import said

BESIDE = {"description_width": "initial"}


class Step(widgets.VBox):
    """A button, its progress bar, and a place for what happened, in plain words.

    Parameters
    ----------
    name : str
        On the button.
    do : callable
        Takes a progress callback; gives back words, and raises a KitchenError to say why not.
    around : callable
        Of this step: a context in which `do` runs. It gives back a function for the beginning of
        the words: what they are about.
    of_set : bool
        Whether it is about one set, or about the whole class.
    """

    def __init__(self, name, do, around, of_set=True):
        self.name, self._do, self._around, self.of_set = name, do, around, of_set
        self.button = widgets.Button(description=name, layout={"width": "260px"})
        self.bar = widgets.IntProgress(layout={"width": "200px", "visibility": "hidden"})
        self.doing, self.words = widgets.Label(), widgets.HTML()
        row = widgets.HBox([self.button, self.bar, self.doing], layout={"flex_flow": "row wrap"})
        super().__init__([row, self.words], layout={"margin": "0 0 6px"})
        self.button.on_click(self._run)

    def clear(self):
        """Take the words away: they are about another class or set."""
        self.words.value, self.bar.layout.visibility = "", "hidden"

    def progress(self, done, total, text):
        """How far it is, on the bar."""
        self.bar.max, self.bar.value = max(total, 1), done
        self.bar.description = f"{done} of {total}"
        self.bar.layout.visibility = "visible"
        self.doing.value = text  # beside the bar; not read aloud, as there may be one a student

    def _run(self, _):
        self.bar.value, self.bar.layout.visibility = 0, "hidden"
        self.words.value = said(f"{self.name} …")
        with self._around(self) as about:
            words, self.doing.value = self._words(), ""
            self.words.value = told(f"{about()}{words}")

    def _words(self):
        try:
            words = self._do(self.progress) or "Done."
        except KitchenError as error:
            self.bar.layout.visibility = "hidden"
            return f"Not done. {error}"
        except Exception as error:  # an error of the kit's own: say it, and keep what helps
            note = Path(tempfile.gettempdir()) / "kitchen-desk-error.txt"
            note.write_text(traceback.format_exc(), encoding="utf-8")
            self.bar.layout.visibility = "hidden"
            return f"Not done: the kit itself failed ({error}). See {note}"
        self.bar.value = self.bar.max
        return words


@contextmanager
def chosen_file(upload):
    """A file that was chosen in the browser, on disk for as long as the context lasts.

    Parameters
    ----------
    upload : ipywidgets FileUpload

    Yields
    ------
    Path or None
        None where no file was chosen.
    """
    with tempfile.TemporaryDirectory() as folder:
        file = None
        for chosen in upload.value:
            file = Path(folder) / Path(chosen["name"]).name
            file.write_bytes(bytes(chosen["content"]))
        yield file
