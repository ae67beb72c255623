"""What was measured: new, limit, as found and as finished side by side, and how it was judged."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from shimstock.faces.paper.kept import Kept, day_of
from shimstock.faces.paper.signs import VERDICT_SIGNS
from shimstock.faces.paper.wording import NONE, capital, day, from_to
from shimstock.trade.machine.book import Figure
from shimstock.trade.machine.words import TOO_MUCH, Stage, Verdict
from shimstock.trade.measure.judge import Judged
from shimstock.trade.measure.pair import TOGETHER
from shimstock.trade.measure.words import decimals_worth, word_of
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.quantity import show
from shimstock.workshop.models import VerdictRow
from shimstock.workshop.wording import called, listed

BAD = (Verdict.WORN_OUT, Verdict.BORDERLINE)
OUT_OF_SETTING = "out of setting"
PUT_RIGHT = "put right"
RIGHT = (Verdict.GOOD, Verdict.SERVICEABLE)


@dataclass(frozen=True)
class Cell:
    """What was read at one stage: the value, the verdict's sign and word."""

    value: str
    sign: str = ""
    word: str = ""
    verdict: Verdict | None = None


@dataclass(frozen=True)
class FigureRow:
    """One figure of one piece on one line."""

    key: str
    name: str
    mark: str
    new: str
    limit: str
    source: str
    stand_in: bool
    found: Cell
    finished: Cell
    outcome: str
    accepted: str

    @property
    def latest(self) -> Cell:
        """What counts now: as finished if there is such a reading, else as found."""
        return self.finished if self.finished.word else self.found


@dataclass(frozen=True)
class FigureGroup:
    """The figures of one group of parts."""

    title: str
    rows: tuple[FigureRow, ...]


@dataclass(frozen=True)
class Shown:
    """How one verdict was reached, line by line."""

    key: str
    title: str
    sign: str
    word: str
    says: str
    lines: tuple[str, ...]
    settles: str
    remedy: str
    source: str
    cautions: tuple[str, ...]
    taken: str
    accepted: str


def figure_groups(kept: Kept) -> tuple[FigureGroup, ...]:
    """Every figure that was read, in the order of the book, a table a group of parts."""
    groups: dict[str, list[FigureRow]] = {}
    for key, figure in kept.book.measures.items():
        part = kept.book.parts[figure.of]
        for piece in _pieces(kept, key, figure):
            groups.setdefault(part.group, []).append(_row(kept, key, figure, piece))
    return tuple(FigureGroup(capital(name), tuple(rows)) for name, rows in groups.items())


def workings(kept: Kept) -> tuple[Shown, ...]:
    """The working of every verdict that is worn out or borderline, or was and is put right."""
    out = []
    for key, figure in kept.book.measures.items():
        for piece in _pieces(kept, key, figure):
            rows = _rows(kept, key, piece)
            if any(verdict_of(row) in BAD for row in rows.values()):
                out += [_shown(kept, figure, row) for row in rows.values()]
    return tuple(out)


def counts(groups: Sequence[FigureGroup]) -> dict[str, int]:
    """How many figures have each word now, as finished where there is one.

    What is adjusted and does not wear, and the play of a whole chain, are counted apart, where
    there is any.
    """
    words = Counter(row.latest.word for group in groups for row in group.rows)
    always = tuple(word.value for word in Verdict if word is not Verdict.NOT_MEASURED)
    apart = tuple(word for word in (OUT_OF_SETTING, TOO_MUCH) if words[word])
    return {word: words[word] for word in (*always, *apart)}


def put_right(groups: Sequence[FigureGroup]) -> int:
    """How many figures were worn out or borderline as found and are within limits as finished."""
    return sum(row.outcome == PUT_RIGHT for group in groups for row in group.rows)


def verdict_of(row: VerdictRow) -> Verdict | None:
    """The verdict's word; None where only the size is known."""
    return Verdict(row.verdict) if row.verdict else None


def name_of(figure: Figure, piece: str) -> str:
    """A figure of one piece by its name, or of all its pieces held against each other."""
    if piece == TOGETHER:
        return f"{figure.name}, how far the several differ"
    return called(figure.name, piece)


def _pieces(kept: Kept, key: str, figure: Figure) -> list[str]:
    """The pieces of a figure that have a verdict, in the order of the book."""
    judged = {piece for figure_key, piece, _ in kept.verdicts if figure_key == key}
    known = kept.book.parts[figure.of].instances
    return [*(p for p in known if p in judged), *sorted(judged - set(known))]


def _rows(kept: Kept, key: str, piece: str) -> dict[Stage, VerdictRow]:
    stages = (Stage.FOUND, Stage.FINISHED)
    found = {stage: kept.verdicts.get((key, piece, stage)) for stage in stages}
    return {stage: row for stage, row in found.items() if row is not None}


def _row(kept: Kept, key: str, figure: Figure, piece: str) -> FigureRow:
    rows = _rows(kept, key, piece)
    found, finished = rows.get(Stage.FOUND), rows.get(Stage.FINISHED)
    last = finished or found
    new, limit = _limits(figure, piece)
    return FigureRow(
        key=_key(key, piece),
        name=name_of(figure, piece),
        mark=figure.mark or "",
        new=new,
        limit=limit,
        source=f"page {figure.page}" if figure.page is not None else "stand-in figure",
        stand_in=figure.stand_in,
        found=_cell(figure, found),
        finished=_cell(figure, finished),
        outcome=_outcome(found, finished),
        accepted=_accepted(last) if last else "",
    )


def _key(figure: str, piece: str) -> str:
    """A name for the figure of one piece, so that its line can point to its working."""
    return f"{figure}/{piece}"


def _limits(figure: Figure, piece: str) -> tuple[str, str]:
    """What the book allows: new, and in use."""
    if piece == TOGETHER and figure.pair is not None:
        pair = figure.pair
        low, high = (None, pair.value) if pair.sense == "max" else (pair.value, None)
        return NONE, from_to(Range(low, high, pair.unit, pair.typed))
    return from_to(figure.as_new), from_to(figure.allowed) if figure.limit else NONE


def _cell(figure: Figure, row: VerdictRow | None) -> Cell:
    if row is None:
        return Cell(NONE)
    decimals = decimals_worth(row.data["expanded"], row.unit)
    verdict, value = verdict_of(row), show(row.value, row.unit, decimals)
    if verdict is None:
        return Cell(value, "", "size only")
    word = word_of(figure, verdict, row.says)
    return Cell(value, VERDICT_SIGNS[verdict], word, verdict)


def _outcome(found: VerdictRow | None, finished: VerdictRow | None) -> str:
    """What became of it, in a word or two."""
    if finished is None:
        return ""
    was = verdict_of(found) if found else None
    if was in BAD and verdict_of(finished) in RIGHT:
        return PUT_RIGHT
    return ""


def _accepted(row: VerdictRow) -> str:
    if not row.accepted_reason:
        return ""
    on = day(day_of(row.accepted_at)) if row.accepted_at else ""
    return f"Accepted by {row.accepted_by}, {on}: {row.accepted_reason}"


def _shown(kept: Kept, figure: Figure, row: VerdictRow) -> Shown:
    judged = Judged.from_data(row.data)
    verdict, working = judged.verdict, judged.working
    return Shown(
        key=_key(row.figure, row.piece),
        title=f"{name_of(figure, row.piece)}, {row.stage}",
        sign=VERDICT_SIGNS[verdict] if verdict else "",
        word=word_of(figure, verdict, row.says) if verdict else "size only",
        says=row.says,
        lines=tuple(working.shown()),
        settles=judged.settles,
        remedy=judged.remedy,
        source=working.source,
        cautions=tuple(working.cautions),
        taken=_taken(kept, row),
        accepted=_accepted(row),
    )


def _taken(kept: Kept, row: VerdictRow) -> str:
    """Who read it, when and with what; of a figure that is worked out, the readings behind it."""
    reading = kept.readings.get((row.figure, row.piece, Stage(row.stage)))
    if reading is None:
        derive = kept.book.measures[row.figure].derive
        sources = [kept.book.measures[key].name for key in derive.sources] if derive else []
        return f"Worked out from the readings of: {listed(sources)}" if sources else ""
    gauge = (reading.instrument or {}).get("name", "")
    with_ = f" with {gauge}" if gauge else ""
    return f"Read by {reading.by} on {day(day_of(reading.at))}{with_}: {', '.join(reading.typed)}"
