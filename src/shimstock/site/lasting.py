"""Connections to the database that last from page to page, and only as long as its file does.

To open the database and read what tables it has takes two milliseconds, as long as a short page.
"""

from __future__ import annotations

import os
from typing import Any
from weakref import WeakKeyDictionary

from django.core.signals import request_started
from django.db import connections
from django.db.backends.base.base import BaseDatabaseWrapper
from django.db.backends.signals import connection_created

File = tuple[int, int] | None
"""The device and number of a file, which another one at the same place does not have."""

_opened: WeakKeyDictionary[BaseDatabaseWrapper, File] = WeakKeyDictionary()


def leave_what_was_replaced() -> None:
    """From now on look before each page whether the file is still the one that is open.

    Where a shed was put back from an archive meanwhile, what is written would be lost in a file
    that is no longer there.
    """
    connection_created.connect(_note)
    request_started.connect(_leave)


def _note(connection: BaseDatabaseWrapper, **_: Any) -> None:
    _opened[connection] = _file_of(connection)


def _leave(**_: Any) -> None:
    for connection in connections.all(initialized_only=True):
        if connection in _opened and _opened[connection] != _file_of(connection):
            connection.close()


def _file_of(connection: BaseDatabaseWrapper) -> File:
    try:
        stands = os.stat(connection.settings_dict["NAME"])
    except OSError:
        return None
    return stands.st_dev, stands.st_ino
