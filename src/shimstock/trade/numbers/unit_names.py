"""The units of the trade: how they are written, what they measure, how finely they are shown."""

import re
from dataclasses import dataclass
from functools import lru_cache


@dataclass(frozen=True)
class Unit:
    """One unit: trade spelling, kind, other spellings, decimals shown, and whether zeros stay."""

    name: str
    kind: str
    words: str
    decimals: int
    pint: str
    spellings: tuple[str, ...]
    keep_zeros: bool = False


def _unit(
    name: str, kind: str, words: str, decimals: int, pint: str, *spellings: str, zeros: bool = False
) -> Unit:
    return Unit(name, kind, words, decimals, pint, (name, *spellings), zeros)


UNITS: tuple[Unit, ...] = (
    _unit("in", "length", "inches", 4, "inch", "inch", "inches", '"', "''", zeros=True),
    _unit("thou", "length", "thousandths of an inch", 1, "thou", "thous", "mil", "mils",
          "thousandth", "thousandths", "thou.of.an.inch", "thousandth.of.an.inch",
          "thousandths.of.an.inch"),
    _unit("mm", "length", "millimetres", 3, "mm", "millimetre", "millimetres", zeros=True),
    _unit("um", "length", "micrometres", 1, "um", "micron", "microns"),
    _unit("cm", "length", "centimetres", 2, "cm", "centimetre", "centimetres"),
    _unit("m", "length", "metres", 3, "m", "metre", "metres"),
    _unit("ft", "length", "feet", 2, "ft", "foot", "feet", "'"),
    _unit("psi", "pressure", "psi", 0, "psi", "lb/in2", "lbf/in2", "psig", "lb/sq.in",
          "lbs/in2", "lbs/sq.in", "lb.per.sq.in", "lbs.per.sq.in", "pounds.per.square.inch"),
    _unit("bar", "pressure", "bar", 1, "bar", "bars"),
    _unit("kPa", "pressure", "kilopascals", 0, "kPa"),
    _unit("MPa", "pressure", "megapascals", 2, "MPa"),
    _unit("lbf", "force", "pounds", 1, "lbf"),
    _unit("N", "force", "newtons", 0, "newton", "newton", "newtons"),
    _unit("kN", "force", "kilonewtons", 2, "kN"),
    _unit("kgf", "force", "kilograms", 1, "kgf", "kp"),
    _unit("lbf.ft", "torque", "pound-feet", 1, "lbf*ft", "lb.ft", "ft.lb", "ft.lbf", "ft.lbs",
          "lbs.ft", "lbft", "ftlb", "foot.pounds", "foot.pound", "pound.feet"),
    _unit("lbf.in", "torque", "pound-inches", 1, "lbf*inch", "lb.in", "in.lb", "in.lbf", "in.lbs",
          "lbin", "inlb", "inch.pounds", "inch.pound"),
    _unit("N.m", "torque", "newton-metres", 1, "N*m", "nm", "newton.metres"),
    _unit("kgf.m", "torque", "kilogram-metres", 2, "kgf*m", "kg.m", "kgm"),
    _unit("rpm", "speed of turning", "rev/min", 0, "rpm", "rev/min", "r/min", "revs",
          "r.p.m"),
    _unit("deg", "angle", "degrees", 1, "degree", "°", "degree", "degrees"),
    _unit("rad", "angle", "radians", 4, "radian", "radian", "radians"),
    _unit("turns", "angle", "turns", 2, "turn", "turn"),
    _unit("degF", "temperature", "degrees Fahrenheit", 0, "degF", "f", "°f", "deg.f",
          "fahrenheit"),
    _unit("degC", "temperature", "degrees Celsius", 0, "degC", "c", "°c", "deg.c", "celsius"),
    _unit("s", "time", "seconds", 1, "s", "sec", "secs", "second", "seconds"),
    _unit("min", "time", "minutes", 0, "minute", "mins", "minute", "minutes"),
    _unit("h", "time", "hours", 2, "hour", "hr", "hrs", "hour", "hours"),
    _unit("days", "time", "days", 1, "day", "day"),
    _unit("cc", "volume", "cubic centimetres", 1, "cm**3", "cm3", "ml"),
    _unit("l", "volume", "litres", 2, "litre", "litre", "litres", "liter", "liters", "ltr"),
    _unit("gal", "volume", "US gallons", 2, "US_liquid_gallon", "gallon", "gallons", "us.gal"),
    _unit("imp.gal", "volume", "imperial gallons", 2, "imperial_gallon", "imperial.gallons"),
    _unit("qt", "volume", "US quarts", 2, "US_liquid_quart", "quart", "quarts"),
    _unit("pt", "volume", "US pints", 2, "US_pint", "pint", "pints"),
    _unit("fl.oz", "volume", "US fluid ounces", 1, "US_fluid_ounce"),
    _unit("lb", "weight", "pounds", 2, "pound", "lbs", "pound", "pounds"),
    _unit("oz", "weight", "ounces", 2, "ounce", "ounce", "ounces"),
    _unit("g", "weight", "grams", 1, "gram", "gram", "grams", "gm"),
    _unit("kg", "weight", "kilograms", 2, "kg", "kilo", "kilos", "kilogram", "kilograms"),
    _unit("V", "voltage", "volts", 2, "volt", "volt", "volts"),
    _unit("mV", "voltage", "millivolts", 0, "millivolt", "millivolt", "millivolts"),
    _unit("A", "current", "amperes", 1, "ampere", "amp", "amps", "ampere", "amperes"),
    _unit("ohm", "resistance", "ohms", 2, "ohm", "ohms", "ω", "Ω"),
    _unit("kohm", "resistance", "thousands of ohms", 2, "kiloohm", "kohms", "kω"),
    _unit("uF", "capacitance", "microfarads", 3, "microfarad", "mfd", "microfarad",
          "microfarads"),
    _unit("sg", "specific gravity", "specific gravity", 3, "", "s.g", zeros=True),
    _unit("%", "share", "per cent", 1, "", "per.cent", "percent", "pc"),
    _unit("hp", "power", "horsepower", 1, "hp", "bhp", "horsepower"),
    _unit("kW", "power", "kilowatts", 1, "kW", "kilowatts"),
    _unit("W", "power", "watts", 0, "watt", "watt", "watts"),
    _unit("mph", "speed", "miles an hour", 1, "mph"),
    _unit("km/h", "speed", "kilometres an hour", 1, "km/hour", "kph", "kmh", "kmph"),
    _unit("count", "count", "a count", 0, "", "off", "pcs", "times", "teeth", "strokes"),
)  # fmt: skip


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
