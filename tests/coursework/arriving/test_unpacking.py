"""Going through folders and zips: nothing is followed, nothing is unpacked to disk."""

import contextlib
import io
import os
import socket
import stat
import struct
import time
import zipfile
from dataclasses import replace

import pytest
from coursework.arriving import unpacking
from coursework.arriving.unpacking import Unpacking
from coursework.classes.course import Bounds
from coursework.errors import CourseError
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

BOUNDS = Bounds(file_bytes=10_000)


def look(*places, bounds=BOUNDS, **more):
    return list(Unpacking(places, bounds, **more))


def reasons(*places, bounds=BOUNDS):
    """What was not taken: name to reason."""
    return {found.name: found.reason for found in look(*places, bounds=bounds) if found.reason}


def taken(*places, bounds=BOUNDS):
    """What was taken: name to bytes."""
    return {found.name: found.raw for found in look(*places, bounds=bounds) if not found.reason}


def make_zip(target, members, how=zipfile.ZIP_DEFLATED):
    """A zip of names (or `ZipInfo`) to bytes."""
    with zipfile.ZipFile(target, "w", how) as archive:
        for name, raw in members.items():
            archive.writestr(name, raw, compress_type=how)
    return target


def zipped(members, **more):
    """The same as bytes."""
    target = io.BytesIO()
    make_zip(target, members, **more)
    return target.getvalue()


def test_folders_are_gone_through_in_order_of_names(tmp_path):
    for name in ("b/2.ipynb", "b/1.ipynb", "a.ipynb", "c d/é/deep.ipynb"):
        file = tmp_path / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(name)

    assert ["a.ipynb", "b/1.ipynb", "b/2.ipynb", "c d/é/deep.ipynb"] == list(taken(tmp_path))


def test_hidden_files_and_what_programs_leave_are_left_alone(tmp_path):
    names = (".hidden", ".git/config", ".ipynb_checkpoints/a.ipynb", "__MACOSX/a.ipynb", "a.ipynb")
    for name in names:
        file = tmp_path / "folder" / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(name)
    members = {f"x/{name}": name for name in names} | {"./y/b.ipynb": "kept"}
    archive = make_zip(tmp_path / "a.zip", members)

    assert ["a.ipynb"] == [found.name for found in look(tmp_path / "folder")]
    assert ["x/a.ipynb", "./y/b.ipynb"] == [found.name for found in look(archive)]


def test_links_are_listed_and_not_followed(tmp_path):
    """To a file, to a folder, to nothing, and round in a circle."""
    secret = tmp_path / "secret"
    secret.mkdir()
    (secret / "keys.ipynb").write_text("the keys")
    post = tmp_path / "post"
    post.mkdir()
    (post / "file.ipynb").symlink_to(secret / "keys.ipynb")
    (post / "folder").symlink_to(secret)
    (post / "nowhere").symlink_to(tmp_path / "nothing")
    (post / "circle").symlink_to(post)

    assert {} == taken(post)
    assert ["circle", "file.ipynb", "folder", "nowhere"] == list(reasons(post))
    assert set(reasons(post).values()) == {"It is a link to another place, not a file."}


def test_a_link_that_is_put_there_at_the_last_moment_is_not_followed(tmp_path, monkeypatch):
    """Listed as a file, then swapped: the opening itself refuses."""
    (tmp_path / "secret").write_text("the keys")
    post = tmp_path / "post"
    post.mkdir()
    (post / "a.ipynb").symlink_to(tmp_path / "secret")
    monkeypatch.setattr(unpacking, "is_link", lambda entry: False)

    assert [None] == [found.raw for found in look(post)]


def test_pipes_and_sockets_are_listed_and_not_waited_for(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    os.mkfifo("pipe.ipynb")
    with contextlib.closing(socket.socket(socket.AF_UNIX)) as one:
        one.bind("socket.ipynb")
        found = reasons(tmp_path)

    assert ["pipe.ipynb", "socket.ipynb"] == list(found)
    assert "a socket" in found["pipe.ipynb"]


def test_a_file_that_may_not_be_read_is_listed(tmp_path, monkeypatch):
    """The reason is the system's own; root may read everything, so the system is played here."""
    (tmp_path / "a.ipynb").write_text("a")
    (tmp_path / "b.ipynb").write_text("b")
    really = os.open

    def refuse(path, *rest, **more):
        if str(path).endswith("a.ipynb"):
            raise PermissionError(13, "Permission denied")
        return really(path, *rest, **more)

    monkeypatch.setattr(os, "open", refuse)

    assert {"a.ipynb": "The file cannot be opened (Permission denied)."} == reasons(tmp_path)
    assert {"b.ipynb": b"b"} == taken(tmp_path)


def test_a_folder_that_may_not_be_opened_is_listed(tmp_path, monkeypatch):
    (tmp_path / "locked").mkdir()
    (tmp_path / "a.ipynb").write_text("a")
    really = os.scandir

    def refuse(path):
        if str(path).endswith("locked"):
            raise PermissionError(13, "Permission denied")
        return really(path)

    monkeypatch.setattr(os, "scandir", refuse)

    assert {"locked": "The folder cannot be opened (Permission denied)."} == reasons(tmp_path)
    assert {"a.ipynb": b"a"} == taken(tmp_path)


def test_a_file_over_the_bound_is_listed_with_both_sizes(tmp_path):
    (tmp_path / "a.ipynb").write_bytes(b"x" * 10_001)
    (tmp_path / "b.ipynb").write_bytes(b"x" * 10_000)
    archive = make_zip(tmp_path / "c.zip", {"a": b"x" * 10_001, "b": b"x" * 10_000})

    for place, name in ((tmp_path, "a.ipynb"), (archive, "a")):
        assert (
            "The file is 10 kB long; at most 10 kB is taken (file_bytes)." == reasons(place)[name]
        )
    assert ["b.ipynb", "c.zip/b"] == list(taken(tmp_path))


def test_a_single_notebook_is_a_place_too(tmp_path):
    (tmp_path / "a.ipynb").write_text("a")

    assert {"a.ipynb": b"a"} == taken(tmp_path / "a.ipynb")


def test_a_place_that_is_not_there_is_refused_before_anything_is_read(tmp_path):
    (tmp_path / "a.ipynb").write_text("a")
    walk = iter(Unpacking([tmp_path, tmp_path / "gone"], BOUNDS))

    with pytest.raises(CourseError, match=r"no folder or file “.*gone”"):
        next(walk)


def test_a_folder_to_leave_is_left(tmp_path):
    (tmp_path / "class").mkdir()
    (tmp_path / "class" / "gradebook.db").write_text("marks")
    (tmp_path / "a.ipynb").write_text("a")

    assert ["a.ipynb"] == [found.name for found in look(tmp_path, leave=[tmp_path / "class"])]


def test_a_zip_is_known_by_its_beginning_not_by_its_name(tmp_path):
    make_zip(tmp_path / "download.part", {"x/a.ipynb": "a", "x/": ""})

    assert {"download.part/x/a.ipynb": b"a"} == taken(tmp_path)
    assert {"x/a.ipynb": b"a"} == taken(tmp_path / "download.part")


def test_a_zip_in_a_zip_is_opened_and_one_more_is_not(tmp_path):
    innermost = zipped({"c.ipynb": "c"})
    inner = zipped({"b.ipynb": "b", "more.zip": innermost})
    archive = make_zip(tmp_path / "a.zip", {"a.ipynb": "a", "BH-1.zip": inner})
    found = look(archive)

    assert {"a.ipynb": b"a", "BH-1.zip/b.ipynb": b"b"} == taken(archive)
    assert ["BH-1.zip/more.zip"] == list(reasons(archive))
    assert innermost == found[-1].raw


def test_a_word_processors_document_is_one_file(tmp_path):
    """Documents are zips inside; thirty lines about their parts would help nobody."""
    document = zipped({"[Content_Types].xml": "<", "word/document.xml": "<"})
    (tmp_path / "a.docx").write_bytes(document)
    (tmp_path / "b.odt").write_bytes(zipped({"mimetype": "x", "content.xml": "<"}))
    make_zip(tmp_path / "c.zip", {"a.docx": document})

    assert ["a.docx", "b.odt", "c.zip/a.docx"] == list(taken(tmp_path))


@pytest.mark.parametrize(
    "name", ["../a.ipynb", "x/../../a.ipynb", "/etc/passwd", "\\a", "..\\a", "C:\\a", "c:a", "x/.."]
)
def test_names_that_lead_out_of_the_folder_are_refused(tmp_path, name):
    archive = make_zip(tmp_path / "a.zip", {name: "a", "b.ipynb": "b"})

    assert {name: "Its name in the zip leads out of the folder it is unpacked to."} == (
        reasons(archive)
    )
    assert {"b.ipynb": b"b"} == taken(archive)


@pytest.mark.parametrize("kind", [stat.S_IFLNK, stat.S_IFIFO, stat.S_IFCHR])
def test_links_and_devices_in_a_zip_are_refused(tmp_path, kind):
    info = zipfile.ZipInfo("a.ipynb")
    info.external_attr = (kind | 0o644) << 16
    archive = make_zip(tmp_path / "a.zip", {info: "/etc/passwd", "b.ipynb": "b"})

    assert {"a.ipynb": "In the zip it is a link or a device, not a file."} == reasons(archive)
    assert {"b.ipynb": b"b"} == taken(archive)


def test_a_locked_file_in_a_zip_is_refused(tmp_path):
    """The first of the two flag bytes that say so, in both places where a zip has them."""
    raw = bytearray(zipped({"a.ipynb": "a"}))
    for signature, offset in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        raw[raw.index(signature) + offset] |= 1
    (tmp_path / "a.zip").write_bytes(raw)

    assert "locked with a password" in reasons(tmp_path)["a.zip/a.ipynb"]


@pytest.mark.parametrize("how", [zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA])
def test_unusual_packing_is_refused(tmp_path, how):
    """Their unpackers may ask for gigabytes on a word of the file."""
    archive = make_zip(tmp_path / "a.zip", {"a.ipynb": "a"}, how=how)

    assert "not opened here" in reasons(archive)["a.ipynb"]


def test_a_zip_with_too_many_entries_is_refused_whole(tmp_path, monkeypatch):
    monkeypatch.setattr(unpacking, "ENTRIES", 20)
    members = {f"{i}.ipynb": "a" for i in range(21)}
    archive = make_zip(tmp_path / "a.zip", members)
    good = make_zip(tmp_path / "b.zip", dict(list(members.items())[:20]))

    assert ["The zip has 21 entries; at most 20 are opened. Unpack it and take in the folder."] == (
        list(reasons(archive).values())
    )
    assert [archive.read_bytes()] == [found.raw for found in look(archive)]
    assert 20 == len(taken(good))


def test_a_students_own_zip_of_a_thousand_notebooks_is_one_line(tmp_path):
    """9,990 notebooks of one student were 9,990 lines; two hundred files are opened, not more."""
    many = zipped({f"{i}.ipynb": "a" for i in range(201)})
    some = zipped({f"{i}.ipynb": "a" for i in range(200)})
    archive = make_zip(tmp_path / "a.zip", {"BH-1.zip": many, "BH-2.zip": some})
    bounds = Bounds(file_bytes=30_000)

    assert {
        "BH-1.zip": "The zip has 201 entries; at most 200 are opened. Ask for the notebook alone."
    } == reasons(archive, bounds=bounds)
    assert 200 == len(taken(archive, bounds=bounds))


def test_a_zip_that_fills_the_disk_is_stopped_and_each_file_is_listed(tmp_path, monkeypatch):
    """By hand: a zip of some 8 kB may hold ten files of 10 kB, or twenty times itself: 160 kB."""
    monkeypatch.setattr(unpacking, "TIMES", 20)
    archive = make_zip(tmp_path / "a.zip", {f"{i:02d}": b"0" * 10_000 for i in range(60)})
    allowed = max(100_000, 20 * archive.stat().st_size) // 10_000
    found = look(archive)

    assert 60 == len(found)
    assert 10 < allowed < 60
    assert allowed == len(taken(archive))
    assert all("grows far too large" in reason for reason in reasons(archive).values())


def test_a_class_of_notebooks_shrinks_twentyfold_and_is_taken(tmp_path):
    """100 files of 10 kB that shrink to 5 %: a million bytes from fifty thousand."""
    member = os.urandom(500) + b"0" * 9_500
    archive = make_zip(tmp_path / "a.zip", {f"{i}": member for i in range(100)})

    assert archive.stat().st_size < 100_000
    assert 100 == len(taken(archive))


def test_a_zip_that_lies_about_a_size_gives_no_more_than_it_said(tmp_path):
    """The size is in two places; the unpacking stops at it and the check sum is wrong."""
    raw = bytearray(zipped({"a.ipynb": b"0" * 9_000, "b.ipynb": b"b"}))
    raw[22:26] = struct.pack("<I", 10)
    at = raw.index(b"PK\x01\x02") + 24
    raw[at : at + 4] = struct.pack("<I", 10)
    (tmp_path / "a.zip").write_bytes(raw)

    assert "damaged at this file" in reasons(tmp_path)["a.zip/a.ipynb"]
    assert {"a.zip/b.ipynb": b"b"} == taken(tmp_path)


def test_a_damaged_zip_is_kept_and_named(tmp_path):
    raw = zipped({"a.ipynb": b"a" * 100})
    (tmp_path / "cut.zip").write_bytes(raw[:60])

    assert {"cut.zip": "The zip is damaged: download it again."} == reasons(tmp_path)
    assert [raw[:60]] == [found.raw for found in look(tmp_path)]


@given(st.data())
@settings(
    max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
def test_a_zip_with_any_damage_gives_files_or_sentences(tmp_path, data):
    """Fuzz: bytes of a zip in a zip turned over; no error gets out, nothing grows."""
    raw = bytearray(zipped({"a.ipynb": b"a" * 300, "b.zip": zipped({"c.ipynb": b"c" * 300})}))
    for at in data.draw(st.lists(st.integers(0, len(raw) - 1), max_size=8)):
        raw[at] = data.draw(st.integers(0, 255))
    (tmp_path / "a.zip").write_bytes(raw[: data.draw(st.integers(1, len(raw)))])
    for found in look(tmp_path):
        assert found.raw is not None or found.reason


def test_the_time_of_a_file_in_a_zip_is_the_clock_on_the_wall(tmp_path):
    """Referee: `time.mktime`, for 18:30:06 on 2 October 2026 wherever this runs."""
    info = zipfile.ZipInfo("a.ipynb", (2026, 10, 2, 18, 30, 6))
    archive = make_zip(tmp_path / "a.zip", {info: "a"})

    assert time.mktime((2026, 10, 2, 18, 30, 6, 0, 0, -1)) == look(archive)[0].seconds


def test_an_exact_time_beside_it_is_preferred(tmp_path):
    """The extra field 5455 holds seconds since 1970; one of another kind comes before it."""
    info = zipfile.ZipInfo("a.ipynb", (2026, 10, 2, 18, 30, 6))
    info.extra = struct.pack("<HHI", 0x7777, 4, 9) + struct.pack("<HHBi", 0x5455, 5, 1, 1790000001)
    archive = make_zip(tmp_path / "a.zip", {info: "a"})

    assert 1790000001 == look(archive)[0].seconds


def test_a_loose_files_time_is_its_own_word(tmp_path):
    (tmp_path / "a.ipynb").write_text("a")
    os.utime(tmp_path / "a.ipynb", (1790000001.75, 1790000001.75))

    assert (None, 1790000001) == (look(tmp_path)[0].seconds, look(tmp_path)[0].says_seconds)


@pytest.mark.parametrize("when", [(1980, 1, 1, 0, 0, 0), (1980, 0, 0, 0, 0, 0)])
def test_a_zip_without_times_has_none(tmp_path, when):
    """Programs that know no time write the first one there is, or none at all."""
    info = zipfile.ZipInfo("a.ipynb")
    info.date_time = when
    archive = make_zip(tmp_path / "a.zip", {info: "a"})
    (tmp_path / "old").write_text("a")
    os.utime(tmp_path / "old", (0, 0))

    assert look(archive)[0].seconds is None
    assert look(tmp_path / "old")[0].says_seconds is None


def test_the_total_is_right_at_the_end_whatever_was_opened(tmp_path):
    inner = zipped({"b.ipynb": "b", "c.ipynb": "c", ".hidden": "d"})
    make_zip(tmp_path / "a.zip", {"a.ipynb": "a", "BH-1.zip": inner, "empty.zip": zipped({})})
    (tmp_path / "z.ipynb").write_text("z")
    walk = Unpacking([tmp_path, tmp_path / "z.ipynb"], BOUNDS)

    assert len(list(walk)) == 6 == walk.total


def test_the_bounds_are_the_courses_own(tmp_path):
    (tmp_path / "a").write_bytes(b"x" * 11)

    assert {} == taken(tmp_path, bounds=replace(BOUNDS, file_bytes=10))
