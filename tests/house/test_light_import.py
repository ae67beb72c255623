"""The trade is there at once, and needs nothing of the site."""

import os
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


SHED_OPENED = """
import sys
from pathlib import Path
import shimstock.faces.cli.program
typed = set(sys.modules)
from shimstock.site.start import start
start(Path(sys.argv[1]))
from shimstock.workshop.looking import see
import shimstock.workshop.now
print(*typed)
print(*sys.modules)
"""
NOT_AT_EACH_COMMAND = ONLY_WHEN_USED | {"django.http", "django.urls", "numpy", "pint", "scipy"}


def test_a_command_waits_neither_for_the_web_nor_for_anything_heavy(tmp_path):
    ours = {"DJANGO_SETTINGS_MODULE", "SHIMSTOCK_SHED"}
    seen = subprocess.run(
        [sys.executable, "-c", SHED_OPENED, str(tmp_path / "shed")],
        capture_output=True,
        text=True,
        env={name: value for name, value in os.environ.items() if name not in ours},
    )

    assert seen.returncode == 0, seen.stderr
    typed, opened = (set(line.split()) for line in seen.stdout.splitlines())
    assert {"django", "pydantic", "yaml"} & typed == set()  # nothing is asked of a shed yet
    assert "shimstock.workshop.models" in opened
    assert NOT_AT_EACH_COMMAND & opened == set()
