"""Every sum comes to what its sources print, and not to what they misprint."""

import pytest

from published.as_printed import as_printed
from published.check import Check, Misprint
from published.every import all_checks, all_misprints, computed, met

CHECKS, MISPRINTS = all_checks(), all_misprints()


def named(check: Check | Misprint) -> str:
    return f"{check.sum}-{check.answer}-{check.source[:30]}".replace(" ", "_")


@pytest.mark.parametrize("check", CHECKS, ids=named)
def test_a_sum_comes_to_what_is_printed(check):
    assert met(check), computed(check.sum, check.given, check.answer, check.unit)


@pytest.mark.parametrize("slip", MISPRINTS, ids=named)
def test_a_misprint_is_not_come_to(slip):
    got = computed(slip.sum, slip.given, slip.answer, slip.unit)
    assert got == as_printed(slip.right)
    assert got != as_printed(slip.wrong)


@pytest.mark.parametrize("check", CHECKS, ids=named)
def test_a_check_can_fail(check):
    """No bound of its own is so wide that a result a tenth off would pass."""
    if check.within:
        assert check.allowed < 0.1 * abs(float(as_printed(check.printed).number))
