"""Trade ways of sets 6 to 10."""

import math

from tests.helpers.trade_ways.numbers import (
    before,
    bottles,
    cider_g,
    clock,
    half_up,
    left_share,
    menu_price,
    whole_up,
)

WAYS = {
    "06-foam": {
        "q1": {
            "by the part": lambda of: (
                f"{of('cider', 'mL') / 8 * of('sugar_litre', 'g/L') / 1000:.0f} g"
            ),
            "by the litre of cider": lambda of: (
                f"{half_up(of('sugar_litre', 'g/L') / 8, 1) * of('cider', 'L'):.0f} g"
            ),
        },
        "q2": {
            "by the whole": lambda of: (
                f"{(cider_g(of) * of('own', 'percent') + 100 * of('q1', 'g')) / (cider_g(of) + of('q1', 'g')):.1f} %"
            ),
            "by what is no sugar": lambda of: (
                f"{100 - half_up(cider_g(of) * (1 - of('own', 'percent') / 100), 0) / (cider_g(of) + of('q1', 'g')) * 100:.1f} %"
            ),
        },
        "q3": {
            "by percent": lambda of: (
                f"{(cider_g(of) + of('q1', 'g')) * of('powder', 'percent') / 100:.1f} g"
            ),
            "by the kilo": lambda of: (
                f"{half_up((cider_g(of) + of('q1', 'g')) / 1000, 2) * of('powder', 'percent') * 10:.1f} g"
            ),
        },
        "q4": {
            "gas by foam": lambda of: (
                f"{(of('cup', 'g') - of('foam', 'g')) / of('foam', 'g') * 100:.0f} %"
            ),
            "times as light, less one": lambda of: (
                f"{(half_up(of('cup', 'g') / of('foam', 'g'), 2) - 1) * 100:.0f} %"
            ),
        },
        "q5": {
            "by the share of the step": lambda of: (
                f"{of('minute', 'min') + 3 * (of('base', 'mL') / 2 - of('before', 'mL')) / (of('after', 'mL') - of('before', 'mL')):.1f} min"
            ),
            "by the minute": lambda of: of.by_the_minute,
        },
        "q6": {
            "by the factor": lambda of: (
                f"{of('plates') * of('spoon', 'mL') / half_up(1 + of('q4', 'percent') / 100, 2):.0f} mL"
            ),
            "by the spoon": lambda of: (
                f"{of('plates') * half_up(of('spoon', 'mL') / (1 + of('q4', 'percent') / 100), 1):.0f} mL"
            ),
        },
    },
    "07-thicken-and-set": {
        "q1": {
            "flour and as much butter": lambda of: (
                f"{2 * of('stock', 'L') * left_share(of) * of('flour', 'g/L'):.0f} g"
            ),
            "roux by the litre": lambda of: (
                f"{2 * of('flour', 'g/L') * half_up(of('stock', 'L') * left_share(of), 2) / 1000:.3f} kg"
            ),
        },
        "q2": {
            "starch and water": lambda of: f"{3 * of('sauce', 'L') * of('wheat', 'g/L') / 2:.0f} g",
            "one and a half of the flour": lambda of: (
                f"{1.5 * of('wheat', 'g/L') * of('sauce', 'L') / 1000:.3f} kg"
            ),
        },
        "q3": {
            "by the sugar": lambda of: (
                f"{of('cider', 'kg') * of('start', 'percent') / of('target', 'percent'):.2f} kg"
            ),
            "by the factor": lambda of: (
                f"{of('cider', 'g') * half_up(of('start', 'percent') / of('target', 'percent'), 3):.0f} g"
            ),
        },
        "q4": {
            "the root of the ratio": lambda of: (
                f"{of('leaf', 'g') * half_up(math.sqrt(of('card') / of('mine')), 2):.1f} g"
            ),
            "the ratio of the roots": lambda of: (
                f"{of('leaf', 'g') * half_up(math.sqrt(of('card')), 2) / half_up(math.sqrt(of('mine')), 2):.1f} g"
            ),
        },
        "q5": {
            "by the grams": lambda of: (
                f"{of('leaves') * of('card_leaf', 'g') * half_up(math.sqrt(of('card') / of('own')), 2) / of('own_leaf', 'g'):.1f} leaves"
            ),
            "to the quarter": lambda of: (
                f"{round(4 * of('leaves') * of('card_leaf', 'g') / of('own_leaf', 'g') * math.sqrt(of('card') / of('own'))) / 4:g}"
            ),
        },
        "q6": {
            "by the flour": lambda of: (
                f"{of('left', 'L') * of('now', 'g/L') / of('wanted', 'g/L') - of('left', 'L'):.1f} L"
            ),
            "by the factor": lambda of: (
                f"{of('left', 'L') * (half_up(of('now', 'g/L') / of('wanted', 'g/L'), 2) - 1):.2f} L"
            ),
        },
    },
    "08-heat-gently": {
        "q2": {
            "in minutes": lambda of: f"{of.right_min:.1f} min",
            "to half a minute": lambda of: f"{round(2 * of.right_min) / 2:g} min",
        },
        "q3": {
            "degrees a minute": lambda of: (
                f"{of('more', 'delta_degC') / half_up(of.pace, 3):.1f} min"
            ),
            "minutes a degree": lambda of: (
                f"{of('more', 'delta_degC') * half_up(1 / of.pace, 2):.0f} min"
            ),
        },
        "q4": {
            "by the ratio": lambda of: (
                f"{of('time', 'min') * half_up(of('new', 'mm') / of('old', 'mm'), 2) ** 2:.0f} min"
            ),
            "by the squares": lambda of: (
                f"{of('time', 'min') * of('new', 'mm') ** 2 / of('old', 'mm') ** 2:.1f} min"
            ),
        },
        "q5": {
            "in °F": lambda of: (
                f"{of('wanted', 'degF') - 1.8 * (of('peak', 'degC') - of('pulled', 'degC')):.0f} °F"
            ),
            "in °C": lambda of: (
                f"{half_up((of('wanted', 'degF') - 32) / 1.8, 1) - (of('peak', 'degC') - of('pulled', 'degC')):.1f} °C"
            ),
        },
        "q6": {
            "in minutes": lambda of: f"{of.right_min:.0f} min",
            "by the clock": lambda of: clock(of.right_min),
        },
    },
    "09-keep-it-safe": {
        "q3": {
            "weights added": lambda of: f"{of.right_kg:.1f} kg",
            "in grams": lambda of: f"{1000 * of.right_kg:.0f} g",
        },
        "q5": {
            "1 °C for each 300 m": lambda of: (
                f"{74 + of('shows', 'degC') - (100 - of('height', 'm') / 300):.1f} °C"
            ),
            "the next whole degree": lambda of: (
                f"{math.ceil(74 + of('shows', 'degC') - (100 - of('height', 'm') / 300) - 1e-9)} °C"
            ),
        },
    },
    "10-land-the-plate": {
        "q1": {
            "added up": lambda of: f"{before(of, 'roast', 'rest', 'carve', 'plate'):.0f} min",
            "by the clock": lambda of: clock(before(of, "roast", "rest", "carve", "plate")),
        },
        "q2": {
            "latest start off the room": lambda of: (
                f"{of('free', 'min') - before(of, 'veloute', 'season', 'foam', 'plate'):.0f} min"
            ),
            "by the clock": lambda of: clock(
                of("free", "min") - before(of, "veloute", "season", "foam", "plate")
            ),
        },
        "q3": {
            "by a factor": lambda of: (
                f"{whole_up(of('covers') * of('base', 'mL') * half_up(1 / left_share(of), 2), 100) / 1000:.1f} L"
            ),
            "by the cover": lambda of: (
                f"{of('covers') * math.ceil(of('base', 'mL') / left_share(of)):.0f} mL"
            ),
        },
        "q4": {
            "the bill shared": lambda of: (
                f"${bottles(of) * of('price', 'dollar') / of('covers') + of('other', 'dollar'):.2f}"
            ),
            "everything for all, then shared": lambda of: (
                f"${half_up(bottles(of) * of('price', 'dollar') + of('covers') * of('other', 'dollar'), 2) / of('covers'):.2f}"
            ),
        },
        "q5": menu_price(lambda of: of("q4", "dollar")),
    },
}
