from typing import Annotated

from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.units import Mm
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fits._zones import LARGEST, ZoneText, zone_limits


@a_sum(example="--size '50 mm' --zone s6")
def iso_limits(
    *, size: Annotated[Mm, Of("mm", above=0, most=LARGEST)], zone: ZoneText
) -> Worked[Range]:
    """Limits of size of a hole, such as H7, or of a shaft, such as s6, in the ISO system.

    A size typed in inches is turned into mm, since the ranges of the table are in mm.

    size: nominal size, in mm.
    zone: letter and grade, as H7 or js6; a capital letter is a hole.
    Source: ISO 286-1:2010, tables 1 to 3; rows also read in printed copies of them.

    >>> from shimstock.trade.sums.fits._zones import parse_zone
    >>> got = iso_limits(size=Mm(50), zone=parse_zone("s6")).value
    >>> round(got.low, 3), round(got.high, 3)
    (50.043, 50.059)
    """
    w = Working()
    w.given("D", size, "mm", meaning="nominal size")
    got = zone_limits(w, size, zone, "largest", "smallest")
    it = "IT_h" if zone.hole else "IT_s"
    w.step("T", f"{it}/1000", w.value(it) / 1000, "mm", answer="tolerance")
    return Worked(got, w)
