from collections.abc import Sequence
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOLT, OLD_BOLT
from shimstock.trade.sums.declare import Of, Read, a_sum
from shimstock.trade.sums.fasteners._amounts import Torque, above_nothing
from shimstock.trade.sums.fasteners._hole_order import Point, middle_of, on_a_circle, order

MOST = 60
EXAMPLES = ("'0,0; 4,0; 4,3; 0,3'",)


def parse_holes(text: str) -> tuple[Point, ...]:
    """Reads holes as x,y; x,y; … in any one unit. Raises NotUnderstood.

    >>> parse_holes("0,0; 4,2.5")
    ((0.0, 0.0), (4.0, 2.5))
    """
    holes = []
    for part in text.replace("−", "-").split(";"):
        if not part.strip():
            continue
        try:
            x, y = (float(each) for each in part.split(","))
        except ValueError:
            raise NotUnderstood(text, f"has a hole that is not x,y: {part}", EXAMPLES) from None
        if not (abs(x) < 1e6 and abs(y) < 1e6):
            raise NotUnderstood(text, f"has a hole that is out of reach: {part}", EXAMPLES)
        holes.append((x, y))
    if not 2 <= len(holes) <= MOST or len(set(holes)) < len(holes):
        wrong = f"must name 2 to {MOST} holes, each in its own place"
        raise NotUnderstood(text, wrong, EXAMPLES)
    return tuple(holes)


@a_sum(
    example="--holes '0,0; 4,0; 8,0; 12,0; 0,5; 4,5; 8,5; 12,5' --torque '70 lbf.ft'",
    cautions=(BOLT, OLD_BOLT, "The order that the maker's book prints goes before this one."),
)
def tightening_order(
    *,
    holes: Annotated[tuple[Point, ...], Read(parse_holes, "0,0; 4,0; 4,3; 0,3")] | None = None,
    count: Annotated[int, Of("", least=2, most=MOST)] | None = None,
    rounds: Annotated[Sequence[float], Of("%", above=0, most=100)] = (50, 75, 100),
    torque: Torque | None = None,
) -> Worked[tuple[int, ...]]:
    """Order in which the bolts of a head or flange are pulled, from the middle outwards and across.

    Holes are numbered as they are typed; on a circle, from the top and clockwise. Where no holes
    are typed, the bolts stand on a circle.

    holes: places of the holes as x,y; x,y; …, all in one unit.
    count: bolts on a circle, a count.
    rounds: share of the torque for each round, in %.
    torque: torque of the last round, with its unit.
    Raises NotPossible where not exactly one of holes and count is given, or a round pulls less than
    the last.
    Source: common practice, no source: middle outwards, crosswise, in rounds of 50, 75 and 100 %.

    >>> tightening_order(count=8).value
    (1, 5, 3, 7, 2, 6, 4, 8)
    """
    w = Working()
    places = _places(w, holes, count)
    found = tuple(i + 1 for i in order(places))
    said = ", ".join(map(str, found))
    w.tell("order", said)
    _rounds(w, rounds, torque)
    w.note(f"Each round in this order: {said}. Then once more round at the full torque.")
    w.note("Slackening goes the other way round, from the outside in, a little at a time.")
    return Worked(found, w)


def _places(w: Working, holes: tuple[Point, ...] | None, count: int | None) -> Sequence[Point]:
    if holes is None and count is None:
        raise NotPossible("the holes", "are not given", "type holes, or count on a circle")
    if holes is not None and count is not None:
        raise NotPossible("holes and count", "are each enough alone", "leave one out")
    if holes is None:
        w.given("z", count or 0, "", meaning="bolts on a circle, numbered clockwise from the top")
        return on_a_circle(count or 0)
    if len(set(holes)) < len(holes) or len(holes) < 2:
        raise NotPossible(f"{len(holes)} holes", "must each have a place", "look at them again")
    w.given("z", len(holes), "", meaning="bolts, numbered as typed")
    for axis, at in (("x", 0), ("y", 1)):
        names = [f"{axis}_{i}" for i in range(1, len(holes) + 1)]
        for name, hole in zip(names, holes, strict=True):
            w.given(name, hole[at], "")
        w.step(f"{axis}_m", f"({' + '.join(names)})/z", middle_of(holes)[at], "", meaning="middle")
    return holes


def _rounds(w: Working, rounds: Sequence[float], torque: Torque | None) -> None:
    """What each round pulls to."""
    if not rounds or list(rounds) != sorted(rounds):
        raise NotPossible("the rounds", "must each pull harder than the last", "as 50, 75, 100")
    w.tell("rounds", ", ".join(f"{share:g} %" for share in rounds))
    if torque is None:
        return
    full = w.given("T", above_nothing("torque", torque, torque.unit), torque.unit,
                   meaning="torque of the last round")  # fmt: skip
    for i, share in enumerate(rounds, start=1):
        w.given(f"q_{i}", share, "%")
        w.step(f"T_{i}", f"T·q_{i}/100", full * share / 100, torque.unit, answer=f"round {i}")
