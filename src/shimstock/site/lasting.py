"""Connections to the database that last from page to page, and only as long as its file does.

To open the database and read what tables it has takes two milliseconds, as long as a short page.
"""

from __future__ import annotations

from typing import Any

from django.core.signals import request_started
from django.db import connections
from django.db.backends.signals import connection_created

from shimstock.workshop.file_opened import note_opened, was_replaced


def leave_what_was_replaced() -> None:
    """From now on look before each page whether the file is still the one that is open.

    Where a shed was put back from an archive meanwhile, what is written would be lost in a file
    that is no longer there, and what is remembered is of machines that were.
    """
    connection_created.connect(note_opened)
    request_started.connect(_leave)


def _leave(**_: Any) -> None:
    from shimstock.workshop.looking import forget

    for connection in connections.all(initialized_only=True):
        if was_replaced(connection):
            connection.close()
            forget()  # a third file may be given the number of the first
