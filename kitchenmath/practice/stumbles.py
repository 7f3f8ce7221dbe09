"""What a cell stumbled over, in plain words beside Python's own.

A cook who forgot a quote reads "unterminated string literal" and is no wiser. A set's notebook
says first what to type, and then shows Python's error, which whoever computes may want to see.
"""

import re
import sys

# The name of an error, as it stands before a colon in a traceback's last line.
ERROR = re.compile(r"\b([A-Z][A-Za-z]*(?:Error|Interrupt))\b:?(.*)", re.DOTALL)
WITH_QUOTES = 'Type the answer between two quotes, as in q1 = "4.2 kg".'
SAYS = {
    "SyntaxError": f"The cell cannot be read; most often a quote is missing. {WITH_QUOTES}",
    "IndentationError": "A line begins with blanks: take them away, so that it begins at the left.",
    "TabError": "A line begins with blanks: take them away, so that it begins at the left.",
    "AttributeError": "There is no such number. Run the cell with your numbers: it shows what "
    "each is called.",
    "TypeError": f"This cannot be computed. Compute with your numbers only. {WITH_QUOTES}",
    "DimensionalityError": "A weight goes with weights only, money with money: these two are of "
    "different kinds. Look at the units.",
    "OffsetUnitCalculusError": f"Temperatures cannot be computed with like this. {WITH_QUOTES}",
    "ZeroDivisionError": "Something is divided by zero: look at what stands after the "
    f"“/”. {WITH_QUOTES}",
    "KeyboardInterrupt": "The cell was stopped. Run it again.",
}


def in_plain_words(text):
    """What to type, for the error that a traceback's last line names.

    Parameters
    ----------
    text : str
        Such as "NameError: name 'lots' is not defined".

    Returns
    -------
    str
        "" where no error is named.

    Examples
    --------
    A forgotten quote is the commonest of all.

    >>> in_plain_words("SyntaxError: unterminated string literal").partition(";")[2]
    ' most often a quote is missing. Type the answer between two quotes, as in q1 = "4.2 kg".'
    """
    found = ERROR.search(text)
    if not found:
        return ""
    unknown = re.search(r"name '(\w{1,40})'", found[2])
    if found[1] in ("NameError", "UnboundLocalError") and unknown:
        name = unknown[1]
        if re.fullmatch(r"q\d+\w*", name):
            return f"{name} has no value yet: run the cell of that answer first, and mend it."
        return (
            f"Python does not know “{name}”. If it is your answer, it goes between two quotes, as "
            'in q1 = "4.2 kg". If it is a name from above, run the cells above first.'
        )
    return SAYS.get(found[1], f"The cell stopped. {WITH_QUOTES}")


def speak_plainly():
    """Have this notebook say in plain words what a cell stumbled over, above Python's own error.

    Outside a notebook nothing changes. The error itself stays, so a cell that failed is still
    seen to have failed.
    """
    ipython = sys.modules.get("IPython")
    shell = ipython.get_ipython() if ipython else None
    if shell is not None:
        shell.set_custom_exc((Exception,), _say_first)


def _say_first(shell, etype, value, traceback, tb_offset=None):
    print(in_plain_words(f"{etype.__name__}: {value}"))
    if issubclass(etype, SyntaxError):
        shell.showsyntaxerror()
    else:
        shell.showtraceback((etype, value, traceback), tb_offset=tb_offset)
