"""A book's text with one entry corrected; every other line of the file stays as it was typed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from io import StringIO
from textwrap import dedent, indent
from typing import TYPE_CHECKING, Any

import yaml

from shimstock.trade.machine.sheet import BookErrors, read_sheet
from shimstock.trade.numbers.not_possible import NotPossible

if TYPE_CHECKING:
    from ruamel.yaml import YAML

Fields = Mapping[str, Any]
"""Fields of an entry as a book writes them; an empty one is taken away."""

STEP = 2
"""How far an entry is set in below its section, where the book does not show it."""


def corrected(text: str, section: str, key: str, fields: Fields) -> str:
    """A book's text with some fields of one entry written anew.

    text: the book's own text, which may have nothing of the entry yet: it is then laid over the
    starter's entry and holds only these fields. section, key: where the entry stands.
    fields: the new values; None takes a field away.
    Raises NotPossible for text that cannot be mended entry by entry.
    """
    from ruamel.yaml.error import YAMLError

    wanted = _with(_plain(text), section, key, fields)
    try:
        new = _put(text, section, key, fields)
        as_wanted = _plain(new) == wanted
    except (YAMLError, BookErrors):
        as_wanted = False
    if not as_wanted:
        raise _by_hand(key)
    return new


def _put(text: str, section: str, key: str, fields: Fields) -> str:
    lines = text.splitlines()
    root = yaml.compose(text, Loader=yaml.CSafeLoader)
    at = _found(root, section, len(lines))
    if at is None:
        return _joined([*_bare_end(lines), "", *_written({section: {key: dict(fields)}})])
    if at.flow:
        return _rewritten(lines, at, (section, key), fields)
    entry = _found(at.node, key, at.end)
    if entry is None:
        return _added(lines, at, key, fields)
    return _rewritten(lines, entry, (key,), fields)


@dataclass(frozen=True)
class _Lines:
    """Where something stands: its value, its first line, the line after its last, how far in."""

    node: yaml.Node
    first: int
    end: int
    column: int

    @property
    def flow(self) -> bool:
        """Whether it is written within braces, all entries of it in a row."""
        return isinstance(self.node, yaml.MappingNode) and bool(self.node.flow_style)


def _found(above: yaml.Node | None, key: str, end: int) -> _Lines | None:
    """A key of a map; end: the line after the map's last."""
    pairs = above.value if isinstance(above, yaml.MappingNode) else []
    firsts = [name.start_mark.line for name, _ in pairs] + [end]
    for number, (name, value) in enumerate(pairs):
        if str(name.value) == key:
            return _Lines(value, firsts[number], firsts[number + 1], name.start_mark.column)
    return None


def _rewritten(lines: list[str], at: _Lines, path: tuple[str, ...], fields: Fields) -> str:
    """Only the lines of this one thing written anew, with their comments, order and quotes."""
    end = at.first + len(_bare_end(lines[at.first : at.end]))
    writer = _writer()
    block = writer.load(dedent(_joined(lines[at.first : end])))
    entry = _entry(block, path)
    for name, value in fields.items():
        entry[name] = _laid(entry.get(name), value)
    out = StringIO()
    writer.dump(block, out)
    new = indent(out.getvalue(), " " * at.column).splitlines()
    return _joined([*lines[: at.first], *new, *lines[end:]])


def _laid(old: Any, new: Any) -> Any:
    """A new value in the place of an old one; within maps and lists only what is another."""
    if isinstance(old, dict) and isinstance(new, dict):
        for name in [name for name in old if name not in new]:
            old.pop(name)
        for name, value in new.items():
            old[name] = _laid(old.get(name), value)
        return old
    if isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
        for number, value in enumerate(new):
            old[number] = _laid(old[number], value)
        return old
    return old if old == new else new


def _entry(block: Any, path: tuple[str, ...]) -> Any:
    """The fields at a path, made where there are none."""
    for step in path:
        if not block.get(step):
            block[step] = type(block)()
        block = block[step]
    return block


def _added(lines: list[str], at: _Lines, key: str, fields: Fields) -> str:
    """A new entry below the last one of its section."""
    end = at.first + len(_bare_end(lines[at.first : at.end]))
    pairs = at.node.value if isinstance(at.node, yaml.MappingNode) else []
    column = pairs[-1][0].start_mark.column if pairs else at.column + STEP
    apart = [""] if "" in (line.strip() for line in lines[at.first : end]) else []
    entry = [" " * column + line for line in _written({key: dict(fields)})]
    return _joined([*lines[:end], *apart, *entry, *lines[end:]])


def _bare_end(lines: list[str]) -> list[str]:
    """Without blank lines and comments at the end, which belong to what comes next."""
    kept = list(lines)
    while kept and (not kept[-1].strip() or kept[-1].lstrip().startswith("#")):
        kept.pop()
    return kept


def _written(block: dict[str, Any]) -> list[str]:
    out = StringIO()
    _writer().dump(block, out)
    return out.getvalue().splitlines()


def _writer() -> YAML:
    from ruamel.yaml import YAML

    writer = YAML()  # it keeps comments and order
    writer.preserve_quotes = True
    writer.width = 10_000  # no line of a person's is broken anew
    writer.indent(mapping=STEP, sequence=STEP + 2, offset=STEP)
    return writer


def _joined(lines: list[str]) -> str:
    return "\n".join(lines) + "\n"


def _plain(text: str) -> dict[str, Any]:
    return read_sheet(text, "book").data


def _with(data: dict[str, Any], section: str, key: str, fields: Fields) -> dict[str, Any]:
    """What a book must say after the correction."""
    entries = dict(data.get(section) or {})
    entries[key] = {**(entries.get(key) or {}), **fields}
    return {**data, section: entries}


def _by_hand(key: str) -> NotPossible:
    would = "write it in the book's file and send that"
    return NotPossible(f"the entry {key}", "is written in a way that cannot be mended here", would)
