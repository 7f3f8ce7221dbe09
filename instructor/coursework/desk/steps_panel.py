"""The desk's panel for the steps of a set: hand out, take in, mark, hand back, report."""

import os
import tempfile
from pathlib import Path

import ipywidgets as widgets

from coursework.arriving.take_in import take_in
from coursework.arriving.taken_in_words import AT_THE_DESK
from coursework.arriving.taken_in_words import in_words as taken_in_words
from coursework.desk.parts import BESIDE
from coursework.desk.showing import PAGE, WIDE
from coursework.errors import CourseError
from coursework.marking.mark_set import mark_set
from coursework.marking.room.door import not_held_back
from coursework.marking.words import marked_in_words
from coursework.reports.hand_back import hand_back
from coursework.reports.pack import pack
from coursework.reports.pack_words import in_words
from coursework.reports.report import report
from coursework.sets.class_keys import newer_key
from coursework.sets.hand_out import hand_out
from coursework.sets.key_text import set_labels
from kitchenmath.panels.frame import below_each_other

KEPT_ITS_KEY = (
    "It is the one that went out first: the class keeps its key. The kit has a newer one; look "
    "under “What you decide” whose numbers would change."
)


def steps_panel(desk):
    """A button and a progress bar for each step of a set.

    Parameters
    ----------
    desk : Desk

    Returns
    -------
    ipywidgets VBox
        With attributes `place` and `upload`, where hand-ins are named, and `folders`.
    """
    place = widgets.Text(
        description="Folder or zip",
        placeholder="as downloaded, such as Downloads/hand-ins.zip",
        style=BESIDE,
        layout=WIDE,
    )
    upload = widgets.FileUpload(
        description="Or choose files", multiple=True, layout={"width": "260px"}
    )
    folders = widgets.Checkbox(
        description="In the one file: a folder for each student", indent=False, layout=WIDE
    )

    def taking(progress):
        taken = _take_in(desk.course, place.value.strip(), upload.value, progress)
        upload.value = ()  # or the next take-in would read them again
        told = taken_in_words(taken, AT_THE_DESK, desk.course.roster, set_labels())
        return "\n".join([told, *_of_other_sets(taken, desk.sets.value)])

    panel = below_each_other(
        [
            desk.step("Hand out", lambda progress: _hand_out(desk, progress)),
            place,
            upload,
            desk.step("Take in", taking),
            desk.step("Mark", lambda progress: _mark(desk, progress)),
            desk.step("Hand back", lambda progress: _hand_back(desk, progress)),
            folders,
            desk.step("Hand back as one file", lambda progress: _pack(desk, folders, progress)),
            desk.step("Report", lambda progress: _report(desk, progress)),
        ],
        PAGE,
    )
    panel.place, panel.upload, panel.folders = place, upload, folders
    return panel


def _hand_out(desk, progress):
    course, set_id = desk.course, desk.sets.value
    newer = newer_key(course, set_id)
    words = f"Give this notebook to the class: {hand_out(course, set_id, progress)}"
    return f"{words}\n{KEPT_ITS_KEY}" if newer else words


def _take_in(course, typed, chosen, progress):
    """Take in a folder or zip as one sees it from home, and the files that were chosen."""
    # The kernel stands in the kit's own folder.
    places = [Path.home() / Path(typed).expanduser()] if typed else []
    with tempfile.TemporaryDirectory() as folder:
        for number, file in enumerate(chosen):
            saved = Path(folder) / str(number) / Path(file["name"]).name
            saved.parent.mkdir()
            saved.write_bytes(bytes(file["content"]))
            stamp = file["last_modified"].timestamp()
            os.utime(saved, (stamp, stamp))
        if chosen:
            places.append(Path(folder))
        if not places:
            raise CourseError("Say where the hand-ins are: a folder or a zip, or choose files.")
        return take_in(course, places, progress)


def _of_other_sets(taken, chosen):
    """What was taken in for another set than the one that is open: it must not go unseen."""
    others = [one for one in taken.new if one.set_id not in ("", chosen)]
    called = set_labels() if others else {}
    return [
        f"Another set: {one.name} says “{called.get(one.set_id, one.set_id)}”. It is placed there, "
        f"with {one.student}."
        for one in others
    ]


def _mark(desk, progress):
    marked = mark_set(desk.course, desk.sets.value, progress)
    return "\n".join(each for each in (marked_in_words(marked), not_held_back()) if each)


def _hand_back(desk, progress):
    pages = hand_back(desk.course, desk.sets.value, progress)
    where = "a folder for each student in the class's folder “feedback”"
    return f"{len(pages)} pages, {where}.\nThe first: {pages[0]}"


def _pack(desk, folders, progress):
    return in_words(pack(desk.course, desk.sets.value, folders.value, progress))


def _report(desk, progress):
    sheet, page = report(desk.course, desk.sets.value, progress)
    book = sheet.with_suffix(".xlsx")
    return f"Mark sheet: {sheet}\nThe same as a spreadsheet: {book}\nThe class's page: {page}"
