"""Reads a formula as it is shown on paper and works it out again, without eval."""

import ast
import re
from collections.abc import Callable, Mapping
from functools import lru_cache
from math import acos, asin, atan, cos, erf, exp, inf, log, pi, radians, sin, sqrt, tan

SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹⁻"
PLAIN = str.maketrans(SUPERSCRIPTS, "0123456789-")

TOKEN = re.compile(
    r"(?P<number>(?:\d+\.?\d*|\.\d+)(?:[eE][-+−]?\d+)?)"
    r"|(?P<power>[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)"
    # A symbol: a letter, then letters, digits, _, subscripts, accents and primes; never ² or ³.
    r"|(?P<name>[^\W\d_⁰¹²³⁴⁵⁶⁷⁸⁹]"
    r"(?:[^\W⁰¹²³⁴⁵⁶⁷⁸⁹]|[₀-₉\u0300-\u036f])*['′″]*)"
    r"|(?P<space>\s+)"
    r"|(?P<sign>.)"
)

SIGNS = {
    "·": "*",
    "×": "*",
    "−": "-",
    "÷": "/",
    "^": "**",
    "√": "_root",
    "∞": "_inf",
    "°": "*_degree",
}
ANGLED = {"tan": tan, "cos": cos, "sin": sin, "inv": lambda angle: tan(angle) - angle}
FUNCTIONS: Mapping[str, Callable[..., float]] = {
    **ANGLED,
    "_root": sqrt,
    "max": lambda *numbers: max(numbers),
    "min": lambda *numbers: min(numbers),
    "abs": abs,
    "arccos": acos,
    "arcsin": asin,
    "arctan": atan,
    "ln": log,
    "exp": exp,
    "Φ": lambda z: 0.5 * (1 + erf(z / sqrt(2))),
}
CONSTANTS = {"π": pi, "_inf": inf, "_degree": pi / 180}
OPERATIONS: Mapping[type[ast.operator], Callable[[float, float], float]] = {
    ast.Add: lambda a, b: a + b,
    ast.Sub: lambda a, b: a - b,
    ast.Mult: lambda a, b: a * b,
    ast.Div: lambda a, b: a / b,
    ast.Pow: lambda a, b: float(a**b),
}

Token = tuple[str, str]


class NotReadable(ValueError):
    """A shown formula that cannot be worked out again."""


def tokens(formula: str) -> list[Token]:
    """The pieces of a shown formula: (kind, text), spaces kept."""
    return [(str(m.lastgroup), m.group()) for m in TOKEN.finditer(formula)]


def is_symbol(text: str) -> bool:
    """Whether `text` can be written in a formula as one symbol.

    >>> [is_symbol(s) for s in ("d_s", "C'", "Δj", "α_h", "2d", "d²")]
    [True, True, True, True, False, False]
    """
    return [kind for kind, _ in tokens(text)] == ["name"] and text not in CONSTANTS


def symbols(formula: str) -> list[str]:
    """The symbols of a shown formula in order, without its functions and constants."""
    pieces = [t for t in tokens(formula) if t[0] != "space"]
    return [text for i, (kind, text) in enumerate(pieces) if kind == "name" and _stands(pieces, i)]


def _stands(pieces: list[Token], i: int) -> bool:
    """Whether the name at `i` is a symbol: neither π, nor e of e^…, nor a function."""
    text = pieces[i][1]
    following = pieces[i + 1][1] if i + 1 < len(pieces) else ""
    called = text in FUNCTIONS and following == "("
    return not (called or text in CONSTANTS or (text == "e" and following == "^"))


def with_numbers(formula: str, shown: Mapping[str, str], degrees: frozenset[str]) -> str:
    """The formula with each symbol's printed number in its place.

    Inside tan( ), cos( ), sin( ) and inv( ) a symbol named in `degrees` gets its ° sign.

    >>> with_numbers("π/4·d_s² − x", {"d_s": "8.5927", "x": "−2"}, frozenset())
    'π/4·8.5927² − (−2)'
    """
    pieces = tokens(formula)
    out: list[str] = []
    calls: list[str] = []
    for i, (kind, text) in enumerate(pieces):
        if text == "(":
            calls.append(out[-1] if out and out[-1] in FUNCTIONS else "")
        elif text == ")" and calls:
            calls.pop()
        if kind == "name" and text in shown and _stands(pieces, i):
            number = shown[text]
            if text in degrees and any(call in ANGLED for call in calls):
                number += "°"
            text = f"({number})" if _needs_brackets(number, pieces, i) else number
        out.append(text)
    return "".join(out)


def _needs_brackets(number: str, pieces: list[Token], i: int) -> bool:
    solid = [j for j, (kind, _) in enumerate(pieces) if kind != "space"]
    at = solid.index(i)
    before = pieces[solid[at - 1]][1] if at else ""
    after = pieces[solid[at + 1]] if at + 1 < len(solid) else ("", "")
    if after[0] == "power" or after[1] == "^":
        return number.startswith("−") or "e" in number or "°" in number
    return number.startswith("−") and not (before in ("", "(", ",") and after[1] in ("", ")", ","))


def evaluate(
    formula: str, values: Mapping[str, float], degrees: frozenset[str] = frozenset()
) -> float:
    """Works out a shown formula from the values of its symbols.

    Symbols named in `degrees` are taken as degrees inside tan( ), cos( ), sin( ) and inv( ).
    Raises NotReadable where a sign or symbol is unknown or the sum has no result.

    >>> evaluate("√(a² + b²)·|−2|", {"a": 3, "b": 4})
    10.0
    """
    tree, names = _parsed(formula)
    for name in names.values():
        if name not in values:
            raise NotReadable(f"{name} is not given above")
    try:
        return float(_worked_out(tree, names, values, degrees, False))
    except (KeyError, TypeError):
        raise NotReadable(f"{formula} cannot be read as a sum") from None
    except (ArithmeticError, ValueError) as error:
        raise NotReadable(f"{formula} has no result ({error})") from None


@lru_cache(maxsize=4096)
def _parsed(formula: str) -> tuple[ast.expr, dict[str, str]]:
    source, names = _translated(formula)
    try:
        return ast.parse(source, mode="eval").body, names
    except (SyntaxError, ValueError):
        raise NotReadable(f"{formula} cannot be read as a sum") from None


def _translated(formula: str) -> tuple[str, dict[str, str]]:
    """Python's spelling of a shown formula, and which symbol each stand-in name means."""
    pieces = [t for t in tokens(formula) if t[0] != "space"]
    stand_in: dict[str, str] = {}
    out: list[str] = []
    for i, (kind, text) in enumerate(pieces):
        if kind == "power":
            out.append(f"**({text.translate(PLAIN)})")
        elif kind == "number":
            out.append(text.replace("−", "-"))
        elif kind == "name":
            out.append(_name(pieces, i, stand_in))
        elif text == "|":
            out.append("abs(" if _opens(pieces, i) else ")")
        else:
            out.append(SIGNS.get(text, text))
    return "".join(out), {short: name for name, short in stand_in.items()}


def _name(pieces: list[Token], i: int, stand_in: dict[str, str]) -> str:
    text = pieces[i][1]
    if _stands(pieces, i):
        return stand_in.setdefault(text, f"_s{len(stand_in)}")
    return repr(exp(1)) if text == "e" else text


def _opens(pieces: list[Token], i: int) -> bool:
    """A bar opens |x| where no value stands before it."""
    if i == 0:
        return True
    kind, text = pieces[i - 1]
    if text == "|":
        return _opens(pieces, i - 1)
    return kind == "sign" and text not in ")°∞"


def _worked_out(
    node: ast.expr,
    names: Mapping[str, str],
    values: Mapping[str, float],
    degrees: frozenset[str],
    angle: bool,
) -> float:
    match node:
        case ast.Constant(value=int() | float() as number):
            return float(number)
        case ast.Name(id=short) if short in names:
            value = float(values[names[short]])
            return radians(value) if angle and names[short] in degrees else value
        case ast.Name(id=constant):
            return CONSTANTS[constant]
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -_worked_out(operand, names, values, degrees, angle)
        case ast.BinOp(left=left, op=op, right=right):
            return OPERATIONS[type(op)](
                _worked_out(left, names, values, degrees, angle),
                _worked_out(right, names, values, degrees, angle),
            )
        case ast.Call(func=ast.Name(id=function), args=args, keywords=[]):
            inside = angle or function in ANGLED
            return float(
                FUNCTIONS[function](
                    *(_worked_out(arg, names, values, degrees, inside) for arg in args)
                )
            )
    raise KeyError(type(node).__name__)
