"""What is said of files as they come, to the instructor."""

__all__ = ["says_another"]


def says_another(sender, student):
    """Why a file waits for a person where the platform and the file name two people."""
    return f"It came under the name of {sender}, and it says {student}: say whose it is."
