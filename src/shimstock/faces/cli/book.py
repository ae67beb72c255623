"""Commands on books: check, schema, starters, start, figure, export."""

from dataclasses import asdict
from pathlib import Path
from typing import Annotated, Any

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.looking import kept_line
from shimstock.faces.cli.shown import Answer, Heading, Shown, Table, Verbatim
from shimstock.faces.cli.words_typed import FigureName, MachineName

BookFile = Annotated[
    str, typer.Argument(metavar="FILE", help="A book file, or the name of a starter.")
]


commands = Commands(group="book", help="Books: what the maker printed.")


@commands.add(
    "book check",
    shed=False,
    example="shimstock book check shed/books/brackwater-40.yaml",
    keys={
        "file": "what was checked",
        "faults": "each with file, line, where, found, wrong, would_do",
        "doubts": "figures far from the starter's, as faults are; they keep no book from use",
        "counts": "parts, joints, figures and stand-in figures, causes, signs and how many of "
        "these are stand-ins; null where there are faults",
    },
)
def check(file: BookFile) -> Answer:
    """Check a book: every fault at once, with its line."""
    from shimstock.trade.machine.reading import read_book
    from shimstock.trade.machine.sheet import BookErrors

    text, name = book_text(file)
    try:
        book = read_book(text, name)
    except BookErrors as errors:
        return _faulty(name, errors.problems)
    counts, doubtful = _counts(book), _doubts(book, text, name)
    lines = [f"{name}: {book.title}", "No faults.", _counted(counts), *_faults_counted(counts)]
    if doubtful:
        lines += ["Far from the starter's; look whether a digit slipped:"]
        lines += [str(each) for each in doubtful]
    told = [asdict(each) for each in doubtful]
    return Answer({"file": name, "faults": [], "doubts": told, "counts": counts}, lines)


@commands.add(
    "book schema",
    shed=False,
    example="shimstock book schema",
    keys={
        "$schema": "which edition of JSON Schema",
        "title": "what it describes",
        "type": "object",
        "properties": "the fields of a book",
        "if": "whether it extends no starter",
        "then": "what must be there then",
        "additionalProperties": "false: no unknown fields",
        "description": "what a book is",
        "$defs": "what stands in each section",
    },
)
def schema() -> Answer:
    """Print a book's format, for an editor to complete it."""
    import json

    from shimstock.trade.machine import schema as book_schema

    described = book_schema.schema()
    return Answer(described, [Verbatim(json.dumps(described, indent=2, ensure_ascii=False))])


@commands.add(
    "book starters",
    shed=False,
    example="shimstock book starters",
    keys={"starters": "each with name, title and counts"},
)
def starters() -> Answer:
    """List the starters that a book can extend."""
    from shimstock.trade.machine.starters import starter_names

    books = {name: _starter(name) for name in starter_names()}
    data = [{"name": n, "title": b.title, "counts": _counts(b)} for n, b in books.items()]
    rows = [
        (n, b.title, str(len(b.parts)), str(len(b.joints)), str(len(b.measures)))
        for n, b in books.items()
    ]
    columns = ("starter", "machine", "parts", "joints", "figures")
    return Answer({"starters": data}, [Table(columns, rows, frozenset(columns[2:]))])


@commands.add(
    "book start",
    shed=False,
    example="shimstock book start my-tractor --extends two-cylinder-diesel",
    keys={"file": "what was written", "extends": "the starter below it"},
)
def start(
    name: Annotated[str, typer.Argument(metavar="NAME", help="Small letters, digits, hyphens.")],
    extends: Annotated[str, typer.Option(metavar="STARTER", help="The starter below it.")],
    out: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Where to; else NAME.yaml here.")
    ] = None,
) -> Answer:
    """Write a book to fill in; nothing is overwritten."""
    from shimstock.faces.cli.new_book import new_book
    from shimstock.trade.numbers.not_understood import NotUnderstood
    from shimstock.workshop.wording import as_short_name, is_short_name

    if not is_short_name(name):
        wrong = "cannot be a book's name: small letters, digits and hyphens do"
        raise NotUnderstood(name, wrong, (as_short_name(name) or "my-tractor",))
    file = out or Path(f"{name}.yaml")
    text = new_book(name, extends, _starter(extends))
    with file.open("x", encoding="utf-8") as sheet:
        sheet.write(text)
    lines = [f"Wrote {file}.", "Fill in what the maker's book prints, then type:"]
    return Answer(
        {"file": str(file), "extends": extends}, [*lines, f"  shimstock book check {file}"]
    )


@commands.add(
    "book figure",
    example="shimstock book figure brackwater F004 --page 43",
    keys={
        "figure": "its key in the book",
        "says": "everything the book says of it, by what it is called",
        "new": "lowest and highest as new, as the book has it; empty for none",
        "limit": "limit of use; empty for none",
        "page": "page of the maker's book; empty for a stand-in figure",
        "would_change": "verdicts that --look found, each with name, stage, was and then",
        "entry": "the correction as the diary keeps it; null where nothing was written",
    },
)
def figure(
    asked: Asked,
    machine: MachineName,
    figure: FigureName,
    new: Annotated[
        str | None, typer.Option(metavar="RANGE", help="As new: '6.1250 .. 6.1260 in'.")
    ] = None,
    limit: Annotated[
        str | None, typer.Option(metavar="LIMIT", help="Limit of use: 'max 6.1350 in'.")
    ] = None,
    page: Annotated[
        str | None, typer.Option(metavar="PAGE", help="Of the maker's book: no stand-in any more.")
    ] = None,
    note: Annotated[str, typer.Option(metavar="TEXT", help="Where from, for the diary.")] = "",
    look: Annotated[
        bool, typer.Option("--look", help="Only show which verdicts would change.")
    ] = False,
    meant: Annotated[
        bool, typer.Option("--meant", help="Keep it although it looks like a slip.")
    ] = False,
) -> Answer:
    """See a figure of a machine's book, or correct it."""
    from shimstock.trade.machine.sheet import BookErrors
    from shimstock.trade.numbers.not_understood import NotUnderstood
    from shimstock.workshop import acts
    from shimstock.workshop.find import find_figure
    from shimstock.workshop.looking import see
    from shimstock.workshop.what_if import look_at_figure

    seen = see(machine)
    key = find_figure(seen.book, figure)
    given = {"new": new, "limit": limit, "page": page}
    typed = {name: text for name, text in given.items() if text is not None}
    if not typed:
        return _figure_shown(seen.book, key)
    try:
        if look:
            found = look_at_figure(seen.row, seen.book, key, typed, meant=meant)
            return _figure_shown(seen.book, key, look=found)
        entry = acts.correct_figure(
            machine=seen.row, figure=key, typed=typed, note=note, meant=meant, who=asked.who
        )
    except BookErrors as errors:  # about what was typed, not about lines of a file
        first = errors.problems[0]
        would = (first.would_do,) if first.would_do else ()
        raise NotUnderstood(", ".join(typed.values()), f"cannot be: {first.wrong}", would) from None
    return _figure_shown(see(machine).book, key, entry=entry)


@commands.add(
    "book export",
    example="shimstock book export brackwater brackwater-40.yaml",
    keys={"machine": "its short name", "file": "what was written"},
)
def export(
    asked: Asked,
    machine: MachineName,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="Where to.")],
) -> Answer:
    """Write a machine's own book to a file, to the letter."""
    from shimstock.workshop.find import find_machine

    row = find_machine(machine)
    with file.open("x", encoding="utf-8", newline="") as sheet:
        sheet.write(row.book_text)
    return Answer({"machine": row.slug, "file": str(file)}, [f"Wrote {file}."])


def _figure_shown(book: Any, key: str, *, look: Any = None, entry: Any = None) -> Answer:
    from shimstock.trade.machine.typed_figure import as_typed
    from shimstock.workshop.book_told import in_words
    from shimstock.workshop.looking import called, kept

    told, now = in_words(book, key), as_typed(book.measures[key])
    changes = look.changes if look else ()
    page = now["page"] or "none, so a stand-in figure"
    lines: list[Shown] = [kept_line(entry)] if entry else []
    lines += [Heading(called(book.measures, key)), *(f"  {name}: {said}" for name, said in told)]
    lines += [f"  Page: {page}"]
    if look:
        lines += [Heading("This would change"), *(f"  {each.told}" for each in changes)]
        lines += [] if changes else ["  no verdict"]
    data = {
        "figure": key,
        "says": dict(told),
        **now,
        "would_change": [
            {"name": c.name, "stage": c.stage, "was": c.was, "then": c.then} for c in changes
        ],
        "entry": kept(entry) if entry else None,
    }
    return Answer(data, lines)


def book_text(given: str) -> tuple[str, str]:
    """The text of a book and its name: a file, or a starter by its name.

    Raises OSError for a file that cannot be read; NotFound for a name that is neither.
    """
    from shimstock.trade.machine.starters import starter_names, starter_text
    from shimstock.workshop.refused import NotFound

    if given in starter_names() and not Path(given).exists():
        return starter_text(given), given
    if not Path(given).exists() and not Path(given).suffix and Path(given).name == given:
        raise NotFound("file or starter", given, starter_names())
    return Path(given).read_text(encoding="utf-8"), Path(given).name


def _starter(name: str) -> Any:
    from shimstock.trade.machine.reading import read_book
    from shimstock.trade.machine.starters import starter_names, starter_text
    from shimstock.workshop.refused import NotFound

    if name not in starter_names():
        raise NotFound("starter", name, starter_names())
    return read_book(starter_text(name), f"{name}.yaml")


def _doubts(book: Any, text: str, name: str) -> list[Any]:
    """Figures of a book's own text that lie far from those of the starter below it."""
    from shimstock.trade.measure.far_off import far_from_starter

    return far_from_starter(text, name, _starter(book.extends)) if book.extends else []


def _counts(book: Any) -> dict[str, int]:
    figures = book.measures.values()
    faults = [*book.causes.values(), *book.signs.values()]
    return {
        "parts": len(book.parts),
        "joints": len(book.joints),
        "figures": len(figures),
        "stand_in": sum(figure.stand_in for figure in figures),
        "causes": len(book.causes),
        "signs": len(book.signs),
        "stand_in_faults": sum(fault.stand_in for fault in faults),
    }


def _counted(counts: dict[str, int]) -> str:
    return (
        f"{counts['parts']} parts, {counts['joints']} joints, {counts['figures']} figures, "
        f"of which {counts['stand_in']} are stand-in figures: type the maker's, with their page."
    )


def _faults_counted(counts: dict[str, int]) -> list[str]:
    """What is said of faults; nothing where the book knows none."""
    if not counts["causes"] and not counts["signs"]:
        return []
    return [
        f"{counts['causes']} causes and {counts['signs']} signs of faults, of which "
        f"{counts['stand_in_faults']} are stand-ins: experience, until a page says where from."
    ]


def _faulty(name: str, problems: Any) -> Answer:
    faults = [asdict(problem) for problem in problems]
    count = "1 fault" if len(faults) == 1 else f"{len(faults)} faults"
    lines = [str(problem) for problem in problems]
    told = {"file": name, "faults": faults, "doubts": [], "counts": None}
    return Answer(told, [*lines, f"{count}."], True)
