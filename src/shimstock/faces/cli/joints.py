"""Commands on joints and parts: open, cover, ready, close, leak, part."""

from typing import Annotated, Any

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.looking import cautions_data, cautions_shown, kept_line, kept_so_far
from shimstock.faces.cli.shown import Answer, Heading, Table
from shimstock.faces.cli.words_typed import (
    ENTRY_KEYS,
    Bolts,
    FacesClean,
    Gaskets,
    JointName,
    JointNames,
    MachineName,
)
from shimstock.workshop.looking import DEFERS, called, kept, see

FASTENED = {"fastened_by": "its fastenings, with the torque where the book gives one"}

commands = Commands()


@commands.add(
    "open",
    example="shimstock open brackwater J06 --bolts 2",
    keys={
        "cautions": "what can hurt; read before the work",
        "entries": "what was written down",
    },
)
def open_(
    asked: Asked,
    machine: MachineName,
    joint: JointNames,
    with_way: Annotated[
        bool, typer.Option("--with-way", help="Open all that must be open before it, too.")
    ] = False,
    bolts: Annotated[
        int | None, typer.Option(metavar="N", help="How many came out; else the book's count.")
    ] = None,
    thickness: Annotated[
        str | None, typer.Option(metavar="SIZE", help="Of the old gasket, as measured.")
    ] = None,
    meant: Annotated[
        bool, typer.Option("--meant", help="Keep them although the book has others.")
    ] = False,
) -> Answer:
    """Open joints; what can hurt is shown first."""
    from shimstock.workshop import acts
    from shimstock.workshop.ways import cautions_on_the_way

    cautions = [due.caution for due in cautions_on_the_way(see(machine), joint, with_way)]
    entries: list[Any] = []
    for each in joint:
        with kept_so_far(entries):
            entries.append(
                acts.open_joint(
                    machine=machine,
                    joint=each,
                    who=asked.who,
                    path=with_way,
                    bolts_out=bolts,
                    thickness_found=thickness,
                    meant=meant,
                )
            )
    return Answer(
        {"cautions": cautions_data(cautions), "entries": [kept(each) for each in entries]},
        [DEFERS, *cautions_shown(cautions), "", *(kept_line(each) for each in entries)],
    )


@commands.add("cover", example="shimstock cover brackwater J33", keys=ENTRY_KEYS)
def cover(asked: Asked, machine: MachineName, joint: JointName) -> Answer:
    """Cover an open joint against rust, dust and mice."""
    from shimstock.workshop import acts

    return _said(acts.cover_joint(machine=machine, joint=joint, who=asked.who))


@commands.add(
    "ready",
    example="shimstock ready brackwater J33 --faces-clean --bolts 4",
    keys=ENTRY_KEYS | FASTENED,
)
def ready(
    asked: Asked,
    machine: MachineName,
    joint: JointName,
    faces_clean: FacesClean = None,
    gasket: Gaskets = None,
    bolts: Bolts = None,
    meant: Annotated[
        bool, typer.Option("--meant", help="Keep the count although fewer came off.")
    ] = False,
) -> Answer:
    """Lay ready what an open joint needs to be closed."""
    from shimstock.workshop import acts

    entry = acts.ready_joint(
        machine=machine,
        joint=joint,
        who=asked.who,
        faces_clean=faces_clean,
        gaskets=gasket or (),
        bolts=bolts,
        meant=meant,
    )
    return _fastened(machine, joint, entry)


@commands.add(
    "close",
    example="shimstock close brackwater J17 --torqued",
    keys=ENTRY_KEYS | FASTENED,
)
def close(
    asked: Asked,
    machine: MachineName,
    joint: JointName,
    faces_clean: FacesClean = None,
    gasket: Gaskets = None,
    bolts: Bolts = None,
    torqued: Annotated[
        bool, typer.Option("--torqued", help="Tightened to the book's figure.")
    ] = False,
    reason: Annotated[
        str, typer.Option(help="Why it is closed although something soft is missing.")
    ] = "",
    dry: Annotated[bool, typer.Option("--dry", help="Only tried, to come apart again.")] = False,
) -> Answer:
    """Close a joint; refused while anything is missing."""
    from shimstock.workshop import acts

    entry = acts.close_joint(
        machine=machine,
        joint=joint,
        who=asked.who,
        faces_clean=faces_clean,
        gaskets=gasket or (),
        bolts=bolts,
        torqued=torqued,
        dry=dry,
        reason=reason,
    )
    return _fastened(machine, joint, entry)


@commands.add("leak", example="shimstock leak brackwater J41 dry --standing", keys=ENTRY_KEYS)
def leak(
    asked: Asked,
    machine: MachineName,
    joint: JointName,
    result: Annotated[str, typer.Argument(metavar="RESULT", help="dry, weeping or leaking.")],
    chalk: Annotated[
        bool,
        typer.Option("--chalk", help="An undisturbed joint, dusted with chalk and watched."),
    ] = False,
    standing: Annotated[
        bool,
        typer.Option(
            "--standing",
            help="Seen full or under pressure, engine not run; dry so counts as chalk-dry.",
        ),
    ] = False,
    meant: Annotated[
        bool, typer.Option("--meant", help="It was run, though the engine seems apart.")
    ] = False,
) -> Answer:
    """Write down a leak check: after a run, by chalk, standing."""
    from shimstock.workshop import acts

    return _said(
        acts.leak_check(
            machine=machine,
            joint=joint,
            result=result,
            who=asked.who,
            chalk=chalk,
            standing=standing,
            meant=meant,
        )
    )


@commands.add(
    "part",
    example='shimstock part brackwater thermostat off --note "for the pan test"',
    keys={"part": "its key", "pieces": "each piece as it stands", "entry": "or null"},
)
def part(
    asked: Asked,
    machine: MachineName,
    part: Annotated[str, typer.Argument(metavar="PART", help="By key, mark or name.")],
    words: Annotated[
        list[str] | None,
        typer.Argument(metavar="[PIECE] [STATE]", help="Which piece; how it stands now."),
    ] = None,
    maker: Annotated[str | None, typer.Option(help="Whose mark it bears.")] = None,
    size: Annotated[str | None, typer.Option(help="Over- or undersize.")] = None,
    note: Annotated[str | None, typer.Option(help="Goes with the piece.")] = None,
    proved_pair: Annotated[
        bool | None,
        typer.Option("--proved-pair", help="A bench sheet proves it with its mate."),
    ] = None,
) -> Answer:
    """Show how a part stands, or say how it stands now."""
    given = {"maker": maker, "size": size, "note": note, "proved_pair": proved_pair}
    return _part(asked, machine, part, words or [], given)


def _said(entry: Any) -> Answer:
    return Answer(kept(entry), [kept_line(entry)])


def _fastened(machine: str, typed: str, entry: Any) -> Answer:
    """What was done, and what to tighten it by."""
    from shimstock.trade.machine.fastened import fastened_by, tightened
    from shimstock.workshop.find import find_joint

    book = see(machine).book
    joint = book.joints[find_joint(book, typed)]
    data = kept(entry) | {"fastened_by": fastened_by(joint)}
    return Answer(data, [kept_line(entry), *tightened(joint)])


def _part(
    asked: Asked, machine: str, typed: str, words: list[str], given: dict[str, Any]
) -> Answer:
    from shimstock.workshop import acts
    from shimstock.workshop.find import find_part, find_piece

    seen = see(machine)
    key = find_part(seen.book, typed)
    pieces = seen.now.pieces_of(key)
    named = words[:1] if len(pieces) > 1 else []
    state = " ".join(words[len(named) :])
    entry = None
    if named:
        find_piece(seen.book, key, named[0])
    if state or any(value is not None for value in given.values()):
        piece = find_piece(seen.book, key, "".join(named))
        entry = acts.move_piece(
            machine=machine,
            part=key,
            piece=piece,
            to=state or pieces[piece].word,
            who=asked.who,
            **given,
        )
        pieces = see(machine).now.pieces_of(key)
    rows = [(name or "-", p.word, p.maker, p.size, p.note) for name, p in pieces.items()]
    table = Table(("piece", "stands", "maker", "size", "note"), rows)
    data = [
        {"piece": name, "state": p.word, "maker": p.maker, "size": p.size,
         "proved_pair": p.proved_pair, "note": p.note}
        for name, p in pieces.items()
    ]  # fmt: skip
    return Answer(
        {"part": key, "pieces": data, "entry": kept(entry) if entry else None},
        [*([kept_line(entry)] if entry else []), Heading(called(seen.book.parts, key)), table],
    )
