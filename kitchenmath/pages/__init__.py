"""Lessons and sets as pages without code: the notebooks seen as text, forms and panels."""
