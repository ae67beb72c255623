"""A book's text as plain values, with the line on which each of them stands."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

import yaml

Path = tuple[str | int, ...]
"""Where something stands in a book: section, entry, field, place in a list."""
Lines = dict[Path, tuple[str, int]]
"""The file and line of every path in one text."""


@dataclass(frozen=True)
class Problem:
    """One thing wrong in a book: where, what stands there, what is wrong, what would do."""

    file: str
    line: int
    where: str
    found: str
    wrong: str
    would_do: str = ""

    def __str__(self) -> str:
        found = f" ({self.found!r})" if self.found else ""
        would = f"; {self.would_do}" if self.would_do else ""
        return f"{self.file}:{self.line}: {self.where}{found}: {self.wrong}{would}"


class BookErrors(ValueError):
    """Everything that is wrong in a book, all at once."""

    def __init__(self, problems: list[Problem]) -> None:
        self.problems = tuple(sorted(problems, key=lambda each: (each.file, each.line)))
        super().__init__("\n".join(str(each) for each in self.problems))


@dataclass(frozen=True)
class Sheet:
    """Plain values of a book, and for each text they came from, newest first, where each stands.

    problems: what is wrong with how they were written, though they can be read.
    """

    data: dict[str, Any]
    layers: tuple[Lines, ...]
    problems: tuple[Problem, ...] = ()


class _Loader(yaml.CSafeLoader):
    """YAML 1.2 scalars only, so that `on`, `off`, `no` and `1:30` stay what was typed."""

    yaml_implicit_resolvers: dict[str, Any] = {}  # noqa: RUF012 - the library's own class attribute


for _tag, _pattern, _first in (
    ("bool", r"true|false", "tf"),
    ("int", r"[-+]?[0-9]+", "-+0123456789"),
    ("float", r"[-+]?[0-9]*\.[0-9]+|[-+]?[0-9]+\.", "-+.0123456789"),
    ("null", r"~|null|", "~n\0"),
):
    _Loader.add_implicit_resolver(
        f"tag:yaml.org,2002:{_tag}",
        re.compile(rf"^(?:{_pattern})$"),
        [*_first, *([""] * (_tag == "null"))],
    )


def read_sheet(text: str, file: str) -> Sheet:
    """Read a book's text into plain values with their lines.

    A key given twice is among the sheet's problems; the last one counts.
    Raises BookErrors for text that is not YAML, or a book that is not a map.
    """
    try:
        node = yaml.compose(text, Loader=_Loader)
    except yaml.MarkedYAMLError as error:
        raise BookErrors([_not_yaml(text, file, error)]) from None
    except yaml.reader.ReaderError as error:
        raise BookErrors([_not_text(text, file, error)]) from None
    if not isinstance(node, yaml.MappingNode):
        wrong, would = "is not a book", "a line such as 'book: my-tractor' must come first"
        raise BookErrors([Problem(file, 1, "the whole file", text.strip()[:40], wrong, would)])
    if _too_many(node):
        wrong, would = "names itself, or much over and over", "write it out where it is meant"
        raise BookErrors([Problem(file, 1, "the whole file", text.strip()[:40], wrong, would)])
    lines: Lines = {}
    problems: list[Problem] = []
    data = _plain(node, (), file, lines, problems)
    return Sheet(data, (lines,), tuple(problems))


MOST_ENTRIES = 200_000
"""As many as no book has: what is named again and again grows beyond any machine."""


def _too_many(root: yaml.Node) -> bool:
    """Whether a sheet, written out in full, holds more than any book, or itself."""
    counted: dict[int, int] = {}

    def count(node: yaml.Node) -> int:
        if id(node) not in counted:
            counted[id(node)] = MOST_ENTRIES + 1  # while it is counted: met again, it holds itself
            held = node.value if isinstance(node, yaml.CollectionNode) else ()
            flat = (each for item in held for each in (item if type(item) is tuple else (item,)))
            counted[id(node)] = 1 + sum(map(count, flat))
        return counted[id(node)]

    return count(root) > MOST_ENTRIES


_INDENT_WITH_TAB = re.compile(r" *\t")
_COLON_IN_VALUE = re.compile(
    r"\s*(?:- )?([^\s:'\"{\[]+): +([^\s'\"{\[&|>].*: .*|[^\s'\"{\[&|>].*:)\s*"
)


def _not_yaml(text: str, file: str, error: yaml.MarkedYAMLError) -> Problem:
    rows = [*text.splitlines(), ""]
    marks = [mark.line for mark in (error.context_mark, error.problem_mark) if mark]
    for at in marks:
        row = rows[min(at, len(rows) - 1)]
        if _INDENT_WITH_TAB.match(row):
            wrong, would = "has a tab before its text", "use spaces there, two for each step in"
            return Problem(file, at + 1, "this line", row.strip(), wrong, would)
        if colon := _COLON_IN_VALUE.fullmatch(row):
            wrong = "has a second colon, which would begin a new field"
            would = f"put it in quotes: {colon[1]}: {_quoted(colon[2])}"
            return Problem(file, at + 1, "this line", row.strip(), wrong, would)
    line = marks[0] if marks else 0
    found = rows[line].strip() if line < len(rows) else ""
    wrong = f"cannot be read: {error.problem or error.context}"
    would = "check the indent, the colon and its space, and that brackets and quotes are closed"
    return Problem(file, line + 1, "this line", found, wrong, would)


def _not_text(text: str, file: str, error: yaml.reader.ReaderError) -> Problem:
    line = text.count("\n", 0, error.position) + 1
    found = f"character {error.position - text.rfind(chr(10), 0, error.position)}"
    wrong, would = "is none of a text", "save the book as plain text (UTF-8)"
    return Problem(file, line, "this line", found, wrong, would)


def _quoted(text: str) -> str:
    return f"'{text}'" if '"' in text else f'"{text}"'


def _plain(node: yaml.Node, path: Path, file: str, lines: Lines, problems: list[Problem]) -> Any:
    lines[path] = (file, node.start_mark.line + 1)
    if isinstance(node, yaml.MappingNode):
        found: dict[str, Any] = {}
        for key_node, value_node in node.value:
            key = str(key_node.value)
            line = key_node.start_mark.line + 1
            if key in found:
                wrong, would = "stands twice", "keep one of the two"
                problems.append(Problem(file, line, shown_path((*path, key)), key, wrong, would))
            found[key] = _plain(value_node, (*path, key), file, lines, problems)
            lines[(*path, key)] = (file, line)
        return found
    if isinstance(node, yaml.SequenceNode):
        return [
            _plain(each, (*path, at), file, lines, problems) for at, each in enumerate(node.value)
        ]
    return _scalar(node)


def _scalar(node: yaml.Node) -> Any:
    text = str(node.value)
    match node.tag.rpartition(":")[2]:
        case "bool":
            return text == "true"
        case "int" if not text.startswith("+"):
            return int(text)
        case "float" if not text.startswith("+"):
            return float(text)
        case "null":
            return None
    return text


def shown_path(path: Path) -> str:
    """Write a path as a person reads it.

    >>> shown_path(("joints", "timing-cover", "uses", 0, "gasket"))
    'joints > timing-cover > uses > 1st > gasket'
    """
    return " > ".join(_ordinal(step + 1) if isinstance(step, int) else step for step in path)


def _ordinal(number: int) -> str:
    ending = {1: "st", 2: "nd", 3: "rd"}.get(number if number < 20 else number % 10, "th")
    return f"{number}{ending}"


def line_of(layers: tuple[Lines, ...], path: Path, file: str) -> tuple[str, int]:
    """Find the file and line of a path, or of the nearest thing above it that has one.

    The newest text that has anything of the entry counts before those below it, since that is
    where it was changed.
    """
    for shortest in (2, 1):
        for lines in layers:
            for length in range(len(path), shortest - 1, -1):
                if path[:length] in lines:
                    return lines[path[:length]]
    return (file, 1)
