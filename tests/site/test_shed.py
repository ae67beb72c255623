from pathlib import Path

import pytest

from shimstock.site.shed import shed_folder


@pytest.fixture(autouse=True)
def nowhere(tmp_path, monkeypatch):
    """A folder without a shed, a home of its own, and no variable set."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    monkeypatch.delenv("SHIMSTOCK_SHED", raising=False)


def test_the_home_serves_when_nothing_else_is_named(tmp_path):
    assert shed_folder() == tmp_path / "home/shimstock"


def test_a_shed_standing_here_goes_before_the_home(tmp_path):
    (tmp_path / "shed").mkdir()

    assert shed_folder() == tmp_path / "shed"


def test_the_variable_goes_before_a_shed_standing_here(tmp_path, monkeypatch):
    (tmp_path / "shed").mkdir()
    monkeypatch.setenv("SHIMSTOCK_SHED", "~/barn")

    assert shed_folder() == tmp_path / "home/barn"


def test_the_folder_given_goes_before_all(tmp_path, monkeypatch):
    monkeypatch.setenv("SHIMSTOCK_SHED", "~/barn")

    assert shed_folder(Path("lean-to")) == tmp_path / "lean-to"
