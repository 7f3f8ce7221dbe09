"""Points in nbgrader's gradebook: read, written, and copied aside."""
