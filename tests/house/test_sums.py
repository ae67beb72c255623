"""Every sum says its source and its units, shows an example, and its working agrees with itself."""

import doctest
import importlib
import inspect
import pkgutil
import re
from collections.abc import Callable
from functools import wraps
from typing import Any

import pytest

import shimstock.trade.sums
from shimstock.trade.numbers.unit_names import UNITS
from shimstock.trade.numbers.working import Worked

MEASURES = "|".join(re.escape(word) for unit in UNITS for word in (unit.name, unit.words))
# How a parameter's line says its unit: "in mm", "in `unit`", "teeth …", "a count", "no unit".
SAYS_UNIT = re.compile(
    rf"\bin (?:{MEASURES}|`unit`|its own unit|a unit of length)(?!\w)"
    r"|\bunit of the lengths\b|\bteeth\b|\ba count\b|\bno unit\b"
)


def public_sums() -> dict[str, Callable[..., Any]]:
    found = {}
    package = shimstock.trade.sums
    for module in pkgutil.walk_packages(package.__path__, package.__name__ + "."):
        for name, thing in vars(importlib.import_module(module.name)).items():
            if inspect.isfunction(thing) and thing.__module__ == module.name and name[0] != "_":
                found[f"{module.name.removeprefix(package.__name__ + '.')}.{name}"] = thing
    return found


SUMS = public_sums()


def complaints(thing: Callable[..., Any]) -> list[str]:
    """What a sum's docstring leaves out."""
    text = inspect.getdoc(thing) or ""
    out = [f"no {word}" for word in ("Source:", ">>>") if word not in text]
    if "Worked[" not in str(inspect.signature(thing).return_annotation):
        out.append("gives no working")
    for name in inspect.signature(thing).parameters:
        line = re.search(rf"^{name}: (.*)$", text, re.MULTILINE)
        if not line:
            out.append(f"{name} has no line")
        elif not SAYS_UNIT.search(line[1]):
            out.append(f"{name} has no unit")
    kinds = {p.kind for p in inspect.signature(thing).parameters.values()}
    if kinds != {inspect.Parameter.KEYWORD_ONLY}:
        out.append("takes arguments without their names")
    return out


def examples_worked(thing: Callable[..., Any]) -> list[Worked[Any]]:
    """Every result that the docstring's example gets from the function itself."""
    seen: list[Worked[Any]] = []

    @wraps(thing)
    def watched(**given: Any) -> Worked[Any]:
        seen.append(thing(**given))
        return seen[-1]

    names = {**inspect.getmodule(thing).__dict__, thing.__name__: watched}
    for test in doctest.DocTestFinder(recurse=False).find(thing, thing.__name__, globs=names):
        doctest.DocTestRunner(verbose=False).run(test)
    return seen


def test_the_sums_are_found():
    assert len(SUMS) >= 17


@pytest.mark.parametrize("name", SUMS)
def test_a_sum_says_its_source_its_units_and_an_example(name):
    assert complaints(SUMS[name]) == []


@pytest.mark.parametrize("name", SUMS)
def test_the_working_of_the_example_agrees(name):
    worked = examples_worked(SUMS[name])
    assert worked, "the example does not call the sum"
    for one in worked:
        assert one.working.disagreements() == []
        assert one.working.source
        assert one.working.shown()


def test_what_is_left_out_is_named():
    def half(*, bore: float, wear: float) -> Worked[float]:
        """Half of the bore.

        bore: the bore, in mm.
        wear: how much is gone in the block.
        """
        raise NotImplementedError

    assert complaints(half) == ["no Source:", "no >>>", "wear has no unit"]
