"""What a lesson says to a cook: its text, and what its predictions ask and open."""

import re

from kitchenmath.predictions import PREDICTIONS


def predictions_of(lesson):
    """What the predictions of a lesson ask, and the why that each opens.

    Parameters
    ----------
    lesson : dict
        The notebook.

    Returns
    -------
    str
    """
    sources = "\n".join("".join(cell["source"]) for cell in lesson["cells"])
    asked = [PREDICTIONS[name] for name in re.findall(r'predict_panel\(\s*"([^"]+)"', sources)]
    return "\n".join(f"{each.ask}\n{each.why}" for each in asked)
