from collections.abc import Iterator

from published.check import Check, Misprint

RAJPUT = "Rajput, Textbook of Internal Combustion Engines"
GUPTA = "H. N. Gupta, Fundamentals of IC Engines"
MATHUR = "Mathur and Sharma, Internal Combustion Engines"
ESPOSITO = "Esposito, Fluid Power with Applications"


def each_stroke(kw: float, kg_kwh: float, cylinders: int, speed: float, density: float) -> str:
    """Delivery at each stroke of a four-stroke engine, as these examples find it first."""
    return f"{kw * kg_kwh / cylinders / (30 * speed) / density * 1e6:.8f} mm3"


def deliveries() -> Iterator[Check]:
    given = {
        "power": "125 kW", "consumption": "200 g/kWh", "cylinders": "6", "speed": "3000",
        "density": "0.85 g/cc",
    }  # fmt: skip
    source = f"{RAJPUT}, example 12.1, page 421, prints 0.05"
    yield Check("delivery-per-stroke", given, "volume", "0.054466", "cc", source, "worked out")
    given = {"fuel": "2.2 kg/h", "cylinders": "1", "speed": "650", "density": "0.875 g/cc"}
    source = f"{RAJPUT}, example 12.3"
    yield Check("delivery-per-stroke", given, "volume", "0.13", "cc", source, "read")
    given = {
        "power": "89 kW", "consumption": "245 g/kWh", "cylinders": "6", "speed": "2500",
        "density": "0.84 g/cc",
    }  # fmt: skip
    source = f"{MATHUR}, example 12.1, page 288"
    yield Check("delivery-per-stroke", given, "volume", "0.0577", "cc", source, "read")


def speeds() -> Iterator[Check]:
    source = f"{GUPTA}, example 10.2, page 333"
    gravity = {"api": "35"}
    yield Check("api-gravity", gravity, "specific gravity", "0.84985", "sg", source, "worked out")
    given = {
        "pressure": "160 bar", "against": "35 bar", "coefficient": "0.92",
        "density": "0.849850 g/cc",
    }  # fmt: skip
    yield Check("orifice-velocity", given, "speed", "157.8", "m/s", source, "read")
    for source, pressure, against, density, printed in (
        (f"{RAJPUT}, example 12.2", "160 bar", "40 bar", "0.85 g/cc", "151.23"),
        (f"{RAJPUT}, example 12.4", "120 bar", "30 bar", "0.865443 g/cc", "129.80"),
    ):
        given = {
            "pressure": pressure, "against": against, "coefficient": "0.9", "density": density,
        }  # fmt: skip
        yield Check("orifice-velocity", given, "speed", printed, "m/s", source, "worked out")
    gravity = {"api": "32"}
    source = f"{RAJPUT}, example 12.4"
    yield Check("api-gravity", gravity, "specific gravity", "0.86544", "sg", source, "worked out")
    gravity = {"specific_gravity": "0.86544"}
    yield Check("api-gravity", gravity, "degrees api", "32.0", "", source, "worked out")


def holes() -> Iterator[Check]:
    given = {
        "delivery": each_stroke(220, 0.273, 6, 1500, 0.85), "speed": "1500", "degrees": "30",
        "pressure": "160 bar", "against": "40 bar", "coefficient": "0.9", "density": "0.85 g/cc",
    }  # fmt: skip
    source = f"{RAJPUT}, example 12.2"
    yield Check("injector-hole", given, "diameter", "0.813", "mm", source, "read")
    given = {
        "delivery": f"{2.2 / (30 * 650) / 0.875 * 1e6:.8f} mm3", "speed": "650", "degrees": "28",
        "pressure": "150 bar", "against": "32 bar", "coefficient": "0.88", "density": "0.875 g/cc",
    }  # fmt: skip
    source = f"{RAJPUT}, example 12.3"
    yield Check("injector-hole", given, "diameter", "0.40", "mm", source, "read")
    given = {
        "delivery": each_stroke(15, 0.272, 1, 2000, 0.865443), "speed": "2000", "degrees": "30",
        "pressure": "120 bar", "against": "30 bar", "coefficient": "0.9",
        "density": "0.865443 g/cc",
    }  # fmt: skip
    source = f"{RAJPUT}, example 12.4; {MATHUR}, example 12.3, page 298"
    yield Check("injector-hole", given, "diameter", "0.56", "mm", source, "read")
    given = {
        "delivery": each_stroke(30, 0.28, 1, 3000, 0.849850), "speed": "3000", "degrees": "28",
        "pressure": "160 bar", "against": "35 bar", "coefficient": "0.92",
        "density": "0.849850 g/cc",
    }  # fmt: skip
    source = f"{GUPTA}, example 10.2, page 333"
    yield Check("injector-hole", given, "diameter", "0.755", "mm", source, "read")
    given = {
        "diameter": "0.47 mm", "speed": "1800", "degrees": "32", "pressure": "118.2 bar",
        "against": "31.38 bar", "coefficient": "0.9", "density": "0.865443 g/cc", "power": "11 kW",
    }  # fmt: skip
    source = f"{RAJPUT}, example 12.5"
    yield Check("hole-delivery", given, "consumption", "0.28", "kg/kWh", source, "read")


def holes_under_rising_pressure() -> Iterator[Check]:
    given = {
        "delivery": each_stroke(386.4, 0.25, 8, 800, 0.85), "speed": "800", "degrees": "12",
        "pressure": "207 bar", "against": "32 bar", "end_pressure": "595 bar",
        "end_against": "55 bar", "coefficient": "0.6", "density": "0.85 g/cc",
    }  # fmt: skip
    source = f"{RAJPUT}, example 12.6"
    yield Check("injector-hole", given, "area", "0.0136", "cm2", source, "read")
    given = {
        "delivery": each_stroke(250, 0.3, 6, 1500, 0.85), "speed": "1500", "degrees": "15",
        "pressure": "220 bar", "against": "30 bar", "end_pressure": "550 bar",
        "end_against": "60 bar", "coefficient": "0.65", "density": "0.85 g/cc", "holes": "4",
    }  # fmt: skip
    source = f"{GUPTA}, example 10.1, page 332"
    yield Check("injector-hole", given, "area", "1.067", "mm2", source, "read")
    yield Check("injector-hole", given, "diameter", "0.583", "mm", source, "read")
    given = {
        "delivery": each_stroke(368, 0.238, 8, 800, 0.85), "speed": "800", "degrees": "12",
        "pressure": "210 bar", "against": "35 bar", "end_pressure": "600 bar",
        "end_against": "60 bar", "coefficient": "0.6", "density": "0.85 g/cc",
    }  # fmt: skip
    source = f"{MATHUR}, example 12.2, page 293"
    yield Check("injector-hole", given, "area", "0.01234", "cm2", source, "read")


RAJPUTS_PUMP = {
    "plunger": "7 mm", "delivery": "0.1 cc", "pressure": "150 bar", "barrel": "7 cc",
    "pipe_bore": "3 mm", "pipe_length": "700 mm", "injector": "2 cc", "squeeze": "78.8e-6",
}  # fmt: skip
GUPTAS_PUMP = {
    "speed": "2500", "cylinders": "4", "delivery": each_stroke(90, 0.28, 4, 2500, 0.85),
    "pressure": "280 bar", "against": "30 bar", "barrel": "8 cc", "squeeze": "80e-6",
}  # fmt: skip


def squeezed() -> Iterator[Check]:
    source = f"{RAJPUT}, example 12.8, page 425"
    yield Check("plunger-stroke", RAJPUTS_PUMP, "swept", "0.26", "cc", source, "read")
    yield Check("plunger-stroke", RAJPUTS_PUMP, "squeezed", "0.16377", "cc", source, "worked out")
    yield Check("plunger-stroke", RAJPUTS_PUMP, "stroke", "0.69", "cm", source, "read")
    given = {
        "plunger": "7.5 mm", "delivery": "0.1 cc", "pressure": "180 bar", "barrel": "6.5 cc",
        "pipe_bore": "3 mm", "pipe_length": "650 mm", "injector": "2.5 cc", "squeeze": "78.5e-6",
    }  # fmt: skip
    source = f"{GUPTA}, example 10.5, page 336"
    yield Check("plunger-stroke", given, "swept", "0.291", "cc", source, "read")
    yield Check("plunger-stroke", given, "stroke", "6.59", "mm", source, "read")
    source = f"{GUPTA}, example 10.6, page 337, its values"
    yield Check("injection-pump-power", GUPTAS_PUMP, "swept", "0.27738", "cc", source, "worked out")
    yield Check("injection-pump-power", GUPTAS_PUMP, "power", "0.41346", "kW", source, "worked out")
    given = {
        "volume": "10 in3", "start": "100 psi", "pressure": "2000 psi", "modulus": "250000 psi",
    }  # fmt: skip
    source = f"{ESPOSITO}, example 2.11"
    yield Check("compressed-volume", given, "squeezed", "0.076", "in3", source, "read")
    given = {
        "volume": "1 l", "start": "687 kPa", "pressure": "13740 kPa", "modulus": "1718 MPa",
    }  # fmt: skip
    source = f"{ESPOSITO}, example 2.17"
    yield Check("compressed-volume", given, "share", "0.76", "%", source, "worked out")


def waves() -> Iterator[Check]:
    source = f"{GUPTA}, example 10.7, page 339"
    fuel = {"density": "0.86 g/cc", "modulus": "17830 bar"}
    given = {**fuel, "length": "0.575 m", "speed": "1000"}
    yield Check("pressure-wave", given, "wave speed", "1440", "m/s", source, "read")
    yield Check("pressure-wave", given, "time", "0.4", "ms", source, "read")
    yield Check("pressure-wave", given, "angle", "2.396", "deg", source, "worked out")
    given = {**given, "speed": "1500"}
    yield Check("pressure-wave", given, "angle", "3.594", "deg", source, "worked out")
    # The pipe has 1/20 of the plunger's area, the hole 1/40 of the pipe's.
    given = {
        **fuel, "plunger": "10 mm", "plunger_speed": "0.3 m/s", "pipe_bore": "2.2360680 mm",
        "hole": "0.35355339 mm", "standing": "27.6 bar",
    }  # fmt: skip
    for answer, printed, unit in (
        ("at the pump", "101.9", "bar"), ("reflected", "26.8", "bar"),
        ("at the nozzle", "128.7", "bar"), ("speed at the nozzle", "3.83", "m/s"),
    ):  # fmt: skip
        yield Check("reflected-wave", given, answer, printed, unit, source, "read")


def figures() -> Iterator[Check]:
    for fuel, figure, low, high, unit, source in (
        ("diesel", "density", "820", "860", "kg/m3", "EN 590 and Heywood, appendix D"),
        ("petrol", "density", "720", "775", "kg/m3", "Heywood, appendix D"),
        ("kerosene", "density", "775", "840", "kg/m3", "Heywood, appendix D"),
        ("diesel", "heating value", "42.5", "43.2", "MJ/kg", "Heywood, appendix D"),
        ("calibration fluid", "viscosity", "2.45", "2.75", "mm2/s", "ISO 4113"),
        ("calibration fluid", "density", "820", "830", "kg/m3", "ISO 4113"),
    ):
        for word, printed in (("least", low), ("most", high)):
            yield Check("fuel-figures", {"fuel": fuel}, f"{word} {figure}", printed, unit, source,
                        "from memory")  # fmt: skip
    for fuel, printed in (("petrol", "44.0"), ("kerosene", "43.1")):
        yield Check("fuel-figures", {"fuel": fuel}, "heating value", printed, "MJ/kg",
                    "Heywood, appendix D", "from memory")  # fmt: skip


def balances() -> Iterator[Check]:
    formula = "definition, (largest − smallest)/largest"
    for glasses, printed in (("24.2, 21.6 cc", "10.74"), ("4.1, 5.0 cc", "18.00")):
        given = {"deliveries": glasses}
        yield Check("pump-balance", given, "spread", printed, "%", formula, "worked out")
    given = {"deliveries": "24.2, 21.6 cc", "of": "mean"}
    formula = "definition, (largest − smallest)/mean"
    yield Check("pump-balance", given, "spread", "11.35", "%", formula, "worked out")


CHECKS = (
    *deliveries(),
    *speeds(),
    *holes(),
    *holes_under_rising_pressure(),
    *squeezed(),
    *waves(),
    *figures(),
    *balances(),
)
MISPRINTS = (
    Misprint(
        "plunger-stroke",
        RAJPUTS_PUMP,
        "stroke",
        "0.69",
        "6.854",
        "mm",
        f"{RAJPUT}, example 12.8, page 425, as a student companion works it",
        "0.69 is in centimetres, but millimetres are printed",
    ),
    Misprint(
        "injection-pump-power",
        GUPTAS_PUMP,
        "swept",
        "0.276",
        "0.2774",
        "cc",
        f"{GUPTA}, example 10.6, page 337, as a student companion works it",
        "π is taken away where the supply of 1 bar should be",
    ),
)
