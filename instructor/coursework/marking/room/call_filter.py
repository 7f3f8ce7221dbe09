"""The seccomp filter of the student's room, as the program that the kernel runs at each call."""

import errno
import os
import struct

from syscalls import (
    AARCH64,
    CLONE,
    CLONE3,
    OPENAT2,
    OPENING,
    PRLIMIT64,
    REFUSED,
    REFUSED_WITH,
    X86_64,
)

CLONE_THREAD = 0x00010000


def program(column):
    """The filter as instructions for the kernel: 16-bit code, two jumps, a 32-bit number each."""
    load, equal, at_least, any_of, back = 0x20, 0x15, 0x35, 0x45, 0x06
    allow, kill, no = 0x7FFF0000, 0x80000000, 0x00050000
    number, processor, first = 0, 4, 16  # places in struct seccomp_data; the first argument's half

    def step(code, value, yes=0, otherwise=0):
        return struct.pack("HBBI", code, yes, otherwise, value)

    steps = [
        step(load, processor),
        step(equal, (X86_64, AARCH64)[column], 1, 0),
        step(back, kill),
        step(load, number),
    ]
    if column == 0:  # the x32 table
        steps += [step(at_least, 0x40000000, 0, 1), step(back, kill)]
    for numbers in REFUSED.values():
        if numbers[column] is not None:
            steps += [step(equal, numbers[column], 0, 1), step(back, no | errno.EPERM)]
    for newer in (CLONE3, OPENAT2):
        steps += [step(equal, newer[column], 0, 1), step(back, no | errno.ENOSYS)]
    for numbers, argument, values in REFUSED_WITH:
        # The number, then each value in turn; whichever is none of them is allowed.
        steps += [
            step(equal, numbers[column], 0, 2 + 2 * len(values)),
            step(load, first + 8 * argument),
        ]
        for value in values:
            steps += [step(equal, value, 0, 1), step(back, no | errno.EPERM)]
        steps += [step(back, allow)]
    for numbers, argument in OPENING:
        if numbers[column] is not None:
            # To empty a file while opening it for reading: where Landlock allows reading, and
            # is older than ABI 3, it would be done.
            steps += [
                step(equal, numbers[column], 0, 5),
                step(load, first + 8 * argument),
                step(any_of, os.O_TRUNC, 0, 2),
                step(any_of, os.O_WRONLY | os.O_RDWR, 1, 0),
                step(back, no | errno.EPERM),
                step(back, allow),
            ]
    # A clone that is a thread is allowed; any other is a new process.
    steps += [
        step(equal, CLONE[column], 0, 4),
        step(load, first),
        step(any_of, CLONE_THREAD, 1, 0),
        step(back, no | errno.EPERM),
        step(back, allow),
    ]
    # Limits of another process are not the student's.
    steps += [
        step(equal, PRLIMIT64[column], 0, 4),
        step(load, first),
        step(equal, 0, 1, 0),
        step(back, no | errno.EPERM),
        step(back, allow),
        step(back, allow),
    ]
    return b"".join(steps)
