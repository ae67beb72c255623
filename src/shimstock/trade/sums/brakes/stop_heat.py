from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums._together import goes_with
from shimstock.trade.sums.cautions import BRAKES, LINING_DUST
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--mass '2.4 t' --speed '15 mph' --time '3 s' --drums 2 --drum-mass '18 kg' "
    "--wheel-radius '24 in'",
    cautions=(BRAKES, LINING_DUST),
)
def stop_heat(
    *,
    mass: Annotated[float, Of("kg", above=0, most=100_000, found="weight")],
    speed: Annotated[float, Of("km/h", above=0, most=200)],
    drums: Annotated[int, Of("", least=1)],
    drum_mass: Annotated[float, Of("kg", above=0, most=1000)],
    specific_heat: Annotated[float, Of("J/kg.K", above=0)] = 460,
    rotating: Annotated[float, Of("%", least=0)] = 0,
    time: Annotated[float, Of("s", above=0)] | None = None,
    deceleration: Annotated[float, Of("m/s2", above=0)] | None = None,
    wheel_radius: Annotated[float, Of("m", above=0, most=1.5)] | None = None,
) -> Worked[float]:
    """Heat of one stop: energy, how much warmer each drum gets, mean power, torque at a wheel.

    All heat is taken to stay in the drums, which a single stop nearly does.

    mass: mass of the machine with what it carries or draws, in kg.
    speed: speed before the stop, in km/h.
    drums: drums that share the stop, a count.
    drum_mass: mass of one drum, in kg.
    specific_heat: of the drum's iron; 460 where nothing else is known, in J/kg.K.
    rotating: what flywheel, gears and wheels add to the energy, in %.
    time: time that the stop takes, in s.
    deceleration: mean deceleration, where the time is not known, in m/s2.
    wheel_radius: radius of the wheel on the ground, in m.
    Raises NotPossible where both time and deceleration are given, or neither with the radius.
    Source: energy of motion; U. C. Jindal, Machine Design, example 23-5; T. H. Wentzell, Machine
    Design, example 16.5.

    >>> round(stop_heat(mass=1100, speed=65, drums=4, drum_mass=12, rotating=10, time=4).value, 2)
    8.93
    """
    w = Working()
    w.given("m", mass, "kg", meaning="mass of the machine")
    w.given("V", speed, "km/h", meaning="speed")
    w.given("n", drums, "", meaning="drums")
    w.given("m_d", drum_mass, "kg", meaning="mass of one drum")
    w.given("c", specific_heat, "J/kg.K", meaning="specific heat")
    w.given("q", rotating, "%", meaning="added by what turns")
    v = w.step("v", "V/3.6", speed / 3.6, "m/s")
    energy = mass * v**2 / 2 * (1 + rotating / 100)
    w.step("E", "m·v²/2·(1 + q/100)", energy, "J", answer="energy")
    each = w.step("E_1", "E/n", energy / drums, "J", meaning="into one drum", answer="each drum")
    warmer = each / (drum_mass * specific_heat)
    w.step("ΔT", "E_1/(m_d·c)", warmer, "K", meaning="each drum gets warmer", answer="rise")
    stop = _time(w, v, time, deceleration)
    goes_with("wheel radius", wheel_radius, "time or deceleration", stop)
    if stop is not None:
        _power_and_torque(w, v, energy, each, stop, wheel_radius)
    return Worked(warmer, w)


def _time(w: Working, v: float, time: float | None, deceleration: float | None) -> float | None:
    if time is not None and deceleration is not None:
        raise NotPossible("time and deceleration", "are each enough alone", "leave one out")
    if time is not None:
        return w.given("t", time, "s", meaning="time of the stop")
    if deceleration is None:
        return None
    w.given("a", deceleration, "m/s2", meaning="mean deceleration")
    return w.step("t", "v/a", v / deceleration, "s", answer="time")


def _power_and_torque(
    w: Working, v: float, energy: float, each: float, time: float, radius: float | None
) -> None:
    way = w.step("s", "v·t/2", v * time / 2, "m", meaning="way of the stop", answer="distance")
    w.step("P", "E/t", energy / time, "W", meaning="mean power", answer="power")
    if radius is not None:
        w.given("r_w", radius, "m", meaning="radius of the wheel")
        w.step("T", "E_1·r_w/s", each * radius / way, "N.m", meaning="at one wheel",
               answer="torque")  # fmt: skip
