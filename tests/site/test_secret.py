"""The secret that signs cookies: one for a shed, for its owner's eyes alone."""

import stat
import sys
from concurrent.futures import ThreadPoolExecutor

import pytest

from shimstock.site.secret import FILE, secret_of


def test_it_is_made_once_for_a_shed(tmp_path):
    assert secret_of(tmp_path) == secret_of(tmp_path)
    assert len(secret_of(tmp_path)) >= 50  # what Django holds to be long enough


def test_each_shed_has_its_own(tmp_path):
    (tmp_path / "one").mkdir()
    (tmp_path / "other").mkdir()

    assert secret_of(tmp_path / "one") != secret_of(tmp_path / "other")


@pytest.mark.skipif(sys.platform == "win32", reason="its files have no such permissions")
def test_nobody_else_on_the_computer_may_read_it(tmp_path):
    secret_of(tmp_path)

    assert stat.S_IMODE((tmp_path / FILE).stat().st_mode) == 0o600


def test_programs_that_start_at_once_share_it(tmp_path):
    with ThreadPoolExecutor(8) as many:
        assert len(set(many.map(secret_of, [tmp_path] * 8))) == 1


def test_a_folder_that_is_not_there_is_not_made(tmp_path):
    assert secret_of(tmp_path / "none") != secret_of(tmp_path / "none")
    assert not (tmp_path / "none").exists()


def test_an_empty_file_says_what_would_do(tmp_path):
    (tmp_path / FILE).touch()
    with pytest.raises(RuntimeError, match="delete it"):
        secret_of(tmp_path)
