"""A sum in words: what each of its inputs takes, its own example, and its results with units."""

from __future__ import annotations

import shlex
from typing import TYPE_CHECKING

from shimstock.trade.numbers.conversion import convert
from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.unit_names import find
from shimstock.trade.sums.declare import Input, Of, Read, Sum

if TYPE_CHECKING:
    from shimstock.trade.sums.typed import Done, Given, Result

# Other units, of the other system mostly, shown in brackets beside a result.
BESIDE = {
    "in": "mm", "mm": "in", "ft": "m", "m": "ft", "in2": "mm2", "mm2": "in2", "in3": "cc",
    "lbf": "N", "N": "lbf", "kN": "lbf", "psi": "MPa", "MPa": "psi", "bar": "psi", "kPa": "psi",
    "ksi": "MPa", "lbf.in": "lbf.ft N.m", "lbf.ft": "N.m", "N.m": "lbf.ft", "N/mm": "lbf/in",
    "lbf/in": "N/mm", "degC": "degF", "degF": "degC", "K": "Fdeg", "hp": "kW", "kW": "hp",
    "mph": "km/h", "km/h": "mph", "kg": "lb", "lb": "kg", "l": "gal", "gal": "l", "cc": "in3",
    "l/min": "gal/min", "gal/min": "l/min", "m/s": "ft/min", "m2": "ft2", "ft2": "m2",
}  # fmt: skip
# A difference of temperature, as a shed calls it.
SPOKEN = {"K": "C degrees", "Fdeg": "F degrees"}
LENGTH_DIGITS, RESULT_DIGITS = 5, 4


def said(result: Result) -> str:
    """A result with its unit, and beside it in the other system's.

    >>> from shimstock.trade.sums.typed import Result
    >>> said(Result(32.5, "N.m")), said(Result("no", ""))
    ('32.5 N.m (23.97 lbf.ft)', 'no')
    """
    others = said_beside(result)
    return f"{said_first(result)} ({others})" if others else said_first(result)


def said_first(result: Result) -> str:
    """A result with its own unit, or in its words."""
    if isinstance(result.value, str):
        return result.value
    return _with_unit(result.value, result.unit)


def said_beside(result: Result) -> str:
    """A result in the other system's units; "" where it has none."""
    if isinstance(result.value, str):
        return ""
    others = BESIDE.get(result.unit, "").split()
    return ", ".join(_with_unit(convert(result.value, result.unit, to), to) for to in others)


def understood(given: Given) -> str:
    """A number as it was understood, in the sum's unit; "" for what is no number.

    >>> from shimstock.trade.sums.typed import Given
    >>> understood(Given("bore", "3 1/2 in", 3.5, "in", "typed now"))
    '3.5 in'
    """
    values = given.value if isinstance(given.value, list) else [given.value]
    if any(isinstance(each, bool) or not isinstance(each, int | float) for each in values):
        return ""
    return ", ".join(_with_unit(each, given.unit) for each in values)


def _with_unit(value: float, unit: str) -> str:
    return f"{written(value, _digits(unit))} {SPOKEN.get(unit, unit)}".strip()


def _digits(unit: str) -> int:
    """Figures shown: as many as a micrometer gives for a length, as a gauge for all else."""
    known = find(unit)
    return LENGTH_DIGITS if known and known.kind == "length" else RESULT_DIGITS


def spoken(name: str) -> str:
    """A name of the program as it is spoken of.

    >>> spoken("end_play_")
    'end play'
    """
    return name.strip("_").replace("_", " ")


def about(one: Input) -> list[str]:
    """What an input means and must be, a sentence each."""
    parts = [f"{one.said[:1].upper()}{one.said[1:]}."]
    if isinstance(one.takes, Of) and one.takes.rule:
        parts.append(f"Must be {one.takes.rule}.")
    if isinstance(one.takes, Of) and one.takes.known:
        low, high = one.takes.known
        parts.append(f"The source holds from {low:g} to {high:g}.")
    if isinstance(one.takes, Read):
        parts.append(f"As: {one.takes.example}.")
    if one.many:
        parts.append("Several, with commas or semicolons between.")
    return parts


def left_out(one: Input) -> str:
    """What is taken where an input is left out; "" for nothing, and for a yes or no."""
    if one.needed or one.default is None or isinstance(one.default, bool):
        return ""
    if one.name == "unit":
        return "as the values are typed"
    return f"{one.default:g}" if isinstance(one.default, float | int) else f"{one.default}"


def help_of(one: Input) -> str:
    """What an option means, what it must be and what is taken where it is left out."""
    parts = about(one)
    if isinstance(one.takes, tuple):
        parts.append(f"One of: {', '.join(one.takes)}.")
    if one.found:
        parts.append("[from the machine where its book has it]")
    if one.needed:
        parts.append("[needed]")
    elif other := left_out(one):
        parts.append(f"[else {other}]")
    return " ".join(parts)


def metavar_of(one: Input) -> str:
    """The word that stands for the value in the help: what it measures."""
    from shimstock.trade.numbers.coherent import WORDS

    if isinstance(one.takes, tuple):
        return "WORD"
    if not isinstance(one.takes, Of):
        return "UNIT" if one.name == "unit" else "TEXT"
    if one.takes.unit in WORDS:
        return one.takes.unit.upper()
    unit = find(one.takes.unit)
    name = "NUMBER" if unit is None else unit.kind.upper().replace(" ", "-")
    return f"{name},..." if one.many else name


def example_typed(sum_: Sum) -> tuple[dict[str, str], list[str]]:
    """The texts of the sum's own example by input, and the units that it asks for."""
    words = shlex.split(sum_.example)
    typed: dict[str, str] = {}
    wanted: list[str] = []
    names = {one.option: one.name for one in sum_.inputs}
    while words:
        option = words.pop(0)
        if option == "--in":
            wanted = words.pop(0).split(",")
        elif option.startswith("--no-") and option not in names:
            typed[names[f"--{option[5:]}"]] = "no"
        elif not words or words[0] in names:
            typed[names[option]] = "yes"
        else:
            typed[names[option]] = words.pop(0)
    return typed, wanted


def example_of(sum_: Sum) -> Done:
    """The sum's own example, worked out."""
    from shimstock.trade.sums.typed import work_out

    typed, wanted = example_typed(sum_)
    return work_out(sum_, typed, wanted=wanted)
