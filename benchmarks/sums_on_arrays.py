"""Stress areas and torques of a million bolts at once, beside one bolt after another."""

import sys
import time
from collections.abc import Callable
from typing import Any

import numpy as np

from shimstock.trade.sums.fasteners._areas import nut_factor_torque, un_stress_area
from shimstock.trade.sums.fasteners._threads import parse_thread
from shimstock.trade.sums.fasteners.stress_area import stress_area

COUNT = 1_000_000
ONE_BY_ONE = 2_000
BUDGET = 1.0  # seconds for a million


def seconds(work: Callable[[], Any]) -> float:
    """Wall time of a piece of work."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def main() -> int:
    """Print the figures; 1 where the budget is broken."""
    rng = np.random.default_rng(1)
    d, n = rng.uniform(0.25, 1, COUNT), rng.choice([8.0, 10, 13, 16, 20], COUNT)
    areas = un_stress_area(d, n)
    taken = {
        "stress areas": seconds(lambda: un_stress_area(d, n)),
        "torques": seconds(lambda: nut_factor_torque(0.2, d, 0.75 * 85_000 * areas)),
    }
    thread = parse_thread("3/8-16 UNC")
    worked = seconds(lambda: [stress_area(thread=thread) for _ in range(ONE_BY_ONE)]) / ONE_BY_ONE
    for name, time_taken in taken.items():
        ratio = worked * COUNT / time_taken
        print(f"a million {name}: {time_taken:.3f} s (budget {BUDGET:.0f} s), "
              f"{ratio:.0f} times faster than one sum with its working after another")  # fmt: skip
    return 0 if max(taken.values()) < BUDGET else 1


if __name__ == "__main__":
    sys.exit(main())
