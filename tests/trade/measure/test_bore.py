import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.measure.bore import largest, mean, out_of_round, smallest, taper
from shimstock.trade.measure.take import understand
from shimstock.trade.numbers.instruments import good_to
from trade.measure.figures import BORE, figure

METRIC = figure(
    new="90.00 .. 90.02 mm",
    limit="max 90.20 mm",
    at={"depths": ["top", "middle", "bottom"], "across": ["A", "B"]},
)
# Three heights, two directions. Definitions: roundness is the largest |A − B| over the heights,
# cylindricity the largest max − min along the axis over the directions; from a diesel engine
# service manual's page on the two-point bore gauge. The example's numbers are derived from them.
TYPED = ["90.08", "90.06", "90.03", "90.05", "90.04", "90.02"]


def metric(typed=TYPED):
    return understand("bore", METRIC, typed, instrument=good_to(0.005, "mm"))


def test_service_manual_roundness_and_cylindricity():
    assert out_of_round(METRIC, metric()).value == as_printed("0.03")
    assert taper(METRIC, metric()).value == as_printed("0.05")


def test_the_worst_places_are_named():
    assert largest(METRIC, metric()).place == "A top"
    assert smallest(METRIC, metric()).place == "B bottom"
    assert "A bottom" in "\n".join(taper(METRIC, metric()).working.shown())


def test_two_readings_of_0_0003_make_a_difference_uncertain_by_about_0_0004():
    # common practice, no source; the same from JCGM 100:2008, 5.1.2: √2·0.0003 = 0.00042
    six = ["5.7592", "5.7554", "5.7532", "5.7568", "5.7546", "5.7528"]
    reading = understand("liner-bore", BORE, six, instrument=good_to(0.0003, "in"))

    assert 2 * taper(BORE, reading).u == as_printed("0.0004")


def test_a_gap_leaves_the_rest_to_be_compared():
    reading = metric(["-", "90.06", "90.03", "90.05", "90.04", "90.02"])

    assert taper(METRIC, reading).value == as_printed("0.03")
    assert out_of_round(METRIC, reading).value == as_printed("0.02")


def test_one_reading_has_no_taper():
    reading = metric(["90.08", "-", "-", "-", "-", "-"])

    assert taper(METRIC, reading) is None
    assert out_of_round(METRIC, reading) is None


def test_a_list_of_places_is_one_row():
    drum = figure(limit="max 10.060 in", at=["a", "b", "c"])
    reading = understand("drum", drum, ["10.022", "10.014", "10.013"])

    assert out_of_round(drum, reading).value == as_printed("0.009")


def test_the_mean_keeps_the_gauges_own_error():
    tip = figure(limit="max 0.290 in", at=4, judge="mean")
    typed = ["0.36", "0.34", "0.36", "0.34"]
    reading = understand("rock", tip, typed, instrument=good_to(0.02, "in"))

    got = mean(tip, reading)

    assert got.value == as_printed("0.350")
    assert got.u == pytest.approx(0.01)  # ±0.02 is k = 2, and does not shrink with four readings


@given(st.lists(st.integers(900_000, 902_000), min_size=6, max_size=6))
def test_every_line_agrees_and_no_difference_is_below_nothing(ten_thousandths):
    reading = metric([f"{n / 10_000:.4f}" for n in ten_thousandths])

    for got in (
        *(largest(METRIC, reading), smallest(METRIC, reading), mean(METRIC, reading)),
        *(taper(METRIC, reading), out_of_round(METRIC, reading)),
    ):
        assert got.working.disagreements() == []
    spread = largest(METRIC, reading).value - smallest(METRIC, reading).value
    assert 0 <= taper(METRIC, reading).value <= spread + 1e-12
    assert 0 <= out_of_round(METRIC, reading).value <= spread + 1e-12


def test_shop_crank_journal_out_of_round_and_taper_by_stations_and_directions():
    # A crankshaft specification page: out-of-round is X against Y at stations A and B, taper is
    # A against B for X and for Y. Readings from memory of no maker: chosen to part the two.
    journal = figure(
        new="3.7490 .. 3.7500 in",
        limit="min 3.7460 in",
        at={"depths": ["A", "B"], "across": ["X", "Y"]},
    )
    reading = understand("rod-journal", journal, ["3.7496", "3.7492", "3.7489", "3.7490"])

    round_, along = out_of_round(journal, reading), taper(journal, reading)
    assert round_.value == as_printed("0.0007")  # X A less Y A; at B it is 0.0002
    assert along.value == as_printed("0.0004")  # X A less X B; for Y it is 0.0001
    assert "X A" in "\n".join(round_.working.shown())
    assert "X B" in "\n".join(along.working.shown())
