from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.paint._dew import Air, Humidity, dew


@a_sum(example="--air '68 degF' --humidity 60")
def dew_point(*, air: Air, humidity: Humidity) -> Worked[float]:
    """Dew point of the air: metal as cold as that, or colder, gets wet.

    air: temperature of the air, in degC.
    humidity: relative humidity of the air, in %.
    Source: Magnus formula over water with 17.62 and 243.12 °C, as the World Meteorological
    Organization gives it, from memory.

    >>> round(dew_point(air=20, humidity=60).value, 1)
    12.0
    """
    w = Working()
    return Worked(dew(w, air, humidity), w)
