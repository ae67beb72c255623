"""The next check, on a network small enough to work out on paper."""

from dataclasses import replace
from itertools import permutations

import pytest

from shimstock.trade.faults.network import Check, Finding, Network, Told
from shimstock.trade.faults.ranking import rank
from shimstock.trade.faults.search import by_chance_a_minute, next_checks
from trade.faults.small_fan import CHECKS, HUNTS, JOINTS, NETWORK, PRIORS, ROCKING, ROCKS


def offer(search, name):
    return next(each for each in search.offers if each.check == name)


def test_one_fault_by_the_best_of_all_orders():
    """A single fault, no joint shared: the first offer begins the best of all orders."""
    chances = {"a": 0.2, "b": 0.5, "c": 0.3}
    minutes = {"a": 3.0, "b": 20.0, "c": 10.0}
    network = Network(
        {name: chance / (1 + chance) for name, chance in chances.items()},
        {"rocks": Finding(0.0, dict.fromkeys(chances, 1.0))},
        (tuple(chances),),
    )
    checks = {name: Check(minutes[name], confirms=(name,)) for name in chances}

    def expected(order):
        left, total = 1.0, 0.0
        for name in order:
            total += left * minutes[name]
            left -= chances[name]
        return total

    best = min(permutations(chances), key=expected)
    search = next_checks(network, ROCKING, checks, {})

    assert search.offers[0].check == best[0] == "a"
    assert search.offers[0].expected == pytest.approx(expected(best), abs=1e-9)
    assert search.offers[0].finds == pytest.approx(0.2)
    assert search.unlisted == pytest.approx(0, abs=1e-12)


def test_a_joint_that_two_checks_need_is_paid_once():
    two = {"hold-bevel": CHECKS["hold-bevel"], "hold-camshaft": CHECKS["hold-camshaft"]}

    search = next_checks(NETWORK, ROCKING, two, JOINTS)

    first = offer(search, "hold-bevel")
    bevel, mesh = (rank(NETWORK, ROCKING).chances[c] for c in ("bevel", "mesh"))
    assert (first.minutes, first.opening, first.joints) == (20, 25, ("side-cover",))
    least, most = 45 + 65 * 0.2, 45 + 65 * 0.5
    assert bevel > mesh and least < first.expected < most


def test_what_is_open_costs_nothing():
    shut = offer(next_checks(NETWORK, ROCKING, CHECKS, JOINTS), "hold-camshaft")
    half = next_checks(NETWORK, ROCKING, CHECKS, JOINTS, frozenset({"side-cover"}))
    bare = next_checks(NETWORK, ROCKING, CHECKS, JOINTS, frozenset(JOINTS))

    assert (shut.opening, shut.joints) == (70, ("side-cover", "top-cover"))
    assert offer(half, "hold-camshaft").joints == ("top-cover",)
    assert offer(bare, "hold-camshaft").opening == 0
    assert bare.offers[0].expected < half.offers[0].expected


def test_the_best_comes_first_and_each_offer_says_what_it_comes_to():
    offers = next_checks(NETWORK, ROCKING, CHECKS, JOINTS).offers

    assert [each.expected for each in offers] == sorted(each.expected for each in offers)
    assert offers[0].check == "line"
    assert "blow" not in [each.check for each in offers]  # it settles nothing that was seen


def test_a_cause_that_happens_to_be_there_is_not_what_is_looked_for():
    """The chance to find the cause is less than the chance that it is there at all."""
    line = offer(next_checks(NETWORK, ROCKING, CHECKS, JOINTS), "line")

    assert 0 < line.finds < rank(NETWORK, ROCKING).chances["hub"]


COMMON = Network({"tap": 0.5, "float": 0.1}, {"stalls": Finding(0.0, {"tap": 0.1, "float": 0.9})})
COMMON_CHECKS = {cause: Check(10, confirms=(cause,)) for cause in COMMON.causes}
TAP, FLOAT, BOTH = 0.5 * 0.9 * 0.1, 0.5 * 0.1 * 0.9, 0.5 * 0.1 * (1 - 0.9 * 0.1)
"""Prior times chance to stall, of the tap alone, the float alone, and both, by hand."""


def test_a_cause_that_could_have_done_it_ends_the_search_half_the_time_that_another_did():
    """Of both, the tap brought it on in 0.1 / 0.91, and is as good in half of the rest."""
    tap = offer(next_checks(COMMON, Told({"stalls": True}), COMMON_CHECKS, {}), "tap")

    did = 0.1 / (1 - 0.9 * 0.1)
    ends = TAP + BOTH * (did + (1 - did) / 2)
    assert tap.finds == pytest.approx(ends / (TAP + FLOAT + BOTH), abs=1e-9)


@pytest.mark.parametrize(
    ("told", "found"),
    [(Told({"stalls": True}, {"float": True}), ()), (Told({"stalls": True}), ("float",))],
)
def test_where_one_was_found_and_the_search_goes_on_only_what_did_it_is_looked_for(told, found):
    """Told as confirmed, the float is surely there; only shown by a check, it may still not be."""
    tap = offer(next_checks(COMMON, told, COMMON_CHECKS, {}, found=found), "tap")

    surely = told.causes
    whole = (FLOAT + BOTH) / 0.1 * 1.0 if surely else TAP + FLOAT + BOTH
    did = BOTH / 0.1 if surely else BOTH
    alone = 0.0 if surely else TAP
    assert tap.finds == pytest.approx((alone + did * 0.1 / (1 - 0.9 * 0.1)) / whole, abs=1e-9)


def test_one_found_that_could_not_have_done_it_changes_nothing():
    told = Told({"rocks": True, "oil": True})
    blown = next_checks(NETWORK, told, CHECKS, JOINTS, about={"rocks"}, found={"breather"})

    assert blown == next_checks(NETWORK, told, CHECKS, JOINTS, about={"rocks"})


def test_a_settled_cause_is_not_checked_again():
    told = replace(ROCKING, causes={"hub": False})

    search = next_checks(NETWORK, told, CHECKS, JOINTS)

    assert "line" not in [each.check for each in search.offers]
    assert search.offers[0].check == "hold-bevel"


def test_a_check_whose_findings_are_told_is_over():
    looking = {"look": Check(2, gives=("hunts",)), **CHECKS}

    assert offer(next_checks(NETWORK, ROCKING, looking, JOINTS), "look").finds == 0
    told = Told({"rocks": True, "hunts": False})
    assert "look" not in [e.check for e in next_checks(NETWORK, told, looking, JOINTS).offers]


def test_a_test_that_parts_the_causes_goes_before_a_long_way_in():
    """Two minutes that tell the mesh from the bevel save an opening of hours."""
    hours = {"side-cover": 25.0, "top-cover": 600.0}
    tell = replace(HUNTS, weights={"mesh": 0.99}, leak=0.001)
    network = Network(PRIORS, {"rocks": ROCKS, "hunts": tell})
    checks = {"look": Check(2, gives=("hunts",)), "hold-camshaft": CHECKS["hold-camshaft"]}
    checks["strip"] = Check(10, confirms=("bevel",), joints=frozenset({"other"}))

    search = next_checks(network, ROCKING, checks, hours | {"other": 500.0})

    assert search.offers[0].check == "look"


def test_free_signs_that_tell_something_are_asked_for():
    search = next_checks(NETWORK, ROCKING, CHECKS, JOINTS, free=("hunts", "oil", "rocks"))

    assert [each.finding for each in search.questions] == ["hunts"]
    hunts = search.questions[0]
    seen = rank(NETWORK, ROCKING).chances["mesh"]
    assert hunts.seen == pytest.approx(0.02 + 0.98 * 0.4 * seen, abs=1e-9)
    assert hunts.tells > 0.02
    assert 0 < hunts.saves < 45  # it can save the opening of the top cover, no more


def test_the_question_that_saves_most_comes_first():
    """Whether it hunts says which of two long ways in comes first; it smokes for neither much."""
    network = Network(
        {"bevel": 0.03, "mesh": 0.03},
        {
            "rocks": Finding(0.01, {"bevel": 0.8, "mesh": 0.8}),
            "smokes": Finding(0.3, {"mesh": 0.3}),
            "hunts": Finding(0.02, {"mesh": 0.9}),
        },
    )
    checks = {name: Check(60, confirms=(name,)) for name in ("bevel", "mesh")}

    first, second = next_checks(network, ROCKING, checks, {}, free=("smokes", "hunts")).questions

    assert (first.finding, second.finding) == ("hunts", "smokes")
    assert first.saves > second.saves > 0
    assert first.saves < 60


def test_only_what_the_search_is_about_is_looked_for():
    told = Told({"rocks": True, "oil": True})

    whole = next_checks(NETWORK, told, CHECKS, JOINTS)
    oil = next_checks(NETWORK, told, CHECKS, JOINTS, about={"oil"})

    assert {"blow", "line"} <= {each.check for each in whole.offers}
    assert [each.check for each in oil.offers] == ["blow"]
    assert oil.offers[0].expected == pytest.approx(5)


def test_nothing_seen_is_nothing_to_look_for():
    assert next_checks(NETWORK, Told(), CHECKS, JOINTS).offers == ()
    assert next_checks(NETWORK, Told({"rocks": False}), CHECKS, JOINTS).offers == ()


def test_what_no_check_can_find_is_said():
    only = {"line": CHECKS["line"]}

    search = next_checks(NETWORK, ROCKING, only, JOINTS)

    assert search.unlisted == pytest.approx(1 - search.offers[0].finds)
    assert search.offers[0].expected == pytest.approx(5)


def test_by_chance_a_minute_leaves_out_what_is_at_its_prior():
    order = by_chance_a_minute(rank(NETWORK, ROCKING), CHECKS, JOINTS)

    assert order == [("line", 5), ("hold-bevel", 45), ("hold-camshaft", 90)]
    bare = by_chance_a_minute(rank(NETWORK, ROCKING), CHECKS, JOINTS, frozenset(JOINTS))
    assert bare == [("line", 5), ("hold-bevel", 20), ("hold-camshaft", 20)]
