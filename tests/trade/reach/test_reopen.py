import pytest

from shimstock.trade.machine.state import JointNow
from shimstock.trade.machine.words import JointWord
from shimstock.trade.reach.drip import drip_loss
from shimstock.trade.reach.reopen import FITTING_AGAIN, reopen
from trade.reach.small import machine


def leaking(joint):
    return machine(joints={joint: JointNow(JointWord.LEAKING)})


def test_paint_comes_on_top_later():
    worked = reopen(leaking("cover-face"), "cover-face", paint_minutes=100, paint_money=7)

    assert (worked.value.now, worked.value.after_paint, worked.value.money) == (60, 160, 7)
    assert worked.value.reopen_now
    assert "60 min against 160 min and 7" in worked.value.says
    assert worked.working.disagreements() == []
    assert worked.value.advice == FITTING_AGAIN


def test_after_paint_everything_before_it_is_shut_again():
    now = machine("hood-bolts", joints={"cover-face": JointNow(JointWord.LEAKING)})

    worked = reopen(now, "cover-face", paint_minutes=100, paint_money=7)

    assert (worked.value.now, worked.value.after_paint) == (35, 160)
    assert worked.working.disagreements() == []


def test_off_the_paint_it_costs_the_same_later():
    got = reopen(leaking("tank-straps"), "tank-straps", paint_minutes=100, paint_money=7).value

    assert got.now == got.after_paint and got.money == 0
    assert not got.reopen_now and "same later" in got.says
    assert got.advice == ()


def test_cautions_of_the_way_are_due():
    got = reopen(leaking("head-face"), "head-face", paint_minutes=1, paint_money=0)

    assert {each.key for each in got.value.cautions} == {"fuel", "lift"}
    assert len(got.working.cautions) == 2


def test_less_than_nothing_is_refused():
    with pytest.raises(ValueError, match="0 or more"):
        reopen(leaking("cover-face"), "cover-face", paint_minutes=-1, paint_money=0)
    with pytest.raises(ValueError, match="count the seconds"):
        drip_loss(seconds=0)
