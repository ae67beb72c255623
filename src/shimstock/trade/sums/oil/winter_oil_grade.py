from typing import Annotated

from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import USED_OIL
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.oil._sae_j300 import PUMPING, WINTER, Winter


@a_sum(example="--cranking 6500 --cranking-at '-25 degC' --viscosity 14.5", cautions=(USED_OIL,))
def winter_oil_grade(
    *,
    cranking: Annotated[float, Of("cP", above=0)],
    cranking_at: Annotated[float, Of("degC", least=-60, most=20)],
    viscosity: Annotated[float, Of("mm2/s", above=0)],
    pumping: Annotated[float, Of("cP", above=0)] | None = None,
) -> Worked[str]:
    """Whether an engine oil meets the SAE J300 winter grade that its cold test was made for.

    cranking: thickness in the cold-cranking test, in cP.
    cranking_at: temperature of that test, one of −35, −30, −25, −20, −15, −10, in degC.
    viscosity: viscosity at 100 °C, in mm2/s.
    pumping: thickness in the pumping test, made 5 °C colder, in cP.
    Raises NotPossible where no grade is tested at that temperature.
    Source: SAE J300, December 1999 and January 2015; 10W and 20W as read, the others from memory.

    >>> winter_oil_grade(cranking=6500, cranking_at=-25, viscosity=14.5).value
    '10W'
    """
    grade = _tested_at(cranking_at)
    w = Working()
    w.given("μ_c", cranking, "cP", meaning="cranking")
    w.given("t_c", cranking_at, "degC", meaning="cranking test")
    w.given("ν", viscosity, "mm2/s", meaning="at 100 °C")
    w.note(f"At this temperature {grade.name} is tested.")
    w.step("μ_m", f"{grade.cranking:g}", grade.cranking, "cP", answer="most cranking")
    w.step("ν_l", f"{grade.least:g}", grade.least, "mm2/s", answer="least")
    w.step("t_p", "t_c − 5", cranking_at - 5, "degC", meaning="pumping test", answer="pumping at")
    w.step("μ_p", f"{PUMPING}", PUMPING, "cP", meaning="at most, pumping", answer="most pumping")
    against = [] if cranking <= grade.cranking else ["too thick to crank"]
    if viscosity < grade.least:
        against.append("too thin when hot")
    if pumping is not None and w.given("μ_t", pumping, "cP", meaning="pumping") > PUMPING:
        against.append("too thick to pump")
    w.tell("grade", "none" if against else grade.name)
    if against:
        w.tell("because", f"as {grade.name} it is {' and '.join(against)}")
    return Worked("none" if against else grade.name, w)


def _tested_at(temperature: float) -> Winter:
    for grade in WINTER:
        if abs(grade.cranking_at - temperature) < 0.01:
            return grade
    known = ", ".join(written(grade.cranking_at) for grade in WINTER)
    rule = f"is no temperature of the cranking test; those are {known}"
    raise NotPossible(
        f"cranking at {written(temperature)} degC", rule, "look on the oil's sheet for the test"
    )
