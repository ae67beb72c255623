"""Figures and torques typed for a book that lie far from what they are typed over."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from shimstock.trade.machine.book import Book, Figure
from shimstock.trade.machine.sheet import Problem, read_sheet, shown_path
from shimstock.trade.measure.named import with_article
from shimstock.trade.measure.plausible import limit_band, plausible
from shimstock.trade.numbers.limits import Range, parse_limit, parse_range
from shimstock.trade.numbers.not_understood import HardlyMeant, NotUnderstood
from shimstock.trade.numbers.quantity import Quantity, convert, kind, show
from shimstock.trade.numbers.slips import slips

TORQUE_OFF = 4
"""A torque so many times the book's, or less than such a part of it, is asked about."""

TIMES_OFF = 8
"""An end of a figure so many times the book's, or such a part of it, looks like a decade's slip."""

FIELDS = ("new", "limit")


def check_figure(figure: Figure, fields: Mapping[str, Any]) -> None:
    """Refuse figures that a reading of this figure could hardly have, or that are a decade off.

    figure: as the book has it. fields: new and limit as a book writes them; others are left aside.
    Raises HardlyMeant with what was likely meant. Source: common practice, no source.
    """
    far, bounds, why = _asked_about(figure, fields)
    if not far or bounds is None:
        return
    typed = ", ".join(each.typed for each in far)
    lie = "lies" if len(far) == 1 else "lie"
    wrong = f"{lie} {why}: a slipped digit? If it is meant, say so"
    raise HardlyMeant(typed, wrong, _likely(figure, far, bounds))


def check_torque(now: Quantity, typed: str, meant: Quantity) -> None:
    """Refuse a torque four times the book's, or a quarter of it, unless it is meant.

    now: as the book has it. typed, meant: the text, and what it says.
    Raises HardlyMeant with what was likely meant. Source: common practice, no source.
    """
    low, high = now.value / TORQUE_OFF, now.value * TORQUE_OFF
    value = convert(meant.value, meant.unit, now.unit)
    if low <= value <= high:
        return
    likely = slips(value, now.unit, low, high, near=now.value)
    wrong = (
        f"is far from the {show(now.value, now.unit)} that the book has: a slipped digit? "
        "If it is meant, say so"
    )
    raise HardlyMeant(typed, wrong, tuple(show(each.value, now.unit) for each in likely))


def far_from_starter(text: str, file: str, starter: Book) -> list[Problem]:
    """Figures of a book's text that can hardly be those of the starter's entry they lie over.

    text: the book's own, faultless. file: its name, for the lines. starter: what it extends. An
    entry that says what is plausible, if only by an empty field, means what it says.
    """
    sheet = read_sheet(text, file)
    found = []
    for section in ("figures", "settings"):
        for key, fields in (sheet.data.get(section) or {}).items():
            below = starter.measures.get(key)
            if below is None or not isinstance(fields, dict) or "plausible" in fields:
                continue
            far, bounds, why = _asked_about(below, fields)
            for each in far:
                at = (section, key, each.field)
                line = sheet.layers[0].get(at, (file, 1))[1]
                likely = " or ".join(_likely(below, [each], bounds)) if bounds else ""
                do = f"{likely} would do; " if likely else ""
                would = f"a slipped digit? {do}if it is meant, leave it so"
                found.append(Problem(file, line, shown_path(at), each.typed, f"lies {why}", would))
    return found


@dataclass(frozen=True)
class _Far:
    """A field with an end outside what is plausible. ends: all its ends, in the figure's unit."""

    field: str
    typed: str
    ends: tuple[float, ...]
    shape: str
    """As it is written, with {} for each end."""


def _asked_about(figure: Figure, fields: Mapping[str, Any]) -> tuple[list[_Far], Range | None, str]:
    """The fields that look like slips, the range to look for what was meant in, and why."""
    read = [each for name in FIELDS for each in _read(figure, name, fields.get(name))]
    bounds = plausible(figure)
    if bounds and (far := [e for e in read if not all(bounds.holds(end) for end in e.ends)]):
        leaves = f"which {with_article(figure.name)} can hardly leave"
        return far, bounds, f"outside {_said(bounds)}, {leaves}"
    now = {"new": figure.as_new, "limit": figure.allowed}
    far = [each for each in read if _decade_off(each, now[each.field])]
    if not far:
        return [], None, ""
    ends = [abs(end) for each in far for end in _ends(now[each.field]) if end]
    near = Range(min(ends) / 2, max(ends) * 2, figure.measured_in, "about what the book has")
    has = ", ".join(dict.fromkeys(each.typed for e in far if (each := now[e.field])))
    return far, near, f"{TIMES_OFF} times or more from what the book has, {has}"


def _decade_off(far: _Far, now: Range | None) -> bool:
    """Whether every end is many times what the book has, or a small part of it."""
    ends = [end for end in _ends(now) if end]
    return bool(ends) and all(
        end and not any(1 / TIMES_OFF < abs(end / each) < TIMES_OFF for each in ends)
        for end in far.ends
    )


def _ends(now: Range | None) -> list[float]:
    return [end for end in (now.low, now.high) if end is not None] if now else []


def _read(figure: Figure, name: str, written: Any) -> Iterator[_Far]:
    """The ends of a field as it is written; nothing where it cannot be read as one."""
    unit = figure.measured_in
    texts = written if isinstance(written, list) else [] if written is None else [written]
    for text in texts:
        try:
            yield _new(str(text), unit) if name == "new" else _limit(str(text), unit)
        except NotUnderstood:
            continue


def _new(text: str, unit: str) -> _Far:
    meant = parse_range(text, unit=unit)
    if kind(meant.unit) != kind(unit):
        raise NotUnderstood(text, f"is no {kind(unit)}")
    ends = meant.convert(unit)
    low, high = ends.low, ends.high
    if low == high and low is not None:
        return _Far("new", text, (low,), "{}")
    shape = f"{'{}' if low is not None else ''} .. {'{}' if high is not None else ''}".strip()
    return _Far("new", text, tuple(end for end in (low, high) if end is not None), shape)


def _limit(text: str, unit: str) -> _Far:
    meant = parse_limit(text, unit=unit)
    if kind(meant.unit) != kind(unit):
        raise NotUnderstood(text, f"is no {kind(unit)}")
    return _Far("limit", text, (meant.convert(unit).value,), f"{meant.sense} {{}}")


def _likely(figure: Figure, far: Sequence[_Far], bounds: Range) -> tuple[str, ...]:
    """What all of them mean if the same slip was made in each; nothing where none explains all."""
    unit = figure.measured_in
    if bounds.low is None or bounds.high is None:
        return ()
    band = limit_band(figure)
    ways = [
        {
            slip.how.partition(":")[0]: show(slip.value, unit)
            for slip in slips(end, unit, bounds.low, bounds.high, band=band)
        }
        for each in far
        for end in each.ends
    ]
    common = [how for how in ways[0] if all(how in way for way in ways)]
    return tuple(_written(far, [way[how] for way in ways]) for how in common)


def _written(far: Sequence[_Far], ends: list[str]) -> str:
    """The fields with other ends: each unit once, at the end of its field."""
    left = iter(ends)
    texts = []
    for each in far:
        said = [next(left) for _ in each.ends]
        bare = [end.rpartition(" ")[0] for end in said[:-1]]
        texts.append(each.shape.format(*bare, said[-1]))
    return ", ".join(texts)


def _said(bounds: Range) -> str:
    low, high = (show(e, bounds.unit) if e is not None else "" for e in (bounds.low, bounds.high))
    if low and high:
        return f"{low} to {high}"
    return f"at least {low}" if low else f"at most {high}"
