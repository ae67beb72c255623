from random import Random
from statistics import pstdev

import pytest

from published.as_printed import as_printed
from shimstock.trade.numbers.units import Length
from shimstock.trade.sums.stacks._links import Link
from shimstock.trade.sums.stacks.stack import stack
from shimstock.trade.sums.stacks.tolerance_scale import tolerance_scale


def links(*rows: tuple[float, float, float]) -> list[Link]:
    return [
        Link(f"link {i}", Length(size), Length(tolerance), counts)
        for i, (size, tolerance, counts) in enumerate(rows, 1)
    ]


SHIGLEY = links((1.750, 0.003, 1), (0.750, 0.001, -1), (0.120, 0.005, -1), (0.875, 0.001, -1))


def test_shigley_1_3_gap():
    # Shigley, Mechanical Engineering Design, 9th ed., example 1-3: w = 0.005 ± 0.010.
    got = stack(links=SHIGLEY)
    assert got.value.nominal == as_printed(".005")
    assert got.value.worst == as_printed(".010")
    assert got.value.rss == as_printed(".006")
    assert got.working.disagreements() == []


def test_shigley_1_3_size_for_a_gap_of_0_003():
    # The same example: d = 0.867 in for w of at least 0.003.
    narrow = stack(links=[*SHIGLEY[:3], Link("d", Length(0.867), Length(0.001), -1)]).value
    assert narrow.nominal - narrow.worst == as_printed(".003")


def test_root_of_squares_against_random_parts():
    # Referee: uniform parts have a standard deviation of t/√3 each.
    random = Random(1)
    gaps = [
        sum(link.counts * random.uniform(-link.tolerance, link.tolerance) for link in SHIGLEY)
        for _ in range(20_000)
    ]
    assert stack(links=SHIGLEY).value.rss / 3**0.5 == pytest.approx(pstdev(gaps), rel=0.02)


# Chase, paper on tolerance analysis of assemblies: shaft and housing (from memory).
CHASE = links(
    (8.000, 0.008, 1),
    (0.400, 0.002, 1),
    (0.400, 0.002, 1),
    (0.0505, 0.0015, -1),
    (0.5093, 0.0025, -1),
    (7.711, 0.006, -1),
    (0.5093, 0.0025, -1),
)


def test_chase_shaft_and_housing():
    got = stack(links=CHASE)
    assert got.value.nominal == as_printed(".0199")
    assert got.value.worst == as_printed(".0245")
    assert got.value.rss == as_printed(".01108")
    assert got.working.disagreements() == []


def test_chase_scaling_what_is_not_bought():
    got = tolerance_scale(
        bought=[Length(t) for t in (0.0015, 0.0025, 0.0025)],
        chosen=[Length(t) for t in (0.008, 0.002, 0.002, 0.006)],
        wanted=Length(0.015),
    )
    assert got.value.worst == as_printed(".47222")
    assert got.value.rss == pytest.approx(1.39526, abs=2e-5)  # printed from rounded squares
    assert got.working.disagreements() == []


def test_ten_parts_of_0_1():
    # An engineering page on stack-up: ten parts ± 0.1 give ± 1.0 or ± 0.316.
    got = stack(links=links(*[(1, 0.1, 1)] * 10)).value
    assert got.worst == as_printed("1.0")
    assert got.rss == as_printed("0.316")


def test_a_link_may_count_by_any_share():
    got = stack(links=links((10, 0.1, 0.5), (2, 0.2, -1.5), (1, 0.3, -1)))
    assert got.value.nominal == pytest.approx(1.0)
    assert got.value.worst == pytest.approx(0.65)
    assert got.value.rss == pytest.approx((0.05**2 + 0.3**2 + 0.3**2) ** 0.5)
    assert got.working.disagreements() == []


def test_what_is_no_stack_is_refused():
    with pytest.raises(ValueError, match="needs a link"):
        stack(links=[])
    with pytest.raises(ValueError, match="below 0"):
        stack(links=links((1, -0.1, 1)))
    with pytest.raises(ValueError, match="cannot be met"):
        tolerance_scale(bought=[Length(1)], chosen=[Length(1)], wanted=Length(1))
