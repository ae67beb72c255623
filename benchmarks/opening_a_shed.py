"""How long a command waits for the shed to open, beyond what Django itself takes."""

import os
import subprocess
import sys
import tempfile
from statistics import median

BUDGET = 0.050  # seconds, when the database lacks no step

OPENING = """
import os, sys, time
from pathlib import Path
shed = Path(sys.argv[1])
os.environ.update(SHIMSTOCK_SHED=str(shed), DJANGO_SETTINGS_MODULE="shimstock.site.settings")
import django
django.setup()
began = time.perf_counter()
from shimstock.site.start import start
start(shed)
print(time.perf_counter() - began)
"""


def opening(shed: str) -> float:
    """Seconds that a program of its own spends in `start`."""
    command = [sys.executable, "-c", OPENING, shed]
    return float(subprocess.run(command, capture_output=True, text=True, check=True).stdout)


def main() -> int:
    with tempfile.TemporaryDirectory() as folder:
        shed = os.path.join(folder, "shed")
        first = opening(shed)
        later = median(opening(shed) for _ in range(7))
    print(f"a new shed: {first * 1000:.0f} ms")
    print(f"a shed that lacks nothing: {later * 1000:.0f} ms (budget {BUDGET * 1000:.0f} ms)")
    return 0 if later <= BUDGET else 1


if __name__ == "__main__":
    sys.exit(main())
