"""The exact ranking, on small networks of every kind."""

from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from shimstock.trade.faults.network import CannotBe, Finding, Network, Spread, Told
from shimstock.trade.faults.ranking import rank
from trade.faults.any_network import BUSY, FAULTY, READINGS, SOUND, cases, every_machine, networks
from trade.faults.small_fan import NETWORK, ROCKING


def chances(network: Network, told: Told) -> dict[str, float] | None:
    """The ranking, or None where what was told cannot be."""
    try:
        return dict(rank(network, told).chances)
    except CannotBe:
        return None


def same(one, other):
    return one == (other if other is None else pytest.approx(other, abs=1e-12))


@settings(max_examples=150, deadline=None)
@given(cases())
def test_it_is_what_every_machine_tried_comes_to(case):
    network, told = case

    assert same(chances(network, told), every_machine(network, told))


@BUSY
@given(cases(), st.randoms(use_true_random=False))
def test_the_order_in_which_things_are_told_does_not_matter(case, pick):
    network, told = case
    findings, causes = list(told.findings.items()), list(told.causes.items())
    pick.shuffle(findings)
    pick.shuffle(causes)

    assert same(chances(network, told), chances(network, Told(dict(findings), dict(causes))))


@BUSY
@given(cases(), st.randoms(use_true_random=False))
def test_the_order_in_which_the_book_has_things_does_not_matter(case, pick):
    network, told = case
    causes, findings = list(network.causes.items()), list(network.findings.items())
    pick.shuffle(causes)
    pick.shuffle(findings)
    turned = Network(dict(causes), dict(findings), network.exclusive[::-1])

    assert same(chances(network, told), chances(turned, told))


@BUSY
@given(cases())
def test_what_nobody_looked_at_changes_nothing(case):
    network, told = case
    looked = {key: network.findings[key] for key in told.findings}

    assert same(chances(network, told), chances(replace(network, findings=looked), told))


@BUSY
@given(cases())
def test_what_says_nothing_changes_nothing(case):
    """A reading on which both bells agree, of a finding that all causes bring on."""
    network, told = case
    bell = Spread(1.0, 0.5)
    finding = Finding(0.1, dict.fromkeys(network.causes, 0.5), bell, bell)
    with_it = replace(network, findings={**network.findings, "more": finding})
    more = Told({**told.findings, "more": 1.7}, told.causes)

    assert same(chances(network, told), chances(with_it, more))


@BUSY
@given(cases(groups=False, settled=False))
def test_told_in_two_parts_it_comes_to_the_same(case):
    """What was not seen first, its chances then taken as priors, and after that all the rest."""
    network, told = case
    not_seen = {key: said for key, said in told.findings.items() if said is False}
    rest = {key: said for key, said in told.findings.items() if said is not False}
    halfway = chances(network, Told(not_seen))
    assume(halfway is not None)

    assert same(chances(network, told), chances(replace(network, causes=halfway), Told({**rest})))


@BUSY
@given(cases())
def test_a_chance_lies_between_those_after_either_result(case):
    network, told = case
    key = next(iter(network.findings))
    rest = {name: said for name, said in told.findings.items() if name != key}
    seen, not_seen, now = (
        chances(network, Told({**rest, **more}, told.causes))
        for more in ({key: True}, {key: False}, {})
    )
    assume(seen and not_seen)

    for cause, chance in now.items():
        low, high = sorted((seen[cause], not_seen[cause]))
        assert low - 1e-12 <= chance <= high + 1e-12


@BUSY
@given(networks(groups=False))
def test_seeing_a_sign_never_lowers_a_cause_that_brings_it_on(network):
    before = chances(network, Told())
    for key, finding in network.findings.items():
        seen, not_seen = (chances(network, Told({key: said})) for said in (True, False))
        for cause in finding.weights:
            assert seen is None or seen[cause] >= before[cause] - 1e-12
            assert not_seen is None or not_seen[cause] <= before[cause] + 1e-12


@BUSY
@given(networks(groups=False), READINGS, READINGS)
def test_the_further_a_reading_is_off_the_likelier_its_causes(network, one, other):
    """Both bells as wide as each other, and nothing else told."""
    less, more = sorted((one, other))
    for key, finding in network.findings.items():
        even = replace(finding, absent=Spread(1.0, 0.6), present=Spread(2.0, 0.6))
        with_it = replace(network, findings={key: even})
        low, high = (chances(with_it, Told({key: read})) for read in (less, more))
        for cause in finding.weights:
            assert low[cause] <= high[cause] + 1e-12


def test_a_reading_far_off_says_no_more_than_the_cap():
    """A million to one, an assumption of ours."""
    finding = Finding(0.0, {"gear": 1.0}, SOUND, FAULTY)
    network = Network({"gear": 0.5}, {"play": finding})

    (far,) = chances(network, Told({"play": 100.0})).values()
    (near,) = chances(network, Told({"play": -100.0})).values()

    # the wider bell wins on both sides, so far from either
    assert far == pytest.approx(1e6 / (1 + 1e6), abs=1e-12)
    assert near == pytest.approx(1e6 / (1 + 1e6), abs=1e-12)
    even = replace(finding, present=Spread(2.0, SOUND.deviation))
    (low,) = chances(replace(network, findings={"play": even}), Told({"play": -100.0})).values()
    assert low == pytest.approx(1 / (1 + 1e6), abs=1e-12)


SURE = Network(
    {"gear": 0.1, "key": 0.1},
    {"rocks": Finding(0.0, {"gear": 1.0}), "hunts": Finding(0.1, {"key": 0.5})},
    (("gear", "key"),),
)


@pytest.mark.parametrize(
    ("told", "words"),
    [
        (Told({"rocks": True}, {"gear": False}), "nothing in the book explains it"),
        (Told({"rocks": True}, {"key": True}), "nothing in the book explains it"),
        (Told({"rocks": False}, {"gear": True}), "cannot all be true"),
        (Told({"squeaks": True}), "there is no finding 'squeaks' here"),
        (Told({}, {"fan": True}), "there is no cause 'fan' here"),
        (Told({}, {"gear": True, "key": True}), "gear and key exclude each other"),
        (Told({"rocks": 0.3}), r"0\.3 was told where only seen or not seen makes sense"),
    ],
)
def test_what_cannot_be_is_said_in_words(told, words):
    with pytest.raises(CannotBe, match=words):
        rank(SURE, told)


def test_a_cause_alone_that_must_show_and_does_not():
    alone = replace(SURE, exclusive=())

    with pytest.raises(CannotBe, match="gear is called confirmed, and a sign that it always"):
        rank(alone, Told({"rocks": False}, {"gear": True}))


def test_many_signs_seen_lose_no_digits():
    """Fifteen causes, each with a sign of its own and one they share: by hand, one at a time.

    The sum over subsets of the signs, its terms of either sign, is off by more here.
    """
    causes = [f"c{n}" for n in range(15)]
    findings = {f"f{n}": Finding(1e-6, {c: 0.9}) for n, c in enumerate(causes)}
    network = Network(dict.fromkeys(causes, 0.001), findings)

    found = chances(network, Told(dict.fromkeys(findings, True)))

    there, away = 0.001 * (1 - (1 - 1e-6) * 0.1), 0.999 * 1e-6
    assert found == pytest.approx(dict.fromkeys(causes, there / (there + away)), rel=1e-12)


def test_twelve_signs_of_the_same_two_causes_by_hand():
    """Half of the time each shows by one cause, in three of four by both; nothing else shows it."""
    findings = {f"f{n}": Finding(0.0, {"gear": 0.5, "key": 0.5}) for n in range(12)}
    network = Network({"gear": 0.01, "key": 0.02}, findings)
    gear, key = 0.01 * 0.98 * 0.5**12, 0.99 * 0.02 * 0.5**12
    both = 0.01 * 0.02 * 0.75**12

    found = chances(network, Told(dict.fromkeys(findings, True)))

    whole = gear + key + both
    assert found == pytest.approx(
        {"gear": (gear + both) / whole, "key": (key + both) / whole}, abs=1e-12
    )


def test_the_fan_by_hand():
    """Bevel: 0.03 · (1 − 0.99 · 0.2 · 0.988²) of 1 − 0.99 · 0.988² · 0.976."""
    top = 0.03 * (1 - 0.99 * 0.2 * 0.988**2)
    whole = 1 - 0.99 * 0.988**2 * 0.976

    assert rank(NETWORK, ROCKING).chances["bevel"] == pytest.approx(top / whole, abs=1e-12)
