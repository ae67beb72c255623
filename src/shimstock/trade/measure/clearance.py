"""The gap between two parts: hole less shaft, and how sure it is."""

from __future__ import annotations

from shimstock.trade.measure.measured import Measured
from shimstock.trade.measure.take import in_unit
from shimstock.trade.numbers.quantity import convert
from shimstock.trade.numbers.uncertainty import of_difference
from shimstock.trade.numbers.working import Working


def clearance(hole: Measured, shaft: Measured, unit: str) -> Measured:
    """Hole less shaft, in `unit`, with the uncertainties of both put together.

    The largest of the hole's readings and the smallest of the shaft's give the largest gap.
    Source: JCGM 100:2008, 5.1.2, independent readings.
    """
    w = Working(source="hole less shaft; JCGM 100:2008, 5.1.2")
    d_hole, u_hole = _brought_in(w, hole, "d_hole", unit)
    d_shaft, u_shaft = _brought_in(w, shaft, "d_shaft", unit)
    value = w.step("c", "d_hole − d_shaft", d_hole - d_shaft, unit, meaning="clearance")
    u = w.step("u_c", "√(u_hole² + u_shaft²)", of_difference(u_hole, u_shaft), unit)
    gauge = in_unit(hole.gauge if u_hole >= u_shaft else shaft.gauge, unit)
    return Measured(value, w, u, unit, "c", gauge)


def _brought_in(w: Working, measured: Measured, symbol: str, unit: str) -> tuple[float, float]:
    """One of the two sizes, in the unit of the clearance, with its uncertainty."""
    name = symbol.removeprefix("d_")
    read = [line for line in measured.working.shown() if line.startswith(f"{measured.symbol} =")]
    value = convert(measured.value, measured.unit, unit)
    u = convert(measured.u, measured.unit, unit)
    w.given(symbol, value, unit, meaning=f"the {name}'s reading: {read[0]}" if read else None)
    w.given(f"u_{name}", u, unit, meaning=f"standard uncertainty of the {name}")
    return value, u
