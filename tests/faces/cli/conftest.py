import shlex
from collections.abc import Callable
from dataclasses import dataclass

import django
import pytest


@pytest.hookimpl(trylast=True)
def pytest_configure() -> None:
    django.setup()  # after the settings were named


@dataclass(frozen=True)
class Ran:
    """How a command ended, and what it said."""

    code: int
    out: str
    err: str


Run = Callable[[str], Ran]


TABLES = ("machine", "diaryentry", "readingrow", "verdictrow", "piecestate", "jointstate",
          "answerrow", "gatepass")  # fmt: skip


@pytest.fixture(scope="session")
def demo_rows(django_db_setup, django_db_blocker) -> dict[str, list[tuple[object, ...]]]:
    """Every row of the invented shed, which is laid out once and taken away again."""
    from django.conf import settings
    from django.db import connection, transaction

    from shimstock.faces.cli.demo import write_books
    from shimstock.workshop.demo.lay_out import lay_out

    write_books(settings.SHED)
    with django_db_blocker.unblock(), transaction.atomic():
        lay_out()
        with connection.cursor() as cursor:
            rows = {
                table: cursor.execute(f"SELECT * FROM workshop_{table}").fetchall()
                for table in TABLES
            }
        transaction.set_rollback(True)
    return rows


@pytest.fixture
def in_demo(demo_rows, db, tmp_path, monkeypatch) -> None:
    """Stand beside the invented shed; whatever a test does to it is undone after it."""
    from django.conf import settings
    from django.db import connection

    with connection.cursor() as cursor:
        for table, rows in demo_rows.items():
            if rows:
                places = ", ".join(["%s"] * len(rows[0]))
                cursor.executemany(f"INSERT INTO workshop_{table} VALUES ({places})", rows)
    (tmp_path / "shed").symlink_to(settings.SHED)
    monkeypatch.setenv("SHIMSTOCK_SHED", str(settings.SHED))
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("SHIMSTOCK_WHO", "Ida")
    monkeypatch.setenv("COLUMNS", "80")


@pytest.fixture
def run(capsys) -> Run:
    """Run a line as it is typed, in this process."""
    from shimstock.faces.cli.main import run

    def run_line(line: str) -> Ran:
        _, *arguments = shlex.split(line)
        with pytest.raises(SystemExit) as ended:
            run(arguments)
        said = capsys.readouterr()
        return Ran(ended.value.code, said.out, said.err)

    return run_line
