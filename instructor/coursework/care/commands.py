"""Care for a class's data on the command line: erase, export, back up, restore, discard."""

from pathlib import Path

from coursework.progress import Progress


def add_commands(class_step):
    """Add those that act on a class to the parser.

    Parameters
    ----------
    class_step : callable
        Takes a name, what to do with the class and the options, and a line of help; gives back the
        command's own parser.
    """
    erase = class_step(
        "erase", _erase, "erase a student from a class, and say what went and what still names them"
    )
    erase.add_argument("student", help="the student number")
    erase.add_argument("--sure", action="store_true", help="without this it only says what it does")
    export = class_step("export", _export, "pack all that a class holds of one student into a zip")
    export.add_argument("student", help="the student number")
    back = class_step("back-up", _back_up, "pack a whole class into one file")
    away = class_step(
        "archive", _archive, "pack a class into one file, try it, and take the class off the list"
    )
    away.add_argument("--sure", action="store_true", help="without this it only says what it does")
    for command in (export, back, away):
        command.add_argument("--to", type=Path, help="a folder or a file")
    gone = class_step(
        "discard", _discard, "discard copies of students' work that are past their stated time"
    )
    gone.add_argument("--sure", action="store_true", help="without this it only shows them")


def add_restore(step):
    """Add the command `restore`, which makes a class.

    Parameters
    ----------
    step : callable
        Takes a name, what to do with the options, and a line of help; gives back the parser.
    """
    again = step("restore", _restore, "unpack a class that was backed up, here or elsewhere")
    again.add_argument("file", type=Path)
    again.add_argument("--name", help="another name for the restored class")


def _erase(course, options):
    from coursework.care.erasing import erase_student, still_named

    if not options.sure:
        name = course.roster.get(options.student, "")
        found = still_named(course, options.student, name)
        print("\n".join([f"These files of “{course.name}” name {options.student}:", *found]))
        print("\nNothing was erased. Type it again with --sure to erase; it cannot be taken back.")
        return
    print(in_words(erase_student(course, options.student)))


def _archive(course, options):
    from coursework.care.putting_away import archive

    name = course.folder.name
    if not options.sure:
        print(f"“{name}” would go into one file and leave {course.folder.parent}. The file is "
              "tried first, by restoring it. Type it again with --sure.")  # fmt: skip
        return
    with Progress("Archiving") as progress:
        file = archive(course, options.to, progress)
    print(archived_in_words(course.name, file))


def archived_in_words(name, file):
    """That a class is archived, for the terminal and for the desk.

    Parameters
    ----------
    name : str
    file : Path

    Returns
    -------
    str
    """
    return (
        f"“{name}” is off the list. The file was tried: it brings back every file, mark and "
        f"decision. Keep it as private as the class: {file}"
    )


def _discard(course, options):
    from coursework.care.discarded_words import counted
    from coursework.care.discarded_words import in_words as kept_in_words
    from coursework.care.discarding import discard, kept_until, past_their_time

    past = past_their_time(course)
    print(kept_in_words(kept_until(course), past))
    if past and options.sure:
        print(f"Discarded; decision {discard(course, past, counted(past)).number} in the journal.")
    elif past:
        print("Nothing is discarded yet. Type it again with --sure; it cannot be taken back.")


def in_words(erased):
    """What was erased, and what is left, for the terminal and for the desk.

    Parameters
    ----------
    erased : Erased

    Returns
    -------
    str
    """
    lines = [f"{erased.name or erased.student} ({erased.student}) is erased. Gone:"]
    lines += [f"  {place}" for place in erased.gone]
    lines.append(f"  gradebook: {erased.marks} marks and remarks")
    if erased.left:
        lines += ["These files still name them; look at each:"]
        lines += [f"  {place}" for place in erased.left]
    else:
        lines.append("Nothing in the class's folder names them any more.")
    lines.append(
        "Write mark sheets and pages again. Backups that you made earlier still hold them."
    )
    return "\n".join(lines)


def _export(course, options):
    from coursework.care.archive import export_student

    print(f"All of {options.student}: {export_student(course, options.student, options.to)}")


def _back_up(course, options):
    from coursework.care.archive import back_up

    with Progress("Backing up") as progress:
        file = back_up(course, options.to, progress)
    print(f"The class is in {file}. Keep it as private as the class.")


def _restore(options):
    from coursework.care.archive import restore

    with Progress("Restoring") as progress:
        course = restore(options.file, options.name, progress=progress)
    print(f"Class “{course.name}” with {len(course.roster)} students is in {course.folder}")
