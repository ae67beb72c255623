"""What a machine's book calls its things, as plain values and as a table."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from shimstock.faces.cli.shown import Shown, Table
from shimstock.workshop.names import Called

NOTHING = "Nothing in this machine's book is called so; a shorter word finds more."


def names_data(found: list[Called]) -> list[dict[str, Any]]:
    """The same as plain values."""
    return [asdict(each) | {"pieces": list(each.pieces)} for each in found]


def names_shown(found: list[Called]) -> list[Shown]:
    """The same as a table."""
    rows = [(each.kind, each.mark, each.key, _with_pieces(each)) for each in found]
    return [Table(("kind", "mark", "or key", "name"), rows)] if rows else [NOTHING]


def _with_pieces(each: Called) -> str:
    pieces = f": {', '.join(each.pieces)}" if each.pieces else ""
    by = f" ({each.by})" if each.by else ""
    return f"{each.name}{pieces}{by}"
