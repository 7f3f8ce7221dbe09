"""Care for a class's data: a student erased or taken along, a class backed up and restored."""
