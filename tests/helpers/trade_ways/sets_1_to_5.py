"""Trade ways of sets 1 to 5."""

import math

from tests.helpers.trade_ways.numbers import (
    OZ_G,
    corrected,
    credit,
    dough,
    everything,
    half_up,
    in_f,
    menu_price,
    plate_cost,
    pounds,
    total,
    whole_cost,
    whole_up,
)

WAYS = {
    "01-measure-and-scale": {
        "q1": {
            "a cup of 237 mL": lambda of: (
                f"{of('cups', 'us_cup') * 237 * of('density', 'g/mL'):.0f} g"
            ),
            "a cup of 240 mL": lambda of: (
                f"{of('cups', 'us_cup') * 240 * of('density', 'g/mL'):.0f} g"
            ),
            "in pounds": lambda of: pounds(of("cups", "us_cup") * 237 * of("density", "g/mL")),
        },
        "q2": {
            "by a factor": lambda of: (
                f"{of('q1', 'g') * half_up(of('rolls') * of('large', 'g') / (of('made') * of('small', 'g')), 2):.0f} g"
            ),
            "number first, size then": lambda of: (
                f"{of('q1', 'g') * half_up(of('rolls') / of('made'), 2) * half_up(of('large', 'g') / of('small', 'g'), 2):.0f} g"
            ),
            "by the roll": lambda of: (
                f"{half_up(of('q1', 'g') / of('made'), 1) * of('large', 'g') / of('small', 'g') * of('rolls') / 1000:.2f} kg"
            ),
        },
        "q3": {
            "an ounce of 29.6 mL": lambda of: (
                f"{of('ounces', 'us_fluid_ounce') * 29.6 * of('heavy', 'g/mL'):.0f} g"
            ),
            "an ounce of 30 mL": lambda of: (
                f"{of('ounces', 'us_fluid_ounce') * 30 * of('heavy', 'g/mL'):.0f} g"
            ),
            "by the cup": lambda of: (
                f"{of('ounces', 'us_fluid_ounce') / 8 * 237 * of('heavy', 'g/mL'):.0f} g"
            ),
        },
        "q4": {
            "by a factor": lambda of: f"{of('spoons', 'mL') * of('covers') / of('serves'):.0f} mL",
            "by the cover": lambda of: (
                f"{of('spoons', 'mL') / of('serves') * of('covers') / 1000:.2f} L"
            ),
        },
        "q5": {
            "five ninths": lambda of: (
                f"{of('dial', 'degC') - of('lower', 'delta_degF') * 5 / 9:.0f} °C"
            ),
            "through °F": lambda of: (
                f"{(round(in_f(of('dial', 'degC'))) - of('lower', 'delta_degF') - 32) / 1.8:.0f} °C"
            ),
            "to the mark": lambda of: (
                f"{5 * round((of('dial', 'degC') - of('lower', 'delta_degF') / 1.8) / 5)} °C"
            ),
        },
        "q6": {
            "by the areas": lambda of: (
                f"{of('depth', 'mm') * of('batch') * half_up(of('narrow', 'cm') ** 2 / of('wide', 'cm') ** 2, 3):.0f} mm"
            ),
            "by the volume": lambda of: (
                f"{of('depth', 'cm') * of('batch') * 3.14 * (of('narrow', 'cm') / 2) ** 2 / (3.14 * (of('wide', 'cm') / 2) ** 2):.1f} cm"
            ),
        },
    },
    "02-mix-by-ratio": {
        "q1": {
            "by the total percent": lambda of: f"{dough(of) / total(of) * 100:.0f} g",
            "by one percent": lambda of: f"{half_up(dough(of) / total(of), 2) * 100:.0f} g",
            "by the kilo of flour": lambda of: f"{dough(of) / half_up(total(of) * 10, 0):.3f} kg",
            "in pounds": lambda of: pounds(dough(of) / total(of) * 100),
        },
        "q2": {
            "by percent": lambda of: f"{of('q1', 'g') * of('salt', 'percent') / 100:.0f} g",
            "by the kilo": lambda of: (
                f"{half_up(of('q1', 'kg'), 2) * of('salt', 'percent') * 10:.1f} g"
            ),
        },
        "q3": {
            "by percent": lambda of: (
                f"{of('poured', 'g') / (of('white', 'g') + of('whole', 'g')) * 100:.0f} %"
            ),
            "by one percent of the flour": lambda of: (
                f"{of('poured', 'g') / ((of('white', 'g') + of('whole', 'g')) / 100):.1f} %"
            ),
        },
        "q4": {
            "by parts": lambda of: (
                f"{half_up(of('glaze', 'g') / (of('cups') * 339 + 237), 3) * of('cups') * 339:.0f} g"
            ),
            "by the share": lambda of: (
                f"{half_up(of('cups') * 339 / (of('cups') * 339 + 237), 3) * of('glaze', 'g'):.0f} g"
            ),
        },
        "q5": {
            "three times the dough": lambda of: (
                f"{3 * of('came_out', 'degC') - of('went_in', 'degC') - of('flour_then', 'degC') - of('room_then', 'degC'):.1f} °C"
            ),
            "each by itself": lambda of: (
                f"{sum(of('came_out', 'degC') - of(name, 'degC') for name in ('went_in', 'flour_then', 'room_then')):.0f} °C"
            ),
        },
        "q6": {
            "in °C": lambda of: (
                f"{3 * half_up((of('target', 'degF') - 32) / 1.8, 1) - of('flour', 'degC') - of('room', 'degC') - of('q5', 'delta_degC'):.1f} °C"
            ),
            "in °F": lambda of: (
                f"{3 * of('target', 'degF') - in_f(of('flour', 'degC')) - in_f(of('room', 'degC')) - 1.8 * of('q5', 'delta_degC'):.0f} °F"
            ),
        },
    },
    "03-cut-to-size": {
        "q2": {
            "the sum shared": lambda of: f"{of.mean_mm:.2f} mm",
            "in centimetres": lambda of: f"{of.mean_mm / 10:.3f} cm",
        },
        "q3": {
            "off size counted": lambda of: f"{of.right:.0f}",
            "on size taken from ten": lambda of: f"{10 - (10 - of.right):.0f} pieces",
        },
        "q4": {
            "layer by layer": lambda of: f"{of.right:.0f}",
            "sticks, then across": lambda of: f"{of.right:.0f} pieces",
        },
        "q5": {
            "by the square of 1.41": lambda of: f"{of.diced_percent(1.41, 3.14):.0f} %",
            "by 0.7 of the width": lambda of: f"{of.diced_percent(1 / 0.707, math.pi):.1f} %",
        },
        "q6": {
            "by the ratio": lambda of: (
                f"{of('time', 's') * half_up(of.largest_mm / of('q2', 'mm'), 2) ** 2:.0f} s"
            ),
            "by the squares": lambda of: (
                f"{of('time', 's') / half_up(of('q2', 'mm') ** 2, 2) * of.largest_mm**2:.0f} s"
            ),
        },
    },
    "04-buy-enough": {
        "q1": {
            "by a factor, rounded up as one buys": lambda of: (
                f"{whole_up(of('covers') * of('portion', 'g') * whole_up(100 / of('yield_', 'percent'), 0.01), 50):.0f} g"
            ),
            "by the portion": lambda of: (
                f"{whole_up(of('covers') * math.ceil(of('portion', 'g') / of('yield_', 'percent') * 100), 10) / 1000:.2f} kg"
            ),
            "by percent": lambda of: (
                f"{whole_up(of('covers') * of('portion', 'g') / of('yield_', 'percent') * 100, 100) / 1000:.1f} kg"
            ),
        },
        "q2": {
            "divided and rounded up": lambda of: (
                f"{math.ceil(of('q1', 'kg') / of('net', 'kg') - 1e-9)}"
            ),
            "nets added up": lambda of: f"{of.nets} nets",
        },
        "q3": {
            "by a factor": lambda of: (
                f"{of('cooked', 'g') * half_up(100 / (100 - of('loss', 'percent')), 2):.0f} g"
            ),
            "by one percent": lambda of: (
                f"{half_up(of('cooked', 'g') / (100 - of('loss', 'percent')), 2) * 100:.0f} g"
            ),
            "in ounces": lambda of: (
                f"{of('cooked', 'g') / (100 - of('loss', 'percent')) * 100 / OZ_G:.1f} oz"
            ),
        },
        "q4": {
            "credit off the cost": lambda of: (
                f"${(whole_cost(of) - credit(of)) / of('breast', 'kg'):.2f} per kg"
            ),
            "by a cost factor": lambda of: (
                f"{half_up((whole_cost(of) - credit(of)) / of('breast', 'kg') / of('price', 'dollar/kg'), 3) * of('price', 'dollar/kg'):.2f} per kg"
            ),
            "by the pound": lambda of: (
                f"${(whole_cost(of) - credit(of)) / of('breast', 'kg') * 0.45359:.2f} per lb"
            ),
        },
        "q5": menu_price(plate_cost),
    },
    "05-season-and-brine": {
        "q1": {
            "by the cup": lambda of: f"{of('salt', 'us_fluid_ounce') / 8 * 292:.0f} g",
            "by the ounce": lambda of: f"{of('salt', 'us_fluid_ounce') * 36.5:.0f} g",
            "by the teaspoon": lambda of: f"{of('salt', 'us_fluid_ounce') * 6 * 6.1:.0f} g",
        },
        "q2": {
            "the brine, less the salt": lambda of: (
                f"{of('q1', 'g') / of('wanted', 'percent') * 100 - of('q1', 'g'):.0f} g"
            ),
            "by a factor": lambda of: (
                f"{of('q1', 'g') * half_up((100 - of('wanted', 'percent')) / of('wanted', 'percent'), 2) / 1000:.2f} kg"
            ),
        },
        "q3": {
            "by the litre": lambda of: (
                f"{of('brine', 'L') * half_up(of.litre_g * of('wanted', 'percent') / 100, 1):.0f} g"
            ),
            "by the tub": lambda of: (
                f"{of('brine', 'L') * of.litre_g / 1000 * of('wanted', 'percent') / 100:.3f} kg"
            ),
        },
        "q4": {
            "to half a degree": lambda of: f"{round(2 * corrected(of)) / 2 * 0.264:.1f} %",
            "in °F": lambda of: (
                f"{(of('shown') + (in_f(of('warmth', 'degC')) - 60) / 10) * 26.4 / 100:.2f} %"
            ),
        },
        "q5": {
            "by what is left of the percent": lambda of: (
                f"{everything(of) * of('target', 'percent') / (100 - of('target', 'percent')):.0f} g"
            ),
            "by the kilo": lambda of: (
                f"{everything(of) / 1000 * half_up(1000 * of('target', 'percent') / (100 - of('target', 'percent')), 2):.0f} g"
            ),
            "salt for the salt, too": lambda of: (
                f"{everything(of) * of('target', 'percent') / 100 * (1 + of('target', 'percent') / 100 + (of('target', 'percent') / 100) ** 2):.0f} g"
            ),
        },
        "q6": {
            "by the salt": lambda of: (
                f"{of('broth', 'kg') * of('salted', 'percent') / of('end', 'kg'):.1f} %"
            ),
            "by the factor": lambda of: (
                f"{half_up(of('broth', 'kg') / of('end', 'kg'), 2) * of('salted', 'percent'):.1f} %"
            ),
        },
    },
}
