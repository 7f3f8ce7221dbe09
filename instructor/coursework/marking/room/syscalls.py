"""The system calls that student code gets, for the two usual processors; all others are refused.

A list of what is allowed and not of what is refused: a call that a later kernel brings is then
refused before anybody heard of it. From the kernel's own tables
(arch/x86/entry/syscalls/syscall_64.tbl and include/uapi/asm-generic/unistd.h); None where a
processor has no such call. Arguments from fcntl(2), ioctl_tty(2), prctl(2), socket(2).
"""

X86_64, AARCH64 = 0xC000003E, 0xC00000B7  # AUDIT_ARCH_*, from linux/audit.h

# name: (x86_64, aarch64)
ALLOWED = {
    # reading and writing what is open
    "read": (0, 63), "write": (1, 64), "readv": (19, 65), "writev": (20, 66), "pread64": (17, 67),
    "pwrite64": (18, 68), "preadv": (295, 69), "pwritev": (296, 70), "preadv2": (327, 286),
    "pwritev2": (328, 287), "lseek": (8, 62), "close": (3, 57), "close_range": (436, 436),
    "dup": (32, 23), "dup2": (33, None), "dup3": (292, 24), "pipe": (22, None),
    "pipe2": (293, 59), "fsync": (74, 82), "fdatasync": (75, 83), "ftruncate": (77, 46),
    "fallocate": (285, 47), "fadvise64": (221, 223), "sendfile": (40, 71),
    "copy_file_range": (326, 285), "flock": (73, 32),
    # files, which Landlock holds
    "stat": (4, None), "fstat": (5, 80), "lstat": (6, None), "newfstatat": (262, 79),
    "statx": (332, 291), "access": (21, None), "faccessat": (269, 48), "faccessat2": (439, 439),
    "readlink": (89, None), "readlinkat": (267, 78), "getdents": (78, None),
    "getdents64": (217, 61), "getcwd": (79, 17), "chdir": (80, 49), "fchdir": (81, 50),
    "mkdir": (83, None), "mkdirat": (258, 34), "rmdir": (84, None), "unlink": (87, None),
    "unlinkat": (263, 35), "rename": (82, None), "renameat": (264, 38), "renameat2": (316, 276),
    "link": (86, None), "linkat": (265, 37), "symlink": (88, None), "symlinkat": (266, 36),
    "statfs": (137, 43), "fstatfs": (138, 44), "umask": (95, 166),
    # memory, which the limit on address space counts
    "mmap": (9, 222), "munmap": (11, 215), "mprotect": (10, 226), "mremap": (25, 216),
    "brk": (12, 214), "madvise": (28, 233), "msync": (26, 227), "membarrier": (324, 283),
    # itself
    "exit": (60, 93), "exit_group": (231, 94), "getpid": (39, 172), "gettid": (186, 178),
    "getppid": (110, 173), "getuid": (102, 174), "geteuid": (107, 175), "getgid": (104, 176),
    "getegid": (108, 177), "getgroups": (115, 158), "getresuid": (118, 148),
    "getresgid": (120, 150), "getpgid": (121, 155), "getpgrp": (111, None), "getsid": (124, 156),
    "wait4": (61, 260), "waitid": (247, 95), "uname": (63, 160), "sysinfo": (99, 179),
    "getrusage": (98, 165), "times": (100, 153), "getrlimit": (97, 163), "setrlimit": (160, 164),
    "getpriority": (140, 141), "capget": (125, 90), "getcpu": (309, 168),
    "set_tid_address": (218, 96), "set_robust_list": (273, 99), "rseq": (334, 293),
    "arch_prctl": (158, None), "getrandom": (318, 278), "sched_yield": (24, 124),
    "sched_getaffinity": (204, 123), "sched_getparam": (143, 121),
    "sched_getscheduler": (145, 120), "sched_get_priority_max": (146, 125),
    "sched_get_priority_min": (147, 126),
    # signals from others and its own clock
    "rt_sigaction": (13, 134), "rt_sigprocmask": (14, 135), "rt_sigreturn": (15, 139),
    "rt_sigpending": (127, 136), "rt_sigtimedwait": (128, 137), "rt_sigsuspend": (130, 133),
    "sigaltstack": (131, 132), "restart_syscall": (219, 128), "pause": (34, None),
    "alarm": (37, None), "getitimer": (36, 102), "setitimer": (38, 103),
    # time
    "clock_gettime": (228, 113), "clock_getres": (229, 114), "clock_nanosleep": (230, 115),
    "nanosleep": (35, 101), "gettimeofday": (96, 169), "time": (201, None),
    # waiting
    "futex": (202, 98), "poll": (7, None), "ppoll": (271, 73), "select": (23, None),
    "pselect6": (270, 72), "epoll_create": (213, None), "epoll_create1": (291, 20),
    "epoll_ctl": (233, 21), "epoll_wait": (232, None), "epoll_pwait": (281, 22),
    "eventfd2": (290, 19), "sendto": (44, 206), "recvfrom": (45, 207), "getsockname": (51, 204),
    "getsockopt": (55, 209),
}  # fmt: skip

# Allowed with these values of these arguments only: numbers, and by place of the argument its
# values. A descriptor that sends a signal of one's choice to whom one likes kills without kill,
# and a socket that takes an address speaks to whoever listens there.
ALLOWED_WITH = {
    # F_DUPFD, F_GETFD, F_SETFD, F_GETFL, F_SETFL, F_GETLK, F_SETLK, F_SETLKW, the same locks of
    # an open file, F_DUPFD_CLOEXEC, F_GETPIPE_SZ
    "fcntl": ((72, 25), {1: (0, 1, 2, 3, 4, 5, 6, 7, 36, 37, 38, 1030, 1032)}),
    # TCGETS, TCGETS2, TIOCGWINSZ, FIONREAD, FIONBIO, FIONCLEX, FIOCLEX
    "ioctl": ((16, 29), {1: (0x5401, 0x802C542A, 0x5413, 0x541B, 0x5421, 0x5450, 0x5451)}),
    # PR_SET_NAME, PR_GET_NAME, PR_SET_VMA: names of threads and of memory
    "prctl": ((157, 167), {0: (15, 16, 0x53564D41)}),
    # AF_UNIX, SOCK_STREAM with SOCK_NONBLOCK and SOCK_CLOEXEC or without: what `await` needs
    "socketpair": ((53, 199), {0: (1,), 1: (1, 0x801, 0x80001, 0x80801)}),
    # limits may be read and set, but not another's
    "prlimit64": ((302, 261), {0: (0,)}),
}
# The places of the flags of open and openat; openat2 hides them behind a pointer.
OPENING = (((2, None), 1), ((257, 56), 2))
# A clone that is a thread is allowed; any other is a new process.
CLONE = (56, 220)
# Said not to exist, so that the C library takes the older ones, whose flags a filter can see.
NEWER = ((435, 435), (437, 437))  # clone3, openat2
