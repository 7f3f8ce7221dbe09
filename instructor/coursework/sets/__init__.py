"""Graded sets: the keys, what is handed out of them, and the lessons beside."""
