"""Words as they are compared: names of people, files and tasks, however they are spelled."""

import re
import unicodedata

__all__ = ["bare_words"]


def bare_words(text):
    """The words and numbers of a text in order, without capitals and accents.

    Parameters
    ----------
    text : str

    Returns
    -------
    list of str

    Examples
    --------
    >>> bare_words("Zoë_Ferny, set 04.ipynb")
    ['zoe', 'ferny', 'set', '04', 'ipynb']
    """
    plain = unicodedata.normalize("NFKD", text.casefold())
    plain = "".join(letter for letter in plain if not unicodedata.combining(letter))
    return re.findall(r"[^\W_]+", plain)
