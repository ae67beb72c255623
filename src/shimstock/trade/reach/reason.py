"""Why something may not be done yet."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Reason:
    """One thing that stands in the way.

    what: the thing it is about. why: what is wrong. would_do: the next move.
    hard: no reason that a person writes down can replace the next move.
    """

    what: str
    why: str
    would_do: str
    hard: bool = False

    def __str__(self) -> str:
        return f"{self.what}: {self.why}; {self.would_do}"
