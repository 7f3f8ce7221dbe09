"""The seccomp filter of the student's room, as the program that the kernel runs at each call."""

import errno
import os
import struct

from syscalls import AARCH64, ALLOWED, ALLOWED_WITH, CLONE, NEWER, OPENING, X86_64

CLONE_THREAD = 0x00010000
CLONE_NEW = 0x7E020000  # CLONE_NEWNS, CGROUP, UTS, IPC, USER, PID and NET
LOAD, EQUAL, AT_LEAST, ANY_OF, BACK = 0x20, 0x15, 0x35, 0x45, 0x06
ALLOW, KILL, REFUSE = 0x7FFF0000, 0x80000000, 0x00050000
NUMBER, PROCESSOR, FIRST = 0, 4, 16  # places in struct seccomp_data; FIRST: of the arguments


def program(column):
    """The filter as instructions for the kernel.

    Parameters
    ----------
    column : int
        0 for x86-64, 1 for ARM64.

    Returns
    -------
    bytes
        Eight for each instruction: a 16-bit code, two jumps, a 32-bit number.
    """
    steps = [_step(LOAD, PROCESSOR)]
    steps += [_step(EQUAL, (X86_64, AARCH64)[column], 1, 0), _step(BACK, KILL)]
    steps += [_step(LOAD, NUMBER)]
    if column == 0:  # the x32 table
        steps += [_step(AT_LEAST, 0x40000000, 0, 1), _step(BACK, KILL)]
    for numbers in ALLOWED.values():
        steps += _if_called(numbers[column], [_step(BACK, ALLOW)])
    for numbers, arguments in ALLOWED_WITH.values():
        steps += _if_called(numbers[column], _one_of_these(arguments))
    for numbers, argument in OPENING:
        steps += _if_called(numbers[column], _unless_it_empties(argument))
    steps += _if_called(CLONE[column], _if_a_thread())
    for numbers in NEWER:
        steps += _if_called(numbers[column], [_step(BACK, REFUSE | errno.ENOSYS)])
    return b"".join([*steps, _step(BACK, REFUSE | errno.EPERM)])


def _step(code, value, yes=0, otherwise=0):
    """One instruction; the jumps count what is passed over."""
    return struct.pack("HBBI", code, yes, otherwise, value)


def _if_called(number, steps):
    """Steps for one call; they end with an answer, as they may load something else."""
    return [] if number is None else [_step(EQUAL, number, 0, len(steps)), *steps]


def _one_of_these(arguments):
    """Allowed where each of these arguments has one of its values. The kernel takes 32 bits too."""
    steps = []
    for argument, values in arguments.items():
        steps.append(_step(LOAD, FIRST + 8 * argument))
        steps += [_step(EQUAL, value, len(values) - n, 0) for n, value in enumerate(values)]
        steps.append(_step(BACK, REFUSE | errno.EPERM))
    return [*steps, _step(BACK, ALLOW)]


def _unless_it_empties(argument):
    """Refused where a file would be emptied while it is opened for reading.

    Where Landlock allows reading, and is older than ABI 3, it would be done.
    """
    return [
        _step(LOAD, FIRST + 8 * argument),
        _step(ANY_OF, os.O_TRUNC, 0, 2),
        _step(ANY_OF, os.O_WRONLY | os.O_RDWR, 1, 0),
        _step(BACK, REFUSE | errno.EPERM),
        _step(BACK, ALLOW),
    ]


def _if_a_thread():
    """Allowed as a thread of this process, with nothing that is new to it."""
    return [
        _step(LOAD, FIRST),
        _step(ANY_OF, CLONE_NEW, 1, 0),
        _step(ANY_OF, CLONE_THREAD, 1, 0),
        _step(BACK, REFUSE | errno.EPERM),
        _step(BACK, ALLOW),
    ]
