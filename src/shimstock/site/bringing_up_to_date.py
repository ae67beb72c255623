"""Brings a workshop's database up to date, after keeping a copy of how it was."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from django.core.management import call_command
from django.db import connection
from django.db.migrations.executor import MigrationExecutor
from django.db.migrations.recorder import MigrationRecorder


class MadeByNewer(Exception):
    """The database has been through steps that this version does not know; args name them."""


def bring_up_to_date(database: Path) -> None:
    """Run the migrations that `database` still lacks, and none if it lacks none.

    A database that holds anything is first copied beside itself, to
    `workshop.sqlite3.before-<the first step that was lacking>`. Raises MadeByNewer.
    """
    if not _lacking():
        return
    with _alone_in(database.parent):
        lacking = _lacking()  # another program may have done it while we waited
        if not lacking:
            return
        if MigrationRecorder(connection).applied_migrations():
            keep_copy(database, before=lacking[0])
        call_command("migrate", verbosity=0, interactive=False)


def keep_copy(database: Path, before: str) -> Path:
    """Copy `database` as it stands, also while others write to it, and return the copy's path.

    before: name of the step that the copy is to be older than. An older copy is never replaced.
    """
    copy = _unused(database.with_name(f"{database.name}.before-{before}"))
    half_done = copy.with_name(copy.name + ".part")
    half_done.unlink(missing_ok=True)
    with (
        closing(sqlite3.connect(database)) as source,
        closing(sqlite3.connect(half_done)) as target,
    ):
        source.backup(target)
    return half_done.rename(copy)


def _lacking() -> list[str]:
    """Names of the steps on disk that the database has not been through, first one first."""
    executor = MigrationExecutor(connection)
    known = executor.loader.disk_migrations
    if unknown := sorted(set(executor.loader.applied_migrations) - set(known)):
        raise MadeByNewer(*[f"{app}.{name}" for app, name in unknown])
    plan = executor.migration_plan(executor.loader.graph.leaf_nodes())
    return [step.name for step, _ in plan]


def _unused(path: Path) -> Path:
    """Return `path` itself, or the first of `path.2`, `path.3`, … that is not there yet."""
    candidate, number = path, 1
    while candidate.exists():
        number += 1
        candidate = path.with_name(f"{path.name}.{number}")
    return candidate


@contextmanager
def _alone_in(shed: Path) -> Iterator[None]:
    """Let one program at a time change the tables; a lock of SQLite's dies with its program."""
    gate = sqlite3.connect(shed / "changing.lock", timeout=60, isolation_level=None)
    with closing(gate):
        gate.execute("BEGIN EXCLUSIVE")
        yield
