"""What besides the number in a notebook says whose it is: the sender's name, and a code."""

from dataclasses import replace

from coursework.arriving.senders import Senders
from coursework.arriving.words import says_another
from coursework.classes.codes import codes_of, fits

__all__ = ["Witnesses"]


class Witnesses:
    """What a class can tell about whose a file is.

    Parameters
    ----------
    course : Course
    """

    def __init__(self, course):
        self.roster = course.roster
        self.senders, self.codes = Senders(course.roster), codes_of(course)

    def heard(self, arrival, student):
        """An arrival with its sender, and with what its code says of the student it names.

        Parameters
        ----------
        arrival : Arrival
        student : str

        Returns
        -------
        Arrival
        """
        code = ""
        if student in self.codes and arrival.says_student is not None:
            code = "right" if fits(arrival.says_code, self.codes[student]) else "wrong"
            code = code if arrival.says_code else "missing"
        return replace(arrival, sender=self.senders.of(arrival.outer), code=code)

    def disagree(self, arrival, student):
        """Whether the sender is somebody else, and no person said whose the file is."""
        return not arrival.told_student and arrival.sender not in ("", student)

    def in_words(self, arrival, student):
        """Why a file waits for a person where the sender is somebody else."""
        sender = f"{self.roster[arrival.sender]} ({arrival.sender})"
        return says_another(sender, student)
