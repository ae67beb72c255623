"""The program as it is started from a shell, in a shed of its own."""

import os
import subprocess
import sys

import pytest


@pytest.fixture
def shell(tmp_path):
    def shell(line: str) -> subprocess.CompletedProcess[str]:
        start = f"{sys.executable} -c 'from shimstock.faces.cli.main import run; run()'"
        command = line.replace("shimstock", start)
        setting = {**os.environ, "SHIMSTOCK_SHED": "shed", "SHIMSTOCK_WHO": "Wren"}
        return subprocess.run(
            ["bash", "-c", f"set -o pipefail; {command}"],
            cwd=tmp_path,
            env=setting,
            capture_output=True,
            text=True,
        )

    return shell


def test_the_shed_is_laid_out_once_with_books_and_papers(shell, tmp_path):
    first, second = shell("shimstock demo"), shell("shimstock demo")

    assert (first.returncode, first.stderr) == (0, "")
    assert first.stdout.startswith("The invented shed is laid out:")
    assert (second.returncode, second.stderr) == (0, "")
    assert second.stdout.startswith("The invented shed is there already:")
    assert first.stdout.splitlines()[1:] == second.stdout.splitlines()[1:]
    for name in ("brackwater", "lowmere"):
        assert (tmp_path / f"shed/papers/{name}.pdf").read_bytes().startswith(b"%PDF")
    assert sorted(path.name for path in (tmp_path / "shed/books").iterdir()) == [
        "brackwater-40.yaml",
        "lowmere-crawler.yaml",
    ]


def test_a_pipe_that_closes_early_is_no_fault(shell):
    ran = shell("shimstock book schema | head -n 1")

    assert (ran.returncode, ran.stdout, ran.stderr) == (0, "{\n", "")


def test_a_shed_that_cannot_be_written_is_refused_in_words(shell, tmp_path):
    (tmp_path / "shed").write_text("a file, not a folder")

    ran = shell("shimstock machine list")

    assert ran.returncode == 1
    assert "Cannot write in the shed's folder" in " ".join(ran.stderr.split())
