from collections.abc import Iterator
from itertools import chain

from published.check import Check, Misprint

SARKAR = "B. K. Sarkar, Theory of Machines"
KHURMI = "Khurmi and Gupta, Theory of Machines"
ESPOSITO = "Esposito, Fluid Power with Applications"
BRIXIUS = "Brixius' equations of ASABE D497"


def speeds() -> Iterator[Check]:
    # mph = rpm·r/(168·R): 168 rpm with a radius of 1 in and no reduction is 1 mph.
    yield Check(
        "ground-speed",
        {"speed": "168", "ratio": "1", "radius": "1 in"},
        "speed",
        "1",
        "mph",
        "public formula with the constant 168",
        "read",
        "0.05 %",
        "the constant is 168.068, rounded in the formula",
    )
    given = {"speed": "1500", "ratio": "100", "circumference": "4.0 m", "slip": "10"}
    yield Check(
        "ground-speed", given, "speed", "3.240", "km/h", "v = 3.6·n·C/(60·i)·(1 − s)", "worked out"
    )
    yield Check(
        "tyre-diameter",
        {"tyre": "13.6-28"},
        "diameter",
        "1.23",
        "m",
        "graduate examination in agricultural engineering, 2009, question 10",
        "read",
    )
    yield Check(
        "pto-speed",
        {"speed": "540", "ratio": "1"},
        "engine speed",
        "540",
        "rpm",
        "ISO 500",
        "from memory",
    )
    yield Check(
        "belt-surface-speed",
        {"pulley": "1 ft", "speed": "986.76"},
        "speed",
        "15.75",
        "m/s",
        "belt pulley standard, 3100 feet a minute",
        "from memory",
    )


def belts() -> Iterator[Check]:
    pulleys = {"first": "30 cm", "second": "50 cm", "centres": "500 cm"}
    source = f"{SARKAR}, illustration 2.3, page 58"
    rounded = "the book cuts the last digit off"
    yield Check(
        "belt-length",
        pulleys | {"lay": "crossed"},
        "length",
        "1128.8",
        "cm",
        source,
        "read",
        "0.01 %",
        rounded,
    )
    yield Check(
        "belt-length",
        pulleys | {"lay": "open"},
        "length",
        "1125.8",
        "cm",
        source,
        "read",
        "0.01 %",
        rounded,
    )
    yield Check(
        "belt-length",
        pulleys | {"lay": "crossed"},
        "short form",
        "1128.864",
        "cm",
        source,
        "worked out",
    )
    yield Check(
        "belt-length",
        pulleys | {"lay": "open"},
        "short form",
        "1125.864",
        "cm",
        source,
        "worked out",
    )
    line = {"speed": "150", "pulleys": "750/450, 900/150"}
    source = f"{KHURMI}, example 11.1, page 333"
    yield Check("pulley-speed", line, "speed", "1500", "rpm", source, "read")
    yield Check(
        "pulley-speed",
        line | {"slip": "2"},
        "speed",
        "1440",
        "rpm",
        source,
        "read",
        "0.05 %",
        "the book cuts 0.6 rpm off",
    )
    line = {"speed": "1200", "pulleys": "40/70", "slip": "3"}
    source = f"{SARKAR}, illustration 2.2, page 57"
    yield Check("pulley-speed", line, "speed", "665.1", "rpm", source, "read")
    yield Check(
        "pulley-speed", line | {"pulleys": "40/70, 45/65"}, "speed", "446.7", "rpm", source, "read"
    )
    driven = {"driving": "60 cm", "speed": "300", "wanted": "400"}
    source = f"{SARKAR}, illustration 2.1, page 57"
    yield Check("pulley-for-speed", driven, "diameter", "45.0", "cm", source, "read")
    driven = driven | {"thickness": "8 mm"}
    yield Check("pulley-for-speed", driven, "diameter", "44.8", "cm", source, "read")
    yield Check(
        "pulley-for-speed", driven | {"slip": "5"}, "diameter", "42.5", "cm", source, "read"
    )
    flat = {"pulley": "0.6 m", "speed": "200", "wrap": "160", "friction": "0.25",
            "tight": "2500 N"}  # fmt: skip
    yield Check(
        "belt-power", flat, "power", "7.89", "kW", f"{KHURMI}, example 11.4, page 342", "read"
    )
    wedged = flat | {"friction": "0.125", "groove": "60"}
    as_flat = f"{KHURMI}, example 11.4, page 342: a groove of 60° doubles a friction of 0.125"
    yield Check("v-belt-power", wedged, "power", "7.89", "kW", as_flat, "worked out")
    stretched = {"tight": "2000 N", "slack": "800 N", "width": "100 mm", "thickness": "6 mm",
                 "modulus": "100 MPa"}  # fmt: skip
    same_weight = "the same weight of belt passes both pulleys: 1 − (1 + 4/300)/(1 + 10/300)"
    yield Check("belt-creep", stretched, "creep", "1.935", "%", same_weight, "worked out")


def oil() -> Iterator[Check]:
    pump = {"outside": "3.0 in", "inside": "2.0 in", "width": "1.0 in", "speed": "1800",
            "measured": "28 gal/min"}  # fmt: skip
    yield Check("pump-flow", pump, "efficiency", "91.5", "%", f"{ESPOSITO}, example 5.1", "read")
    yield Check(
        "pump-flow", pump, "each turn", "3.9270", "in3", f"{ESPOSITO}, example 5.1", "worked out"
    )
    pump = {"outside": "75 mm", "inside": "50 mm", "width": "25 mm", "speed": "1000",
            "efficiency": "90"}  # fmt: skip
    yield Check(
        "pump-flow",
        pump,
        "flow",
        "55.3",
        "l/min",
        f"{ESPOSITO}, example 5.2",
        "read",
        "0.2 %",
        "the source rounds up",
    )
    yield Check(
        "hydraulic-power",
        {"pressure": "1200 psi", "flow": "19.3 gal/min"},
        "power",
        "13.5",
        "hp",
        f"{ESPOSITO}, example 5.5",
        "read",
    )
    ram = {"bore": "2 in", "rod": "1 in", "pressure": "318.31 psi"}
    source = f"{ESPOSITO}, example 6.1, turned round"
    yield Check("cylinder-force", ram, "force out", "1000", "lbf", source, "worked out")
    yield Check("cylinder-force", ram, "force in", "750", "lbf", source, "worked out")
    ram = {"bore": "2 in", "rod": "1 in", "load": "1000 lbf", "flow": "20 gal/min"}
    why = "the book goes on with rounded areas"
    for answer, printed, unit in (
        ("pressure out", "318", "psi"), ("speed out", "2.05", "ft/s"), ("power out", "3.72", "hp"),
        ("pressure in", "425", "psi"), ("speed in", "2.73", "ft/s"), ("power in", "4.96", "hp"),
    ):  # fmt: skip
        yield Check(
            "cylinder", ram, answer, printed, unit, f"{ESPOSITO}, example 6.1", "read", "0.5 %", why
        )


def soils() -> Iterator[Check]:
    for soil, gross, resistance, net, efficiency in (
        ("hard", ".5042", ".0581", ".4461", ".7963"), ("firm", ".5024", ".0649", ".4375", ".7837"),
        ("tilled", ".4958", ".0729", ".4229", ".7677"),
        ("soft", ".4415", ".1012", ".3403", ".6937"),
    ):  # fmt: skip
        at = {"soil": soil, "slip": "10"}
        yield Check("traction", at, "gross traction", gross, "", BRIXIUS, "worked out")
        yield Check("traction", at, "motion resistance", resistance, "", BRIXIUS, "worked out")
        yield Check("traction", at, "net traction", net, "", BRIXIUS, "worked out")
        percent = f"{float(efficiency) * 100:.2f}"
        yield Check("traction", at, "tractive efficiency", percent, "%", BRIXIUS, "worked out")
    for soil, printed in (("hard", "72.96"), ("firm", "72.05"), ("tilled", "70.91"),
                          ("soft", "65.76")):  # fmt: skip
        yield Check(
            "traction",
            {"soil": soil, "slip": "20"},
            "tractive efficiency",
            printed,
            "%",
            BRIXIUS,
            "worked out",
        )
    for soil, slip, printed in (("hard", "8.05", "80.0"), ("firm", "8.5", "78.6"),
                                ("tilled", "9.05", "76.9"), ("soft", "11.25", "69.5")):  # fmt: skip
        yield Check(
            "best-slip",
            {"soil": soil},
            "slip",
            slip,
            "%",
            BRIXIUS,
            "worked out",
            "1 %",
            "the highest point is flat; it was found on a grid",
        )
        yield Check(
            "best-slip", {"soil": soil}, "tractive efficiency", printed, "%", BRIXIUS, "worked out"
        )
    wheel = {"cone": "1200 kPa", "width": "0.467 m", "diameter": "1.62 m", "load": "18 kN"}
    yield Check("mobility-number", wheel, "wheel number", "50.436", "", BRIXIUS, "worked out")
    yield Check("mobility-number", wheel, "mobility number", "54.092", "", BRIXIUS, "worked out")
    at = {"soil": "measured", "number": "54.092", "slip": "10"}
    yield Check("traction", at, "net traction", ".43695", "", BRIXIUS, "worked out")
    yield Check("traction", at, "tractive efficiency", "78.301", "%", BRIXIUS, "worked out")


CHECKS = tuple(chain(speeds(), belts(), oil(), soils()))
MISPRINTS = (
    Misprint("pulley-for-speed", {"driving": "60 cm", "speed": "300", "wanted": "400"}, "diameter",
             "45.0", "450.0", "mm", f"{SARKAR}, illustration 2.1, companion",
             "its comment says mm; the diameters are in cm"),
)  # fmt: skip
