"""Running a class: hand out, take in, mark, hand back, report."""
