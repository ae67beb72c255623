"""Commands on notes and bags: note, bag."""

from typing import Annotated, Any

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.looking import kept_line
from shimstock.faces.cli.shown import Answer, Heading, Shown, Table
from shimstock.faces.cli.words_typed import MachineName
from shimstock.workshop.looking import kept, see

commands = Commands()


@commands.add(
    "note",
    example='shimstock note brackwater J36 "weeps at the lower left bolt"',
    keys={"about": "what it is about", "notes": "each with at, by, text", "entry": "or null"},
)
def note(
    asked: Asked,
    machine: MachineName,
    about: Annotated[
        str, typer.Argument(metavar="PLACE", help="A joint or part by mark or name; or machine.")
    ],
    text: Annotated[
        str | None, typer.Argument(metavar="[TEXT]", help="What there is to know.")
    ] = None,
) -> Answer:
    """Write down a note on a place, or show those there are."""
    from django.utils.timezone import localtime

    from shimstock.workshop import acts
    from shimstock.workshop.place_typed import place_called, place_typed
    from shimstock.workshop.told import notes_on

    seen = see(machine)
    place = place_typed(seen.book, about)
    entry = None
    if text is not None:
        entry = acts.write_note(machine=machine, about=place, text=text, who=asked.who)
    notes = notes_on(seen.row, place)
    rows = [(f"{localtime(each.at):%d %b %Y}", each.by, each.text) for each in notes]
    data = [
        {"at": localtime(each.at).isoformat(timespec="seconds"), "by": each.by, "text": each.text}
        for each in notes
    ]
    shown: list[Shown] = [kept_line(entry)] if entry else []
    shown += [Heading(f"Notes on {place_called(seen.book, place)}")]
    shown += [Table(("on", "who", "note"), rows)] if rows else ["None yet."]
    return Answer({"about": place, "notes": data, "entry": kept(entry) if entry else None}, shown)


@commands.add(
    "bag",
    example='shimstock bag brackwater 12 J36 --shelf B2 --holds "12 bolts, 2 dowels"',
    keys={"bags": "in use, each with bag, shelf, about, holds", "entry": "or null"},
)
def bag(
    asked: Asked,
    machine: MachineName,
    number: Annotated[
        str | None, typer.Argument(metavar="[BAG]", help="What stands on the bag.")
    ] = None,
    about: Annotated[
        str, typer.Argument(metavar="[PLACE]", help="The joint or part that it is of.")
    ] = "",
    shelf: Annotated[str | None, typer.Option(help="Where it lies.")] = None,
    holds: Annotated[str | None, typer.Option(help="What is in it.")] = None,
    empty: Annotated[bool, typer.Option("--empty", help="It was emptied; its number is free.")] = (
        False
    ),
) -> Answer:
    """Bag what came off, move or empty a bag, or show them all."""
    from shimstock.workshop import acts

    entry = None
    if number is None and empty:
        raise typer.BadParameter("say which bag is empty; shimstock bag brackwater 12 --empty")
    if number is not None and empty:
        entry = acts.empty_bag(machine=machine, number=number, who=asked.who)
    elif number is not None:
        entry = acts.put_in_bag(
            machine=machine, number=number, about=about, holds=holds, shelf=shelf, who=asked.who
        )
    data, shown = _bags(machine)
    said = [kept_line(entry)] if entry else []
    return Answer({"bags": data, "entry": kept(entry) if entry else None}, [*said, *shown])


def _bags(machine: str) -> tuple[list[dict[str, Any]], list[Shown]]:
    """Every bag in use, as plain values and as it is shown."""
    from shimstock.workshop.place_typed import place_called
    from shimstock.workshop.told import shelves_of

    seen = see(machine)
    bags = [bag for shelf in shelves_of(seen.row) for bag in shelf.bags]
    data = [
        {"bag": each.number, "shelf": each.shelf, "about": each.about, "holds": each.holds}
        for each in bags
    ]
    rows = [
        (each.number, each.shelf or "-", place_called(seen.book, each.about), each.holds)
        for each in bags
    ]
    if not rows:
        return data, ["Nothing is in a bag yet."]
    return data, [Table(("bag", "shelf", "of", "holds"), rows)]
