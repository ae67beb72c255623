"""Which file a connection has opened: another put in its place has other machines, same numbers."""

from __future__ import annotations

import os
from typing import Any
from weakref import WeakKeyDictionary

from django.db.backends.base.base import BaseDatabaseWrapper

File = tuple[int, int] | None
"""The device and number of a file, which another one at the same place does not have."""

_opened: WeakKeyDictionary[BaseDatabaseWrapper, File] = WeakKeyDictionary()


def note_opened(connection: BaseDatabaseWrapper, **_: Any) -> None:
    """Note which file a connection has just opened."""
    _opened[connection] = _file_of(connection)


def opened_by(connection: BaseDatabaseWrapper) -> File:
    """The file that a connection opened; None where nobody noted it."""
    return _opened.get(connection)


def was_replaced(connection: BaseDatabaseWrapper) -> bool:
    """Whether another file is now in the place of the one that a connection opened."""
    return connection in _opened and _opened[connection] != _file_of(connection)


def _file_of(connection: BaseDatabaseWrapper) -> File:
    try:
        stands = os.stat(connection.settings_dict["NAME"])
    except OSError:
        return None
    return stands.st_dev, stands.st_ino
