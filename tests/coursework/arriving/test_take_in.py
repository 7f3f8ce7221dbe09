"""Taking in: nothing is lost, the right one counts, and a stop half-way changes nothing."""

import csv
import hashlib
import io
import os
import re
import shutil
import signal
import tempfile
import zipfile
from pathlib import Path

import pytest
from coursework.arriving.arrivals import read_list, unplaced
from coursework.arriving.json_walk import MOST_PIECES, Budget
from coursework.arriving.reading_in import read_notebook
from coursework.arriving.states import AGAIN, COUNTS, NOT_PLACED, REPLACED
from coursework.arriving.taken_in_words import in_words
from coursework.classes.course import open_course
from coursework.errors import CourseError
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.helpers.folders import EVENING, pack, put
from tests.helpers.hand_ins import (
    NIGHT,
    SET,
    all_files,
    became,
    hand_in,
    make_course,
    reason,
    submitted,
    take_in,
)


@pytest.fixture
def course(tmp_path):
    return make_course(tmp_path / "class")


@pytest.mark.parametrize("way", [put, pack])
def test_each_notebook_goes_to_whom_it_says(course, tmp_path, way):
    """File names that name nobody say nothing."""
    one, two = hand_in("BH-1001"), hand_in(" bh-1002 ", metadata=False)
    taken = take_in(course, way(tmp_path / "post", {"BH-02.ipynb": one, "x/Untitled": two}))

    assert one == submitted(course, "BH-1001")
    assert two == submitted(course, "BH-1002")
    assert "2 files taken in: 2 count." == in_words(taken)


def test_all_that_came_in_one_students_zip_shares_what_reading_may_cost(
    course, tmp_path, monkeypatch
):
    """A budget for one notebook and no more: the second is not read, and a classmate's is."""
    pieces = Budget()
    read_notebook(hand_in("BH-1001"), budget=pieces)
    cost = MOST_PIECES - pieces.left
    monkeypatch.setattr(Budget, "__init__", lambda self: setattr(self, "left", cost + 10))
    own = pack(tmp_path / "own.zip", {"a": hand_in("BH-1001"), "b": hand_in("BH-1001", q1="b")})
    post = {"BH-1.zip": own.read_bytes(), "BH-2.ipynb": hand_in("BH-1002")}
    taken = take_in(course, pack(tmp_path / "all.zip", post))
    by_name = {one.name: one for one in taken.came}

    assert "" == by_name["BH-1.zip/a"].trouble == by_name["BH-2.ipynb"].trouble
    assert "more pieces than any notebook" in by_name["BH-1.zip/b"].trouble


def test_of_many_files_without_a_place_twenty_are_told_and_the_list_has_all(course, tmp_path):
    taken = take_in(course, put(tmp_path / "post", {f"{n:02d}": b"x%d" % n for n in range(25)}))
    lines = in_words(taken).splitlines()

    assert any("and 5 more: arrived/list.csv" in line for line in lines)
    assert 20 == sum(": not placed." in line for line in lines)


def test_originals_are_kept_by_their_sha256_unchanged(course, tmp_path):
    """Referee: `hashlib` over what was handed in; the given name is in the list only."""
    raw = hand_in("BH-1001")
    sha256 = hashlib.sha256(raw).hexdigest()
    take_in(course, put(tmp_path / "post", {"my work.ipynb": raw, "photo.jpg": b"\xff\xd8\xff"}))
    kept = {path.name for path in course.arrived.rglob("*") if path.is_file()}
    one, photo = read_list(course)

    assert raw == (course.arrived / sha256[:2] / f"{sha256}.ipynb").read_bytes()
    assert {"list.json", "list.csv", f"{sha256}.ipynb", f"{photo.sha256}.bin"} == kept
    assert ("my work.ipynb", str(tmp_path / "post"), sha256, "BH-1001", SET, NIGHT, EVENING) == (
        one.name, one.place, one.sha256, one.student, one.set_id, one.seconds, one.says_seconds
    )  # fmt: skip


def test_the_list_for_people_runs_no_formula(course, tmp_path):
    """A file may be called =1+1; a spreadsheet would run it. Referee: `csv`."""
    take_in(course, put(tmp_path / "post", {"=1+1": hand_in("BH-1001"), "b\nc": b"", "-d": b"x"}))
    text = (course.arrived / "list.csv").read_bytes().decode("utf-8-sig")
    rows = {row["file"]: row for row in csv.DictReader(io.StringIO(text, newline=""))}

    assert {"'=1+1", "b\\nc", "'-d"} == set(rows)
    assert "counts" == rows["'=1+1"]["what became of it"]
    assert "Student 1001" == rows["'=1+1"]["name"]
    assert "The file is empty." == rows["b\\nc"]["why"]


def test_nbgrader_reads_the_time_and_takes_the_later_hand_in(course, tmp_path):
    """Referee: nbgrader's own reading of timestamp.txt; without it a resubmission is skipped."""
    from nbgrader.coursedir import CourseDirectory

    def time():
        folder = str(course.submitted(SET, "BH-1001").parent)
        return CourseDirectory().get_existing_timestamp(folder)

    take_in(course, pack(tmp_path / "one.zip", {"a": hand_in("BH-1001")}))
    first = time()
    take_in(course, pack(tmp_path / "two.zip", {"b": hand_in("BH-1001", q1="b")}, EVENING + 1))
    second = time()
    take_in(course, pack(tmp_path / "three.zip", {"c": hand_in("BH-1001", q1="c")}, EVENING + 1))
    third = time()
    stamp = (course.submitted(SET, "BH-1001").parent / "timestamp.txt").read_text()

    assert hand_in("BH-1001", q1="c") == submitted(course, "BH-1001")
    assert first < second < third
    assert read_list(course)[0].handed_in == str(first)
    assert 1 == (second - first).total_seconds()
    assert stamp.startswith(read_list(course)[2].handed_in)


def test_the_latest_by_its_time_counts_whatever_came_first(course, tmp_path):
    early, late = hand_in("BH-1001", q1="early"), hand_in("BH-1001", q1="late")
    take_in(course, pack(tmp_path / "one.zip", {"late.ipynb": late}, EVENING + 100))
    taken = take_in(course, pack(tmp_path / "two.zip", {"early.ipynb": early}, EVENING))

    assert late == submitted(course, "BH-1001")
    assert {"late.ipynb": COUNTS, "early.ipynb": REPLACED} == became(course)
    assert "It is the latest of 2 hand-ins." == reason(course, "late.ipynb")
    late_is = r"“late.ipynb”, handed in 20\d\d-\d\d-\d\d \d\d:\d\d, is later\."
    assert re.search(late_is, in_words(taken))


def test_at_equal_times_the_later_arrival_counts(course, tmp_path):
    files = {"b": hand_in("BH-1001", q1="b"), "a": hand_in("BH-1001", q1="a")}
    post = put(tmp_path / "post", files)
    for name in files:
        os.utime(post / name, (EVENING, EVENING))
    take_in(course, post)

    assert {"a": REPLACED, "b": COUNTS} == became(course)


def test_the_same_file_again_is_no_second_hand_in(course, tmp_path):
    """First thoughts sent once more after second thoughts stay first thoughts."""
    first, second = hand_in("BH-1001", q1="first"), hand_in("BH-1001", q1="second")
    post = put(tmp_path / "one", {"a": first, "b": second, "c": first})
    taken = take_in(course, post)

    assert {"a": REPLACED, "b": COUNTS, "c": AGAIN} == became(course)
    assert "It came before as “a” in “one”." == reason(course, "c")
    assert second == submitted(course, "BH-1001")
    assert "1 counts, 1 replaced by a later one, 1 same file again" in in_words(taken)


def test_the_same_bytes_again_never_move_the_time(course, tmp_path):
    """Whether a later archive dates them later or earlier, or a folder has them: in any order."""
    raw, other = hand_in("BH-1001"), hand_in("BH-1001", q1="other")
    take_in(course, pack(tmp_path / "new.zip", {"a": raw}, EVENING + 900))
    take_in(course, pack(tmp_path / "old.zip", {"b": raw}, EVENING))
    take_in(course, put(tmp_path / "loose", {"c": raw}, EVENING))
    take_in(course, pack(tmp_path / "other.zip", {"d": other}, EVENING + 500))

    assert {"a": COUNTS, "b": AGAIN, "c": AGAIN, "d": REPLACED} == became(course)
    assert [EVENING + 900, EVENING, NIGHT, EVENING + 500] == [
        one.seconds for one in read_list(course)
    ]


def test_within_one_archive_the_earlier_of_two_times_counts(course, tmp_path):
    """The platform itself says that the very same file was there before."""
    raw = hand_in("BH-1001")
    archive = pack(tmp_path / "all.zip", {"b": hand_in("BH-1002"), "a": raw}, EVENING)
    with zipfile.ZipFile(archive, "a") as more:
        info = zipfile.ZipInfo("a, first time")
        info.extra = b"\x55\x54\x05\x00\x01" + (EVENING - 600).to_bytes(4, "little")
        more.writestr(info, raw)
    take_in(course, archive)

    assert EVENING - 600 == next(one for one in read_list(course) if one.name == "a").seconds


def test_touching_a_file_does_not_make_it_late(course, tmp_path):
    post = put(tmp_path / "post", {"a": hand_in("BH-1001")})
    take_in(course, post)
    before = all_files(course)
    os.utime(post / "a", (EVENING + 900, EVENING + 900))
    take_in(course, post)

    assert before == all_files(course)


def test_a_loose_file_came_when_it_was_taken_in_whatever_it_says(course, tmp_path):
    """Touched back to 1970, its own time makes no sense; touched back a month, it is shown."""
    post = put(tmp_path / "post", {"b": hand_in("BH-1001"), "c": hand_in("BH-1002")})
    os.utime(post / "b", (0, 0))
    os.utime(post / "c", (EVENING - 2_600_000,) * 2)
    take_in(course, post)

    assert [NIGHT, NIGHT] == [one.seconds for one in read_list(course)]
    assert [None, EVENING - 2_600_000] == [one.says_seconds for one in read_list(course)]


def test_of_two_loose_files_taken_in_at_once_their_own_times_say_which_is_later(course, tmp_path):
    """Both are the same student's word, and neither is earlier for the policy."""
    post = put(tmp_path / "post", {"b": hand_in("BH-1001"), "a": hand_in("BH-1001", q1="a")})
    take_in(course, post)

    assert {"a": COUNTS, "b": REPLACED} == became(course)


FOR_NOBODY = {
    "gone": (hand_in("BH-1001").replace(b"student = 'BH-1001'", b"x = 1"), "no line student ="),
    "unquoted": (hand_in("BH-1001").replace(b"'BH-1001'", b"BH-1001"), "number in quotes"),
    "empty": (hand_in(None), "was left empty"),
    "spaces": (hand_in("  "), "was left empty"),
    "no number": (hand_in("Ada Quill!"), "“Ada Quill!” is no student number"),
    "climber": (hand_in(".."), "“..” is no student number"),
    "path": (hand_in("../../BH-1001"), "is no student number"),
    "slash": (hand_in("BH-1001/../BH-1002"), "is no student number"),
    "dot": (hand_in("BH-1001."), "“BH-1001.” is no student number"),
    "stranger": (hand_in("XY-77"), "XY-77 is not on the roster."),
    "typo": (hand_in("BH-10112"), "BH-10112 is not on the roster. Did you mean BH-1012 or"),
    "other set": (
        hand_in("BH-1001").replace(b'"set": "04-buy-enough"', b'"set": "09-plates"'),
        f"Set “09-plates” is not handed out in this class; {SET} is.",
    ),
    "set that climbs": (
        hand_in("BH-1001").replace(b'"set": "04-buy-enough"', b'"set": "../04-buy-enough"'),
        "is not handed out in this class",
    ),
    "no set": (
        hand_in("BH-1001", metadata=False).replace(b"open_set", b"open_it"),
        "BH-1001 handed it in, but it does not say which set it is.",
    ),
    "other term": (
        hand_in("BH-1001").replace(b'"term": "demo"', b'"term": "spring"'),
        "It is for term “spring”; this class's is “demo”.",
    ),
    "not a notebook": (b"celeriac, cider, mustard", "The file is no notebook."),
    "a page": (b"<!DOCTYPE html>", "The file is a web page and no notebook."),
    "broken": (hand_in("BH-1001")[:50], "The file is damaged before its first cell."),
    "no bytes": (b"", "The file is empty."),
    "no cells": (b'{"cells": [], "metadata": {}}', "The file is a notebook without any text."),
    "deep": (b"[" * 50_000, "The file is no notebook."),
}


def test_the_made_up_trouble_is_what_it_says():
    """A replacement that found nothing would leave a good hand-in: each must differ."""
    good = {hand_in("BH-1001"), hand_in("BH-1001", metadata=False)}

    assert not good & {raw for raw, _ in FOR_NOBODY.values()}


@pytest.mark.parametrize("name", FOR_NOBODY)
def test_what_has_no_place_is_kept_and_listed_and_the_rest_is_taken(course, tmp_path, name):
    raw, words = FOR_NOBODY[name]
    good = hand_in("BH-1002")
    outside = {path.name for path in tmp_path.iterdir()} | {"post"}
    taken = take_in(course, put(tmp_path / "post", {"odd": raw, "good": good}))
    odd = next(one for one in read_list(course) if one.name == "odd")

    assert NOT_PLACED == odd.became
    assert words in odd.reason
    assert odd.reason.endswith((".", "?"))
    assert raw == (course.arrived / odd.kept).read_bytes()
    assert good == submitted(course, "BH-1002")
    assert ["BH-1002"] == [path.name for path in (course.folder / "submitted").iterdir()]
    assert outside == {path.name for path in tmp_path.iterdir()}
    assert f"  odd: not placed. {odd.reason}" in in_words(taken).splitlines()
    assert [f"odd: not placed. {odd.reason}"] == unplaced(course)


def test_a_broken_tail_is_placed_by_what_was_saved(course, tmp_path):
    """Jupyter writes the metadata last; without them the cell that opens the set says it."""
    raw = hand_in("BH-1001")
    take_in(course, put(tmp_path / "post", {"a": raw[: len(raw) * 2 // 3]}))

    assert {"a": COUNTS} == became(course)


def test_a_mended_roster_places_what_had_no_place(course, tmp_path):
    """Without the file being sent again: the list and the originals are enough."""
    post = put(tmp_path / "post", {"new.ipynb": hand_in("BH-2001")})
    take_in(course, post)
    shutil.rmtree(post)
    post.mkdir()
    with (course.folder / "roster.csv").open("a") as file:
        file.write("BH-2001,Late Comer\n")
    taken = take_in(open_course(course.folder), post)

    assert hand_in("BH-2001") == submitted(course, "BH-2001")
    assert in_words(taken).startswith(
        "There is no file to take in.\n1 file that had no place before:"
    )


def test_an_empty_folder_says_so(course, tmp_path):
    (tmp_path / "post").mkdir()

    assert "There is no file to take in." == in_words(take_in(course, tmp_path / "post"))
    assert [] == read_list(course)


def test_nothing_new_says_so_and_changes_nothing(course, tmp_path):
    files = {"a": hand_in("BH-1001"), "b": b"x", "c": hand_in("BH-1001", q1="c"), "d": b"x"}
    post = put(tmp_path / "post", files)
    take_in(course, post)
    before = all_files(course)
    taken = take_in(course, post)

    assert "Nothing new: 4 files came before." == in_words(taken)
    assert before == all_files(course)


def test_new_ones_among_old_ones_are_told_apart(course, tmp_path):
    post = put(tmp_path / "post", {"a": hand_in("BH-1001"), "b": b"x"})
    take_in(course, post)
    put(post, {"c": hand_in("BH-1002")})

    assert "1 file taken in: 1 counts.\n2 files came before." == in_words(take_in(course, post))


def test_progress_is_told_for_each_file(course, tmp_path):
    told = []
    post = put(tmp_path / "post", {"a": hand_in("BH-1001"), "b": b"x"})
    take_in(course, post, lambda *words: told.append(words))

    assert [(1, 2, "a"), (2, 2, "b")] == told


@pytest.mark.parametrize("name", ["", "arrived", "submitted", "submitted/BH-1001", "release"])
def test_the_classs_own_folders_are_no_post(course, name):
    """They would be taken in as hand-ins of the class, the released copy first of all."""
    (course.folder / name).mkdir(parents=True, exist_ok=True)

    with pytest.raises(CourseError, match="is the class's own folder"):
        take_in(course, course.folder / name)


def test_a_class_that_lies_within_the_post_is_left_alone(tmp_path):
    """Everything in one folder, as it happens: Downloads/class beside Downloads/a.ipynb."""
    course = make_course(tmp_path / "downloads" / "class")
    put(tmp_path / "downloads", {"a.ipynb": hand_in("BH-1001")})
    take_in(course, tmp_path / "downloads")

    assert {"a.ipynb": COUNTS} == became(course)


def test_a_link_to_a_classmates_file_is_listed_and_nobodys(course, tmp_path):
    post = put(tmp_path / "post", {"a.ipynb": hand_in("BH-1001")})
    (post / "mine.ipynb").symlink_to(post / "a.ipynb")
    take_in(course, post)

    assert {"a.ipynb": COUNTS, "mine.ipynb": NOT_PLACED} == became(course)
    assert "It is a link to another place, not a file." == reason(course, "mine.ipynb")


def test_a_file_put_there_by_hand_is_kept_before_it_is_replaced(course, tmp_path):
    file = course.submitted(SET, "BH-1001")
    put(file.parent, {file.name: b"by hand"})
    take_in(course, put(tmp_path / "post", {"a": hand_in("BH-1001")}))
    kept = [path.read_bytes() for path in (course.folder / "kept").rglob("*.ipynb")]

    assert hand_in("BH-1001") == submitted(course, "BH-1001")
    assert [b"by hand"] == kept


def test_a_changed_original_is_refused_by_name_and_mended_by_taking_in_again(course, tmp_path):
    post = put(tmp_path / "post", {"a": hand_in("BH-1001")})
    take_in(course, post)
    (course.arrived / read_list(course)[0].kept).write_bytes(b"changed")
    empty = tmp_path / "empty"
    empty.mkdir()

    with pytest.raises(CourseError, match="changed: take “a” in again"):
        take_in(course, empty)

    take_in(course, post)
    assert hand_in("BH-1001") == (course.arrived / read_list(course)[0].kept).read_bytes()


@pytest.mark.parametrize("text", ["{", '[{"no": 1}]', "[1]", "7", "\xff"])
def test_a_damaged_list_is_refused_with_what_to_do(course, tmp_path, text):
    put(course.arrived, {"list.json": text.encode("latin-1")})

    with pytest.raises(CourseError, match="take everything in again"):
        take_in(course, put(tmp_path / "post", {"a": b"x"}))


# What the stops below go through: two hand-ins of one student, a doubled file, trouble.
POST = {
    "a": hand_in("BH-1001", q1="first"), "b": hand_in("BH-1002"), "c": hand_in("BH-1001"),
    "d": hand_in("BH-1002"), "e": b"x", "f": hand_in("BH-1001", q1="last"),
}  # fmt: skip


@pytest.mark.parametrize("cut", range(1, 6))
def test_two_halves_give_what_the_whole_gives(tmp_path, cut):
    """The folder fills up; each time all that is in it is taken in."""
    whole, halves = make_course(tmp_path / "whole"), make_course(tmp_path / "halves")
    post = put(tmp_path / "post", dict(list(POST.items())[:cut]))
    take_in(halves, post)
    put(post, POST)
    take_in(halves, post)
    take_in(whole, post)

    assert all_files(whole) == all_files(halves)


def test_several_places_at_once_give_what_one_after_the_other_gives(tmp_path):
    together, apart = make_course(tmp_path / "together"), make_course(tmp_path / "apart")
    folder = put(tmp_path / "post", dict(list(POST.items())[:3]))
    archive = pack(tmp_path / "post.zip", dict(list(POST.items())[3:]), EVENING + 500)
    take_in(together, [folder, str(archive)])
    take_in(apart, folder)
    take_in(apart, archive)

    assert all_files(together) == all_files(apart)


WRITES = ("replace", "rename", "mkdir", "fsync", "chmod", "unlink")


def stopped_at(course, post, stop, how):
    """Take in, and be stopped at a step of writing; whether the end was reached."""
    steps = 0

    def counting(really):
        def step(*args, **more):
            nonlocal steps
            steps += 1
            if steps == stop:
                how()
            return really(*args, **more)

        return step

    with pytest.MonkeyPatch.context() as patch:
        for name in WRITES:
            patch.setattr(os, name, counting(getattr(os, name)))
        take_in(course, post)
    return steps


def interrupt():
    raise KeyboardInterrupt


def kill():
    os.kill(os.getpid(), signal.SIGKILL)


def killed_at(course, post, stop):
    """The same in a process of its own that is killed; whether it was."""
    child = os.fork()
    if child == 0:
        stopped_at(course, post, stop, kill)
        os._exit(0)
    _, status = os.waitpid(child, 0)
    return os.WIFSIGNALED(status)


def interrupted_at(course, post, stop):
    try:
        stopped_at(course, post, stop, interrupt)
    except KeyboardInterrupt:
        return True
    return False


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs a system that can fork")
@pytest.mark.filterwarnings("ignore:.*fork.*:DeprecationWarning")
@pytest.mark.parametrize("stopped", [interrupted_at, killed_at])
def test_a_stop_at_any_step_and_doing_it_again_gives_the_undisturbed_result(tmp_path, stopped):
    """Ctrl-C and SIGKILL at every step of writing, first on a new class, then on a used one."""
    post, more = put(tmp_path / "post", POST), tmp_path / "more"
    put(more, {"g": hand_in("BH-1001", q1="g"), "h": hand_in("BH-1003")}, EVENING + 900)
    whole = make_course(tmp_path / "whole")
    take_in(whole, post)
    after_post = all_files(whole)
    take_in(whole, more)
    after_more = all_files(whole)
    stop, was_stopped = 0, True
    while was_stopped:
        stop += 1
        course = make_course(tmp_path / f"class {stop}")
        on_new = stopped(course, post, stop)
        take_in(course, post)
        assert after_post == all_files(course)

        on_used = stopped(course, more, stop)
        take_in(course, more)
        assert after_more == all_files(course)

        was_stopped = on_new or on_used
    assert stop > 40


def test_a_stop_leaves_no_half_hand_in_where_marking_looks(tmp_path):
    """At every step a student's folder has both files or is not there at all."""
    post = put(tmp_path / "post", {"a": hand_in("BH-1001")})
    for stop in range(1, 60):
        course = make_course(tmp_path / f"class {stop}")
        interrupted_at(course, post, stop)
        folder = course.submitted(SET, "BH-1001").parent

        assert not folder.exists() or 2 == len(list(folder.iterdir()))


def test_after_a_stop_the_list_is_the_truth_even_without_doing_it_again(tmp_path):
    """Something else is taken in instead: what is placed is what the list says, no more or less."""
    post, empty = put(tmp_path / "post", POST), tmp_path / "empty"
    empty.mkdir()
    for stop in range(1, 120):
        course = make_course(tmp_path / f"class {stop}")
        interrupted_at(course, post, stop)
        take_in(course, empty)
        says = {one.student: one.sha256 for one in read_list(course) if one.became == COUNTS}
        placed = {
            file.parts[-3]: hashlib.sha256(file.read_bytes()).hexdigest()
            for file in course.folder.glob(f"submitted/*/{SET}/*.ipynb")
        }

        assert says == placed


@st.composite
def damaged(draw):
    """A hand-in, or nothing, with bytes replaced or cut off."""
    number = draw(st.integers(1, 9))
    raw = bytearray(hand_in(f"BH-100{number}") if number < 8 else b"")
    for _ in range(draw(st.integers(0, 3))):
        at = draw(st.integers(0, len(raw)))
        until = draw(st.sampled_from((at + 1, at + 50, len(raw))))
        raw[at:until] = draw(st.binary(max_size=9))
    return bytes(raw)


@given(st.lists(damaged(), min_size=1, max_size=6))
@settings(max_examples=60, deadline=None)
def test_no_file_is_ever_lost(raws):
    """Fuzz: as many lines as files, and each file's bytes are kept under its own SHA-256."""
    files = {f"{place}.ipynb": raw for place, raw in enumerate(raws)}
    with tempfile.TemporaryDirectory() as base:
        course = make_course(Path(base, "class"))
        taken = take_in(course, put(Path(base, "post"), files))
        listed = {one.name: one for one in read_list(course)}
        kept = {name: (course.arrived / one.kept).read_bytes() for name, one in listed.items()}
        beside = set(os.listdir(base))

    assert list(files) == list(listed) == [one.name for one in taken.came]
    assert files == kept
    assert [hashlib.sha256(raw).hexdigest() for raw in raws] == [
        one.sha256 for one in listed.values()
    ]
    assert {"class", "post"} == beside
