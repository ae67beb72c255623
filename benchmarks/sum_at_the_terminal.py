"""From Enter to the answer of `shimstock sum`, beside a Python that does nothing."""

import os
import subprocess
import sys
import time
from pathlib import Path
from statistics import median

ROUNDS = 9
BUDGET = 0.5  # seconds from Enter
# Python keeps what it has compiled, as on any machine where it may write.
KEPT = {name: text for name, text in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
SHIMSTOCK = str(Path(sys.executable).parent / "shimstock")
ASKED = {
    "a sum": ["sum", "torque", "--thread", "3/8-16", "--grade", "SAE J429 5", "--share", "0.75"],
    "its help": ["sum", "torque", "--help"],
    "a list of all": ["sum"],
}


def seconds(command: list[str]) -> float:
    """Wall time of one run, with everything that starting a program takes."""
    start = time.perf_counter()
    subprocess.run(command, capture_output=True, check=True, env=KEPT)
    return time.perf_counter() - start


def main() -> int:
    """Print the figures; 1 where the budget is broken."""
    commands = {"nothing": [sys.executable, "-c", ""]}
    commands |= {name: [SHIMSTOCK, *words] for name, words in ASKED.items()}
    taken: dict[str, list[float]] = {name: [] for name in commands}
    for command in commands.values():
        seconds(command)
    for _ in range(ROUNDS):  # turn about, so that a busy machine slows all alike
        for name, command in commands.items():
            taken[name].append(seconds(command))
    bare = median(taken["nothing"])
    for name in ASKED:
        whole = median(taken[name])
        print(f"{name}: {whole:.3f} s (budget {BUDGET} s), {whole / bare:.0f} times bare Python")
    return 0 if all(median(taken[name]) < BUDGET for name in ASKED) else 1


if __name__ == "__main__":
    sys.exit(main())
