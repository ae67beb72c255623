"""Every sum comes to what its sources print, and not to what they misprint."""

import pytest

from published.as_printed import as_printed
from published.check import Check, Misprint
from published.every import all_checks, all_misprints, computed, met
from shimstock.trade.sums.find import families

CHECKS, MISPRINTS = all_checks(), all_misprints()

WITHOUT: set[str] = set()
"""Sums of which no number is in print; this set may only shrink."""


def named(check: Check | Misprint) -> str:
    printed = check.printed if isinstance(check, Check) else check.wrong
    return f"{check.sum}-{check.answer}-{printed}-{check.source[:30]}".replace(" ", "_")


@pytest.mark.parametrize("check", CHECKS, ids=named)
def test_a_sum_comes_to_what_is_printed(check):
    assert met(check), computed(check.sum, check.given, check.answer, check.unit)


@pytest.mark.parametrize("slip", MISPRINTS, ids=named)
def test_a_misprint_is_not_come_to(slip):
    got = computed(slip.sum, slip.given, slip.answer, slip.unit)
    assert got == as_printed(slip.right)
    assert got != as_printed(slip.wrong)


@pytest.mark.parametrize("check", [each for each in CHECKS if each.within], ids=named)
def test_a_check_with_a_bound_of_its_own_can_fail(check):
    """None is so wide that a result a tenth off would pass."""
    assert check.allowed < 0.1 * abs(float(as_printed(check.printed).number))


def test_every_sum_is_checked_but_those_for_which_nothing_is_in_print():
    names = {name for names in families().values() for name in names}
    assert names - {check.sum for check in CHECKS} == WITHOUT


def test_no_check_stands_twice():
    seen = [
        (each.sum, tuple(sorted(each.given.items())), each.answer, each.printed, each.unit)
        for each in CHECKS
    ]
    assert sorted({each for each in seen if seen.count(each) > 1}) == []
