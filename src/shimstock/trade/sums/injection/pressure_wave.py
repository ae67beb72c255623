from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HIGH_PRESSURE_FUEL
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.injection._fuel import DIESEL, Density, Modulus, Speed, Squeeze
from shimstock.trade.sums.injection._wave import wave_speed


@a_sum(example="--length '24 in' --speed 975 --modulus '17800 bar'",
       cautions=(HIGH_PRESSURE_FUEL,))  # fmt: skip
def pressure_wave(
    *,
    length: Annotated[float, Of("mm", above=0)],
    speed: Speed,
    density: Density = DIESEL,
    squeeze: Squeeze | None = None,
    modulus: Modulus | None = None,
) -> Worked[float]:
    """Time that the push of the pump takes along the pipe, and the crank degrees it costs.

    The wall of the pipe is taken as stiff. Pipes of one engine are all made of one length so that
    this is the same for every cylinder.

    length: of the pipe from pump to injector, in mm.
    speed: of the crankshaft, in rpm.
    density: of the fuel, else that of a middling diesel, in g/cc.
    squeeze: share that the fuel shrinks for each bar, in per.bar.
    modulus: bulk modulus, instead of the squeeze, in MPa.
    Raises NotPossible where the squeeze is not given once.
    Source: H. N. Gupta, Fundamentals of IC Engines, example 10.7, page 339,
    a = √(K/ρ); crank degrees 6·n·t.

    >>> round(pressure_wave(length=575, speed=1000, density=0.86, modulus=1783).value, 3)
    2.396
    """
    w = Working()
    fast = wave_speed(w, density, squeeze, modulus)
    w.given("l", length, "mm", meaning="length of the pipe")
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    # Metres a second are millimetres a millisecond.
    time = w.step("t", "l/a", length / fast, "ms", meaning="pump to injector", answer="time")
    w.step("t_r", "2·t", 2 * time, "ms", meaning="there and back", answer="there and back")
    angle = 6 * speed * time / 1000
    w.step("α", "6·n·t/1000", angle, "deg", meaning="of the crank", answer="angle")
    return Worked(angle, w)
