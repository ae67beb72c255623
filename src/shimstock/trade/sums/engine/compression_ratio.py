from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._chamber import Bore, Stroke, swept_of


@a_sum(
    example="--bore '4 1/4 in' --stroke '5 1/4 in' --chamber '14 in3' --gasket '1/16 in' "
    "--deck '0.010 in'",
    cautions=(BOOK_FIRST,),
)
def compression_ratio(
    *,
    bore: Bore,
    stroke: Stroke,
    chamber: Annotated[float, Of("volume", least=0)],
    gasket: Annotated[float, Of("length", least=0, found="gasket thickness")] = 0.0,
    gasket_bore: Annotated[float, Of("length", above=0)] | None = None,
    deck: Annotated[float, Of("length")] = 0.0,
    dome: Annotated[float, Of("volume")] = 0.0,
    unit: str = "mm",
) -> Worked[float]:
    """Compression ratio from bore, stroke and the room above the piston, measured piece by piece.

    Type the whole clearance as chamber where it was measured in one, with oil from a glass.

    bore: diameter of the cylinder, in `unit`.
    stroke: travel of the piston, in `unit`.
    chamber: room in the head, or all of the clearance, in the volume of `unit`.
    gasket: thickness of the head gasket when tight, in `unit`.
    gasket_bore: diameter of its hole, else the bore, in `unit`.
    deck: piston below the face of the block at its top, in `unit`; negative where it stands proud.
    dome: what the crown takes away, in the volume of `unit`; negative for a dish.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where no room is left above the piston.
    Source: definition, r = 1 + V_s/V_c; Rajput, Textbook of Internal Combustion Engines, chapter 3.

    >>> round(compression_ratio(bore=250, stroke=375, chamber=2.63e6).value, 4)
    7.9992
    """
    volume = coherent(unit).volume
    w = Working()
    swept = swept_of(w, bore, stroke, unit)
    w.given("V_h", chamber, volume, meaning="room in the head")
    w.given("t_g", gasket, unit, meaning="gasket")
    hole = w.given("D_g", bore if gasket_bore is None else gasket_bore, unit, meaning="its hole")
    w.given("t_d", deck, unit, meaning="piston below the block")
    w.given("V_p", dome, volume, meaning="taken away by the crown")
    room = chamber + pi / 4 * hole**2 * gasket + pi / 4 * bore**2 * deck - dome
    w.step("V_c", "V_h + π/4·D_g²·t_g + π/4·D²·t_d − V_p", room, volume,
           meaning="clearance volume", answer="clearance")  # fmt: skip
    if room <= 0:
        raise NotPossible("the room above the piston", "comes to nothing", "look at deck and dome")
    ratio = 1 + swept / room
    w.step("r", "1 + V_s/V_c", ratio, "", meaning="compression ratio", answer="ratio")
    return Worked(ratio, w)
