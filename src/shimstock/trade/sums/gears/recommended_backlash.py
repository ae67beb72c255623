from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.units import Inch, PerInch
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum

# Centre distance up to (in), then least and most backlash in thousandths of an inch for
# diametral pitches from 0.5, 2, 3.5, 6 and 10 up; None where the table is empty.
PITCHES = (0.5, 2.0, 3.5, 6.0, 10.0, 20.0)
TABLE: tuple[tuple[float, tuple[tuple[int, int] | None, ...]], ...] = (
    (5, (None, None, None, None, (5, 15))),
    (10, (None, None, None, (10, 20), (10, 20))),
    (20, (None, None, (20, 30), (15, 25), (10, 20))),
    (30, (None, (30, 40), (25, 30), (20, 30), None)),
    (40, ((40, 60), (35, 45), (30, 40), (25, 35), None)),
    (50, ((50, 70), (40, 55), (35, 50), (30, 40), None)),
    (80, ((60, 80), (45, 65), (40, 60), None, None)),
    (100, ((70, 95), (50, 80), None, None, None)),
    (120, ((80, 110), None, None, None, None)),
)


@a_sum(example="--centre '7 in' --diametral-pitch 8", cautions=(BOOK_FIRST,))
def recommended_backlash(
    *,
    centre: Annotated[Inch, Of("in", above=0)],
    diametral_pitch: Annotated[PerInch, Of("", above=0, found="pitch")],
) -> Worked[tuple[Inch, Inch]]:
    """Least and most backlash that general practice gives a pair of coarse pitch gears, in inches.

    The maker's figure for the machine in hand beats this table.
    centre: centre distance, in inches.
    diametral_pitch: teeth per inch of pitch diameter, 0.5 to below 20.
    Raises NotPossible where the table says nothing.
    Source: AGMA recommended backlash ranges for coarse pitch gears.

    >>> recommended_backlash(centre=Inch(7), diametral_pitch=PerInch(8)).value
    (0.01, 0.02)
    """
    found = _looked_up(centre, diametral_pitch)
    if found is None:
        raise NotPossible(
            f"centre distance {centre:g} in at diametral pitch {diametral_pitch:g}",
            "is not in the table",
            "take the figure from the maker's book",
        )
    w = Working()
    w.given("C", centre, "in", meaning="centre distance")
    w.given("P_d", diametral_pitch, "1/in", meaning="diametral pitch")
    least, most = (Inch(thou / 1000) for thou in found)
    w.given("J_1", found[0], "thou", meaning="least, from the table")
    w.given("J_2", found[1], "thou", meaning="most, from the table")
    w.step("j_min", "J_1/1000", least, "in", meaning="least backlash", answer="least")
    w.step("j_max", "J_2/1000", most, "in", meaning="most backlash", answer="most")
    return Worked((least, most), w)


def _looked_up(centre: float, pitch: float) -> tuple[int, int] | None:
    if not (0 < centre <= TABLE[-1][0] and PITCHES[0] <= pitch < PITCHES[-1]):
        return None
    row = next(ranges for up_to, ranges in TABLE if centre <= up_to)
    column = sum(pitch >= start for start in PITCHES) - 1
    return row[column]
