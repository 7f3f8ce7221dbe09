"""The desk's panels for a class as a whole, operated in a browser: made, ruled, cared for.

The class is invented. Each function uses every control of its panel and says what came of it.
"""

TITLE = "4. Buy enough"
ROSTER = "student_number,name\nBH-1,Ada Quill\nBH-2,Bram Oakes\n"


def new_class(desk):
    """A class from a roster, then the demonstration class; and back and forth between both."""
    new, choose = desk.panel("A new class"), desk.panel("Class and set")
    desk.fill(new, "Name", "autumn")
    desk.fill(new, "Term", "autumn-26")
    desk.upload(new, "Roster (table, zip)", ("roster.csv", ROSTER.encode()))
    assert "The class has 2 students." in desk.press(new, "Make the class")
    assert "has handed in set" in desk.press(new, "Play the demonstration class")
    desk.choose(choose, "Class", "autumn")
    choose.get_by_text("autumn: 2 students").wait_for()
    desk.choose(choose, "Class", "Brackwater House, demonstration class (invented)")
    desk.choose(choose, "Set", TITLE)
    choose.get_by_text("handed out, 24 handed in, 0 marked.").wait_for()


def class_file(desk):
    """Every box of the forms; a student who joins, is renamed and leaves again."""
    form = desk.panel("The class's file")
    rules = {
        "Percent off for each day late": "10", "Percent off at most": "50",
        "Does not count after so many days": "7", "A later one lifts up to percent": "",
        "A total passes from so many percent": "40",
        "Grades, as in A = 80; B = 65; C = 40": "A = 80; B = 60", "Country, two letters": "GB",
        "Months that copies are kept": "24",
        "Or until this day, as in 2027-08-31": "",
    }  # fmt: skip
    for label, text in {
        "Weight of the set chosen above": "2", "Due, as in 2026-10-05 09:00": "2026-10-05 09:00",
        "Second attempt due": "2026-10-12 09:00",
    }.items():  # fmt: skip
        desk.fill(form, label, text)
    assert "The course file has them." in desk.press(form, "Save for this set")
    for label, text in rules.items():
        desk.fill(form, label, text)
    desk.choose(form, "Of several attempts counts", "best")
    desk.choose(form, "Nothing handed in is", "zero")
    desk.choose(form, "No total as long as a mark is open", "no")
    assert "The course file has them." in desk.press(form, "Save for the class")
    for label, word in {
        "Conventions of": "UK: United Kingdom", "Money": "sterling",
        "Food code that is quoted": "UK FSA and ACMSF",
        "Measures that stand first": "metric: grams and °C",
        "The ovens' dials": "gas: gas marks", "Tax on the card's price": "in: in the price (VAT)",
    }.items():  # fmt: skip
        desk.choose(form, label, word)
    desk.fill(form, "Edge of a brunoise in mm, 2 to 3", "2")
    desk.fill(form, "Tax in percent", "20")
    assert "The course file has them." in desk.press(form, "Save the conventions")
    for name in ("service", "knife skills"):
        desk.fill(form, "Practical mark", name)
        desk.fill(form, "Its points", "20")
        desk.fill(form, "Its weight", "1")
        assert f"“{name}” is a practical mark" in desk.press(form, "Save the practical mark")
    desk.fill(form, "Practical mark", "service")
    assert "“service” is taken out." in desk.press(form, "Take the practical mark out")
    desk.fill(form, "New student's number", "BH-1090")
    desk.fill(form, "Name", "Yara Pike")
    assert "Yara Pike is on the roster." in desk.press(form, "Add the student")
    desk.fill(form, "Name", "Yara Pike-Holt")
    desk.choose(form, "On the roster", "Yara Pike (BH-1090)")
    assert "new name" in desk.press(form, "Give this student the name above")
    desk.choose(form, "On the roster", "Yara Pike-Holt (BH-1090)")
    assert "is off the roster" in desk.press(form, "Take off the roster")


def care(desk, classes):
    """Backed up, refused beside the class that is there, a student packed, two erased; copies."""
    panel = desk.panel("The class's data")
    assert "Keep this file as private" in desk.press(panel, "Back up the class")
    [backup] = classes.glob("demo-*.zip")
    desk.fill(panel, "Or where it lies", "Downloads/none.zip")
    assert "cannot be read" in desk.press(panel, "Restore a class")
    desk.fill(panel, "Or where it lies", "")
    desk.fill(panel, "To archive, type the class's name", "another")
    assert "demonstration class (invented)” in the box" in desk.press(panel, "Archive the class")
    desk.upload(panel, "Choose a backup", (backup.name, backup.read_bytes()))
    assert "is there already" in desk.press(panel, "Restore a class")
    for number, name in (("BH-1020", "Tamsin Crook"), ("BH-1021", "Ulla Sedge")):
        desk.choose(panel, "Student", f"{name} ({number})")
        assert "All of it:" in desk.press(panel, "Pack a student's data")
        desk.fill(panel, "To erase, type the student number again", number)
        assert f"{name} ({number}) is erased." in desk.press(panel, "Erase the student")
    _discard(desk, panel)
    steps = desk.panel("The steps, in order")
    assert "pages" in desk.press(steps, "Hand back")
    desk.press(steps, "Report")
    desk.press(desk.panel("The term's mark book"), "Make the mark book")
    desk.press(desk.panel("What to teach again"), "Show what is not got")


def _discard(desk, panel):
    """Copies are kept for 24 months, then until a day that is past: what is next says so."""
    assert "None is past its time." in desk.press(panel, "Look how long copies are kept")
    assert "Look first" in desk.press(panel, "Discard those past their time")
    form = desk.panel("The class's file")
    desk.fill(form, "Or until this day, as in 2027-08-31", "2026-08-31")
    desk.press(form, "Save for the class")
    desk.panel("Class and set").get_by_text("to be kept until 2026-08-31").wait_for()
    assert "22 pages that went back" in desk.press(panel, "Look how long copies are kept")
    assert "They are gone: " in desk.press(panel, "Discard those past their time")
    desk.fill(form, "Or until this day, as in 2027-08-31", "")
    desk.press(form, "Save for the class")
