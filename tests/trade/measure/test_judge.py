import json
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from published.as_printed import as_printed
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.judge import Judged, judge
from shimstock.trade.measure.take import understand
from shimstock.trade.numbers.instruments import Instrument, good_to
from trade.measure.figures import BORE, LASH, PRESSURE, figure

ORDER = [Verdict.GOOD, Verdict.SERVICEABLE, Verdict.BORDERLINE, Verdict.WORN_OUT]
BOTH = figure(new="9.97 .. 10.03 mm", limit=["max 10.05 mm", "min 9.95 mm"])
SLOW_IDLE = figure(name="Slow idle", new="580 .. 620 rpm", kind="setting")
FAST_IDLE = figure(name="Fast idle", new="1195 .. 1235 rpm", limit="max 1255 rpm", kind="setting")
VALVE_LASH = figure(name="Valve lash", new="0.0150 .. 0.0150 in", kind="setting")


def verdict(of, value, u, **options):
    return judge("x", of, value, u, **options)


@pytest.mark.parametrize(
    ("value", "word"),
    [
        (9.99, Verdict.GOOD),  # proven conforming is 9.99 … 10.01
        (10.01, Verdict.GOOD),
        (10.03, Verdict.BORDERLINE),  # in between neither side is proven
        (9.92, Verdict.BORDERLINE),
        (10.08, Verdict.BORDERLINE),
        (10.0901, Verdict.WORN_OUT),  # proven non-conforming is below 9.91, above 10.09
        (9.9099, Verdict.WORN_OUT),
    ],
)
def test_iso_14253_1_rule_with_limits_9_95_10_05_and_u_0_04(value, word):
    # ISO 14253-1, decision rule (from memory); the numbers follow from it. At 9.99 and 10.01 the
    # reading is U inside the limit: a hair nearer the middle is asked for here.
    nudge = 0.001 if value == 9.99 else -0.001 if value == 10.01 else 0

    assert verdict(BOTH, value + nudge, 0.02).verdict is word


@pytest.mark.parametrize(
    ("limits", "value", "u", "printed"),
    [
        ("max -5.40 V", -5.47, 0.05, "0.92"),  # JCGM 106:2012, clause 7, diode (from memory)
        ("min 490 psi", 509.7, 8.6, "0.99"),  # vessel (from memory)
        (["min 12.5 cc", "max 16.3 cc"], 13.6, 1.8, "0.66"),  # oil (from memory)
    ],
)
def test_jcgm_106_probability_of_conformity(limits, value, u, printed):
    judged = verdict(figure(limit=limits), value, u)

    assert judged.p_within == as_printed(printed)
    assert judged.working.disagreements() == []


@pytest.mark.parametrize(
    ("value", "word"),
    [
        (5.7508, Verdict.GOOD),
        (5.7515, Verdict.GOOD),  # the end of new belongs to new
        (5.7554, Verdict.SERVICEABLE),
        (5.7598, Verdict.BORDERLINE),
        (5.7600, Verdict.BORDERLINE),
        (5.7602, Verdict.BORDERLINE),
        (5.7604, Verdict.WORN_OUT),
    ],
)
def test_the_words_along_a_bores_life(value, word):
    assert verdict(BORE, value, 0.00015).verdict is word


def test_exactly_at_the_limit_nothing_is_proven():
    judged = verdict(BORE, 5.7600, 0.00015)

    assert judged.p_within == pytest.approx(0.5)
    assert judged.settles.startswith("It reads exactly on the limit")


def test_without_uncertainty_the_limit_itself_is_within():
    assert verdict(BORE, 5.7600, 0.0).verdict is Verdict.SERVICEABLE
    assert verdict(BORE, 5.7601, 0.0).verdict is Verdict.WORN_OUT
    assert verdict(BORE, 5.7601, 0.0).p_within == 0


def test_a_difference_that_only_the_computer_sees_decides_nothing():
    # 5.751 − 5.750 is 0.0010000000000003 to a computer
    taper = figure(new="0 .. 0.0005 in", limit="max 0.0010 in")

    assert verdict(taper, 5.751 - 5.750, 0.0).verdict is Verdict.SERVICEABLE


def test_a_size_alone_gets_no_verdict():
    judged = verdict(figure(unit="in"), 5.7628, 0.0001)

    assert (judged.verdict, judged.p_within) == (None, None)
    assert "size only" in judged.says
    assert judged.working.disagreements() == []


def test_tighter_than_new_is_said():
    assert "under the new 0.0030 to 0.0060 in" in verdict(LASH, 0.0010, 0.0002).says
    assert "over the new 35 to 45 psi" in verdict(PRESSURE, 60, 1).says


@pytest.mark.parametrize(
    ("of", "value", "word"),
    [
        (SLOW_IDLE, 600, Verdict.GOOD),
        (SLOW_IDLE, 619, Verdict.GOOD),  # a setting is taken as read
        (SLOW_IDLE, 622, Verdict.BORDERLINE),
        (SLOW_IDLE, 705, Verdict.WORN_OUT),
        (FAST_IDLE, 1226, Verdict.GOOD),
        (FAST_IDLE, 1245, Verdict.SERVICEABLE),
        (FAST_IDLE, 1344, Verdict.WORN_OUT),
        (VALVE_LASH, 0.0150, Verdict.GOOD),
        (VALVE_LASH, 0.0152, Verdict.WORN_OUT),
    ],
)
def test_settings(of, value, word):
    u = 0.00005 if of is VALVE_LASH else 2.0

    assert verdict(of, value, u).verdict is word


def test_a_setting_says_what_to_set_it_to():
    assert verdict(SLOW_IDLE, 705, 2.0).says == "705 rpm: out of its setting; set to 580 to 620 rpm"
    assert verdict(VALVE_LASH, 0.018, 0.0001).says.endswith("set to 0.0150 in")
    assert verdict(FAST_IDLE, 1245, 2.0).says.endswith("set to 1195 to 1235 rpm")


def test_an_exact_setting_is_met_as_nearly_as_the_gauge_can_tell():
    assert verdict(VALVE_LASH, 0.0154, 0.0003).verdict is Verdict.GOOD


def test_what_would_settle_a_borderline_is_computed():
    judged = verdict(BORE, 5.7598, 0.00015)

    assert judged.settles == (
        "Measure again with a gauge good to ±0.0001 in: as it stands, an expanded uncertainty "
        "below 0.00020 in would decide it"
    )
    assert verdict(BORE, 5.7598, 0.0001 / 2).verdict is Verdict.SERVICEABLE


def test_the_mean_of_a_few_is_offered_where_the_step_read_is_what_blurs_it():
    feeler = Instrument("feeler gauge", 0.0010, 0.0002, "in")
    # 4·(0.0010²/12/n + 0.0002²/3) < 0.0004² gives n above 3.1 (JCGM 100:2008, 4.2.3)
    judged = verdict(LASH, 0.0116, feeler.u(0.0116), gauge=feeler)
    assert "or take the mean of 4 readings" in judged.settles

    dial = Instrument("dial", 0.0001, 0.0005, "in")
    assert "mean" not in verdict(LASH, 0.0119, dial.u(0.0119), gauge=dial).settles


def test_a_difference_needs_a_gauge_surer_by_root_two():
    gauge = good_to(0.0003, "in")
    judged = verdict(LASH, 0.0124, 2**0.5 * gauge.u(0), gauge=gauge)

    assert "±0.0002 in" in judged.settles  # 0.0004/√2 = 0.00028, rounded down


def test_a_stand_in_figure_is_told_from_the_makers():
    page = figure(limit="max 0.0120 in", page=41)

    assert verdict(LASH, 0.004, 0.0001).stand_in
    assert not verdict(page, 0.004, 0.0001).stand_in
    assert "maker's book, page 41" in verdict(page, 0.004, 0.0001).working.source
    assert "stand-in figure" in verdict(LASH, 0.004, 0.0001).working.source


@pytest.mark.parametrize(
    ("of", "value"), [(BORE, 5.7598), (BORE, 5.7554), (figure(unit="in"), 5.0), (SLOW_IDLE, 705)]
)
def test_a_verdict_is_stored_and_read_back_whole(of, value):
    judged = verdict(of, value, 0.00015, piece="1")

    again = Judged.from_data(json.loads(json.dumps(judged.as_data())))

    assert again == judged
    assert (again.says, again.settles) == (judged.says, judged.settles)
    assert again.working == judged.working


us = st.floats(1e-6, 0.01)
values = st.floats(0.0030, 0.05)


@given(values, st.floats(0, 0.05), us)
def test_more_wear_never_gives_a_better_verdict(value, more, u):
    less_worn, worn = verdict(LASH, value, u), verdict(LASH, value + more, u)

    assert ORDER.index(less_worn.verdict) <= ORDER.index(worn.verdict)


@given(st.floats(0, 45), st.floats(0, 45), st.floats(0.01, 10))
def test_less_pressure_never_gives_a_better_verdict(value, less, u):
    before, after = verdict(PRESSURE, value, u), verdict(PRESSURE, value - less, u)

    assert ORDER.index(before.verdict) <= ORDER.index(after.verdict)


@given(values, st.floats(0, 0.05), us)
def test_more_wear_never_raises_the_chance_of_being_within(value, more, u):
    assert verdict(LASH, value + more, u).p_within <= verdict(LASH, value, u).p_within


@given(st.integers(57_400, 57_700))
def test_inches_and_millimetres_give_the_same_verdict(ten_thousandths):
    inches = Decimal(ten_thousandths) / 10_000
    said = [f"{inches} in", f"{inches * Decimal('25.4')} mm"]  # one inch is 25.4 mm exactly
    first, second = (
        understand("bore", BORE, [text, "-", "-", "-", "-", "-"]).values[0] for text in said
    )

    assert first == second
    assert verdict(BORE, first, 0.00015).says == verdict(BORE, second, 0.00015).says


@given(st.floats(-0.5, 0.5), us)
def test_every_line_shown_agrees(value, u):
    assert verdict(LASH, value, u).working.disagreements() == []


@given(st.floats(9, 11), st.floats(0.0001, 0.5))
def test_every_line_of_two_limits_agrees(value, u):
    assert verdict(BOTH, value, u).working.disagreements() == []


@given(st.floats(0, 100), st.floats(0.01, 20))
def test_every_line_of_a_lower_limit_agrees(value, u):
    assert verdict(PRESSURE, value, u).working.disagreements() == []


RING_GAP = figure(new="0.022 .. 0.032 in", limit=["max 0.060 in", "min 0.022 in"])
PROTRUSION = figure(new="0.0020 .. 0.0050 in")


@pytest.mark.parametrize(
    ("of", "value", "word"),
    [
        (RING_GAP, 0.0225, Verdict.GOOD),  # no wear is allowed for below: taken as it is
        (RING_GAP, 0.0220, Verdict.GOOD),
        (RING_GAP, 0.0215, Verdict.BORDERLINE),
        (RING_GAP, 0.0200, Verdict.WORN_OUT),
        (RING_GAP, 0.0595, Verdict.BORDERLINE),  # above stands a wear limit
        (PROTRUSION, 0.0049, Verdict.GOOD),
        (PROTRUSION, 0.0055, Verdict.BORDERLINE),
        (PROTRUSION, 0.0062, Verdict.WORN_OUT),
    ],
)
def test_where_no_wear_is_allowed_for_the_new_range_is_taken_as_it_is(of, value, word):
    assert verdict(of, value, 0.0004).verdict is word


@pytest.mark.parametrize(
    ("value", "u", "read"),
    [(0.0101, 0.002, "0.010 in"), (0.0101, 0.0002, "0.0101 in"), (0.35, 0.01, "0.35 in")],
)
def test_no_more_digits_are_shown_than_the_instrument_gave(value, u, read):
    assert verdict(figure(unit="in"), value, u).says.startswith(read)


def test_a_margin_is_never_a_negative_inside():
    shown = "\n".join(judge("bore", BORE, 5.7607, 0.00015).working.shown())

    assert "0.0007 in; outside by" in shown
    assert "−0.0007 in; inside by" not in shown
    inside = "\n".join(judge("bore", BORE, 5.7590, 0.00015).working.shown())
    assert "0.001 in; inside by" in inside


@pytest.mark.parametrize(
    ("value", "note"), [(5.7505, "is over 99.99 %"), (5.7700, "is under one in a million")]
)
def test_a_chance_is_never_printed_as_all_or_nothing(value, note):
    working = judge("bore", BORE, value, 0.00015).working

    assert not any(line.startswith("p =") for line in working.shown())
    assert any(note in line for line in working.shown())
    assert working.disagreements() == []
