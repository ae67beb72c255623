"""Where one was with a machine: what is open, missing, away and unsafe, and what comes next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from shimstock.trade.machine.words import Stage
from shimstock.workshop.looking import called
from shimstock.workshop.places import (
    chain_place,
    joint_place,
    piece_place,
    reading_place,
    search_place,
)
from shimstock.workshop.wording import count_of

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Caution
    from shimstock.trade.machine.state import MachineNow, SearchNow
    from shimstock.trade.reach.findings import Finding
    from shimstock.trade.reach.next_things import NextThing
    from shimstock.trade.reach.readable import WaitsFor
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
        "searches": _searches(now),
        "unsafe": _unsafe(now),
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


def _searches(now: MachineNow) -> list[dict[str, Any]]:
    return [
        {"search": each.number, "about": each.about, "since": each.on.isoformat(),
         "says": _search_told(each)}
        for each in now.searches
        if each.goes_on
    ]  # fmt: skip


def _search_told(search: SearchNow) -> str:
    about = f": {search.about}" if search.about else ""
    return f"Search {search.number} goes on since {search.on.day} {search.on:%b}{about}"


def _unsafe(now: MachineNow) -> list[str]:
    cautions = (f"{each.name}: {each.never}" for each in cautions_open(now))
    return [*(each.says for each in unsafe(now)), *cautions]


@dataclass(frozen=True)
class Unsafe:
    """Something that is not safe as it stands.

    says: in words. place: where, as the diary names places; "" for a whole set.
    """

    says: str
    place: str


def unsafe(now: MachineNow) -> tuple[Unsafe, ...]:
    """What is not safe on a machine as it stands: what was left, and what is not to be run on."""
    from shimstock.trade.reach.faults_standing import causes_standing, signs_standing
    from shimstock.trade.reach.findings import findings
    from shimstock.trade.reach.next_things import not_to_be_trusted

    found = [Unsafe(f"{each.what}: {each.would_do}", _where(each)) for each in findings(now)]
    doubtful = [
        Unsafe(f"{called(now.book.joints, key)} {wrong}: do not run on it", joint_place(key))
        for key, wrong in not_to_be_trusted(now).items()
    ]
    faults = [
        Unsafe(f"{each.what}: do not run or drive it", search_place(each.search))
        for each in (*causes_standing(now), *signs_standing(now))
    ]
    return (*faults, *found, *doubtful)


def cautions_open(now: MachineNow) -> tuple[Caution, ...]:
    """What can hurt at the joints that stand open, each once."""
    from shimstock.trade.reach.next_things import longest_open

    met = (now.book.cautions_for(now.book.joints[key]) for key in longest_open(now))
    return tuple({each.name: each for cautions in met for each in cautions}.values())


def _where(found: Finding) -> str:
    if found.kind == "set":
        return ""
    return joint_place(found.where) if found.kind == "joint" else piece_place(found.where, "")


@dataclass(frozen=True)
class ToDo:
    """One thing to do next. says: in words. place: where it is done, as the diary names places."""

    says: str
    place: str


def to_do(now: MachineNow) -> tuple[ToDo, ...]:
    """What to do next, likeliest first, each with its place."""
    from shimstock.trade.reach.next_things import next_things

    return tuple(ToDo(_said(now, thing), _place(thing)) for thing in next_things(now))


def where_was_i(seen: Seen, last: DiaryEntry | None, before: Sequence[DiaryEntry] = ()) -> str:
    """Where one was with a machine, in a few sentences.

    last: the last entry of its diary; None where nothing was written yet.
    before: entries before it, the latest first; those of the same evening are told too.
    """
    told = [_evening(seen.now, last, before)] if last else []
    following = (f"Next: {each.says}." for each in seen.to_do[:1])
    return " ".join([*told, _stands_open(seen.now), *following])


def _evening(now: MachineNow, last: DiaryEntry, before: Sequence[DiaryEntry]) -> str:
    from django.utils.timezone import localdate

    day = localdate(last.at)
    when = "Today" if day == now.today else f"On {day.day} {day:%b}"
    earlier = [each for each in before if localdate(each.at) == day]
    told = f"{when} {last.who}: {last.says}"
    if not earlier:
        return told
    further = f" And {count_of(len(earlier) - 1, 'thing')} more." if earlier[1:] else ""
    return f"{told} Before that: {earlier[0].says}{further}"


def _stands_open(now: MachineNow) -> str:
    """The joint that has stood open longest, first among those that nobody covered."""
    from shimstock.trade.reach.next_things import longest_open

    opened = longest_open(now)
    if not opened:
        return "Nothing stands open."
    bare = [key for key in opened if not now.joint(key).covered]
    named, days = called(now.book.joints, (bare or opened)[0]), _days(now, (bare or opened)[0])
    others = f"; {count_of(len(opened) - 1, 'other')} too" if opened[1:] else ""
    return f"{named} stands open{days}, {'not covered' if bare else 'covered'}{others}."


def _days(now: MachineNow, joint: str) -> str:
    since = now.joint(joint).since
    if since is None or since == now.today:
        return " since today" if since else ""
    return f" for {count_of((now.today - since).days, 'day')}"


def _place(thing: NextThing) -> str:
    if thing.kind == "chain":
        return chain_place(thing.where)
    if thing.kind == "settle":
        return reading_place(thing.where, thing.piece, Stage.FOUND)
    if thing.kind == "ask after":
        return piece_place(thing.where, thing.piece)
    if thing.until is not None and thing.until.kind == "piece":
        return piece_place(thing.until.where, thing.until.piece)
    if thing.until is not None and thing.until.kind == "search":
        return search_place(int(thing.until.where))
    return joint_place(thing.until.where if thing.until else thing.where)


def _said(now: MachineNow, thing: NextThing) -> str:
    from shimstock.workshop.wording import figure_named, piece_named

    if thing.kind == "chain":
        return f"Put right what is worn in {now.book.trains[thing.where].name}"
    if thing.kind == "settle":
        return f"Settle {figure_named(now.book, thing.where, thing.piece)}"
    if thing.kind == "ask after":
        word = now.piece(thing.where, thing.piece).word
        asked = f"Ask after {piece_named(now.book, thing.where, thing.piece)}, {word}"
        return f"{asked}{_waiting(now, thing.waiting)}"
    if thing.until is not None:
        settle = f"Settle {figure_named(now.book, thing.where, thing.piece)}"
        return f"{settle} once {_until(now, thing.until)}"
    joint = called(now.book.joints, thing.where)
    return f"Cover {joint}" if thing.kind == "cover" else f"Close {joint}: all for it is there"


def _waiting(now: MachineNow, doubts: Sequence[tuple[str, str]]) -> str:
    """That figures in doubt wait for a piece; "" where none does."""
    from shimstock.workshop.wording import figure_named

    if not doubts:
        return ""
    first = figure_named(now.book, *doubts[0])
    others = f" and {count_of(len(doubts) - 1, 'other')} wait" if doubts[1:] else " waits"
    return f": {first}{others} for it"


def _until(now: MachineNow, until: WaitsFor) -> str:
    from shimstock.trade.reach.whereabouts import DONE_WITH
    from shimstock.workshop.wording import piece_named

    if until.kind == "search":
        return f"what search {until.where} found or saw is settled"
    if until.kind == "joint":
        return f"{called(now.book.joints, until.where)} is closed"
    word = now.piece(until.where, until.piece).word
    then = "replaced" if word in DONE_WITH else "on the machine"
    return f"{piece_named(now.book, until.where, until.piece)}, {word}, is {then}"
