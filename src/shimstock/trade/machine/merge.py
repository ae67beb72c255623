"""Laying a book over the starter that it extends."""

from __future__ import annotations

from difflib import get_close_matches
from typing import Any

from shimstock.trade.machine.sheet import Path, Problem, Sheet, shown_path

_SECTIONS = frozenset(
    [
        "data",
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
    section with nothing in it, as it stands while somebody is still typing, changes nothing. An
    entry taken away that the starter does not have is among the problems of the sheet.
    """
    problems = [*over.problems, *base.problems]
    data: dict[str, Any] = dict(base.data)
    for key, value in over.data.items():
        old = data.get(key) or {}
        if key in _SECTIONS and value is None:
            continue
        if key in _SECTIONS and isinstance(value, dict) and isinstance(old, dict):
            data[key] = _entries(old, value, (key,), over, problems)
        else:
            data[key] = value
    return Sheet(data, (*over.layers, *base.layers), tuple(problems))


def difference(base: dict[str, Any], now: dict[str, Any]) -> dict[str, Any]:
    """What a sheet must say to make of a starter, laid over it, what stands now.

    base, now: plain values of the two.

    >>> difference({"parts": {"a": {"count": 2}, "b": {}}}, {"parts": {"a": {"name": "A"}}})
    {'parts': {'a': {'name': 'A', 'count': None}, 'b': None}}
    """
    changed: dict[str, Any] = {}
    for key in [*now, *(key for key in base if key not in now)]:
        old, new = base.get(key), now.get(key)
        if key in _SECTIONS and isinstance(old, dict) and isinstance(new, dict):
            if found := _changed(old, new, (key,)):
                changed[key] = found
        elif old != new:
            changed[key] = new
    return changed


def _changed(base: dict[str, Any], now: dict[str, Any], path: Path) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for key in [*now, *(key for key in base if key not in now)]:
        old, new, here = base.get(key), now.get(key), (*path, key)
        if old == new and (key in base) == (key in now):
            continue
        if isinstance(old, dict) and isinstance(new, dict) and _goes_into(here):
            found[key] = _changed(old, new, here)
        else:
            found[key] = new
    return found


def _entries(
    base: dict[str, Any], given: dict[str, Any], path: Path, over: Sheet, problems: list[Problem]
) -> dict[str, Any]:
    merged = dict(base)
    for key, value in given.items():
        here = (*path, key)
        old = merged.get(key)
        if value is None and key not in base:
            if _is_entry(here):
                problems.append(_not_there(here, base, over))
            else:
                merged[key] = None  # a field that is not there either: the entry's check tells
        elif value is None:
            del merged[key]
        elif isinstance(value, dict) and isinstance(old, dict) and _goes_into(here):
            merged[key] = _entries(old, value, here, over, problems)
        else:
            merged[key] = value
    return merged


def _goes_into(path: Path) -> bool:
    """Entries of a section, named points and causes, and the entries among those points."""
    return len(path) == 2 or (path[2] in _FIELDS_OF_ENTRIES and len(path) <= 4)


def _is_entry(path: Path) -> bool:
    """Whether a path names an entry, not a field of one."""
    return len(path) in (2, 4)


def _not_there(path: Path, base: dict[str, Any], over: Sheet) -> Problem:
    file, line = over.layers[0][path]
    key = str(path[-1])
    near = get_close_matches(key, sorted(base), n=1, cutoff=0.6)
    would = f"did you mean {near[0]!r}?" if near else "take out this line, or give it its fields"
    wrong = "is to be taken away, but the starter has none of this name"
    return Problem(file, line, shown_path(path), "", wrong, would)
