"""What is said of skills, and of the sheets that teach them again, to the instructor."""

__all__ = ["GOT_ALL", "NAMES_NO_SKILL", "NOBODY_LACKS", "NOTHING_KNOWN", "NO_DRILL", "STILL_OUT",
           "TO_LEARN"]  # fmt: skip

TO_LEARN = "{whom} still has to learn: {skills}."
NOTHING_KNOWN = "Nothing is marked of {whom}, so nothing is known: give them the class's sheet."
GOT_ALL = "{whom} knows all that was asked: no sheet is needed."
NOBODY_LACKS = "Nobody lacks anything: no sheet is needed."
STILL_OUT = (
    "Hand-ins that are not marked yet: {out}. The sheet shows how those questions go: give it out "
    "when the sets are closed."
)
NO_DRILL = (
    "No drill is named for “{skill}” yet: add a line to instructor/coursework/skills/{table}, with "
    "the skill as the key writes it, its lesson, and a drill."
)
NAMES_NO_SKILL = (
    "{set_id}, {question}: its mark names no skill, so it counts nowhere here. Name one in the "
    "key, and mark again."
)
