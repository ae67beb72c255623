"""Writes a book to fill in: the maker's figures, each beside the starter's stand-in."""

import json
from collections.abc import Iterator

from shimstock.trade.machine.book import Book, Figure


def new_book(name: str, starter: str, base: Book) -> str:
    """Text of a book that says nothing yet but which starter it extends.

    name: the book's own name. starter: the starter's name. base: the starter, read.
    """
    return "\n".join([*_head(name, starter, base), *_data(base), *_figures(base), ""])


def _head(name: str, starter: str, base: Book) -> Iterator[str]:
    yield f"# {name}: what the maker printed about this machine."
    yield "# Take away the # at the left of a line, and of the line above it that names the figure;"
    yield "# write what stands in the maker's book, and its page, as page: 41."
    yield "# Leave the blanks at the left as they are: they say what belongs to what."
    yield "# A figure without a page stays a stand-in figure. Check with: shimstock book check FILE"
    yield f"book: {name}"
    yield f"title: {name}"
    yield f"extends: {starter}"
    yield f"prints: {base.prints}    # inch or metric"
    yield ""
    yield "# A joint or part that this machine has not: its name with nothing after the colon."
    yield "joints:"
    yield "#  name-of-a-joint:"


def _data(base: Book) -> Iterator[str]:
    if base.data:
        yield ""
        yield "data:"
    for key, datum in base.data.items():
        quoted = json.dumps(datum.value, ensure_ascii=False)
        yield f"#  {key}:"
        yield f"#    value: {quoted if ':' in datum.value else datum.value}"
        yield "#    page:"


def _figures(base: Book) -> Iterator[str]:
    for section in ("figures", "settings"):
        entries: dict[str, Figure] = getattr(base, section)
        if entries:
            yield ""
            yield f"{section}:"
        for key, figure in entries.items():
            marked = f"{figure.mark} " if figure.mark else ""
            yield f"  # {marked}{figure.name}, of {base.parts[figure.of].name}"
            yield f"#  {key}:"
            yield from _to_fill_in(figure)


def _to_fill_in(figure: Figure) -> Iterator[str]:
    if figure.new:
        yield f"#    new: {figure.new.typed}"
    if figure.limit:
        yield f"#    limit: {_limits(figure)}"
    yield "#    page:"


def _limits(figure: Figure) -> str:
    typed = [each.typed for each in figure.limit]
    return typed[0] if len(typed) == 1 else f"[{', '.join(typed)}]"
