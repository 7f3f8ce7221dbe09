"""The command `edition`: build it, check one, show it."""

from pathlib import Path

from coursework.classes.course import INSTRUCTOR
from coursework.errors import CourseError
from coursework.progress import Progress

FOLDER = INSTRUCTOR / "edition"


def add_options(command):
    """What `python3 instructor edition` takes.

    Parameters
    ----------
    command : argparse.ArgumentParser
    """
    path = {"type": Path, "metavar": "FOLDER"}
    command.add_argument("--to", default=FOLDER, help="where the edition goes", **path)
    command.add_argument("--runtime", help="packages of the browser's Python, as packed", **path)
    command.add_argument("--wheels", help="the compiled wheels that belong to it", **path)
    command.add_argument("--check", help="verify an edition that somebody built", **path)
    command.add_argument("--serve", action="store_true", help="show it on this machine")
    command.add_argument("--network", action="store_true", help="with --serve: to the classroom")
    command.add_argument("--port", type=int, default=0, help="with --serve: a port of your own")


def told(options, course=None):
    """Do what the options ask.

    Parameters
    ----------
    options : argparse.Namespace
    course : Course, optional
        Whose sets it holds.

    Raises
    ------
    CourseError
    """
    if options.check:
        from coursework.edition.checking import wrong_in

        found = wrong_in(options.check)
        if found:
            raise CourseError("\n".join([f"{options.check} is not whole:", *found]))
        print(f"{options.check} is whole: every file is as it was built.")
        return
    from coursework.edition.compiling import NO_NODE, can_compile
    from coursework.edition.serve import HOSTING  # no other command waits for these
    from coursework.edition.site import edition, write

    with Progress("Building the edition"):
        files = edition(course, options.runtime, options.wheels)
        write(files, options.to)
    size = sum(map(len, files.values())) / 1e6
    print(f"{len(files)} files, {size:.0f} MB, are in {options.to}\n\n{HOSTING}")
    if not can_compile():
        print(f"\n{NO_NODE}")
    if options.serve:
        _show(options)


def _show(options):
    from coursework.edition.serve import address_of, code_of, server

    made = server(options.to, options.network, options.port)
    address = address_of(made, options.network)
    print(f"\nType this address in a browser: {address}\nTo stop, press Ctrl and C.")
    if options.network:
        print(f"\n{code_of(address)}")
        print("Whoever is on this network can open it. Pages stay open without a network only")
        print("where a host serves them by https; here they need this machine.")
    try:
        made.serve_forever()
    except KeyboardInterrupt:
        print("\nStopped.")
    finally:
        made.server_close()
