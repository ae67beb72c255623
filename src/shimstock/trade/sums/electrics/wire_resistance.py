from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.electrics._wire import Area, AsGauge, Run, Warmth, area_of, resistivity


@a_sum(example="--gauge 2/0 --length '10 ft' --temperature '20 C'")
def wire_resistance(
    *,
    gauge: AsGauge | None = None,
    area: Area | None = None,
    length: Run = 1,
    temperature: Warmth = 20,
) -> Worked[float]:
    """Resistance of a copper wire, for each length and in all, at its temperature.

    gauge: American wire gauge from 4/0 to 40, no unit.
    area: of the copper, in the place of the gauge, in mm2.
    length: of the whole wire, in m.
    temperature: of the copper, in degC.
    Raises NotPossible where not exactly one of gauge and area is given.
    Source: annealed copper, 0.017241 ohm for a metre of 1 mm² at 20 °C (NBS Handbook 100, from
    memory) and 0.00393 more for each degree; T. L. Floyd, Electric Circuit Fundamentals, wire
    table.

    >>> round(wire_resistance(gauge=-1, length=304.8).value, 4)
    0.0779
    """
    w = Working()
    a = area_of(w, gauge, area)
    rho = resistivity(w, temperature)
    each = w.step("r", "ρ/A", rho / a, "ohm/m", answer="for each length")
    w.given("L", length, "m", meaning="length of the wire")
    total = w.step("R", "r·L", each * length, "ohm", meaning="resistance", answer="resistance")
    return Worked(total, w)
