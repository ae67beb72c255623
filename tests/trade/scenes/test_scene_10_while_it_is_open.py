"""Both brakes are opened; is the axle seal done as well? Times and money are invented."""

from published.as_printed import as_printed
from shimstock.trade.machine.state import JointNow
from shimstock.trade.machine.words import JointWord
from shimstock.trade.reach.closing import why_not_close
from shimstock.trade.reach.way import way_in
from shimstock.trade.reach.while_open import advice, break_even, while_it_is_open
from trade.scenes.diesel import diesel, signed

BOTH = ("left-wheel", "left-brake", "right-wheel", "right-brake")


def test_both_housings_are_430_minutes():
    way = way_in(diesel(), ["left-brake", "right-brake"])

    assert way.opens == BOTH
    assert way.minutes == 430
    assert way.working.disagreements() == []


def test_the_shoes_of_both_sides_ask_for_both_housings():
    assert set(way_in(diesel(), ["brake-shoes"]).opens) == set(BOTH)
    assert way_in(diesel(), ["brake-shoes right"]).opens == ("right-wheel", "right-brake")


def test_asbestos_caution_is_due_before_the_housing_is_opened():
    due = {each.key: each.joints for each in way_in(diesel(), ["right-brake"]).cautions}

    assert due["asbestos"] == ("right-brake",)
    assert {"lifting", "tyre", "stands"} <= set(due)


def test_the_seal_pays_above_about_one_in_two():
    worked = break_even(
        minutes_now=80, minutes_later=215, paint_minutes=60, money_now=16, money_later=16, rate=10
    )

    assert worked.working.value("C_n") == as_printed("29.3")
    assert worked.working.value("C_l") == as_printed("61.8")
    assert worked.value == as_printed("0.47")
    assert advice(worked.value) == "do it if you think it more likely than about one in two"
    assert worked.working.disagreements() == []


def test_the_way_finds_the_seal_itself_with_its_own_times():
    opens = way_in(diesel(), ["left-brake", "right-brake"]).opens
    prices = {"right-axle-seal": 16.0, "left-axle-seal": 16.0}

    listed = {w.joint: w for w in while_it_is_open(diesel(), opens, seal_price=prices)}

    seal = listed["right-axle-seal"]
    assert (seal.minutes_now, seal.minutes_later) == (80, 215)
    assert seal.chance == as_printed("0.47")
    assert seal.working.disagreements() == []


def test_the_housing_stays_open_until_the_linings_are_answered():
    opened = {key: JointNow(JointWord.OPEN) for key in BOTH}

    def hard(answers):
        reasons = why_not_close(diesel(joints=opened, answers=answers), "right-brake")
        return [reason.why for reason in reasons if "asbestos" in reason.why and reason.hard]

    assert len(hard({})) == 1
    assert len(hard({"linings": signed("not needed", "they look new")})) == 1
    for said in ("new", "tested", "treated as asbestos"):
        assert hard({"linings": signed(said)}) == []
