"""Commands on machines: machine add, list, show, book."""

from typing import Annotated, Any

import typer

from shimstock.faces.cli.book import book_text
from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.looking import kept_line
from shimstock.faces.cli.shown import Answer, Heading, Shown, Table
from shimstock.faces.cli.words_typed import ENTRY_KEYS, MachineName
from shimstock.workshop.looking import Seen, kept, see

NO_MACHINE = (
    "No machine here yet: shimstock machine add NAME --book FILE books one in; shimstock demo lays "
    "out two to try."
)

commands = Commands(group="machine", help="Machines: the real ones in the shed.")


@commands.add(
    "machine add",
    example="shimstock machine add hill --book two-cylinder-diesel --serial engine=1187",
    keys=ENTRY_KEYS,
)
def add(
    asked: Asked,
    name: Annotated[
        str, typer.Argument(metavar="NAME", help="Short: small letters, digits, hyphens.")
    ],
    book: Annotated[str, typer.Option(metavar="FILE|STARTER", help="What it is made to.")],
    serial: Annotated[
        list[str] | None,
        typer.Option(metavar="WHERE=NUMBER", help="What is stamped where; repeat."),
    ] = None,
    called: Annotated[str, typer.Option(metavar="WORDS", help="What you call it.")] = "",
) -> Answer:
    """Book a machine in, made to a book."""
    from shimstock.workshop import acts

    text, book_name = book_text(book)
    serials = dict(_serial(each) for each in serial or [])
    entry = acts.add_machine(
        slug=name, name=called or name, book_text=text, book_name=book_name,
        serials=serials, who=asked.who,
    )  # fmt: skip
    following = f"To type next: shimstock reach {name} PART, or shimstock machine names {name}"
    return Answer(kept(entry), [kept_line(entry), following])


@commands.add(
    "machine list",
    example="shimstock machine list",
    keys={"machines": "each with machine, name, book, serials, open (joints), worn (verdicts)"},
)
def list_(asked: Asked) -> Answer:
    """List the machines in the shed."""
    from shimstock.workshop.models import Machine

    all_ = [see(row.slug) for row in Machine.objects.filter(withdrawn=False)]
    data = [_in_short(seen) for seen in all_]
    rows = [(d["machine"], d["name"], d["book"], str(d["open"]), str(d["worn"])) for d in data]
    columns = ("machine", "name", "book", "open", "beyond limit")
    shown = Table(columns, rows, frozenset({"open", "beyond limit"}))
    return Answer({"machines": data}, [shown if rows else NO_MACHINE])


@commands.add(
    "machine show",
    example="shimstock machine show brackwater",
    keys={
        "machine": "its short name",
        "name": "what it is called",
        "book": "what it is made to",
        "serials": "what is stamped where",
        "newer_starters": "starters of its book that are installed in a newer form",
        "open": "joints that stand open, each with joint, name, word, since, days, covered",
        "missing": "what is short before an open joint can be closed, by joint",
        "away": "pieces that are out, wanted or on order, each with part, piece, state, note",
        "searches": "for a fault that go on, each with search, about, since, says",
        "unsafe": "what is not safe as it stands",
        "next": "what to do next, likeliest first",
    },
)
def show(
    asked: Asked,
    machine: MachineName,
    all_: Annotated[
        bool, typer.Option("--all", help="All that is missing, also where it is much.")
    ] = False,
) -> Answer:
    """Say where you were, what is unsafe, and what is next."""
    from shimstock.faces.cli.where_was_i import standing_shown
    from shimstock.workshop.books import newer_starters

    seen = see(machine)
    stands = seen.standing
    head = {key: _in_short(seen)[key] for key in ("machine", "name", "book", "serials")}
    newer = list(newer_starters(seen.row))
    shown = [*_head(seen), *_newer(machine, newer), *standing_shown(stands, all_missing=all_)]
    return Answer({**head, "newer_starters": newer, **stands}, shown)


@commands.add(
    "machine book",
    example="shimstock machine book brackwater shed/books/brackwater-40.yaml",
    keys=ENTRY_KEYS,
)
def book_(
    asked: Asked,
    machine: MachineName,
    file: Annotated[str, typer.Argument(metavar="FILE|STARTER", help="The better book.")],
) -> Answer:
    """Give a machine a better book; all is judged again."""
    from shimstock.workshop import acts

    text, name = book_text(file)
    entry = acts.change_book(machine=machine, book_text=text, book_name=name, who=asked.who)
    return Answer(kept(entry), [kept_line(entry)])


@commands.add(
    "machine names",
    example="shimstock machine names brackwater brake",
    keys={
        "names": "each with kind, key, mark, name, pieces and by: which other word of it was meant"
    },
)
def names_(
    asked: Asked,
    machine: MachineName,
    words: Annotated[
        list[str] | None,
        typer.Argument(metavar="[WORD]", help="As it is called, or as you call it."),
    ] = None,
) -> Answer:
    """Find what its book calls a joint, part or figure."""
    from shimstock.faces.cli.names import names_data, names_shown
    from shimstock.workshop.names import names

    found = names(see(machine).book, words or [])
    return Answer({"names": names_data(found)}, names_shown(found))


def _serial(typed: str) -> tuple[str, str]:
    where, equals, number = typed.partition("=")
    if not (where and equals and number):
        from shimstock.trade.numbers.not_understood import NotUnderstood

        wrong = "is no serial number: say where it is stamped, =, and what"
        raise NotUnderstood(typed, wrong, (f"{where.strip() or 'engine'}=40-1187",))
    return where, number


def _in_short(seen: Seen) -> dict[str, Any]:
    read = {(figure, piece) for figure, piece, _ in seen.now.verdicts}
    latest = [seen.now.latest(*key) for key in read]
    worn = [each for each in latest if each and each.verdict == "worn out"]
    return {
        "machine": seen.row.slug,
        "name": seen.row.name,
        "book": seen.book.title,
        "serials": seen.row.serials,
        "open": len(seen.now.open_joints),
        "worn": len(worn),
    }


def _newer(machine: str, starters: list[str]) -> list[Shown]:
    """That a starter of its book has become better since; the machine keeps the old until asked."""
    from shimstock.workshop.wording import listed

    if not starters:
        return []
    newer = "A newer text" if len(starters) == 1 else "Newer texts"
    return [
        f"{newer} of {listed(starters)} came with the program. To take it, type "
        f"shimstock machine book {machine} {starters[0]}: what was corrected stays, and all is "
        "judged again."
    ]


def _head(seen: Seen) -> list[Shown]:
    stamped = ", ".join(f"{where} {number}" for where, number in seen.row.serials.items())
    return [Heading(seen.row.name), f"{seen.book.title}. {stamped}".rstrip()]
