"""What a class goes through, on the command line: handed out, taken in, marked, reported."""

from pathlib import Path

from coursework.progress import Progress


def add_commands(class_step):
    """Add these commands to the parser.

    Parameters
    ----------
    class_step : callable
        Takes a name, what to do with the class and the options, and a line of help; gives back the
        command's own parser.
    """
    made = {}
    for name, do, typed, help_ in COMMANDS:
        made[name] = class_step(name, do, help_)
        for each in typed.split():
            made[name].add_argument(each, help="such as 04-buy-enough" if each == "set" else None)
    made["take-in"].add_argument("places", nargs="+", type=Path, help="folders or zips")
    made["mark"].add_argument(
        "--cluster", metavar="ADDRESS", help="mark on a Dask cluster, as in tcp://192.0.2.7:8786"
    )
    _add_to_reteach(made["reteach"])
    made["term-marks"].add_argument(
        "--practical", type=Path, help="CSV: student_number and a column a mark"
    )
    made["oneroster"].add_argument(
        "--take", type=Path, metavar="ZIP", help="take results in from there, as practical marks"
    )
    made["pack"].add_argument("--folders", action="store_true", help="a folder for each student")


def _add_to_reteach(command):
    command.add_argument("students", nargs="*", help="student numbers: a sheet for each of them")
    command.add_argument("--each", action="store_true", help="for each student who lacks something")


def _hand_out(course, options):
    from coursework.sets.class_keys import newer_key
    from coursework.sets.hand_out import hand_out

    with Progress("Handing out") as progress:
        newer = newer_key(course, options.set)
        file = hand_out(course, options.set, progress)
    print(f"Give this notebook to the class: {file}")
    if newer:
        print("It is the one that went out first. The kit has a newer key; whose numbers would "
              f"change: newer-key {options.set}")  # fmt: skip


def _take_in(course, options):
    from coursework.arriving.take_in import take_in
    from coursework.arriving.taken_in_words import in_words

    with Progress("Taking in") as progress:
        taken = take_in(course, options.places, progress)
    print(in_words(taken))


def _mark(course, options):
    from coursework.marking.mark_set import mark_set
    from coursework.marking.room.door import not_held_back
    from coursework.marking.words import marked_in_words
    from coursework.reports.in_lines import marks_in_lines

    if options.cluster:
        from coursework.marking.cluster import cluster

        with cluster(options.cluster) as executor, Progress("Marking") as progress:
            marked = mark_set(course, options.set, progress, executor, executor.workers)
            weak = executor.not_held_back()
    else:
        with Progress("Marking") as progress:
            marked = mark_set(course, options.set, progress)
        weak = not_held_back()
    print(f"{marks_in_lines(course, options.set)}\n\n{marked_in_words(marked)}")
    if weak:
        print(f"\n{weak}")


def _hand_back(course, options):
    from coursework.reports.hand_back import hand_back

    with Progress("Handing back") as progress:
        pages = hand_back(course, options.set, progress)
    print(f"{len(pages)} pages, one in each student's folder below {course.folder / 'feedback'}")


def _report(course, options):
    from coursework.reports.report import report

    with Progress("Reporting") as progress:
        sheet, page = report(course, options.set, progress)
    print(f"Mark sheet: {sheet}\nThe class's page: {page}")


def _skills(course, _):
    from coursework.reports.skills_page import told

    with Progress("Counting skills") as progress:
        words = told(course, progress)
    print(words)


def _reteach(course, options):
    from coursework.skills.reteach import told

    with Progress("Making sheets") as progress:
        words = told(course, options.students, options.each, progress)
    print(words)


def _term_marks(course, options):
    from coursework.reports.term_marks import said, term_marks

    with Progress("Making the mark book") as progress:
        written = term_marks(course, options.practical, progress)
    print(said(*written))


def _oneroster(course, options):
    from coursework.reports.exchange import export_exchange
    from coursework.terms.results_in import in_words, take_results

    if options.take:
        print(in_words(take_results(course, options.take)))
        return
    print(f"Roster and results: {export_exchange(course)}")


def _pack(course, options):
    from coursework.reports.pack import pack
    from coursework.reports.pack_words import in_words

    with Progress("Packing") as progress:
        packed = pack(course, options.set, options.folders, progress)
    print(in_words(packed))


def _student(course, options):
    from coursework.reports.student_view import student_view
    from coursework.reports.student_words import in_lines

    print(in_lines(student_view(course, options.student), course.roster))


# Command, what it does, what is typed behind it, help.
COMMANDS = (
    ("hand-out", _hand_out, "set", "make a set's notebook for the class"),
    ("take-in", _take_in, "", "take in a folder or a zip of hand-ins, as downloaded"),
    ("mark", _mark, "set", "mark all hand-ins of a set"),
    ("hand-back", _hand_back, "set", "write one page for each student"),
    ("report", _report, "set", "write the mark sheet and the class's page"),
    ("skills", _skills, "", "write what is not got over all sets, by skill and by student"),
    ("reteach", _reteach, "", "make a practice notebook on what is not got, for the class"),
    ("term-marks", _term_marks, "", "write the term's mark book over all sets"),
    ("oneroster", _oneroster, "", "write roster and results in the open OneRoster form"),
    ("pack", _pack, "set", "write a page for each student, and pack all in one zip"),
    ("student", _student, "student", "show all that is known of a student"),
)  # fmt: skip
