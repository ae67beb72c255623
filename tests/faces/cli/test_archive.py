"""Papers and archives as they are typed; each restore in a program of its own."""

from __future__ import annotations

import csv
import io
import json
import os
import signal
import subprocess
import sys
import time

import pytest


@pytest.fixture(scope="module")
def shed(tmp_path_factory):
    """A real shed with the demo in it, to be read and never changed."""
    folder = tmp_path_factory.mktemp("archive") / "shed"
    assert typed("demo", shed=folder).returncode == 0
    return folder


def typed(*words, shed=None):
    ours = {"DJANGO_SETTINGS_MODULE", "SHIMSTOCK_SHED", "SHIMSTOCK_SERVING"}
    kept = {name: value for name, value in os.environ.items() if name not in ours}
    where = ["--shed", str(shed)] if shed else []
    return subprocess.run(
        [sys.executable, "-m", "shimstock", *map(str, words), *where],
        capture_output=True, text=True, check=False, env=kept | {"SHIMSTOCK_WHO": "Ida"},
    )  # fmt: skip


def test_a_workshop_taken_back_says_the_same_as_the_old_one_and_goes_on(shed, tmp_path):
    made = typed("archive", tmp_path / "w.zip", "--json", shed=shed)
    back = typed("restore", tmp_path / "w.zip", "--json", shed=tmp_path / "new")

    assert (made.returncode, back.returncode) == (0, 0), made.stderr + back.stderr
    assert json.loads(made.stdout)["counts"] == json.loads(back.stdout)["counts"]
    assert json.loads(made.stdout)["counts"]["machines"] == 2
    for command in (["overhaul", "brackwater"], ["diary", "lowmere"]):
        there = typed(*command, "--json", shed=tmp_path / "new")
        assert there.returncode == 0
        assert there.stdout == typed(*command, "--json", shed=shed).stdout
        assert len(there.stdout) > 1000
    assert typed("cover", "brackwater", "J56", shed=tmp_path / "new").returncode == 0


def test_a_folder_in_use_is_refused_with_what_would_do(shed, tmp_path):
    typed("archive", tmp_path / "w.zip", shed=shed)
    said = typed("restore", tmp_path / "w.zip", shed=shed)

    assert said.returncode == 1
    assert "is not empty" in said.stderr
    assert "name a new folder: --shed DIR" in said.stderr


def test_restore_wants_its_folder_named(shed, tmp_path):
    typed("archive", tmp_path / "w.zip", shed=shed)
    said = typed("restore", tmp_path / "w.zip")

    assert said.returncode == 1
    assert "--shed DIR" in said.stderr


def test_a_file_that_is_none_is_refused_without_a_traceback(tmp_path):
    (tmp_path / "w.zip").write_bytes(b"PK\x03\x04 cut")
    said = typed("restore", tmp_path / "w.zip", shed=tmp_path / "new")

    assert said.returncode == 1
    assert "Traceback" not in said.stderr
    assert "damaged or cut short" in " ".join(said.stderr.split())
    assert not (tmp_path / "new").exists()


def test_an_archive_that_is_there_is_not_overwritten(shed, tmp_path):
    (tmp_path / "w.zip").write_text("mine")
    said = typed("archive", tmp_path / "w.zip", shed=shed)

    assert said.returncode == 1
    assert (tmp_path / "w.zip").read_text() == "mine"


def test_ctrl_c_leaves_nothing_behind(shed, tmp_path):
    big = shed.parent / "big"
    subprocess.run(["cp", "-r", str(shed), str(big)], check=True)
    (big / "photos").mkdir()
    with (big / "photos/a.jpg").open("wb") as out:
        out.truncate(4 * 2**30)  # a hole on the disk: it takes long to read, and no room
    program = subprocess.Popen(
        [sys.executable, "-m", "shimstock", "--shed", str(big), "archive", tmp_path / "w.zip"],
        stderr=subprocess.PIPE, text=True, env=os.environ | {"SHIMSTOCK_WHO": "Ida"},
    )  # fmt: skip
    while program.poll() is None and not list(tmp_path.glob(".w.zip.*")):
        time.sleep(0.02)
    program.send_signal(signal.SIGINT)
    _, said = program.communicate(timeout=60)
    (big / "photos/a.jpg").unlink()

    assert program.returncode == 1
    assert "Stopped" in said and "Traceback" not in said
    assert list(tmp_path.iterdir()) == []


def test_a_job_card_and_labels_are_written(in_demo, run, tmp_path):
    card = run("shimstock card brackwater J36 --address 10.0.0.2:8140 --out card.pdf")
    labels = run("shimstock labels brackwater --open --address 10.0.0.2:8140 --out l.pdf --json")

    assert (card.code, labels.code) == (0, 0)
    assert (tmp_path / "card.pdf").read_bytes().startswith(b"%PDF")
    assert json.loads(labels.out)["labels"] > 10
    assert (tmp_path / "l.pdf").read_bytes().startswith(b"%PDF")


def test_labels_of_nothing_are_refused(in_demo, run):
    said = run("shimstock labels brackwater --address 10.0.0.2:8140")

    assert said.code == 1
    assert "No label is chosen" in said.err


def test_a_wrong_address_is_not_understood(in_demo, run):
    assert run("shimstock labels brackwater --open --address ftp://x").code == 2


def test_the_table_has_a_row_for_each_reading(in_demo, run, tmp_path):
    from shimstock.workshop.models import ReadingRow

    assert run("shimstock table brackwater --out r.csv").code == 0
    rows = list(csv.DictReader(io.StringIO((tmp_path / "r.csv").read_text(encoding="utf-8"))))
    count = ReadingRow.objects.filter(machine__slug="brackwater", withdrawn=False).count()
    assert len(rows) == count > 20
