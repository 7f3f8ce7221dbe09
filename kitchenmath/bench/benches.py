"""What each bench asks for, and what it makes of what a cook typed."""

from statistics import mean

from kitchenmath.bench.bench import Bench, Box, Worked
from kitchenmath.brine import strength, strength_from_density, strength_from_gravity
from kitchenmath.cuts import judge
from kitchenmath.errors import OutOfRange, Unreadable
from kitchenmath.foods import food
from kitchenmath.heat import Piece, check_probe, fit_surface_coefficient, time_to_core
from kitchenmath.ratios import friction_factor
from kitchenmath.safety import point_limit
from kitchenmath.sauces import drainage_half_life, overrun
from kitchenmath.units import Q_, say
from kitchenmath.yields import yield_of

__all__ = ["BENCHES"]


def _cups(weights):
    if len(weights) < 2:
        raise OutOfRange("Weights: one shows no spread. Weigh two cups at least.")
    grams = [each.to("g").magnitude for each in weights]
    middle = mean(grams)
    apart = 100 * (max(grams) - min(grams)) / middle
    return Worked(
        f"{len(grams)} cups: from {min(grams):g} g to {max(grams):g} g, {middle:.0f} g on average. "
        f"From the lightest to the heaviest is {apart:.0f} % of that.",
        Q_(middle, "g"),
    )


def _friction(dough, water, flour, room):
    friction = friction_factor(dough=dough, water=water, flour=flour, room=room)
    before, after = (
        [each.to("degC").magnitude for each in group] for group in ((water, flour, room), (dough,))
    )
    return Worked(
        f"My friction is {say(friction.to('delta_degC'), 2)}: three times {after[0]:g} is "
        f"{3 * after[0]:g}, less {' + '.join(f'{each:g}' for each in before)}.",
        friction.to("delta_degC"),
    )


def _cuts(edges, cut, ruler):
    edges = Q_([each.to("mm").magnitude for each in edges], "mm")
    judged = judge(edges, cut, tolerance=Q_(0.5, "mm"), resolution=ruler)
    return Worked(judged.verdict, Q_(float(edges.magnitude.mean()), "mm"))


def _yield(bought, cut):
    share = yield_of(purchased=bought, edible=cut)
    return Worked(
        f"My yield is {say(share, 2)}: {say(cut)} of {say(bought)} went on, "
        f"and {say(bought - cut.to(bought.units))} came off.",
        share,
    )


def _brine(salt, water, hydrometer, temperature, jug):
    by_weight = strength(salt=salt, water=water)
    ways = [f"Weighed in, the brine is {say(by_weight, 2)}"]
    if hydrometer is not None:
        if temperature is None:
            raise Unreadable("Its temperature: a hydrometer needs it. Type it such as 20 °C.")
        read_off = strength_from_gravity(hydrometer.to("count").magnitude, temperature=temperature)
        ways.append(f"by the hydrometer {say(read_off, 2)}")
    if jug is not None:
        ways.append(f"by the jug {say(strength_from_density(jug / Q_(500, 'mL')), 2)}")
    return Worked(", ".join(ways) + ".", by_weight)


def _foam(base, foam, drained, liquid):
    air = overrun(liquid_weight=base, foam_weight=foam)
    sentence = f"My foam has an overrun of {say(air, 2)}."
    if drained is None:
        return Worked(sentence, None)
    if liquid is None:
        raise Unreadable("All the liquid in it: the half is half of that. Type it such as 55 mL.")
    minutes = Q_([float(place) for place in range(1, len(drained) + 1)], "min")
    out = Q_([each.to("mL").magnitude for each in drained], "mL")
    half = drainage_half_life(minutes, out, liquid=liquid)
    return Worked(f"{sentence} Half of its liquid is out after {say(half, 2)}.", half)


def _sauce(before, left, ran_before, ran_after):
    if left.to("g") >= before.to("g"):
        raise OutOfRange("Left in the pot: boiling leaves less. Weigh it again without the pot.")
    gone = Q_(100 * (1 - (left / before).to("").magnitude), "percent")
    sentence = f"My sauce is reduced by {say(gone, 2)}: {say(left)} of {say(before)} are left."
    if ran_before is None and ran_after is None:
        return Worked(sentence, gone)
    if ran_before is None or ran_after is None:
        raise Unreadable("Runs through: time the same cupful before and after. Type both, or none.")
    times = (ran_after / ran_before).to("").magnitude
    return Worked(f"{sentence} A cupful takes {times:.2g} times as long to run through.", gone)


def _oven(across, oven, log):
    ball = Piece("sphere", diameter=across, food=food("beetroot"))
    fit = fit_surface_coefficient(ball, (log.times, log.temperatures), oven)
    start, done = log.temperatures[0], Q_(85, "degC")
    wider = Piece("sphere", diameter=1.25 * across, food=food("beetroot"))
    sentence = (
        f"My oven's surface coefficient is {say(fit.coefficient, 2)}; the log is met within "
        f"{say(fit.typical_miss, 1)}."
    )
    if start < done < oven:
        time = time_to_core(wider, start, oven, fit.coefficient, done)
        sentence += (
            f" So a beetroot of {say(1.25 * across, 2)} would reach {say(done)} after about "
            f"{say(time, 2)}: an estimate, and a probe decides."
        )
    return Worked(sentence, fit.coefficient)


def _probe(ice, boiling, altitude):
    probe = check_probe(ice, boiling, altitude)
    limit = point_limit("core of poultry").temperature
    needed = probe.must_show(limit)
    offs = [f"{each.magnitude:+.1f} °C" for each in (probe.ice_off, probe.boiling_off)]
    return Worked(
        f"My probe is off by {offs[0]} in ice and by {offs[1]} in boiling water, which boils at "
        f"{say(probe.boils_at, 3)} here. Before a core is at {say(limit)}, it must show "
        f"{needed.magnitude:.1f} °C.",
        Q_(needed.magnitude - limit.magnitude, "delta_degC"),
    )


def _task(guess, times):
    minutes = [each.to("min").magnitude for each in times]
    said = guess.to("min").magnitude
    off = 100 * (said - mean(minutes)) / mean(minutes)
    side = "too short" if off < 0 else "too long"
    near = "right on average" if abs(off) < 0.5 else f"{abs(off):.0f} % {side} on average"
    longest = Q_(max(minutes), "min")
    return Worked(
        f"My guess was {near}. From {min(minutes):g} to {max(minutes):g} min: "
        f"plan with {say(longest, 2)}.",
        longest,
    )


CUT_NAMES = ("brunoise", "small dice", "medium dice", "large dice", "julienne", "bâtonnet")
BENCHES = {
    "cups": Bench(
        "my cup of flour",
        {"weights": Box("Weights", "136, 149, 141 g", "g", "amounts")},
        _cups,
        minutes=20,
    ),
    "friction": Bench(
        "my friction",
        {
            "dough": Box("Dough, after kneading", "26 °C", "degC"),
            "water": Box("Water", "24 °C", "degC"),
            "flour": Box("Flour", "22 °C", "degC"),
            "room": Box("Room", "23 °C", "degC"),
        },
        _friction,
        minutes=25,
    ),
    "cuts": Bench(
        "my brunoise",
        {
            "edges": Box("Edges", "3.5, 3.0, 2.5 mm", "mm", "amounts"),
            "cut": Box("The cut", "brunoise", kind="choice", options=CUT_NAMES),
            "ruler": Box("The ruler shows", "0.5 mm", "mm", wanted=False),
        },
        _cuts,
        minutes=20,
    ),
    "yield": Bench(
        "my yield of celeriac",
        {"bought": Box("As it came", "0.91 kg", "g"), "cut": Box("Cut", "640 g", "g")},
        _yield,
        minutes=30,
    ),
    "brine": Bench(
        "my brine",
        {
            "salt": Box("Salt", "50 g", "g"),
            "water": Box("Water", "950 g", "g"),
            "hydrometer": Box("Hydrometer", "1.034", "count", wanted=False),
            "temperature": Box("Its temperature", "20 °C", "degC", wanted=False),
            "jug": Box("What 500 mL weigh", "518 g", "g", wanted=False),
        },
        _brine,
        minutes=15,
    ),
    "foam": Bench(
        "my foam",
        {
            "base": Box("A cup of base", "270 g", "g"),
            "foam": Box("The cup of foam", "90 g", "g"),
            "drained": Box(
                "Drained after each minute", "4, 9, 14 mL", "mL", "amounts", wanted=False
            ),
            "liquid": Box("All the liquid in it", "52 mL", "mL", wanted=False),
        },
        _foam,
        minutes=20,
    ),
    "sauce": Bench(
        "my sauce",
        {
            "before": Box("In the pot, before", "1.5 kg", "g"),
            "left": Box("Left in the pot", "1.05 kg", "g"),
            "ran_before": Box("A cupful runs through, before", "8 s", "s", wanted=False),
            "ran_after": Box("A cupful runs through, after", "20 s", "s", wanted=False),
        },
        _sauce,
        minutes=40,
    ),
    "oven": Bench(
        "my oven",
        {
            "across": Box("The beetroot, across", "70 mm", "mm"),
            "oven": Box("The oven", "120 °C", "degC"),
            "log": Box(
                "The probe, a time and a temperature a line",
                "0 min 8 °C; 5 min 9.5 °C; 10 min 14 °C",
                kind="log",
            ),
        },
        _oven,
        minutes=45,
    ),
    "probe": Bench(
        "my probe",
        {
            "ice": Box("In melting ice", "0.5 °C", "degC"),
            "boiling": Box("In boiling water", "99 °C", "degC"),
            "altitude": Box("Above the sea", "300 m", "m", wanted=False),
        },
        _probe,
        minutes=15,
    ),
    "task": Bench(
        "my task",
        {
            "guess": Box("My guess", "12 min", "min"),
            "times": Box("By the clock", "14, 17, 15 min", "min", "amounts"),
        },
        _task,
        minutes=15,
    ),
}
