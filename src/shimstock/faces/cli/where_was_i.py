"""Where one was with a machine: what is open, missing, away and unsafe, and what comes next."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.looking import called
from shimstock.faces.cli.shown import Heading, Shown, Table, listed_under

if TYPE_CHECKING:
    from shimstock.faces.cli.looking import Seen
    from shimstock.trade.reach.next_things import NextThing

LITTLE = 2  # points that a joint may lack to be listed with them
FEW = 2  # joints that are named in full where more would be only marks


def standing(seen: Seen) -> dict[str, Any]:
    """What there is to know before the next spanner, as plain values."""
    opened = _open(seen)
    missing = _missing(seen, [each["joint"] for each in opened])
    away = _away(seen)
    return {
        "open": opened,
        "missing": missing,
        "away": away,
        "unsafe": _unsafe(seen, opened),
        "next": _next(seen),
    }


def standing_shown(stands: dict[str, Any], *, all_missing: bool) -> list[Shown]:
    """The same, for a person; all_missing: also for joints that lack much."""
    return [
        *([] if stands["open"] else ["Nothing stands open."]),
        *tonight_shown(stands),
        *listed_under("Missing before it can be closed", _missing_lines(stands, all_missing)),
        *_table("Away or wanted", ("piece", "stands", "note"), _away_cells(stands)),
        *listed_under("Next", stands["next"]),
    ]


def tonight_shown(stands: dict[str, Any]) -> list[Shown]:
    """What is open and unsafe tonight."""
    return [
        *_table("Open", ("since", "days", "stands", "covered", "joints"), _open_cells(stands)),
        *listed_under("Unsafe tonight", stands["unsafe"]),
    ]


def _open(seen: Seen) -> list[dict[str, Any]]:
    from shimstock.trade.reach.next_things import longest_open

    found = []
    for key in longest_open(seen.now):
        joint = seen.now.joint(key)
        found.append(
            {
                "joint": key,
                "mark": seen.book.joints[key].mark or key,
                "name": called(seen.book.joints, key),
                "word": str(joint.word),
                "since": joint.since and joint.since.isoformat(),
                "days": (seen.now.today - joint.since).days if joint.since else None,
                "covered": joint.covered,
            }
        )
    return found


def _missing(seen: Seen, joints: list[str]) -> dict[str, list[str]]:
    from shimstock.trade.reach.closing import why_not_close

    why = {key: [str(reason) for reason in why_not_close(seen.now, key)] for key in joints}
    return {key: reasons for key, reasons in why.items() if reasons}


def _away(seen: Seen) -> list[dict[str, Any]]:
    from shimstock.trade.reach.next_things import away_pieces
    from shimstock.workshop.wording import piece_named

    away = [(*key, seen.now.piece(*key)) for key in away_pieces(seen.now)]
    return [
        {"part": part, "piece": piece, "name": piece_named(seen.book, part, piece),
         "state": str(now.word), "note": now.note}
        for part, piece, now in away
    ]  # fmt: skip


def _unsafe(seen: Seen, opened: list[dict[str, Any]]) -> list[str]:
    from shimstock.trade.reach.findings import findings
    from shimstock.trade.reach.next_things import not_to_be_trusted

    joints = seen.book.joints
    found = [f"{each.what}: {each.would_do}" for each in findings(seen.now)]
    doubtful = [
        f"{called(joints, key)} {wrong}: do not run on it"
        for key, wrong in not_to_be_trusted(seen.now).items()
    ]
    cautions = {
        caution.name: caution.never
        for each in opened
        for caution in seen.book.cautions_for(joints[each["joint"]])
    }
    return [*found, *doubtful, *(f"{name}: {never}" for name, never in cautions.items())]


def _next(seen: Seen) -> list[str]:
    from shimstock.trade.reach.next_things import next_things

    return [_said(seen, thing) for thing in next_things(seen.now)]


def _said(seen: Seen, thing: NextThing) -> str:
    from shimstock.workshop.wording import figure_named, piece_named

    if thing.kind == "settle":
        return f"Settle {figure_named(seen.book, thing.where, thing.piece)}"
    if thing.kind == "ask after":
        word = seen.now.piece(thing.where, thing.piece).word
        return f"Ask after {piece_named(seen.book, thing.where, thing.piece)}, {word}"
    joint = called(seen.book.joints, thing.where)
    return f"Cover {joint}" if thing.kind == "cover" else f"Close {joint}: all for it is there"


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
