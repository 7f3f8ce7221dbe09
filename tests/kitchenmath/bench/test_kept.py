"""What a cook typed is there again in the next lesson, and no file is spoiled."""

import json

import pytest

from kitchenmath.bench import Kept
from kitchenmath.errors import KitchenError


def test_what_was_typed_is_there_again_word_for_word(tmp_path):
    Kept(tmp_path).keep("yield", {"bought": "0,91 kg", "cut": "½ kg"})

    assert {"bought": "0,91 kg", "cut": "½ kg"} == Kept(tmp_path).typed("yield")
    assert {} == Kept(tmp_path).typed("friction")


def test_one_bench_leaves_the_others_alone_and_empty_boxes_are_forgotten(tmp_path):
    kept = Kept(tmp_path)
    kept.keep("yield", {"bought": "1 kg", "cut": "700 g"})
    kept.keep("task", {"guess": "5 min", "times": "6, 7 min"})
    kept.keep("yield", {"bought": " ", "cut": ""})

    assert {} == kept.typed("yield")
    assert "5 min" == kept.typed("task")["guess"]


def test_the_folder_is_the_one_that_a_page_names(tmp_path, monkeypatch):
    monkeypatch.setenv("KITCHEN_KEPT", str(tmp_path / "page"))
    (tmp_path / "page").mkdir()
    Kept().keep("task", {"guess": "5 min", "times": "6 min"})

    assert (tmp_path / "page" / "my-numbers.json").is_file()


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("{", "cannot be read"),
        ("[]", "cannot be read"),
        (json.dumps({"version": 2, "benches": {}}), "newer kit"),
    ],
)
def test_a_file_that_is_not_ours_is_left_as_it_is(tmp_path, text, says):
    file = tmp_path / "my-numbers.json"
    file.write_text(text)
    with pytest.raises(KitchenError, match=says):
        Kept(tmp_path).keep("task", {"guess": "5 min"})

    assert text == file.read_text()


def test_where_nothing_can_be_written_a_sentence_says_so(tmp_path):
    with pytest.raises(KitchenError, match="cannot be kept here"):
        Kept(tmp_path / "gone").keep("task", {"guess": "5 min"})
