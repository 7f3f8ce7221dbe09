"""A class on disk: its course file, its roster, and one marker at a time in it."""
