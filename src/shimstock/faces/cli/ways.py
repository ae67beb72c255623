"""Commands on ways in: reach, play."""

from typing import Annotated, Any

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.shown import Answer, Caution, Heading, Shown, Table, listed_under
from shimstock.faces.cli.words_typed import MachineName
from shimstock.trade.machine.fastened import fastened_by
from shimstock.workshop.looking import DEFERS, called, minutes, see

commands = Commands()


@commands.add(
    "reach",
    example="shimstock reach brackwater governor-gear",
    keys={
        "opens": "joints to open, in order, each with joint, name, open, close, hands, "
        "fastened_by, shows (what else comes to light)",
        "closes": "the same joints, in the order in which they are closed",
        "open_already": "joints that stand open and serve",
        "minutes_open": "to open them all",
        "minutes_close": "to close them again",
        "uses": "gaskets, seals and fluids used up, each with name, count, joints",
        "cautions": "each with name, do, never, defer, joints",
        "measure_first": "old packs to measure before they are lost",
        "cover_tonight": "joints not to be left open uncovered",
        "also_in_reach": "parts that come into reach",
        "alternatives": "ways in that were weighed",
        "proven": "whether none of them costs fewer minutes",
        "weighed_with": "rate, touch_up (minutes) and seal_price (by joint) of while_open",
        "while_open": "each with joint, minutes_now, minutes_later, chance (break-even), says",
    },
)
def reach(
    asked: Asked,
    machine: MachineName,
    target: Annotated[
        list[str], typer.Argument(metavar="TARGET", help="Parts to reach, joints to open.")
    ],
    off: Annotated[bool, typer.Option("--off", help="The parts are to come off.")] = False,
    seal_price: Annotated[
        list[str] | None,
        typer.Option(metavar="JOINT=MONEY", help="What its seals and gaskets cost; repeat."),
    ] = None,
    rate: Annotated[
        float | None,
        typer.Option(metavar="MONEY", min=0, help="Worth of an hour; else a stand-in of 10."),
    ] = None,
    touch_up: Annotated[
        float | None,
        typer.Option(metavar="MINUTES", min=0, help="To touch up paint; else a stand-in of 60."),
    ] = None,
) -> Answer:
    """Find the cheapest way in, and what it costs."""
    from shimstock.faces.cli.while_open import weighed, weighed_shown
    from shimstock.trade.reach.way import way_in
    from shimstock.workshop.ways import way_data

    seen = see(machine)
    way = way_in(seen.now, target, take_off=off)
    by = weighed(seen.book, way, seal_price or [], rate, touch_up)
    return Answer(way_data(way) | by.data, [*_way_shown(way), *weighed_shown(seen.book, by)])


@commands.add(
    "play",
    example="shimstock play brackwater fan-drive",
    keys={
        "train": "its key",
        "total": "what the whole play says; null where it was not read",
        "links": "each with name, figure, verdict, says, most, look_first, play (its likely play: "
        "low, likely, high in 9 of 10 cases, over and under as chances, unit, limit, shared, "
        "parted, right_gasket, says, chance, working; null where it cannot be said)",
        "next_hold": "what to hold or read next; empty where nothing more would settle",
        "next": "the same: link, figure, at_end, minutes, opening, closing; or null",
        "cautions": "what can hurt on the way to it",
        "trouble": "why the likely play cannot be said; else empty",
    },
)
def play(
    asked: Asked,
    machine: MachineName,
    train: Annotated[
        str, typer.Argument(metavar="[TRAIN]", help="A chain in the book; else the only one.")
    ] = "",
    finished: Annotated[
        bool, typer.Option("--finished", help="By the readings after the work.")
    ] = False,
) -> Answer:
    """Say which link of a chain of play is worn.

    And how likely each is, and what to read next.
    """
    from shimstock.faces.cli.train_lines import rocked, train_data, train_shown
    from shimstock.workshop.trains import cautions_next

    seen = see(machine)
    key, found = rocked(seen, train, finished)
    due = cautions_next(seen, found)
    cautions = [Caution(each.caution.name, (each.caution.do, each.caution.never)) for each in due]
    return Answer(
        train_data(key, found) | {"cautions": [str(each) for each in due]},
        [*train_shown(seen.book, key, found), *cautions, DEFERS],
    )


def _way_shown(way: Any) -> list[Shown]:
    book = way.now.book
    return [
        *_cautions(book, way),
        *_order(book, way),
        *listed_under(
            "Measure before it is lost", [_measure(book, each) for each in way.measure_first]
        ),
        *listed_under("Two people or a hoist", [_heavy(book, each) for each in way.heavy]),
        *listed_under("Uses up", [str(each) for each in way.uses]),
        *listed_under(
            "Not to be left open uncovered", [called(book.joints, j) for j in way.cover_tonight]
        ),
        *listed_under("Also in reach then", [called(book.parts, part) for part in way.reaches]),
        *listed_under("Comes to light", _shows(book, way)),
    ]


def _cautions(book: Any, way: Any) -> list[Shown]:
    lines: list[Shown] = []
    for due in way.cautions:
        title = f"{due.caution.name} ({_marks(book, due.joints)})"
        lines += [Caution(title, (due.caution.do, due.caution.never))]
    return [DEFERS, *lines] if lines else []


def _order(book: Any, way: Any) -> list[Shown]:
    from shimstock.workshop.ways import how_sure

    rows = [
        (str(n), called(book.joints, key), f"{book.joints[key].open:g}",
         f"{book.joints[key].close:g}", fastened_by(book.joints[key]))
        for n, key in enumerate(way.opens, start=1)
    ]  # fmt: skip
    columns = ("", "open", "min", "close", "fastened by")
    wanted = ", ".join(target.name(book) for target in way.targets)
    if not rows:
        return [Heading(f"Way in to {wanted}"), "Nothing to open: it is in reach."]
    already = [called(book.joints, key) for key in way.open_already]
    return [
        Heading(f"Way in to {wanted}"),
        Table(columns, rows, frozenset({"", "min", "close"})),
        f"Opening {minutes(way.minutes_open)}, closing {minutes(way.minutes_close)}. "
        f"{how_sure(way)}",
        *(["Close in the opposite order."] if len(way.opens) > 1 else []),
        *([f"Open already: {', '.join(already)}."] if already else []),
    ]


def _shows(book: Any, way: Any) -> list[str]:
    joints = [(book.joints[key].mark or key, book.joints[key].shows) for key in way.opens]
    return [f"{mark}: {shows}" for mark, shows in joints if shows]


def _measure(book: Any, each: Any) -> str:
    known = f"; found {each.known}" if each.known else ""
    figure = called(book.measures, each.figure)
    return f"{each.by} of {called(book.joints, each.joint)}: it sets {figure}{known}"


def _heavy(book: Any, each: Any) -> str:
    lifts = f": {each.lifts}" if each.lifts else ""
    return f"{called(book.joints, each.joint)}{lifts}"


def _marks(book: Any, joints: Any) -> str:
    return ", ".join(book.joints[key].mark or key for key in joints)
