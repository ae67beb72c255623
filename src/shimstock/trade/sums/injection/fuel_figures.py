from typing import Annotated, Literal

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.injection._fuels import FUELS, Range

Fuel = Literal["diesel", "petrol", "kerosene", "calibration fluid"]


@a_sum(example="--fuel diesel --density '0.836 g/cc'")
def fuel_figures(
    *,
    fuel: Fuel,
    density: Annotated[float, Of("g/cc", above=0)] | None = None,
    viscosity: Annotated[float, Of("mm2/s", above=0)] | None = None,
    heating_value: Annotated[float, Of("MJ/kg", above=0)] | None = None,
) -> Worked[str]:
    """Whether a fuel, or the fluid a pump is set with, has the figures that it should.

    fuel: what it is meant to be, no unit.
    density: as measured at 15 °C, in g/cc.
    viscosity: as measured at 40 °C, in mm2/s.
    heating_value: lower heating value that is reckoned with, in MJ/kg.
    Source: J. B. Heywood, Internal Combustion Engine Fundamentals, appendix D; EN 590; ISO 4113
    for the calibration fluid; all from memory.

    >>> fuel_figures(fuel="diesel", density=0.9).value
    'no: density above'
    """
    w = Working()
    ranges = FUELS[fuel]
    held, said = 0, []
    for name, value in (("density", density), ("viscosity", viscosity),
                        ("heating value", heating_value)):  # fmt: skip
        known = ranges.get(name)
        if known is None:
            if value is not None:
                w.note(f"No {name} of {fuel} is known here.")
            continue
        _shown(w, name, known)
        if value is not None:
            w.given(known.symbol, value, known.unit, meaning=f"{name} as typed")
            held += 1
            said += [f"{name} {where}" for where in known.outside(value)]
    nothing = "nothing speaks against it" if held else "not judged: type what was measured"
    verdict = f"no: {', '.join(said)}" if said else nothing
    w.tell("as it should be", verdict)
    return Worked(verdict, w)


def _shown(w: Working, name: str, known: Range) -> None:
    if known.least == known.most:
        w.step(f"{known.symbol}_0", f"{known.least:g}", known.least, known.unit, meaning=name,
               answer=name)  # fmt: skip
        return
    for word, mark, value in (("least", "min", known.least), ("most", "max", known.most)):
        symbol = f"{known.symbol}_{mark}"
        said = f"{word} {name}"
        w.step(symbol, f"{value:g}", value, known.unit, meaning=said, answer=said)
