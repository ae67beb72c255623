"""How long 100,000 plain readings take to judge, beside a loop that only compares numbers."""

import random
import sys
import time

from shimstock.trade.machine.book import Figure
from shimstock.trade.measure.judge import judge

COUNT = 100_000
BUDGET = 2.0  # seconds for all of them
FIGURE = Figure.model_validate(
    {
        "name": "Liner bore",
        "of": "liner",
        "new": "5.7500 .. 5.7515 in",
        "limit": "max 5.7600 in",
        "if-outside": "bore to the next oversize",
    }
)


def bare_loop(values: list[float]) -> float:
    """Processor seconds for the comparison alone."""
    start = time.process_time()
    words = []
    for value in values:
        words.append("good" if value <= 5.7515 else "serviceable" if value <= 5.76 else "worn out")
    return time.process_time() - start


def judging(values: list[float]) -> float:
    """Processor seconds for the whole verdict: word, probability, sentence, what settles it."""
    start = time.process_time()
    for value in values:
        judge("liner-bore", FIGURE, value, 0.00017559, piece="1")
    return time.process_time() - start


def main() -> int:
    """Print the figures; 1 where the budget is broken."""
    rng = random.Random(1)
    values = [rng.uniform(5.7480, 5.7640) for _ in range(COUNT)]
    bare, whole = bare_loop(values), judging(values)
    print(f"{COUNT:,} readings judged in {whole:.2f} s (budget {BUDGET:.0f} s)")
    print(f"{whole / COUNT * 1e6:.1f} µs each, {whole / bare:.0f} times a bare comparison")
    return 0 if whole < BUDGET else 1


if __name__ == "__main__":
    sys.exit(main())
