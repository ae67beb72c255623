"""Where one was with a machine: what is open, missing, away and unsafe, and what comes next."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.looking import called
from shimstock.faces.cli.shown import Heading, Shown, Table

if TYPE_CHECKING:
    from shimstock.faces.cli.looking import Seen

AWAY = (
    "wanted", "quoted", "to be made", "on order", "in the post", "out at the machinist",
    "out at the bench", "lent",
)  # fmt: skip
LITTLE = 2  # points that a joint may lack to be listed with them
FEW = 2  # joints that are named in full where more would be only marks
NOT_TO_BE_TRUSTED = {
    "dry-fitted": "only tried dry",
    "sealed": "nipped, not torqued",
    "weeping": "weeps",
    "leaking": "leaks",
}
"""Joints that look closed and are not done with."""


def standing(seen: Seen) -> dict[str, Any]:
    """What there is to know before the next spanner, as plain values."""
    opened = _open(seen)
    missing = _missing(seen, [each["joint"] for each in opened])
    away = _away(seen)
    unsafe = _unsafe(seen, opened)
    return {
        "open": opened,
        "missing": missing,
        "away": away,
        "unsafe": unsafe,
        "next": _next(seen, opened, missing, away),
    }


def standing_shown(stands: dict[str, Any], *, all_missing: bool) -> list[Shown]:
    """The same, for a person; all_missing: also for joints that lack much."""
    return [
        *([] if stands["open"] else ["Nothing stands open."]),
        *tonight_shown(stands),
        *listed("Missing before it can be closed", _missing_lines(stands, all_missing)),
        *_table("Away or wanted", ("piece", "stands", "note"), _away_cells(stands)),
        *listed("Next", stands["next"]),
    ]


def tonight_shown(stands: dict[str, Any]) -> list[Shown]:
    """What is open and unsafe tonight."""
    return [
        *_table("Open", ("since", "days", "stands", "covered", "joints"), _open_cells(stands)),
        *listed("Unsafe tonight", stands["unsafe"]),
    ]


def _open(seen: Seen) -> list[dict[str, Any]]:
    found = []
    for key, joint in seen.now.joints.items():
        if joint.is_open:
            days = (seen.now.today - joint.since).days if joint.since else None
            found.append(
                {
                    "joint": key,
                    "mark": seen.book.joints[key].mark or key,
                    "name": called(seen.book.joints, key),
                    "word": str(joint.word),
                    "since": joint.since and joint.since.isoformat(),
                    "days": days,
                    "covered": joint.covered,
                }
            )
    return sorted(found, key=lambda each: each["since"] or "")


def _missing(seen: Seen, joints: list[str]) -> dict[str, list[str]]:
    from shimstock.trade.reach.closing import why_not_close

    why = {key: [str(reason) for reason in why_not_close(seen.now, key)] for key in joints}
    return {key: reasons for key, reasons in why.items() if reasons}


def _away(seen: Seen) -> list[dict[str, Any]]:
    from shimstock.workshop.wording import piece_named

    return [
        {"part": part, "piece": piece, "name": piece_named(seen.book, part, piece),
         "state": str(now.word), "note": now.note}
        for (part, piece), now in seen.now.pieces.items()
        if now.word in AWAY
    ]  # fmt: skip


def _unsafe(seen: Seen, opened: list[dict[str, Any]]) -> list[str]:
    from shimstock.trade.reach.findings import findings

    joints = seen.book.joints
    found = [f"{each.what}: {each.would_do}" for each in findings(seen.now)]
    doubtful = [
        f"{called(joints, key)} {NOT_TO_BE_TRUSTED[now.word]}: do not run on it"
        for key, now in seen.now.joints.items()
        if now.word in NOT_TO_BE_TRUSTED
    ]
    cautions = {
        caution.name: caution.never
        for each in opened
        for caution in seen.book.cautions_for(joints[each["joint"]])
    }
    return [*found, *doubtful, *(f"{name}: {never}" for name, never in cautions.items())]


def _next(
    seen: Seen,
    opened: list[dict[str, Any]],
    missing: dict[str, list[str]],
    away: list[dict[str, Any]],
) -> list[str]:
    bare = [each for each in opened if not each["covered"]]
    ready = [each for each in opened if each["joint"] not in missing]
    doubt = [
        key for key, verdict in seen.now.verdicts.items()
        if verdict.verdict == "borderline" and not verdict.accepted
    ]  # fmt: skip
    measures = seen.book.measures
    return [
        *(f"Cover {each['name']}" for each in bare[:2]),
        *(f"Close {each['name']}: everything for it is there" for each in ready[:2]),
        *(f"Settle {called(measures, figure)} {piece}".rstrip() for figure, piece, _ in doubt[:2]),
        *(f"Ask after {each['name']}, {each['state']}" for each in away[:2]),
    ]


def _open_cells(stands: dict[str, Any]) -> list[tuple[str, ...]]:
    """Joints opened on one day and standing alike share a line."""
    together: dict[tuple[str, ...], list[dict[str, Any]]] = {}
    for each in stands["open"]:
        covered = "yes" if each["covered"] else "NO"
        alike = (each["since"] or "", str(each["days"]), each["word"], covered)
        together.setdefault(alike, []).append(each)
    return [(*alike, _joints(joints)) for alike, joints in together.items()]


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


def listed(heading: str, lines: list[str]) -> list[Shown]:
    """Lines under a heading; nothing where there are none."""
    return [Heading(heading), *(f"  {line}" for line in lines)] if lines else []
