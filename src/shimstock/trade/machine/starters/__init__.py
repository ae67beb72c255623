"""The books that ship with the shop: whole machines with stand-in figures, to be extended."""

from __future__ import annotations

from functools import cache
from importlib.resources import files


@cache
def starter_names() -> tuple[str, ...]:
    """Names of all starters, in alphabetical order."""
    found = files(__name__).iterdir()
    return tuple(sorted(f.name.removesuffix(".yaml") for f in found if f.name.endswith(".yaml")))


@cache
def starter_text(name: str) -> str:
    """The text of a starter.

    name: as `starter_names` gives it. Raises KeyError for a name that is not a starter.
    """
    if name not in starter_names():
        raise KeyError(name)
    return files(__name__).joinpath(f"{name}.yaml").read_text(encoding="utf-8")
