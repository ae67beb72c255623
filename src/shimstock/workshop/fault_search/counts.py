"""How often each cause was found, here and elsewhere, and what that makes of the book's priors."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from shimstock.trade.faults.learned import Count, learned, together
from shimstock.workshop.counts_file import CountsFile, written_counts
from shimstock.workshop.our_name import our_name

if TYPE_CHECKING:
    from collections.abc import Iterable

    from shimstock.trade.machine.book import Book

AWAY = Count(confirmed=0, looked=1)
"""A machine that was looked at for a cause which was not there."""


@dataclass(frozen=True)
class Imported:
    """Counts that came from elsewhere under one label.

    causes: how many are counted in it. known: whether their file said which workshop wrote it.
    """

    label: str
    causes: int
    confirmed: int
    looked: int
    by: str
    known: bool


def counts() -> dict[str, Count]:
    """How often each cause was found, here and in what was imported; in one SELECT."""
    return _summed(imported=True)


def own_counts() -> dict[str, Count]:
    """How often each cause was found and put right here, of how many machines looked at for it.

    A machine on which a search cleared the cause counts as looked at, once; one on which it was
    found counts once for each time.
    """
    return _summed(imported=False)


def imported() -> list[Imported]:
    """What was imported, by label."""
    from django.db.models import Count as Number
    from django.db.models import Max, Sum

    from shimstock.workshop.models import FaultCounts

    rows = FaultCounts.objects.filter(withdrawn=False).values("label", "workshop")
    summed = rows.order_by("label", "workshop").annotate(
        Number("pk"), Sum("confirmed"), Sum("looked"), Max("by")
    )
    return [
        Imported(row["label"], row["pk__count"], row["confirmed__sum"], row["looked__sum"],
                 row["by__max"], bool(row["workshop"]))
        for row in summed
    ]  # fmt: skip


def export_counts() -> str:
    """What was found in this workshop, as a file for another; what was imported is left out."""
    return written_counts(CountsFile(own_counts(), our_name(), datetime.now(UTC)))


def _summed(*, imported: bool) -> dict[str, Count]:
    rows = [(machine, about.removeprefix("cause:"), Count(confirmed, looked))
            for machine, about, confirmed, looked in _rows(imported)]  # fmt: skip
    right = {(machine, cause) for machine, cause, count in rows if machine and count.confirmed}
    cleared = {(machine, cause) for machine, cause, count in rows if machine and count == AWAY}
    counted = [(cause, count) for machine, cause, count in rows if not machine or count.confirmed]
    counted += [(cause, AWAY) for _, cause in sorted(cleared - right)]
    return together({cause: count} for cause, count in counted)


def _rows(imported: bool) -> Iterable[tuple[int | None, str, int, int]]:
    """Machine, cause, confirmed and looked: of what was found, what was cleared, what came in."""
    from django.db.models import IntegerField, Value

    from shimstock.workshop.models import FaultCounts, FaultFound, FaultSaid

    right = FaultFound.objects.filter(withdrawn=False).order_by()
    cleared = FaultSaid.objects.filter(
        withdrawn=False, about__startswith="cause:", said="cleared"
    ).order_by()
    rows = right.values_list("machine_id", "cause", Value(1), Value(1)).union(
        cleared.values_list("machine_id", "about", Value(0), Value(1)), all=True
    )
    if imported:
        no_machine = Value(None, output_field=IntegerField())
        came = FaultCounts.objects.filter(withdrawn=False).order_by()
        rows = rows.union(came.values_list(no_machine, "cause", "confirmed", "looked"), all=True)
    return rows


def learned_priors(book: Book, found: Mapping[str, Count]) -> dict[str, float]:
    """The priors of a book with what was found; of causes that nobody looked at they stay."""
    return learned({key: cause.chance for key, cause in book.causes.items()}, found)
