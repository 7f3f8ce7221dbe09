"""Write the term's mark book: a sheet for the office and a page; each writing keeps the earlier."""

from dataclasses import replace

from coursework.classes.one_at_a_time import one_at_a_time
from coursework.reports.office import save_xlsx
from coursework.reports.page import page
from coursework.reports.term_page import as_csv, rows, shown
from coursework.safe_files import keep_earlier, save
from coursework.terms.practical import take_practical
from coursework.terms.term_book import term_book

__all__ = ["said", "term_marks"]


def term_marks(course, practical=None, progress=None, now=None):
    """Write the mark book: a sheet for the office and a page for the instructor.

    An earlier sheet or page that was different is kept.

    Parameters
    ----------
    course : Course
    practical : Path, optional
        A CSV of practical marks; without it the one that was taken last counts.
    progress : callable, optional
        Called with (done, total, text).
    now : float, optional
        Seconds since 1970, in place of the clock.

    Returns
    -------
    Path
        The sheet, for a spreadsheet.
    Path
        The page, for a browser.
    TermBook

    Raises
    ------
    CourseError
        When there is no set and no practical mark yet, the course file names a set that there is
        not, a file cannot be read or written, or another step is at work in this class.
    """
    with one_at_a_time(course, "making the mark book"):
        taken = take_practical(course, practical).odd if practical is not None else ()
        book = term_book(course, progress, now)
        look = tuple(dict.fromkeys([*taken, *book.to_look_at]))
        return _written(course, replace(book, to_look_at=look))


def _written(course, book):
    """The files of a mark book; what stood there before is kept where it was different."""
    files = course.reports / "term-marks.csv", course.reports / "term-marks.html"
    texts = as_csv(book, course.country), page("term.html", **shown(course, book))
    for file, text, encoding in zip(files, texts, ("utf-8-sig", "utf-8"), strict=True):
        if file.is_file() and file.read_bytes() != text.encode(encoding, "replace"):
            keep_earlier(course.folder, file)
        save(file, text, encoding)
    save_xlsx(files[0], rows(book), "term")
    return *files, book


def said(sheet, file, book):
    """What was written, and what to look at, for desk and terminal.

    Parameters
    ----------
    sheet, file : Path
    book : TermBook

    Returns
    -------
    str
    """
    lines = [f"Mark book: {sheet}", f"The term's page: {file}"]
    if book.to_look_at:
        lines += ["To look at:", *(f"  {sentence}" for sentence in book.to_look_at)]
    return "\n".join(lines)
