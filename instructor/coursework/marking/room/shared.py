"""What both ways to open a room share: walls by name, what a room gets, what it must not say."""

from kitchenmath.errors import KitchenError

# Harm that student code could do: the wall that is there to hold it back, and its words.
HARMS = {
    "network": ("namespaces", "using the network"),
    "disk": ("disk", "filling the disk"),
    "memory": ("memory", "using up memory"),
    "limits": ("limits", "using up processor time"),
    "reads": ("files", "reading this machine's files"),
    "changes": ("files", "changing this machine's files"),
    "programs": ("calls", "starting programs"),
    "signals": ("calls", "ending other programs"),
    "others": ("calls", "reaching into other programs"),
}
WALLS = tuple(dict.fromkeys(wall for wall, _ in HARMS.values()))
GRACE = 3.0  # seconds that a cell gets to obey its own clock before it is ended from outside


class NoRoom(KitchenError):
    """A room could not be opened; the message says why."""


class Found:
    """What the trial of the walls found on this machine.

    Attributes
    ----------
    lacking : dict of str to str
        Walls that did not go up, with what the machine answered.
    harms : dict of str to list of str
        What is not held back, and the attacks that got through. Where no attack could be tried, a
        lacking wall holds nothing back.
    trial_ms : float
        What the trial took.
    """

    def __init__(self, said):
        self.lacking, self.trial_ms = said["lacking"], said.get("trial_ms", 0.0)
        self.harms = said["through"]
        if self.harms is None:
            self.harms = {harm: [] for harm, (wall, _) in HARMS.items() if wall in self.lacking}

    @property
    def missing(self):
        """Walls that are not there, and walls that an attack got through."""
        fallen = {HARMS[harm][0]: f"did not hold: {', '.join(names)}"
                  for harm, names in self.harms.items()}  # fmt: skip
        return fallen | self.lacking

    @property
    def stand(self):
        """Walls that must go up again in every room."""
        return [wall for wall in WALLS if wall not in self.lacking]


def clocks(work):
    """A cell's seconds, as the room's own clock comes first, and the places of the cells."""
    return work["cell_seconds"] + GRACE, [cell["place"] for cell in work["cells"]]


def refuse_lost(came):
    """What came out of a room whose walls went up.

    The first line is the room's own: no student code runs before it.

    Raises
    ------
    NoRoom
        When a wall that this machine has did not go up.
    """
    if came.raw.startswith(b'{"lost"'):
        raise NoRoom(f"walls that stood did not go up again: {came.raw.decode()}")
    return came
