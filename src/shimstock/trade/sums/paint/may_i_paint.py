from typing import Annotated

from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import PAINT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.paint._dew import Air, Humidity, dew


@a_sum(
    example="--air '19 degC' --humidity 62 --metal '16.2 degC' --least-metal '10 degC'",
    cautions=(PAINT,),
)
def may_i_paint(
    *,
    air: Air,
    humidity: Humidity,
    metal: Annotated[float, Of("degC", least=-80, most=100)],
    margin: Annotated[float, Of("K", least=0)] = 3,
    most_humidity: Annotated[float, Of("%", above=0, most=100)] = 85,
    least_metal: Annotated[float, Of("degC", least=-80, most=100)] | None = None,
) -> Worked[float]:
    """Whether the metal is dry and warm enough to paint now, and by how much.

    Measure the metal at its coldest and thickest place; iron lags behind the air.

    air: temperature of the air, in degC.
    humidity: relative humidity of the air, in %.
    metal: temperature of the metal, in degC.
    margin: how far the metal must be above the dew point, in K.
    most_humidity: highest humidity that the paint's sheet allows, in %.
    least_metal: lowest metal temperature that the paint's sheet allows, in degC.
    Source: practice after ISO 8502-4: metal at least 3 °C above the dew point, humidity at most
    85 %; the dew point by the Magnus formula.

    >>> may_i_paint(air=20, humidity=60, metal=14.9).working.answers["paint now"].value
    'no'
    """
    w = Working()
    point = dew(w, air, humidity)
    w.given("T_s", metal, "degC", meaning="metal temperature")
    above = w.step("Δ", "T_s − T_d", metal - point, "K", meaning="metal above dew point",
                   answer="above dew point")  # fmt: skip
    against = [] if above >= margin else [_too_near(above, margin)]
    if humidity > most_humidity:
        against.append(f"humidity {humidity:g} % is over {most_humidity:g} %")
    if least_metal is None:
        w.note("The lowest temperature of the paint's own sheet was not given: look it up.")
    elif metal < least_metal:
        against.append(f"metal at {written(metal)} °C is colder than {written(least_metal)} °C")
    w.tell("paint now", "no" if against else "yes")
    if against:
        w.tell("because", "; ".join(against))
    return Worked(above, w)


def _too_near(above: float, margin: float) -> str:
    """Says it in one decimal, unless that would make it look as if it were enough."""
    shown = f"{above:.1f}"
    if float(shown) >= margin:
        shown = f"{above:.4g}"
    where = f"only {shown} °C above" if above > 0 else f"{shown.lstrip('-')} °C below"
    return f"the metal is {where} the dew point, {margin:g} above are wanted"
