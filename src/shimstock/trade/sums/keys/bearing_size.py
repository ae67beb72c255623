from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.keys._bearings import BEARINGS, HELD, Bearing, BearingText


@a_sum(example="--code 6205-2RS")
def bearing_size(*, code: BearingText) -> Worked[Bearing]:
    """Bore, outside and width of a deep-groove ball bearing by its code.

    Letters behind the code say seals, cage and inner play; the size is the same. Order by the
    whole code, and measure the old bearing: a builder may have fitted a special one.

    code: the code on the ring, such as 6205 or 6308.
    Source: ISO 15, boundary dimensions of radial bearings, series 10, 02 and 03; most rows read in
    a printed chart, the others from memory.

    >>> from shimstock.trade.sums.keys._bearings import parse_bearing
    >>> bearing_size(code=parse_bearing("6205")).value.size
    '25 × 52 × 15 mm'
    """
    w = Working()
    w.note(f"The table holds {HELD}: {len(BEARINGS)} bearings.")
    for symbol, name, value in (
        ("d", "bore", code.bore), ("D", "outside", code.outside), ("B", "width", code.width)
    ):  # fmt: skip
        w.step(symbol, f"{value:g}", value, "mm", meaning=f"by the table for {code.code}",
               answer=name)  # fmt: skip
    w.tell("size", code.size)
    return Worked(code, w)
