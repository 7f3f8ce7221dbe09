"""Marking: student code in a room of its own, plain values out, verdicts by the key."""
