"""What was measured counts as evidence without being typed again."""

import pytest

from shimstock.trade.faults.network import Told
from shimstock.trade.faults.of_book import (
    checks_of,
    free_signs,
    network_of,
    openings_of,
    spreads_of,
)
from shimstock.trade.faults.ranking import rank
from shimstock.trade.faults.readings import from_readings
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.state import VerdictNow
from shimstock.trade.machine.words import Stage, Verdict

TEXT = """\
book: small
title: A small engine (invented)
parts:
  cylinder: {name: Cylinder, each: ["1", "2"]}
  governor-gear: {name: Governor gear}
  rod: {name: Control rod}
joints:
  side-cover:
    {name: Side cover, between: [governor-gear, rod], seals: oil, open: 25 min, close: 35 min}
figures:
  mesh: {name: Mesh lash, of: governor-gear, new: 0.004 .. 0.006 in, limit: max 0.012 in}
  compression: {name: Compression, of: cylinder, new: 390 .. 410 psi, limit: min 320 psi}
  gap: {name: Gap, of: rod, new: 0.010 .. 0.012 in}
  tooth: {name: Tooth, of: governor-gear, new: 0.3 .. 0.4 in, limit: min 0.2 in}
  slack: {name: Lost motion, of: rod, limit: max 0.030 in}
settings:
  pull: {name: Pull, of: rod, new: 40 .. 50 lbf, limit: max 100 lbf}
causes:
  mesh-worn:
    {name: Mesh worn, part: governor-gear, prior: 0.05, figures: [mesh], shown-by: [tooth],
     check: {do: rock it, minutes: 20 min, open: [side-cover], hands: 2}}
  rings: {name: Rings worn, part: cylinder, prior: common, check: {do: oil test, minutes: 25}}
  bent:
    {name: Rod bent, prior: rare, figures: [pull], check: {do: look, minutes: 5},
     never-with: [rings]}
signs:
  weak: {name: Weak on one, figure: compression, causes: {rings: strong}, minutes: 30 min}
  fires-not: {name: Will not fire, when: cranking, causes: {bent: 0.2}}
  hunts: {name: It hunts, when: running, figure: slack, causes: {mesh-worn: medium, bent: 0.3}}
"""
BOOK = read_book(TEXT, "small.yaml")


def measured(**said):
    """Verdicts by figure_piece or figure_piece_finished."""
    found = {}
    for key, word in said.items():
        figure, piece, *finished = key.split("_")
        stage = Stage.FINISHED if finished else Stage.FOUND
        found[(figure, piece, stage)] = VerdictNow(word, f"{figure} is {word}", "")
    return found


def test_a_worn_figure_is_its_cause_and_a_sound_one_clears_it():
    for word, said in ((Verdict.WORN_OUT, True), (Verdict.SERVICEABLE, False)):
        (found,) = from_readings(BOOK, measured(mesh_=word), {})
        assert (found.cause, found.said, found.figure) == ("mesh-worn", said, "mesh")
        assert str(word) in found.says


@pytest.mark.parametrize("word", [Verdict.BORDERLINE, Verdict.NOT_MEASURED])
def test_what_cannot_be_told_settles_nothing(word):
    assert from_readings(BOOK, measured(mesh_=word), {}) == []


def test_what_only_shows_a_cause_does_not_clear_it():
    (found,) = from_readings(BOOK, measured(tooth_=Verdict.WORN_OUT), {})

    assert (found.cause, found.said) == ("mesh-worn", True)
    assert from_readings(BOOK, measured(tooth_=Verdict.GOOD), {}) == []


@pytest.mark.parametrize("word", [Verdict.WORN_OUT, Verdict.SERVICEABLE])
def test_too_tight_is_not_worn_and_not_sound_either(word):
    """A lash of 0.002 in is outside the new range, and no wear made it so."""
    values = {("mesh", "", Stage.FOUND): [0.002]}

    assert from_readings(BOOK, measured(mesh_=word), values) == []


def test_a_setting_clears_its_cause_only_where_it_is_good():
    assert from_readings(BOOK, measured(pull_=Verdict.SERVICEABLE), {}) == []
    for word, said in ((Verdict.GOOD, False), (Verdict.WORN_OUT, True)):
        values = {("pull", "", Stage.FOUND): [30.0]}  # too little is out of adjustment too
        (found,) = from_readings(BOOK, measured(pull_=word), values)
        assert (found.cause, found.said) == ("bent", said)


def test_after_the_work_only_the_reading_after_it_counts():
    both = measured(mesh_=Verdict.WORN_OUT, mesh__finished=Verdict.GOOD)

    assert [each.said for each in from_readings(BOOK, both, {})] == [False]


def test_a_reading_counts_as_a_number_the_worst_of_several_pieces():
    verdicts = measured(compression_1=Verdict.GOOD, compression_2=Verdict.WORN_OUT)
    values = {
        ("compression", "1", Stage.FOUND): [400.0],
        ("compression", "2", Stage.FOUND): [240.0],
    }

    (found,) = from_readings(BOOK, verdicts, values)

    assert (found.sign, found.said) == ("weak", 240.0)
    assert "worn" in found.says


def test_a_sign_whose_figure_has_no_new_range_goes_by_the_verdict():
    for word, said in ((Verdict.WORN_OUT, True), (Verdict.GOOD, False)):
        (found,) = from_readings(BOOK, measured(slack_=word), {})
        assert (found.sign, found.said) == ("hunts", said)


def test_a_reading_at_the_limit_speaks_for_neither_and_beyond_it_for_the_cause():
    """Bells at 400 and 240, 40 wide: at 320 the odds stay, at 240 they rise by e² e² … once each.

    exp((240 − 400)²/(2·40²)) = e⁸ between a sure sign and none. Worked by hand.
    """
    network = network_of(BOOK)
    prior = rank(network, Told()).chances["rings"]

    at_limit = rank(network, Told({"weak": 320.0})).chances["rings"]
    low = rank(network, Told({"weak": 240.0})).chances["rings"]
    high = rank(network, Told({"weak": 400.0})).chances["rings"]

    assert at_limit == pytest.approx(prior, abs=1e-12)
    assert high < prior < low
    shown, e8 = 1 - 0.98 * 0.2, 2980.958
    expected = 0.1 / 0.9 * (shown + (1 - shown) / e8) / (0.02 + 0.98 / e8)
    assert low / (1 - low) == pytest.approx(expected * _kept(network, "bent"), rel=1e-5)


def _kept(network, other):
    """Rings exclude the bent rod: their odds are lowered by the chance of the other."""
    return 1 - network.causes[other]


def test_bells_of_a_figure_and_of_one_without_a_side():
    absent, present = spreads_of(BOOK.figures["compression"])

    assert (absent.mean, absent.deviation) == (400, 40)
    assert (present.mean, present.deviation) == (240, 40)
    assert spreads_of(BOOK.figures["slack"]) is None


def test_a_book_as_a_network():
    network = network_of(BOOK, {"mesh-worn": 0.2})

    assert network.causes == {"mesh-worn": 0.2, "rings": 0.10, "bent": 0.01}
    assert network.findings["hunts"].weights == {"mesh-worn": 0.4, "bent": 0.3}
    assert network.exclusive == (("bent", "rings"),)
    assert network.findings["hunts"].absent is None


def test_its_checks_and_what_costs_nothing():
    checks = checks_of(BOOK)

    assert set(checks) == {"cause:mesh-worn", "cause:rings", "cause:bent", "sign:weak"}
    mesh = checks["cause:mesh-worn"]
    assert (mesh.minutes, mesh.joints, mesh.hands) == (20, {"side-cover"}, 2)
    assert (checks["sign:weak"].gives, checks["sign:weak"].minutes) == (("weak",), 30)
    assert list(free_signs(BOOK, Told())) == ["fires-not", "hunts"]
    assert list(free_signs(BOOK, Told({"hunts": True}))) == []  # it runs: it fires
    assert list(free_signs(BOOK, Told({"hunts": False}))) == ["fires-not"]
    opening = openings_of(BOOK)
    assert set(opening) == {"open:governor-gear", "open:cylinder"}
    assert (opening["open:cylinder"].confirms, opening["open:cylinder"].minutes) == (("rings",), 25)
