"""What goes back to a student. All students, answers and marks here are invented.

The pages are read with the standard library's HTML parser, which knows nothing of how they are
written, and where there is one, in a real Chromium.
"""

import json
import re
from dataclasses import fields
from datetime import datetime

import pytest
from coursework.arriving.arrivals import Arrival, on_the_clock, write_list
from coursework.arriving.placing import NO_TIME
from coursework.arriving.states import COUNTS, REPLACED
from coursework.classes.course import open_course
from coursework.errors import CourseError
from coursework.records.points import earned, heading_of, in_order, total
from coursework.records.reading import usable_records
from coursework.records.record import Found, HumanMark
from coursework.reports.hand_back import hand_back, student_page
from coursework.reports.question_text import in_html
from coursework.reports.sheet import mark_sheet
from coursework.sets.key_text import key_file, key_notebook, set_ids
from coursework.sets.keys import load_key

from kitchenmath.practice.plan_chart import Broken, Move, PlanBar, PlanChart, Waits
from tests.helpers.pages import HOSTILE, Page, assert_fits, assert_sound
from tests.helpers.records import SET, leave, record, slips, verdict, written


def as_fields(found):
    """A verdict of the key, as marking keeps it."""
    return {one.name: getattr(found, one.name) for one in fields(found)}


def ruled(course, lines):
    """The class with these lines of a mark book in its course file."""
    with (course.folder / "course.toml").open("a", encoding="utf-8") as file:
        file.write(f"\n[mark_book]\n{lines}")
    return open_course(course.folder)


def test_points_are_added_up(course):
    """By hand: 3 + 1 + 2.5 = 6.5 of 3 + 3 + 4 = 10."""
    mine = record("BH-1", verdict("q1"), verdict("q2", "slip", 1.0), human=[written()])

    page = assert_sound(student_page(course, mine, {("BH-1", "q9"): HumanMark(2.5, "Good.")}))

    assert "6.5 of 10 points" in page.text
    assert "2.5 of 4 points" in page.text
    assert "Ada Quill, student number BH-1." in page.text
    assert "Handed in 2026-10-02 18:31:07." in page.text


def test_an_open_mark_is_not_a_nought(course):
    """By hand: 3 of the 3 marked so far; 4 more can come, 7 in all."""
    mine = record("BH-1", verdict("q1"), human=[written()])

    for human in ({}, {("BH-1", "q9"): HumanMark(None, "")}):
        page = assert_sound(student_page(course, mine, human))

        assert "3 of 3 points so far" in page.text
        assert "Not marked yet: 9. From your bench. That can still bring up to 4" in page.text
        assert "… Not marked yet up to 4 points" in page.text
        assert "0 of 4" not in page.text


def test_a_nought_given_by_a_person_is_a_nought(course):
    mine = record("BH-1", human=[written(answer="")])

    page = assert_sound(student_page(course, mine, {("BH-1", "q9"): HumanMark(0.0, "")}))

    assert "0 of 4 points" in page.text
    assert "so far" not in page.text
    assert "No answer" in page.text


def test_points_of_a_person_count_before_those_of_marking(course):
    mine = record("BH-1", verdict("q1", "wrong", 0.0))

    page = assert_sound(student_page(course, mine, {("BH-1", "q1"): HumanMark(2.0, "Right idea.")}))

    assert "2 of 3 points" in page.text
    assert "(points given by your instructor)" in page.text
    assert "Right idea." in page.text


@pytest.mark.parametrize(
    ("outcome", "sign", "words"),
    [
        ("right", "✓", "Right"),
        ("follow-through", "→", "Right method, carried on from an earlier slip"),
        ("slip", "!", "A usual slip: multiplied by the yield"),
        ("wrong", "✗", "Not right"),
        ("missing", "–", "No answer"),
        ("unreadable", "?", "Could not be read"),
    ],
)
def test_each_outcome_has_a_sign_and_words(course, outcome, sign, words):
    """So that neither colour nor sign alone must be understood."""
    page = assert_sound(student_page(course, record("BH-1", verdict("q1", outcome)), {}))

    assert f"{sign} {words} 3 of 3 points" in page.text


def test_a_question_is_told_from_asking_to_lesson(course):
    mine = record("BH-1", verdict("q1", "slip", 1.0))

    text = student_page(course, mine, {})
    told = Page(text).text
    parts = [
        "1. Celeriac, part q1",
        "1 of 3 points",
        "What was asked Peeling costs weight. What must come through the door?",
        "Your numbers covers: 32 yield of celeriac: 70 %",
        "What you answered 4.2 kg",
        "What happened You multiplied by the yield. Divide.",
        "How it goes 32 covers × 65 g = the trimmed weight that ÷ 70 % = 4.23 kg",
        "Right answer: 4.23 kg.",
        "Go back to lesson 4, “Buy enough”, and there to the drill “as purchased”.",
    ]
    places = [told.rindex(part) for part in parts]

    assert "<strong>weight</strong>" in text
    assert sorted(places) == places


def test_slips_that_cannot_be_told_apart_are_both_explained(course):
    both = verdict(
        "q1",
        "slip",
        1.0,
        found=(Found("one way", "First."), Found("other way", "Second.")),
        alternatives=True,
    )

    text = student_page(course, record("BH-1", both), {})

    assert "one way or other way" in Page(text).text
    assert "<li>First.</li>\n<li>Second.</li>" in text


def test_only_what_went_wrong_is_to_go_over_again(course):
    mine = record(
        "BH-1",
        verdict("q10", "wrong", 0.0, skill="food cost", lesson="05-price-a-plate.ipynb"),
        verdict("q2", "missing", 0.0, skill="whole packs"),
        verdict("q1"),
        verdict("q3", "follow-through"),
    )

    told = Page(student_page(course, mine, {})).text

    assert (
        "Go over again Lesson 4, “Buy enough”: whole packs; drill “whole packs” "
        "Lesson 5, “Price a plate”: food cost" in told
    )


@pytest.mark.parametrize("set_id", set_ids())
def test_each_skill_of_a_key_leads_back_to_drills_that_the_lesson_holds(course, set_id):
    """The page names a drill for every numeric question, and the named lesson's cells open it."""
    lessons = key_file(set_id).parents[2] / "lessons"
    for question in load_key(key_notebook(set_id)).sheet.questions.values():
        asked = verdict("q1", "wrong", 0.0, skill=question.skill, lesson=question.lesson)
        told = Page(student_page(course, record("BH-1", asked), {})).text
        named = told.partition("and there to the drill")[2].partition(".")[0]
        drills = re.findall("“([^”]+)”(?: in lesson ([0-9]+), “[^”]+”)?", named)

        assert drills
        for drill, number in drills:
            (lesson,) = lessons.glob(f"{number:0>2}-*.ipynb" if number else question.lesson)
            assert f'[\\"{drill}\\"]' in lesson.read_text(encoding="utf-8")


def test_each_thing_that_happened_to_a_plan_has_a_line_of_its_own(course):
    """The plan too, to be read beside the one that works; a single slip stays a sentence."""
    told = ["A rest is left off.", "More goes in than there is.", "“soup” is no task."]
    names = ["forgot the rest", "two in one oven", "left a task out"]
    found = tuple(map(Found, names, told))
    plan = "17:40 sear; 18:00 roast the birds; 19:07 plate"
    text = student_page(
        course,
        record("BH-1", verdict("q1", "slip", 2.5, found=found, answer=plan)),
        {},
    )

    for each in told:
        assert f"<li>{each}</li>" in text
    assert "<bdi>17:40 sear\n18:00 roast the birds\n19:07 plate</bdi>" in text
    assert "Usual slips: forgot the rest, two in one oven and left a task out" in text
    assert "gives this number" not in text


def test_who_came_right_is_sent_to_no_lesson(course):
    """A right method on an earlier slip is no gap either."""
    mine = record("BH-1", verdict("q1"), verdict("q2", "follow-through"))
    told = Page(student_page(course, mine, {})).text

    assert "Go back to" not in told
    assert "Go over again" not in told


def test_a_wide_table_is_read_row_by_row_on_a_phone(course):
    """Each cell carries the head of its column; a narrow table stays one."""
    heads = "| task | takes | *who* | needs |\n|---|---|---|---|\n"
    wide = f"## 1. Plan\n\n{heads}| sear | 20 min | | oven |\n"
    narrow = "## 1. Hold\n\n| core | held |\n|---|---|\n| 60 °C | 12 min |\n"
    page, plain = (
        Page(student_page(course, record("BH-1", verdict("q1", asked=asked)), {}))
        for asked in (wide, narrow)
    )
    cells = [attrs.get("data-label") for tag, attrs in page.elements if tag == "td"]

    assert ["task", "takes", "who", "needs"] == cells[-4:]
    assert 2 == [attrs.get("class") for tag, attrs in page.elements].count("stack")
    assert 1 == [attrs.get("class") for tag, attrs in plain.elements].count("stack")


def test_an_answer_that_cannot_be_read_says_what_to_type(course):
    """What marking says of it stands on the page, and the student's own text line for line."""
    told = "The cell is filled in, and gave no answer. Type the answer between two quotes."
    mine = record(
        "BH-1",
        verdict("q1", "unreadable", 0.0, notes=(told,), answer='q1 = "3 kg'),
        verdict("q2", "unreadable", 0.0, notes=(told,), answer="# nets\n2"),
    )

    page = student_page(course, mine, {})

    assert told in Page(page).text
    assert 'What you answered q1 = "3 kg ' in Page(page).text
    assert '<p class="answer written"><strong><bdi># nets\n2</bdi>' in page


def test_who_left_nothing_out_is_not_told_to_look(course):
    told = Page(student_page(course, record("BH-1", verdict("q1"), verdict("q2", "slip")), {})).text

    assert "run its last cell" not in told


def test_a_number_carried_on_says_why_the_working_differs(course):
    page = Page(student_page(course, record("BH-1", verdict("q1", "follow-through")), {}))

    assert "the right answers to the earlier questions" in page.text


def a_chart(task):
    """A plan of one task that waits too long: 19:00 to 19:05, and until 19:20."""
    bar = PlanBar(task, 1140.0, 5.0, wait_min=15.0)
    broken = Broken("hold", (task,), 1151.0, 1160.0)
    move, waits = Move(task, 1149.0, True), Waits(task, task, 5.0, 6.0, True)
    return PlanChart((bar,), 1160.0, 930.0, (broken,), move, waits)


def test_a_plan_comes_back_as_a_chart_that_is_said_in_words_too(course):
    """The broken stretch, one start that works, and what its quality is; bars within the page."""
    mine = record("BH-1", verdict("q1", "slip", 1.0, chart=a_chart("whip the foam")))

    text = student_page(course, mine, {})
    page = assert_sound(text)
    widths = [
        float(each["x"].rstrip("%")) + float(each["width"].rstrip("%"))
        for tag, each in page.elements
        if tag == "rect" and "x" in each
    ]

    assert (
        "✗ whip the foam 19:00–19:05, then waits 15 min. 19:11–19:20 waits too long." in page.text
    )
    assert "One start that works: “whip the foam” at 19:09." in page.text
    assert "Beyond the limits: “whip the foam” waits 5 min of the 6 min" in page.text
    assert 3 == len(widths)
    assert max(widths) <= 100
    assert 'class="broken"' in text


@pytest.mark.parametrize(
    "place", ["name", "answer", "written", "comment", "finding", "asked", "task"]
)
def test_nothing_that_anybody_wrote_runs(course, place):
    """The parser finds no element of it, and the reader sees it letter by letter."""
    asked = f"## 1. Peel\n\n{HOSTILE}\n\n[here](javascript:alert(3)) ![{HOSTILE}](http://x/y.png)"
    mine = record(
        "BH-1",
        verdict(
            "q1",
            "unreadable",
            answer=HOSTILE if place == "answer" else "ten",
            asked=asked if place == "asked" else "## 1. Peel",
            chart=a_chart(HOSTILE) if place == "task" else None,
        ),
        human=[written(answer=HOSTILE if place == "written" else "Peeled.")],
        findings=[HOSTILE] if place == "finding" else [],
    )
    if place == "name":
        course.roster["BH-1"] = HOSTILE
    comment = HOSTILE if place == "comment" else ""

    text = student_page(course, mine, {("BH-1", "q9"): HumanMark(1.0, comment)})
    tags = {tag for tag, _ in Page(text).elements}

    assert "script" not in tags
    assert "img" not in tags
    assert "javascript:" not in text.split("What was asked")[1].split("What you")[0]
    assert "alert(1)" in Page(text).text
    if place != "asked":  # in markdown &amp; is a & and a link that is refused is still a link
        assert_sound(text)
        assert HOSTILE in Page(text).text


def test_headings_and_pictures_in_a_question_keep_the_page_in_order(course):
    asked = "## 1. Peel\n\n# Big\n\n![the board](board.png)\n\n| a | b |\n|---|---|\n| 1 | 2 |\n"

    text = student_page(course, record("BH-1", verdict("q1", asked=asked)), {})

    assert_sound(text)
    assert "<p><strong>Big</strong></p>" in text
    assert "<p>the board</p>" in text
    assert "<td>1</td>" in text


def test_no_hidden_check_is_shown(course):
    """From the real key: no line of its hidden tests, and no slip but the one that was made."""
    key = load_key(key_notebook(SET), "demo")
    hidden = [
        line.strip()
        for cell in key.cells
        for part in re.findall("BEGIN HIDDEN TESTS(.*?)END HIDDEN", "".join(cell["source"]), re.S)
        for line in part.splitlines()
        if len(line.strip()) > 12
    ]
    (question, known), *_ = key.sheet.known("BH-1")
    made, *others = question.slips
    answer = made.formula(**{name: known[name] for name in ("covers", "portion", "yield_")})
    found = key.sheet.mark("BH-1", {"q1": answer})["q1"]
    mine = record("BH-1", verdict(asked=key.asked["q1"], **as_fields(found)))

    told = Page(student_page(course, mine, {})).text

    assert made.sentence in told
    assert len(hidden) > 50
    assert not [line for line in hidden if line in told]
    assert not [slip for slip in others if slip.sentence in told or slip.name in told]


def test_the_same_record_gives_the_same_page(course):
    """And a day of writing stands on it only where it is passed in."""
    mine = record("BH-1", verdict("q1", "slip"), human=[written()])

    assert student_page(course, mine, {}) == student_page(course, mine, {})
    assert "This page was written" not in student_page(course, mine, {})
    assert "written on 5 October" in student_page(course, mine, {}, when="on 5 October")


@pytest.mark.parametrize(
    ("stamp", "told"),
    [
        ("2026-10-02 18:31:07.000001", "Handed in 2026-10-02 18:31:07."),
        (NO_TIME, None),
        (f"{NO_TIME}.000002", None),
    ],
)
def test_the_time_is_told_where_it_is_known(course, stamp, told):
    """Taking in writes a time of its own where a file has none, and counts within a second."""
    text = Page(student_page(course, record("BH-1", verdict("q1"), handed_in=stamp), {})).text

    assert (told in text) if told else ("Handed in" not in text)


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        (
            "",
            "This came 2 days late; a day counts once it has begun. Nothing is taken off for that.",
        ),
        (
            "late_percent = 10",
            "This came 2 days late; a day counts once it has begun. For that the term's mark book "
            "takes 20 % of the set's points off; the points on this page are before that.",
        ),
        (
            "late_percent = 10\nlate_percent_most = 15",
            "mark book takes 15 % of the set's points off",
        ),
        (
            "late_days = 1",
            "a day counts once it has begun. After 1 day a hand-in does not count in the term's "
            "mark book.",
        ),
    ],
)
def test_a_late_hand_in_is_told_and_keeps_its_points_here(course, entered, lines, told):
    """Due on the 1st at 18:00, handed in a day and half an hour later: the second day is begun."""
    leave(course, record("BH-1", verdict("q1")))
    leave(course, record("BH-2", verdict("q1"), handed_in="2026-10-01 18:00:00"))
    course = ruled(course, f'{lines}\n[sets.{SET}]\ndue = "2026-10-01 18:00"\n')
    late, in_time = (assert_sound(file.read_text("utf-8")).text for file in hand_back(course, SET))

    assert told in late
    assert "3 of 3 points" in late
    assert "late" not in in_time


def test_a_second_attempt_is_late_by_its_own_due_time(course, entered):
    """Due on the 1st, a second one on the 9th: handed in on the 2nd or on the 10th."""
    course = ruled(
        course,
        f'[sets.{SET}]\ndue = "2026-10-01 18:00"\nsecond_due = "2026-10-09 18:00"\n',
    )
    for second, told in (("2026-10-02 18:31:07", False), ("2026-10-10 09:00:00", True)):
        first = datetime(2026, 10, 1, 9).timestamp()
        moments = {"first": first, "second": datetime.fromisoformat(second).timestamp()}
        listed = [
            Arrival("post", f"{name}.ipynb", name, "", int(moment), on_the_clock(int(moment)),
                    student="BH-1", set_id=SET, became=COUNTS if name == "second" else REPLACED)
            for name, moment in moments.items()
        ]  # fmt: skip
        write_list(course, listed)
        leave(course, record("BH-1", verdict("q1"), handed_in=second, sha256="second"))
        (page,) = hand_back(course, SET)

        assert told == ("This came 1 day late" in Page(page.read_text()).text)


def test_a_text_that_the_class_shares_is_rendered_once(course):
    """So that 10,000 pages cost 10,000 fillings-in and not 60,000 readings of markdown."""
    in_html.cache_clear()
    for student in range(40):
        student_page(course, record(f"BH-{student}", verdict("q1"), verdict("q2")), {})

    assert in_html.cache_info().misses == 1  # q1 and q2 differ in the heading only


def test_each_marked_student_gets_one_page(course, entered):
    """BH-3 handed in nothing, so there is no page; BH-9 is not on the roster and gets one."""
    leave(course, *(record(student, verdict("q1")) for student in ("BH-2", "BH-1", "BH-9")))
    entered["BH-1", "q1"] = HumanMark(1.0, "")
    seen = []

    pages = hand_back(course, SET, lambda *step: seen.append(step))

    assert [course.feedback(SET, student) for student in ("BH-1", "BH-2", "BH-9")] == pages
    assert not course.feedback(SET, "BH-3").exists()
    assert [(1, 3, "Ada Quill"), (2, 3, "Bram Oakes"), (3, 3, "BH-9")] == seen
    assert "1 of 3 points" in pages[0].read_text(encoding="utf-8")


def test_halves_of_characters_do_not_stop_a_page(course, entered):
    r"""A lone surrogate, which JSON can carry as \ud800, has no bytes in UTF-8."""
    leave(course, record("BH-1", verdict("q1", "unreadable", answer="4 \ud800 kg")))

    (page,) = hand_back(course, SET)

    assert "4 ? kg" in Page(page.read_bytes().decode("utf-8")).text


@pytest.mark.parametrize(
    "damaged",
    [
        b"{ broken",
        b"\xff\xfe",
        b"[]",
        b"{}",
        b"null",
        b"[" * 100_000,
        b'{"student": "BH-9", "verdicts": [{}], "human": []}',
        b'{"student": "BH-2", "verdicts": [], "human": []}',
        b'{"title": "t", "student": "BH-2", "verdicts": [{"question": "q1"}], "human": []}',
        b'{"title": "t", "student": "BH-2", "verdicts": [], "human": [{"question": "q1"}]}',
        b'{"title": "t", "student": "BH-2", "verdicts": [], "human": []}',
    ],
)
def test_one_damaged_record_does_not_hold_up_the_others(course, entered, damaged):
    leave(course, record("BH-1", verdict("q1")))
    course.marks(SET, "BH-2").write_bytes(damaged)

    with pytest.raises(CourseError, match=r"pages written: 1\. Not written: .*BH-2"):
        hand_back(course, SET)

    assert course.feedback(SET, "BH-1").is_file()
    assert not course.feedback(SET, "BH-2").exists()


def test_nothing_marked_says_so(course, entered):
    with pytest.raises(CourseError, match="nothing of “04-buy-enough” is marked yet"):
        hand_back(course, SET)


def test_a_page_that_cannot_be_written_is_named(course, entered, monkeypatch):
    leave(course, record("BH-1", verdict("q1")))

    def refuse(file, content):
        raise PermissionError(13, "Permission denied", str(file))

    monkeypatch.setattr("coursework.safe_files.write_safely", refuse)

    with pytest.raises(CourseError, match=r"BH-1: “04-buy-enough\.html”: Permission denied"):
        hand_back(course, SET)


def test_records_come_in_order_with_what_is_odd(course):
    leave(course, record("BH-2", verdict("q1")), record("BH-1", verdict("q1")))
    course.marks(SET, "BH-3").write_text("{", encoding="utf-8")

    records, odd = usable_records(course, SET)

    assert ["BH-1", "BH-2"] == [each.student for each in records]
    assert ["marks/04-buy-enough/BH-3.json cannot be used: delete it and mark BH-3 again."] == odd


def test_questions_stand_in_the_order_of_their_numbers():
    """Written answers are listed apart, so q2 must find its place between q1 and q10."""
    mine = record("BH-1", verdict("q10"), verdict("q1"), human=[written("q2")])

    assert ["q1", "q2", "q10"] == list(earned(mine, {}))
    assert ["q2b", "q2c", "q10a"] == sorted(["q10a", "q2c", "q2b"], key=in_order)


def test_a_total_without_any_mark_has_no_share():
    """Nought of nought is no percent."""
    assert total(earned(record("BH-1", human=[written()]), {})).share is None


@pytest.mark.parametrize(
    ("asked", "heading", "text"),
    [
        ("## 1. Celeriac (3 points)\n\nHow much?", "1. Celeriac", "\n\nHow much?"),
        ("# 6. Bench (4 points, marked by hand)", "6. Bench", ""),
        ("## 2. *Nets* (whole) to `order`\nNow.", "2. Nets (whole) to order", "\nNow."),
        ("How much?", "Question q1", "How much?"),
        ("", "Question q1", ""),
    ],
)
def test_a_heading_is_taken_off_its_text(asked, heading, text):
    assert (heading, text) == heading_of(asked, "q1")


@pytest.mark.browser
def test_a_page_fits_a_phone(course, entered):
    """Also where a student typed 400 letters without a blank, and with a set's widest table."""
    plan = next(
        "".join(cell["source"])
        for cell in json.loads(key_notebook("10-land-the-plate"))["cells"]
        if cell["id"] == "q6-text"
    )
    mine = record(
        "BH-1",
        verdict("q6", "slip", asked=plan),
        verdict("q1", "unreadable", answer="k" * 400),
        verdict("q2", "slip", found=slips("multiplied by the yield", "forgot the trim")),
        human=[written(answer="w" * 400)],
    )
    leave(course, mine)

    (page,) = hand_back(course, SET)

    assert_fits(page)


def test_what_the_instructor_must_do_stands_on_the_sheet_and_not_on_the_students_page(course):
    said = "It lies in submitted/BH-1/04-buy-enough. Give its points by hand."
    mine = record("BH-1", verdict("q1"), to_do=[said])
    notes = mark_sheet(course, SET, [mine], {})[1][-1]

    assert said in notes
    assert "submitted" not in student_page(course, mine, {})
