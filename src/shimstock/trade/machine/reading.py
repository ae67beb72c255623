"""Reading a book: text in, a checked book out, or everything that is wrong with it at once."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches
from typing import Any

from pydantic import ValidationError

from shimstock.trade.machine.book import (
    Book,
    Cause,
    Caution,
    Entry,
    Figure,
    Gate,
    Joint,
    Part,
    Set,
    Sign,
    Train,
)
from shimstock.trade.machine.crosscheck import crosscheck
from shimstock.trade.machine.merge import lay_over
from shimstock.trade.machine.sheet import (
    BookErrors,
    Path,
    Problem,
    Sheet,
    line_of,
    read_sheet,
    shown_path,
)
from shimstock.trade.machine.starters import starter_names, starter_text

SECTIONS: dict[str, type[Entry]] = {
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


def read_book(text: str, name: str = "book") -> Book:
    """Read a book's text, laid over the starter that it extends.

    text: YAML. name: the file's name, for messages.
    Raises BookErrors with every problem found: file, line, what stands there, what would do.
    """
    sheet = _with_starters(read_sheet(text, name), name, seen=(name,))
    problems: list[Problem] = []
    entries = {
        section: _section(section, model, sheet, name, problems)
        for section, model in SECTIONS.items()
    }
    book = _whole(sheet, entries, name, problems)
    if book is not None:
        named = {section: _keys(sheet.data.get(section)) for section in SECTIONS}
        for path, found, wrong, would in crosscheck(book, named):
            problems.append(_problem(sheet, name, path, found, wrong, would))
    if problems or book is None:
        raise BookErrors(problems)
    return book


def _keys(section: Any) -> frozenset[str]:
    return frozenset(section) if isinstance(section, dict) else frozenset()


def _with_starters(sheet: Sheet, name: str, seen: tuple[str, ...]) -> Sheet:
    base_name = sheet.data.get("extends")
    if base_name is None:
        return sheet
    if base_name in seen or base_name not in starter_names():
        wrong = "extends itself" if base_name in seen else "is not a starter"
        would = f"one of {', '.join(starter_names())} would do"
        file, line = line_of(sheet.layers, ("extends",), name)
        raise BookErrors([Problem(file, line, "extends", str(base_name), wrong, would)])
    file = f"{base_name}.yaml"
    base = _with_starters(read_sheet(starter_text(base_name), file), file, (*seen, base_name))
    return lay_over(base, sheet)


def _section(
    section: str, model: type[Entry], sheet: Sheet, name: str, problems: list[Problem]
) -> dict[str, Any]:
    given = sheet.data.get(section) or {}
    if not isinstance(given, dict):
        wrong, would = "must be a list of names, each with its fields below it", "see `book start`"
        problems.append(_problem(sheet, name, (section,), str(given)[:40], wrong, would))
        return {}
    entries = {}
    for key, fields in given.items():
        filled = (
            {**fields, "kind": "setting"}
            if section == "settings" and isinstance(fields, dict)
            else fields
        )
        try:
            entries[key] = model.model_validate(filled)
        except ValidationError as error:
            problems.extend(_explain(error, model, (section, key), sheet, name))
    return entries


def _whole(
    sheet: Sheet, entries: dict[str, dict[str, Any]], name: str, problems: list[Problem]
) -> Book | None:
    rest = {key: value for key, value in sheet.data.items() if key not in SECTIONS}
    try:
        return Book.model_validate({**rest, **entries})
    except ValidationError as error:
        problems.extend(_explain(error, Book, (), sheet, name))
        return None


def _explain(
    error: ValidationError, model: type[Entry], path: Path, sheet: Sheet, name: str
) -> Iterable[Problem]:
    for each in error.errors():
        where: Path = (*path, *_written(each["loc"]))
        wrong, would = _in_words(each, model)
        if not each["loc"]:
            where = _field_named_first(where, wrong, sheet)
        found = "" if isinstance(each["input"], dict | list) else _shown(each["input"])
        yield _problem(sheet, name, where, found, wrong, would)


def _written(loc: tuple[int | str, ...]) -> Path:
    """Drop the checker's own names of alternatives, which nobody wrote."""
    return tuple(
        step
        for step in loc
        if step not in {"str", "AnyOf", "float", "int"} and not str(step).startswith("literal[")
    )


def _field_named_first(path: Path, wrong: str, sheet: Sheet) -> Path:
    """Point at the field that a message about a whole entry begins with."""
    field = (*path, wrong.partition(" ")[0])
    return field if any(field in lines for lines in sheet.layers) else path


def _in_words(each: Any, model: type[Entry]) -> tuple[str, str]:
    """Say what is wrong and what would do, from the checker's report."""
    field = str(each["loc"][-1]) if each["loc"] else ""
    match each["type"]:
        case "extra_forbidden":
            known = sorted(f.alias or key for key, f in model.model_fields.items())
            return "no such field here", _nearest(field, known)
        case "missing":
            return "is missing", f"a line '{field}: ...' would do"
        case "enum" | "literal_error":
            return "is not one of the words known here", f"{each['ctx']['expected']} would do"
        case "bool_parsing" | "bool_type":
            return "is neither yes nor no", "yes or no would do"
        case "value_error":
            text = str(each["ctx"]["error"])
            wrong, _, would = text.partition("; ")
            return wrong, would
    return str(each["msg"]).lower(), ""


def _nearest(word: str, known: list[str]) -> str:
    near = get_close_matches(word, known, n=1, cutoff=0.6)
    return f"did you mean {near[0]!r}?" if near else f"known are {', '.join(known)}"


def _shown(value: Any) -> str:
    text = str(value)
    return text if len(text) <= 60 else f"{text[:57]}..."


def _problem(sheet: Sheet, name: str, path: Path, found: str, wrong: str, would: str) -> Problem:
    file, line = line_of(sheet.layers, path, name)
    return Problem(file, line, shown_path(path) or "the book", found, wrong, would)
