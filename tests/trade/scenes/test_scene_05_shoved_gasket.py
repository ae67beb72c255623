"""The cover gasket was shoved over when the cover went on. Times and money are invented."""

import pytest

from shimstock.trade.machine.state import JointNow
from shimstock.trade.machine.words import JointWord
from shimstock.trade.reach.drip import drip_loss
from shimstock.trade.reach.gates import gate, may_pass
from shimstock.trade.reach.reopen import reopen
from trade.scenes.diesel import TODAY, diesel, signed, starter

LEAKING = {"timing-cover": JointNow(JointWord.LEAKING, sealed_on=TODAY)}


def test_a_drop_every_twelve_seconds_is_fifteen_millilitres_an_hour():
    # 300 drops an hour, twenty to the millilitre (from memory).
    worked = drip_loss(seconds=12)

    assert worked.value == 15
    assert worked.working.disagreements() == []


def test_reopen_now_165_against_345_minutes_and_28_money_after_paint():
    worked = reopen(diesel(joints=LEAKING), "timing-cover", paint_minutes=180, paint_money=28)
    got = worked.value

    assert got.way.opens == ("flywheel-clamp", "timing-cover")
    assert (got.way.minutes_open, got.way.minutes_close) == (70, 95)
    assert (got.now, got.after_paint, got.money) == (165, 345, 28)
    assert got.reopen_now and got.says.startswith("reopen now: 165 min against 345 min and 28")
    assert worked.working.disagreements() == []


def test_it_says_how_to_fit_the_gasket_this_time():
    advice = " ".join(
        reopen(
            diesel(joints=LEAKING), "timing-cover", paint_minutes=180, paint_money=28
        ).value.advice
    )

    for said in (
        "two guide studs",
        "grease",
        "cotton",
        "three rounds from the middle",
        "first heat",
    ):
        assert said in advice


def test_the_flywheel_caution_is_due():
    got = reopen(diesel(joints=LEAKING), "timing-cover", paint_minutes=180, paint_money=28).value

    assert {due.key: due.joints for due in got.cautions}["lifting"] == ("flywheel-clamp",)
    assert [step.joint for step in got.way.heavy] == ["flywheel-clamp"]


def test_the_machine_has_46_paint_joints_and_says_how_many_are_checked():
    view = gate(diesel(joints=LEAKING), "paint")

    assert (view.dry, view.on_paint) == (0, 46)
    assert view.says.startswith("0 of 46 leak-checked or chalk-dry; ")
    (again,) = [point for point in view.open_points if point.kind == "open again"]
    assert again.where == "timing-cover" and again.minutes == 165 + 5


ANSWERED = {
    "leaks-chalked": signed("yes"),
    "breather-free": signed("yes"),
    "faces-masked": signed("yes"),
    "iron-dry": signed("yes"),
    "old-paint": signed("tested"),
    "paint-kind": signed("single-pack"),
}


@pytest.mark.parametrize("word", [JointWord.LEAKING, JointWord.WEEPING, JointWord.SEALED])
def test_paint_is_refused_while_one_of_the_46_is_not_dry(word):
    dry = {key: JointNow(JointWord.LEAK_CHECKED) for key in starter().on_paint}
    dry["fuel-bowl"] = JointNow(dry_chalked_on=TODAY)  # undisturbed, and dry under chalk

    assert may_pass(diesel(joints=dry, answers=ANSWERED), "paint") == ()
    (reason,) = may_pass(
        diesel(joints={**dry, "timing-cover": JointNow(word)}, answers=ANSWERED), "paint"
    )
    assert reason.hard
    one_off = gate(diesel(joints={**dry, "timing-cover": JointNow(word)}), "paint")
    assert (one_off.dry, one_off.on_paint) == (45, 46)
