"""A fault that a search left standing stands before whatever is run or driven."""

from datetime import date

import pytest

from shimstock.trade.machine.state import MachineNow, SearchNow
from shimstock.trade.reach.gates import gate
from trade.scenes.diesel import TODAY, diesel, starter

STUCK = "rack-stuck"
RUNAWAY = "will-not-stop"


def stands(key, *, today=TODAY, passed=frozenset(), **search):
    searches = (SearchNow(1, "", search.pop("on", TODAY), **search),)
    view = gate(diesel(searches=searches, passed=passed), key)
    return [point for point in view.open_points if point.kind == "fault"]


def test_the_marks_are_those_of_the_trade():
    """C06 and S10 of the fault tables."""
    assert diesel().book.causes[STUCK].mark == "C06"
    assert diesel().book.signs[RUNAWAY].mark == "S10"


@pytest.mark.parametrize("key", ["first-start", "road", "handing-over"])
@pytest.mark.parametrize("goes_on", [True, False])
def test_no_machine_is_run_on_a_fault_that_is_found_and_not_put_right(key, goes_on):
    (point,) = stands(key, found=(STUCK,), goes_on=goes_on)

    assert point.hard and point.where == "1"
    assert point.what.endswith("was found in the search of 4 Jun and is not put right")
    assert stands("paint", found=(STUCK,)) == []


@pytest.mark.parametrize("key", ["first-start", "road", "handing-over"])
@pytest.mark.parametrize("sign", [RUNAWAY, "overspeeds"])
def test_no_second_start_of_an_engine_that_would_not_stop_until_it_is_known_why(key, sign):
    """Public guidance on runaway diesels: no second start until the cause is found."""
    (point,) = stands(key, seen=(sign,))

    assert point.hard and point.what.endswith("seen in the search of 4 Jun, which goes on")
    (given_up,) = stands(key, seen=(sign,), goes_on=False)
    assert given_up.what.endswith("which ended without settling it")
    assert stands(key, found=(), seen=()) == []


def test_a_sign_whose_cause_is_found_stands_by_its_cause():
    (point,) = stands("first-start", seen=(RUNAWAY,), found=(STUCK,))

    assert point.key == f"fault:cause:{STUCK}"


def test_a_sign_that_cannot_hurt_does_not_block():
    harmless = next(k for k, s in diesel().book.signs.items() if not s.dangers and not s.forbids)

    assert stands("first-start", seen=(harmless,)) == []


def test_an_old_search_is_named_with_its_year():
    (point,) = stands("first-start", found=(STUCK,), on=date(2025, 11, 27))

    assert "the search of 27 Nov 2025" in point.what


def forbidding():
    for name in ("two-cylinder-diesel", "petrol-crawler"):
        yield from ((name, key) for key, sign in starter(name).signs.items() if sign.forbids)


@pytest.mark.parametrize(("name", "sign"), list(forbidding()))
def test_every_sign_with_which_nothing_may_run_stands_before_first_start(name, sign):
    """Whether or not it has a danger word of its own."""
    now = MachineNow(starter(name), TODAY, searches=(SearchNow(1, "", TODAY, seen=(sign,)),))

    faults = [each.key for each in gate(now, "first-start").open_points if each.kind == "fault"]
    assert faults == [f"fault:sign:{sign}"]


def test_a_sign_that_takes_minutes_stands_by_no_danger_of_its_check():
    """That it is cranked for does not make low compression a danger."""
    sign = diesel().book.signs["compression-low"]

    assert sign.minutes and "running" in sign.dangers
    assert stands("first-start", seen=("compression-low",)) == []


def test_a_sign_is_explained_only_by_a_cause_of_its_own():
    other = next(k for k in diesel().book.causes if k not in diesel().book.signs[RUNAWAY].causes)

    points = stands("first-start", seen=(RUNAWAY,), found=(other,))
    assert [each.key for each in points] == [f"fault:cause:{other}", f"fault:sign:{RUNAWAY}"]
