"""Gaskets: limits, inverses and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.gaskets._materials import GASKETS
from shimstock.trade.sums.gaskets.bolt_load import bolt_load
from shimstock.trade.sums.gaskets.bolt_spacing import bolt_spacing
from shimstock.trade.sums.gaskets.edge_distance import edge_distance
from shimstock.trade.sums.gaskets.gasket_compression import gasket_compression
from shimstock.trade.sums.gaskets.gasket_stiffness import gasket_stiffness


def answers(worked):
    return {name: each.value for name, each in worked.working.answers.items()}


def test_asme_table_2_5_1_gasket_factors():
    # ASME VIII-1, appendix 2, table 2-5.1, m and y in psi, as a stored table quotes it.
    assert [(g.m, g.y) for g in GASKETS.values()] == [
        (0.5, 0), (1.0, 200), (1.25, 400), (1.75, 1100), (2.0, 1600), (2.75, 3700), (3.5, 6500),
        (3.0, 10000), (4.0, 8800), (4.75, 13000), (5.5, 18000),
    ]  # fmt: skip


@pytest.mark.parametrize(("contact", "width"), [(0.5, 0.25), (0.5001, 0.25), (0.72, 0.3)])
def test_only_part_of_a_wide_seat_counts(contact, width):
    got = answers(bolt_load(outside=10, contact=contact, pressure=0))
    assert got["seat width"] == pytest.approx(width, rel=1e-3)


@given(st.floats(1, 40), st.floats(0.01, 0.49), st.floats(0, 500))
def test_more_pressure_never_needs_less_load(outside, share, pressure):
    ring = {"outside": outside, "contact": share * outside}
    low = bolt_load(**ring, pressure=pressure).value
    assert bolt_load(**ring, pressure=pressure + 50).value >= low


def test_what_governs_is_said_and_the_bolts_share_it():
    seating = bolt_load(outside=4.5, contact=0.5, pressure=10, bolts=8)
    holding = bolt_load(outside=4.5, contact=0.5, pressure=1000, bolts=8)
    assert answers(seating)["governs"] == "seating the gasket"
    assert answers(holding)["governs"] == "holding the pressure"
    assert answers(holding)["each bolt"] == pytest.approx(holding.value / 8)
    assert holding.value == answers(holding)["holding load"]
    assert seating.value == answers(seating)["seating load"]


def test_soft_rubber_needs_no_seating():
    got = answers(bolt_load(outside=4.5, contact=0.5, pressure=0, material="soft rubber"))
    assert got["load"] == 0


def test_a_ring_is_not_wider_than_half_its_diameter():
    with pytest.raises(NotPossible, match="less than half of the outside diameter"):
        bolt_load(outside=1, contact=0.5, pressure=10)


def test_a_thinner_gasket_is_stiffer_and_leaves_the_bolt_less_of_a_load():
    bolt = {"bolt": 15, "grip": 24, "bolt_modulus": 210_000}
    ring = {"outside": 30, "inside": 15, "modulus": 480}
    thick = answers(gasket_stiffness(**ring, thickness=3, **bolt))
    thin = answers(gasket_stiffness(**ring, thickness=1, **bolt))
    assert thin["gasket"] == pytest.approx(3 * thick["gasket"])
    assert thin["share"] < thick["share"] < 1
    assert set(answers(gasket_stiffness(**ring, thickness=3))) == {"gasket"}
    with pytest.raises(NotPossible, match="must be less than the outside"):
        gasket_stiffness(outside=15, inside=15, thickness=3, modulus=480)


@pytest.mark.parametrize(
    ("bolts", "said"), [(6, "too far apart"), (9, "met"), (16, "met"), (19, "too close")]
)
def test_bolts_stand_three_to_six_diameters_apart(bolts, said):
    assert answers(bolt_spacing(circle=8, bolts=bolts, bolt=0.5))["rule"].startswith(said)


def test_fewest_and_most_bolts_just_meet_the_rule():
    got = answers(bolt_spacing(circle=8, bolts=10, bolt=0.5))
    assert got["spacing"] / 0.5 * 10 == pytest.approx(6 * got["fewest bolts"])
    assert got["spacing"] / 0.5 * 10 == pytest.approx(3 * got["most bolts"])


@given(st.floats(0.1, 5), st.floats(0.1, 50), st.floats(60, 5000))
def test_squeeze_by_stress_is_squeeze_by_thickness(thickness, stress, modulus):
    by_stress = answers(gasket_compression(thickness=thickness, stress=stress, modulus=modulus))
    after = thickness - by_stress["compression"]
    by_after = answers(gasket_compression(thickness=thickness, after=after))
    assert by_after["compression"] == pytest.approx(by_stress["compression"], rel=1e-6)
    assert by_after["share"] == pytest.approx(100 * stress / modulus, rel=1e-6)


def test_one_millimetre_of_squeeze_is_still_hard():
    assert answers(gasket_compression(thickness=2, after=1))["kind"] == "hard"
    assert answers(gasket_compression(thickness=2, after=0.99))["kind"] == "soft"
    assert gasket_compression(thickness=2, after=2).value == 0


def test_a_face_is_flat_enough_or_not():
    gasket = {"thickness": 0.8, "after": 0.7}
    assert answers(gasket_compression(**gasket, flatness=0.15))["flat enough"] == "yes"
    assert answers(gasket_compression(**gasket, flatness=0.16))["flat enough"] == "no"


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"after": 0.9}, "must not be above the thickness before"),
        ({}, "must be one of the two"),
        ({"after": 0.7, "stress": 1, "modulus": 10}, "must be one of the two"),
        ({"after": 0.7, "stress": 1}, "must be one of the two"),
        ({"modulus": 10}, "must be one of the two"),
        ({"stress": 10, "modulus": 10}, "nothing would be left of the gasket"),
    ],
)
def test_what_no_gasket_can_do_is_refused(typed, said):
    with pytest.raises(NotPossible, match=said):
        gasket_compression(thickness=0.8, **typed)


def test_the_edge_rule_says_whose_it_is():
    got = edge_distance(hole=0.4)
    assert got.value == pytest.approx(0.6)
    assert "no rule for gaskets" in got.working.shown()[0]
    with pytest.raises(NotPossible, match="neither mm nor in"):
        edge_distance(hole=0.4, unit="ft")
