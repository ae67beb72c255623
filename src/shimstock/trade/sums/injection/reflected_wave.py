from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HIGH_PRESSURE_FUEL
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.injection._fuel import DIESEL, Density, Modulus, Pressure, Squeeze
from shimstock.trade.sums.injection._jet import Coefficient, Holes
from shimstock.trade.sums.injection._wave import wave_speed

Across = Annotated[float, Of("mm", above=0)]


@dataclass(frozen=True)
class Wave:
    """Pressures in bar at the pump and at the nozzle, and what the nozzle throws back."""

    pump: float
    nozzle: float
    reflected: float


@a_sum(
    example="--plunger '8 mm' --plunger-speed '0.4 m/s' --pipe-bore '2 mm' --hole '0.25 mm' "
    "--holes 4 --coefficient 0.7 --standing '20 bar' --against '30 bar' --modulus '17800 bar'",
    cautions=(HIGH_PRESSURE_FUEL,),
)
def reflected_wave(
    *,
    plunger: Across,
    plunger_speed: Annotated[float, Of("m/s", above=0)],
    pipe_bore: Across,
    hole: Across,
    standing: Pressure,
    holes: Holes = 1,
    coefficient: Coefficient = 1.0,
    against: Pressure | None = None,
    density: Density = DIESEL,
    squeeze: Squeeze | None = None,
    modulus: Modulus | None = None,
) -> Worked[Wave]:
    """Pressure that the plunger sends down the pipe, and what the nozzle passes and throws back.

    For the first run of the wave; the wall of the pipe is taken as stiff.

    plunger: diameter of the plunger, in mm.
    plunger_speed: at which it rises, in m/s.
    pipe_bore: inside diameter of the pipe, in mm.
    hole: diameter of each hole of the nozzle, in mm.
    standing: pressure in the pipe before, in bar.
    holes: of the nozzle, all alike, a count.
    coefficient: of discharge of the holes, no unit.
    against: pressure in the cylinder, else as the standing one, in bar.
    density: of the fuel, else that of a middling diesel, in g/cc.
    squeeze: share that the fuel shrinks for each bar, in per.bar.
    modulus: bulk modulus, instead of the squeeze, in MPa.
    Raises NotPossible where the wave does not overcome the cylinder's pressure.
    Source: H. N. Gupta, Fundamentals of IC Engines, example 10.7, page 339,
    p = ρ·a·u.

    >>> got = reflected_wave(plunger=10, plunger_speed=0.3, pipe_bore=2.236068, hole=0.3535534,
    ...     standing=27.6, density=0.86, modulus=1783).value
    >>> round(got.pump, 1), round(got.nozzle, 1), round(got.reflected, 1)
    (101.9, 128.7, 26.8)
    """
    w = Working()
    fast = wave_speed(w, density, squeeze, modulus)
    sent, pump, u = _sent(w, fast, density, plunger, plunger_speed, pipe_bore, standing)
    w.given("d_h", hole, "mm", meaning="each hole")
    w.given("z_h", holes, "", meaning="holes")
    w.given("C", coefficient, "", meaning="coefficient of the holes")
    c = w.step("c", "C·z_h·(d_h/d)²", coefficient * holes * (hole / pipe_bore) ** 2, "",
               meaning="holes as a share of the pipe")  # fmt: skip
    w.given("p_c", standing if against is None else against, "bar", meaning="in the cylinder")
    passed = _passed(w, fast, density, c, u, standing, against)
    back = w.step("u_r", "u − u_n", u - passed, "m/s", meaning="thrown back",
                  answer="reflected speed")  # fmt: skip
    thrown = w.step("p_r", "ρ·a·u_r/100", density * fast * back / 100, "bar",
                    meaning="thrown back", answer="reflected")  # fmt: skip
    nozzle = w.step("p_n", "p_0 + p_f + p_r", standing + sent + thrown, "bar",
                    meaning="at the nozzle", answer="at the nozzle")  # fmt: skip
    return Worked(Wave(pump, nozzle, thrown), w)


def _sent(
    w: Working,
    fast: float,
    density: float,
    plunger: float,
    plunger_speed: float,
    bore: float,
    standing: float,
) -> tuple[float, float, float]:
    """What the plunger sends: pressure of the wave, pressure at the pump, speed in the pipe."""
    w.given("D", plunger, "mm", meaning="plunger")
    w.given("v_p", plunger_speed, "m/s", meaning="speed of the plunger")
    w.given("d", bore, "mm", meaning="bore of the pipe")
    w.given("p_0", standing, "bar", meaning="standing in the pipe")
    u = w.step("u", "v_p·(D/d)²", plunger_speed * (plunger / bore) ** 2, "m/s",
               meaning="in the pipe", answer="pipe speed")  # fmt: skip
    sent = w.step("p_f", "ρ·a·u/100", density * fast * u / 100, "bar", meaning="sent down the pipe")
    pump = w.step("p_p", "p_0 + p_f", standing + sent, "bar", meaning="at the pump",
                  answer="at the pump")  # fmt: skip
    return sent, pump, u


def _passed(
    w: Working,
    fast: float,
    density: float,
    c: float,
    u: float,
    standing: float,
    against: float | None,
) -> float:
    """Speed in the pipe that the holes let pass, from pressure sent, thrown back and in the jet."""
    over = 0.0 if against is None else standing - against
    driven = 2 * c**2 * (100 * over / density + 2 * fast * u)
    if driven <= 0:
        rule = "is more than the wave brings to the nozzle"
        raise NotPossible(f"against {against:g} bar", rule, "look whether it is the cylinder's")
    w.step("E", "2·c²·(100·(p_0 − p_c)/ρ + 2·a·u)", driven, "", meaning="what drives it, in m²/s²")
    held = w.step("B", "c²·a", c**2 * fast, "", meaning="what holds it, in m/s")
    passed = driven / (held + sqrt(held**2 + driven))
    shown = "E/(B + √(B² + E))"
    return w.step("u_n", shown, passed, "m/s", meaning="in the pipe at the nozzle",
                  answer="speed at the nozzle")  # fmt: skip
