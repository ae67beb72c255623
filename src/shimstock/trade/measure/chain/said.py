"""What was found of a link, in the unit of its own figure and with its working."""

from __future__ import annotations

from collections.abc import Sequence

from shimstock.trade.machine.book import Book, Train
from shimstock.trade.measure.chain.expected import OVER, TIGHT, Chain
from shimstock.trade.measure.chain.link_play import Plays
from shimstock.trade.measure.chain.of_figures import ends
from shimstock.trade.measure.chain.played import Played
from shimstock.trade.measure.chain.told import Felt, Read, Told
from shimstock.trade.measure.play import keep_gain
from shimstock.trade.numbers.quantity import convert, show
from shimstock.trade.numbers.working import Working

SOURCE = (
    "geometry: the play of every link carried to the end and added; forward-backward passes over "
    "the sums (Rabiner 1989); JCGM 101:2008"
)


def misfit(train: Train, told: Told, unit: str) -> str:
    """Which reading does not fit the others."""
    link = train.links[told.link]
    value = show(told.value, unit)
    if isinstance(told, Read):
        return f"{value} on {link.name} does not fit what was rocked: read it again, and rock again"
    held = f"with the {link.hold.what} held" if link.hold else f"at {link.name}"
    return f"{value} {held} does not fit the other readings: rock both again"


def played(
    book: Book, train: Train, at: int, found: Plays, chain: Chain, told: Sequence[Told]
) -> Played:
    """A link's likely play in the unit of its own figure."""
    link, unit = train.links[at], book.measures[train.figure].measured_in
    figure = book.measures[link.figure]
    factor = convert(1, unit, figure.measured_in)
    return Played(
        name=link.name,
        figure=link.figure,
        unit=figure.measured_in,
        stands=found.stands.times(factor),
        right=found.right.times(factor),
        limit=chain.links[at].limit * factor,
        least=chain.links[at].least * factor,
        shared=ends(figure) is None,
        parted=_parted(chain, told, at),
        working=_working(book, train, at, found, chain, told),
    )


def _parted(chain: Chain, told: Sequence[Told], at: int) -> bool:
    """Whether the readings, as equations, have one answer for a link."""
    import numpy as np

    count = len(chain.links)
    rows = np.array(
        [
            [
                float(n >= each.link if isinstance(each, Felt) else n == each.link)
                for n in range(count)
            ]
            for each in told
        ]
    ).reshape(len(told), count)
    with_it = np.vstack([rows, np.eye(count)[at]])
    return bool(np.linalg.matrix_rank(with_it) == np.linalg.matrix_rank(rows)) if told else False


def _working(
    book: Book, train: Train, at: int, found: Plays, chain: Chain, told: Sequence[Told]
) -> Working:
    """What went into a link's play, and what came out."""
    unit = book.measures[train.figure].measured_in
    w = Working(source=SOURCE)
    for n in range(len(train.links)):
        keep_gain(w, train, n, unit)
    for n, each in enumerate(told, 1):
        name = train.links[each.link].name
        where = "read on" if isinstance(each, Read) else "at the end, all held before"
        w.given(f"x_{n}", each.value, unit, meaning=f"{where} {name}")
        w.given(f"u_x_{n}", each.u, unit, meaning="its standard uncertainty")
    one = chain.links[at]
    w.given("new_low", one.low, unit, meaning="new range, from")
    w.given("new_high", one.high, unit, meaning="new range, to")
    w.given("limit", one.limit, unit, meaning="most that is allowed")
    w.note(
        f"Before any reading: about {100 * OVER:.0f} % of links are over their limit, and "
        f"{100 * TIGHT:.0f} % were set tighter than new; great wear is rare, less than none cannot "
        "be."
    )
    w.note("Every play of all the links is weighed by how well it fits all readings:")
    play = found.stands
    w.given("j_low", play.low, unit, meaning="1 in 20 has less")
    w.given("j", play.likely, unit, meaning="as likely more as less")
    w.given("j_high", play.high, unit, meaning="1 in 20 has more")
    w.given("p_over", play.over, "", meaning="chance that it is over its limit")
    return w
