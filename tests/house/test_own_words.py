"""The project speaks of itself alone: it stands in any folder, on any machine."""

import os
import re
from collections.abc import Iterator
from pathlib import Path

HOUSE = Path(__file__).parents[2]
NOT_OURS = {".git", ".venv", "shed", "build", "dist", "__pycache__", ".hypothesis"}
# Put together here so that this file does not name them either.
ONE_MACHINES_PATH = re.compile(r"(?<![\w.~-])(?:/(?:root|home|work|Users)|[A-Z]:\\Users)[/\\]")
FOREIGN = re.compile("|".join([r"\.\./" + "shared", "pypi" + r"\.org", "python" + "hosted"]))


def texts() -> Iterator[tuple[Path, str]]:
    for folder, inside, files in os.walk(HOUSE):
        inside[:] = [name for name in inside if name not in NOT_OURS and "_cache" not in name]
        for path in (Path(folder, name) for name in files):
            try:
                yield path.relative_to(HOUSE), path.read_text(encoding="utf-8")
            except UnicodeDecodeError:
                continue  # a picture or a font


def naming(pattern: re.Pattern[str]) -> list[str]:
    return [
        f"{path}:{number}: {line.strip()}"
        for path, text in texts()
        for number, line in enumerate(text.splitlines(), start=1)
        if pattern.search(line)
    ]


def test_no_file_names_a_path_of_one_machine():
    assert naming(ONE_MACHINES_PATH) == []


def test_no_file_names_what_lies_outside_the_project():
    assert naming(FOREIGN) == []


def test_the_whole_tree_is_looked_at():
    seen = {str(path) for path, _ in texts()}

    assert {"Makefile", "pyproject.toml", "src/shimstock/__init__.py", ".ci/run"} <= seen
