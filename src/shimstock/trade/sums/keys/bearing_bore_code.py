from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.keys._bearings import SMALL_BORES, bore_of
from shimstock.trade.sums.keys._bore_codes import BoreCodeText


@a_sum(example="--code 'NU 207'")
def bearing_bore_code(*, code: BoreCodeText) -> Worked[float]:
    """Bore of a rolling bearing from the last two figures of its code.

    Holds for metric bearings of four figures or more, or letters and three figures; the shaft
    itself is measured all the same.

    code: the code on the ring, such as 6205, NU 207 or 62/22.
    Source: ISO 15 bore numbers, common practice of all makers: 00, 01, 02, 03 are 10, 12, 15 and
    17 mm, from 04 on five times the number; behind a stroke stands the bore itself.

    >>> from shimstock.trade.sums.keys._bore_codes import parse_bore_code
    >>> bearing_bore_code(code=parse_bore_code("6205")).value
    25
    """
    w = Working()
    if code.direct is not None:
        w.note("Behind the stroke stands the bore itself.")
        return Worked(w.step("d", f"{code.direct}", code.direct, "mm", answer="bore"), w)
    number = w.given("k", code.code or 0, "", meaning="bore code")
    bore = bore_of(int(number))
    if number < len(SMALL_BORES):
        w.note("Bore codes 00, 01, 02 and 03 stand for 10, 12, 15 and 17 mm.")
        return Worked(w.step("d", f"{bore}", bore, "mm", answer="bore"), w)
    return Worked(w.step("d", "5·k", bore, "mm", answer="bore"), w)
