"""Names that a person types: of a class, of its term, of a student; and as names of files.

Any script's letters are welcome, and a slash, as in "2026/27". A control character is refused, for
it is seen by nobody and breaks tables, pages and the code of a set.
"""

import re
import unicodedata

from coursework.errors import CourseError

__all__ = ["name_for_files", "typed_name", "typed_term"]

TERM = re.compile(r"[^\W_][\w ./-]{0,39}")  # after marks are left out: see `typed_term`
MARKS = ("Mn", "Mc")  # Unicode's categories: an accent or vowel sign that no one letter holds
REFUSED = ("Cc", "Cs")  # control, half of a character
# They turn the order of the letters around them, so that a page shows another name.
TURNING = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
NOT_IN_FILES = re.compile(r'[\\/:*?"<>|\x00-\x1f]')
# Names of devices, which Windows gives to no folder.
DEVICES = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(\..*)?", re.IGNORECASE)
LONGEST = 80  # characters of a name in a file's name


def typed_name(text, what="name"):
    """A name as it is kept: any letters, composed, with single blanks.

    Parameters
    ----------
    text : str
    what : str
        What is named, for the sentence.

    Returns
    -------
    str

    Raises
    ------
    CourseError
        When nothing is typed, or a character is one that cannot be seen.

    Examples
    --------
    >>> typed_name("  Zoë   Ferny ")
    'Zoë Ferny'
    """
    text = re.sub(r"[\t\r\n]", " ", text)  # a cell of a spreadsheet may have two lines
    odd = next((one for one in text if _refused(one)), None)
    if odd is not None:
        raise CourseError(
            f"{what}: there is a control character in {text!a} (U+{ord(odd):04X}), which "
            "nobody can see. Type the name anew."
        )
    name = " ".join(unicodedata.normalize("NFC", text).split())
    if not name:
        raise CourseError(f"{what}: nothing is typed.")
    return name


def typed_term(text, what="term"):
    """A term as it is kept. It goes into every student's numbers and into the code of a set.

    Parameters
    ----------
    text : str
    what : str
        What is named, for the sentence.

    Returns
    -------
    str

    Raises
    ------
    CourseError
        For other signs than letters, figures, spaces and ``. _ - /``, or more than 40 of them.

    Examples
    --------
    >>> typed_term("Frühjahr 2026/27")
    'Frühjahr 2026/27'
    """
    term = typed_name(text, what)
    bare = "".join(one for one in term if unicodedata.category(one) not in MARKS)
    if len(term) > 40 or not TERM.fullmatch(bare):
        raise CourseError(
            f"{what}: “{term}” may have letters, figures, spaces and . _ - / only, begins with a "
            "letter or a figure, and has at most 40 signs."
        )
    return term


def name_for_files(name):
    """A name that every system takes for a file or a folder: what it cannot hold becomes "-".

    Parameters
    ----------
    name : str

    Returns
    -------
    str

    Raises
    ------
    CourseError
        Where nothing is left of it.

    Examples
    --------
    >>> name_for_files("Frühjahr 2026/27")
    'Frühjahr 2026-27'
    """
    name = NOT_IN_FILES.sub("-", unicodedata.normalize("NFC", name))[:LONGEST].strip(" .")
    if not name:
        raise CourseError("name: it needs a letter or a figure.")
    return f"{name}-" if DEVICES.fullmatch(name) else name


def _refused(character):
    return unicodedata.category(character) in REFUSED or character in TURNING
