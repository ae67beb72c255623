"""Laying a book over the starter that it extends."""

from __future__ import annotations

from typing import Any

from shimstock.trade.machine.sheet import Path, Sheet

_SECTIONS = frozenset(
    [
        "parts",
        "joints",
        "sets",
        "figures",
        "settings",
        "trains",
        "causes",
        "signs",
        "cautions",
        "gates",
    ]
)
_FIELDS_OF_ENTRIES = frozenset({"points", "causes"})


def lay_over(base: Sheet, over: Sheet) -> Sheet:
    """Lay one sheet over another: entry by entry, field by field; an empty value takes away.

    A field given anew replaces the whole field of the starter, lists included. Only sections, the
    entries in them, and the named lists of gates and signs (points, causes) are gone into. A
    section with nothing in it, as it stands while somebody is still typing, changes nothing.
    """
    data: dict[str, Any] = dict(base.data)
    for key, value in over.data.items():
        old = data.get(key) or {}
        if key in _SECTIONS and value is None:
            continue
        if key in _SECTIONS and isinstance(value, dict) and isinstance(old, dict):
            data[key] = _entries(old, value, (key,))
        else:
            data[key] = value
    return Sheet(data, (*over.layers, *base.layers))


def _entries(base: dict[str, Any], over: dict[str, Any], path: Path) -> dict[str, Any]:
    merged = dict(base)
    for key, value in over.items():
        here = (*path, key)
        old = merged.get(key)
        if value is None:
            merged.pop(key, None)
        elif isinstance(value, dict) and isinstance(old, dict) and _goes_into(here):
            merged[key] = _entries(old, value, here)
        else:
            merged[key] = value
    return merged


def _goes_into(path: Path) -> bool:
    """Entries of a section, named points and causes, and the entries among those points."""
    return len(path) == 2 or (path[2] in _FIELDS_OF_ENTRIES and len(path) <= 4)
