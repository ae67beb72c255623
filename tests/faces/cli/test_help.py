import subprocess
import sys

import pytest

HEAVY = {"django", "yaml", "rich", "numpy", "scipy", "matplotlib", "pint", "ortools"}
LOADED = """
import sys
from shimstock.faces.cli.main import run
try:
    run({arguments!r})
except SystemExit as ended:
    print("ended with", ended.code, file=sys.stderr)
print(*sys.modules, file=sys.stderr)
"""


@pytest.mark.parametrize("arguments", [["--help"], ["open", "--help"], ["open"], ["opne"]])
def test_help_and_typing_errors_load_nothing_heavy(arguments):
    ran = subprocess.run(
        [sys.executable, "-c", LOADED.format(arguments=arguments)], capture_output=True, text=True
    )

    loaded = ran.stderr.splitlines()[-1].split()
    assert "shimstock.faces.cli.main" in loaded, ran.stderr
    assert HEAVY & set(loaded) == set()
