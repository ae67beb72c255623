from math import isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import Quantity
from shimstock.trade.sums.fasteners._amounts import (
    parse_area,
    parse_force,
    parse_length,
    parse_stress,
    parse_torque,
)
from shimstock.trade.sums.fasteners._films import FILMS
from shimstock.trade.sums.fasteners._grades import parse_grade
from shimstock.trade.sums.fasteners._series import rows
from shimstock.trade.sums.fasteners._threads import Thread, parse_thread
from shimstock.trade.sums.fasteners.assembly_torque import assembly_torque
from shimstock.trade.sums.fasteners.bolt_stress import bolt_stress
from shimstock.trade.sums.fasteners.preload_from_torque import preload_from_torque
from shimstock.trade.sums.fasteners.preload_scatter import preload_scatter
from shimstock.trade.sums.fasteners.torque import torque
from shimstock.trade.sums.fasteners.torque_by_friction import torque_by_friction
from shimstock.trade.sums.fasteners.torque_for_film import torque_for_film
from shimstock.trade.sums.fasteners.torque_one_friction import torque_one_friction
from shimstock.trade.sums.fasteners.turn_of_nut import turn_of_nut

THREADS = st.sampled_from([r for r in rows() if r.d > 0.2]).map(
    lambda r: Thread(r.name, r.d, r.pitch, r.unit, r.form, r.n)
)
FORCES = st.floats(1e-9, 1e12).map(lambda value: Quantity(value, "N", "", "N"))
FRICTION = st.floats(0, 1)
GRADE_5, THREE_EIGHTHS = parse_grade("SAE J429 5"), parse_thread("3/8-16 UNC")


def test_a_slippery_film_wants_less_torque_and_names_its_book():
    got = {film: torque(thread=THREE_EIGHTHS, grade=GRADE_5, film=film) for film in FILMS}
    values = [got[film].value for film in ("black", "lubricated", "cadmium", "anti-seize")]

    assert values == sorted(values, reverse=True)
    for film, one in got.items():
        said = one.working.answers["K source"].value
        assert f"{FILMS[film].k:g} for {film}" in said
        assert FILMS[film].source in said


def test_where_books_disagree_the_torques_of_the_least_and_most_k_are_given():
    """0.15 in wall charts and in Mott, 0.18 in Shigley, for a lubricated thread."""
    got = torque(thread=THREE_EIGHTHS, grade=GRADE_5, film="lubricated").working.answers

    least, most = got["by the least K in print"].value, got["by the most K in print"].value
    assert isclose(least / most, 0.15 / 0.18)


def test_the_scatter_of_torque_is_said():
    got = torque(thread=THREE_EIGHTHS, grade=GRADE_5)
    assert any("30.3 to 40.5 kN" in each for each in got.working.cautions)


def test_a_torque_in_inches_comes_in_pounds_and_one_in_millimetres_in_newtons():
    inch = torque(thread=THREE_EIGHTHS, grade=GRADE_5).working.answers
    metric = torque(thread=parse_thread("M10"), grade=parse_grade("8.8")).working.answers

    assert (inch["torque"].unit, inch["preload"].unit) == ("lbf.in", "lbf")
    assert (metric["torque"].unit, metric["preload"].unit) == ("N.mm", "N")


def test_a_factor_goes_before_a_film_and_a_preload_before_a_grade():
    typed = torque(thread=THREE_EIGHTHS, film="black", factor=0.15, grade=GRADE_5,
                   preload=parse_force("4000 lbf"))  # fmt: skip

    assert typed.value == pytest.approx(225)
    assert "typed" in typed.working.answers["K source"].value
    assert typed.working.value("s") == pytest.approx(0.607, abs=0.001)


def test_a_pull_above_the_proof_load_is_warned_of():
    much = torque(thread=THREE_EIGHTHS, grade=GRADE_5, preload=parse_force("8000 lbf"))
    assert any("stretches for good" in each for each in much.working.cautions)


def test_a_torque_for_which_nothing_says_the_pull_is_refused():
    with pytest.raises(NotPossible, match="name the grade, or type proof or preload"):
        torque(thread=THREE_EIGHTHS)


@pytest.mark.parametrize("text", ["4000", "4,000.5", "1/2"])
def test_a_force_without_a_unit_is_refused_since_it_could_be_either(text):
    with pytest.raises(NotUnderstood, match="says no unit"):
        parse_force(text)


@pytest.mark.parametrize(
    ("read", "text"),
    [(parse_force, "-1 lbf"), (parse_force, "0 N")],
)
def test_a_pull_of_nothing_is_refused(read, text):
    with pytest.raises(NotPossible, match="above 0"):
        torque(thread=THREE_EIGHTHS, preload=read(text))


@given(THREADS, FORCES, st.sampled_from(sorted(FILMS)))
def test_torque_and_preload_are_there_and_back(thread, force, film):
    there = torque(thread=thread, preload=force, film=film)
    unit = thread.units.torque
    turned = Quantity(there.value, unit, "", unit)
    back = preload_from_torque(thread=thread, torque=turned, film=film)

    assert isclose(back.value, there.working.value("F"), rel_tol=1e-12)
    assert there.working.disagreements() == []
    assert back.working.disagreements() == []


@given(THREADS, FORCES, FRICTION, FRICTION)
def test_more_friction_wants_more_torque(thread, force, low, high):
    low, high = sorted((low, high))
    got = [torque_by_friction(thread=thread, preload=force, thread_friction=f, collar_friction=f)
           for f in (low, high)]  # fmt: skip
    short = [torque_one_friction(thread=thread, preload=force, friction=f) for f in (low, high)]

    assert got[0].value <= got[1].value
    assert short[0].value <= short[1].value
    assert [w.working.disagreements() for w in (*got, *short)] == [[], [], [], []]


@given(THREADS, FORCES)
def test_without_friction_the_torque_is_the_work_of_the_screw(thread, force):
    """One turn of T lifts F by one pitch: T·2π = F·P."""
    got = torque_by_friction(thread=thread, preload=force, thread_friction=0, collar_friction=0)
    lifted = got.working.value("F") * thread.pitch

    assert isclose(got.value * 6.283185307179586, lifted, rel_tol=1e-9)


@given(THREADS, FRICTION, FRICTION, st.floats(0.1, 1))
def test_an_assembly_torque_agrees_with_its_working(thread, in_thread, under, share):
    got = assembly_torque(thread=thread, grade=parse_grade("8.8"), thread_friction=in_thread,
                          head_friction=under, share=share, face=parse_length("2 in"),
                          hole=parse_length("1 in"))  # fmt: skip
    assert got.working.disagreements() == []


def test_a_rough_thread_leaves_less_pull_and_a_rough_head_only_more_torque():
    def at(in_thread, under):
        return assembly_torque(thread=parse_thread("M12"), grade=parse_grade("8.8"),
                               thread_friction=in_thread, head_friction=under).value  # fmt: skip

    assert at(0.14, 0.12).preload < at(0.12, 0.12).preload
    assert at(0.12, 0.14).preload == at(0.12, 0.12).preload
    assert at(0.12, 0.14).torque > at(0.12, 0.12).torque


def test_a_head_that_is_in_no_table_is_asked_for():
    with pytest.raises(NotPossible, match="type face and hole"):
        assembly_torque(thread=THREE_EIGHTHS, grade=GRADE_5)
    with pytest.raises(NotPossible, match="swapped"):
        assembly_torque(thread=THREE_EIGHTHS, grade=GRADE_5, face=parse_length("0.4 in"),
                        hole=parse_length("0.55 in"))  # fmt: skip


def test_oiling_a_thread_that_the_book_means_dry_lowers_its_torque():
    got = torque_for_film(torque=parse_torque("32 N.m"), book="plain dry", now="lubricated")

    assert got.value == pytest.approx(28.8)
    assert got.working.answers["torque"].unit == "N.m"
    assert got.working.answers["by the least K in print"].value == pytest.approx(24)  # K 0.15
    assert {"K of the book", "K now"} <= set(got.working.answers)
    assert any("pulls harder" in each for each in got.working.cautions)


@given(st.sampled_from(sorted(FILMS)), st.sampled_from(sorted(FILMS)), st.floats(1e-6, 1e9))
def test_a_torque_for_another_film_and_back_is_the_same(book, now, value):
    there = torque_for_film(torque=Quantity(value, "N.m", "", "N.m"), book=book, now=now)
    back = torque_for_film(torque=Quantity(there.value, "N.m", "", "N.m"), book=now, now=book)

    assert isclose(back.value, value, rel_tol=1e-12)
    assert there.working.disagreements() == []


@given(THREADS, FORCES, st.floats(1e-6, 1e6))
def test_the_turn_of_a_nut_agrees_with_its_working(thread, force, grip):
    got = turn_of_nut(thread=thread, preload=force, grip=Quantity(grip, "mm", "", "mm"))

    assert got.working.disagreements() == []
    assert isclose(got.value.stretch / thread.pitch * 360, got.value.turn, rel_tol=1e-9)


def test_a_longer_bolt_wants_more_turn():
    def turn(grip):
        return turn_of_nut(thread=THREE_EIGHTHS, grade=GRADE_5, grip=parse_length(grip)).value.turn

    assert turn("4 in") == pytest.approx(2 * turn("2 in"))


def test_typed_area_and_proof_stand_in_any_unit():
    inch = torque(thread=THREE_EIGHTHS, area=parse_area("0.0775 in2"), proof=parse_stress("85 ksi"))
    metric = torque(
        thread=THREE_EIGHTHS, area=parse_area("50 mm2"), proof=parse_stress("586.05 MPa")
    )

    assert inch.value == pytest.approx(metric.value, rel=1e-4)


def test_a_stiff_joint_keeps_the_load_from_its_bolt_until_it_parts():
    soft = bolt_stress(preload=20e3, external=10e3, area=58, share=0.8)
    stiff = bolt_stress(preload=20e3, external=10e3, area=58, bolt_rate=1e5, parts_rate=9e5)
    parted = bolt_stress(preload=20e3, external=30e3, area=58, share=0.1)

    assert stiff.value.final < soft.value.final
    assert stiff.working.answers["joint"].value == "holds"
    assert parted.working.answers["joint"].value == "parts"
    assert any("carries the whole load" in each for each in parted.working.cautions)


@pytest.mark.parametrize(
    "given",
    [
        {},
        {"share": 0.2, "bolt_rate": 1.0, "parts_rate": 1.0},
        {"bolt_rate": 1.0},
        {"parts_rate": 1},
    ],
)
def test_the_share_of_the_load_is_said_once(given):
    with pytest.raises(NotPossible, match="left open or said twice"):
        bolt_stress(preload=1, external=1, area=1, **given)


def test_a_scatter_needs_two_bolts():
    with pytest.raises(NotPossible, match="must be 2 to 50"):
        preload_scatter(pulls=[30_000])
    assert preload_scatter(pulls=[30_000, 30_000]).value.deviation == 0
