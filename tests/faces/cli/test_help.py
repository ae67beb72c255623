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


BEGUN = """
import sys
import shimstock.faces.cli.main
print(*sys.modules)
"""


def test_nothing_is_loaded_before_a_stop_can_be_heard():
    seen = subprocess.run([sys.executable, "-c", BEGUN], capture_output=True, text=True)

    assert "shimstock.faces.cli.main" in seen.stdout.split()
    assert {"typer", "rich", "inspect", "json"} & set(seen.stdout.split()) == set()


def test_a_stop_while_it_is_still_loading_shows_no_traceback(monkeypatch, capsys):
    from shimstock.faces.cli import main

    def stopped(name, *_, **__):
        raise KeyboardInterrupt

    monkeypatch.delitem(sys.modules, "shimstock.faces.cli.program", raising=False)
    with monkeypatch.context() as loading:
        loading.setattr("builtins.__import__", stopped)
        with pytest.raises(SystemExit) as ended:
            main.run(["machine", "list"])

    assert ended.value.code == 1
    assert capsys.readouterr().err == "Stopped. What was kept before stays kept.\n"
