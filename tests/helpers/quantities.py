"""Quantities in few letters, for tests that work many numbers by hand."""

from kitchenmath.units import Q_


def celsius(number):
    """A temperature."""
    return Q_(number, "degC")


def fahrenheit(number):
    """A temperature."""
    return Q_(number, "degF")


def delta(number):
    """A difference of temperatures, in kelvin."""
    return Q_(number, "delta_degC")


def percent(number):
    """A share."""
    return Q_(number, "percent")


def grams(number):
    """A weight."""
    return Q_(number, "g")


def minutes(quantity):
    """A time as a number of minutes."""
    return quantity.to("min").magnitude


def seconds(quantity):
    """A time as a number of seconds."""
    return quantity.to("s").magnitude


def mm(number):
    """A length."""
    return Q_(number, "mm")
