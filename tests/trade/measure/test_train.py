import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.train import after_repair, rock
from trade.measure.typed import diesel

BOOK = diesel()
SPINDLE = diesel(
    """
trains:
  steering:
    name: Steering, wheel to worm
    figure: steering-free-movement
    links:
      - {name: Worm, figure: steering-free-movement, ratio: 4, hold: {what: steering wheel}}
"""
)

tips = st.lists(st.floats(0.005, 0.2), min_size=3, max_size=3)


def rocked(shares, **options):
    """Readings whose differences are these shares of movement, from the crankshaft out."""
    held = [sum(shares[at:]) for at in range(3)]
    return rock(BOOK, "fan-drive", [[f"{tip:.6f}"] for tip in held], within=0.01, **options)


@given(tips)
def test_what_is_found_at_each_mesh_adds_up_to_the_whole_again(shares):
    found = rocked(shares)

    predicted = after_repair(BOOK, "fan-drive", found, {})
    assert predicted.value == pytest.approx(sum(shares), abs=1e-5)
    assert predicted.working.disagreements() == []
    assert [t for link in found.links for t in link.judged.working.disagreements()] == []


@given(tips, st.floats(0, 0.2))
def test_more_play_behind_a_hold_never_clears_that_mesh(shares, more):
    order = [Verdict.GOOD, Verdict.SERVICEABLE, Verdict.BORDERLINE, Verdict.WORN_OUT]
    before = rocked(shares).links[1]
    after = rocked([shares[0], shares[1] + more, shares[2]]).links[1]

    assume(before.judged.value - before.judged.expanded > 0.0030)  # not doubtful at the tight end
    assert order.index(before.verdict) <= order.index(after.verdict)


def test_a_hold_that_was_not_rocked_leaves_what_is_before_it_unknown():
    found = rock(BOOK, "fan-drive", [None, ["0.290"], ["0.090"]], within=0.01)

    assert found.total is None
    assert found.links[0].verdict is Verdict.NOT_MEASURED
    assert "hold crankshaft" in found.links[0].says
    assert found.links[1].verdict is Verdict.WORN_OUT


def test_so_little_play_that_no_mesh_can_be_over():
    found = rock(BOOK, "fan-drive", [["0.05"]], within=0.01)

    assert "within the limit" in found.links[1].says
    assert found.links[1].verdict is Verdict.SERVICEABLE


def test_more_holds_than_links_are_refused():
    with pytest.raises(ValueError, match="4 holds were read"):
        rock(BOOK, "fan-drive", [["0.3"]] * 4)


def test_a_prediction_needs_every_link_known():
    with pytest.raises(ValueError, match="rock it first"):
        after_repair(BOOK, "fan-drive", rock(BOOK, "fan-drive", [["0.35"]], within=0.01), {})


def test_a_plain_clearance_acts_by_its_ratio():
    found = rock(SPINDLE, "steering", [["2.0"]], within=0.1)

    assert found.links[0].judged.value == pytest.approx(0.5)
    assert found.links[0].judged.working.disagreements() == []


def test_a_thinner_gasket_is_counted_the_other_way():
    found = rocked([0.06, 0.06, 0.06], gasket_found="0.010 in").links[1]

    assert all(share.added < 0 for share in found.gasket)
