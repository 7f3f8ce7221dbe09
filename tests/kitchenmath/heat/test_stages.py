"""Stages one after another: carry-over, wet surfaces, and the mathematics behind them."""

import numpy as np
import pytest
import scipy.integrate
from hypothesis import given, settings
from hypothesis import strategies as st

from kitchenmath.errors import OutOfRange, WrongKind
from kitchenmath.foods import food
from kitchenmath.heat import Piece, Stage, WetSurface, cook, solid, temperature_after, time_to_core
from kitchenmath.heat.stages import _as_product, _cell_by_cell
from kitchenmath.heat.stepping import Way
from kitchenmath.heat.wet import SurfaceLaw
from kitchenmath.safety import limit
from kitchenmath.units.registry import Q_
from kitchenmath.units.saying import say
from tests.helpers.published import Published
from tests.helpers.quantities import celsius, percent

FOODSAFETY = "foodsafety.gov chart, rest time: constant or rising"
VOLUMES = "Finite volumes, 400 cells, 1 s steps"
EXACT = "Exact series with a general library"
PRACTICE = "Common practice, no source"


def stage(around, surface, minutes, wet=None):
    return Stage(celsius(around), Q_(surface, "W/m**2/K"), Q_(minutes, "min"), wet=wet)


def meat(shape, **measures_mm):
    """Beef-like: 0.48 W/m/K and 0.13 mm2/s, as in T4-06."""
    measures = {name: Q_(measure, "mm") for name, measure in measures_mm.items()}
    return Piece(shape, conductivity=Q_(0.48, "W/m/K"), diffusivity=Q_(0.13, "mm**2/s"), **measures)


ROAST = meat("sphere", diameter=120)
MOIST = WetSurface(steam=percent(30))
BOARD = stage(22, 10, 90)
LOIN, LONG_LOIN = meat("cylinder", diameter=80, length=200), meat("cylinder", diameter=80)
TERRINE = meat("brick", length=160, width=100, thickness=50)
POTATO = Piece(
    "sphere", diameter=Q_(90, "mm"), conductivity=Q_(0.6, "W/m/K"),
    diffusivity=Q_(0.14, "mm**2/s"),
)  # fmt: skip


def dry_roast(oven, core=55):
    """T4-06: 12 cm ball from 5 °C at 25 W/m2/K, pulled at 55 °C, then 22 °C at 10 W/m2/K."""
    minutes = time_to_core(
        ROAST, celsius(5), celsius(oven), Q_(25, "W/m**2/K"), celsius(core)
    ).magnitude
    return cook(ROAST, celsius(5), [stage(oven, 25, minutes), BOARD])


def wet_roast(wet, pulled=55, rest=BOARD):
    """The same ball in the same oven with a moist surface, pulled at the same core."""
    oven = cook(ROAST, celsius(5), [stage(180, 25, 240, wet)])
    minutes = oven.when(celsius(pulled)).magnitude
    return cook(ROAST, celsius(5), [stage(180, 25, minutes, wet), rest])


def wrapped_potato():
    return cook(POTATO, celsius(25), [stage(170, 40, 2295.3 / 60), stage(20, 0, 600)])


def cod(thickness):
    """A lean white portion, 3-4 oz: a slab, wide against its thickness."""
    return Piece("slab", thickness=Q_(thickness, "mm"), food=food("cod"))


def fish_in_barely_warm_oven(thickness):
    """Minutes from 5 to 48 °C: fan oven at 90 °C, 18 W/m2/K, 16 % of the fish's own steam."""
    oven = stage(90, 18, 60, WetSurface(steam=percent(16)))
    return cook(cod(thickness), celsius(5), [oven]).when(celsius(48)).magnitude


def fish_rested():
    """25 mm from 10 °C: 3 min in the pan, turned (300 W/m2/K, 130 °C), then on a warm plate."""
    return cook(cod(25), celsius(10), [stage(130, 300, 3), stage(25, 8, 20)])


PUBLISHED = (
    Published("T4-02 sign of the rest", FOODSAFETY, "seen", 1,
              lambda: float(wet_roast(MOIST).carry_over.magnitude >= 0), 0, by="formula"),
    Published("T4-05 potato wrapped, core at last", EXACT, "computed", 111.94,
              lambda: wrapped_potato().core.magnitude[-1], 0.05, by="formula"),
    Published("T4-05 potato wrapped, surface at last", EXACT, "computed", 111.94,
              lambda: wrapped_potato().surface.magnitude[-1], 0.05, by="formula"),
    Published("T4-06 dry roast, peak", VOLUMES, "computed", 92,
              lambda: dry_roast(180).peak.magnitude, 0.5, by="formula"),
    Published("T4-06 dry roast, carry-over", VOLUMES, "computed", 37,
              lambda: dry_roast(180).carry_over.magnitude, 0.5, by="formula"),
    Published("T4-06 dry roast at 110 °C, peak", VOLUMES, "computed", 71,
              lambda: dry_roast(110).peak.magnitude, 0.5, by="formula"),
    *(Published(f"Fish of {thickness} mm in a barely warm oven, minutes", PRACTICE,
                "common practice", 17.5,
                lambda thickness=thickness: fish_in_barely_warm_oven(thickness), 2.5, by="formula")
      for thickness in (22, 24)),
    Published("Fish from the pan, minutes of rest to its peak", PRACTICE, "common practice", 10,
              lambda: fish_rested().peak_after.magnitude, 2.5, by="formula"),
    Published("Fish from the pan, where it comes home", PRACTICE, "common practice", 48,
              lambda: fish_rested().peak.magnitude, 2, by="formula"),
)  # fmt: skip


def test_published_values(published, check):
    """Each value of PUBLISHED with the source, status and tolerance that stand beside it."""
    check(published)


def test_a_dry_roast_in_hot_air_carries_a_caution():
    """T4-06: 37 K of carry-over is absurd, so the result says why, and what to do."""
    said = " ".join(dry_roast(180).cautions)

    assert "dry surface" in said
    assert "wet=WetSurface" in said
    assert "dry surface" not in " ".join(wet_roast(MOIST).cautions[:1])
    assert not any("reckoned with a dry surface" in each
                   for each in cook(ROAST, celsius(5), [stage(80, 500, 60)]).cautions)  # fmt: skip


def test_every_result_says_that_a_probe_decides():
    """An estimate, whatever the stages."""
    assert "a probe in the thickest part decides" in wet_roast(MOIST).cautions[0]
    assert "a probe in the thickest part decides" in wrapped_potato().cautions[0]


def test_fish_below_the_food_codes_limit_says_so():
    """US Food Code 2022, 3-401.11: 63 °C for 15 s in fish; 48 °C is below it."""
    said = " ".join(fish_rested().cautions)

    assert "63 °C for 15 seconds" in said
    assert "your local food code decides" in said
    assert "Food Code" not in " ".join(dry_roast(180).cautions)


def test_a_wet_roast_says_that_it_may_dry():
    """Drying out is not in the model."""
    assert any("dries and browns" in each for each in wet_roast(MOIST).cautions)


def test_a_rest_that_is_too_short_says_so():
    """The core still rises at the end, so its peak is not the peak."""
    short = wet_roast(MOIST, rest=stage(22, 10, 10))

    assert any("still rising" in each for each in short.cautions)
    assert not any("still rising" in each for each in wet_roast(MOIST).cautions)
    assert short.peak.magnitude < wet_roast(MOIST).peak.magnitude


def test_of_a_roast_without_a_rest_no_rest_is_said_to_be_too_short():
    """It is hottest when it comes out, and there was no rest that could be longer."""
    out = cook(ROAST, celsius(5), [stage(180, 25, 60)])

    assert out.core.magnitude[-1] == out.core.magnitude.max()
    assert not any("still rising" in each for each in out.cautions)


def readings(done):
    return np.stack([done.core.magnitude, done.surface.magnitude, done.mean.magnitude])


def referee(power, half_m, start_C, stages, cells=500):
    """scipy.integrate.solve_ivp on a fine mesh: core, surface, mean at the end of each stage."""
    edges = np.linspace(0, 1, cells + 1)
    volumes, width = np.diff(edges ** (power + 1)) / (power + 1), 1 / cells
    values, found = np.full(cells, float(start_C)), []
    for each in stages:
        law, pace = each.law, 0.13e-6 / half_m**2
        gain = half_m * width / 2 / 0.48

        def change(_, now, law=law, pace=pace, gain=gain):
            flux = np.zeros(cells + 1)
            flux[1:-1] = edges[1:-1] ** power * np.diff(now) / width
            surface = law.surface_C(float(now[-1]), gain, float(now[-1]))
            flux[-1] = 2 * (surface - now[-1]) / width
            return pace * np.diff(flux) / volumes

        values = scipy.integrate.solve_ivp(
            change, (0, each._duration_s), values, "LSODA", rtol=1e-8, atol=1e-8, lband=1, uband=1
        ).y[:, -1]
        surface = law.surface_C(float(values[-1]), gain, float(values[-1]))
        found.append([values[0], surface, values @ volumes / volumes.sum()])
    return np.array(found)


SHAPES = {
    "slab": (0, meat("slab", thickness=50), 0.025),
    "cylinder": (1, LONG_LOIN, 0.04),
    "sphere": (2, ROAST, 0.06),
}


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("wet", [None, MOIST])
def test_sear_oven_rest_and_chill_agree_with_a_general_solver(shape, wet):
    """Referee: scipy's solve_ivp on 500 cells, four stages with four coefficients: to 0.02 K."""
    power, body, half_m = SHAPES[shape]
    resting, cold = (wet and WetSurface(humidity=percent(share)) for share in (50, 80))
    stages = [
        stage(200, 300, 2), stage(160, 25, 35, wet), stage(22, 8, 20, resting),
        stage(2, 15, 30, cold),
    ]  # fmt: skip
    expected = referee(power, half_m, 8, stages)
    done = cook(body, celsius(8), stages)
    ends = np.searchsorted(done.time.magnitude, done.stage_ends.magnitude - 1e-9)

    assert expected == pytest.approx(readings(done)[:, ends].T, abs=0.02)


@pytest.mark.parametrize("power", [0, 1, 2])
def test_stepping_through_a_straight_law_meets_the_exact_series(power):
    """A dry law taken by the steps of the wet one, at all readings: to 0.005 K on 175 K."""
    steps_s = 7200 * (np.arange(1, 201) / 200) ** 3
    exact = Way(power, 0.06, 0.48, 0.13e-6, 5.0).dry(180.0, 25.0, steps_s[51:])
    stepped = Way(power, 0.06, 0.48, 0.13e-6, 5.0).wet(
        SurfaceLaw(180.0, 25.0), steps_s, steps_s[51]
    )

    assert exact == pytest.approx(stepped[:, 51:], abs=0.005)


@pytest.mark.parametrize("power", [0, 1, 2])
def test_ever_finer_steps_change_a_wet_stage_by_less_than_it_claims(power):
    """Against sixteen times as many steps, core, surface and mean from the first reading on."""

    def passed(steps):
        steps_s = 7200 * (np.arange(1, steps + 1) / steps) ** 3
        law = SurfaceLaw(180.0, 25.0, MOIST)
        return Way(power, 0.06, 0.48, 0.13e-6, 5.0).wet(law, steps_s, 120.0)

    fine, usual = passed(16 * 200)[:, 15::16], passed(200)
    read = (np.arange(1, 201) / 200) ** 3 >= 1 / 60

    assert fine[:, read] == pytest.approx(usual[:, read], abs=0.002)


bodies = st.sampled_from([ROAST, LOIN, LONG_LOIN, TERRINE, meat("slab", thickness=25)])
places = st.tuples(st.floats(0, 250), st.floats(2, 800), st.floats(1, 90))


@settings(deadline=None)
@given(bodies, st.floats(-5, 40), places)
def test_one_dry_stage_is_the_exact_series(body, start, place):
    """Core, surface and mean of every reading against `temperature_after`, to 0.005 K."""
    around, surface, minutes = place
    done = cook(body, celsius(start), [stage(around, surface, minutes)])
    exact = [
        temperature_after(
            body, celsius(start), celsius(around), Q_(surface, "W/m**2/K"), done.time, each
        ).magnitude
        for each in ("centre", "surface", "mean")
    ]

    assert np.array(exact) == pytest.approx(readings(done), abs=0.005)


@settings(deadline=None)
@given(bodies, st.floats(-5, 40), places, st.floats(0.1, 0.9))
def test_cutting_a_stage_in_two_changes_nothing(body, start, place, cut):
    """Two stages of the same place are one: the last reading to 1e-4 K, of any shape."""
    around, surface, minutes = place
    whole = cook(body, celsius(start), [stage(around, surface, minutes)])
    # A coefficient a millionth apart, so that the waves of the second stage are others.
    first, second = (
        stage(around, surface * near, part * minutes)
        for near, part in ((1, cut), (1 + 1e-6, 1 - cut))
    )
    halves = cook(body, celsius(start), [first, second])

    assert readings(whole)[:, -1] == pytest.approx(readings(halves)[:, -1], abs=1e-3)


@settings(deadline=None)
@given(bodies, st.floats(-5, 40), places, st.floats(1, 100))
def test_wrapped_food_keeps_its_mean(body, start, place, rest):
    """Energy balance: nothing passes a surface coefficient of 0."""
    around, surface, minutes = place
    done = cook(body, celsius(start), [stage(around, surface, minutes), stage(20, 0, rest)])

    assert done.mean.magnitude[60] == pytest.approx(done.mean.magnitude[-1], abs=1e-6)


@settings(deadline=None)
@given(bodies, st.floats(0, 40), st.lists(places, min_size=1, max_size=4))
def test_nothing_gets_hotter_or_colder_than_all_that_is_around_it(body, start, around):
    """Limits of dry stages: between the coldest and the hottest of start and surroundings."""
    done = cook(body, celsius(start), [stage(*each) for each in around])
    lowest = min(start, *(each[0] for each in around))
    highest = max(start, *(each[0] for each in around))

    assert readings(done).min() >= lowest - 0.01
    assert readings(done).max() <= highest + 0.01


@pytest.mark.parametrize("body", [LOIN, TERRINE, meat("cylinder", diameter=80, length=40)])
def test_cells_meet_the_exact_products_where_both_hold(body):
    """Dry oven and rest against the exact sum of products: core and mean to 0.06 K, at all times.

    The 1.5 min of the first reading among them.
    """
    stages = [stage(110, 25, 30), stage(22, 10, 20)]
    exact, cells = (way(body, 5.0, stages)[1] for way in (_as_product, _cell_by_cell))
    apart = np.abs(np.array(exact) - np.array(cells))

    assert apart[:, [0, 2]].max() < 0.06
    assert apart[:, 1].max() < 0.15


def test_a_wet_loin_with_far_ends_is_a_long_one():
    """The cells of a wet cylinder a metre long against the long cylinder's own way."""
    far_apart = meat("cylinder", diameter=80, length=1000)
    stages = [stage(180, 25, 40, MOIST), stage(22, 10, 20)]
    cells, way = (cook(body, celsius(5), stages) for body in (far_apart, LONG_LOIN))
    minutes = cells.time.magnitude
    settled = ((minutes > 8) & (minutes < 40)) | (minutes > 45)
    for name, allowed in (("core", 0.1), ("surface", 0.2)):
        own = np.interp(minutes, way.time.magnitude, getattr(way, name).magnitude)

        assert own[settled] == pytest.approx(getattr(cells, name).magnitude[settled], abs=allowed)


def test_ends_make_a_wet_loin_come_sooner():
    """Monotonicity: more surface, shorter time; the terrine's core with all its faces as well."""
    stages = [stage(180, 25, 90, MOIST)]
    slab = meat("slab", thickness=50)

    assert cook(LOIN, celsius(5), stages).when(celsius(55)) < cook(
        LONG_LOIN, celsius(5), stages
    ).when(celsius(55))
    assert cook(TERRINE, celsius(5), stages).when(celsius(55)) < cook(
        slab, celsius(5), stages
    ).when(celsius(55))


def test_a_wet_surface_settles_where_the_stage_says():
    """Long enough in one place, everything is where the balance is: no surroundings of 180 °C."""
    place = stage(180, 25, 1200, MOIST)
    done = cook(meat("slab", thickness=25), celsius(5), [place])

    assert place.settles_at.magnitude == pytest.approx(done.core.magnitude[-1], abs=0.01)
    assert place.settles_at.magnitude == pytest.approx(done.surface.magnitude[-1], abs=0.01)


def test_more_steam_cooks_sooner_and_radiation_too():
    """Monotonicity: less evaporation, more heat left for the roast."""
    times = [
        cook(ROAST, celsius(5), [stage(180, 25, 300, wet)]).when(celsius(50)).magnitude
        for wet in (
            WetSurface(steam=percent(20)),
            WetSurface(steam=percent(40)),
            WetSurface(steam=percent(20), radiant=percent(60)),
        )
    ]

    assert times[1] < times[0]
    assert times[2] != times[0]


def test_the_peak_lies_between_the_readings():
    """A parabola through three of them: the same from a rest cut in two, to 0.01 K and 0.1 min."""
    whole = dry_roast(180)
    again = cook(
        ROAST, celsius(5),
        [stage(180, 25, whole.leaves_heat.magnitude), stage(22, 10, 31), stage(22, 10, 59)],
    )  # fmt: skip

    assert whole.peak.magnitude == pytest.approx(again.peak.magnitude, abs=0.01)
    assert whole.peak_after.magnitude == pytest.approx(again.peak_after.magnitude, abs=0.1)


def test_when_meets_the_exact_time():
    """Between readings: against `time_to_core`, to a second."""
    done = cook(ROAST, celsius(5), [stage(110, 25, 180)])
    for core in (20, 48, 63):
        exact = time_to_core(ROAST, celsius(5), celsius(110), Q_(25, "W/m**2/K"), celsius(core))

        assert exact.magnitude == pytest.approx(done.when(celsius(core)).magnitude, abs=1 / 60)


def test_when_counts_stages_of_chilling_too():
    """The first time: on the way up where it passes there, else on the way down."""
    done = cook(ROAST, celsius(5), [stage(110, 25, 180), stage(2, 15, 600)])
    chilled = cook(ROAST, celsius(60), [stage(2, 15, 600)])

    assert done.when(celsius(40)).magnitude < 180
    assert 0 < chilled.when(celsius(21)).magnitude < 600


def test_heat_ends_with_the_last_place_that_warms():
    """Pan, oven, board: the oven's end is where the carry-over begins."""
    done = cook(ROAST, celsius(5), [stage(200, 300, 3), stage(110, 25, 90), stage(22, 10, 60)])

    assert done.leaves_heat.magnitude == pytest.approx(93, abs=1e-9)
    assert [3, 93, 153] == pytest.approx(list(done.stage_ends.magnitude), abs=1e-9)


def test_fahrenheit_and_hours_cook_alike():
    """Unit invariance of a whole wet cook."""
    there = cook(ROAST, celsius(5), [stage(180, 25, 90, MOIST), BOARD])
    american = Stage(
        celsius(180).to("degF"),
        Q_(25, "W/m**2/K").to("btu/hour/ft**2/delta_degF"),
        Q_(1.5, "h"),
        wet=WetSurface(wet_bulb=there_wet_bulb()),
    )
    here = cook(ROAST, Q_(41, "degF"), [american, BOARD])

    assert there.peak.magnitude == pytest.approx(here.peak.magnitude, abs=1e-6)


def there_wet_bulb():
    return stage(180, 25, 1, MOIST).settles_at.to("degF")


@pytest.mark.parametrize(
    ("wrong", "error", "words"),
    [
        (lambda: stage(180, 25, 0), OutOfRange, "duration: needs more than 0"),
        (lambda: stage(180, -1, 5), OutOfRange, "surface_coefficient: needs at least 0"),
        (lambda: stage(180, 25, 5, wet=percent(30)), WrongKind, "wet: needs a WetSurface"),
        (lambda: stage(-18, 25, 5, wet=MOIST), OutOfRange, "surroundings: a wet surface"),
        (lambda: Stage(180, Q_(25, "W/m**2/K"), Q_(5, "min")), WrongKind, "surroundings: "),
        (lambda: cook(ROAST, celsius(5), []), WrongKind, "stages: needs a list"),
        (lambda: cook(ROAST, celsius(5), [180]), WrongKind, "stages: needs a list"),
        (lambda: cook(ROAST, 5, [BOARD]), WrongKind, "start: "),
        (lambda: cook("roast", celsius(5), [BOARD]), WrongKind, "piece: needs a Piece"),
        (lambda: cook(ROAST, celsius(5), [stage(180, 25, 1e-6)]), OutOfRange, "too short"),
        (lambda: cook(ROAST, celsius(5), [stage(180, 25, 60)]).peak, OutOfRange, "add a rest"),
        (lambda: cook(ROAST, celsius(60), [stage(2, 25, 60)]).pulled, OutOfRange, "none heats it"),
        (lambda: dry_roast(180).when(celsius(150)), OutOfRange, "never to 150 °C"),
    ],
)
def test_refusals_name_the_parameter(wrong, error, words):
    """Each message names what came and what to type."""
    with pytest.raises(error, match=words):
        wrong()


@pytest.mark.parametrize("body", [LOIN, TERRINE])
def test_more_cells_and_shorter_steps_change_a_wet_body_by_little(body, monkeypatch):
    """28 cells and four steps in place of one: core and mean to 0.05 K, from the first reading."""
    stages = [stage(180, 25, 90, MOIST), stage(22, 10, 20)]
    ours = np.array(_cell_by_cell(body, 5.0, stages)[1])
    monkeypatch.setattr(solid, "_CELLS", 28)
    monkeypatch.setattr(solid, "_FIRST_STEPS", 40)
    whole_step = solid.Solid._step
    monkeypatch.setattr(
        solid.Solid, "_step", lambda body, law, s: [whole_step(body, law, s / 4) for _ in range(4)]
    )
    apart = np.abs(ours - np.array(_cell_by_cell(body, 5.0, stages)[1]))

    assert apart[:, [0, 2]].max() < 0.05


@pytest.mark.parametrize("power", [0, 1])
def test_a_sealed_way_keeps_its_heat_and_a_flux_adds_just_what_it_brings(power):
    """By hand: a flux of 1 K m2/W for t adds t x (power + 1) x diffusivity / (k x half) K."""
    way = solid._Cells(power, 0.04, 0.48, 0.13e-6)
    passed, by_old, by_new = way.over(37.0)
    cells = np.linspace(5, 60, solid._CELLS)

    assert passed @ cells @ way.shares == pytest.approx(cells @ way.shares)
    assert (by_old + by_new) @ way.shares == pytest.approx(
        37.0 * (power + 1) * 0.13e-6 / (0.48 * 0.04)
    )


def test_the_wet_brick_takes_few_steps(monkeypatch):
    """12 growing steps, then one a reading: 71 a stage, however thin the piece; no stability."""
    taken = []
    whole_step = solid.Solid._step
    monkeypatch.setattr(
        solid.Solid, "_step", lambda body, law, s: (taken.append(s), whole_step(body, law, s))
    )
    cook(meat("brick", length=60, width=40, thickness=8), celsius(5), [stage(180, 25, 60, MOIST)])

    assert len(taken) == 12 + 59
    assert sum(taken) == pytest.approx(3600)


def test_the_caution_quotes_the_codes_three_temperatures():
    """FDA Food Code 3-401.11, as the table of limits has it; ground and injected meat too."""
    said = " ".join(wet_roast(MOIST).cautions)
    rows = [limit(what) for what in ("intact meat", "ground meat", "injected meat", "poultry")]

    assert [say(row.time) for row in rows] == ["15 s", "17 s", "17 s", "15 s"]
    assert all(say(row.temperature) in said for row in rows)
    assert "68 °C for 17 seconds in ground or injected meat" in said
