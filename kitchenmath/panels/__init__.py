"""Panels: sliders, a picture and a sentence that says the same in words. Needs ipywidgets."""
