"""All checks and misprints, gathered from the modules beside this one."""

import pkgutil
from collections.abc import Mapping
from importlib import import_module

from published import checks
from published.as_printed import as_printed
from published.check import Check, Misprint
from shimstock.trade.sums.find import find_sum
from shimstock.trade.sums.typed import work_out


def all_checks() -> list[Check]:
    """Every check, family by family."""
    return [check for module in _modules() for check in module.CHECKS]


def all_misprints() -> list[Misprint]:
    """Every misprint, family by family."""
    return [each for module in _modules() for each in getattr(module, "MISPRINTS", ())]


def computed(sum_: str, given: Mapping[str, str], answer: str, unit: str) -> float | str:
    """What the sum comes to, in the unit that the source prints."""
    done = work_out(find_sum(sum_), given, wanted=[unit] if unit else [])
    return done.results[answer].value


def met(check: Check) -> bool:
    """Whether the sum comes to what is printed."""
    value = computed(check.sum, check.given, check.answer, check.unit)
    if isinstance(value, str):
        return value == check.printed
    # The bound itself is within: 0.0045 is printed 0.005 and 0.004 alike.
    return abs(value - float(as_printed(check.printed).number)) <= check.allowed * (1 + 1e-9)


def _modules():
    names = sorted(each.name for each in pkgutil.iter_modules(checks.__path__))
    return [import_module(f"{checks.__name__}.{name}") for name in names]
