"""The desk: panels over the commands, for an instructor who does not program."""

from coursework.desk.desk import Desk

__all__ = ["Desk"]
