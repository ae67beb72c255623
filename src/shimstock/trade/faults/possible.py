"""Machines that fit what was told: which causes are there in each, and how much it weighs."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING

from shimstock.trade.faults import exact
from shimstock.trade.faults.network import NOT_ALL_TRUE, CannotBe
from shimstock.trade.faults.plan import Closes, Opens, Plan, Takes, plan, tied_together
from shimstock.trade.faults.posed import Posed, share

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from shimstock.trade.faults.tables import Table

    Floats = NDArray[np.float64]
    Ints = NDArray[np.intp]
    Flags = NDArray[np.bool_]

ALL_OF_THEM = 12
"""Up to so many tied causes, every machine is written down; with more, some are drawn."""
DRAWN = 3000
LEFT_OUT = 1e-9
"""Machines that weigh less than this beside the heaviest are left out."""


@dataclass(frozen=True)
class Possible:
    """Machines that fit, as far as the causes go that what was told ties together.

    causes: names of the columns. there: a row for each machine. weight: of each; all come to 1.
    alone: chances of the other causes, which are there or not independently of these.
    """

    causes: tuple[str, ...]
    there: Flags
    weight: Floats
    alone: dict[str, float]

    def quiet(self, leak: float, weights: dict[str, float]) -> Floats:
        """For each machine, the chance that a finding does not show."""
        import numpy as np

        for cause, chance in self.alone.items():
            leak = 1 - (1 - leak) * (1 - chance * weights.get(cause, 0.0))
        quiet: Floats = np.full(len(self.weight), 1.0 - leak)
        for column, cause in enumerate(self.causes):
            if weight := weights.get(cause):
                quiet *= np.where(self.there[:, column], 1 - weight, 1.0)
        return quiet


def possible(posed: Posed, seed: int = 1) -> Possible:
    """Write down the machines that fit what was told, or draw some where they are too many.

    Drawn ones come from the exact tables, and past their reach from the drawn herds.
    Raises CannotBe where what was told cannot all be true.
    """
    import numpy as np

    order = plan(posed, exact.REACH)
    tied = tuple(tied_together(posed, order).there)
    alone = {cause: share(posed, cause) for cause in order.alone}
    if len(tied) <= ALL_OF_THEM:
        return _weighed(tied, posed, alone, LEFT_OUT)
    if order.cells <= exact.REACH:
        drawn = _drawn(posed, order, tied, np.random.default_rng(seed))
    else:
        from shimstock.trade.faults.drawn import draw

        drawn = draw(tied_together(posed, order), seed).there
    there, times = np.unique(drawn, axis=0, return_counts=True)
    return Possible(tied, there, times / times.sum(), alone)


def of_every_machine(posed: Posed, order: Plan) -> dict[str, float]:
    """The chances of the causes with every machine written down: for few causes, much seen.

    Raises CannotBe where what was told cannot all be true.
    """
    alone = {cause: share(posed, cause) for cause in order.alone}
    every = _weighed(tuple(tied_together(posed, order).there), posed, alone, 0.0)
    chances = (float(chance) for chance in every.weight @ every.there)
    return alone | dict(zip(every.causes, chances, strict=True))


def _weighed(
    tied: tuple[str, ...], posed: Posed, alone: dict[str, float], left_out: float
) -> Possible:
    """Every machine of the tied causes, but for those that weigh less than a share of the most."""
    import numpy as np

    there: Flags = np.array(list(product((False, True), repeat=len(tied))), dtype=bool)
    there = there.reshape(2 ** len(tied), len(tied))
    weight: Floats = np.ones(len(there))
    for column, cause in enumerate(tied):
        weight *= np.where(there[:, column], posed.there[cause], posed.away[cause])
    for group in posed.exclusive:
        weight[there[:, [tied.index(cause) for cause in group]].sum(axis=1) > 1] = 0
    whole = Possible(tied, there, weight, {})
    for shown in posed.shown.values():
        quiet = whole.quiet(shown.leak, shown.weights)
        weight *= shown.if_not * quiet + shown.if_so * (1 - quiet)
        if not weight.max() > 0:
            raise CannotBe(NOT_ALL_TRUE)
        weight /= weight.max()  # many findings would come to less than a float can hold
    kept = weight > left_out * weight.max()
    return Possible(tied, there[kept], weight[kept] / weight[kept].sum(), alone)


def _drawn(posed: Posed, order: Plan, tied: tuple[str, ...], random: np.random.Generator) -> Flags:
    """Machines drawn one cause after another, with the tables of what is still to come."""
    import numpy as np

    behind = exact.solve(posed, order).behind
    there: Flags = np.zeros((DRAWN, len(tied)), dtype=bool)
    state: list[Ints] = []
    for step, later in zip(order.steps, behind[1:], strict=True):
        if isinstance(step, Opens):
            state.insert(step.axis, np.zeros(DRAWN, dtype=np.intp))
            _explained(state, step.axis, step.leak, later, np.ones(DRAWN, dtype=bool), random)
        elif isinstance(step, Closes):
            del state[step.axis]
        else:
            there[:, tied.index(step.cause)] = _taken(state, step, later, posed, random)
    return there


def _taken(
    state: list[Ints], step: Takes, later: Table, posed: Posed, random: np.random.Generator
) -> Flags:
    """Draw whether a cause is there in each machine, and what it then explains."""
    from shimstock.trade.faults.tables import ladder

    rungs = ladder(later, step)
    there = posed.there[step.cause] * _at(rungs[0], state)
    away = posed.away[step.cause] * _at(later, state)
    taken: Flags = random.random(DRAWN) * (there + away) < there
    for (axis, weight), rung in zip(step.explains, rungs[1:], strict=True):
        _explained(state, axis, weight, rung, taken, random)
    for axis in step.fills:
        state[axis] = state[axis] | taken
    return taken


def _explained(
    state: list[Ints],
    axis: int,
    chance: float,
    later: Table,
    where: Flags,
    random: np.random.Generator,
) -> None:
    """Draw whether the finding on an axis becomes explained, where it is not yet."""
    import numpy as np

    no, yes = ([*state[:axis], np.full_like(state[axis], n), *state[axis + 1 :]] for n in (0, 1))
    so = chance * _at(later, yes)
    not_so = (1 - chance) * _at(later, no)
    drawn = random.random(DRAWN) * (so + not_so) < so
    state[axis] = np.where(where & drawn, 1, state[axis])


def _at(table: Table, state: list[Ints]) -> Floats:
    import numpy as np

    return np.broadcast_to(table[tuple(state)], (DRAWN,))
