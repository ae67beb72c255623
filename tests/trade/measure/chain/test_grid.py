"""Adding up links on the grid, against published stacks.

Each dimension is taken as even within its ± tolerance, as the published simulation does; what adds
up then spreads by the root of the sum of squares over √3, and reaches as far as the worst case.
The stack with sensitivities of chapter 12 of the handbook used here (Drake) is left out: its
dimensions are not at hand, only its results.
"""

from functools import reduce
from math import sqrt

import numpy as np
import pytest

from published.as_printed import as_printed
from shimstock.trade.measure.chain.grid import Grid, likely

SHIGLEY = (0.003, 0.001, 0.005, 0.001)  # Shigley, example 1-3: w = 0.005 ± 0.010
CHASE = (0.008, 0.002, 0.002, 0.0015, 0.0025, 0.006, 0.0025)  # Chase, shaft and housing
MOTOR = (0.0155, 0.002, 0.003, 0.0075, 0.005, 0.007, 0.005, 0.0075, 0.007, 0.006, 0.03)
# Drake, Dimensioning and Tolerancing Handbook, chapter 9; dimensions from memory
TEN = (0.1,) * 10  # ten parts ± 0.1, public page


def added(tolerances, step):
    """The sum of even distributions, each from none to twice its tolerance, on the grid."""
    size = 2 ** int(np.ceil(np.log2(2.2 * sum(tolerances) / step)))
    grid = Grid(step, size)
    wide = [round(2 * each / step) + 1 for each in tolerances]
    each = [np.where(np.arange(size) < n, 1 / n, 0.0) for n in wide]
    return grid, reduce(grid.together, each)


@pytest.mark.parametrize(
    ("tolerances", "worst", "rss", "step"),
    [
        (SHIGLEY, ".010", ".006", 0.00001),
        (CHASE, ".0245", ".01108", 0.000001),
        (MOTOR, ".0955", ".0381", 0.00001),
        (TEN, "1.0", "0.316", 0.0001),
    ],
)
def test_published_stacks_add_up_on_the_grid(tolerances, worst, rss, step):
    grid, whole = added(tolerances, step)
    mean = float(whole @ grid.points)
    spread = sqrt(float(whole @ (grid.points - mean) ** 2))

    assert whole.sum() == pytest.approx(1)
    assert mean == as_printed(worst)  # from none to twice the worst case: the middle is the nominal
    assert sqrt(3) * spread == as_printed(rss)


def test_shigley_simulated_spread_of_the_gap():
    grid, whole = added(SHIGLEY, 0.00001)
    mean = float(whole @ grid.points)

    # 0.003464 worked out, √(Σt²/3); a simulation of a million draws gave the same
    assert sqrt(float(whole @ (grid.points - mean) ** 2)) == pytest.approx(0.003464, abs=2e-5)


def test_what_was_added_can_be_parted_again():
    grid = Grid(0.1, 16)
    one, other = np.zeros(16), np.zeros(16)
    one[3], other[5] = 1.0, 1.0

    assert grid.together(one, other).argmax() == 8
    assert grid.apart(grid.together(one, other), other).argmax() == 3


def test_what_lies_past_the_end_of_the_grid_does_not_come_round_again():
    grid = Grid(0.1, 16)
    one, other = np.zeros(16), np.zeros(16)
    one[10], other[12] = 1.0, 1.0

    assert not grid.together(one, other).any()
    assert not grid.apart(one, other).any()


def test_a_reading_finer_than_the_grid_is_as_wide_as_its_step():
    """JCGM 100:2008, F.2.2.1: even within δx has a standard uncertainty of 0.29·δx, δx²/12."""
    grid = Grid(0.01, 512)

    strength = likely(grid, [(0.05, 0.0)])

    assert strength[5] == strength.max() == 1.0
    assert -2 * np.log(strength[6]) == pytest.approx((1 / 0.29) ** 2, rel=0.02)
