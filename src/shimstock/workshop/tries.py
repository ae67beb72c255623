"""Guessing grows slow: every try at the door is held against its name and its address a while."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from shimstock.workshop.refused import Refused
from shimstock.workshop.sweeping import sweep_tries

if TYPE_CHECKING:
    from django.db.models import QuerySet

    from shimstock.workshop.models import SignInTry

FREE_MISSES = 5
"""So many misses cost nothing; each one after them doubles the wait."""
MISSES_COUNT_FOR = timedelta(minutes=15)
FIRST_WAIT = timedelta(seconds=30)
LONGEST_WAIT = timedelta(minutes=15)
NO_WAIT = timedelta(0)


class TooManyTries(Refused):
    """Nothing is tried now; `wait` is the seconds until it may be tried again."""

    def __init__(self, wait: timedelta) -> None:
        self.wait = max(1, round(wait.total_seconds()))
        super().__init__([f"Too many tries did not fit. Wait {_spoken(self.wait)}, then try again"])


def hold_try(*, name: str, address: str, now: datetime) -> int:
    """Note a try as a miss before it is made, so that many at once do not slip through.

    name, address: what it is held against; "" for none. Returns its number, for `fitted`. Tries
    that count no more are swept. Raises TooManyTries.
    """
    from django.db import transaction

    from shimstock.workshop.models import SignInTry

    forgotten = now - MISSES_COUNT_FOR
    with transaction.atomic():
        misses = SignInTry.objects.filter(at__gt=forgotten)
        by = {"name": name, "address": address}
        counted = [misses.filter(**{each: value}) for each, value in by.items() if value]
        wait = max((_until(_times(each), now) - now for each in counted), default=NO_WAIT)
        if wait > NO_WAIT:
            raise TooManyTries(wait)
        sweep_tries(forgotten)
        return SignInTry.objects.create(name=name, address=address, at=now).pk


def fitted(held: int) -> None:
    """A try that fitted is no miss: it is held against no name and no address."""
    from shimstock.workshop.models import SignInTry

    SignInTry.objects.filter(pk=held).update(name="", address="")


def _times(misses: QuerySet[SignInTry]) -> list[datetime]:
    return list(misses.order_by("at").values_list("at", flat=True))


def _until(misses: list[datetime], now: datetime) -> datetime:
    """When it may be tried again after misses, oldest first."""
    over = len(misses) - FREE_MISSES
    if over < 0:
        return now
    return misses[-1] + min(FIRST_WAIT * (1 << min(over, 10)), LONGEST_WAIT)


def _spoken(seconds: int) -> str:
    """A wait as people say it.

    >>> _spoken(30), _spoken(61)
    ('30 seconds', '2 minutes')
    """
    return f"{seconds} seconds" if seconds <= 60 else f"{-(-seconds // 60)} minutes"
