"""What was typed, understood once: a value in the figure's unit, and the text kept beside it."""

import re
from dataclasses import dataclass
from fractions import Fraction

from shimstock.trade.numbers import typed_number
from shimstock.trade.numbers.conversion import (
    SAID_FOR_FORCE,
    SAID_FOR_WARMING,
    SAID_FOR_WEIGHT,
    convert,
    exactly,
    kind,
)
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.unit_names import Unit, find, unit

__all__ = ["NotUnderstood", "Quantity", "convert", "decimals_for", "kind", "parse", "show"]

# What may be written one behind the other: 5' 3", 1 h 20 min, 2 lb 3 oz.
CHAINS = (("ft", "in"), ("days", "h", "min"), ("h", "min", "s"), ("m", "cm", "mm"), ("lb", "oz"))
PIECE = re.compile(r"([\d./ -]*\d)\s*([^\d\s.,/-][^\d]*)")
SIMPLE = re.compile(r"-?(?:\d+\.?\d*|\.\d+)", re.ASCII)
EXAMPLES = {
    "in": ("5.7592", "146.28 mm"),
    "mm": ("146.28", "5.7592 in"),
    "thou": ("1.5", "0.0015 in"),
    "psi": ("300", "20.7 bar"),
    "bar": ("20.7", "300 psi"),
    "lbf.ft": ("24", "32.5 N.m"),
    "N.m": ("32.5", "24 lbf.ft"),
    "lbf": ("62", "276 N"),
    "degF": ("160", "71 degC"),
    "degC": ("71", "160 degF"),
    "min": ("25", "1 h 20 min"),
    "rpm": ("700", "700 rpm"),
}


@dataclass(frozen=True)
class Quantity:
    """A value in `unit`, the text as typed, and the unit that the text said or left unsaid."""

    value: float
    unit: str
    typed: str
    said: str


def parse(typed: str, *, unit: str, what: str = "") -> Quantity:
    """Understands what a person typed for a figure that is kept in `unit`.

    typed: a number with or without a unit; a bare number takes `unit`.
    unit: the unit of the figure. what: the figure's name, for the error.
    Raises NotUnderstood where the text can be read in no way, in two ways, or as another kind.

    >>> parse('2-1/2"', unit="in").value, parse("63,5 mm", unit="in").value
    (2.5, 2.5)
    >>> parse("12 psi", unit="in", what="liner bore")
    Traceback (most recent call last):
    shimstock.trade.numbers.not_understood.NotUnderstood: 12 psi is a pressure; liner bore is a
    length, in inches; 5.7592 or 146.28 mm would do
    """
    want, bare = _wanted(unit), typed.strip()
    if len(bare) < 18 and SIMPLE.fullmatch(bare):  # what nearly everybody types, every time
        return Quantity(float(bare), want.name, typed, want.name)
    value, said = _understood(typed, want, what)
    return Quantity(float(value), want.name, typed, said)


def show(value: float, unit: str, decimals: int | None = None) -> str:
    """The value with as many decimals as its unit deserves, and the unit in trade spelling.

    >>> show(5.75, "in"), show(24.0, "lbf.ft"), show(-0.002, "in"), show(19, "count")
    ('5.7500 in', '24 lbf.ft', '−0.0020 in', '19')
    """
    one = _wanted(unit)
    text = f"{value:.{one.decimals if decimals is None else decimals}f}"
    if decimals is None and not one.keep_zeros and "." in text:
        text = text.rstrip("0").rstrip(".")
    if float(text) == 0:
        text = text.lstrip("-")
    text = text.replace("-", "−")
    return text if one.name == "count" else f"{text} {one.name}"


def decimals_for(unit: str) -> int:
    """How many decimals a value in `unit` is shown with."""
    return _wanted(unit).decimals


def _wanted(name: str) -> Unit:
    return unit(name)


def _understood(typed: str, want: Unit, what: str) -> tuple[Fraction, str]:
    text = typed_number.tidy(typed)
    if not text:
        raise NotUnderstood(typed, "was typed", _examples(want))
    head, rest = typed_number.split_number(text)
    if not any(c.isdigit() for c in head):
        raise NotUnderstood(typed, "has no number at its start", _examples(want))
    if not rest:
        return typed_number.number(head, typed), want.name
    have = _meant(find(rest), want)
    if have is not None:
        return _converted(typed_number.number(head, typed), have, want, typed, what), have.name
    chained = _chained(text, typed, want, what)
    if chained is None:
        raise NotUnderstood(typed, f"ends in {rest}, which is no unit known here", _examples(want))
    return chained


def _meant(have: Unit | None, want: Unit) -> Unit | None:
    """The unit that a person in a shed means: pounds pull, degrees of heat."""
    if have is None:
        return None
    if want.kind == "force" and have.name in SAID_FOR_FORCE:
        return unit(SAID_FOR_FORCE[have.name])
    if want.kind == "temperature" and have.name == "deg":
        return want
    if want.kind == "weight" and have.name in SAID_FOR_WEIGHT:
        return unit(SAID_FOR_WEIGHT[have.name])
    if want.kind == "warming" and have.name in SAID_FOR_WARMING:
        return unit(SAID_FOR_WARMING[have.name])
    return have


def _converted(value: Fraction, have: Unit, want: Unit, typed: str, what: str) -> Fraction:
    if have.kind != want.kind:
        wrong = f"is {_a(have.kind)}; {what or 'this'} is {_a(want.kind)}, in {want.words}"
        raise NotUnderstood(typed, wrong, _examples(want))
    return exactly(value, have, want)


def _chained(text: str, typed: str, want: Unit, what: str) -> tuple[Fraction, str] | None:
    """A value in several units, biggest first; None where the text is no such chain."""
    negative = text.startswith("-")
    body = text.lstrip("-")
    pieces = PIECE.findall(body)
    found = [find(spelled) for _, spelled in pieces]
    names = tuple(one.name for one in found if one)
    if "".join(n + s for n, s in pieces).replace(" ", "") != body.replace(" ", ""):
        return None
    if len(names) != len(pieces) or not any(_follows(names, chain) for chain in CHAINS):
        return None
    total = Fraction(0)
    for (digits, _), one in zip(pieces, found, strict=True):
        if one is not None:
            value = typed_number.number(digits.strip(), typed)
            total += _converted(value, one, want, typed, what)
    return (-total if negative else total), " ".join(names)


def _follows(names: tuple[str, ...], chain: tuple[str, ...]) -> bool:
    """Whether the names stand in the chain's order without a gap."""
    return len(names) > 1 and any(
        chain[i : i + len(names)] == names for i in range(len(chain) - len(names) + 1)
    )


def _examples(want: Unit) -> tuple[str, ...]:
    return EXAMPLES.get(want.name, ("12", f"12 {want.name}"))


def _a(noun: str) -> str:
    return f"{'an' if noun[0] in 'aeiou' else 'a'} {noun}"
