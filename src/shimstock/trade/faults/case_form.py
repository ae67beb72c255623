"""What in a case file does not have the form, each with its place and what would do."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from math import isfinite
from typing import Any

from shimstock.trade.faults.case_schema import Schema

SHORT = 40
SLIP = 0.85
"""How like a field's name another name must be to be a slip, and not a field of somebody's own."""
_KINDS = {
    "object": "an object {…}",
    "array": "a list […]",
    "string": "a word",
    "number": "a number",
    "boolean": "true or false",
    "null": "null",
}


@dataclass(frozen=True)
class CaseFault:
    """One thing wrong in a case file: where, what stands there, what is wrong, what would do.

    where: a JSON path such as `$.causes[3].prior`.
    """

    where: str
    found: str
    wrong: str
    would_do: str

    def __str__(self) -> str:
        found = f" ({self.found})" if self.found else ""
        return f"{self.where}{found}: {self.wrong}; {self.would_do}"


class CaseErrors(ValueError):
    """Everything that is wrong in a case file, all at once."""

    def __init__(self, faults: list[CaseFault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(str(each) for each in faults))


class JsonObject(dict[str, Any]):
    """A JSON object with the keys that were written twice in it; the last of each counts."""

    def __init__(self, pairs: list[tuple[str, Any]]) -> None:
        super().__init__(pairs)
        keys = [key for key, _ in pairs]
        self.twice = (
            [] if len(keys) == len(self) else sorted({k for k in keys if keys.count(k) > 1})
        )


def at(path: str, step: str | int) -> str:
    """A JSON path one step further in.

    >>> at(at("$.causes", 3), "prior"), at("$.observed", "fan rocks")
    ('$.causes[3].prior', "$.observed['fan rocks']")
    """
    if isinstance(step, int):
        return f"{path}[{step}]"
    return f"{path}.{step}" if re.fullmatch(r"[A-Za-z_]\w*", step) else f"{path}[{step!r}]"


def shown(value: Any) -> str:
    """What stands in a place, short enough for a line."""
    if isinstance(value, dict | list):
        return f"{'an object' if isinstance(value, dict) else 'a list'} of {len(value)}"
    if isinstance(value, float):
        return f"{value:g}"
    text = json.dumps(value)
    return text if len(text) <= SHORT else f"{text[: SHORT - 1]}…"


def misfits(value: Any, form: Schema, path: str = "$") -> Iterator[CaseFault]:
    """Hold a value against a form, and all that is inside it; numbers must be floats."""
    if wrong := _misfit(value, form):
        yield CaseFault(path, shown(value), *wrong)
    elif isinstance(value, dict):
        yield from _in_object(value, form, path)
    elif isinstance(value, list):
        for n, each in enumerate(value):
            yield from misfits(each, _form_of(form, n), at(path, n))


def _misfit(value: Any, form: Schema) -> tuple[str, str] | None:
    """What is wrong with a value as a whole, and what would do."""
    if "enum" in form:
        wanted = " or ".join(json.dumps(each) for each in form["enum"])
        return None if value in form["enum"] else ("is not known here", f"{wanted} would do")
    if not form:
        return None
    allowed = form["type"] if isinstance(form["type"], list) else [form["type"]]
    kind = _kind(value)
    if kind not in allowed:
        return f"is {_KINDS[kind]}", f"{' or '.join(_KINDS[a] for a in allowed)} would do"
    match value:
        case float():
            return _number(value, form)
        case str():
            return _word(value, form)
        case list():
            return _list(value, form)
    return None


def _kind(value: Any) -> str:
    if value is None:
        return "null"
    kinds = {bool: "boolean", float: "number", str: "string", list: "array"}
    return kinds.get(type(value), "object")


def _number(value: float, form: Schema) -> tuple[str, str] | None:
    low, high = form["minimum"], form["maximum"]
    if low <= value <= high:
        return None
    wrong = "is out of range" if isfinite(value) else "is no number to reckon with"
    return wrong, f"a number from {low:g} to {high:g} would do"


def _word(value: str, form: Schema) -> tuple[str, str] | None:
    if "pattern" not in form:
        return None
    most = form["maxLength"]
    if len(value) > most:
        return f"is {len(value)} characters long", f"up to {most} would do"
    if not re.fullmatch(form["pattern"].strip("^$"), value):
        return "is empty, or has what cannot be printed", "plain characters would do"
    return None


def _list(value: list[Any], form: Schema) -> tuple[str, str] | None:
    least, most = form.get("minItems", 0), form["maxItems"]
    if not least <= len(value) <= most:
        wanted = f"{least}" if least == most else f"{least} to {most}"
        return f"holds {len(value)}", f"{wanted} would do"
    plain = [each for each in value if isinstance(each, str)]
    if form.get("uniqueItems") and len(set(plain)) < len(plain):
        return "names one twice", "each once would do"
    return None


def _form_of(form: Schema, n: int) -> Schema:
    """The form of an entry of a list."""
    found: Schema = form["prefixItems"][n] if "prefixItems" in form else form["items"]
    return found


def _in_object(value: dict[str, Any], form: Schema, path: str) -> Iterator[CaseFault]:
    for key in getattr(value, "twice", ()):
        yield CaseFault(at(path, key), shown(value[key]), "stands twice", "keep one of the two")
    for key in form.get("required", ()):
        if key not in value:
            yield CaseFault(at(path, key), "", "is missing", f'"{key}": … would do')
    known = form.get("properties", {})
    others = form.get("additionalProperties")
    for key, each in value.items():
        if key in known or others is not None:
            yield from misfits(each, known.get(key, others), at(path, key))
        elif meant := get_close_matches(key, known.keys() - value.keys(), n=1, cutoff=SLIP):
            would = f'did you mean "{meant[0]}"?'
            yield CaseFault(at(path, key), shown(each), "is not a field here", would)
