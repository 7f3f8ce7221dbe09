"""What is said of a record's file that cannot be used, to the instructor."""

__all__ = ["UNUSABLE"]

UNUSABLE = "marks/{set_id}/{name} cannot be used: delete it and mark {student} again."
