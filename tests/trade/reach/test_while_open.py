import pytest

from shimstock.trade.reach.chance import in_words
from shimstock.trade.reach.way import way_in
from shimstock.trade.reach.while_open import advice, break_even, while_it_is_open
from trade.reach.small import JOINTS, book, machine

EVEN = {
    "minutes_now": 10,
    "minutes_later": 20,
    "paint_minutes": 0,
    "money_now": 0,
    "money_later": 0,
    "rate": 12,
}


def test_without_money_the_rate_does_not_matter():
    # 10 min now, 20 min later: half, whatever an hour is worth.
    assert break_even(**EVEN).value == break_even(**{**EVEN, "rate": 99}).value == 0.5


def test_the_working_agrees():
    worked = break_even(**{**EVEN, "paint_minutes": 17, "money_now": 3.5, "money_later": 4})

    assert worked.working.disagreements() == []
    assert worked.working.shown()[-1] == advice(worked.value)


def test_work_that_costs_as_much_later_is_left():
    assert advice(break_even(**{**EVEN, "minutes_later": 10}).value).startswith("leave it")


@pytest.mark.parametrize("wrong", [{"minutes_now": -1}, {"minutes_later": 0, "rate": 0}])
def test_a_sum_that_makes_no_sense_is_refused(wrong):
    with pytest.raises(ValueError, match=r"below zero|costs nothing"):
        break_even(**{**EVEN, **wrong})


@pytest.mark.parametrize(
    ("chance", "words"),
    [
        (0.5, "about one in two"),
        (0.9, "about nine in ten"),
        (0.96, "nearly certain"),
        (0.06, "about one in twenty"),
        (0.02, "less than one in forty"),
    ],
)
def test_a_chance_is_said_as_people_say_it(chance, words):
    assert in_words(chance) == words


def test_joints_that_gain_by_an_open_way_are_listed_lowest_chance_first():
    way = way_in(machine(), ["tank-straps"])  # opens the hood and the tank

    listed = {each.joint: each for each in way.while_open}

    assert set(listed) == {"cover-face", "head-face"}
    cover = listed["cover-face"]
    # now 15 + 20 = 35; later 10 + 15 + 35 = 60 and 60 of paint: 35/120
    assert (cover.minutes_now, cover.minutes_later) == (35, 60)
    assert cover.chance == pytest.approx(35 / 120)
    assert [each.chance for each in way.while_open] == sorted(e.chance for e in way.while_open)
    assert all(each.working.disagreements() == [] for each in way.while_open)


def test_a_joint_that_was_openable_before_is_not_listed():
    assert "left-pump-seat" not in {each.joint for each in way_in(machine(), ["hood"]).while_open}


def test_nor_one_that_an_open_joint_already_lets_in():
    way = way_in(machine("hood-bolts"), ["rod-pin"])

    assert "cover-face" not in {each.joint for each in way.while_open}


def test_a_joint_that_takes_no_time_is_left_out():
    nothing = {"open": 0, "close": 0}
    quick = {
        "hood-bolts": {**JOINTS["hood-bolts"], **nothing},
        "tank-straps": {**JOINTS["tank-straps"], **nothing},
    }

    listed = {each.joint for each in way_in(machine(of=book(quick)), ["tank"]).while_open}

    assert listed == set()


def test_later_is_counted_from_the_closed_machine():
    opened = machine("hood-bolts")

    (cover,) = [w for w in while_it_is_open(opened, ["cover-face"]) if w.joint == "governor-base"]

    assert cover.minutes_later == 10 + 15 + 15 + 20 + 45 + 60


def test_the_price_of_a_seal_counts_on_both_sides():
    (cover,) = while_it_is_open(machine(), ["hood-bolts"], seal_price={"cover-face": 5}, rate=12)[
        :1
    ]

    assert cover.joint == "cover-face"
    assert cover.chance == pytest.approx((35 / 60 * 12 + 5) / (120 / 60 * 12 + 5))
