import os
import sqlite3
import tempfile
from pathlib import Path

from shimstock.site.shed import DATABASE, VARIABLE

OLDEST_SQLITE = (3, 31, 0)  # the oldest that Django 5.2 works with


class CannotStart(Exception):
    """The shed cannot be opened; the message says why, and what would do."""


def start(shed: Path) -> None:
    """Open the workshop whose data live in `shed`, laying the folder out if it is new.

    Sets Django up once, checks what must hold, brings the database up to date.
    Raises CannotStart.
    """
    _check_sqlite(sqlite3.sqlite_version_info)
    _check_folder(shed)
    _set_django_up(shed)
    _open_database(shed / DATABASE)


def _check_sqlite(version: tuple[int, ...]) -> None:
    if version < OLDEST_SQLITE:
        raise CannotStart(
            f"This Python brings SQLite {_dotted(version)}; "
            f"shimstock needs {_dotted(OLDEST_SQLITE)} or newer. A newer Python brings one."
        )


def _dotted(version: tuple[int, ...]) -> str:
    return ".".join(map(str, version))


def _check_folder(shed: Path) -> None:
    try:
        shed.mkdir(mode=0o700, parents=True, exist_ok=True)  # it holds the keys of who is signed in
        with tempfile.TemporaryFile(dir=shed):  # asks the disk itself, not only the permissions
            pass
        database = shed / DATABASE
        if database.exists():
            database.open("r+b").close()
    except OSError as error:
        raise CannotStart(
            f"Cannot write in the shed's folder {shed}: {error.strerror or error}. "
            "Give this user the right to write there, or name another folder: --shed DIR."
        ) from error


def _set_django_up(shed: Path) -> None:
    from django.apps import apps
    from django.conf import settings

    if not settings.configured:
        os.environ[VARIABLE] = str(shed)
        os.environ["DJANGO_SETTINGS_MODULE"] = "shimstock.site.settings"
        # Not django.setup(), which loads all of the web as well: a tenth of a second each time.
        apps.populate(settings.INSTALLED_APPS)
    if shed.absolute() != settings.SHED:
        raise CannotStart(
            f"This program already has the shed {settings.SHED} open; "
            f"start it anew to open {shed.absolute()}."
        )


def _open_database(database: Path) -> None:
    from django.db import DatabaseError

    from shimstock.site.bringing_up_to_date import MadeByNewer, bring_up_to_date

    try:
        bring_up_to_date(database)
    except MadeByNewer as error:
        raise CannotStart(
            f"{database} was made by a newer shimstock: it has been through "
            f"{', '.join(error.args)}, unknown here. Install that version, or open a copy "
            f"from before: {database}.before-…"
        ) from error
    except (DatabaseError, sqlite3.Error) as error:
        raise CannotStart(
            f"Cannot open {database}: {error}. If another program has it open, end that one; "
            "if the file is damaged, put a copy in its place."
        ) from error
