"""What commands show of a machine before anything else: entries kept, and cautions."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Caution, Shown

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Caution as BookCaution
    from shimstock.workshop.models import DiaryEntry


def kept_line(entry: DiaryEntry) -> str:
    """A diary entry in a line, with its number for undoing."""
    return f"{entry.says}  [entry {entry.pk}]"


@contextmanager
def kept_so_far(entries: list[DiaryEntry]) -> Iterator[None]:
    """Where a later act of several is refused, say with it what the earlier ones have kept."""
    try:
        yield
    except Exception as error:
        for entry in entries:
            error.add_note(kept_line(entry))
        raise


def cautions_shown(cautions: Iterable[BookCaution]) -> list[Shown]:
    """Cautions whole."""
    return [Caution(each.name, _caution_lines(each)) for each in cautions]


def cautions_data(cautions: Iterable[BookCaution]) -> list[dict[str, Any]]:
    """Cautions as plain values."""
    return [
        {"name": c.name, "mark": c.mark, "do": c.do, "never": c.never, "defer": c.defer}
        for c in cautions
    ]


def _caution_lines(caution: BookCaution) -> list[str]:
    defer = [f"Ask: {caution.defer}"] if caution.defer else []
    return [caution.do, caution.never, *defer]
