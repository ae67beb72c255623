"""Where one was with a machine: what is open, missing, away and unsafe, and what comes next."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from shimstock.workshop.looking import called

if TYPE_CHECKING:
    from shimstock.trade.machine.state import MachineNow
    from shimstock.trade.reach.next_things import NextThing


def standing(now: MachineNow) -> dict[str, Any]:
    """What there is to know before the next spanner, as plain values."""
    opened = _open(now)
    missing = _missing(now, [each["joint"] for each in opened])
    away = _away(now)
    return {
        "open": opened,
        "missing": missing,
        "away": away,
        "unsafe": _unsafe(now, opened),
        "next": _next(now),
    }


def _open(now: MachineNow) -> list[dict[str, Any]]:
    from shimstock.trade.reach.next_things import longest_open

    found = []
    for key in longest_open(now):
        joint = now.joint(key)
        found.append(
            {
                "joint": key,
                "mark": now.book.joints[key].mark or key,
                "name": called(now.book.joints, key),
                "word": str(joint.word),
                "since": joint.since and joint.since.isoformat(),
                "days": (now.today - joint.since).days if joint.since else None,
                "covered": joint.covered,
            }
        )
    return found


def _missing(now: MachineNow, joints: list[str]) -> dict[str, list[str]]:
    from shimstock.trade.reach.closing import why_not_close

    why = {key: [str(reason) for reason in why_not_close(now, key)] for key in joints}
    return {key: reasons for key, reasons in why.items() if reasons}


def _away(now: MachineNow) -> list[dict[str, Any]]:
    from shimstock.trade.reach.next_things import away_pieces
    from shimstock.workshop.wording import piece_named

    away = [(*key, now.piece(*key)) for key in away_pieces(now)]
    return [
        {"part": part, "piece": piece, "name": piece_named(now.book, part, piece),
         "state": str(stands.word), "note": stands.note}
        for part, piece, stands in away
    ]  # fmt: skip


def _unsafe(now: MachineNow, opened: list[dict[str, Any]]) -> list[str]:
    from shimstock.trade.reach.findings import findings
    from shimstock.trade.reach.next_things import not_to_be_trusted

    joints = now.book.joints
    found = [f"{each.what}: {each.would_do}" for each in findings(now)]
    doubtful = [
        f"{called(joints, key)} {wrong}: do not run on it"
        for key, wrong in not_to_be_trusted(now).items()
    ]
    cautions = {
        caution.name: caution.never
        for each in opened
        for caution in now.book.cautions_for(joints[each["joint"]])
    }
    return [*found, *doubtful, *(f"{name}: {never}" for name, never in cautions.items())]


def _next(now: MachineNow) -> list[str]:
    from shimstock.trade.reach.next_things import next_things

    return [_said(now, thing) for thing in next_things(now)]


def _said(now: MachineNow, thing: NextThing) -> str:
    from shimstock.workshop.wording import figure_named, piece_named

    if thing.kind == "settle":
        return f"Settle {figure_named(now.book, thing.where, thing.piece)}"
    if thing.kind == "ask after":
        word = now.piece(thing.where, thing.piece).word
        return f"Ask after {piece_named(now.book, thing.where, thing.piece)}, {word}"
    joint = called(now.book.joints, thing.where)
    return f"Cover {joint}" if thing.kind == "cover" else f"Close {joint}: all for it is there"
