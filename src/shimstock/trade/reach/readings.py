"""What the readings say against closing over a part, building it in or passing a gate."""

from __future__ import annotations

from collections.abc import Iterator

from shimstock.trade.machine.state import MachineNow, VerdictNow
from shimstock.trade.machine.words import Stage, Verdict
from shimstock.trade.reach.pieces import figures_of, piece_name
from shimstock.trade.reach.reason import Reason

IN_LIMIT = frozenset({Verdict.GOOD, Verdict.SERVICEABLE})


def undecided(now: MachineNow, part: str, piece: str) -> Iterator[Reason]:
    """Readings of one piece that are beyond the limit, or cannot be told, and not accepted.

    Figures that are read only once the engine has run stand against nothing on the bench.
    """
    for figure in figures_of(now.book, part):
        if now.book.measures[figure].running:
            continue
        reading = now.latest(figure, piece)
        if reading is not None and (reason := against_reading(now, figure, piece, reading)):
            yield reason


def against_reading(now: MachineNow, figure: str, piece: str, reading: VerdictNow) -> Reason | None:
    """What stands against a reading; nothing where it is in limit or accepted with a reason."""
    if reading.accepted:
        return None
    what = figure_name(now, figure, piece)
    says = f" ({reading.says})" if reading.says else ""
    if reading.verdict is Verdict.WORN_OUT:
        would = "put it right and read it as finished, or accept it with a name and a reason"
        return Reason(what, f"worn out{says}", would)
    if reading.too_much_in_all:
        would = "put right what its chain shows and read it as finished, or accept it with a reason"
        return Reason(what, f"is too much{says}", would)
    if reading.verdict is Verdict.BORDERLINE:
        return Reason(what, f"borderline{says}", "measure again, or accept it with a reason")
    return None


def against_finished(now: MachineNow, figure: str, piece: str, *, hard: bool) -> Reason | None:
    """What stands against a figure that must be read as finished and lie in its limit."""
    what = figure_name(now, figure, piece)
    reading = now.verdicts.get((figure, piece, Stage.FINISHED))
    if reading is None or reading.verdict is Verdict.NOT_MEASURED:
        return Reason(what, "has no reading as finished", "read it as finished", hard)
    if reading.verdict in IN_LIMIT:
        return None
    doubtful = reading.verdict is Verdict.BORDERLINE and not reading.too_much_in_all
    would = "measure again" if doubtful else "put it right, read again"
    word = "is too much" if reading.too_much_in_all else reading.word
    says = f" ({reading.says})" if reading.says else ""
    return Reason(what, f"{word}{says}", would, hard)


def figure_name(now: MachineNow, figure: str, piece: str) -> str:
    """What a person calls a figure of one piece."""
    entry = now.book.measures[figure]
    return f"{entry.name}, {piece_name(now.book, entry.of, piece)}"
