"""What marking leaves of each hand-in: its record, read and counted. It knows no other package."""
