"""What the usual instruments of a shed can tell: resolution and largest error allowed.

Every figure here is common practice, no source; the certificate of the instrument in hand beats
it. Lengths stand in inches and in millimetres, since an inch tool is not a metric tool recut.
"""

from dataclasses import dataclass, replace
from math import hypot, sqrt

from shimstock.trade.numbers.conversion import convert, kind
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.uncertainty import rectangular, resolution

SOURCE = "common practice, no source"
METRIC = ("mm", "um", "cm", "m")


@dataclass(frozen=True)
class Instrument:
    """An instrument: smallest step read, largest error allowed (fixed, and as a share)."""

    name: str
    resolution: float
    mpe: float
    unit: str
    relative: float = 0.0
    source: str = SOURCE

    def u(self, value: float) -> float:
        """Standard uncertainty of one reading, in `unit`; value: the reading.

        Source: JCGM 100:2008, 4.3.7 and F.2.2.1: δ/√12 and a/√3, independent.
        """
        most = self.mpe + self.relative * abs(value)
        return hypot(resolution(self.resolution), rectangular(most))

    def expanded(self, value: float) -> float:
        """Expanded uncertainty of one reading, k = 2; value: the reading, in `unit`."""
        return 2 * self.u(value)


def _length(
    words: tuple[str, ...], name: str, inch: tuple[float, float], mm: tuple[float, float]
) -> tuple[tuple[str, ...], tuple[Instrument, ...]]:
    return words, (Instrument(name, *inch, "in"), Instrument(name, *mm, "mm"))


def _other(
    words: tuple[str, ...], *versions: Instrument
) -> tuple[tuple[str, ...], tuple[Instrument, ...]]:
    return words, versions


# Words that name it, then resolution and largest error, inch and metric. Common practice, no
# source. Where two entries begin at the same word, the one further up counts.
KNOWN: tuple[tuple[tuple[str, ...], tuple[Instrument, ...]], ...] = (
    _length(("bore gauge",), "bore gauge", (0.0001, 0.0003), (0.002, 0.008)),
    _length(("outside micrometer",), "outside micrometer", (0.0001, 0.0002), (0.002, 0.004)),
    _length(("inside micrometer",), "inside micrometer", (0.0005, 0.0010), (0.01, 0.02)),
    _length(("micrometer and hole gauge", "micrometer and small hole gauge", "small hole gauge",
             "hole gauge"), "small hole gauge and micrometer", (0.0001, 0.0005), (0.002, 0.012)),
    _length(("micrometer and bore gauge",), "bore gauge", (0.0001, 0.0003), (0.002, 0.008)),
    _length(("depth micrometer",), "depth micrometer", (0.0001, 0.0004), (0.002, 0.010)),
    _length(("micrometer",), "outside micrometer", (0.0001, 0.0002), (0.002, 0.004)),
    _length(("straight-edge and rule",), "straight-edge and rule", (0.0156, 0.0156), (0.5, 0.4)),
    _length(("straight-edge and feeler", "straight-edge"), "straight-edge and feelers",
            (0.0010, 0.0005), (0.02, 0.015)),
    _length(("feeler",), "feeler gauge", (0.0010, 0.0005), (0.02, 0.010)),
    _length(("wire gauge",), "wire gauge", (0.0010, 0.0010), (0.02, 0.02)),
    _length(("crushable", "gauge strip"), "crushable gauge strip", (0.0005, 0.0005), (0.01, 0.015)),
    _length(("alignment mandrel",), "alignment mandrel and dial", (0.0005, 0.0010), (0.01, 0.025)),
    _length(("depth gauge",), "depth gauge", (0.0005, 0.0010), (0.01, 0.02)),
    _length(("dial",), "dial gauge", (0.0005, 0.0005), (0.01, 0.012)),
    _length(("calliper", "caliper"), "calliper", (0.0010, 0.0020), (0.02, 0.04)),
    _length(("dividers",), "dividers and rule", (0.0100, 0.0100), (0.2, 0.2)),
    _length(("steel tape", "tape"), "steel tape", (0.03125, 0.0300), (1.0, 0.7)),
    _length(("rule", "drill shank"), "rule", (0.0156, 0.0080), (0.5, 0.2)),
    _length(("height gauge",), "height gauge", (0.0010, 0.0020), (0.02, 0.04)),
    _other(("injector hand test pump", "injector test pump", "hand test pump"),
           Instrument("injector hand test pump", 10, 20, "psi"),
           Instrument("injector hand test pump", 1, 1.5, "bar")),
    _other(("compression gauge",),
           Instrument("compression gauge", 5, 5, "psi", 0.01),
           Instrument("compression gauge", 0.5, 0.3, "bar", 0.01)),
    _other(("low-pressure gauge", "low pressure gauge"),
           Instrument("low-pressure gauge", 0.5, 0.5, "psi"),
           Instrument("low-pressure gauge", 0.05, 0.03, "bar")),
    _other(("gauge in remote port", "hydraulic test gauge", "hydraulic gauge"),
           Instrument("hydraulic test gauge", 20, 25, "psi"),
           Instrument("hydraulic test gauge", 2, 1.5, "bar")),
    _other(("pump and gauge",),
           Instrument("hand pump and gauge", 0.25, 0.25, "psi"),
           Instrument("hand pump and gauge", 0.02, 0.02, "bar")),
    _other(("test gauge", "pressure gauge", "gauge"),
           Instrument("pressure gauge", 1, 1.5, "psi"),
           Instrument("pressure gauge", 0.1, 0.1, "bar")),
    _other(("spring tester",),
           Instrument("spring tester", 0.5, 0.5, "lbf", 0.01),
           Instrument("spring tester", 2, 2, "N", 0.01)),
    _other(("string and spring balance", "spring balance"),
           Instrument("spring balance on a string", 0.5, 0.5, "lbf.in", 0.03),
           Instrument("spring balance on a string", 0.05, 0.05, "N.m", 0.03)),
    _other(("spring balance",),
           Instrument("spring balance", 1, 1, "lbf", 0.02),
           Instrument("spring balance", 5, 5, "N", 0.02)),
    _other(("torque wrench",),
           Instrument("torque wrench", 1, 0, "lbf.ft", 0.04),
           Instrument("torque wrench", 1, 0, "N.m", 0.04)),
    _other(("scale", "balance"),
           Instrument("workshop scale", 0.05, 0.05, "oz"),
           Instrument("workshop scale", 1, 2, "g")),
    _other(("tachometer", "stroboscope"), Instrument("hand tachometer", 1, 3, "rpm", 0.003)),
    _other(("timing light",), Instrument("timing light", 1, 1, "deg")),
    _other(("flywheel mark", "spill pipe"), Instrument("spill pipe and flywheel marks", 0.5, 0.5,
                                                       "deg")),
    _other(("protractor",), Instrument("protractor", 0.5, 0.5, "deg")),
    _other(("pump bench", "measuring glass", "graduate"),
           Instrument("pump bench", 0.1, 0.1, "cc", 0.005)),
    _other(("stopwatch", "watch"), Instrument("watch", 1, 0.5, "s")),
    _other(("thermometer",),
           Instrument("thermometer", 1, 2, "degF"),
           Instrument("thermometer", 1, 1, "degC")),
    _other(("voltmeter", "multimeter"), Instrument("voltmeter", 0.01, 0.02, "V", 0.005)),
    _other(("ammeter", "multimeter"), Instrument("ammeter", 0.1, 0.1, "A", 0.02)),
    _other(("ohmmeter", "multimeter"), Instrument("ohmmeter", 0.01, 0.03, "ohm", 0.01)),
    _other(("capacitance meter",), Instrument("capacitance meter", 0.001, 0.002, "uF", 0.02)),
    _other(("hydrometer",), Instrument("hydrometer", 0.005, 0.003, "sg")),
)  # fmt: skip


def named(text: str, unit: str) -> Instrument:
    """The instrument that a book's text names, giving its figures in `unit`.

    text: as in "bore gauge set on a micrometer"; the first instrument named counts.
    unit: unit of the figure; a metric unit takes the metric instrument.
    Raises NotUnderstood where no instrument for that kind of quantity is named.

    >>> named("outside micrometer on skirt; subtract", "in").resolution
    0.0001
    """
    said = " ".join(text.casefold().split())
    best: tuple[int, Instrument] | None = None
    for words, versions in KNOWN:
        if not any(kind(one.unit) == kind(unit) for one in versions):
            continue
        places = [said.find(word) for word in words if word in said]
        if places and (best is None or min(places) < best[0]):
            best = (min(places), _in_unit(versions, unit))
    if best is None:
        wrong = f"names no instrument that measures {kind(unit)}"
        raise NotUnderstood(text, wrong, _names_for(unit))
    return best[1]


def good_to(expanded: float, unit: str, *, name: str = "") -> Instrument:
    """The instrument behind "this gauge reads to ± so much".

    expanded: the ± figure, in `unit`, taken as k = 2. Raises NotUnderstood where it is not above 0.

    >>> round(good_to(0.0003, "in").u(5.75), 6)
    0.00015
    """
    if not expanded > 0:
        wrong = "must lie above nothing: no gauge is wholly true"
        raise NotUnderstood(f"{expanded:g} {unit}", wrong, ("0.0003 in", "0.005 mm"))
    most = expanded / 2 * sqrt(3)
    said = name or f"instrument good to ±{expanded:g} {unit}"
    return Instrument(said, 0.0, most, unit, 0.0, "as typed, k = 2")


def _in_unit(versions: tuple[Instrument, ...], unit: str) -> Instrument:
    """The version kept in `unit`, or the nearest one with its figures converted."""
    fitting = [one for one in versions if kind(one.unit) == kind(unit)]
    for one in fitting:
        if one.unit == unit:
            return one
    metric = [one for one in fitting if (one.unit in METRIC) == (unit in METRIC)]
    one = (metric or fitting)[0]
    scale = convert(1, one.unit, unit) - convert(0, one.unit, unit)
    return replace(one, resolution=one.resolution * scale, mpe=one.mpe * scale, unit=unit)


def _names_for(unit: str) -> tuple[str, ...]:
    names = [v.name for _, versions in KNOWN for v in versions if kind(v.unit) == kind(unit)]
    return tuple(dict.fromkeys(names))[:3]
