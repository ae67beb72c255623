"""Which sums there are: a family a folder, a sum a file, the file named like the sum."""

import pkgutil
from difflib import get_close_matches
from functools import cache
from importlib import import_module
from typing import Any

from shimstock.trade import sums
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.declare import Sum, declared


@cache
def families() -> dict[str, tuple[str, ...]]:
    """The names of the sums of each family, as they are typed; nothing is imported for it."""
    found = {}
    for package in pkgutil.iter_modules(sums.__path__):
        if package.ispkg:
            path = [f"{sums.__path__[0]}/{package.name}"]
            names = (each.name for each in pkgutil.iter_modules(path))
            found[_typed(package.name)] = tuple(_typed(n) for n in names if n[0] != "_")
    return found


def find_sum(name: str) -> Sum:
    """The sum called so, however it is spelled.

    Raises NotUnderstood with the names that are near.

    >>> find_sum("Exact backlash").name
    'exact-backlash'
    """
    wanted = name.strip().lower().replace(" ", "-").replace("_", "-")
    for family, names in families().items():
        if wanted in names:
            return _of(family, wanted)
    if not wanted:
        raise NotUnderstood(name, "was typed for a sum", ("shimstock sum lists them all: one",))
    would = tuple(_near(wanted)) or ("shimstock sum lists them all, one of which",)
    raise NotUnderstood(name, "is no sum of this book", would)


def all_sums() -> dict[str, list[Sum]]:
    """Every sum by family."""
    return {family: [_of(family, name) for name in names] for family, names in families().items()}


def _near(wanted: str) -> list[str]:
    """Sums whose name has the word, then those spelt alike, then those that speak of it."""
    every = [each for names in families().values() for each in names]
    found = [name for name in every if wanted in name]
    found += get_close_matches(wanted, every, 2, 0.7)
    if not found:
        word = wanted.replace("-", " ").rstrip("s")
        said = [each for sums in all_sums().values() for each in sums]
        found = [each.name for each in said if word in each.sentence.lower()]
    return list(dict.fromkeys(found or get_close_matches(wanted, every, 3, 0.5)))[:5]


def _of(family: str, name: str) -> Sum:
    found = declared(getattr(_module(family, name), name.replace("-", "_")))
    assert found is not None, f"{family}/{name} declares no sum"
    return found


def _module(family: str, name: str) -> Any:
    path = ".".join(each.replace("-", "_") for each in (family, name))
    return import_module(f"{sums.__name__}.{path}")


def _typed(name: str) -> str:
    return name.replace("_", "-")
