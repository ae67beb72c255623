from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import GOVERNOR
from shimstock.trade.sums.declare import Of, a_sum

# Class, then the most droop in %, steady band in % and recovery in s.
CLASSES = (("G3", 3.0, 0.5, 3.0), ("G2", 5.0, 1.5, 5.0), ("G1", 8.0, 2.5, 10.0))


@a_sum(example="--droop '4.8 %' --band '1.2 %' --recovery '4 s'", cautions=(GOVERNOR,))
def governor_class(
    *,
    droop: Annotated[float, Of("%", least=0)],
    band: Annotated[float, Of("%", least=0)],
    recovery: Annotated[float, Of("s", least=0)],
) -> Worked[str]:
    """Which class of governing an engine reaches, as generating sets are graded.

    droop: from no load to the declared power, by the declared speed, in %.
    band: width of the steady speed band, by the declared speed, in %.
    recovery: time until the speed is steady again, in s.
    Source: ISO 8528-5, table of operating limits, from memory.

    >>> governor_class(droop=4.8, band=1.2, recovery=4).value
    'G2'
    """
    w = Working()
    w.given("δ", droop, "%", meaning="droop")
    w.given("β", band, "%", meaning="steady band")
    w.given("t", recovery, "s", meaning="recovery")
    reached = "none"
    for name, *limits in CLASSES:
        w.note(f"{name}: droop to {limits[0]:g} %, band to {limits[1]:g} %, {limits[2]:g} s.")
    for name, most_droop, most_band, longest in CLASSES:
        if droop <= most_droop and band <= most_band and recovery <= longest:
            reached = name
            break
    w.note("G4 is what maker and buyer agree.")
    w.tell("class", reached)
    return Worked(reached, w)
