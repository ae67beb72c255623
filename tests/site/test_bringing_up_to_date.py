"""A database that lacks a step is copied first, then taken through it."""

import sqlite3
import subprocess
import sys
from contextlib import closing

import pytest

from shimstock.site.bringing_up_to_date import keep_copy

# The house with one more room, whose second step comes with a newer version.
OPEN = """
import sys
from pathlib import Path
shed, rooms = map(Path, sys.argv[1:])
sys.path.insert(0, str(rooms))
import os
os.environ["SHIMSTOCK_SHED"] = str(shed)
import django
from django.conf import settings
from shimstock.site import settings as ours
written = {name: getattr(ours, name) for name in dir(ours) if name.isupper()}
settings.configure(**written | {"INSTALLED_APPS": [*ours.INSTALLED_APPS, "loft"]})
django.setup()
from shimstock.site.start import start
start(shed)
"""
STEP = """
from django.db import migrations
class Migration(migrations.Migration):
    dependencies = {before}
    operations = [migrations.RunSQL({sql!r})]
"""


def write_step(rooms, name, before, sql):
    (rooms / "loft/migrations" / f"{name}.py").write_text(
        STEP.format(before=[("loft", step) for step in before], sql=sql)
    )


def opening(shed, rooms):
    return subprocess.Popen(
        [sys.executable, "-c", OPEN, str(shed), str(rooms)], stderr=subprocess.PIPE, text=True
    )


def open_shed(shed, rooms):
    program = opening(shed, rooms)
    _, said = program.communicate(timeout=60)
    return program.returncode, said


def rows(database, sql):
    with closing(sqlite3.connect(database)) as connection:
        return connection.execute(sql).fetchall()


@pytest.fixture
def rooms(tmp_path):
    (tmp_path / "rooms/loft/migrations").mkdir(parents=True)
    for folder in ["loft", "loft/migrations"]:
        (tmp_path / "rooms" / folder / "__init__.py").touch()
    write_step(tmp_path / "rooms", "0001_hay", [], "CREATE TABLE hay (bales int)")
    return tmp_path / "rooms"


@pytest.fixture
def shed(tmp_path, rooms):
    shed = tmp_path / "shed"
    assert open_shed(shed, rooms) == (0, "")
    with closing(sqlite3.connect(shed / "workshop.sqlite3")) as connection, connection:
        connection.execute("INSERT INTO hay VALUES (40)")
    return shed


def test_nothing_lacking_leaves_no_copy(shed, rooms):
    assert open_shed(shed, rooms) == (0, "")
    assert list(shed.glob("*.before-*")) == []


def test_a_lacking_step_is_done_after_a_copy(shed, rooms):
    write_step(rooms, "0002_sold", ["0001_hay"], "UPDATE hay SET bales = 0")

    assert open_shed(shed, rooms) == (0, "")

    assert rows(shed / "workshop.sqlite3", "SELECT bales FROM hay") == [(0,)]
    copy = shed / "workshop.sqlite3.before-0002_sold"
    assert rows(copy, "SELECT bales FROM hay") == [(40,)]
    assert rows(copy, "PRAGMA integrity_check") == [("ok",)]


def test_a_step_that_fails_leaves_the_database_as_it_was(shed, rooms):
    write_step(
        rooms, "0002_burnt", ["0001_hay"], "UPDATE hay SET bales = 0; UPDATE straw SET x = 1"
    )

    code, said = open_shed(shed, rooms)

    assert code == 1
    assert "no such table: straw" in said
    assert rows(shed / "workshop.sqlite3", "SELECT bales FROM hay") == [(40,)]


def test_programs_opening_at_once_wait_for_each_other_and_do_the_step_once(shed, rooms):
    write_step(rooms, "0002_more", ["0001_hay"], "UPDATE hay SET bales = bales + 1")

    slow_one = sqlite3.connect(shed / "changing.lock", isolation_level=None)
    slow_one.execute("BEGIN EXCLUSIVE")
    with opening(shed, rooms) as first, opening(shed, rooms) as second:
        with closing(slow_one), pytest.raises(subprocess.TimeoutExpired):
            first.wait(timeout=2)
        said = [program.communicate(timeout=60)[1] for program in (first, second)]

    assert said == ["", ""]
    assert rows(shed / "workshop.sqlite3", "SELECT bales FROM hay") == [(41,)]
    assert len(list(shed.glob("*.before-*"))) == 1


def test_an_older_copy_is_never_replaced(shed):
    first = keep_copy(shed / "workshop.sqlite3", before="0002_sold")
    second = keep_copy(shed / "workshop.sqlite3", before="0002_sold")

    assert (first.name, second.name) == (
        "workshop.sqlite3.before-0002_sold",
        "workshop.sqlite3.before-0002_sold.2",
    )


def test_a_copy_holds_what_was_written_a_moment_ago(shed):
    """While another program has the file open, the newest rows are still in its -wal file."""
    with closing(sqlite3.connect(shed / "workshop.sqlite3")) as other:
        other.execute("INSERT INTO hay VALUES (7)")
        other.commit()

        copy = keep_copy(shed / "workshop.sqlite3", before="0002_sold")

    assert rows(copy, "SELECT bales FROM hay") == [(40,), (7,)]
