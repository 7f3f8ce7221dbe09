"""What a cook measured, kept in a small readable file from one lesson to the next."""

import json
import os
from pathlib import Path

from kitchenmath.errors import KitchenError

__all__ = ["Kept"]

NAME, VERSION = "my-numbers.json", 1


class Kept:
    """The texts that were typed at each bench, as they were typed.

    Parameters
    ----------
    folder : path, optional
        Where the file lies; the folder in which the lessons are open when left out, or the one
        that a page in the browser names in `KITCHEN_KEPT`.
    """

    def __init__(self, folder=None):
        self.file = Path(folder or os.environ.get("KITCHEN_KEPT") or Path.cwd()) / NAME

    def typed(self, bench):
        """What was typed at a bench.

        Parameters
        ----------
        bench : str

        Returns
        -------
        dict of str to str
            By the name of the box; empty where nothing is kept.

        Raises
        ------
        KitchenError
            For a file that this kit did not write, or that a newer one did. It is left as it is.
        """
        return dict(self._all().get(bench, {}))

    def keep(self, bench, typed):
        """Keep what was typed at a bench, in place of what was kept there; nothing empties it.

        Parameters
        ----------
        bench : str
        typed : dict of str to str

        Raises
        ------
        KitchenError
            Also where the file cannot be written.
        """
        kept = self._all()
        kept.pop(bench, None)
        if any(text.strip() for text in typed.values()):
            kept[bench] = dict(typed)
        text = json.dumps({"version": VERSION, "benches": kept}, indent=1, ensure_ascii=False)
        aside = self.file.with_suffix(".new")
        try:
            aside.write_text(text + "\n", encoding="utf-8")
            aside.replace(self.file)
        except OSError as error:
            raise KitchenError(
                f"{self.file.name}: your numbers cannot be kept here ({error.strerror}). "
                "They stand on this page until you close it."
            ) from None

    def _all(self):
        try:
            found = json.loads(self.file.read_text(encoding="utf-8"))
            version, benches = found["version"], found["benches"]
        except FileNotFoundError:
            return {}
        except (OSError, ValueError, TypeError, KeyError):
            raise KitchenError(
                f"{self.file.name}: this file of your numbers cannot be read. "
                "Put it aside under another name, and type them again."
            ) from None
        if version != VERSION:
            raise KitchenError(
                f"{self.file.name}: a newer kit wrote this file (version {version}). Use that kit."
            )
        return benches
