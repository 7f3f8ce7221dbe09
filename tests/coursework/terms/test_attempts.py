"""Which hand-ins are attempts, and what each of them earned. All answers are invented."""

import json
import re
from dataclasses import replace

import pytest
from coursework.arriving.arrivals import hand_ins, on_the_clock
from coursework.arriving.placing import NO_TIME
from coursework.arriving.take_in import take_in
from coursework.classes.course import new_course
from coursework.decisions.kinds import Decision
from coursework.marking.mark_set import mark_set
from coursework.records.reading import usable_records
from coursework.records.record import HumanMark
from coursework.records.record_file import read_record
from coursework.sets.hand_out import hand_out
from coursework.sets.key_text import key_notebook
from coursework.sets.keys import load_key
from coursework.terms import attempts as attempts_module
from coursework.terms.attempts import attempts_of, points_for
from coursework.terms.lateness import tries
from coursework.terms.mark_words import in_words
from coursework.terms.term_book import term_book

from kitchenmath.units import say
from tests.helpers.folders import put
from tests.helpers.records import ROSTER, record, verdict, written
from tests.helpers.term import BUY, DAY, DUE, arrive, leave, of, points, sha, stated


def test_of_the_files_by_the_due_time_only_the_last_is_an_attempt(course):
    arrive(course, BUY, "BH-1", a=DUE - 9, b=DUE, c=DUE + 1, d=DUE + 2)
    mine = hand_ins(course, BUY)["BH-1"]

    assert ["b", "c", "d"] == [one.name[0] for one in tries(mine, DUE)]
    assert ["a", "b", "c", "d"] == [one.name[0] for one in tries(mine, None)]
    assert ["c", "d"] == [one.name[0] for one in tries(mine[2:], DUE)]
    assert ["d"] == [one.name[0] for one in tries(mine, DUE + 2)]


def test_a_later_attempt_has_its_own_due_time(course, human, marked):
    """By hand: 12 of 20, then 18 a day late by the set's due time, but before second_due."""
    second = f'second_due = "{on_the_clock(DUE + 7 * DAY)}"\n'
    text = f'\n[mark_book]\nlate_percent = 10\nsecond_attempt = "best"\n[sets.{BUY}]\ndue = DUE\n'
    arrive(course, BUY, "BH-1", first=DUE, second=DUE + DAY)
    arrive(course, BUY, "BH-2", only=DUE + DAY)
    marked.got[b"first"] = 12
    leave(course, BUY, points("BH-1", 18, raw=b"second"), points("BH-2", 18, raw=b"only"))
    strict = term_book(stated(course, text))
    mild = term_book(stated(course, second))

    assert (16, 18) == (of(strict, "BH-1").marks[0].points, of(mild, "BH-1").marks[0].points)
    assert (16, 16) == (of(strict, "BH-2").marks[0].points, of(mild, "BH-2").marks[0].points)


@pytest.mark.parametrize("policy", ["latest", "best", "mean", "first"])
def test_the_one_that_a_person_named_counts_whatever_the_policy_says(
    course, human, marked, monkeypatch, policy
):
    """12 of 20 in time, 18 a day late, 15 three days late, where 2 days and 10 % a day are stated.

    By hand: the second with 10 % of 20 off is 16; the third with 30 % off is 9, although by the
    policy it came too late; the first is 12. The mark sheet's record is the one that was named.
    """
    text = f'\n[mark_book]\nlate_percent = 10\nlate_days = 2\nsecond_attempt = "{policy}"\n'
    course = stated(course, text + f"[sets.{BUY}]\ndue = DUE\n")
    arrive(course, BUY, "BH-1", first=DUE, second=DUE + DAY, third=DUE + 2 * DAY + 1)
    found = []
    for name, got in (("first", 12), ("second", 18), ("third", 15)):
        word = Decision("this one counts", "chef", "", file=sha(name.encode()), student="BH-1",
                        set_id=BUY, number=1)  # fmt: skip
        monkeypatch.setattr("coursework.terms.term_book.decisions_of", lambda _, word=word: [word])
        leave(course, BUY, points("BH-1", got, raw=name.encode()))
        found.append(of(term_book(course), "BH-1").marks[0])

    assert [12, 16, 9] == [mark.points for mark in found]
    assert ("by word", 3) == (found[2].how, found[2].place)
    assert [] == marked.seen

    leave(course, BUY, points("BH-1", 12, raw=b"first"))
    assert "named waits" == of(term_book(course), "BH-1").marks[0].state


def test_being_late_costs_so_much_at_most(course, human):
    """By hand, 18 of 20: a day late 2 points off; 4 days are 8 points, but 25 % is 5 at most."""
    text = f"\n[mark_book]\nlate_percent = 10\nlate_percent_most = 25\n[sets.{BUY}]\ndue = DUE\n"
    arrive(course, BUY, "BH-1", one=DUE + DAY)
    arrive(course, BUY, "BH-2", four=DUE + 3 * DAY + 1)
    leave(course, BUY, points("BH-1", 18, raw=b"one"), points("BH-2", 18, raw=b"four"))
    book = term_book(stated(course, text))

    assert [16, 13] == [of(book, student).marks[0].points for student in ("BH-1", "BH-2")]


def test_a_latest_that_came_too_late_leaves_the_one_before_it(course, human, marked):
    """12 of 20 in time, 14 a day late, 18 three days late: with 2 days allowed the 14 count."""
    text = f"\n[mark_book]\nlate_days = 2\n[sets.{BUY}]\ndue = DUE\n"
    arrive(course, BUY, "BH-1", first=DUE, second=DUE + DAY, third=DUE + 2 * DAY + 1)
    marked.got[b"second"] = 14
    leave(course, BUY, points("BH-1", 18, raw=b"third"))
    mark = of(term_book(stated(course, text)), "BH-1").marks[0]

    assert [b"second"] == marked.seen
    assert (14, 0.7) == (mark.points, mark.share)
    assert (
        "Attempt 2: 14 of 20, 1 day late: nothing is taken off.",
        "Attempt 3: 18 of 20, 3 days late: after 2 it does not count.",
        "Attempt 2, the latest, counts.",
    ) == in_words(mark)


@pytest.mark.parametrize(
    ("handed_in", "got"),
    [(on_the_clock(DUE + DAY), 16), (on_the_clock(DUE + DAY) + ".000001", 16),
     (on_the_clock(DUE), 18), (NO_TIME, 18), ("some day", 18)],
)  # fmt: skip
def test_without_a_list_the_record_says_when_it_was_handed_in(course, human, handed_in, got):
    """And where nobody knows, it counts as in time: 18 of 20, or a day late 16."""
    text = f"\n[mark_book]\nlate_percent = 10\n[sets.{BUY}]\ndue = DUE\n"
    leave(course, BUY, replace(points("BH-1", 18), handed_in=handed_in))

    assert got == of(term_book(stated(course, text)), "BH-1").marks[0].points


def test_an_earlier_attempt_is_marked_once_and_again_with_the_latest(course, human, marked):
    """Its record is kept beside the others; when the latest is marked by another key, so is it."""
    course = stated(course, '\n[mark_book]\nsecond_attempt = "best"\n')
    arrive(course, BUY, "BH-1", first=DUE, second=DUE + DAY)
    marked.got[b"first"] = 12
    leave(course, BUY, points("BH-1", 8, raw=b"second"))
    for _ in range(2):
        assert 12 == of(term_book(course), "BH-1").marks[0].points
    [file] = course.folder.glob(f"marks/{BUY}/earlier/BH-1.*.json")
    before = file.read_bytes()

    assert [b"first"] == marked.seen
    assert sha(b"first") == json.loads(before)["sha256"]
    assert ["BH-1"] == [each.student for each in usable_records(course, BUY)[0]]

    marked.got[b"first"] = 13
    leave(course, BUY, replace(points("BH-1", 8, raw=b"second"), task="another key"))
    assert 13 == of(term_book(course), "BH-1").marks[0].points
    [kept] = course.folder.glob(f"kept/marks/{BUY}/earlier/BH-1.*.json")
    assert before == kept.read_bytes()

    file.write_bytes(b"{")
    assert 13 == of(term_book(course), "BH-1").marks[0].points


def test_an_earlier_hand_in_whose_original_is_gone_is_said_and_stops_nobody(course, human, marked):
    course = stated(course, '\n[mark_book]\nsecond_attempt = "best"\n')
    arrive(course, BUY, "BH-1", first=DUE, second=DUE + DAY)
    (course.arrived / sha(b"first")[:2] / f"{sha(b'first')}.ipynb").unlink()
    leave(course, BUY, points("BH-1", 8, raw=b"second"), points("BH-2", 9))
    book = term_book(course)

    assert re.search(f"{BUY}, BH-1: arrived/.* is gone or was changed", " ".join(book.to_look_at))
    assert (None, 9) == (of(book, "BH-1").marks[0].share, of(book, "BH-2").marks[0].points)


def test_the_points_of_a_person_hold_for_the_attempts_they_can_hold_for():
    """A written answer is read once; points in place of the machine's, for the same answer only."""
    latest = record("BH-1", verdict("q1"), verdict("q2"), human=[written("q9"), written("q8", "")])
    same = record("BH-1", verdict("q1"), verdict("q2", answer="9 kg"), human=[written("q9", "Ah.")])
    empty = record("BH-1", human=[written("q9", " \n")])
    unread = record("BH-1", human=[written("q8", "I weighed it twice.")])
    human = {("BH-1", "q1"): HumanMark(2.0, "Right idea."), ("BH-1", "q2"): HumanMark(1.0),
             ("BH-1", "q9"): HumanMark(3.5, "Good."), ("BH-1", "q8"): HumanMark(0.0)}  # fmt: skip

    assert {
        ("BH-1", "q1"): HumanMark(2.0, "Right idea."),
        ("BH-1", "q9"): HumanMark(3.5, "Good."),
    } == points_for(same, latest, human)
    assert {("BH-1", "q9"): HumanMark(0.0, "")} == points_for(empty, latest, human)
    assert {} == points_for(unread, latest, human)
    given_anyway = human | {("BH-1", "q8"): HumanMark(4.0, "From the first one.")}
    assert (4.0, "From the first one.") == points_for(unread, latest, given_anyway)["BH-1", "q8"]


def test_points_for_another_written_answer_are_said(course, human, marked, monkeypatch):
    """q9 was read in the latest hand-in only; in the first one it says something else."""
    course = stated(course, '\n[mark_book]\nsecond_attempt = "best"\n')
    for student, answer in (("BH-1", "I guessed it."), ("BH-2", written().answer), ("BH-3", "")):
        arrive(course, BUY, student, **{f"{student} 1": DUE, f"{student} 2": DUE + DAY})
        first = points(student, 6, 16.0, human=[written(answer=answer)])
        monkeypatch.setattr(attempts_module, "mark", lambda task, first=first: (first, ""))
        latest = points(student, 5, 16.0, raw=f"{student} 2".encode(), human=[written()])
        leave(course, BUY, latest)
        human[BUY][student, "q9"] = HumanMark(4.0, "")
        term_book(course)
    book = term_book(course)

    assert [("q9",), (), ()] == [of(book, student).marks[0].unread for student in ROSTER]
    # 6 + 4 of 20; of the empty one 6 + 0, and its latest has 5 + 4.
    assert [10, 10, 9] == [of(book, student).marks[0].points for student in ROSTER]


def test_an_earlier_attempt_gets_what_it_would_have_got_alone(tmp_path):
    """Real marking, real gradebook. Referee: the same notebook marked as the only hand-in."""
    roster = {"BH-1001": "Ada Quill", "BH-1002": "Bram Oakes"}
    asked = load_key(key_notebook(BUY), "demo").sheet.known("BH-1001")
    right = {question.id: say(question.right(known)) for question, known in asked}
    classes = [new_course(tmp_path / name, "Class", "demo", roster) for name in ("all", "alone")]
    released, _ = [hand_out(each, BUY).read_bytes() for each in classes]
    first, second = filled(released, q1=right["q1"]), filled(released, q1="1 g")
    for each, files in zip(classes, ([first, second], [first]), strict=True):
        post = put(
            each.folder.parent / f"post {each.folder.name}",
            {f"{n}.ipynb": raw for n, raw in enumerate(files)},
        )
        take_in(each, post)
        mark_set(each, BUY, workers=1)
    [[latest], [only]] = [usable_records(each, BUY)[0] for each in classes]
    course = stated(classes[0], '\n[mark_book]\nsecond_attempt = "best"\n')
    found, several = attempts_of(course, BUY, latest, hand_ins(course, BUY)["BH-1001"], {})
    [file] = course.folder.glob(f"marks/{BUY}/earlier/*.json")

    expected = sum(each.points for each in only.answered)
    assert expected > 0 == sum(each.points for each in latest.answered)
    assert ([expected, 0], 2) == ([one.total.points for one in found], several)
    assert only.answered == read_record(file).answered


def filled(released, **answers):
    """A released notebook with these answers, as a student saves it."""
    book = json.loads(released)
    texts = {f"{question}-answer": f'{question} = "{text}"' for question, text in answers.items()}
    texts["me"] = 'student = "BH-1001"'
    for cell in book["cells"]:
        cell["source"] = texts.get(cell["id"], cell["source"])
    return json.dumps(book).encode()
