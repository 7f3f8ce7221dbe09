"""What is said of files as they come and are settled, to the instructor.

Each text is filled in by the module that knows the fact; none of them decides anything.
"""

# Of a file that is opened.
DAMAGED = "The zip is damaged: download it again."
EMPTY = "The zip is empty, or holds hidden files only."
TOO_DEEP = "It is a zip in a zip in a zip: unpack it and take in the folder."
FOLDER_CLOSED = "The folder cannot be opened ({why})."
FILE_CLOSED = "The file cannot be opened ({why})."
LINK = "It is a link to another place, not a file."
# Of a notebook that is read.
OTHER_KINDS = {
    b"%PDF": "a PDF",
    b"\x89PNG": "a picture",
    b"\xff\xd8\xff": "a picture",
    b"GIF8": "a picture",
    b"PK\x03\x04": "a zip or a word processor's document",
    b"\xd0\xcf\x11\xe0": "an old word processor's document",
    b"<": "a web page",
}
ODD_BYTES = "Some characters are not in UTF-8; they were read as Western European letters."
TOO_MANY_PIECES = (
    "The file has far more pieces than any notebook: its first {count} cells were read."
)
BREAKS_OFF = "The file breaks off: only its first {count} cells could be read."
LEFT_OUT = "Cells without readable text were left out: {places}."
REPLACED = "Characters that do not exist were replaced by “�”."
# Of what became of it.
CAME_BEFORE = "It came before as “{name}” in “{place}”."
YOU_SET_ASIDE = "You set it aside."
A_SYSTEMS_OWN = "A computer makes such a file by itself; it is nobody's."
SAYS_NOBODY = 'It has no line student = "…" with a student number in quotes.'
NUMBER_EMPTY = "The student number was left empty."
NOT_ON_ROSTER = "{student} is not on the roster.{hint}"
DID_YOU_MEAN = " Did you mean {near}?"
SAYS_NO_SET = "{student} handed it in, but it does not say which set it is."
NOT_OUT = "Set “{set_id}” is not handed out in this class; {out} is."
OTHER_TERM = "It is for term “{said}”; this class's is “{term}”."
YOU_SAID_A_STRANGER = "You said it is {student}'s, who is not on the roster."
YOU_SAID_NOT_OUT = "You said it is set “{set_id}”, which is not handed out in this class."
# Of which one counts.
NAMED = "“{name}”"
NAMED_AND_WHEN = "“{name}”, handed in {came},"  # two of a student's files mostly have one name
YOU_SAID = "You said that {file} counts."
LATER_ONE = "{file} is later."
LATER_ONE_WAITS = "It is marked, and a later one waits for your word."
LATEST = "It is the latest of {many} hand-ins."
ONLY_ONE = "It is the only hand-in."
ONLY_ITS_WORD = (
    "Only the file itself says that it is {student}'s, and “{marked}” is marked: say which of "
    "them counts."
)
# Of whose a file without a place may be, by what speaks for it.
BECAUSE = {
    "typed": "{name}: the number {seen} is typed in it.",
    "number": "{name}: the number stands in “{seen}”.",
    "name": "{name}: the name stands in “{seen}”.",
    "zeros": "{name}: “{seen}” is this number without its leading zeros.",
    "similar": "{name}? The number {seen} is only similar. Look at the file.",
}
NOBODYS = "Nothing in it or in its name says whose it is."
OTHER_SET = "Another set: {whence} says “{said}”, which is not the one chosen above."


def says_another(sender, student):
    """Why a file waits for a person where the platform and the file name two people."""
    return f"It came under the name of {sender}, and it says {student}: say whose it is."


def too_many(entries, most, inside):
    """Why a zip is not opened; a student's own holds one notebook, or some."""
    do = "Ask for the notebook alone." if inside else "Unpack it and take in the folder."
    return f"The zip has {entries} entries; at most {most} are opened. {do}"
