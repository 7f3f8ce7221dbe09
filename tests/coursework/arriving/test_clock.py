"""The time of a hand-in is the one that its student cannot write. Everything here is invented."""

import io
import zipfile

import pytest
from coursework.arriving.arrivals import hand_ins, read_list
from coursework.arriving.clock import on_the_clock
from coursework.arriving.take_in import take_in
from coursework.arriving.taken_in_words import AT_THE_DESK, in_words
from coursework.classes.course import open_course
from coursework.terms.lateness import each_late, tries

from tests.helpers.folders import EVENING, pack, put
from tests.helpers.hand_ins import SET, hand_in, make_course

DAY = 86_400
DUE = EVENING + DAY
NIGHT = EVENING + 10 * DAY
ADA = "BH-1001"


@pytest.fixture
def course(tmp_path):
    """A class whose set is due a day after the evening."""
    made = make_course(tmp_path / "class")
    with (made.folder / "course.toml").open("a", encoding="utf-8") as file:
        file.write(f'\n[sets.{SET}]\ndue = "{on_the_clock(DUE)}"\n')
    return open_course(made.folder)


def own_zip(start, **files):
    """A zip that a student packed, with any date."""
    packed = io.BytesIO()
    pack(packed, files, start)
    return packed.getvalue()


def times(course):
    return {one.name.rpartition("/")[2]: one.seconds for one in read_list(course)}


def test_late_work_in_a_zip_of_ones_own_stays_late(course, tmp_path):
    """Three days after the due time by the platform, a day before it by the student's own zip."""
    late = own_zip(DUE - DAY, mine=hand_in(ADA))
    taken = take_in(
        course, pack(tmp_path / "all.zip", {"Ada/w.zip": late}, DUE + 3 * DAY), now=NIGHT
    )
    [mine] = hand_ins(course, SET)[ADA]

    assert (DUE + 3 * DAY, DUE - DAY) == (mine.seconds, mine.says_seconds)
    assert [3] == each_late([mine], course.policy.rule(SET))
    assert (
        f"{on_the_clock(DUE + 3 * DAY)} counts, which is late; by its own word it is from "
        f"{on_the_clock(DUE - DAY)}." in in_words(taken)
    )
    assert on_the_clock(DUE - DAY) in (course.arrived / "list.csv").read_text("utf-8-sig")


def test_a_copy_of_the_returned_right_answers_is_a_later_attempt_whatever_its_date(
    course, tmp_path
):
    """The first attempt came in time. The copy says that it came just after it, before the due."""
    first, copy = hand_in(ADA, q1='q1 = "1 g"'), hand_in(ADA, q1='q1 = "3 kg"')
    take_in(course, pack(tmp_path / "one.zip", {"Ada/w.ipynb": first}, DUE - DAY), now=DUE + DAY)
    again = own_zip(DUE - DAY + 60, copy=copy)
    take_in(course, pack(tmp_path / "two.zip", {"Ada/w.zip": again}, DUE + 2 * DAY), now=NIGHT)
    mine = hand_ins(course, SET)[ADA]

    assert [DUE - DAY, DUE + 2 * DAY] == [one.seconds for one in tries(mine, DUE)]
    assert [0, 2] == each_late(mine, course.policy.rule(SET))


def test_late_bytes_packed_again_with_an_early_date_stay_late_and_that_is_said(course, tmp_path):
    """Also where the archive was named as the platform's own, as it is by mistake."""
    raw = hand_in(ADA)
    take_in(course, pack(tmp_path / "one.zip", {"w.ipynb": raw}, DUE + DAY), now=DUE + 2 * DAY)
    taken = take_in(course, pack(tmp_path / "two.zip", {"w2.ipynb": raw}, DUE - DAY), now=NIGHT)
    [mine] = hand_ins(course, SET)[ADA]

    assert DUE + DAY == mine.seconds
    assert f"by its own word it is from {on_the_clock(DUE - DAY)}" in in_words(taken)
    assert "Where you know better: python3 instructor handed-in." in in_words(taken)
    assert "under “What you decide”" in in_words(taken, AT_THE_DESK)
    assert "python3" not in in_words(taken, AT_THE_DESK)


def test_a_date_still_to_come_is_said_and_the_time_of_taking_in_counts(course, tmp_path):
    """In the archive itself, in a zip of one's own, and as a loose file's time stamp."""
    ahead = NIGHT + 30 * DAY
    own = own_zip(ahead, inner=hand_in("BH-1003"))
    archive = pack(tmp_path / "a.zip", {"outer": hand_in(ADA)}, ahead)
    folder = put(tmp_path / "post", {"loose": hand_in("BH-1002")}, ahead)
    nested = pack(tmp_path / "b.zip", {"w.zip": own}, DUE - DAY)
    said = in_words(take_in(course, [archive, folder, nested], now=NIGHT)).splitlines()

    assert {"outer": NIGHT, "loose": NIGHT, "inner": DUE - DAY} == times(course)
    words = f": it says {on_the_clock(ahead)}, which is still to come; "
    assert [f"  {name}{words}" for name in ("outer", "loose", "w.zip/inner")] == [
        line.partition(on_the_clock(NIGHT))[0].partition(on_the_clock(DUE - DAY))[0]
        for line in said
        if "still to come" in line
    ]


def test_a_students_zip_in_a_folder_is_no_platforms(course, tmp_path):
    """Saved from a mail, it holds one student's work; a download beside it holds that of two."""
    folder = put(tmp_path / "post", {"ada.zip": own_zip(DUE - DAY, mine=hand_in(ADA))})
    both = {"x": hand_in("BH-1002"), "y": hand_in("BH-1003")}
    pack(folder / "download.zip", both, DUE - DAY)
    take_in(course, folder, now=NIGHT)

    assert {"mine": NIGHT, "x": DUE - DAY, "y": DUE - DAY + 60} == times(course)
    assert {"ada.zip", "download.zip/x", "download.zip/y"} == {
        one.outer for one in read_list(course)
    }


def test_an_archive_that_says_no_time_came_when_it_was_taken_in(course, tmp_path):
    """1 January 1980 is what a program writes that knows none."""
    with zipfile.ZipFile(tmp_path / "a.zip", "w") as archive:
        archive.writestr(zipfile.ZipInfo("w"), hand_in(ADA))
    take_in(course, tmp_path / "a.zip", now=NIGHT)

    assert {"w": NIGHT} == times(course)


def test_taking_the_same_in_again_later_keeps_the_first_time(course, tmp_path):
    post = put(tmp_path / "post", {"w": hand_in(ADA)})
    take_in(course, post, now=DUE - 1)
    take_in(course, post, now=NIGHT)

    assert {"w": DUE - 1} == times(course)
