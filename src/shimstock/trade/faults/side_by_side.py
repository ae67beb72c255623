"""The chances of the causes for several things told that differ little, worked out at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from shimstock.trade.faults import exact
from shimstock.trade.faults.network import CannotBe, Network, Told
from shimstock.trade.faults.plan import plan
from shimstock.trade.faults.posed import Posed, Shown, pose

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

ROOM = 2_000_000
"""How many numbers the tables of all of them may hold."""


def chances_of_each(network: Network, told: Sequence[Told]) -> Mapping[str, Floats] | None:
    """The exact chance of each cause, a value for each thing told, in their order.

    One way through the causes serves them all. None where that takes too much room, or where some
    of it cannot be: then each is to be ranked by itself.
    """
    import numpy as np

    if not told or any(_never(network, each) for each in told):
        return None
    try:
        posed = _in_rows([pose(network, each) for each in told])
        order = plan(posed, ROOM / len(told))
        if order.cells * len(told) > ROOM:
            return None
        chances, _, _ = exact.carried(posed, order, np.ones(len(told)))
    except CannotBe:
        return None
    return chances


def _never(network: Network, told: Told) -> bool:
    """Whether what always shows is called not seen."""
    return any(
        said is False and network.findings[key].leak == 1
        for key, said in told.findings.items()
        if key in network.findings
    )


def _in_rows(posed: Sequence[Posed]) -> Posed:
    """Several questions as one, each number a row; a finding that one does not ask of says nothing.

    Findings that are not asked of count as likely whether they show or not.
    """
    import numpy as np

    causes = list(posed[0].there)
    there: Any = np.array([[each.there[cause] for each in posed] for cause in causes])
    away: Any = np.array([[each.away[cause] for each in posed] for cause in causes])
    every = {key: shown for each in posed for key, shown in each.shown.items()}
    return Posed(
        there=dict(zip(causes, there, strict=True)),
        away=dict(zip(causes, away, strict=True)),
        shown={key: _in_row(key, shown, posed) for key, shown in every.items()},
        exclusive=posed[0].exclusive,
    )


def _in_row(key: str, shown: Shown, posed: Sequence[Posed]) -> Shown:
    import numpy as np

    says_nothing = Shown(shown.leak, shown.weights, 1.0, 1.0)
    row = [each.shown.get(key, says_nothing) for each in posed]
    if_not: Any = np.array([each.if_not for each in row])
    if_so: Any = np.array([each.if_so for each in row])
    return Shown(shown.leak, shown.weights, if_not, if_so)
