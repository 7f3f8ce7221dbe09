"""What the gradebook's side says to the instructor."""

__all__ = ["WAITING", "not_counted"]

WAITING = "Another program is writing in the gradebook; waiting for it …"


def not_counted(named, question, points, most):
    """Points by hand in the gradebook that no question can have."""
    return (
        f"{named}, {question}: the gradebook says {points:g} points of {most:g}. They are not "
        "counted. Give the points again."
    )
