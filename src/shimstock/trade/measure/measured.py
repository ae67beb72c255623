"""A value with its standard uncertainty and how both were reached."""

from __future__ import annotations

from dataclasses import dataclass

from shimstock.trade.machine.book import Figure
from shimstock.trade.measure.reading import Reading
from shimstock.trade.measure.take import in_unit
from shimstock.trade.numbers.instruments import Instrument
from shimstock.trade.numbers.quantity import convert
from shimstock.trade.numbers.working import Worked, Working


@dataclass(frozen=True)
class Measured(Worked[float]):
    """A worked value, its standard uncertainty and unit, and the symbol it stands under.

    Its working holds the uncertainty too, under the symbol `u_` and the value's own.
    gauge: the least sure instrument that it was read with. place: where it was read, if it matters.
    """

    u: float
    unit: str
    symbol: str
    gauge: Instrument
    place: str = ""

    def told_in(self, unit: str) -> Measured:
        """The same value in another unit of its kind; itself where it stands in that unit."""
        if unit == self.unit:
            return self
        factor = convert(1, self.unit, unit) - convert(0, self.unit, unit)
        w = Working()
        w.extend(self.working)
        w.given("f", factor, "", meaning=f"{unit} for one {self.unit}")
        value = w.step("y", f"{self.symbol}·f", self.value * factor, unit)
        u = w.step("u_y", f"u_{self.symbol}·f", self.u * factor, unit)
        return Measured(value, w, u, unit, "y", in_unit(self.gauge, unit), self.place)


def label(figure: Figure, at: int) -> str:
    """The name of a place where the figure is read; nothing where there is only one."""
    name = figure.at.labels[at] if figure.at else ""
    return f"place {name}" if name.isdigit() else name


def keep(
    w: Working, symbol: str, figure: Figure, reading: Reading, at: int, meaning: str = ""
) -> float:
    """Put one place of a reading into a working, as typed and as understood."""
    value = reading.values[at]
    if value is None:
        raise ValueError(f"{figure.name} was not read at {label(figure, at)}")
    said = ", ".join(word for word in (meaning, label(figure, at)) if word)
    return w.given(symbol, value, reading.unit, typed=reading.typed[at], meaning=said or None)


def keep_u(w: Working, symbol: str, reading: Reading, value: float) -> float:
    """Put the standard uncertainty of one place into a working, with what the gauge can tell.

    Source: JCGM 100:2008, 4.3.7 and F.2.2.1: smallest step and largest error, both rectangular.
    """
    one, unit = reading.instrument, reading.unit
    step, error = symbol.replace("u", "δ", 1), symbol.replace("u", "a", 1)
    w.given(step, one.resolution, unit, meaning=f"smallest step of the {one.name}")
    largest = one.mpe + one.relative * abs(value)
    meaning = f"its largest error ({one.source})"
    if one.relative:
        w.step(
            error,
            f"{one.mpe:g} + {one.relative:g}·{abs(value):.6g}",
            largest,
            unit,
            meaning=meaning,
        )
    else:
        w.given(error, largest, unit, meaning=meaning)
    of = "one reading" if reading.each == 1 else f"the mean of {reading.each} readings"
    share = "12" if reading.each == 1 else f"(12·{reading.each})"
    formula = f"√({step}²/{share} + {error}²/3)"
    return w.step(symbol, formula, reading.u(value), unit, meaning=f"standard uncertainty of {of}")
