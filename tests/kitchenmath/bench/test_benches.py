"""What each bench makes of typed measurements, against sums by hand."""

import pytest

from kitchenmath.bench import BENCHES
from kitchenmath.cuts import CUTS
from kitchenmath.errors import KitchenError, OutOfRange, Unreadable
from kitchenmath.units import Q_
from tests.helpers.typed_at_benches import LOG, TYPED

RIGHT = {
    "cups": Q_(142, "g"),  # (136 + 149 + 141) / 3
    "friction": Q_(9, "delta_degC"),  # 3 x 26 - (24 + 22 + 23)
    "cuts": Q_(3.0, "mm"),
    "yield": Q_(70.33, "percent"),  # 640 / 910
    "brine": Q_(5, "percent"),  # 50 / 1000
    "foam": Q_(3.25, "min"),  # 30 mL: a quarter of the way from 29 to 33
    "sauce": Q_(30, "percent"),  # 450 / 1500
    "task": Q_(17, "min"),  # the longest
}


@pytest.mark.parametrize("name", RIGHT)
def test_a_bench_gives_what_the_sum_by_hand_gives(name):
    worked = BENCHES[name].worked(TYPED[name])

    assert RIGHT[name].magnitude == pytest.approx(
        worked.number.to(RIGHT[name].units).magnitude, rel=1e-4
    )
    assert worked.sentence


def test_an_oven_is_fitted_from_typed_lines_as_from_a_probes_file():
    """The lines of the file, or each with its units: one coefficient."""
    lines = [line.split(",") for line in LOG.splitlines()[1:]]
    typed = "\n".join(f"{minutes} min {core} °C" for minutes, core in lines)
    by_file = BENCHES["oven"].worked(TYPED["oven"]).number
    by_lines = BENCHES["oven"].worked(TYPED["oven"] | {"log": typed}).number

    assert by_file.magnitude == pytest.approx(by_lines.magnitude)
    assert 1 < by_file.to("W/m**2/K").magnitude < 60


@pytest.mark.parametrize("name", BENCHES)
def test_every_bench_has_a_case_and_asks_nothing_before_it_is_filled(name):
    assert TYPED[name]
    assert BENCHES[name].worked({}) is None
    first = next(key for key, box in BENCHES[name].boxes.items() if box.wanted)
    assert BENCHES[name].worked(TYPED[name] | {first: "  "}) is None


@pytest.mark.parametrize("name", BENCHES)
@pytest.mark.parametrize("rubbish", ["lots", "-5 kg", "1/0", "💧", "9" * 400, "3 s, 4 kg"])
def test_rubbish_in_any_box_is_one_sentence(name, rubbish):
    """Never another error; a box that cannot be read is named by its label."""
    for key, box in BENCHES[name].boxes.items():
        if box.kind == "choice":
            continue
        with pytest.raises(KitchenError) as caught:
            BENCHES[name].worked(TYPED[name] | {key: rubbish})
        if isinstance(caught.value, Unreadable) and rubbish == "lots":
            assert box.label in str(caught.value)
            assert box.example in str(caught.value)


def test_one_cup_shows_no_spread():
    with pytest.raises(OutOfRange, match="Weigh two"):
        BENCHES["cups"].worked({"weights": "140 g"})


def test_a_hydrometer_without_its_temperature_is_asked_for_it():
    with pytest.raises(Unreadable, match="Its temperature"):
        BENCHES["brine"].worked(TYPED["brine"] | {"hydrometer": "1.034"})


def test_the_cuts_to_choose_from_are_cuts_that_the_kit_knows():
    assert set(BENCHES["cuts"].boxes["cut"].options) <= set(CUTS)


def test_a_sauce_that_grew_or_was_timed_once_is_asked_back():
    """More in the pot than before is a slip of the scale; one flow time compares with nothing."""
    with pytest.raises(OutOfRange, match="boiling leaves less"):
        BENCHES["sauce"].worked(TYPED["sauce"] | {"left": "1.6 kg"})
    with pytest.raises(Unreadable, match="Type both, or none"):
        BENCHES["sauce"].worked(TYPED["sauce"] | {"ran_before": ""})


def test_a_sauce_says_how_much_slower_it_runs():
    """20 s / 8 s = 2.5 times."""
    assert "2.5 times as long" in BENCHES["sauce"].worked(TYPED["sauce"]).sentence


@pytest.mark.parametrize(
    ("guess", "said"),
    [
        ("20 min", "100 % too long on average"),
        ("5 min", "50 % too short on average"),
        ("10.04 min", "right on average"),
        ("10.06 min", "1 % too long on average"),
    ],
)
def test_a_guess_is_compared_with_the_mean_of_the_times(guess, said):
    """Twice ten minutes: 20 is 10 too many, 100 % of them; half a percent is no difference."""
    typed = {
        "guess": guess,
        **{name: "10 min; 10 min" for name in TYPED["task"] if name != "guess"},
    }

    assert f"My guess was {said}." in BENCHES["task"].worked(typed).sentence
