"""The overhaul of one machine, in the order in which a restorer wants it."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Heading, Shown, Table, listed_under
from shimstock.faces.cli.where_was_i import tonight_shown
from shimstock.workshop.looking import called, minutes

if TYPE_CHECKING:
    from shimstock.workshop.looking import Seen

FOUND = (
    "worn out", "out of setting", "too much in all", "borderline", "not measured", "serviceable",
    "good", "size only",
)  # fmt: skip


def overhaul(seen: Seen) -> tuple[dict[str, Any], list[Shown]]:
    """Everything about one machine: as plain values, and as it is shown."""
    from shimstock.faces.cli.gate_lines import gates_data, gates_shown
    from shimstock.faces.cli.train_lines import rocked, train_data, train_shown
    from shimstock.workshop.to_do import remedies_now

    verdicts, remedies = seen.measured[0], remedies_now(seen)
    stands, gates, ways = seen.standing, gates_data(seen), ways_to_go(seen, remedies)
    every = [rocked(seen, key, finished=False) for key in seen.book.trains]
    trains = [(key, found) for key, found in every if found.doubtful]
    leaks = leaking(seen)
    data = {
        "machine": seen.row.slug,
        "found": dict(Counter(_words(seen, verdicts))),
        "worn": [_worn_data(seen, row) for row in _worn(verdicts)],
        "trains": [train_data(*each) for each in trains],
        "remedies": [remedy_data(each) for each in remedies],
        "ways": ways,
        "leaks": leaks,
        **{key: stands[key] for key in ("open", "missing", "away", "unsafe", "next")},
        "gates": gates,
    }
    shown = [
        Heading(f"=== {seen.row.name} ({seen.row.slug}) ==="),
        *_found(seen, verdicts),
        *(line for train in trains for line in train_shown(seen.book, *train)),
        *remedies_shown(remedies),
        *_orders(seen, remedies, stands),
        *_ways_shown(ways),
        *listed_under("Leaking", leaks),
        *tonight_shown(stands),
        *gates_shown(gates),
    ]
    return data, shown


def remedies_shown(remedies: list[Any]) -> list[Shown]:
    """What to do, kind by kind, each with its reasons."""
    from shimstock.workshop.to_do import TO_DO, USE_AGAIN

    shown: list[Shown] = []
    for kind, heading in TO_DO.items():
        found = [each for each in remedies if str(each.what) == kind]
        if kind == USE_AGAIN:
            names = "; ".join(each.says.removesuffix(f": {USE_AGAIN}") for each in found)
            shown += listed_under(heading, [names] if names else [])
        else:
            lines = dict.fromkeys(tuple(_with_reasons(each)) for each in found)
            shown += listed_under(heading, [line for each in lines for line in each])
    return shown


def remedy_data(remedy: Any) -> dict[str, Any]:
    """A remedy as plain values."""
    return {
        "what": str(remedy.what),
        "part": remedy.part,
        "pieces": [piece for _, piece in remedy.pieces],
        "figures": list(remedy.figures),
        "says": remedy.says,
        "because": list(remedy.because),
        "size": remedy.size,
        "held": list(remedy.held),
        "blocks": remedy.blocks,
    }


def ways_to_go(seen: Seen, remedies: list[Any]) -> list[dict[str, Any]]:
    """The way in to each part that wants work and is not in reach yet."""
    from shimstock.trade.reach.way import way_in
    from shimstock.workshop.to_do import USE_AGAIN

    parts = dict.fromkeys(each.part for each in remedies if each.what != USE_AGAIN)
    ways = [(part, way_in(seen.now, [f"{part}"])) for part in parts]
    return [
        {"part": part, "name": called(seen.book.parts, part), "opens": list(way.opens),
         "marks": [seen.book.joints[key].mark or key for key in way.opens],
         "minutes_open": way.minutes_open, "minutes_close": way.minutes_close}
        for part, way in ways
        if way.opens
    ]  # fmt: skip


def leaking(seen: Seen) -> list[str]:
    """Joints found wet: what opening them again costs now, and after paint."""
    from shimstock.trade.reach.reopen import reopen
    from shimstock.trade.reach.while_open import TOUCH_UP

    wet = [key for key, now in seen.now.joints.items() if now.word in ("weeping", "leaking")]
    again = [reopen(seen.now, key, paint_minutes=TOUCH_UP, paint_money=0).value for key in wet]
    return [
        line
        for each in again
        for line in (
            f"{called(seen.book.joints, each.joint)}: {each.says} (paint by a stand-in of "
            f"{TOUCH_UP:g} min)",
            *(f"  {advice}" for advice in each.advice),
        )
    ]


def _words(seen: Seen, verdicts: Any) -> list[str]:
    """The word of each figure: a thing that is adjusted is out of setting, and not worn."""
    from shimstock.trade.measure.words import word_of

    return [
        word_of(seen.book.measures[row.figure], row.latest.verdict, row.latest.says)
        if row.latest.verdict
        else "size only"
        for row in verdicts.side_by_side
    ]


def _worn(verdicts: Any) -> list[Any]:
    from shimstock.workshop.verdicts_told import WORST_FIRST

    rows = [row for row in verdicts.side_by_side if str(row.latest.verdict) in WORST_FIRST[:2]]
    return sorted(rows, key=lambda row: WORST_FIRST.index(str(row.latest.verdict)))


def _worn_data(seen: Seen, row: Any) -> dict[str, Any]:
    return {
        "figure": row.figure,
        "piece": row.piece,
        "verdict": str(row.latest.verdict),
        "says": row.latest.says,
        "stand_in": seen.book.measures[row.figure].stand_in,
    }


def _found(seen: Seen, verdicts: Any) -> list[Shown]:
    from shimstock.workshop.verdicts_told import STAND_IN

    counts = Counter(_words(seen, verdicts))
    total = ", ".join(f"{counts[word]} {word}" for word in FOUND if counts[word])
    rows = [(_figure(seen, row.figure, row.piece), row.latest.says) for row in _worn(verdicts)]
    left = len(verdicts.not_measured)
    return [
        Heading("What was found"),
        f"{total}; {left} figures not measured yet.",
        Table(("figure", "as it stands"), rows),
        f"* {STAND_IN}: the maker's book says better; type its figure and page.",
    ]


def _figure(seen: Seen, figure: str, piece: str) -> str:
    star = "*" if seen.book.measures[figure].stand_in else ""
    return f"{called(seen.book.measures, figure)}{f', {piece}' if piece else ''}{star}"


def _with_reasons(remedy: Any) -> list[str]:
    return [f"- {remedy.says}", *(f"  because {each}" for each in remedy.because)]


def _orders(seen: Seen, remedies: list[Any], stands: dict[str, Any]) -> list[Shown]:
    away = [f"{each['name']}: {each['state']}; {each['note']}" for each in stands["away"]]
    waiting: dict[str, list[str]] = {}
    for each in remedies:
        if each.held:
            waiting.setdefault(f"- {each.says}", []).extend(f"  {reason}" for reason in each.held)
    held = [line for says, why in waiting.items() for line in (says, *dict.fromkeys(why))]
    return [
        *listed_under("To order", to_order(seen, remedies)),
        *listed_under("Must wait, and why", held),
        *listed_under("Ordered, or away", away),
    ]


def to_order(seen: Seen, remedies: list[Any]) -> list[str]:
    """What is wanted and not ordered yet: pieces, mates, and what closing uses up."""
    from shimstock.trade.reach.used_up import used_up
    from shimstock.workshop.wording import piece_named

    pieces = [
        f"{piece_named(seen.book, part, piece)}: {now.word}; {now.note}"
        for (part, piece), now in seen.now.pieces.items()
        if now.word in ("rejected", "wanted", "quoted", "to be made")
    ]
    pairs = [each.says for each in remedies if str(each.what) == "not a pair"]
    opened = [key for key in seen.book.joints if key in seen.now.open_joints]
    uses = [
        str(use) for use in used_up(seen.book, opened) if use.one_use and not _laid_ready(seen, use)
    ]
    closing = [f"to close what is open: {'; '.join(uses)}"] if uses else []
    return [*pieces, *pairs, *closing]


def _laid_ready(seen: Seen, use: Any) -> bool:
    return all(use.name in seen.now.joint(joint).gaskets_ready for joint in use.joints)


def _ways_shown(ways: list[dict[str, Any]]) -> list[Shown]:
    rows = [
        (each["name"], ", ".join(each["marks"]), minutes(each["minutes_open"]),
         minutes(each["minutes_close"]))
        for each in ways
    ]  # fmt: skip
    columns = ("to reach", "joints to open", "opening", "closing")
    return [Heading("Ways in still to go"), Table(columns, rows)] if rows else []
