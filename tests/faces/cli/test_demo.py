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


@pytest.mark.parametrize(
    ("program", "on_path", "shed", "first"),
    [
        (".venv/bin/shimstock", False, "shed", ".venv/bin/shimstock machine show brackwater"),
        (".venv/bin/shimstock", True, "shed", "shimstock machine show brackwater"),
        ("elsewhere", False, "shed", "shimstock machine show brackwater"),
        (".venv/bin/shimstock", True, "barn", "shimstock machine show brackwater --shed barn"),
        (
            ".venv/bin/shimstock",
            True,
            "a barn",
            "shimstock machine show brackwater --shed 'a barn'",
        ),
    ],
)
def test_what_to_try_next_works_as_it_is_typed_here(
    program, on_path, shed, first, tmp_path, monkeypatch
):
    from shimstock.faces.cli.demo import typed_here

    for folder in ("shed", "barn", "a barn"):
        (tmp_path / folder).mkdir()
    (tmp_path / ".venv/bin").mkdir(parents=True)
    (tmp_path / ".venv/bin/shimstock").write_text("#!/bin/sh\n")
    (tmp_path / ".venv/bin/shimstock").chmod(0o755)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("sys.argv", [str(tmp_path / program)])
    monkeypatch.setenv("PATH", str(tmp_path / ".venv/bin") if on_path else "/nowhere")

    assert typed_here(tmp_path / shed)[0] == first
