from shimstock.trade.numbers.units import Inch, PerInch
from shimstock.trade.numbers.working import Worked, Working

SOURCE = "AGMA recommended backlash ranges for coarse pitch gears"

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


def recommended_backlash(*, centre: Inch, diametral_pitch: PerInch) -> Worked[tuple[Inch, Inch]]:
    """Least and most backlash that general practice gives a pair of coarse pitch gears, in inches.

    The maker's figure for the machine in hand beats this table.
    centre: centre distance, in inches.
    diametral_pitch: teeth per inch of pitch diameter, 0.5 to below 20.
    Raises ValueError where the table says nothing.
    Source: AGMA recommended backlash ranges for coarse pitch gears.

    >>> recommended_backlash(centre=Inch(7), diametral_pitch=PerInch(8)).value
    (0.01, 0.02)
    """
    found = _looked_up(centre, diametral_pitch)
    if found is None:
        raise ValueError(
            f"the table says nothing for a centre distance of {centre:g} in at diametral pitch "
            f"{diametral_pitch:g}; take the figure from the maker's book"
        )
    w = Working(source=SOURCE, cautions=["The maker's figure beats a general table."])
    w.given("C", centre, "in", meaning="centre distance")
    w.given("P_d", diametral_pitch, "1/in", meaning="diametral pitch")
    least, most = (Inch(thou / 1000) for thou in found)
    w.given("j_min", least, "in", meaning="least backlash, from the table")
    w.given("j_max", most, "in", meaning="most backlash, from the table")
    return Worked((least, most), w)


def _looked_up(centre: float, pitch: float) -> tuple[int, int] | None:
    if not (0 < centre <= TABLE[-1][0] and PITCHES[0] <= pitch < PITCHES[-1]):
        return None
    row = next(ranges for up_to, ranges in TABLE if centre <= up_to)
    column = sum(pitch >= start for start in PITCHES) - 1
    return row[column]
