"""Numbers of the system calls that student code does not get, for the two usual processors.

From the kernel's own tables (arch/x86/entry/syscalls/syscall_64.tbl and
include/uapi/asm-generic/unistd.h); None where a processor has no such call.
"""

X86_64, AARCH64 = 0xC000003E, 0xC00000B7  # AUDIT_ARCH_*, from linux/audit.h

# name: (x86_64, aarch64)
REFUSED = {
    # other programs and other processes
    "fork": (57, None),
    "vfork": (58, None),
    "execve": (59, 221),
    "execveat": (322, 281),
    "kill": (62, 129),
    "tkill": (200, 130),
    "tgkill": (234, 131),
    "rt_sigqueueinfo": (129, 138),
    "rt_tgsigqueueinfo": (297, 240),
    "pidfd_open": (434, 434),
    "pidfd_send_signal": (424, 424),
    "pidfd_getfd": (438, 438),
    "ptrace": (101, 117),
    "process_vm_readv": (310, 270),
    "process_vm_writev": (311, 271),
    "process_madvise": (440, 440),
    "setpriority": (141, 140),
    "ioprio_set": (251, 30),
    "sched_setscheduler": (144, 119),
    "sched_setparam": (142, 118),
    "sched_setattr": (314, 274),
    "sched_setaffinity": (203, 122),
    # the network, a session's bus, a container engine: unix sockets too
    "socket": (41, 198),
    "connect": (42, 203),
    "bind": (49, 200),
    "listen": (50, 201),
    # other rooms and mounts
    "unshare": (272, 97),
    "setns": (308, 268),
    "mount": (165, 40),
    "umount2": (166, 39),
    "pivot_root": (155, 41),
    "chroot": (161, 51),
    "open_tree": (428, 428),
    "move_mount": (429, 429),
    "fsopen": (430, 430),
    "fsconfig": (431, 431),
    "fsmount": (432, 432),
    "fspick": (433, 433),
    "mount_setattr": (442, 442),
    # what Landlock does not hold: a file's owner, mode, times, attributes
    "chmod": (90, None),
    "fchmod": (91, 52),
    "fchmodat": (268, 53),
    "fchmodat2": (452, 452),
    "chown": (92, None),
    "fchown": (93, 55),
    "lchown": (94, None),
    "fchownat": (260, 54),
    "utime": (132, None),
    "utimes": (235, None),
    "futimesat": (261, None),
    "utimensat": (280, 88),
    "setxattr": (188, 5),
    "lsetxattr": (189, 6),
    "fsetxattr": (190, 7),
    "removexattr": (197, 14),
    "lremovexattr": (198, 15),
    "fremovexattr": (199, 16),
    "setxattrat": (463, 463),
    "removexattrat": (466, 466),
    # what Landlock holds only from ABI 3 on: emptying a file by its path, without opening it
    "truncate": (76, 45),
    # memory that the limit on address space does not count
    "memfd_create": (319, 279),
    "memfd_secret": (447, 447),
    "shmget": (29, 194),
    "shmat": (30, 196),
    "mq_open": (240, 180),
    # doors into the kernel that no cook needs
    "bpf": (321, 280),
    "io_uring_setup": (425, 425),
    "io_uring_enter": (426, 426),
    "io_uring_register": (427, 427),
    "perf_event_open": (298, 241),
    "userfaultfd": (323, 282),
    "keyctl": (250, 219),
    "add_key": (248, 217),
    "request_key": (249, 218),
    "name_to_handle_at": (303, 264),
    "open_by_handle_at": (304, 265),
    "fanotify_init": (300, 262),
    "personality": (135, 92),
    "syslog": (103, 116),
    "init_module": (175, 105),
    "finit_module": (313, 273),
    "delete_module": (176, 106),
    "kexec_load": (246, 104),
    "kexec_file_load": (320, 294),
    "swapon": (167, 224),
    "swapoff": (168, 225),
    "reboot": (169, 142),
    "settimeofday": (164, 170),
    "clock_settime": (227, 112),
    "clock_adjtime": (305, 266),
    "acct": (163, 89),
    "quotactl": (179, 60),
}
# Refused with these values of an argument: (numbers, which argument, values).
# A descriptor that sends a signal of one's choice to whom one likes kills without kill; Landlock
# holds that only from ABI 6 on (fcntl(2): F_SETOWN, F_SETSIG, F_SETOWN_EX, F_SETLEASE, F_NOTIFY;
# asm-generic/ioctls.h and sockios.h: FIOASYNC, TIOCSTI, FIOSETOWN, SIOCSPGRP).
REFUSED_WITH = (
    ((72, 25), 1, (8, 10, 15, 1024, 1026)),
    ((16, 29), 1, (0x5452, 0x5412, 0x8901, 0x8902)),
)
# The places of the flags of open and openat; openat2 hides them behind a pointer.
OPENING = (((2, None), 1), ((257, 56), 2))
OPENAT2 = (437, 437)
# Looked at more closely: threads are clones too, and limits may be read and set, but not another's.
CLONE = (56, 220)
CLONE3 = (435, 435)
PRLIMIT64 = (302, 261)
