"""The error that the whole package speaks in."""

from kitchenmath.errors import KitchenError


class CourseError(KitchenError):
    """Something about the class's files that the instructor can mend; the message says how."""
