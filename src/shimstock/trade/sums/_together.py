"""Values that say something only beside another one."""

from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.not_possible import NotPossible


def goes_with(name: str, value: float | None, other: str, beside: float | None) -> None:
    """Refuse a value that was typed without the one it is used with.

    Raises NotPossible naming the one that is missing.

    >>> goes_with("hole", 6, "tension", None)
    Traceback (most recent call last):
    shimstock.trade.numbers.not_possible.NotPossible: hole 6 says nothing as long as \
tension is missing; type it too, or leave the hole out
    """
    if value is not None and beside is None:
        raise NotPossible(
            f"{name} {written(value)}",
            f"says nothing as long as {other} is missing",
            f"type it too, or leave the {name} out",
        )
