"""Drawings: functions that take plain numbers and return their artists.

A drawing knows no widget and no unit. Colours differ in lightness, and every shape is labelled,
so that nothing is said by colour alone. Needs matplotlib.
"""
