"""What is said of files as they come, to the instructor."""

__all__ = ["DAMAGED", "EMPTY", "TOO_DEEP", "says_another", "too_many"]

DAMAGED = "The zip is damaged: download it again."
EMPTY = "The zip is empty, or holds hidden files only."
TOO_DEEP = "It is a zip in a zip in a zip: unpack it and take in the folder."


def says_another(sender, student):
    """Why a file waits for a person where the platform and the file name two people."""
    return f"It came under the name of {sender}, and it says {student}: say whose it is."


def too_many(entries, most, inside):
    """Why a zip is not opened; a student's own holds one notebook, or some."""
    do = "Ask for the notebook alone." if inside else "Unpack it and take in the folder."
    return f"The zip has {entries} entries; at most {most} are opened. {do}"
