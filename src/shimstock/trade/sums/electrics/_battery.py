"""What lead-acid battery tables say of acid, charge, voltage at rest and frost."""

from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import Annotated, NamedTuple

from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Acid = Annotated[float, Of("sg", least=1, most=1.4)]
AcidWarmth = Annotated[float, Of("degF", least=-60, most=200)]
Cells = Annotated[int, Of("", least=1, most=100)]


class Row(NamedTuple):
    """One row of the table at 80 °F, for a battery of six cells."""

    acid: float
    charge: float
    voltage: float
    freezing: float


TABLE: Sequence[Row] = (
    Row(1.120, 0, 11.89, -23),
    Row(1.155, 25, 12.06, -27),
    Row(1.190, 50, 12.24, -37),
    Row(1.225, 75, 12.45, -48),
    Row(1.265, 100, 12.65, -59),
)
DISAGREE = (
    "Battery tables disagree by a few points of acid and of charge: the battery maker's own goes "
    "first. Take the reading of every cell; one far below the others is a bad cell."
)
OUTSIDE = "Outside the table its end row is taken."
Column = Callable[[Row], float]


def at_80(w: Working, reading: float, temperature: float) -> float:
    """The acid as it would read at 80 °F, kept as S."""
    w.given("S_r", reading, "sg", meaning="as read")
    w.given("t", temperature, "degF", meaning="temperature of the acid")
    by = w.step("c", "0.004·(t − 80)/10", 0.004 * (temperature - 80) / 10, "",
                meaning="to add", answer="correction")  # fmt: skip
    return w.step("S", "S_r + c", reading + by, "sg", meaning="at 80 °F", answer="at 80 °F")


def between(column: Column, at: Column, value: float) -> tuple[str, float]:
    """A value of the table, straight between its rows, and the formula for it from x.

    Outside the table the row at its end.
    """
    if value <= at(TABLE[0]):
        return written(column(TABLE[0])), column(TABLE[0])
    if value >= at(TABLE[-1]):
        return written(column(TABLE[-1])), column(TABLE[-1])
    low, high = next(pair for pair in pairwise(TABLE) if value <= at(pair[1]))
    rise, run = column(high) - column(low), at(high) - at(low)
    result = column(low) + rise * (value - at(low)) / run
    sign = "+" if rise > 0 else "−"
    shown = f"{written(column(low))} {sign} {abs(rise):.6g}·(x − {at(low):g})/{run:.6g}"
    return shown, result


def acid(row: Row) -> float:
    """Specific gravity at 80 °F."""
    return row.acid


def voltage(row: Row) -> float:
    """Voltage at rest, six cells."""
    return row.voltage


def charge(row: Row) -> float:
    """State of charge in per cent."""
    return row.charge


def freezing(row: Row) -> float:
    """Freezing point in °C."""
    return row.freezing


def from_table(
    w: Working, symbol: str, column: Column, at: tuple[str, Column, float], unit: str, name: str
) -> float:
    """A result of the table, with the formula between its rows; at: symbol, column and value."""
    x, of, value = at
    if not of(TABLE[0]) <= value <= of(TABLE[-1]) and OUTSIDE not in w.shown():
        w.note(OUTSIDE)
    shown, result = between(column, of, value)
    return w.step(symbol, shown.replace("x", x), result, unit, answer=name)
