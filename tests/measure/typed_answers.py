"""How right answers are typed, and what is lost of them: a table for each kind of question.

    .venv/bin/python -m tests.measure.typed_answers

Every set, one student's numbers; then the ways of typing set 4's first answer that once were lost.
"""

from collections import Counter

from coursework.sets.key_text import key_notebook, set_ids
from coursework.sets.keys import load_key

from kitchenmath.practice.set_file import last_assigned
from kitchenmath.practice.typed_cells import as_code
from tests.helpers.typed_ways import DOUBTFUL, ways_of

STUDENT = "BH-1007"
# Whole answer cells, and whether each earned its points before typed text was read.
CELLS = {
    'q1 = "3kg"': True, 'q1 = "3,0 kg"': True, 'q1 = "6 lb 9.8 oz"': True,
    'q1 = "3 kilos"': True, 'q1 = "about 3 kg"': True,
    "q1 = “3 kg”": False, "q1 = „3 kg“": False, "q1 = ‘3 kg’": False, "q1 = «3 kg»": False,
    "q1 = 3 kg": False, "3 kg": False, '"3 kg"': False, 'Q1 = "3 kg"': False,
    'q1: "3 kg"': False, 'q1 == "3 kg"': False, 'q1 = "3 kg': False,
    'q1 = ""\n3 kg': False, 'q1 = "" 3 kg': False, 'q1 = "36 x 55 g / 0.66 = 3 kg"': False,
}  # fmt: skip


def main():
    tried, lost, doubtful, taken = Counter(), Counter(), Counter(), Counter()
    for set_id in set_ids():
        for question, known in load_key(key_notebook(set_id), tried=()).sheet.known(STUDENT):
            kind = question.kind
            for typed in ways_of(question, known):
                tried[kind] += 1
                lost[kind] += question.judge(typed, known).outcome != "right"
            for typed in DOUBTFUL[kind]:
                doubtful[kind] += 1
                taken[kind] += question.judge(typed, known).outcome == "right"
    print(f"{'kind':<24}{'right ways':>11}{'lost':>6}{'doubtful':>10}{'taken for right':>17}")
    for kind in sorted(tried):
        row = f"{kind:<24}{tried[kind]:>11}{lost[kind]:>6}{doubtful[kind]:>10}{taken[kind]:>17}"
        print(row)
    many = (each.total() for each in (tried, lost, doubtful, taken))
    print("{:<24}{:>11}{:>6}{:>10}{:>17}\n".format("all", *many))
    before_and_now()


def before_and_now():
    """The ways of filling in one cell, once and today."""
    (question, known), *_ = load_key(key_notebook("04-buy-enough"), tried=()).sheet.known(STUDENT)
    print(f"{'answer cell':<40}{'once':>8}{'now':>8}")
    for cell, once in CELLS.items():
        typed = last_assigned(as_code(cell, "q1"), "q1")
        now = question.judge(typed, known).outcome
        print(f"{cell!r:<40}{'right' if once else 'lost':>8}{now:>8}")


if __name__ == "__main__":
    main()
