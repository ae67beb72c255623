"""What a workshop has found so far, added to what the book says of how common a cause is."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from shimstock.trade.numbers.working import Worked, Working

BOOK_IS_WORTH = 20
"""How many machines looked at the book's word is worth. Our choice, no source."""
SOURCE = "beta prior with its counts, Gelman and others, Bayesian Data Analysis"


@dataclass(frozen=True)
class Count:
    """How often a cause was found there, of the machines in which it was looked for.

    Raises ValueError for counts that no workshop can have.
    """

    confirmed: int = 0
    looked: int = 0

    def __post_init__(self) -> None:
        if not 0 <= self.confirmed <= self.looked:
            raise ValueError(
                f"confirmed {self.confirmed} of {self.looked} looked at: give the machines in which"
                " it was found, from 0 up to those in which it was looked for"
            )

    def __add__(self, other: Count) -> Count:
        return Count(self.confirmed + other.confirmed, self.looked + other.looked)


def together(sheds: Iterable[Mapping[str, Count]]) -> dict[str, Count]:
    """Add up the counts of several workshops, cause by cause."""
    total: dict[str, Count] = {}
    for shed in sheds:
        for cause, count in shed.items():
            total[cause] = total.get(cause, Count()) + count
    return total


def learned(priors: Mapping[str, float], counts: Mapping[str, Count]) -> dict[str, float]:
    """Work out the prior of every cause from the book's and from what was counted.

    A cause that nobody counted keeps the book's prior; a count of a cause that is not among the
    priors is left out. Taking a count away gives the prior back as it was.

    >>> learned({"gear": 0.03, "key": 0.01}, {"gear": Count(confirmed=2, looked=6)})
    {'gear': 0.1, 'key': 0.01}
    """
    return {
        cause: learned_prior(prior, counts[cause]).value if cause in counts else prior
        for cause, prior in priors.items()
    }


def learned_prior(prior: float, count: Count) -> Worked[float]:
    r"""Chance of a cause before anything is seen, the book's word and the counts together.

    prior: the book's, from 0 to 1.
    Source: beta prior with its counts, Gelman and others, Bayesian Data Analysis, chapter 2; from
    memory.
    Raises ValueError where the prior is not a chance.

    >>> print(*learned_prior(0.03, Count(confirmed=2, looked=6)).working.shown(), sep="\n")
    p = 0.03; the book's prior
    s = 20; machines that the book's word is worth
    n = 6; machines in which it was looked for
    k = 2; of these, where it was found
    p' = (p·s + k)/(s + n) = (0.03·20 + 2)/(20 + 6) = 0.1; the prior with what was counted
    """
    if not 0 <= prior <= 1:
        raise ValueError(f"a prior of {prior:g} is no chance; it must lie from 0 to 1")
    w = Working(source=SOURCE)
    p = w.given("p", prior, "", meaning="the book's prior")
    if not count.looked:
        return Worked(p, w)
    s = w.given("s", BOOK_IS_WORTH, "", meaning="machines that the book's word is worth")
    n = w.given("n", count.looked, "", meaning="machines in which it was looked for")
    k = w.given("k", count.confirmed, "", meaning="of these, where it was found")
    known = (p * s + k) / (s + n)
    w.step("p'", "(p·s + k)/(s + n)", known, "", meaning="the prior with what was counted")
    return Worked(known, w)
