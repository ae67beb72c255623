"""What must not be run or turned, by what was seen and found.

Source: common practice, no source: nobody starts an engine that ran away before the cause is found,
and nobody runs one on a bad bearing, short of oil, or with water in it.
"""

import pytest

from shimstock.trade.faults.forbidden import forbidden, held_by
from shimstock.trade.faults.network import Told
from shimstock.trade.faults.of_book import checks_of
from trade.scenes.diesel import starter

A, B = "two-cylinder-diesel", "petrol-crawler"
BOTH = pytest.mark.parametrize("machine", [A, B])


def held(machine, *seen, cleared=(), there=(), read=None):
    """The checks held back, by key, with what holds them."""
    book = starter(machine)
    causes = dict.fromkeys(cleared, False) | dict.fromkeys(there, True)
    by = forbidden(book, Told(dict.fromkeys(seen, True) | (read or {}), causes))
    found = {check: held_by(book, check, by) for check in checks_of(book)}
    return {check: each.about for check, each in found.items() if each}


def moving(machine, *whens):
    book = starter(machine)
    causes = {f"cause:{key}" for key, cause in book.causes.items() if cause.check.when in whens}
    return causes | {
        f"sign:{key}"
        for key, sign in book.signs.items()
        if sign.when in whens and (sign.minutes or sign.open)
    }


@BOTH
def test_nothing_is_run_or_cranked_once_it_would_not_stop(machine):
    found = held(machine, "will-not-stop")

    assert set(found) == moving(machine, "running", "cranking")
    assert set(found.values()) == {"sign:will-not-stop"}
    assert {"cause:rings-or-bore-worn", "cause:air-cleaner-choked"} <= set(found)


@BOTH
def test_nothing_is_held_back_without_a_reason(machine):
    assert held(machine, "black-smoke", "oil-outside", cleared=["rod-bearing-worn"]) == {}


@BOTH
@pytest.mark.parametrize("sign", ["knock", "low-oil-pressure"])
def test_with_a_knock_or_low_pressure_nothing_is_run_before_the_oil_is_looked_at(machine, sign):
    assert set(held(machine, sign)) == moving(machine, "running")
    assert held(machine, sign, cleared=["oil-wrong"]) == {}
    assert set(held(machine, sign, there=["oil-wrong"])) == moving(machine, "running")


def test_nobody_is_asked_to_start_what_must_not_run():
    book = starter(A)
    by = forbidden(book, Told({"knock": True}, {}))

    assert book.signs["white-smoke-hard-start"].when == "turning"
    assert held_by(book, "sign:white-smoke-hard-start", by).about == "sign:knock"


@BOTH
def test_with_water_lost_nothing_is_turned_until_there_is_none_in_the_oil(machine):
    assert set(held(machine, "loses-water")) == moving(machine, "running", "cranking")
    assert held(machine, "loses-water", cleared=["casting-cracked"]) == {}
    assert held(machine, "loses-water", cleared=["head-gasket-blown"]) != {}


@BOTH
@pytest.mark.parametrize(
    "cause", ["rod-bearing-worn", "main-bearing-worn", "oil-pump-worn", "head-gasket-blown"]
)
def test_what_running_would_wreck_is_not_run_and_may_be_cranked(machine, cause):
    found = held(machine, there=[cause])

    assert set(found) == moving(machine, "running")
    assert set(found.values()) == {f"cause:{cause}"}


def test_a_stuck_rack_forbids_cranking_and_says_so_before_what_forbids_running():
    found = held(A, "knock", there=["rack-stuck", "rod-bearing-worn"])

    assert set(found) == moving(A, "running", "cranking")
    assert set(found.values()) == {"cause:rack-stuck"}


def test_a_weak_lift_pump_waits_for_the_dipstick_where_its_fuel_may_be():
    assert held(A, there=["lift-pump-weak"])
    assert held(A, there=["lift-pump-weak"], cleared=["oil-wrong"]) == {}


def test_a_pressure_that_was_read_counts_by_its_number():
    """Below the starter's limit of use it is low, above it not."""
    figure = starter(A).figures["oil-pressure-rated"]
    low = figure.allowed.low

    assert held(A, read={"low-oil-pressure": low - 3})
    assert held(A, read={"low-oil-pressure": low + 3}) == {}


@BOTH
def test_every_hold_that_ends_has_a_cause_that_can_be_cleared_standing(machine):
    book = starter(machine)
    for entry in [*book.causes.values(), *book.signs.values()]:
        for cause in entry.forbids.until if entry.forbids else ():
            check = book.causes[cause].check
            assert check.when is None or check.standing


def test_what_waits_for_several_causes_waits_for_each():
    book = _with_sign("knock", until=("oil-wrong", "oil-pump-worn"))

    def stands(*cleared):
        told = Told({"knock": True}, dict.fromkeys(cleared, False))
        return [each.about for each in forbidden(book, told)]

    assert stands("oil-wrong") == stands("oil-pump-worn") == ["sign:knock"]
    assert stands("oil-wrong", "oil-pump-worn") == []


def _with_sign(key, **forbids):
    book = starter(A)
    sign = book.signs[key]
    changed = sign.model_copy(update={"forbids": sign.forbids.model_copy(update=forbids)})
    return book.model_copy(update={"signs": {**book.signs, key: changed}})


@pytest.mark.parametrize("danger", ["running", "driving"])
def test_a_book_of_before_that_says_only_the_danger_is_held(danger):
    book = starter(A)
    cause = book.causes["rod-bearing-worn"]
    before = cause.check.model_copy(update={"when": None, "dangers": (danger,)})
    old = cause.model_copy(update={"check": before})
    book = book.model_copy(update={"causes": {**book.causes, "rod-bearing-worn": old}})
    by = forbidden(book, Told({"knock": True}, {}))

    assert held_by(book, "cause:rod-bearing-worn", by).about == "sign:knock"
    still = before.model_copy(update={"dangers": ("heavy",)})
    old = cause.model_copy(update={"check": still})
    book = book.model_copy(update={"causes": {**book.causes, "rod-bearing-worn": old}})
    assert held_by(book, "cause:rod-bearing-worn", by) is None
