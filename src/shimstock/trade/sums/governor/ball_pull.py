from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.governor._weights import Length, Mass, Speed, turning


@a_sum(example="--mass '2.5 lb' --radius '4 in' --speed '600 rpm'")
def ball_pull(*, mass: Mass, radius: Length, speed: Speed) -> Worked[float]:
    """Pull outwards of one governor ball at a speed.

    mass: of one ball, in kg.
    radius: of its centre from the spindle, in mm.
    speed: of the spindle, in rpm.
    Source: centrifugal force, F = m·ω²·r.

    >>> round(ball_pull(mass=2.5, radius=120, speed=290).value, 2)
    276.68
    """
    w = Working()
    w.given("m", mass, "kg", meaning="mass of a ball")
    w.given("r", radius, "mm", meaning="radius of the ball")
    omega = turning(w, "", speed, "speed of the spindle")
    force = mass * omega**2 * radius / 1000
    w.step("F", "m·ω²·r/1000", force, "N", meaning="outwards", answer="pull")
    return Worked(force, w)
