"""Where one was with a machine, as lines: open, missing, away and unsafe, and what comes next."""

from __future__ import annotations

from datetime import date
from typing import Any

from shimstock.faces.cli.shown import Heading, Shown, Table, listed_under

LITTLE = 2  # points that a joint may lack to be listed with them
FEW = 2  # joints that are named in full where more would be only marks


def standing_shown(stands: dict[str, Any], *, all_missing: bool) -> list[Shown]:
    """The same, for a person; all_missing: also for joints that lack much."""
    return [
        *([] if stands["open"] else ["Nothing stands open."]),
        *tonight_shown(stands),
        *listed_under("Missing before it can be closed", _missing_lines(stands, all_missing)),
        *_table("Away or wanted", ("piece", "stands", "note"), _away_cells(stands)),
        *listed_under("Searches that go on", [each["says"] for each in stands["searches"]]),
        *listed_under("Next", stands["next"]),
    ]


def tonight_shown(stands: dict[str, Any]) -> list[Shown]:
    """What is open and unsafe tonight."""
    return [
        *_table("Open", ("since", "days", "stands", "covered", "joints"), _open_cells(stands)),
        *listed_under("Unsafe tonight", stands["unsafe"]),
    ]


def _open_cells(stands: dict[str, Any]) -> list[tuple[str, ...]]:
    """Joints opened on one day and standing alike share a line."""
    together: dict[tuple[str, ...], list[dict[str, Any]]] = {}
    for each in stands["open"]:
        covered = "yes" if each["covered"] else "NO"
        alike = (_day(each["since"]), str(each["days"]), each["word"], covered)
        together.setdefault(alike, []).append(each)
    return [(*alike, _joints(joints)) for alike, joints in together.items()]


def _day(iso: str | None) -> str:
    return f"{date.fromisoformat(iso):%d %b %Y}" if iso else ""


def _joints(joints: list[dict[str, Any]]) -> str:
    if len(joints) <= FEW:
        return "; ".join(each["name"] for each in joints)
    return ", ".join(each["mark"] for each in joints)


def _away_cells(stands: dict[str, Any]) -> list[tuple[str, ...]]:
    return [(each["name"], each["state"], each["note"]) for each in stands["away"]]


def _missing_lines(stands: dict[str, Any], all_missing: bool) -> list[str]:
    """The joints that lack little, nearest to done first; the others only counted."""
    named = {each["joint"]: each for each in stands["open"]}
    by_count = sorted(stands["missing"].items(), key=lambda item: len(item[1]))
    near = [item for item in by_count if all_missing or len(item[1]) <= LITTLE]
    far = [f"{named[key]['mark']} {len(why)}" for key, why in by_count if len(why) > LITTLE]
    lines = [
        line
        for key, why in near
        for line in (f"{named[key]['name']}:", *(f"  {reason}" for reason in why))
    ]
    more = f"These lack more, so many points each: {', '.join(far)}. --all lists them."
    return [*lines, more] if far and not all_missing else lines


def _table(heading: str, columns: tuple[str, ...], rows: list[tuple[str, ...]]) -> list[Shown]:
    return [Heading(heading), Table(columns, rows, frozenset({"days"}))] if rows else []
