"""The earlier name of `practice_sheet`: practice notebooks given out with it still open."""

from kitchenmath.practice.practice_sheet import open_practice

__all__ = ["open_practice"]
