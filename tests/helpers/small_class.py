"""Seven hand-ins of the demonstration class, half marked: for tests that stop and mark again."""

import csv
import shutil

from coursework.arriving.take_in import take_in
from coursework.csv_sheets import sheet_as_csv
from coursework.demo import play
from coursework.gradebook.points import all_marks, enter_human
from coursework.marking.mark_set import mark_set
from coursework.records.copies import with_copies
from coursework.records.reading import usable_records
from coursework.reports.sheet import mark_sheet

from tests.helpers.filled_in import SET

SMALL = ("BH-1001", "BH-1002", "BH-1003", "BH-1005", "BH-1007", "BH-1011", "BH-1021")


def made(folder):
    """Seven hand-ins; three were marked before, two of them have a human mark, one is new since."""
    course, places = play(folder)
    take_in(course, places)
    shutil.rmtree(course.folder / "post")
    shutil.rmtree(course.arrived)
    aside = course.folder.parent / "aside"
    for folder in list((course.folder / "submitted").iterdir()):
        if folder.name not in SMALL[:3]:
            shutil.move(folder, aside / folder.name)
    mark_set(course, SET)
    enter_human(course, SET, SMALL[0], "q6", 2.5, "Well reasoned.")
    enter_human(course, SET, SMALL[1], "q1", 0.5)
    for student in SMALL[3:]:
        shutil.move(aside / student, course.folder / "submitted" / student)
    again = course.submitted(SET, SMALL[0])
    again.write_bytes(again.read_bytes().replace(b"q1 = ", b"q1 =  "))
    return course


def outcome(course):
    """All that a marking leaves and that counts: marks, sheet, records, our marked copies."""
    records, odd = usable_records(course, SET)
    sheet = sheet_as_csv(mark_sheet(course, SET, with_copies(records), {}))
    copies = {
        str(file.relative_to(course.folder)): file.read_bytes()
        for place in ("marks", "autograded")
        for file in sorted((course.folder / place).rglob("*"))
        if file.is_file()
    }
    return {"marks": sorted(all_marks(course)), "sheet": sheet, "files": copies, "odd": odd}


def correct_key(course):
    """From now on slips that are worth 1 point are worth 1.5, as if the key was corrected."""
    text = course.key(SET).read_text("utf-8")
    assert "worth=1," in text
    course.key(SET).write_text(text.replace("worth=1,", "worth=1.5,"), "utf-8")


def slips_worth(course, points):
    """Student and question of each slip that earned so many points."""
    return [
        (record.student, answered.question)
        for record in usable_records(course, SET)[0]
        for answered in record.answered
        if answered.outcome == "slip" and answered.points == points
    ]


def listed(course):
    """The lines of the list of changes, without its first."""
    file = course.reports / f"{SET}-changes.csv"
    if not file.is_file() or not file.stat().st_size:  # killed between opening and writing it
        return []
    text = file.read_bytes().decode("utf-8")
    assert text.startswith("\ufefftime,student,question,before,after\r\n")
    assert text.endswith("\r\n")
    return list(csv.reader(text.splitlines()))[1:]
