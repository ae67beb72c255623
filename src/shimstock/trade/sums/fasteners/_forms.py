"""Forms of thread: the angle between the flanks, and how deep each goes in pitches."""

from dataclasses import dataclass

from shimstock.trade.sums.fasteners import _areas


@dataclass(frozen=True)
class Form:
    """A form of thread. All but the angle in pitches, on the diameter.

    stress: the stress diameter lies so far under the nominal. effective, core: so do these.
    full: a full thread is so deep, what tap drills reckon with.
    source: where these stand.
    """

    name: str
    angle: float
    crests: str
    stress: float
    effective: float
    core: float
    full: float
    source: str


UNIFIED = Form(
    "unified", 60, "flat", _areas.UN, 0.649519, 1.299038, 1.299,
    "ASME B1.1, A = π/4·(d − 0.9743/n)²",
)  # fmt: skip
ISO = Form(
    "ISO metric", 60, "flat", _areas.ISO, 0.649519, 1.226869, 1.299,
    "ISO 898-1, nominal stress area",
)  # fmt: skip
WHITWORTH = Form(
    "Whitworth", 55, "rounded", _areas.WHITWORTH, 0.640327, 1.280654, 1.280654,
    "BS 84: half way between the effective and the core diameter",
)  # fmt: skip
BA = Form(
    "British Association", 47.5, "well rounded", _areas.BA, 0.6, 1.2, 1.2,
    "BS 93: half way between the effective and the core diameter",
)  # fmt: skip
CYCLE = Form(
    "cycle", 60, "rounded", _areas.CYCLE, 0.5327, 1.0654, 1.0654,
    "BS 811: half way between the effective and the core diameter",
)  # fmt: skip
