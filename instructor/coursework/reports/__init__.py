"""What marking found, for people: the mark sheet, the class's page, a page for each student."""
