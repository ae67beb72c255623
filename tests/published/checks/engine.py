from collections.abc import Iterator
from itertools import chain

from published.check import Check, Misprint

KATES = "Kates, Diesel and High Compression Gas Engines, page 62"
RAJPUT = "Rajput, Textbook of Internal Combustion Engines"
KHURMI = "Khurmi and Gupta, Theory of Machines"
SERIES = "the book takes two terms of the series for the piston"
GEOMETRY = "geometry of the cylinder"
ISA = "ISO 2533, standard atmosphere, by two public packages that agree to 0.02 Pa"
TWINS = "geometry of the crank; twins with opposed throws fire unevenly"
POLYTROPE = "ISO 2533 with polytropic compression"


def displacements() -> Iterator[Check]:
    yield Check(
        "displacement",
        {"bore": "3 in", "stroke": "4 in"},
        "displacement",
        "28.26",
        "in3",
        KATES,
        "read",
        "0.1 %",
        "the book takes π/4 as 0.785",
    )
    yield Check(
        "displacement",
        {"bore": "3.25 in", "stroke": "3.375 in"},
        "displacement",
        "27.984",
        "in3",
        "school slide set on displacement",
        "read",
        "0.1 %",
        "the source takes π/4 as 0.785",
    )
    given = {"torque": "160 N.m", "mean_pressure": "9.6 bar", "cylinders": "4"}
    source = f"{RAJPUT}, example 17.4, page 572, its values"
    yield Check("bore-for-torque", given, "displacement", "2.0944", "l", source, "worked out")
    yield Check("bore-for-torque", given, "bore", "87.358", "mm", source, "worked out")
    square = {"displacement": "2.0944 l", "cylinders": "4"}
    yield Check(
        "bore-for-displacement",
        square,
        "bore",
        "87.358",
        "mm",
        source,
        "worked out",
        "0.0025 %",
        "the swept volume is given to five digits",
    )
    pull = {"pressure": "9.6 bar", "displacement": "2.0944 l"}
    yield Check("torque-from-bmep", pull, "torque", "160", "N.m", source, "read")


def compressions() -> Iterator[Check]:
    keswani = "Keswani, Internal Combustion Engines, example 3.2, page 24"
    yield Check(
        "compression-ratio",
        {"bore": "0.25 m", "stroke": "0.45 m", "chamber": "5 l"},
        "ratio",
        "5.4179",
        "",
        keswani,
        "worked out",
    )
    yield Check(
        "air-standard-efficiency", {"ratio": "5.4179"}, "efficiency", "49.1", "%", keswani, "read"
    )
    yield Check(
        "compression-ratio",
        {"bore": "75 mm", "stroke": "100 mm", "chamber": "100 cc"},
        "ratio",
        "5.41786",
        "",
        f"{RAJPUT}, example 17.45",
        "worked out",
    )
    yield Check(
        "air-standard-efficiency",
        {"ratio": "5.41786"},
        "efficiency",
        "49.13",
        "%",
        f"{RAJPUT}, example 17.45",
        "read",
    )
    yield Check(
        "compression-ratio",
        {"bore": "250 mm", "stroke": "375 mm", "chamber": "2.63 l"},
        "ratio",
        "8",
        "",
        f"{RAJPUT}, chapter 3",
        "read",
    )
    yield Check(
        "air-standard-efficiency",
        {"ratio": "7.9992"},
        "efficiency",
        "56.47",
        "%",
        f"{RAJPUT}, chapter 3",
        "read",
    )
    room = {"bore": "250 mm", "stroke": "375 mm", "ratio": "7.9992"}
    yield Check(
        "clearance-volume", room, "clearance", "0.00263", "m3", f"{RAJPUT}, chapter 3", "read"
    )
    keswanis = {"bore": "0.25 m", "stroke": "0.45 m", "ratio": "5.4179"}
    yield Check("clearance-volume", keswanis, "clearance", "5.000", "l", keswani, "worked out")
    milled = {"bore": "100 mm", "stroke": "120 mm", "ratio": "6", "cut": "1 mm"}
    yield Check("milling", milled, "ratio", "6.2174", "", GEOMETRY, "worked out")
    yield Check(
        "milling", milled | {"area": "60 cm2"}, "ratio", "6.1644", "", GEOMETRY, "worked out"
    )
    for wanted, area in (("6.2174", {}), ("6.1644", {"area": "60 cm2"})):
        back = {"bore": "100 mm", "stroke": "120 mm", "ratio": "6", "wanted": wanted} | area
        yield Check("milling-for-ratio", back, "cut", "1.000", "mm", GEOMETRY, "worked out")
    thicker = {"bore": "100 mm", "stroke": "120 mm", "ratio": "6.2174", "wanted": "6"}
    thicker |= {"gasket": "1 mm"}
    yield Check("gasket-for-ratio", thicker, "gasket", "2.000", "mm", GEOMETRY, "worked out")
    bored = {"bore": "4.25 in", "new_bore": "4.29 in", "ratio": "6"}
    yield Check("overbore", bored, "growth", "1.891", "%", GEOMETRY, "worked out")
    yield Check("overbore", bored, "ratio", "6.0946", "", GEOMETRY, "worked out")
    yield Check(
        "compressed-pressure",
        {"ratio": "5", "exponent": "1.35", "start": "0.9 bar"},
        "pressure",
        "7.9041",
        "bar",
        f"{RAJPUT}, example 17.14, its values",
        "worked out",
    )


def pistons() -> Iterator[Check]:
    yield Check(
        "piston-speed",
        {"stroke": "90 mm", "speed": "3000"},
        "speed",
        "9",
        "m/s",
        "public explanation of piston speed",
        "read",
    )
    yield Check(
        "piston-speed",
        {"stroke": "4 in", "speed": "6500"},
        "speed",
        "4333",
        "ft/min",
        "public explanation of piston speed",
        "read",
    )
    at = {"stroke": "300 mm", "rod": "600 mm", "angle": "60", "speed": "450"}
    yield Check("piston-position", at, "drop", "89.231", "mm", GEOMETRY, "worked out")
    yield Check("piston-position", at, "speed", "6.9", "m/s", f"{KHURMI}, example 15.5", "read")
    yield Check(
        "piston-position", at, "acceleration", "124.9", "m/s2", f"{KHURMI}, example 15.5", "read"
    )
    at = {"stroke": "600 mm", "rod": "1500 mm", "angle": "40", "speed": "180"}
    yield Check(
        "piston-position",
        at,
        "speed",
        "4.19",
        "m/s",
        f"{KHURMI}, example 15.4",
        "read",
        "0.4 %",
        SERIES,
    )
    yield Check(
        "piston-position",
        at,
        "acceleration",
        "85.36",
        "m/s2",
        f"{KHURMI}, example 15.4",
        "read",
        "0.4 %",
        SERIES,
    )
    at = {"stroke": "600 mm", "rod": "1000 mm", "speed": "200"}
    yield Check(
        "top-piston-speed",
        at,
        "speed",
        "6.54",
        "m/s",
        f"{KHURMI}, example 15.3",
        "read",
        "0.4 %",
        SERIES,
    )
    yield Check("top-piston-speed", at, "angle", "75", "deg", f"{KHURMI}, example 15.3", "read")
    yield Check(
        "crank-angle",
        {"stroke": "300 mm", "rod": "600 mm", "drop": "89.231 mm"},
        "angle",
        "60.00",
        "deg",
        GEOMETRY,
        "worked out",
    )
    yield Check(
        "torque-mean-pressure",
        {"torque": "59.2 N.m", "displacement": "1.01788 l"},
        "mean pressure",
        "7.31",
        "bar",
        f"{RAJPUT}, example 17.46, page 603",
        "read",
    )


def rims() -> Iterator[Check]:
    yield Check(
        "rim-arc",
        {"across": "133.44 mm", "angle": "40"},
        "arc",
        "46.58",
        "mm",
        "arc and degrees on one damper, a public page",
        "read",
    )
    yield Check(
        "rim-arc",
        {"across": "20 in", "angle": "28"},
        "arc",
        "124.13",
        "mm",
        "laboratory sheet on the valve timing diagram",
        "worked out",
    )
    yield Check(
        "rim-arc",
        {"across": "133.44 mm", "angle": "1"},
        "arc",
        "1.1645",
        "mm",
        "arc and degrees on one damper, a public page",
        "worked out",
    )
    yield Check(
        "rim-degrees",
        {"across": "133.44 mm", "arc": "46.58 mm"},
        "angle",
        "40",
        "deg",
        "arc and degrees on one damper, a public page",
        "read",
    )
    yield Check(
        "rim-degrees",
        {"across": "20 in", "arc": "4.4331 mm"},
        "angle",
        "1.0000",
        "deg",
        "laboratory sheet on the valve timing diagram",
        "worked out",
    )
    for firings, interval, printed in (
        ("0, 360", "interval 1", "360"), ("0, 360", "interval 2", "360"),
        ("0, 180", "interval 1", "180"), ("0, 180", "interval 2", "540"),
        ("0, 180, 360, 540", "interval 4", "180"),
    ):  # fmt: skip
        yield Check(
            "firing-intervals", {"firings": firings}, interval, printed, "deg", TWINS, "worked out"
        )
    for throws, order, interval, printed in (
        ("0, 0", "1-2", "interval 1", "360"), ("0, 0", "1-2", "interval 2", "360"),
        ("0, 180", "1-2", "interval 1", "180"), ("0, 180", "1-2", "interval 2", "540"),
        ("0, 180, 180, 0", "1-3-4-2", "interval 1", "180"),
        ("0, 180, 180, 0", "1-3-4-2", "interval 4", "180"),
    ):  # fmt: skip
        given = {"throws": throws, "order": order}
        yield Check("firing-order", given, interval, printed, "deg", TWINS, "worked out")


def air() -> Iterator[Check]:
    for height, pressure, temperature, share in (
        ("0", "101325", "288.15", "1.00000"), ("500", "95460.8", "284.90", ".94213"),
        ("1000", "89874.6", "281.65", ".88699"), ("1500", "84556.0", "278.40", ".83450"),
        ("2000", "79495.2", "275.15", ".78456"), ("3000", "70108.5", "268.65", ".69192"),
    ):  # fmt: skip
        at = {"height": f"{height} m"}
        yield Check(
            "atmosphere",
            at,
            "pressure",
            pressure,
            "Pa",
            ISA,
            "library",
            "0.01 %",
            "the packages take more digits of the constants",
        )
        celsius = f"{float(temperature) - 273.15:.2f}"
        yield Check("atmosphere", at, "temperature", celsius, "degC", ISA, "library")
        yield Check("atmosphere", at, "share", share, "", ISA, "library")
    for ratio, exponent, gauges in (
        ("5.5", "1.25", ("7.521", "6.671", "5.901")), ("16", "1.30", ("36.23", "32.14", "28.43")),
    ):  # fmt: skip
        for height, printed in zip(("0", "1000", "2000"), gauges, strict=True):
            given = {"ratio": ratio, "exponent": exponent, "height": f"{height} m"}
            yield Check(
                "gauge-compression", given, "gauge", printed, "bar", POLYTROPE, "worked out"
            )
    yield Check(
        "compression-at-sea",
        {"reading": "6.671 bar", "height": "1000 m"},
        "at the sea",
        "7.521",
        "bar",
        POLYTROPE,
        "worked out",
    )
    yield Check(
        "mixture-at-height",
        {
            "mixture": "14",
            "temperature": "25 degC",
            "height": "4500 m",
            "cooling": "6.4 K",
            "pressure": "textbook",
        },
        "mixture",
        "11.26",
        "",
        f"{RAJPUT}, example 11.11, page 407",
        "read",
    )
    yield Check(
        "mixture-at-height",
        {
            "mixture": "14.7",
            "temperature": "22 degC",
            "height": "4000 m",
            "scale": "19200 m",
            "pressure": "textbook",
        },
        "mixture",
        "12.11",
        "",
        "H. N. Gupta, Fundamentals of IC Engines, example 9.7, page 289",
        "read",
    )


def firings() -> Iterator[Check]:
    answers = "public questions and answers on firing frequency"
    yield Check(
        "firing-frequency",
        {"speed": "2000", "cylinders": "8"},
        "one cylinder",
        "16.667",
        "per.s",
        answers,
        "read",
    )
    yield Check(
        "firing-frequency",
        {"speed": "2000", "cylinders": "8"},
        "all cylinders",
        "133.33",
        "per.s",
        answers,
        "read",
    )
    strengths = ("1.414", "0", "1.414", "2", "1.414", "0", "1.414", "2")
    for k, printed in enumerate(strengths, 1):
        yield Check(
            "firing-lines",
            {"firings": "0, 180", "speed": "975"},
            f"strength {k}",
            printed,
            "",
            "Fourier series of two equal impulses",
            "worked out",
        )
    for line, tone in (("1", "8.125"), ("3", "24.375"), ("4", "32.5")):
        yield Check(
            "firing-lines",
            {"firings": "0, 180", "speed": "975"},
            f"tone {line}",
            tone,
            "per.s",
            "Fourier series of two equal impulses",
            "worked out",
        )
    for line, tone in (("1", "8.125"), ("3", "24.375"), ("4", "32.5")):
        yield Check(
            "speed-from-tone",
            {"tone": tone, "line": line},
            "speed",
            "975",
            "rpm",
            "Fourier series of two equal impulses",
            "worked out",
        )


def rings() -> Iterator[Check]:
    yield Check(
        "ring-gap", {"bore": "3.5 in"}, "least", "0.012", "in", "rule of the trade", "from memory"
    )
    yield Check(
        "ring-gap", {"bore": "3.5 in"}, "most", "0.014", "in", "rule of the trade", "from memory"
    )
    yield Check(
        "ring-gap-growth",
        {"wear": "0.010 in"},
        "growth",
        "0.0314",
        "in",
        "geometry of the ring",
        "worked out",
    )


CHECKS = tuple(chain(displacements(), compressions(), pistons(), rims(), air(), firings(), rings()))
MISPRINTS = (
    Misprint(
        "bore-for-torque", {"torque": "160 N.m", "mean_pressure": "9.6 bar", "cylinders": "4"},
        "bore", "138.67", "87.358", "mm", f"companion to {RAJPUT}, example 17.4",
        "the four cylinders were left out",
    ),
)  # fmt: skip
