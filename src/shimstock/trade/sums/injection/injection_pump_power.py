from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HIGH_PRESSURE_FUEL
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.injection._fuel import (
    ONE_BAR,
    Cycle,
    Cylinders,
    Delivery,
    Modulus,
    Pressure,
    Speed,
    Squeeze,
    higher,
    shrunk,
    squeezed,
    turns,
)
from shimstock.trade.sums.injection._line import PipeBore, PipeLength, Space, shut_in


@a_sum(
    example="--delivery '105 mm3' --pressure '1900 psi' --against '450 psi' --speed 975 "
    "--cylinders 2 --barrel '6 cc' --squeeze 79e-6",
    cautions=(HIGH_PRESSURE_FUEL,),
)
def injection_pump_power(
    *,
    delivery: Delivery,
    pressure: Pressure,
    against: Pressure,
    speed: Speed,
    cylinders: Cylinders,
    start: Pressure = ONE_BAR,
    barrel: Space = 0.0,
    pipe_bore: PipeBore = 0.0,
    pipe_length: PipeLength = 0.0,
    injector: Space = 0.0,
    squeeze: Squeeze | None = None,
    modulus: Modulus | None = None,
    cycle: Cycle = "four-stroke",
) -> Worked[float]:
    """Power that injection takes: to squeeze the fuel and to push it into the cylinders.

    Friction of the pump and its drive comes on top.

    delivery: that leaves each injector at each stroke, in mm3.
    pressure: that the fuel is brought to, in bar.
    against: pressure in the cylinder, in bar.
    speed: of the crankshaft, in rpm.
    cylinders: how many the engine has, a count.
    start: pressure before, in bar.
    barrel: fuel above one plunger at the start of the stroke, in cc.
    pipe_bore: inside diameter of one pipe, in mm.
    pipe_length: of one pipe, in mm.
    injector: fuel in one injector, in cc.
    squeeze: share that the fuel shrinks for each bar, in per.bar.
    modulus: bulk modulus, instead of the squeeze, in MPa.
    cycle: whether each cylinder is fed every second turn or every turn, no unit.
    Raises NotPossible where a pressure does not rise, or the squeeze is not given once.
    Source: H. N. Gupta, Fundamentals of IC Engines, example 10.6, page 337.

    >>> round(injection_pump_power(delivery=98.824, pressure=280, against=30, speed=2500,
    ...     cylinders=4, barrel=8, squeeze=80e-6).value, 1)
    413.5
    """
    higher("pressure", pressure, "the cylinder's", against)
    w = Working()
    volume = shut_in(w, barrel, pipe_bore, pipe_length, injector)
    beta = squeezed(w, squeeze, modulus)
    less = shrunk(w, volume, beta, pressure, start)
    w.given("q", delivery, "mm3", meaning="delivered by each")
    w.given("p_c", against, "bar", meaning="pressure in the cylinder")
    w.step("V_s", "q + ΔV", delivery + less, "mm3", meaning="swept by each", answer="swept")
    # A bar times a cubic millimetre is a ten-thousandth of a joule.
    squeezing = (pressure - start) * less / 20_000
    w.step("W_1", "(p − p_0)·ΔV/20000", squeezing, "J", meaning="to squeeze it")
    pushing = (pressure - against) * delivery / 10_000
    w.step("W_2", "(p − p_c)·q/10000", pushing, "J", meaning="to push it in")
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    w.given("z", cylinders, "", meaning="cylinders")
    i = turns(w, cycle)
    power = (squeezing + pushing) * cylinders * speed / (60 * i)
    w.step("P", "(W_1 + W_2)·z·n/(60·i)", power, "W", meaning="all cylinders", answer="power")
    return Worked(power, w)
