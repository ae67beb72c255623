"""What one part of a case file says of another: names that must be there, joints in a circle."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import get_close_matches
from typing import Any

from shimstock.trade.faults.case_form import CaseFault, at, shown

SECTIONS = ("joints", "causes", "findings", "checks")
Reference = tuple[str, str, str]
"""Where a name stands, the name, and the section that must have it."""


def at_odds(data: dict[str, Any]) -> Iterator[CaseFault]:
    """Say what does not fit together; whatever has not the form is passed over."""
    names = {section: _ids(data, section) for section in SECTIONS}
    for section in SECTIONS:
        yield from _twice(data, section)
    for where, name, section in _references(data):
        if name not in names[section]:
            yield _unknown(where, name, section, names[section])
    yield from _circles(data)
    yield from _numbers(data)


def _listed(data: Any, section: str) -> Iterator[tuple[str, Any]]:
    """The entries of a list, each with its place."""
    given = data.get(section) if isinstance(data, dict) else None
    if isinstance(given, list):
        for n, each in enumerate(given):
            yield at(at("$", section), n), each


def _entries(data: dict[str, Any], section: str) -> Iterator[tuple[str, dict[str, Any]]]:
    return ((where, e) for where, e in _listed(data, section) if isinstance(e, dict))


def _ids(data: dict[str, Any], section: str) -> set[str]:
    ids = (entry.get("id") for _, entry in _entries(data, section))
    return {each for each in ids if isinstance(each, str)}


def _twice(data: dict[str, Any], section: str) -> Iterator[CaseFault]:
    first: dict[str, str] = {}
    for where, entry in _entries(data, section):
        name = entry.get("id")
        if not isinstance(name, str):
            continue
        if name in first:
            wrong = f"is the name of {first[name]} too"
            yield CaseFault(at(where, "id"), shown(name), wrong, "a name of its own would do")
        first.setdefault(name, where)


def _references(data: dict[str, Any]) -> Iterator[Reference]:
    for section, field, named in (
        ("joints", "needs", "joints"),
        ("findings", "causes", "causes"),
        ("checks", "gives", "findings"),
        ("checks", "joints", "joints"),
        ("checks", "confirms", "causes"),
    ):
        for where, entry in _entries(data, section):
            yield from _named(entry.get(field), at(where, field), named)
    for where, group in _listed(data, "exclusive"):
        yield from _named(group, where, "causes")
    yield from _named(data.get("reported"), "$.reported", "findings")
    yield from _named(data.get("observed"), "$.observed", "findings")
    yield from _named(data.get("open"), "$.open", "joints")


def _named(given: Any, where: str, section: str) -> Iterator[Reference]:
    """The names in a list, or those that are the keys of an object."""
    if isinstance(given, dict):
        yield from ((at(where, name), name, section) for name in given)
    elif isinstance(given, list):
        for n, name in enumerate(given):
            if isinstance(name, str):
                yield at(where, n), name, section


def _unknown(where: str, name: str, section: str, known: set[str]) -> CaseFault:
    near = get_close_matches(name, sorted(known), n=1, cutoff=0.6)
    would = f"did you mean {shown(near[0])}?" if near else "name one of them, or add it there"
    return CaseFault(where, shown(name), f"is not among the {section}", would)


def _circles(data: dict[str, Any]) -> Iterator[CaseFault]:
    """Joints that need each other in a circle, each circle once."""
    needs, places = {}, {}
    for where, entry in _entries(data, "joints"):
        name, given = entry.get("id"), entry.get("needs")
        if isinstance(name, str) and name not in needs:
            places[name] = at(where, "needs")
            needs[name] = (
                [j for j in given if isinstance(j, str)] if isinstance(given, list) else []
            )
    over: set[str] = set()
    for start in needs:
        if circle := _circle_from(start, needs, over):
            wrong = f"goes in a circle: {' needs '.join([*circle, circle[0]])}"
            would = "say which comes off first, and let it need none of the others"
            yield CaseFault(places[circle[0]], shown(needs[circle[0]]), wrong, would)


def _circle_from(start: str, needs: dict[str, list[str]], over: set[str]) -> list[str]:
    """A circle that is met on the way down from a joint, if there is one not met before.

    over: joints that were gone through already; those met now are added.
    """
    way: list[str] = []
    left = [iter([start])]
    while left:
        name = next(left[-1], None)
        if name is None:
            left.pop()
            if way:
                over.add(way.pop())
        elif name in way:
            over.update(way)
            return way[way.index(name) :]
        elif name in needs and name not in over:
            way.append(name)
            left.append(iter(needs[name]))
    return []


def _numbers(data: dict[str, Any]) -> Iterator[CaseFault]:
    """Numbers observed where only seen or not seen makes sense."""
    without = {
        entry["id"]
        for _, entry in _entries(data, "findings")
        if isinstance(entry.get("id"), str) and "reading" not in entry
    }
    observed = data.get("observed")
    for name, said in observed.items() if isinstance(observed, dict) else ():
        if isinstance(said, float) and name in without:
            wrong = f"is a number, and finding {shown(name)} has no reading"
            would = "true or false would do, or a reading at the finding"
            yield CaseFault(at("$.observed", name), shown(said), wrong, would)
