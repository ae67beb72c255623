import re
from dataclasses import dataclass

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse
from shimstock.trade.numbers.units import Length

EXAMPLE = "+1.750 ± 0.003; -0.750 ± 0.001"
LINK = re.compile(r"(?P<sign>[-+−]?)\s*(?P<size>.+?)\s*(?:±|\+/-)\s*(?P<tolerance>.+)", re.ASCII)


@dataclass(frozen=True)
class Link:
    """One dimension of a stack: what it is, its size ± tolerance, and how it counts.

    `counts` is +1 where a larger size makes the result larger, −1 where it makes it smaller, or
    any other share.
    """

    label: str
    nominal: Length
    tolerance: Length
    counts: float = 1.0


def read_links(typed: str) -> list[Link]:
    """Dimensions parted by semicolons, each with its sign and tolerance, in inches or one unit.

    Raises NotUnderstood.

    >>> [(link.counts, link.nominal, link.tolerance) for link in read_links("+2 ± 0.1; -1 ± 0.2")]
    [(1.0, 2.0, 0.1), (-1.0, 1.0, 0.2)]
    """
    parts = [part.strip() for part in typed.split(";") if part.strip()]
    if not parts:
        raise NotUnderstood(typed, "is no row of dimensions", (EXAMPLE,))
    return [_read(part, i) for i, part in enumerate(parts, 1)]


def _read(part: str, i: int) -> Link:
    found = LINK.fullmatch(part)
    if not found:
        raise NotUnderstood(part, "is no dimension with its ± tolerance", (EXAMPLE,))
    counts = -1.0 if found["sign"] in ("-", "−") else 1.0
    sizes = [parse(found[name], unit="count").value for name in ("size", "tolerance")]
    return Link(f"dimension {i}", Length(sizes[0]), Length(sizes[1]), counts)
