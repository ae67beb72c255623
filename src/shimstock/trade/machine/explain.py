"""What is wrong in a book, in plain words, on the line of the one who can mend it."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import get_close_matches
from typing import Any, get_args

from pydantic import ValidationError

from shimstock.trade.machine.entry import Entry
from shimstock.trade.machine.sheet import Path, Problem, Sheet, line_of, shown_path

_PLAIN = {
    "string_type": ("is no plain text", "a word or a number would do"),
    "int_type": ("is no whole number", "a number such as 12 would do"),
    "int_parsing": ("is no whole number", "a number such as 12 would do"),
    "float_type": ("is no number", "a number such as 0.5 would do"),
    "float_parsing": ("is no number", "a number such as 0.5 would do"),
    "tuple_type": ("is no list", "a list such as [one, two] would do"),
}
"""The checker's own names for what it found, and what a person is told."""
_FIELDS_WANTED = frozenset({"model_type", "model_attributes_type", "dict_type"})


def problem(
    sheet: Sheet, name: str, path: Path, found: str, wrong: str, would: str = ""
) -> Problem:
    """One fault, on a line of the book itself and never of the starter below it.

    A starter is whole by itself, so what is wrong in it after a book was laid over it was brought
    about by that book: by the entry that is named, or by an entry taken away.
    name: the book's own file. path, found, wrong, would: where, what stands there, what is wrong
    and what would do.
    """
    file, line = line_of(sheet.layers, path, name)
    where = shown_path(path) or "the book"
    if file == name:
        return Problem(file, line, where, found, wrong, would)
    for cause in _entries_called(sheet, found):
        its_line = sheet.layers[0][cause][1]
        if cause[1] in (sheet.data.get(cause[0]) or {}):
            return Problem(name, its_line, shown_path(cause), "", f"{where} {wrong}", would)
        gone = f"is taken away here, but {where} needs it"
        return Problem(
            name, its_line, shown_path(cause), "", gone, "keep it, or change that one too"
        )
    below = f"{wrong} ({file}, line {line}, with this book laid over it)"
    return Problem(name, line_of(sheet.layers, ("extends",), name)[1], where, found, below, would)


def _entries_called(sheet: Sheet, key: str) -> list[tuple[str, str]]:
    """Entries of a name that the book itself speaks of, those that it takes away first."""
    own = [(str(p[0]), key) for p in sheet.layers[0] if len(p) == 2 and p[1] == key]
    return sorted(own, key=lambda p: p[1] in (sheet.data.get(p[0]) or {}))


def explain(
    error: ValidationError, model: type[Entry], path: Path, sheet: Sheet, name: str
) -> Iterator[Problem]:
    """Everything that the checker found wrong with one entry, or with the book itself."""
    errors = error.errors()
    lacking = [str(each["loc"][-1]) for each in errors if each["type"] == "missing"]
    meant = _meant(path, sheet) if lacking else ""
    if meant:
        wrong = f"is not in the starter, and a new entry needs {' and '.join(lacking)} too"
        yield problem(sheet, name, path, "", wrong, f"did you mean {meant!r}?")
    for each in errors:
        if meant and each["type"] == "missing":
            continue
        where: Path = (*path, *_written(each["loc"]))
        wrong, would = _in_words(each, model)
        if not each["loc"]:
            where = _field_named_first(where, wrong, sheet)
        found = "" if isinstance(each["input"], dict | list | None) else _shown(each["input"])
        yield problem(sheet, name, where, found, wrong, would)


def _meant(path: Path, sheet: Sheet) -> str:
    """The starter's entry that a name is nearly; nothing where it is one of them, or like none."""
    if len(path) != 2:
        return ""
    known = {str(p[1]) for lines in sheet.layers[1:] for p in lines if _beside(p, path)}
    near = get_close_matches(str(path[1]), sorted(known), n=1, cutoff=0.6)
    return "" if path[1] in known or not near else near[0]


def _beside(one: Path, other: Path) -> bool:
    return len(one) == 2 and one[0] == other[0]


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
            return "no such field here", _in_its_place(field, model)
        case "missing":
            return "is missing", f"a line '{field}: ...' would do"
        case "enum" | "literal_error":
            return "is not one of the words known here", f"{each['ctx']['expected']} would do"
        case "bool_parsing" | "bool_type":
            return "is neither yes nor no", "yes or no would do"
        case "value_error":
            wrong, _, would = str(each["ctx"]["error"]).partition("; ")
            return wrong, would
        case kind if kind in _FIELDS_WANTED:
            return "needs its fields below it", "each on a line of its own, such as 'name: ...'"
        case kind if kind in _PLAIN:
            return _PLAIN[kind]
    return str(each["msg"]).lower(), ""


def fields_of(model: type[Entry]) -> list[str]:
    """The names of an entry's fields as a book writes them."""
    return sorted(each.alias or key for key, each in model.model_fields.items())


def _in_its_place(field: str, model: type[Entry]) -> str:
    """Below which field one belongs that stands too far out, or which was probably meant."""
    for key, each in model.model_fields.items():
        for within in _models_in(each.annotation):
            if field in fields_of(within):
                below = each.alias or key
                return f"it stands below {below!r}, as {below}: {{{field}: ...}}"
    return nearest(field, fields_of(model))


def _models_in(annotation: Any) -> Iterator[type[Entry]]:
    if isinstance(annotation, type) and issubclass(annotation, Entry):
        yield annotation
    for each in get_args(annotation):
        yield from _models_in(each)


def nearest(word: str, known: list[str]) -> str:
    """The known word that was probably meant, or all of them."""
    near = get_close_matches(word, known, n=1, cutoff=0.7)
    return f"did you mean {near[0]!r}?" if near else f"known are {', '.join(known)}"


def _shown(value: Any) -> str:
    text = str(value)
    return text if len(text) <= 60 else f"{text[:57]}..."
