"""A question with an answer takes the cook's own first; no answer stands open below its question.

What is folded, and what a panel opens after it was told something, is not open.
"""

import json
import re
from pathlib import Path

import pytest

from kitchenmath.pages.folds import fold_of
from kitchenmath.predictions import PREDICTIONS, Pick
from kitchenmath.units import say

KIT = Path(__file__).parents[2]
LESSONS = sorted(KIT.glob("lessons/*.ipynb"))
by_lesson = {"ids": [file.stem for file in LESSONS]}
ASKS_TO_PREDICT = re.compile(r"\bPredict\b|Write down first|Say it\b|[Ss]ay it first|Guess first")
# Panels that wait for an answer of the cook's own, right or measured.
TAKES_AN_ANSWER = re.compile(r"\b(?:predict|eye|bench|drill)_panel\(")


# Panels with sliders that stand open, each with the reason.
OPEN = {
    "tray_panel": "the eye above has taken the cook's answer; here ten pieces of one's own are set",
    "night_panel": "nothing is asked: it shows what fewer readings cost",
    "menu_panel": "a table to look a dish up in",
    "slack_panel": "the list above it holds its answer already",
    "my_numbers_panel": "shows what the reader measured",
    "day_record_panel": "a form of the reader's own",
    "recipe_card_panel": "a form of the reader's own",
    "tray_photo_panel": "measures the reader's own tray",
    "recall_panel": "asks, and answers when it was answered",
}


def cells_of(file):
    """Kind, source and printed text of each cell; what a folded one prints is not in the open."""
    for cell in json.loads(file.read_text(encoding="utf-8"))["cells"]:
        outputs = () if fold_of(cell) else cell.get("outputs", ())
        printed = "".join("".join(each.get("text", "")) for each in outputs)
        yield cell["cell_type"], "".join(cell["source"]), printed


def open_text(kind, source, printed):
    """What of a cell a reader sees without pressing anything."""
    return printed if kind == "code" else re.sub(r"<details>.*?</details>", "", source, flags=re.S)


def asked_in_vain(cells):
    """Lines that ask a reader to say something, where no panel below takes an answer.

    The riddle that a lesson opens with, headings and tables are no such lines.
    """
    for place, cell in enumerate(cells[1:], start=1):
        kind = cell[0]
        followed = cells[place + 1][1] if place + 1 < len(cells) else ""
        if kind == "code" or TAKES_AN_ANSWER.search(followed):
            continue
        after_bench = "bench_panel(" in cells[place - 1][1]
        for line in open_text(*cell).splitlines():
            question = line.rstrip().endswith("?") and not line.startswith(("#", "|"))
            if ASKS_TO_PREDICT.search(line) or (question and not after_bench):
                yield line


def standing_open(cells):
    """Predictions whose answer is read in the open below them, before the next section."""
    for place, (_, source, _) in enumerate(cells):
        for name in re.findall(r'predict_panel\(\s*"([^"]+)"', source):
            below = "\n".join(open_text(*each) for each in cells[place + 1 :])
            section = re.split(r"^## ", below, maxsplit=1, flags=re.M)[0]
            if re.search(rf"(?<![\w.]){re.escape(right_words(name))}(?!\w)", plain(section)):
                yield name, right_words(name)


def right_words(name):
    """The answer as a lesson would write it."""
    asked = PREDICTIONS[name]
    return plain(asked.right if isinstance(asked, Pick) else say(asked.right, 3))


def standing_before(source):
    """Panels of a cell that are shown to whoever has answered nothing."""
    if "import " in source or TAKES_AN_ANSWER.search(source):
        return []
    return re.findall(r"\b(\w+_panel)\(", source)


def plain(text):
    """Text with one kind of blank and the dollar as it is read."""
    return text.replace("\u00a0", " ").replace("<span>\\$</span>", "$")


@pytest.mark.parametrize("file", LESSONS, **by_lesson)
def test_who_is_asked_can_answer(file):
    """By a panel that takes it, or with what the bench gave."""
    assert [] == list(asked_in_vain(list(cells_of(file))))


@pytest.mark.parametrize("file", LESSONS, **by_lesson)
def test_no_answer_stands_open_below_its_question(file):
    assert [] == list(standing_open(list(cells_of(file))))


def test_a_panel_that_answers_a_question_opens_by_an_answer():
    """Those that stand open are the ones listed, all of them, each with its reason."""
    sources = [source for file in LESSONS for _, source, _ in cells_of(file)]
    standing = {name for source in sources for name in standing_before(source)}

    assert set(OPEN) == standing
    assert ["purchase_panel"] == standing_before("purchase_panel()")
    assert [] == standing_before('predict_panel("order", opens=purchase_panel)')


@pytest.mark.parametrize("file", LESSONS, **by_lesson)
def test_each_lesson_takes_two_predictions_at_least(file):
    said = [name for _, source, _ in cells_of(file)
            for name in re.findall(r'predict_panel\(\s*"([^"]+)"', source)]  # fmt: skip

    assert len(said) >= 2
    assert set(said) <= set(PREDICTIONS)


def test_every_prediction_is_asked_in_one_lesson():
    sources = [source for file in LESSONS for _, source, _ in cells_of(file)]
    times = {name: sum(f'predict_panel("{name}"' in each for each in sources)
             for name in PREDICTIONS}  # fmt: skip

    assert {name: 1 for name in PREDICTIONS} == times


def test_an_open_answer_and_a_question_in_vain_are_found():
    """As lesson 4 once was: the question in words, and its answer printed in the next cell."""
    heading = ("markdown", "# Buy enough", "")
    asked = ("markdown", "**Write down first**: do you buy more than 2.4 kg?", "")
    panel = ("code", 'predict_panel("celeriac")', "")
    printed = ("code", "print(celeriac)", "3.53\u00a0kg to buy\n")
    folded = ("markdown", "<details><summary>By hand</summary>\n\n- 3.53 kg\n\n</details>", "")

    assert 1 == len(list(asked_in_vain([heading, asked, printed])))
    assert [] == list(asked_in_vain([heading, asked, panel]))
    assert [("celeriac", "3.53 kg")] == list(standing_open([heading, panel, printed]))
    assert [] == list(standing_open([heading, panel, folded]))
