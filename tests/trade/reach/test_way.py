import pytest

from shimstock.trade.reach.blocked import NoWay
from shimstock.trade.reach.target import Target, UnknownName, find_target
from shimstock.trade.reach.way import way_in
from trade.reach.small import BOOK, JOINTS, book, machine


def test_joints_before_it_come_first_and_minutes_add_up():
    way = way_in(machine(), ["governor-base"])

    assert way.opens == ("hood-bolts", "cover-face", "governor-base")
    assert (way.minutes_open, way.minutes_close) == (70, 95)
    assert way.closes == ("governor-base", "cover-face", "hood-bolts")
    assert way.proven and way.alternatives == 2


def test_a_joint_that_stands_open_costs_nothing_and_may_turn_the_way():
    way = way_in(machine("hood-bolts", "tank-straps"), ["governor-base"])

    assert way.opens == ("rod-pin", "governor-base")
    assert way.open_already == ("tank-straps",)
    assert way.minutes_open == 50


def test_a_part_is_reached_by_a_joint_that_shows_it_or_by_its_own():
    assert way_in(machine(), ["governor"]).opens == ("hood-bolts", "cover-face")
    assert way_in(machine(), ["tank"]).opens == ("hood-bolts",)
    assert way_in(machine("hood-bolts"), ["tank"]).opens == ()


def test_a_part_without_joints_is_in_reach_already():
    way = way_in(machine(), ["badge"])

    assert way.opens == () and way.minutes == 0
    assert "in reach already" in " ".join(way.working.shown())
    assert way.working.disagreements() == []


def test_taking_a_part_off_opens_every_joint_that_holds_it_and_what_sits_on_it():
    way = way_in(machine(), ["hood"], take_off=True)

    assert set(way.opens) == {"hood-bolts", "rod-pin"}


def test_several_targets_share_their_way():
    way = way_in(machine(), ["J4", "Head to case"])

    assert way.minutes_open == 10 + 20 + 5 + 45 + 120
    assert way.opens == ("hood-bolts", "tank-straps", "rod-pin", "governor-base", "head-face")


def test_what_it_uses_up_is_counted_together():
    way = way_in(machine(), ["governor-base", "left-pump-seat", "head"])

    assert {use.name: use.count for use in way.uses}["O-ring"] == 3
    ring = next(use for use in way.uses if use.name == "O-ring")
    assert ring.joints == ("governor-base", "left-pump-seat")
    assert {use.name: use.amounts for use in way.uses if use.kind == "fluid"} == {
        "diesel": ("5 gal",),
        "coolant": ("3 gal",),
    }
    cover = next(use for use in way_in(machine(), ["cover-face"]).uses if use.kind == "gasket")
    assert str(cover) == "1 × cover gasket, 0.015 in"


def test_cautions_come_once_with_their_joints():
    due = {each.key: each.joints for each in way_in(machine(), ["head-face"]).cautions}

    assert due == {"fuel": ("tank-straps", "head-face"), "lift": ("head-face",)}
    assert len(way_in(machine(), ["head-face"]).working.cautions) == 2


def test_steps_to_look_out_for():
    way = way_in(machine(), ["governor-base", "head-face"])

    assert [(step.joint, step.hands, step.lifts) for step in way.heavy] == [
        ("head-face", 2, "Head")
    ]
    assert way.cover_tonight == ("governor-base",)
    assert way.seal_inside_first == ("head-face",)
    cover = way_in(machine(), ["cover-face"])
    assert [(each.joint, each.figure, each.by) for each in cover.measure_first] == [
        ("cover-face", "mesh", "gasket")
    ]


def test_a_heavy_part_wants_two_people_whatever_the_book_says_of_hands():
    one_hand = book({"head-face": {**JOINTS["head-face"], "hands": 1}})

    (step,) = way_in(machine(of=one_hand), ["head-face"]).heavy

    assert (step.hands, step.lifts) == (2, "Head")


def test_what_else_comes_into_reach():
    assert way_in(machine(), ["governor-base"]).reaches == (
        "hood",
        "tank",
        "cover",
        "governor",
        "spring",
    )


def test_the_working_shows_the_sums_and_agrees():
    way = way_in(machine(), ["governor-base"])

    assert way.working.disagreements() == []
    assert any("70 min" in line for line in way.working.shown())


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("governer", "did you mean governor?"),
        ("J44", "J"),
        ("xyzzy", "none like it"),
    ],
)
def test_an_unknown_name_is_answered_with_the_nearest(typed, said):
    with pytest.raises(UnknownName, match=typed) as error:
        way_in(machine(), [typed])

    assert said.casefold() in str(error.value).casefold()


def test_an_unknown_target_is_refused_too():
    with pytest.raises(UnknownName, match="did you mean hood-bolts"):
        way_in(machine(), [Target("joint", "hood-bolt")])
    with pytest.raises(UnknownName, match="did you mean governor"):
        way_in(machine(), [Target("part", "governors")])


def test_a_name_of_two_things_asks_which():
    twice = book(
        parts={
            "a": {"name": "Tank casting", "sits-on": "case"},
            "b": {"name": "Tank Casting", "sits-on": "case"},
        }
    )

    with pytest.raises(UnknownName, match="part a or part b"):
        find_target(twice, " tank casting")


def test_a_mark_or_a_name_in_any_case_will_do():
    assert find_target(BOOK, " j3 ") == Target("joint", "cover-face")
    assert find_target(BOOK, "governor COVER") == Target("part", "cover")


def test_joints_that_block_each_other_are_named():
    ring = {
        "hood-bolts": {**JOINTS["hood-bolts"], "after": ["tank-straps"]},
    }

    with pytest.raises(NoWay) as error:
        way_in(machine(of=book(ring)), ["head-face"])

    assert "hood-bolts waits for tank-straps, tank-straps waits for hood-bolts" in str(error.value)
    assert "Head to case" in str(error.value)


def test_a_need_that_can_be_met_is_not_blamed():
    ring = {
        "cover-face": {**JOINTS["cover-face"], "after": ["rod-pin", "governor-base"]},
        "governor-base": {**JOINTS["governor-base"], "after": ["cover-face"]},
    }

    with pytest.raises(NoWay, match="cover-face waits for governor-base, governor-base waits for"):
        way_in(machine(of=book(ring)), ["governor"])


def test_ties_go_to_fewer_joints_and_then_to_the_book():
    def costs(minutes):
        return {"open": minutes, "close": 0, "seals": "nothing"}

    def tied(*ways):
        return {
            "a": {"name": "A", "between": ["badge", "case"], **costs(5)},
            "b": {"name": "B", "between": ["badge", "case"], **costs(5)},
            "c": {"name": "C", "between": ["badge", "case"], **costs(10)},
            "d": {
                "name": "D",
                "between": ["spring", "case"],
                "after": [{"any-of": [list(way) for way in ways]}],
                **costs(1),
            },
        }

    assert way_in(machine(of=book(tied("ab", "c"))), ["d"]).opens == ("c", "d")
    assert way_in(machine(of=book(tied("b", "a"))), ["d"]).opens == ("a", "d")


def test_a_joint_inside_what_comes_off_stays_closed():
    badge = {
        "badge-screws": {
            "name": "Badge to hood",
            "between": ["badge", "hood"],
            "seals": "nothing",
            "open": 1,
            "close": 1,
        }
    }
    way = way_in(machine(of=book(badge)), ["hood"], take_off=True)

    assert set(way.opens) == {"hood-bolts", "rod-pin"}


def test_what_was_in_reach_before_is_not_listed():
    assert way_in(machine("cover-face"), ["governor-base"]).reaches == ("spring",)


def test_two_hands_more_are_said_even_where_nothing_is_heavy():
    two = {"cover-face": {**JOINTS["cover-face"], "hands": 2}}

    (step,) = way_in(machine(of=book(two)), ["cover-face"]).heavy

    assert (step.joint, step.hands, step.lifts) == ("cover-face", 2, "")


def test_one_of_several_pieces_may_be_wanted():
    right = {"right-pump-seat": {**JOINTS["left-pump-seat"], "name": "Right pump", "mark": "J8"}}
    both = book(right)

    assert way_in(machine(of=both), ["pump right"]).opens == ("right-pump-seat",)
    assert way_in(machine(of=both), ["Pump, left"]).opens == ("left-pump-seat",)
    assert set(way_in(machine(of=both), ["pump"]).opens) == {"left-pump-seat", "right-pump-seat"}
    assert way_in(machine(of=both), ["pump/left"], take_off=True).opens == ("left-pump-seat",)
    with pytest.raises(UnknownName, match="there is left, right"):
        way_in(machine(of=both), [Target("part", "pump", "middle")])


def test_one_thing_is_finished_before_the_next_is_begun():
    way = way_in(machine(), ["head-face", "cover-face"])

    assert way.opens == ("hood-bolts", "tank-straps", "head-face", "cover-face")
    assert way_in(machine(), ["cover-face", "head-face"]).opens == (
        "hood-bolts",
        "cover-face",
        "tank-straps",
        "head-face",
    )
