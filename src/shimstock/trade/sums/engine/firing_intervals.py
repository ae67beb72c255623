from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.engine._cycle import Cycle
from shimstock.trade.sums.engine._firings import Firings, between, in_order, keep


@a_sum(example="--firings '0, 180'")
def firing_intervals(*, firings: Firings, cycle: Cycle = "four-stroke") -> Worked[list[float]]:
    """Crank degrees from each firing to the next: what the ear hears as even or as a limp.

    A twin with both throws together fires at 0 and 360; with throws opposed at 0 and 180.

    firings: crank angle of each cylinder's firing in one cycle, the first at 0, in deg.
    cycle: four-stroke (720 degrees) or two-stroke (360), no unit.
    Raises NotPossible where an angle lies outside the cycle or stands twice.
    Source: geometry; the intervals of a cycle add up to it.

    >>> firing_intervals(firings=[0.0, 180.0]).value
    [180.0, 540.0]
    """
    whole = 720.0 if cycle == "four-stroke" else 360.0
    angles = in_order(firings, whole)
    w = Working()
    keep(w, angles)
    return Worked(between(w, angles, whole, cycle), w)
