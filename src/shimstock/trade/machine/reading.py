"""Reading a book: text in, a checked book out, or everything that is wrong with it at once."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import lru_cache
from itertools import chain
from typing import Any, NamedTuple

from pydantic import ValidationError

from shimstock.trade.machine.book import (
    Book,
    Cause,
    Caution,
    Datum,
    Entry,
    Figure,
    Gate,
    Joint,
    Part,
    Set,
    Sign,
    Train,
)
from shimstock.trade.machine.crosscheck import crosscheck, engine_needed
from shimstock.trade.machine.explain import explain, fields_of, problem
from shimstock.trade.machine.merge import lay_over
from shimstock.trade.machine.sheet import BookErrors, Problem, Sheet, line_of, read_sheet
from shimstock.trade.machine.starters import starter_names, starter_text

SECTIONS: dict[str, type[Entry]] = {
    "data": Datum,
    "parts": Part,
    "joints": Joint,
    "sets": Set,
    "figures": Figure,
    "settings": Figure,
    "trains": Train,
    "causes": Cause,
    "signs": Sign,
    "cautions": Caution,
    "gates": Gate,
}
"""The sections of a book and what stands in each."""


def read_book(
    text: str,
    name: str = "book",
    *,
    starter: Callable[[str], str] = starter_text,
    names: Callable[[], Iterable[str]] = starter_names,
    kept: bool = False,
) -> Book:
    """Read a book's text, laid over the starter that it extends.

    text: YAML. name: the file's name, for messages.
    starter: the text of a starter, by its name; names: those there are. Without them, the starters
    that come with the program. kept: it was taken before, and is not held to rules that came since.
    Raises BookErrors with every problem found: file, line, what stands there, what would do.
    """
    starters = _Starters(starter, names)
    sheet = _with_starters(_sheet(text, name), name, starters, seen=(name,))
    problems: list[Problem] = list(sheet.problems)
    entries = {
        section: _section(section, model, sheet, name, problems)
        for section, model in SECTIONS.items()
    }
    book = _whole(sheet, entries, name, problems)
    if book is not None and not _misshapen(sheet):
        named = {section: _keys(sheet.data.get(section)) for section in SECTIONS}
        found_wrong = chain(crosscheck(book, named), () if kept else engine_needed(book))
        for path, found, wrong, would in found_wrong:
            problems.append(problem(sheet, name, path, found, wrong, would))
    if problems or book is None:
        raise BookErrors(problems)
    return book


def _keys(section: Any) -> frozenset[str]:
    return frozenset(section) if isinstance(section, dict) else frozenset()


def _misshapen(sheet: Sheet) -> bool:
    """Whether a section holds no entries at all, so that everything else would miss them."""
    return any(not isinstance(sheet.data.get(section) or {}, dict) for section in SECTIONS)


class _Starters(NamedTuple):
    """Where starters come from."""

    text: Callable[[str], str]
    names: Callable[[], Iterable[str]]


def _with_starters(sheet: Sheet, name: str, starters: _Starters, seen: tuple[str, ...]) -> Sheet:
    base_name = sheet.data.get("extends")
    if base_name is None:
        return sheet
    known = tuple(starters.names())
    if base_name in seen or base_name not in known:
        wrong = "extends itself" if base_name in seen else "is not a starter"
        would = f"one of {', '.join(known)} would do"
        file, line = line_of(sheet.layers, ("extends",), name)
        extends = Problem(file, line, "extends", str(base_name), wrong, would)
        raise BookErrors([*sheet.problems, extends])
    file = f"{base_name}.yaml"
    base = _sheet(starters.text(base_name), file)
    return lay_over(_with_starters(base, file, starters, (*seen, base_name)), sheet)


@lru_cache(maxsize=16)  # a starter is long, and lies below every book of its kind
def _sheet(text: str, file: str) -> Sheet:
    return read_sheet(text, file)


def _section(
    section: str, model: type[Entry], sheet: Sheet, name: str, problems: list[Problem]
) -> dict[str, Any]:
    given = sheet.data.get(section) or {}
    if not isinstance(given, dict):
        wrong, would = "must be a list of names, each with its fields below it", "see `book start`"
        problems.append(problem(sheet, name, (section,), str(given)[:40], wrong, would))
        return {}
    entries = {}
    for key, fields in given.items():
        try:
            entries[key] = model.model_validate(_filled(section, model, fields))
        except ValidationError as error:
            problems.extend(explain(error, model, (section, key), sheet, name))
    return entries


def _filled(section: str, model: type[Entry], fields: Any) -> Any:
    """The fields that have something in them; a setting is one by where it stands."""
    if not isinstance(fields, dict):
        return fields
    known = fields_of(model)
    filled = {key: value for key, value in fields.items() if value is not None or key not in known}
    return {**filled, "kind": "setting"} if section == "settings" else filled


def _whole(
    sheet: Sheet, entries: dict[str, dict[str, Any]], name: str, problems: list[Problem]
) -> Book | None:
    rest = {key: value for key, value in sheet.data.items() if key not in SECTIONS}
    try:
        return Book.model_validate({**rest, **entries})
    except ValidationError as error:
        problems.extend(explain(error, Book, (), sheet, name))
        return None
