import pytest

from shimstock.trade.measure.mates import SetOption, landed_cost


def test_everything_that_is_paid_and_comes_back_is_counted():
    option = SetOption("pair", price=100, bench=20, carriage=7, tax=3, deposit=50, cores=2)

    assert landed_cost(option).value == 230


def test_a_core_taken_back_gives_its_deposit_back():
    kept = SetOption("pair", price=420, deposit=150, cores=2, accepted=0)
    back = SetOption("pair", price=420, deposit=150, cores=2, accepted=2)

    assert landed_cost(kept).value - landed_cost(back).value == 300


def test_no_more_cores_come_back_than_were_paid_for():
    with pytest.raises(ValueError, match="3 cores accepted, 2 deposits paid"):
        landed_cost(SetOption("pair", price=420, deposit=150, cores=2, accepted=3))
