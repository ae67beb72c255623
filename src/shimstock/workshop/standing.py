"""Where one was with a machine: what is open, missing, away and unsafe, and what comes next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from shimstock.trade.machine.words import Stage
from shimstock.workshop.looking import called
from shimstock.workshop.places import joint_place, piece_place, reading_place
from shimstock.workshop.wording import count_of

if TYPE_CHECKING:
    from shimstock.trade.machine.state import MachineNow
    from shimstock.trade.reach.next_things import NextThing
    from shimstock.workshop.looking import Seen
    from shimstock.workshop.models import DiaryEntry


def standing(now: MachineNow, following: Sequence[ToDo]) -> dict[str, Any]:
    """What there is to know before the next spanner, as plain values.

    following: what to do next.
    """
    opened = _open(now)
    missing = _missing(now, [each["joint"] for each in opened])
    away = _away(now)
    return {
        "open": opened,
        "missing": missing,
        "away": away,
        "unsafe": _unsafe(now, opened),
        "next": [each.says for each in following],
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


@dataclass(frozen=True)
class ToDo:
    """One thing to do next. says: in words. place: where it is done, as the diary names places."""

    says: str
    place: str


def to_do(now: MachineNow) -> tuple[ToDo, ...]:
    """What to do next, likeliest first, each with its place."""
    from shimstock.trade.reach.next_things import next_things

    return tuple(ToDo(_said(now, thing), _place(thing)) for thing in next_things(now))


def where_was_i(seen: Seen, last: DiaryEntry | None) -> str:
    """Where one was with a machine, in a sentence or two.

    last: the last entry of its diary; None where nothing was written yet.
    """
    from shimstock.trade.reach.next_things import longest_open

    now = seen.now
    told = [f"{_when(last, now)} {last.who}: {last.says}"] if last else []
    opened = longest_open(now)
    if not opened:
        told.append("Nothing stands open.")
    else:
        longest, days = called(now.book.joints, opened[0]), _days(now, opened[0])
        others = f", and {count_of(len(opened) - 1, 'other')}" if opened[1:] else ""
        told.append(f"{longest} stands open{days}{others}.")
    return " ".join([*told, *(f"Next: {each.says}." for each in seen.to_do[:1])])


def _days(now: MachineNow, joint: str) -> str:
    since = now.joint(joint).since
    return f" since {count_of((now.today - since).days, 'day')}" if since else ""


def _when(entry: DiaryEntry, now: MachineNow) -> str:
    from django.utils.timezone import localdate

    day = localdate(entry.at)
    return "Today" if day == now.today else f"On {day.day} {day:%b}"


def _place(thing: NextThing) -> str:
    if thing.kind == "settle":
        return reading_place(thing.where, thing.piece, Stage.FOUND)
    if thing.kind == "ask after":
        return piece_place(thing.where, thing.piece)
    return joint_place(thing.where)


def _said(now: MachineNow, thing: NextThing) -> str:
    from shimstock.workshop.wording import figure_named, piece_named

    if thing.kind == "settle":
        return f"Settle {figure_named(now.book, thing.where, thing.piece)}"
    if thing.kind == "ask after":
        word = now.piece(thing.where, thing.piece).word
        return f"Ask after {piece_named(now.book, thing.where, thing.piece)}, {word}"
    joint = called(now.book.joints, thing.where)
    return f"Cover {joint}" if thing.kind == "cover" else f"Close {joint}: all for it is there"
