"""What is said of pages that were packed: for the terminal and the desk, and a line for mail."""

from coursework.words import plural


def in_words(packed):
    """What was packed, the warning, and a line for mail.

    Parameters
    ----------
    packed : Packed

    Returns
    -------
    str
    """
    lines = [f"{plural(packed.pages, 'page')}: {packed.file}"]
    so_far = ""
    if packed.waiting:
        waits = plural(packed.waiting, "answer still waits", "answers still wait")
        lines.append(f"Careful: {waits} for your marks. The pages say “so far”.")
        so_far = " Some answers are still being marked, so a total may be a total so far."
    if packed.without:
        lines.append(f"No page for: {', '.join(packed.without)}.")
    lines.append(
        f"For a mail: “{packed.title}” is marked. Your page bears your student number and name. "
        f"It says what you answered, your points, and what to go over again.{so_far}"
    )
    return "\n".join(lines)
