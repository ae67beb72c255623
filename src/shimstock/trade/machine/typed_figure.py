"""What a person types to correct a figure or a torque, understood as a book's fields."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from shimstock.trade.machine.figures import Figure
from shimstock.trade.machine.joints import Fasteners
from shimstock.trade.numbers.limits import Limit, Range, parse_limit, parse_range
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import kind, parse

FIELDS = ("new", "limit", "page")
"""Fields of a figure that can be corrected one by one."""

Typed = Mapping[str, str]
"""A text for each field that is typed; an empty one takes the field away."""

_BETWEEN_LIMITS = re.compile(r"\s*(?:[,;&\n]|\band\b)\s*(?=\S)", re.IGNORECASE)


def as_typed(figure: Figure) -> dict[str, str]:
    """What a figure's entry says now, as it would be typed."""
    return {
        "new": figure.new.typed if figure.new else "",
        "limit": ", ".join(each.typed for each in figure.limit),
        "page": "" if figure.page is None else str(figure.page),
    }


def understood(figure: Figure, typed: Typed) -> dict[str, Any]:
    """The fields that are typed other than they stand in the book, as a book writes them.

    A number without a unit is in the unit of the figure; a limit without max or min is on the side
    that the book limits now. Raises NotUnderstood.
    """
    read = {"new": _new, "limit": _limit, "page": _page}
    now = {"new": figure.new, "limit": figure.limit, "page": as_typed(figure)["page"]}
    changed = {}
    for name, text in typed.items():
        meant, written = read[name](figure, text.strip())
        if _gist(meant) != _gist(now[name]):
            changed[name] = written
    left = {"new": figure.new, "limit": figure.limit} | changed
    if changed and figure.unit is None and not left["new"] and not left["limit"]:
        was = " and ".join(each for each in (as_typed(figure)[n] for n in ("new", "limit")) if each)
        raise NotUnderstood("", f"as new and as limit leaves no figure of {figure.name}", (was,))
    return changed


def faults(figure: Figure, typed: Typed) -> dict[str, NotUnderstood]:
    """What is not understood, field by field, all at once."""
    found = {}
    for name, text in typed.items():
        try:
            understood(figure, {name: text})
        except NotUnderstood as error:
            found[name] = error
    return found


def _new(figure: Figure, text: str) -> tuple[Range | None, str | None]:
    if not text:
        return None, None
    meant = parse_range(text, unit=figure.measured_in, what=figure.name)
    _same_kind(figure, text, meant.unit)
    return meant, _with_unit(text, figure.measured_in, parse_range)


def _limit(figure: Figure, text: str) -> tuple[tuple[Limit, ...], str | list[str] | None]:
    sides = [_sided(figure, each) for each in _BETWEEN_LIMITS.split(text) if each]
    limits = tuple(parse_limit(each, unit=figure.measured_in, what=figure.name) for each in sides)
    for each in limits:
        _same_kind(figure, text, each.unit)
    if len({each.sense for each in limits}) < len(limits):
        raise NotUnderstood(text, "is limited twice on one side", ("one max and one min",))
    written = [_with_unit(each, figure.measured_in, parse_limit) for each in sides]
    return limits, (written[0] if len(written) == 1 else written or None)


def _page(figure: Figure, text: str) -> tuple[str, int | str | None]:
    return text, (int(text) if text.isdecimal() else text or None)


def _sided(figure: Figure, text: str) -> str:
    """A bare number as a limit on the one side on which the book limits the figure."""
    if len(figure.limit) != 1 or re.match(r"(max|min)\b", text, re.IGNORECASE):
        return text
    try:
        parse(text, unit=figure.measured_in, what=figure.name)
    except NotUnderstood:
        return text
    return f"{figure.limit[0].sense} {text}"


def _with_unit(text: str, unit: str, read: Any) -> str:
    try:
        read(text)
    except NotUnderstood:
        return f"{text} {unit}"
    return text


def _same_kind(figure: Figure, text: str, unit: str) -> None:
    was, now = kind(figure.measured_in), kind(unit)
    if was != now:
        example = figure.new.typed if figure.new else f"a number in {figure.measured_in}"
        raise NotUnderstood(text, f"is a {now}, and {figure.name} is a {was}", (example,))


def _gist(meant: Any) -> Any:
    """What counts of a range, a limit or a page, however it is typed."""
    match meant:
        case Range():
            return (meant.low, meant.high, meant.unit)
        case Limit():
            return (meant.sense, meant.value, meant.unit)
        case tuple():
            return tuple(_gist(each) for each in meant)
    return meant


def fastening_written(each: Fasteners) -> dict[str, Any]:
    """A fastening as a book writes it."""
    fields = {name.replace("_", "-"): getattr(each, name) for name in each.model_fields_set}
    order = ("count", "what", "thread", "grade", "torque", "page", "note")
    written = {name: fields[name] for name in order if fields.get(name) is not None}
    return written | ({"torque": each.torque.typed} if each.torque else {})


def fastening_typed(each: Fasteners, torque: str, page: str) -> dict[str, Any]:
    """A fastening as a book writes it, with another torque and page.

    torque: a number alone is in the unit of now; empty for none. page: empty for a stand-in.
    Raises NotUnderstood.
    """
    now = each.torque
    unit = now.said if now else "lbf.ft"
    typed = torque.strip()
    meant = parse(typed, unit=unit, what="torque") if typed else None
    if meant and now and (meant.value, meant.unit) == (parse(now.typed, unit=unit).value, unit):
        typed = now.typed
    elif meant and not any(letter.isalpha() for letter in typed):
        typed = f"{typed} {unit}"
    on = page.strip()
    rest = {"torque": typed or None, "page": int(on) if on.isdecimal() else on or None}
    written = {**fastening_written(each), **rest}
    return {name: value for name, value in written.items() if value is not None}
