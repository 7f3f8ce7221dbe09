"""The inbox on the command line: list what has no place, and place what is sure."""

from coursework.words import plural

__all__ = ["add_commands"]


def add_commands(class_step):
    """Add the command `inbox` to the parser.

    Parameters
    ----------
    class_step : callable
        Takes a name, what to do with the class and the options, and a line of help; gives back the
        command's own parser.
    """
    command = class_step("inbox", _tell, "list files without a place, and whose they may be")
    command.add_argument("--set", default="", help="the set of those that do not say theirs")
    command.add_argument("--place-sure", action="store_true", help="place those that are sure")


def _tell(course, options):
    print(_inbox(course, options))


def _inbox(course, options):
    from coursework.arriving.inbox import in_words, inbox

    waiting = inbox(course, options.set)
    if options.place_sure:
        return _placed(course, waiting)
    lines = []
    for one in waiting:
        lines += [one.arrival.name, *(f"  {each}" for each in in_words(one, course.roster))]
    return "\n".join(lines) or "Every file has its place."


def _placed(course, waiting):
    """Place what is sure; what meets another hand-in is left for a look."""
    from coursework.arriving.inbox import place_many, replaced_by, sure_placings

    placings = sure_placings(waiting)
    met = replaced_by(course, placings)
    free = [one for one in placings if one not in met]
    place_many(course, free)
    left = len(waiting) - len(free)
    return (
        f"{plural(len(free), 'file is', 'files are')} placed, {left} left. "
        f"{plural(len(met), 'of them meets', 'of them meet')} another hand-in: see them at the "
        "desk, or type python3 instructor place."
    )
