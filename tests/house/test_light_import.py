"""The trade is there at once, and needs nothing of the site."""

import subprocess
import sys

EVERYTHING_LOADED = """
import importlib, pkgutil, sys
import shimstock.trade
for module in pkgutil.walk_packages(shimstock.trade.__path__, "shimstock.trade."):
    importlib.import_module(module.name)
print(*sys.modules)
"""
NOT_FOR_THE_TRADE = {"django", "sqlite3"}
ONLY_WHEN_USED = {"matplotlib", "ortools", "scipy.optimize", "typst"}


def test_importing_the_trade_loads_no_framework_and_nothing_heavy():
    seen = subprocess.run([sys.executable, "-c", EVERYTHING_LOADED], capture_output=True, text=True)

    assert seen.returncode == 0, seen.stderr
    assert "shimstock.trade" in seen.stdout.split()
    assert set(seen.stdout.split()) & (NOT_FOR_THE_TRADE | ONLY_WHEN_USED) == set()
