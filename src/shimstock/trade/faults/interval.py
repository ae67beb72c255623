"""How far the chances of the causes may be trusted, since the book's figures are guesses."""

from __future__ import annotations

from collections.abc import Container, Mapping
from dataclasses import dataclass
from math import log
from typing import TYPE_CHECKING, Any

from shimstock.trade.faults.exact import carried
from shimstock.trade.faults.network import Finding, Network, Told
from shimstock.trade.faults.plan import plan
from shimstock.trade.faults.posed import pose
from shimstock.trade.faults.ranking import rank

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

GOOD_TO = 2.0
"""The book's word is good to this factor on the odds, in nine of ten cases.

It holds for how common a cause is, how strongly it brings a sign on, and how often a sign has
another reason. An assumption of ours, no source.
"""
DEVIATION = log(GOOD_TO) / 1.645
"""Of the log-odds of a figure of the book; nine tenths of a normal lie within 1.645 deviations."""
BOOKS, FEWEST = 400, 60
"""How many books are drawn, and how many there must be to give an interval at all."""
ROOM = 8_000_000
"""How many numbers the tables of all the books may hold."""
SEED = 1


@dataclass(frozen=True)
class Interval:
    """Nine of ten books that are as good as this one give a chance from low to high."""

    low: float
    high: float


def intervals(
    network: Network, told: Told, looked: Mapping[str, int] | None = None
) -> dict[str, Interval]:
    """Give each raised cause the interval of its chance that comes from the book being a guess.

    Priors, weights and leaks are drawn anew, their log-odds normal around the book's, and the
    causes ranked exactly with each; 0 and 1 stay. looked: machines counted for a cause whose prior
    was learned; that prior is drawn from a beta, as tight as the book's word at first, and tighter
    with each machine. The same question always gets the same answer. Empty where so much was seen
    that there is no room for enough books.
    Raises CannotBe as `rank` does.
    Source: an assumption of ours, no source; see GOOD_TO.
    """
    import numpy as np

    raised = rank(network, told).raised
    order = plan(pose(network, told))
    books = min(BOOKS, ROOM // max(order.cells, 1))
    if not raised or books < FEWEST:
        return {}
    causes = (network.causes.keys() - set(order.alone)) | set(raised)
    drawn = pose(_drawn(network, looked or {}, books, causes, told.findings), told)
    chances, _, _ = carried(drawn, plan(drawn), np.ones(books))
    found = {}
    for cause in raised:
        low, high = np.quantile(chances[cause], (0.05, 0.95))
        found[cause] = Interval(float(low), float(high))
    return found


def _drawn(
    network: Network,
    looked: Mapping[str, int],
    books: int,
    causes: Container[str],
    findings: Container[str],
) -> Network:
    """As many books as were asked for, in one: each number is a row with its value in each book.

    causes, findings: those that are drawn; the others have no say in what is asked, and stay.
    All that is done with the numbers of a network is done with such rows as well; putting what was
    told into it uses it up, since rows are changed in place.
    """
    priors: dict[str, Any] = {
        cause: _prior(prior, looked.get(cause, 0), _random(n))[:books] if cause in causes else prior
        for n, (cause, prior) in enumerate(network.causes.items())
    }
    drawn = {
        key: _finding(each, _random(len(priors) + n), books) if key in findings else each
        for n, (key, each) in enumerate(network.findings.items())
    }
    return Network(priors, drawn, network.exclusive)


def _random(n: int) -> np.random.Generator:
    """One for each cause and finding, so that what is told of one leaves the others as they are."""
    import numpy as np

    return np.random.default_rng((SEED, n))


def _finding(finding: Finding, random: np.random.Generator, books: int) -> Finding:
    leak: Any = _near(finding.leak, random)[:books]
    weights: dict[str, Any] = {c: _near(w, random)[:books] for c, w in finding.weights.items()}
    return Finding(leak, weights, finding.absent, finding.present)


def _near(chance: float, random: np.random.Generator) -> Floats:
    """Chances as the book could have put them."""
    import numpy as np

    off = np.exp(DEVIATION * random.standard_normal(BOOKS))
    return np.clip(chance * off / (chance * off + 1 - chance), 0.0, 1.0)


def _prior(prior: float, looked: int, random: np.random.Generator) -> Floats:
    """Priors as they could be after so many machines, where the book's word was the start."""
    import numpy as np

    if not looked or prior in (0, 1):
        return _near(prior, random)
    word = 1 / (DEVIATION**2 * prior * (1 - prior))  # a beta of so many is as wide as the word
    machines = word + looked
    return np.asarray(random.beta(prior * machines, (1 - prior) * machines, BOOKS))
