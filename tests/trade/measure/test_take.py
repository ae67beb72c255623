import pickle

import pytest

from published.as_printed import as_printed
from shimstock.trade.measure.plausible import plausible
from shimstock.trade.measure.take import SlippedDigit, understand
from shimstock.trade.numbers.instruments import good_to
from shimstock.trade.numbers.not_understood import NotUnderstood
from trade.measure.figures import BORE, JOURNAL, LASH, PRESSURE, figure
from trade.measure.typed import diesel

SIX = ["5.7592", "5.7554", "5.7532", "5.7568", "5.7546", "5.7528"]


def test_what_was_typed_is_kept_beside_what_was_understood():
    reading = understand("liner-bore", BORE, ["146.284 mm", *SIX[1:]])

    assert reading.typed[0] == "146.284 mm"
    assert reading.values[0] == as_printed("5.7592")
    assert reading.unit == "in"


def test_a_dash_marks_a_place_not_read():
    reading = understand("liner-bore", BORE, [*SIX[:5], "-"])

    assert reading.values[5] is None
    assert len(reading.taken) == 5


def test_only_dashes_are_no_reading():
    with pytest.raises(NotUnderstood, match="no reading at all"):
        understand("liner-bore", BORE, ["-"] * 6)


def test_one_place_takes_one_number():
    with pytest.raises(NotUnderstood, match="makes 2 readings; Gear lash wants 1"):
        understand("lash", LASH, ["0.004", "0.005"])


def test_a_figure_judged_by_its_mean_takes_as_many_as_were_read():
    rock = figure(limit="max 0.290 in", judge="mean", **{"with": "rule"})

    assert len(understand("rock", rock, ["0.09", "0.10", "0.08"]).values) == 3


def test_the_books_instrument_is_taken_unless_another_is_said():
    assert understand("liner-bore", BORE, SIX).instrument.name == "bore gauge"

    metric = understand("liner-bore", BORE, SIX, instrument=good_to(0.01, "mm")).instrument
    assert metric.unit == "in"
    assert metric.expanded(5.75) == pytest.approx(0.01 / 25.4)  # one inch is 25.4 mm exactly


def test_an_unknown_instrument_is_as_good_as_the_last_digit_typed():
    plain = figure(limit="max 0.0120 in")

    assert understand("lash", plain, ["0.004"]).instrument.resolution == pytest.approx(0.001)
    assert understand("lash", plain, ["4.5 thou"]).instrument.resolution == pytest.approx(0.0001)
    assert understand("lash", plain, ["1/64"]).instrument.resolution == pytest.approx(1 / 64)


@pytest.mark.parametrize(
    ("given", "low", "high"),
    [
        (BORE, 5.68, 5.82),  # largest oversize plus limit away from nominal
        (JOURNAL, 3.716, 3.784),
        (LASH, 0, 0.12),  # ten times the limit
        (figure(new="0.02 .. 0.05 in", limit="max 0.10 in"), 0, 1.0),  # still a clearance
        (figure(new="0.05 .. 0.10 in", limit="max 0.15 in"), 0, 0.30),  # no longer
        (PRESSURE, 0, 90),  # twice the largest figure
        (figure(new="2.2495 .. 2.2498 in", limit="min 2.2475 in"), 2.2245, 2.2728),
        (figure(limit="max 1 in", plausible="0.2 .. 0.9 in"), 0.2, 0.9),
    ],
)
def test_plausible_range(given, low, high):
    bounds = plausible(given)

    assert (bounds.low, bounds.high) == (pytest.approx(low), pytest.approx(high))


def test_a_size_alone_has_no_plausible_range():
    assert plausible(figure(unit="in")) is None


def test_a_protrusion_may_lie_below_the_face():
    height = figure(new="0.0020 .. 0.0050 in", **{"with": "depth gauge"})

    assert understand("protrusion", height, ["-0.001"]).values == (-0.001,)


def test_other_readings_of_the_figure_put_the_likeliest_slip_first():
    def first(near):
        with pytest.raises(SlippedDigit) as refused:
            understand("liner-bore", BORE, ["5.9752", *["-"] * 5], near=near)
        return refused.value.likely[0].value

    assert first(near=5.7950) == as_printed("5.7952")
    assert first(near=5.7590) == as_printed("5.7592")


def test_a_slipped_digit_survives_being_packed_away():
    with pytest.raises(SlippedDigit) as refused:
        understand("liner-bore", BORE, ["5.9752", *SIX[1:]])

    again = pickle.loads(pickle.dumps(refused.value))
    assert (str(again), again.likely) == (str(refused.value), refused.value.likely)


def test_a_mean_of_several_is_surer_than_one_only_by_the_step_read():
    one = understand("liner-bore", BORE, SIX)
    four = understand("liner-bore", BORE, SIX, each=4)

    # from memory of JCGM 100: √(δ²/12/4 + a²/3) with δ = 0.0001 and a = 0.0003
    assert four.u(5.75) == pytest.approx(((1e-4**2 / 48) + (3e-4**2 / 3)) ** 0.5)
    assert four.u(5.75) < one.u(5.75)


def test_what_wears_away_is_never_many_times_as_thick_as_new():
    margin = figure(new="0.062 .. 0.094 in", limit="min 0.047 in", **{"with": "rule"})

    with pytest.raises(SlippedDigit):
        understand("valve-margin", margin, ["0.62"])
    assert understand("valve-margin", margin, ["0.010"]).values == (0.010,)
    assert understand("rivet-depth", margin, ["-0.010"]).values == (-0.010,)


def test_a_difference_that_should_be_nothing_may_be_ten_times_its_limit():
    weight = figure(name="Weight over the lighter", new="0 .. 0.5 oz", limit="max 1.0 oz")

    assert understand("piston-weight", weight, ["3.2"]).values == (3.2,)


CLEARANCE = {"derive": {"hole": "liner-bore", "shaft": "piston-skirt"}, "limit": "max 0.0140 in"}


@pytest.mark.parametrize(
    ("says", "taken"),
    [
        ("outside micrometer on skirt, subtracted from the bore", "feeler gauge"),
        ("bore gauge less journal", "feeler gauge"),
        ("bore gauge less journal, or crushable strip", "crushable gauge strip"),
        ("micrometer, or feeler between skirt and bore", "feeler gauge"),
        ("dial on the loose part", "dial gauge"),
    ],
)
def test_a_clearance_read_directly_is_read_with_what_goes_into_the_gap(says, taken):
    # common practice, no source: no micrometer for outside sizes reads a gap
    gap = figure(name="Clearance", **CLEARANCE, **{"with": says})

    assert understand("clearance", gap, ["0.007"]).instrument.name == taken


def test_the_shipped_piston_clearance_is_read_with_a_feeler():
    gap = diesel().measures["piston-clearance"]  # F005

    assert understand("piston-clearance", gap, ["0.007"]).instrument.name == "feeler gauge"


def test_what_a_figure_can_hardly_leave_is_a_sentence():
    with pytest.raises(SlippedDigit, match="which a liner bore can hardly leave"):
        understand("liner-bore", BORE, ["5.9752", *["-"] * 5])
    speed = figure(name="Idle speed", new="580 .. 620 rpm", limit="max 650 rpm")
    with pytest.raises(SlippedDigit, match="which an idle speed can hardly leave"):
        understand("idle", speed, ["60000"])


def test_one_reading_is_not_called_readings():
    with pytest.raises(NotUnderstood, match="makes 1 reading; Liner bore wants 6: "):
        understand("liner-bore", BORE, ["5.7592"])


def test_the_slip_nearest_to_the_digits_typed_comes_first():
    # common practice, no source: a digit slips past its neighbours sooner than past all the others
    with pytest.raises(SlippedDigit) as refused:
        understand("liner-bore", BORE, ["5.9751", "5.7554", "5.7532", "5.7568", "5.7546", "5.7528"])

    offered = [round(slip.value, 4) for slip in refused.value.likely]
    assert offered[0] == 5.7591
    assert offered.index(5.7591) < offered.index(5.7519)
