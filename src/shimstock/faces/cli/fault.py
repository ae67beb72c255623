"""Commands on faults: fault, showed, found, searches, counts."""

from typing import Annotated, Any

import typer

from shimstock.faces.cli.command import Asked, Commands, Later
from shimstock.faces.cli.looking import kept_line
from shimstock.faces.cli.shown import Answer, Shown
from shimstock.faces.cli.words_typed import ENTRY_KEYS, MachineName
from shimstock.workshop.looking import kept, see

commands = Commands()

Number = Annotated[
    int | None,
    typer.Option("--search", metavar="N", help="Which search; else that which goes on."),
]


@commands.add(
    "fault",
    shed=False,
    example="shimstock fault brackwater --seen S14 --seen hunts --not S06",
    keys={
        "search": "number, about, ended, people, young, missing; null for none",
        "told": "each with about, name, mark, said, says, comes_from, source, figure, counts",
        "cannot_be": "where what is told cannot all be true, why; else empty",
        "method": "exact or sampled",
        "error": "of a sampled chance",
        "ranking": "raised causes, each with cause, name, mark, part, chance, low, high, prior, "
        "prior_says, stand_in, confirmed, looked, said, why",
        "besides": "names of causes that readings speak for, beside what was seen",
        "must_not": "what the engine must not do as things were told, and why, a line each",
        "questions": "signs to look for first, each with sign, name, mark, said, where, cautions, "
        "chance, saves, tells",
        "offers": "checks, the best first, each with check, kind, key, name, mark, do, points_to, "
        "points_away, settles, minutes, opening, joints, cautions, needs, hands, figure, finds, "
        "expected",
        "not_offered": "each with check, name, mark, reason",
        "unlisted": "chance that no check offered can find it",
        "would_change": "each with about, says, chance, first, line",
        "why": "with --why: cause, prior, prior_says, prior_working, chance, speaks, settled; "
        "else null",
        "entries": "what was kept",
    },
)
def fault(
    later: Later,
    machine: Annotated[
        str | None, typer.Argument(metavar="[MACHINE]", help="Its short name.")
    ] = None,
    seen: Annotated[
        list[str] | None,
        typer.Option(metavar="SIGN", help="By mark, key or name; or SIGN=NUMBER, as read; repeat."),
    ] = None,
    not_seen: Annotated[
        list[str] | None, typer.Option("--not", metavar="SIGN", help="Looked for, not there.")
    ] = None,
    there: Annotated[
        list[str] | None, typer.Option(metavar="CAUSE", help="A check showed that it is there.")
    ] = None,
    cleared: Annotated[
        list[str] | None, typer.Option(metavar="CAUSE", help="A check showed that it is not.")
    ] = None,
    people: Annotated[int | None, typer.Option(metavar="N", min=1, help="How many work.")] = None,
    young: Annotated[
        bool | None, typer.Option("--young/--grown", help="A helper under age does the checks.")
    ] = None,
    without: Annotated[
        list[str] | None, typer.Option(metavar="TOOL", help="Not at hand; repeat.")
    ] = None,
    search: Number = None,
    keep: Annotated[
        bool, typer.Option("--keep", help="Write it into the search; begin one if none goes on.")
    ] = False,
    about: Annotated[
        str, typer.Option(metavar="TEXT", help="With --keep: what a new search is about.")
    ] = "",
    why: Annotated[
        str | None, typer.Option(metavar="CAUSE", help="Show all that stands behind one cause.")
    ] = None,
    all_: Annotated[bool, typer.Option("--all", help="Show every cause and check.")] = False,
    case: Annotated[
        str | None,
        typer.Option(metavar="FILE", help="Answer a case file instead, or - for stdin."),
    ] = None,
    case_schema: Annotated[
        bool, typer.Option("--case-schema", help="Print the form of a case file.")
    ] = False,
) -> Answer:
    """Find a fault: what it can be, and what to check next."""
    if case is not None or case_schema:
        from shimstock.faces.cli.fault_case import case_answer, schema_answer

        others = (machine, seen, not_seen, there, cleared, people, without, search, about, why)
        if any(others) or keep or all_ or young is not None:
            raise typer.BadParameter("a case stands alone: what is known goes into its file")
        return schema_answer() if case is None else case_answer(case)
    if machine is None:
        raise typer.BadParameter("name a machine, or a case file with --case")
    asked = later()
    from shimstock.faces.cli.fault_data import search_data
    from shimstock.faces.cli.fault_lines import search_shown, why_shown
    from shimstock.faces.cli.fault_typed import Typed, keep_typed, looked_at

    typed = Typed(
        seen=seen or (),
        not_seen=not_seen or (),
        there=there or (),
        cleared=cleared or (),
        people=people,
        young=young,
        without=without,
    )
    entries = keep_typed(asked, machine, typed, search, about) if keep else []
    found = looked_at(machine, Typed() if keep else typed, search)
    opened = found.why(_cause(found, why)) if why else None
    shown: list[Shown] = [kept_line(each) for each in entries]
    shown += why_shown(opened) if opened else search_shown(found, everything=all_)
    data = search_data(found, opened)
    return Answer(data | {"entries": [kept(each) for each in entries]}, shown)


def _cause(found: Any, typed: str) -> str:
    from shimstock.workshop.fault_search.words import find_cause

    return find_cause(found.seen.book, typed)


@commands.add(
    "showed",
    example="shimstock showed brackwater C33 cleared",
    keys=ENTRY_KEYS,
)
def showed(
    asked: Asked,
    machine: MachineName,
    thing: Annotated[
        str, typer.Argument(metavar="THING", help="A cause or sign, by mark, key or name.")
    ],
    said: Annotated[
        str,
        typer.Argument(
            metavar="SAID",
            help='there, cleared; seen, not-seen, "0.35 in"; not-looked takes it back.',
        ),
    ],
    search: Number = None,
) -> Answer:
    """Say what a check showed."""
    from shimstock.faces.cli.fault_typed import say

    entries = say(asked, machine, {thing: said}, search)
    return Answer(kept(entries[-1]), [kept_line(each) for each in entries])


@commands.add(
    "found",
    example='shimstock found brackwater C31 --how "a new pair of gears"',
    keys=ENTRY_KEYS,
)
def found(
    asked: Asked,
    machine: MachineName,
    cause: Annotated[str, typer.Argument(metavar="CAUSE", help="By mark (C31), key or name.")],
    how: Annotated[str, typer.Option(metavar="TEXT", help="How it was put right.")] = "",
    ends: Annotated[bool, typer.Option("--ends", help="The search is over with it.")] = False,
    search: Number = None,
) -> Answer:
    """Write down a fault found and put right; it counts."""
    from shimstock.workshop import acts

    entry = acts.fault_found(
        machine=machine, cause=cause, how=how, ends=ends, search=search, who=asked.who
    )
    return Answer(kept(entry), [kept_line(entry)])


@commands.add(
    "searches",
    example="shimstock searches brackwater",
    keys={
        "searches": "each with number, about, ended, by, at",
        "trail": "of the one that is named: its entries, oldest first, each with entry, at, who, "
        "says, undone",
        "entry": "what was done; or null",
    },
)
def searches(
    asked: Asked,
    machine: MachineName,
    number: Annotated[
        int | None, typer.Argument(metavar="[SEARCH]", help="Show its trail; or act on it.")
    ] = None,
    end: Annotated[bool, typer.Option("--end", help="It is over: found.")] = False,
    give_up: Annotated[bool, typer.Option("--give-up", help="It is over: given up.")] = False,
    again: Annotated[bool, typer.Option("--again", help="Take an ended one up again.")] = False,
) -> Answer:
    """Show searches for faults; end or resume one."""
    from shimstock.faces.cli.fault_searches import searches_answer
    from shimstock.workshop import acts

    if end + give_up + again > 1:
        raise typer.BadParameter("one of --end, --give-up and --again would do")
    entry = None
    if again and number is None:
        raise typer.BadParameter("say which; shimstock searches brackwater 1 --again")
    if again and number is not None:
        entry = acts.take_up_search(machine=machine, search=number, who=asked.who)
    elif end or give_up:
        if number is None and len(open_ := _open_numbers(machine)) > 1:
            would = f"shimstock searches {machine} {open_[0]} {'--end' if end else '--give-up'}"
            raise typer.BadParameter(f"{len(open_)} searches go on; say which: {would}")
        entry = acts.end_search(machine=machine, search=number, given_up=give_up, who=asked.who)
    return searches_answer(see(machine), number, entry)


def _open_numbers(machine: str) -> list[int]:
    """The numbers of the searches that go on, the latest first."""
    from shimstock.workshop.fault_search.words import searches_of

    return [each.number for each in searches_of(see(machine).row) if not each.ended]


@commands.add(
    "counts",
    example="shimstock counts",
    keys={
        "own": "by cause: confirmed and looked, in this workshop",
        "imported": "each with label, causes, confirmed, looked, by, and known: whether its file "
        "said whose it is",
        "file": "what was written; or null",
        "entry": "what was done; or null",
    },
)
def counts(
    asked: Asked,
    export: Annotated[
        str | None, typer.Option(metavar="FILE", help="Write what was found here.")
    ] = None,
    import_: Annotated[
        str | None, typer.Option("--import", metavar="FILE", help="Take in another workshop's.")
    ] = None,
    label: Annotated[
        str,
        typer.Option(
            metavar="NAME",
            help="What the imported ones are called here; a known workshop keeps its.",
        ),
    ] = "",
    replace: Annotated[
        bool,
        typer.Option(
            "--replace", help="In place of what came under that name before, even if that is newer."
        ),
    ] = False,
    meant: Annotated[
        bool, typer.Option("--meant", help="Take in what is here already under another name.")
    ] = False,
    take_back: Annotated[
        str | None, typer.Option(metavar="NAME", help="Imported ones that count no more.")
    ] = None,
) -> Answer:
    """Show or exchange counts of faults found."""
    from shimstock.faces.cli.fault_counts import counts_answer, import_file, write_file
    from shimstock.workshop import acts

    if sum(each is not None for each in (export, import_, take_back)) > 1:
        raise typer.BadParameter("one of --export, --import and --take-back would do")
    if import_ is None and (replace or meant or label):
        raise typer.BadParameter("--label, --replace and --meant go with --import FILE")
    entry = None
    if import_ is not None:
        entry = import_file(asked, import_, label=label, replace=replace, meant=meant)
    elif take_back is not None:
        entry = acts.withdraw_counts(label=take_back, who=asked.who)
    shown: list[Shown] = [kept_line(entry)] if entry else []
    if export is not None:
        write_file(export)
        shown += [f"Wrote {export}."]
    return counts_answer(entry, shown, file=export)
