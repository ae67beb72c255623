"""Faults that a search left standing: found and not put right, or seen and not yet explained."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from shimstock.trade.machine.book import Book, Gate
from shimstock.trade.machine.faults import Sign
from shimstock.trade.machine.state import MachineNow, SearchNow
from shimstock.trade.reach.open_point import OpenPoint


@dataclass(frozen=True)
class Standing:
    """A cause or a dangerous sign that stands. about: cause:KEY or sign:KEY."""

    about: str
    search: int
    what: str
    would_do: str


def causes_standing(now: MachineNow) -> Iterator[Standing]:
    """Causes that were found in a search and are not put right."""
    for search in now.searches:
        day = _day(search.on, now.today)
        for key in search.found:
            what = f"{now.book.causes[key].name} was found in the search of {day}"
            would = _would(search, "put it right, and write that down")
            about = f"cause:{key}"
            yield Standing(about, search.number, f"{what} and is not put right", would)


def signs_standing(now: MachineNow) -> Iterator[Standing]:
    """Signs that can hurt, or forbid running, seen in a search that is not done.

    A sign whose cause is found stands by that cause.
    """
    for search in now.searches:
        for key in search.seen:
            sign = now.book.signs[key]
            explained = not sign.causes.keys().isdisjoint(search.found)
            if not explained and (dangers_of(sign) or sign.forbids):
                yield _sign(now, search, key)


def faults_before(now: MachineNow, gate: Gate) -> Iterator[OpenPoint]:
    """What stands of searches before a gate at which the whole machine is to be ready."""
    for each in (*causes_standing(now), *_signs_before(now, gate)):
        key, where = f"fault:{each.about}", str(each.search)
        yield OpenPoint(key, "fault", where, each.what, 0.0, True, each.would_do)


def faults_against_reading(now: MachineNow, figure: str) -> Iterator[Standing]:
    """What stands against reading a figure for which the engine must run, or be cranked."""
    signs = now.book.signs.values()
    cranked = any(sign.figure == figure and sign.when for sign in signs)
    if now.book.measures[figure].running or cranked:
        yield from causes_standing(now)
        for each in signs_standing(now):
            if now.book.signs[each.about.removeprefix("sign:")].forbids:
                yield each


def _signs_before(now: MachineNow, gate: Gate) -> Iterator[Standing]:
    dangers = _dangers_at(now.book, gate)
    for each in signs_standing(now):
        sign = now.book.signs[each.about.removeprefix("sign:")]
        if sign.forbids or dangers & dangers_of(sign):
            yield each


def dangers_of(sign: Sign) -> frozenset[str]:
    """What can hurt with what the sign shows.

    A sign that takes minutes has dangers of its own, which stand with its check.
    """
    return frozenset() if sign.minutes else frozenset(sign.dangers)


def _dangers_at(book: Book, gate: Gate) -> frozenset[str]:
    """Danger words of a gate's own cautions, and of those of the gates before it."""
    gates = (gate, *(book.gates[key] for key in gate.passed_before))
    cautions = {key for each in gates for key in each.cautions} & book.cautions.keys()
    return frozenset(danger for key in cautions for danger in book.cautions[key].dangers)


def _sign(now: MachineNow, search: SearchNow, key: str) -> Standing:
    day = _day(search.on, now.today)
    how = "goes on" if search.goes_on else "ended without settling it"
    what = f"{now.book.signs[key].name}: seen in the search of {day}, which {how}"
    would = _would(search, "find why, put it right and end the search; or say not seen")
    return Standing(f"sign:{key}", search.number, what, would)


def _would(search: SearchNow, what: str) -> str:
    """What to do in a search; one that is over must be taken up again for it."""
    if search.goes_on:
        return f"in search {search.number}: {what}"
    return f"take search {search.number} up again, and there: {what}"


def _day(on: date, today: date) -> str:
    year = "" if on.year == today.year else f" {on.year}"
    return f"{on.day} {on:%b}{year}"
