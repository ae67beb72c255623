"""What may stand in a field of a book, read with the same rules as what is typed in the shed."""

from collections.abc import Callable
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema

from shimstock.trade.numbers.limits import Limit, Range, parse_limit, parse_range
from shimstock.trade.numbers.quantity import Quantity, convert, kind, parse


def _minutes(value: object) -> float:
    if isinstance(value, int | float):
        return float(value)
    return parse(str(value), unit="min", what="a time").value


def _length(value: object) -> Quantity:
    return value if isinstance(value, Quantity) else _quantity(value, "length", "in", "0.015 in")


def _quantity(value: object, wanted: str, unit: str, example: str) -> Quantity:
    """Read a quantity that must carry its own unit, because a book has no one to ask."""
    text = str(value)
    got = parse(text, unit=unit, what="this")
    if got.said == unit and not any(letter.isalpha() or letter in "\"″'′" for letter in text):
        raise ValueError(f"{text!r} has no unit; a {wanted} such as {example!r} would do")
    said = got.said
    return Quantity(convert(got.value, unit, said), said, text, said)


def _torque(value: object) -> Quantity:
    if isinstance(value, Quantity):
        return value
    return _quantity(value, "torque", "lbf.ft", "24 lbf.ft")


def _range(value: object) -> Range:
    return value if isinstance(value, Range) else parse_range(str(value))


def _limit(value: object) -> Limit:
    return value if isinstance(value, Limit) else parse_limit(str(value))


def _limits(value: object) -> tuple[Limit, ...]:
    limits = tuple(_limit(item) for item in (value if isinstance(value, list | tuple) else [value]))
    if len({each.sense for each in limits}) < len(limits):
        raise ValueError("is limited twice on one side; one max and one min would do")
    return limits


def listed(value: object) -> object:
    """One thing as a list of one; a list as it is."""
    return value if isinstance(value, list | tuple) else [value]


def _text(read: Callable[[object], Any], says: str, *examples: str) -> tuple[Any, Any]:
    schema = {"type": "string", "pattern": _WITH_UNIT, "description": says}
    return BeforeValidator(read), WithJsonSchema({**schema, "examples": list(examples)})


# A number and, somewhere behind it, the first letter or sign of a unit; before it, max or min.
_WITH_UNIT = r"\d.*[A-Za-zµΩ%°\"'″′]"
_ONE_LIMIT = {
    "type": "string",
    "pattern": rf"^\s*([Mm][Aa][Xx]|[Mm][Ii][Nn])\.?\s.*{_WITH_UNIT}",
    "description": "The limit of use: max or min, with its unit.",
    "examples": ["max 6.1350 in", "min 85 psi"],
}
_TIME = {"description": "Working time for one person.", "examples": ["25 min", "1 h 20 min"]}
_MINUTES = (
    BeforeValidator(_minutes),
    WithJsonSchema({"anyOf": [{"type": "number"}, {"type": "string", "pattern": r"\d"}], **_TIME}),
)
_LENGTH = _text(_length, "A length with its unit.", "0.015 in", "0.4 mm", "+0.020 in")
_TORQUE = _text(_torque, "A tightening torque with its unit.", "24 lbf.ft", "33 N.m")
_RANGE = _text(_range, "Lowest and highest, with the unit.", "6.1250 .. 6.1260 in")
_LIMIT = (BeforeValidator(_limit), WithJsonSchema(_ONE_LIMIT))
_LIMITS_SCHEMA = WithJsonSchema(
    {
        "description": "The limit of use, or two where both sides matter.",
        "anyOf": [_ONE_LIMIT, {"type": "array", "items": _ONE_LIMIT, "maxItems": 2}],
    }
)

Minutes = Annotated[float, *_MINUTES]
Length = Annotated[Quantity, *_LENGTH]
Torque = Annotated[Quantity, *_TORQUE]
RangeText = Annotated[Range, *_RANGE]
LimitText = Annotated[Limit, *_LIMIT]
Limits = Annotated[tuple[Limit, ...], BeforeValidator(_limits), _LIMITS_SCHEMA]
Names = Annotated[
    tuple[str, ...], BeforeValidator(listed, json_schema_input_type=str | tuple[str, ...])
]


def same_kind(first: str, second: str) -> bool:
    """Tell whether two units measure the same kind of thing."""
    return kind(first) == kind(second)
