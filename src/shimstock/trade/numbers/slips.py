"""What a reading far outside its range was probably meant to be."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from shimstock.trade.numbers.conversion import convert, kind
from shimstock.trade.numbers.quantity import decimals_for, show
from shimstock.trade.numbers.typed_number import split_number, tidy
from shimstock.trade.numbers.unit_names import find

MOST = 4
FEW = 3  # one digit left out or mistyped explains nearly anything: offered only if few fit
FARTHER = 0.1  # how much less likely a slip is for each neighbour more that it passes
BANDS = 10  # limit bands that a plausible range is usually as wide as
SEVERAL = 3  # digits that must be there before one can be missed

# What people type where the other was meant.
MIXED_UP = {
    "in": ("mm", "thou"),
    "thou": ("in", "mm"),
    "mm": ("in", "thou", "cm"),
    "psi": ("bar", "kPa"),
    "bar": ("psi", "kPa"),
    "lbf": ("N", "kgf"),
    "N": ("lbf", "kgf"),
    "lbf.ft": ("N.m", "lbf.in"),
    "N.m": ("lbf.ft", "lbf.in"),
    "degF": ("degC",),
    "degC": ("degF",),
    "min": ("h", "s"),
    "h": ("min",),
    "V": ("mV",),
    "oz": ("g", "lb"),
    "g": ("oz", "kg"),
}


@dataclass(frozen=True)
class Slip:
    """A value that may have been meant, in the figure's unit, and how it came to be mistyped."""

    value: float
    how: str


def slips(
    value: float,
    unit: str,
    low: float,
    high: float,
    *,
    typed: str = "",
    near: float | None = None,
    band: float | None = None,
) -> list[Slip]:
    """What may have been meant by a value outside its plausible range, likeliest first.

    value, low, high, near, band: in `unit`; near is the value expected, else the middle of the
    range; band is how far apart new and limit lie, by which nearness is counted.
    typed: the text as typed; its own digits are the ones that slipped.

    >>> slips(146.284, "in", 5.68, 5.82, typed="146.284", near=5.7554)
    [Slip(value=5.759212598425197, how='millimetres: 5.7592 in')]
    """
    if low <= value <= high:
        return []
    aim = (low + high) / 2 if near is None else near
    width = max(high - low if band is None else BANDS * band, 1e-12)
    ranked: dict[float, tuple[float, Slip]] = {}
    for handicap, slip in _candidates(value, unit, low, high, typed):
        if not low <= slip.value <= high:
            continue
        key = float(f"{slip.value:.9g}")
        rank = handicap + abs(slip.value - aim) / width
        if key not in ranked or rank < ranked[key][0]:
            ranked[key] = (rank, slip)
    return [slip for _, slip in sorted(ranked.values(), key=lambda pair: pair[0])][:MOST]


def _candidates(
    value: float, unit: str, low: float, high: float, typed: str
) -> Iterator[tuple[float, Slip]]:
    """Every slip that is looked for, with its handicap: the more it can explain, the later."""
    digits, said = _as_typed(value, unit, typed)
    yield from ((0.0, slip) for slip in _other_unit(unit, digits, said))
    yield from ((0.1, _slip(t, how, said, unit)) for t, how in _point_moved(digits))
    yield from ((0.0, _slip(t, how, said, unit)) for t, how in _swapped_neighbours(digits))
    yield from ((0.2 + more, _slip(t, how, said, unit)) for t, how, more in _digit_moved(digits))
    yield from ((0.3 + more, _slip(t, how, said, unit)) for t, how, more in _swapped_any(digits))
    for handicap, guesses in ((0.5, _one_left_out(digits)), (0.6, _one_mistyped(digits))):
        guessed = [_slip(t, how, said, unit) for t, how in guesses]
        fitting = [slip for slip in guessed if low <= slip.value <= high]
        if len(fitting) <= FEW:
            yield from ((handicap, slip) for slip in fitting)


def _as_typed(value: float, unit: str, typed: str) -> tuple[str, str]:
    """The decimal digits that were typed, and their unit; the value itself where in doubt."""
    number, spelled = split_number(tidy(typed))
    said = find(spelled) if spelled else None
    plain = number.lstrip("+-").replace(",", ".")
    clear = not spelled if said is None else said.kind == kind(unit)
    if clear and plain.replace(".", "", 1).isdigit():
        sign = "-" if number.startswith("-") else ""
        return sign + plain, said.name if said else unit
    exact, usual = f"{value:.6f}".rstrip("0").rstrip("."), f"{value:.{decimals_for(unit)}f}"
    return max(exact, usual, key=len), unit


def _slip(text: str, how: str, said: str, unit: str) -> Slip:
    value = convert(float(text), said, unit)
    return Slip(value, f"{how}: {show(value, unit, _decimals(text) if said == unit else None)}")


def _decimals(text: str) -> int:
    return len(text.partition(".")[2])


def _other_unit(unit: str, digits: str, said: str) -> Iterator[Slip]:
    for meant in MIXED_UP.get(said, ()):
        read = convert(float(digits), meant, unit)
        yield Slip(read, f"{found.words if (found := find(meant)) else meant}: {show(read, unit)}")


def _point_moved(text: str) -> Iterator[tuple[str, str]]:
    places = _decimals(text)
    for power in (-4, -3, -2, -1, 1, 2, 3, 4):
        how = f"decimal point {abs(power)} {'place' if abs(power) == 1 else 'places'} off"
        yield f"{float(text) * 10.0**power:.{max(0, places - power)}f}", how


def _places(text: str) -> list[int]:
    return [i for i, c in enumerate(text) if c.isdigit()]


def _swapped_neighbours(text: str) -> Iterator[tuple[str, str]]:
    at = _places(text)
    for i, j in pairwise(at):
        if text[i] != text[j]:
            yield _swap(text, i, j), f"{text[i]} and {text[j]} swapped"


def _swapped_any(text: str) -> Iterator[tuple[str, str, float]]:
    """Two digits that are no neighbours, swapped; less likely the more lie between them."""
    at = _places(text)
    for n, i in enumerate(at):
        for between, j in enumerate(at[n + 2 :]):
            if text[i] != text[j]:
                how = f"{text[i]} and {text[j]} swapped"
                yield _swap(text, i, j), how, FARTHER * between


def _swap(text: str, i: int, j: int) -> str:
    return text[:i] + text[j] + text[i + 1 : j] + text[i] + text[j + 1 :]


def _digit_moved(text: str) -> Iterator[tuple[str, str, float]]:
    """One digit taken out and set in elsewhere; the decimal point stays where it is.

    Less likely the more neighbours it has passed.
    """
    at = _places(text)
    digits = [text[i] for i in at]
    for i in range(len(digits)):
        rest = digits[:i] + digits[i + 1 :]
        for j in range(len(digits)):
            if abs(i - j) > 1:
                order = [*rest[:j], digits[i], *rest[j:]]
                filled = list(text)
                for place, digit in zip(at, order, strict=True):
                    filled[place] = digit
                yield "".join(filled), f"the {digits[i]} moved", FARTHER * (abs(i - j) - 2)


def _one_left_out(text: str) -> Iterator[tuple[str, str]]:
    seen = {text}
    if len(_places(text)) < SEVERAL:
        return
    for i in range(len(text) - len(text.lstrip("-")), len(text) + 1):
        for digit in "0123456789":
            longer = text[:i] + digit + text[i:]
            if longer not in seen:
                seen.add(longer)
                yield longer, f"a {digit} left out"


def _one_mistyped(text: str) -> Iterator[tuple[str, str]]:
    for i in _places(text):
        for digit in "0123456789":
            if digit != text[i]:
                yield text[:i] + digit + text[i + 1 :], f"{digit} typed as {text[i]}"
