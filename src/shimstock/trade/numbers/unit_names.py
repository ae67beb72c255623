"""The units of the trade: how they are written, what they measure, how finely they are shown."""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import pi


@dataclass(frozen=True)
class Unit:
    """One unit: trade spelling, kind, other spellings, decimals shown, and whether zeros stay.

    `size` is how many of its kind's first unit it makes, exactly as the unit is defined; `zero`
    is where its nought lies on that unit's scale.
    """

    name: str
    kind: str
    words: str
    decimals: int
    size: Fraction
    spellings: tuple[str, ...]
    keep_zeros: bool = False
    zero: Fraction = Fraction(0)


def _unit(
    name: str,
    kind: str,
    words: str,
    decimals: int,
    size: Fraction | int,
    *spellings: str,
    zeros: bool = False,
    zero: Fraction | int = 0,
) -> Unit:
    spelt = (name, *spellings)
    return Unit(name, kind, words, decimals, Fraction(size), spelt, zeros, Fraction(zero))


# Definitions: the inch, pound and US gallon of 1959, the imperial gallon, standard gravity, the
# horsepower of 550 foot-pounds a second, the international Btu and the conventional mercury inch.
INCH = Fraction("0.0254")
FOOT = 12 * INCH
MILE = 5280 * FOOT
POUND = Fraction("0.45359237")
GRAVITY = Fraction("9.80665")
POUND_FORCE = POUND * GRAVITY
PSI = POUND_FORCE / INCH**2
LITRE = Fraction(1, 1000)
US_GALLON = 231 * INCH**3
IMPERIAL_GALLON = Fraction("4.54609") * LITRE
HORSEPOWER = 550 * FOOT * POUND_FORCE
BTU = Fraction("1055.05585262")
TURN = Fraction(2 * pi)

UNITS: tuple[Unit, ...] = (
    _unit("in", "length", "inches", 4, INCH, "inch", "inches", '"', "''", zeros=True),
    _unit("thou", "length", "thousandths of an inch", 1, INCH / 1000, "thous", "mil", "mils",
          "thousandth", "thousandths", "thou.of.an.inch", "thousandth.of.an.inch",
          "thousandths.of.an.inch"),
    _unit("mm", "length", "millimetres", 3, Fraction(1, 1000), "millimetre",
          "millimetres", zeros=True),
    _unit("um", "length", "micrometres", 1, Fraction(1, 10**6), "micron", "microns", "micrometre",
          "micrometres"),
    _unit("cm", "length", "centimetres", 2, Fraction(1, 100), "centimetre", "centimetres"),
    _unit("m", "length", "metres", 3, 1, "metre", "metres"),
    _unit("ft", "length", "feet", 2, FOOT, "foot", "feet", "'"),
    _unit("mm2", "area", "square millimetres", 2, Fraction(1, 10**6), "sq.mm"),
    _unit("cm2", "area", "square centimetres", 2, Fraction(1, 10**4), "sq.cm"),
    _unit("m2", "area", "square metres", 2, 1, "sq.m", "square.metres"),
    _unit("in2", "area", "square inches", 4, INCH**2, "sq.in", "square.inches"),
    _unit("ft2", "area", "square feet", 1, FOOT**2, "sq.ft", "square.feet"),
    _unit("psi", "pressure", "psi", 0, PSI, "lb/in2", "lbf/in2", "psig", "lb/sq.in",
          "lbs/in2", "lbs/sq.in", "lb.per.sq.in", "lbs.per.sq.in", "pounds.per.square.inch"),
    _unit("ksi", "pressure", "thousands of psi", 1, 1000 * PSI, "kpsi"),
    _unit("bar", "pressure", "bar", 1, 100_000, "bars"),
    _unit("mbar", "pressure", "millibars", 0, 100, "millibar", "millibars", "hPa"),
    _unit("Pa", "pressure", "pascals", 0, 1, "pascal", "pascals"),
    _unit("kPa", "pressure", "kilopascals", 0, 1000),
    _unit("MPa", "pressure", "megapascals", 2, 10**6, "N/mm2"),
    _unit("N/cm2", "pressure", "newtons a square centimetre", 2, 10_000),
    _unit("GPa", "pressure", "gigapascals", 1, 10**9, "kN/mm2"),
    _unit("inHg", "pressure", "inches of mercury", 2, Fraction("3386.38864034"), "in.hg",
          "inches.of.mercury"),
    _unit("lbf", "force", "pounds", 1, POUND_FORCE),
    _unit("N", "force", "newtons", 0, 1, "newton", "newtons"),
    _unit("kN", "force", "kilonewtons", 2, 1000),
    _unit("tonf", "force", "short tons of 2000 pounds", 1, 2000 * POUND_FORCE, "tons.force"),
    _unit("kgf", "force", "kilograms", 1, GRAVITY, "kp"),
    _unit("lbf.ft", "torque", "pound-feet", 1, POUND_FORCE * FOOT, "lb.ft", "ft.lb", "ft.lbf",
          "ft.lbs", "lbs.ft", "lbft", "ftlb", "foot.pounds", "foot.pound", "pound.feet"),
    _unit("lbf.in", "torque", "pound-inches", 1, POUND_FORCE * INCH, "lb.in", "in.lb", "in.lbf",
          "in.lbs", "lbin", "inlb", "inch.pounds", "inch.pound"),
    _unit("N.m", "torque", "newton-metres", 1, 1, "nm", "newton.metres"),
    _unit("N.mm", "torque", "newton-millimetres", 0, Fraction(1, 1000), "nmm"),
    _unit("kN.m", "torque", "kilonewton-metres", 2, 1000, "knm"),
    _unit("kgf.m", "torque", "kilogram-metres", 2, GRAVITY, "kg.m", "kgm"),
    _unit("N/mm", "spring rate", "newtons a millimetre", 2, 1000),
    _unit("N/m", "spring rate", "newtons a metre", 0, 1),
    _unit("kN/m", "spring rate", "kilonewtons a metre", 2, 1000),
    _unit("kN/mm", "spring rate", "kilonewtons a millimetre", 2, 10**6),
    _unit("lbf/in", "spring rate", "pounds an inch", 1, POUND_FORCE / INCH, "lb/in"),
    _unit("rpm", "speed of turning", "rev/min", 0, TURN / 60, "rev/min", "r/min", "revs",
          "r.p.m"),
    _unit("rad/s", "speed of turning", "radians a second", 2, 1),
    _unit("deg", "angle", "degrees", 1, TURN / 360, "°", "degree", "degrees"),
    _unit("arcmin", "angle", "minutes of arc", 1, TURN / 21_600, "minutes.of.arc"),
    _unit("rad", "angle", "radians", 4, 1, "radian", "radians"),
    _unit("turns", "angle", "turns", 2, TURN, "turn"),
    _unit("degF", "temperature", "degrees Fahrenheit", 0, Fraction(5, 9), "f", "°f", "deg.f",
          "fahrenheit", zero=Fraction("459.67") * Fraction(5, 9)),
    _unit("degC", "temperature", "degrees Celsius", 0, 1, "c", "°c", "deg.c", "celsius",
          zero=Fraction("273.15")),
    _unit("K", "warming", "degrees Celsius of warming", 1, 1, "kelvin", "cdeg", "c.degrees"),
    _unit("Fdeg", "warming", "degrees Fahrenheit of warming", 1, Fraction(5, 9),
          "f.degrees"),
    _unit("um/m.K", "expansion", "micrometres a metre and degree Celsius", 1, Fraction(1, 10**6),
          "um/m.C", "ppm/K", "ppm/C"),
    _unit("uin/in.F", "expansion", "microinches an inch and degree Fahrenheit", 2,
          Fraction(9, 5 * 10**6), "ppm/F"),
    _unit("s", "time", "seconds", 1, 1, "sec", "secs", "second", "seconds"),
    _unit("ms", "time", "thousandths of a second", 3, Fraction(1, 1000), "millisecond",
          "milliseconds"),
    _unit("min", "time", "minutes", 0, 60, "minute", "mins", "minutes"),
    _unit("h", "time", "hours", 2, 3600, "hour", "hr", "hrs", "hours"),
    _unit("days", "time", "days", 1, 86_400, "day"),
    _unit("cc", "volume", "cubic centimetres", 1, Fraction(1, 10**6), "cm3", "ml"),
    _unit("mm3", "volume", "cubic millimetres", 1, Fraction(1, 10**9), "cu.mm"),
    _unit("l", "volume", "litres", 2, LITRE, "litre", "litres", "liter", "liters", "ltr"),
    _unit("m3", "volume", "cubic metres", 3, 1, "cu.m"),
    _unit("in3", "volume", "cubic inches", 2, INCH**3, "cu.in", "cubic.inches", "cid"),
    _unit("gal", "volume", "US gallons", 2, US_GALLON, "gallon", "gallons", "us.gal"),
    _unit("imp.gal", "volume", "imperial gallons", 2, IMPERIAL_GALLON, "imperial.gallons"),
    _unit("qt", "volume", "US quarts", 2, US_GALLON / 4, "quart", "quarts"),
    _unit("pt", "volume", "US pints", 2, US_GALLON / 8, "pint", "pints"),
    _unit("fl.oz", "volume", "US fluid ounces", 1, US_GALLON / 128),
    _unit("lb", "weight", "pounds", 2, POUND, "lbs", "pound", "pounds"),
    _unit("oz", "weight", "ounces", 2, POUND / 16, "ounce", "ounces"),
    _unit("g", "weight", "grams", 1, Fraction(1, 1000), "gram", "grams", "gm"),
    _unit("mg", "weight", "milligrams", 1, Fraction(1, 10**6), "milligram", "milligrams"),
    _unit("kg", "weight", "kilograms", 2, 1, "kilo", "kilos", "kilogram", "kilograms"),
    _unit("t", "weight", "tonnes", 3, 1000, "tonne", "tonnes"),
    _unit("kg/m3", "density", "kilograms a cubic metre", 1, 1, "g/l"),
    _unit("g/cc", "density", "grams a cubic centimetre", 4, 1000, "g/cm3", "kg/l", "g/ml"),
    _unit("lb/gal", "density", "pounds a US gallon", 3, POUND / US_GALLON),
    _unit("lb/ft3", "density", "pounds a cubic foot", 2, POUND / FOOT**3),
    _unit("V", "voltage", "volts", 2, 1, "volt", "volts"),
    _unit("mV", "voltage", "millivolts", 0, Fraction(1, 1000), "millivolt", "millivolts"),
    _unit("A", "current", "amperes", 1, 1, "ampere", "amp", "amps", "amperes"),
    _unit("ohm", "resistance", "ohms", 2, 1, "ohms", "ω", "Ω"),
    _unit("kohm", "resistance", "thousands of ohms", 2, 1000, "kohms", "kω"),
    _unit("ohm/kft", "resistance of a wire", "ohms a thousand feet", 4,
          1 / (1000 * FOOT), "ohm/1000.ft"),
    _unit("ohm/m", "resistance of a wire", "ohms a metre", 6, 1),
    _unit("ohm/km", "resistance of a wire", "ohms a kilometre", 3, Fraction(1, 1000)),
    _unit("uF", "capacitance", "microfarads", 3, Fraction(1, 10**6), "mfd", "microfarad",
          "microfarads"),
    _unit("mH", "inductance", "millihenries", 2, Fraction(1, 1000), "millihenry"),
    _unit("sg", "specific gravity", "specific gravity", 3, 1, "s.g", zeros=True),
    _unit("%", "share", "per cent", 1, 1, "per.cent", "percent", "pc"),
    _unit("hp", "power", "horsepower", 1, HORSEPOWER, "bhp", "horsepower"),
    _unit("kW", "power", "kilowatts", 1, 1000, "kilowatts"),
    _unit("W", "power", "watts", 0, 1, "watt", "watts"),
    _unit("J", "energy", "joules", 0, 1, "joule", "joules"),
    _unit("kJ", "energy", "kilojoules", 2, 1000),
    _unit("ft.lbf.energy", "energy", "foot-pounds of work", 0, FOOT * POUND_FORCE),
    _unit("Btu", "energy", "British thermal units", 1, BTU),
    _unit("kWh", "energy", "kilowatt-hours", 2, 3_600_000),
    _unit("hp.h", "energy", "horsepower-hours", 2, 3600 * HORSEPOWER),
    _unit("MJ/kg", "heating value", "megajoules a kilogram", 2, 10**6),
    _unit("kJ/kg", "heating value", "kilojoules a kilogram", 0, 1000),
    _unit("Btu/lb", "heating value", "British thermal units a pound", 0, BTU / POUND),
    _unit("J/kg.K", "specific heat", "joules a kilogram and degree", 0, 1),
    _unit("Btu/lb.F", "specific heat", "Btu a pound and degree Fahrenheit", 3,
          BTU / POUND * Fraction(9, 5)),
    _unit("g/kWh", "fuel for work", "grams a kilowatt-hour", 1, Fraction(1, 3_600_000_000)),
    _unit("kg/kWh", "fuel for work", "kilograms a kilowatt-hour", 4, Fraction(1, 3_600_000)),
    _unit("lb/hp.h", "fuel for work", "pounds a horsepower-hour", 3,
          POUND / (3600 * HORSEPOWER), "lb/hph", "lb/bhp.h"),
    _unit("hp.h/gal", "work from fuel", "horsepower-hours a US gallon", 2,
          3600 * HORSEPOWER / US_GALLON, "hph/gal"),
    _unit("kWh/l", "work from fuel", "kilowatt-hours a litre", 3, 3_600_000 / LITRE),
    _unit("l/kWh", "litres for work", "litres a kilowatt-hour", 4, LITRE / 3_600_000),
    _unit("gal/hp.h", "litres for work", "US gallons a horsepower-hour", 4,
          US_GALLON / (3600 * HORSEPOWER)),
    _unit("kg/h", "flow of weight", "kilograms an hour", 3, Fraction(1, 3600)),
    _unit("kg/s", "flow of weight", "kilograms a second", 5, 1),
    _unit("g/s", "flow of weight", "grams a second", 3, Fraction(1, 1000)),
    _unit("lb/h", "flow of weight", "pounds an hour", 2, POUND / 3600),
    _unit("l/min", "flow", "litres a minute", 2, LITRE / 60, "lpm"),
    _unit("l/h", "flow", "litres an hour", 2, LITRE / 3600),
    _unit("gal/min", "flow", "US gallons a minute", 2, US_GALLON / 60, "gpm"),
    _unit("gal/h", "flow", "US gallons an hour", 2, US_GALLON / 3600, "gph"),
    _unit("mph", "speed", "miles an hour", 1, MILE / 3600),
    _unit("km/h", "speed", "kilometres an hour", 1, Fraction(1000, 3600), "kph", "kmh", "kmph"),
    _unit("m/s", "speed", "metres a second", 3, 1),
    _unit("ft/s", "speed", "feet a second", 2, FOOT, "fps"),
    _unit("ft/min", "speed", "feet a minute", 0, FOOT / 60, "fpm"),
    _unit("m/s2", "acceleration", "metres a second squared", 2, 1),
    _unit("ft/s2", "acceleration", "feet a second squared", 2, FOOT),
    _unit("mm2/s", "viscosity", "centistokes", 2, Fraction(1, 10**6), "cst", "centistokes"),
    _unit("cP", "thickness of oil", "centipoise", 0, Fraction(1, 1000), "mPa.s", "centipoise"),
    _unit("m2/l", "spreading rate", "square metres a litre", 2, 1000),
    _unit("ft2/gal", "spreading rate", "square feet a US gallon", 1, FOOT**2 / US_GALLON),
    _unit("per.bar", "squeeze of a liquid", "a share for each bar", 7, Fraction(1, 100_000)),
    _unit("per.s", "frequency", "times a second", 2, 1, "hz"),
    _unit("per.min", "frequency", "times a minute", 0, Fraction(1, 60)),
    _unit("tpi", "fineness", "threads an inch", 1, 1),
    _unit("count", "count", "a count", 0, 1, "off", "pcs", "times", "teeth", "strokes"),
)  # fmt: skip

# The unit of the other system that measures the same: what a number without a unit may be in.
# Kinds with one unit in every shed (degrees, rpm, volts, per cent) are not among them.
OTHER_SYSTEM = {
    "mm": "in", "m": "ft", "cm": "in", "um": "thou", "mm2": "in2", "cm2": "in2", "m2": "ft2",
    "mm3": "in3", "cc": "in3", "l": "gal", "N": "lbf", "kN": "lbf", "MPa": "psi", "GPa": "psi",
    "bar": "psi", "kPa": "psi", "mbar": "inHg", "N.m": "lbf.ft", "N.mm": "lbf.in",
    "N/mm": "lbf/in", "kg": "lb", "g": "oz", "t": "lb", "kW": "hp", "W": "hp", "degC": "degF",
    "K": "Fdeg", "km/h": "mph", "m/s": "ft/s", "l/min": "gal/min", "l/h": "gal/h",
    "kg/h": "lb/h", "MJ/kg": "Btu/lb", "kg/m3": "lb/ft3", "kJ": "Btu",
    "kg/kWh": "lb/hp.h", "g/kWh": "lb/hp.h", "m2/l": "ft2/gal", "um/m.K": "uin/in.F",
    "ohm/m": "ohm/kft", "g/cc": "lb/gal", "g/s": "lb/h", "kN/m": "lbf/in",
    "kWh/l": "hp.h/gal", "l/kWh": "gal/hp.h", "m/s2": "ft/s2",
}  # fmt: skip
OTHER_SYSTEM |= {"ft/min": "m/s"} | {
    inch: metric for metric, inch in reversed(OTHER_SYSTEM.items())
}
INCH_POUND = frozenset((
    "in", "thou", "ft", "in2", "ft2", "in3", "gal", "imp.gal", "qt", "pt", "fl.oz", "lbf", "psi",
    "tonf",
    "ksi", "inHg", "lbf.ft", "lbf.in", "lbf/in", "lb", "oz", "hp", "degF", "Fdeg", "mph", "ft/s",
    "ft/min", "ft/s2", "gal/min", "gal/h", "lb/h", "Btu/lb", "Btu", "lb/ft3", "lb/gal", "lb/hp.h",
    "hp.h/gal", "gal/hp.h", "ft2/gal", "uin/in.F", "ohm/kft",
))  # fmt: skip
"""Units of the inch and pound."""

PLAIN_SIGNS = str.maketrans("µμ²³", "uu23")


def _key(text: str) -> str:
    """One spelling for lb ft, lb-ft, lb·ft and lb.ft; µ and superscripts in plain letters."""
    plain = text.strip().rstrip(".").translate(PLAIN_SIGNS)
    return re.sub(r"\s*[\s.·*-]\s*", ".", plain.strip()).casefold()


_BY_KEY: dict[str, Unit] = {}
for _one in UNITS:
    for _spelling in _one.spellings:
        _BY_KEY.setdefault(_key(_spelling), _one)


@lru_cache(maxsize=512)
def find(text: str) -> Unit | None:
    """The unit that `text` spells, or None.

    >>> [find(t).name for t in ("ft-lb", '"', "°C", "lb/in²", "Millimetres")]
    ['lbf.ft', 'in', 'degC', 'psi', 'mm']
    """
    return _BY_KEY.get(_key(text)) if text.strip() else None


def unit(name: str) -> Unit:
    """The unit called `name`; KeyError names what is known."""
    found = find(name)
    if found is None:
        known = ", ".join(u.name for u in UNITS)
        raise KeyError(f"{name!r} is no unit that this book knows; known are {known}")
    return found
