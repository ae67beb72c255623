"""Several things told at once come out as each told alone."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shimstock.trade.faults import side_by_side
from shimstock.trade.faults.network import CannotBe, Finding, Network, Told
from shimstock.trade.faults.ranking import rank
from shimstock.trade.faults.side_by_side import chances_of_each
from trade.faults.any_network import BUSY, every_machine, networks, tellings
from trade.faults.small_fan import NETWORK, ROCKING


@st.composite
def several(draw):
    network = draw(networks())
    return network, draw(st.lists(tellings(network), min_size=1, max_size=4))


@BUSY
@given(several())
def test_each_comes_out_as_with_every_machine_tried(case):
    network, told = case
    alone = [_tried(network, each) for each in told]
    together = chances_of_each(network, told)

    if together is None:
        assert None in alone
        return
    for n, each in enumerate(alone):
        assert each is not None
        got = {cause: rows[n] for cause, rows in together.items()}
        assert got == pytest.approx(each, abs=1e-9)


def _tried(network: Network, told: Told) -> dict[str, float] | None:
    """The chance of each cause by writing every machine down; None where none fits."""
    try:
        rank(network, told)
    except CannotBe:
        return None
    return every_machine(network, told)


def test_one_finding_may_be_told_in_one_and_not_in_another():
    told = [ROCKING, Told(), Told({"rocks": False}), Told({"rocks": True}, {"hub": True})]
    together = chances_of_each(NETWORK, told)

    assert together is not None
    for n, each in enumerate(told):
        for cause, chance in rank(NETWORK, each).chances.items():
            assert together[cause][n] == pytest.approx(chance, rel=1e-12)


def test_what_cannot_be_is_left_to_be_ranked_by_itself():
    both = Told({}, {"hub": True, "bevel": True})
    apart = Network(NETWORK.causes, NETWORK.findings, (("hub", "bevel"),))
    sure = Network({"hub": 0.1}, {"rocks": Finding(1.0, {"hub": 0.4})})

    assert chances_of_each(sure, [Told({"rocks": False}), Told()]) is None
    assert chances_of_each(apart, [both, Told()]) is None
    assert chances_of_each(NETWORK, []) is None


def test_what_takes_too_much_room_is_too(monkeypatch):
    assert chances_of_each(NETWORK, [ROCKING, Told()]) is not None
    monkeypatch.setattr(side_by_side, "ROOM", 3)

    assert chances_of_each(NETWORK, [ROCKING, Told()]) is None
