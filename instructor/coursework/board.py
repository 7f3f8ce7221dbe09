"""`python3 instructor board PHOTO…`: trays in photos, as a table and a picture each."""

from pathlib import Path

from coursework.errors import CourseError
from kitchenmath.errors import KitchenError
from kitchenmath.units.registry import Q_


def add_board(step):
    """Add the command to those that there are.

    Parameters
    ----------
    step : callable
        Takes a name, what to do and a help text; gives the command's own parser.
    """
    command = step("board", board, "measure cut pieces in photos of the printed mat")
    command.add_argument("photos", nargs="+", type=Path, help="JPEG or PNG")
    command.add_argument("--cut", metavar="NAME", help="judge against it, such as brunoise")
    command.add_argument("--within", type=float, metavar="MM", help="on size within ± so many mm")
    command.add_argument(
        "--lines", nargs=2, type=float, metavar="MM",
        help="how long the mat's two lines are under a ruler",
    )  # fmt: skip


def board(options):
    """Measure the photos one by one, print a table and write a picture beside each.

    Parameters
    ----------
    options : Namespace

    Raises
    ------
    CourseError
        After the others were measured, when a photo could not be.
    """
    from kitchenmath.photo.evidence import board_evidence  # no other command waits for it
    from kitchenmath.photo.words import CAUTIONS, RENDERED

    tolerance = None if options.within is None else Q_(options.within, "mm")
    lines = None if options.lines is None else tuple(options.lines)
    lost = []
    for photo in options.photos:
        try:
            found = board_evidence(photo, options.cut, tolerance, lines)
        except KitchenError as error:
            lost.append(f"{photo.name}: {error}")
            continue
        picture = photo.with_name(f"{photo.stem}-outlines.png")
        picture.write_bytes(found.picture_png)
        print(
            "\n".join([f"{photo.name}", *found.table, *found.sentences, f"Picture: {picture}", ""])
        )
    print(f"{RENDERED}\n{CAUTIONS}")
    if lost:
        raise CourseError("\n".join(lost))
