"""A joint's job card: one sheet for an oily bench, with boxes for what is read and ticked."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from datetime import date
from typing import TYPE_CHECKING, Any

from shimstock.faces.paper.drawing import sign_alone
from shimstock.faces.paper.signs import JOINT_SIGNS
from shimstock.faces.paper.square import address_of, drawn, square_of
from shimstock.faces.paper.typeset import sheet_of, typeset
from shimstock.faces.paper.wording import capital, day, from_to, joined, some
from shimstock.workshop.labels import JOINT, Labelled
from shimstock.workshop.looking import DEFERS, minutes

if TYPE_CHECKING:
    from collections.abc import Iterator

    from shimstock.trade.machine.book import Caution, Fasteners, Figure, Use
    from shimstock.workshop.at_joint import AtJoint, FigureBehind

TEMPLATE = "job_card.typ"
SQUARE = 30.0
"""Millimetres for the QR code and its quiet zone."""


@dataclass(frozen=True)
class Step:
    """A joint on the way in, and how long opening it takes."""

    mark: str
    name: str
    minutes: str
    note: str


@dataclass(frozen=True)
class Row:
    """A row of boxes: which piece and direction, and the verdict on it now."""

    name: str
    known: str


@dataclass(frozen=True)
class Boxes:
    """A figure to read: what the book allows, and empty boxes shaped like the measurement.

    columns: what stands above the boxes; "" where nothing need stand there.
    """

    mark: str
    name: str
    unit: str
    with_: str
    allowed: str
    stand_in: bool
    rows: tuple[Row, ...]
    columns: tuple[str, ...]


@dataclass(frozen=True)
class Card:
    """Everything that the card says."""

    machine: str
    mark: str
    name: str
    state: str
    stands: str
    facts: tuple[str, ...]
    cautions: tuple[dict[str, str], ...]
    defers: str
    steps: tuple[Step, ...]
    takes: str
    measure_first: tuple[str, ...]
    uses: tuple[str, ...]
    fastenings: tuple[dict[str, str], ...]
    bolts: int
    ready: tuple[str, ...]
    figures: tuple[Boxes, ...]
    while_open: tuple[str, ...]
    printed: str


def job_card(at: AtJoint, *, base: str = "", today: date | None = None, paper: str = "a4") -> bytes:
    """The job card of a joint as a PDF.

    base: where phones find the shed, for the square that opens the joint's page; none without it.
    today: the day printed on it. Raises ValueError for a paper that is not known.
    """
    on = today or at.seen.now.today
    data: dict[str, Any] = asdict(card_of(at, on))
    data |= {"paper": sheet_of(paper), "date": [on.year, on.month, on.day]}
    data |= {"sign": sign_alone(JOINT_SIGNS[at.stands.word]), "square": _square(at, base)}
    return typeset(TEMPLATE, data)


def card_of(at: AtJoint, today: date) -> Card:
    """What the card says, without any layout. today: the day printed on it."""
    return Card(
        machine=at.seen.row.name,
        mark=at.entry.mark or "",
        name=capital(at.entry.name),
        state=at.stands.word.value,
        stands=_stands(at),
        facts=tuple(_facts(at)),
        cautions=tuple(_caution(due.caution) for due in at.cautions),
        defers=DEFERS,
        steps=tuple(_steps(at)),
        takes=_takes(at),
        measure_first=tuple(_packs(at)),
        uses=tuple(_use(use) for use in at.entry.uses),
        fastenings=tuple(_fastening(each) for each in at.entry.fasteners),
        bolts=at.bolts_out,
        ready=tuple(each.use.name for each in at.to_lay_ready),
        figures=tuple(_figures(at)),
        while_open=tuple(_while_open(at)),
        printed=day(today),
    )


def _square(at: AtJoint, base: str) -> str:
    if not base:
        return ""
    return drawn(square_of(address_of(base, Labelled(at.seen.row.slug, JOINT, at.key)), SQUARE))


def _stands(at: AtJoint) -> str:
    """Since when, and whether it is covered."""
    said = [f"since {day(at.stands.since)}"] if at.stands.since else []
    if at.stands.is_open:
        said.append("covered" if at.stands.covered else "not covered")
    return ", ".join(said)


def _facts(at: AtJoint) -> Iterator[str]:
    """What one must know before the first spanner."""
    entry = at.entry
    if entry.hands > 1:
        yield f"{entry.hands} people."
    yield f"Seals {', '.join(at.seals)}." if at.seals else "Seals nothing."
    if entry.on_paint:
        yield "A weep here runs over paint."
    if entry.cover_same_night:
        yield "Cover it the same night."
    if entry.seal_inside_first:
        yield "Seal what is inside first: it cannot be reached again."
    if entry.note:
        yield capital(entry.note.rstrip(".")) + "."


def _caution(caution: Caution) -> dict[str, str]:
    return {
        "name": caution.name,
        "do": caution.do,
        "never": caution.never,
        "defer": caution.defer or "",
    }


def _steps(at: AtJoint) -> Iterator[Step]:
    """The joints to open, in order, this one last."""
    if at.way is None:
        return
    joints = at.seen.book.joints
    for key in at.way.opens:
        joint = joints[key]
        note = some(joint.hands, "person", "people") if joint.hands > 1 else ""
        yield Step(joint.mark or "", capital(joint.name), minutes(joint.open), note)


def _takes(at: AtJoint) -> str:
    way = at.way
    if way is None:
        shut = f"Closing it takes {minutes(at.entry.close)} by the book."
        return f"It stands open. {shut}" if at.stands.is_open else f"No way in is known. {shut}"
    opens, closes = minutes(way.minutes_open), minutes(way.minutes_close)
    return f"All of it: open {opens}, close {closes} by the book."


def _packs(at: AtJoint) -> Iterator[str]:
    """Old packs to measure before they are lost."""
    for each in at.measure_first:
        joint, figure = at.seen.book.joints[each.joint], at.seen.book.measures[each.figure]
        known = f" (found: {each.known})" if each.known else ""
        yield f"{joint.mark or ''} {joint.name}: the old {each.by}, for {figure.name}{known}"


def _use(use: Use) -> str:
    several = f"{use.count} × " if use.count > 1 else ""
    more = [use.thickness.typed] if use.thickness else []
    more += [use.amount] if use.amount else []
    again = "" if use.one_use else " (used again if whole)"
    return several + ", ".join([use.name, *more]) + again


def _fastening(each: Fasteners) -> dict[str, str]:
    sized = f"{each.count} × {each.what}" + (f" {each.thread}" if each.thread else "")
    return {
        "what": sized + (f", grade {each.grade}" if each.grade else ""),
        "torque": each.torque.typed if each.torque else "",
        "page": "" if each.page is None else str(each.page),
        "note": each.note or "",
    }


def _figures(at: AtJoint) -> Iterator[Boxes]:
    """What can be read with the joint open: not what follows from others, nor what runs."""
    read: dict[str, list[FigureBehind]] = {}
    for each in at.figures:
        read.setdefault(each.key, []).append(each)
    for key, pieces in read.items():
        figure = at.seen.book.measures[key]
        if figure.derive is None and not figure.running:
            yield _boxes(figure, pieces)


def _boxes(figure: Figure, pieces: list[FigureBehind]) -> Boxes:
    """The boxes of one figure, a row for each piece; of a bore one for each direction."""
    across, columns = _shape(figure)
    return Boxes(
        mark=figure.mark or "",
        name=capital(figure.name),
        unit=figure.measured_in,
        with_=figure.with_ or "",
        allowed=_allowed(figure),
        stand_in=figure.stand_in and bool(figure.new or figure.limit),
        rows=tuple(
            Row(joined((each.piece, way), " "), _known(each) if number == 0 else "")
            for each in pieces
            for number, way in enumerate(across)
        ),
        columns=columns,
    )


def _allowed(figure: Figure) -> str:
    """What the book allows, new and in use."""
    new = f"New {from_to(figure.as_new)}." if figure.new else ""
    limit = f"Limit {from_to(figure.allowed)}." if figure.limit else ""
    return joined((new, limit), " ") or "The book gives no limit."


def _known(figure: FigureBehind) -> str:
    return figure.verdict.word if figure.verdict else ""


def _shape(figure: Figure) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Directions and places of one piece's boxes: a grid down a bore, a row, or one box."""
    if figure.at is None:
        return ("",), ("",)
    if figure.at.places:
        return ("",), figure.at.places
    return figure.at.across, figure.at.depths


def _while_open(at: AtJoint) -> Iterator[str]:
    joints = at.seen.book.joints
    for each in at.while_open:
        joint = joints[each.joint]
        now, later = round(each.minutes_now), round(each.minutes_later)
        yield f"{joint.mark or ''} {joint.name}: {now} min now, {later} min later; {each.says}."
