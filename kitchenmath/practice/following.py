"""What stands under a check cell follows its answer: nothing old stays there under a new one.

In a notebook a check cell runs when its reader runs it. So when an answer cell is run again, or
stops, the sentence under the check cell is set right at once; an answer that stopped is none.
"""

import sys

from kitchenmath.practice import look_words
from kitchenmath.practice.answer_look import seen
from kitchenmath.practice.typed_cells import question_of


class _Sentence:
    """A line of text, as an output that can be set right later."""

    def __init__(self, text):
        self.text = text

    def __repr__(self):
        return self.text


def tell(question, sentence):
    """Say what was seen of an answer: printed, or in a notebook where it can be set right.

    Parameters
    ----------
    question : str
    sentence : str
    """
    shown = _Sentence(f"{question}: {sentence}")
    if _notebook() is None:
        print(shown)
    else:
        from IPython.display import display

        display(shown, display_id=_place(question))


def follow(sheet):
    """Have this notebook set right what stands under a check cell whenever its answer is run.

    Outside a notebook nothing changes.

    Parameters
    ----------
    sheet : Sheet
    """
    shell = _notebook()
    if shell is None:
        return
    earlier = getattr(shell, "kitchen_follows", None)  # a set that was opened before
    if earlier:
        shell.events.unregister("post_run_cell", earlier)

    def followed(result):
        _set_right(result, sheet, shell.user_ns)

    shell.kitchen_follows = followed
    shell.events.register("post_run_cell", followed)


def _set_right(result, sheet, names):
    from IPython.display import update_display

    question = question_of(getattr(result.info, "raw_cell", None) or "")
    if question not in sheet.looked:
        return
    if not result.success:
        names.pop(question, None)
    value = names.get(question)
    sentence = look_words.STOPPED
    if question in names:
        sentence = seen(value, *sheet.looked[question], sheet.college)
    update_display(_Sentence(f"{question}: {sentence}"), display_id=_place(question))


def _notebook():
    """The shell of a notebook's kernel, or None."""
    ipython = sys.modules.get("IPython")
    shell = ipython.get_ipython() if ipython else None
    return shell if getattr(shell, "kernel", None) is not None else None


def _place(question):
    return f"kitchen-{question}-check"
