"""The bare arithmetic of bolts, for single numbers and for numpy arrays alike."""

from math import pi
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

Numbers = TypeVar("Numbers", float, "NDArray[np.float64]")

UN, ISO = 0.9743, 0.9382  # pitches that the stress diameter lies under the nominal
WHITWORTH, BA, CYCLE = 0.9604905, 0.9, 0.79905  # half way between effective and core


def un_stress_area(d: Numbers, n: Numbers) -> Numbers:
    """Stress area of a unified thread, in in2, from diameter in in and threads an inch.

    >>> round(un_stress_area(0.375, 16), 4)
    0.0775
    """
    return stress_area_of(d, 1 / n, UN)


def iso_stress_area(d: Numbers, pitch: Numbers) -> Numbers:
    """Stress area of an ISO metric thread, in mm2, from diameter and pitch in mm.

    >>> round(iso_stress_area(10, 1.5), 1)
    58.0
    """
    return stress_area_of(d, pitch, ISO)


def stress_area_of(d: Numbers, pitch: Numbers, under: float) -> Numbers:
    """Area of a round bar `under` pitches thinner than the thread."""
    return pi / 4 * (d - under * pitch) ** 2


def nut_factor_torque(k: Numbers, d: Numbers, force: Numbers) -> Numbers:
    """Torque K·d·F, in the units of d times F.

    >>> round(nut_factor_torque(0.15, 0.375, 4000), 6)
    225.0
    """
    return k * d * force
