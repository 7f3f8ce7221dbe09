"""Every file of a folder or a zip as it was downloaded, one after the other.

Nothing is unpacked to disk and no name is used as a path. What is not taken is given with the
reason in a sentence, so that nothing vanishes in silence.
"""

import io
import os
import re
import stat
import struct
import zipfile
import zlib
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path

from coursework.arriving import words
from coursework.arriving.reading_in import megabytes
from coursework.errors import CourseError

ENTRIES = 10_000
OWN_ENTRIES = 200  # of a student's own zip, where one notebook is wanted
# A zip may hold this many of the largest hand-ins, or this many times its own size: whichever is
# more. A class's notebooks shrink five- to twentyfold; a zip made to fill a disk, a thousandfold.
LARGEST = 10
TIMES = 100
LEFT_ALONE = ("__MACOSX",)  # and every name that begins with a dot
BROKEN_ZIP = (zipfile.BadZipFile, zlib.error, EOFError, ValueError, RuntimeError, OSError,
              NotImplementedError, OverflowError, LookupError, struct.error)  # fmt: skip
# A zip of a program that knows no time says 1 January 1980.
FIRST_TIME = datetime(1980, 1, 2).timestamp()


class NotTaken(Exception):
    """Why one file is not taken; the message is the sentence."""


@dataclass(frozen=True)
class Found:
    """One file that was found.

    Attributes
    ----------
    place, name : str
        Where it was: the folder or zip that was given, and the name inside it.
    seconds : int or None
        When the archive around it was given it, in seconds since 1970: the word of whoever made
        the archive. None for a loose file, and where the archive says nothing that makes sense.
    says_seconds : int or None
        What the file says of itself: its time stamp, or the one in a zip of the student's own.
    archive : str
        The name of the zip that it came in, "" where that was named as a place; None outside one.
    outer : str
        Its name there, or that of the student's own zip that it came in.
    raw : bytes or None
        The file; None when it was not taken.
    reason : str
        Why it cannot be a hand-in; empty for one that may be.
    """

    place: str
    name: str
    seconds: int | None = None
    raw: bytes | None = None
    reason: str = ""
    says_seconds: int | None = None
    archive: str | None = None
    outer: str = ""


class Unpacking:
    """Going through places: `for found in Unpacking([folder, archive], bounds)`.

    Hidden files and folders are left alone. `total` is the number of files known so far: it is
    right for a folder, and grows when a zip is opened.
    """

    def __init__(self, places, bounds, leave=()):
        self.places, self.bounds, self.total = places, bounds, 0
        self.leave = {os.path.realpath(folder) for folder in leave}

    def __iter__(self):
        paths = [Path(place).expanduser() for place in self.places]
        for path in paths:
            if not path.exists():
                raise CourseError(f"there is no folder or file “{path}”: look at the name again.")
        for path in paths:
            if path.is_dir():
                yield from self.folder(path)
            else:
                self.total += 1
                yield from self.file(str(path.parent.resolve() / path.name), "", path.resolve())

    def folder(self, root):
        """All files below a folder, in the order of their names; links are not followed."""
        files, waiting = [], [root]
        while waiting:
            here = waiting.pop()
            try:
                entries = list(os.scandir(here))
            except OSError as error:
                files.append((here, words.FOLDER_CLOSED.format(why=error.strerror)))
                continue
            for entry in entries:
                if hidden(entry.name):
                    continue
                if is_link(entry):
                    files.append((Path(entry), words.LINK))
                elif not entry.is_dir():
                    files.append((Path(entry), ""))
                elif os.path.realpath(entry) not in self.leave:
                    waiting.append(Path(entry))
        self.total += len(files)
        place = str(root.resolve())
        for path, reason in sorted(files):
            name = path.relative_to(root).as_posix()
            if reason:
                yield Found(place, name, reason=reason)
            else:
                yield from self.file(place, name, path)

    def file(self, place, name, path):
        """One file of a folder, or what is in it if it is a zip."""
        try:
            with open_plain(path) as file:
                says = sensible(os.fstat(file.fileno()).st_mtime)
                if looks_like_zip(file.read(4)) and not is_document(file):
                    whole = Found(place, name or path.name, says_seconds=says)
                    yield from self.archive(whole, name, file, inside=0)
                    return
                file.seek(0)
                raw = file.read(self.bounds.file_bytes + 1)
                size = os.fstat(file.fileno()).st_size
            self.refuse_long(max(size, len(raw)))
        except NotTaken as refusal:
            yield Found(place, name, reason=str(refusal))
        except OSError as error:
            yield Found(place, name, reason=words.FILE_CLOSED.format(why=error.strerror))
        else:
            name = name or path.name
            yield Found(place, name, raw=raw, says_seconds=says, outer=name)

    def refuse_long(self, size):
        """Refuse a file that is longer than a hand-in may be."""
        if size > self.bounds.file_bytes:
            limit = megabytes(self.bounds.file_bytes)
            raise NotTaken(
                f"The file is {megabytes(size)} long; at most {limit} is taken (file_bytes)."
            )

    def archive(self, whole, name, file, inside):
        """The files of an opened zip, which is `whole`; `inside` counts the zips around it."""
        try:
            archive = zipfile.ZipFile(file)
            infos = [info for info in archive.infolist() if not info.is_dir()]
            refuse_many(len(archive.infolist()), inside)
        except (NotTaken, *BROKEN_ZIP) as error:
            reason = str(error) if isinstance(error, NotTaken) else words.DAMAGED
            yield replace(whole, raw=self.all_of(file), reason=reason)
            return
        infos = [info for info in infos if unsafe(info.filename) or not hidden(info.filename)]
        if not infos:
            yield replace(whole, raw=self.all_of(file), reason=words.EMPTY)
            return
        self.total += len(infos) - 1
        if not inside:
            size = file.seek(0, io.SEEK_END)
            self.left = max(LARGEST * self.bounds.file_bytes, TIMES * size)
        with archive:
            for info in infos:
                yield from self.member(_in_zip(whole, name, info, inside), archive, info, inside)

    def member(self, one, archive, info, inside):
        """One file of a zip, or what is in it if it is a zip itself."""
        try:
            raw = self.read_member(archive, info)
        except NotTaken as refusal:
            yield replace(one, reason=str(refusal))
            return
        file = io.BytesIO(raw)
        if not looks_like_zip(raw) or is_document(file):
            yield replace(one, raw=raw)
        elif inside:
            yield replace(one, raw=raw, reason=words.TOO_DEEP)
        else:
            yield from self.archive(one, one.name, file, inside=1)

    def read_member(self, archive, info):
        """The bytes of one file in a zip, or `NotTaken`."""
        if unsafe(info.filename):
            raise NotTaken("Its name in the zip leads out of the folder it is unpacked to.")
        if stat.S_IFMT(info.external_attr >> 16) not in (0, stat.S_IFREG):
            raise NotTaken("In the zip it is a link or a device, not a file.")
        if info.flag_bits & 1:
            raise NotTaken("In the zip it is locked with a password: ask for it without one.")
        if info.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
            raise NotTaken("It is packed in a way that is not opened here: unpack the zip first.")
        self.refuse_long(info.file_size)
        if info.file_size > self.left:
            raise NotTaken("The zip grows far too large when it is unpacked; this was left in it.")
        try:
            with archive.open(info) as file:
                raw = file.read(info.file_size + 1)
        except BROKEN_ZIP:
            raise NotTaken("The zip is damaged at this file: download it again.") from None
        self.left -= len(raw)
        return raw

    def all_of(self, file):
        """An opened zip as bytes, to be kept; None when it is longer than a hand-in may be."""
        try:
            file.seek(0)
            raw = file.read(self.bounds.file_bytes + 1)
        except OSError:
            return None
        return raw if len(raw) <= self.bounds.file_bytes else None


def _in_zip(whole, name, info, inside):
    """What is known of one file of a zip before it is opened."""
    member = f"{name}/{info.filename}" if name else info.filename
    if inside:  # the student's own zip: its times are the student's word
        return replace(whole, name=member, says_seconds=time_of(info))
    return replace(
        whole, name=member, outer=member, archive=name, seconds=time_of(info), says_seconds=None
    )


def refuse_many(entries, inside):
    """Refuse a zip of more files than are opened; a student's own holds one notebook, or some."""
    most = OWN_ENTRIES if inside else ENTRIES
    if entries > most:
        raise NotTaken(words.too_many(entries, most, inside))


def open_plain(path):
    """Open a regular file for reading, without following a link or waiting on a pipe."""
    flags = os.O_RDONLY
    for name in ("O_NOFOLLOW", "O_NONBLOCK", "O_BINARY", "O_CLOEXEC"):
        flags |= getattr(os, name, 0)  # not every system has each
    file = os.fdopen(os.open(path, flags), "rb")
    if not stat.S_ISREG(os.fstat(file.fileno()).st_mode):
        file.close()
        raise NotTaken("It is a pipe, a socket or a device, not a file.")
    return file


def is_link(entry):
    """Whether a folder's entry is a link, or on Windows a folder that stands for another."""
    if entry.is_symlink() or os.name != "nt":
        return entry.is_symlink()
    return entry.stat(follow_symlinks=False).st_reparse_tag == stat.IO_REPARSE_TAG_MOUNT_POINT


def hidden(name):
    """Whether a name, or a folder on the way to it, is one that programs leave for themselves."""
    parts = [part for part in re.split(r"[/\\]", name) if part != "."]
    return any(part.startswith(".") or part in LEFT_ALONE for part in parts)


def unsafe(name):
    """Whether a name in a zip leads out of the folder it would be unpacked to."""
    return bool(re.match(r"[/\\]|[A-Za-z]:", name)) or ".." in re.split(r"[/\\]", name)


def looks_like_zip(beginning):
    """Whether bytes begin as a zip does, be it an empty one."""
    return beginning[:4] in (b"PK\x03\x04", b"PK\x05\x06")


def is_document(file):
    """Whether a zip is a word processor's or spreadsheet's document."""
    try:
        names = zipfile.ZipFile(file).namelist()[:ENTRIES]
    except BROKEN_ZIP:
        return False
    return "[Content_Types].xml" in names or "mimetype" in names


def time_of(info):
    """When a file in a zip was last changed, in seconds since 1970; None where it says nothing."""
    extra = info.extra
    while len(extra) >= 9:
        kind, size = (int.from_bytes(extra[at : at + 2], "little") for at in (0, 2))
        if kind == 0x5455 and size >= 5 and extra[4] & 1:  # the exact time, beside the zip's own
            return sensible(int.from_bytes(extra[5:9], "little", signed=True))
        extra = extra[4 + size :]
    try:
        return sensible(datetime(*info.date_time).timestamp())  # the clock on the wall
    except (ValueError, OverflowError, OSError):
        return None


def sensible(seconds):
    """A time in whole seconds; None for one from before there were notebooks."""
    return int(seconds) if seconds >= FIRST_TIME else None
