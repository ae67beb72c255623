from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.uncertainty import Component, rss, worst_case
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Read, a_sum
from shimstock.trade.sums.stacks._links import EXAMPLE, Link, read_links


@dataclass(frozen=True)
class Stack:
    """Result of a stack: nominal, ± at the worst, ± as the root of the sum of squares."""

    nominal: Length
    worst: Length
    rss: Length


@a_sum(example="--links '+1.750 ± 0.003; -0.750 ± 0.001; -0.120 ± 0.005'")
def stack(
    *, links: Annotated[Sequence[Link], Read(read_links, EXAMPLE)], unit: str = "in"
) -> Worked[Stack]:
    """The gap or play that a chain of dimensions leaves, and how far it can be from nominal.

    links: the dimensions in order, each with sign and ± tolerance, all in `unit`.
    unit: unit of the lengths, such as in or mm.
    Raises NotPossible without a link or with a tolerance below 0.
    Source: dimensional chain arithmetic; the root of the sum of squares takes links as independent.

    >>> got = stack(links=[Link("bore", Length(1.750), Length(0.003)),
    ...                    Link("sleeve", Length(0.750), Length(0.001), -1)]).value
    >>> round(got.nominal, 3), round(got.worst, 3)
    (1.0, 0.004)
    """
    if not links or any(link.tolerance < 0 for link in links):
        raise NotPossible("a stack", "needs a link, and no tolerance below 0", "look at each")
    w = Working()
    for i, link in enumerate(links, 1):
        w.given(f"x_{i}", link.nominal, unit, meaning=link.label)
        w.given(f"t_{i}", link.tolerance, unit, meaning=f"{link.label}, ±")
        if abs(link.counts) != 1:
            w.given(f"c_{i}", link.counts, "", meaning=f"{link.label}, counts")
    nominal = sum(link.counts * link.nominal for link in links)
    parts = [Component(link.label, link.counts, link.tolerance) for link in links]
    worst, root = worst_case(parts), rss(parts)
    terms = [_share(link, i) for i, link in enumerate(links, 1)]
    w.step("x", _signed(links), nominal, unit, meaning="nominal", answer="nominal")
    w.step("t_worst", " + ".join(terms), worst, unit, meaning="± at the worst", answer="worst")
    squares = " + ".join(f"({term})²" if "·" in term else f"{term}²" for term in terms)
    meaning = "± as root of the sum of squares"
    w.step("t_rss", f"√({squares})", root, unit, meaning=meaning, answer="likely")
    return Worked(Stack(Length(nominal), Length(worst), Length(root)), w)


def _share(link: Link, i: int) -> str:
    return f"t_{i}" if abs(link.counts) == 1 else f"|c_{i}|·t_{i}"


def _signed(links: Sequence[Link]) -> str:
    """The nominal as it is shown: x_1 − x_2 + c_3·x_3."""
    shown = ""
    for i, link in enumerate(links, 1):
        sign = "−" if link.counts == -1 else "+"
        term = f"x_{i}" if abs(link.counts) == 1 else f"c_{i}·x_{i}"
        shown += f" {sign} {term}" if shown else f"{sign if sign == '−' else ''}{term}"
    return shown
