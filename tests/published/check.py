"""A value that a source prints, and the sum that must come to it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from published.as_printed import as_printed

Known = Literal[
    "read",  # the printed number was read in a stored copy of the source
    "from memory",  # of the source, not read again
    "worked out",  # from a published formula and table; the number itself is not in print
    "library",  # a general-purpose reference library's value
    "common practice, no source",
]


@dataclass(frozen=True)
class Check:
    """A sum, what is typed for it, and what the source prints.

    sum: its name. given: what is typed, by parameter. answer: which result.
    printed: the number as printed, or the words. unit: it is printed in; "" for none.
    within: how far off the result may be where that is not half of the last digit: `0.3 %` of the
    printed value, or a number in its unit; `why` then says why.
    """

    sum: str
    given: Mapping[str, str]
    answer: str
    printed: str
    unit: str
    source: str
    known: Known
    within: str = ""
    why: str = ""

    def __post_init__(self) -> None:
        if bool(self.within) != bool(self.why):
            raise ValueError(f"{self.sum}, {self.source}: within and why belong together")

    @property
    def allowed(self) -> float:
        """How far the result may be from the printed number, in its unit."""
        printed = as_printed(self.printed)
        if not self.within:
            return float(printed.half)
        share, percent, _ = self.within.partition("%")
        return float(share) / 100 * abs(float(printed.number)) if percent else float(share)


@dataclass(frozen=True)
class Misprint:
    """A number in print that is wrong: the sum must not come to it.

    wrong: what is printed. right: what the sum comes to, to as many digits as are written.
    because: what is wrong in the source.
    """

    sum: str
    given: Mapping[str, str]
    answer: str
    wrong: str
    right: str
    unit: str
    source: str
    because: str
