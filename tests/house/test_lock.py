"""The lock files pin everything, by hash, and name no host to fetch it from."""

import re
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

HOUSE = Path(__file__).parents[2]
RUN = HOUSE / "requirements/run.lock"
TEST = HOUSE / "requirements/test.lock"
PROJECT = tomllib.loads((HOUSE / "pyproject.toml").read_text())


def pins(lock: Path) -> dict[str, str]:
    """Each pinned requirement as it stands in the lock, with the hashes that follow it."""
    blocks = re.split(r"\n(?=[a-z])", re.sub(r"(?m)^ *#.*\n", "", lock.read_text()))
    return {block.partition("\\")[0].strip(): block.partition("\\")[2] for block in blocks}


@pytest.mark.parametrize("lock", [RUN, TEST], ids=lambda lock: lock.name)
def test_a_lock_names_no_host_and_no_folder(lock):
    suspicious = [
        line
        for line in lock.read_text().splitlines()
        if re.search(r"://|index-url|find-links", line)
    ]

    assert suspicious == []


@pytest.mark.parametrize("lock", [RUN, TEST], ids=lambda lock: lock.name)
def test_every_pin_is_exact_and_hashed(lock):
    assert len(pins(lock)) > 20
    for pin, hashes in pins(lock).items():
        assert re.match(r"[a-z0-9-]+==\S+", pin), pin
        assert "--hash=sha256:" in hashes, pin


def test_the_test_lock_holds_the_run_lock():
    assert pins(RUN).keys() - pins(TEST).keys() == set()


@pytest.mark.parametrize(
    ("lock", "asked"),
    [
        (RUN, PROJECT["project"]["dependencies"] + PROJECT["dependency-groups"]["build"]),
        (TEST, PROJECT["dependency-groups"]["test"]),
    ],
    ids=["run.lock", "test.lock"],
)
def test_what_the_project_asks_for_is_locked_within_its_limits(lock, asked):
    locked = [Requirement(pin) for pin in pins(lock)]
    for requirement in map(Requirement, asked):
        found = [pin for pin in locked if canonicalize_name(requirement.name) == pin.name]
        assert found, f"{requirement} is not in {lock.name}: run make lock"
        for pin in found:
            (version,) = [part.version for part in pin.specifier]
            assert version in requirement.specifier, f"{requirement}: locked at {version}"
