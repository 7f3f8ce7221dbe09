"""Some hundreds of the inputs of `fuzz_marking.py`; the rules that they must keep stand there."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.measure import fuzz_marking
from tests.measure.fuzz_marking import HAND_IN, pour_notebook, read_stream, run

seeds = st.integers(0, 2**64)


@given(seeds)
@settings(max_examples=8, deadline=None)
def test_no_file_is_lost_and_none_stops_the_taking_in(seed):
    """Eight times forty files and zips, damaged: each is kept by its bytes or said why not."""
    assert sum(run(seed, "files").values()) >= fuzz_marking.FILES_AT_ONCE


@given(seeds)
@settings(max_examples=250, deadline=None)
def test_a_damaged_notebook_is_poured_into_ours_or_refused(seed):
    run(seed, "notebooks")


@given(seeds)
@settings(max_examples=400, deadline=None)
def test_a_rooms_stream_earns_nothing_undeserved_and_stops_nothing(seed):
    run(seed, "streams")


@given(seeds)
@settings(max_examples=150, deadline=None)
def test_no_answer_to_any_question_of_any_set_makes_marking_raise(seed):
    run(seed, "answers")


def test_the_inputs_reach_every_outcome():
    """A fuzz that only ever sees refusals would prove little: here are the kinds it meets."""
    streams, notebooks = set(), set()
    for seed in range(400):
        streams |= set(run(seed, "streams"))
        notebooks |= set(run(seed, "notebooks"))

    assert {"missing", "unreadable", "wrong", "slip", "follow-through", "right"} == streams
    assert {"refused", "poured", "poured, something said"} == notebooks


def test_an_undeserved_point_would_be_seen(monkeypatch):
    """The check itself can fail: with a key that takes anything for right, it does."""

    class Generous(type(fuzz_marking.SHEET)):
        def __init__(self):
            pass

        def mark(self, student, answers):
            from kitchenmath.practice import Verdict

            return {
                "q1": Verdict(
                    question="q1", outcome="right", points=3.0, out_of=3.0,
                )
            }  # fmt: skip

    monkeypatch.setattr(fuzz_marking, "SHEET", Generous())
    line = b'{"cell": %d, "value": {"text": "7 kg"}}\n' % fuzz_marking.CHECKS[0]

    with pytest.raises(AssertionError):
        read_stream(line)


def test_an_untouched_hand_in_is_poured_without_a_word():
    assert "poured" == pour_notebook(HAND_IN)
