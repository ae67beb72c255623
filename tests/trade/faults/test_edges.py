"""Edges of the ranking and of the next check: what is told once, tied, paid once, left out."""

import random

import pytest

from shimstock.trade.faults import exact, possible
from shimstock.trade.faults.ahead import minutes_in_order, worth_trying
from shimstock.trade.faults.case import Case, offered
from shimstock.trade.faults.field import _sureness, shows_in, start
from shimstock.trade.faults.network import CannotBe, Check, Finding, Network, Spread, Told
from shimstock.trade.faults.plan import plan
from shimstock.trade.faults.posed import pose
from shimstock.trade.faults.ranking import rank
from shimstock.trade.faults.search import next_checks
from shimstock.trade.faults.why import suspected
from trade.faults.small_fan import NETWORK, ROCK_READ, ROCKING
from trade.faults.test_possible import a_network


def test_a_check_is_over_only_when_all_that_it_gives_is_known():
    """By the docstring of Check.gives; no source."""
    both = {"both": Check(5, gives=("hunts", "oil"), confirms=("mesh",))}
    half = Told({"rocks": True, "oil": True})
    whole = Told({"rocks": True, "oil": True, "hunts": False})

    assert [each.check for each in next_checks(NETWORK, half, both, {}).offers] == ["both"]
    assert next_checks(NETWORK, whole, both, {}).offers == ()


def test_past_the_reach_of_the_tables_no_table_is_made(monkeypatch):
    """Tables of more than 2^30 numbers do not fit a workshop's computer."""
    monkeypatch.setattr(exact, "REACH", 0)
    monkeypatch.setattr(exact, "solve", lambda *_: pytest.fail("tables past their reach"))
    told = Told({"f0": True, "f1": True, "f2": True, "f3": True})

    machines = possible.possible(pose(a_network(30, 8), told))

    assert machines.weight.sum() == pytest.approx(1)


def test_a_reading_that_speaks_against_a_cause_does_not_send_anybody_to_look_for_it():
    """Of 0.1 in the bell of a sound bevel is e^8 times as high; by hand."""
    told = Told({"oil": True, "tip": 0.1})
    checks = {
        "hold-bevel": Check(20, confirms=("bevel",)),
        "blow": Check(5, confirms=("breather",)),
    }

    assert [each.check for each in next_checks(NETWORK, told, checks, {}).offers] == ["blow"]


def test_a_reading_that_speaks_against_a_cause_makes_it_no_suspect():
    assert suspected(NETWORK, Told({"tip": 0.1})) == frozenset()
    assert suspected(NETWORK, Told({"tip": 0.3})) == {"bevel"}


def test_what_always_shows_cannot_be_called_not_seen():
    """A chance of 1 and its opposite cannot both be told; by definition."""
    network = Network({"a": 0.1}, {"always": Finding(1.0, {"a": 0.5})})

    with pytest.raises(CannotBe, match="always"):
        rank(network, Told({"always": False}))


def test_questions_that_save_minutes_come_before_those_that_only_tell_more():
    """A sign that parts two long checks saves more than one that parts two short ones."""
    network = Network(
        {"a": 0.05, "b": 0.05, "c": 0.02, "d": 0.02},
        {
            "rocks": Finding(0.01, dict.fromkeys("abcd", 0.8)),
            "parts-short": Finding(0.02, {"a": 0.9}),
            "parts-long": Finding(0.02, {"d": 0.9}),
        },
    )
    minutes = {"a": 5.0, "b": 5.0, "c": 90.0, "d": 90.0}
    checks = {key: Check(takes, confirms=(key,)) for key, takes in minutes.items()}
    found = next_checks(network, ROCKING, checks, {}, free=network.findings)
    first, second = found.questions

    assert (first.finding, second.finding) == ("parts-long", "parts-short")
    assert first.saves > second.saves and first.tells < second.tells


def a_point(checks, told=ROCKING):
    return start(NETWORK, told, possible.possible(pose(NETWORK, told)), checks, {}, frozenset())


def test_a_check_that_was_done_tells_nothing_more():
    checks = {"line": Check(5, confirms=("hub",)), "listen": Check(5, gives=("hunts",))}
    point = a_point(checks)

    assert 1 in worth_trying(point, 8)
    assert 1 not in worth_trying(point.after(1), 8)


def test_what_shows_only_the_cause_that_a_check_settles_is_not_told_twice():
    """Finding the cause and telling of it are one result; by the docstring of Field.tells."""
    checks = {
        "settles": Check(5, gives=("tip",), confirms=("bevel",)),
        "only tells": Check(5, gives=("tip",)),
    }
    settles, only_tells = a_point(checks).field.tells

    assert settles == [] and len(only_tells) == 1


def test_a_cause_that_is_shut_out_by_what_was_seen_is_tied_to_it():
    """If one of a pair is looked at, the other is likelier or not; by the docstring of offered."""
    network = Network(
        {"worn": 0.05, "tight": 0.05, "other": 0.05},
        {"rocks": Finding(0.01, {"worn": 0.8}), "felt": Finding(0.01, {"tight": 0.9}),
         "smells": Finding(0.01, {"other": 0.9})},
        (("worn", "tight"),),
    )  # fmt: skip
    checks = {
        "feel": Check(5, gives=("felt",), confirms=("tight",)),
        "smell": Check(5, gives=("smells",), confirms=("other",)),
    }

    assert set(offered(Case(network, checks, {}, ROCKING))) == {"feel"}


def test_a_cause_with_no_weight_on_a_sign_is_no_suspect_of_it():
    network = Network({"a": 0.1, "b": 0.1}, {"f": Finding(0.1, {"a": 0.5, "b": 0.0})})

    assert suspected(network, Told({"f": True})) == {"a"}


def test_how_surely_a_check_shows_a_cause_counts_its_other_reasons_too():
    """Noisy-OR of the cause and the leak, Pearl 1988: 1 − 0.7·0.5."""
    network = Network({"a": 0.1}, {"f": Finding(0.3, {"a": 0.5})})

    assert _sureness(network, Check(5, gives=("f",), confirms=("a",)), "a") == pytest.approx(0.65)


def test_a_joint_that_three_checks_need_is_paid_once_of_all():
    """By hand: 60 to open, then 5 for each check, by what is still not found."""
    shared = {
        cause: Check(5, confirms=(cause,), joints=frozenset({"lid"}))
        for cause in ("hub", "bevel", "mesh")
    }
    machines = possible.possible(pose(NETWORK, ROCKING))
    point = start(NETWORK, ROCKING, machines, shared, {"lid": 60.0}, frozenset())

    by_hand, here = 60 * point.chance, point
    while here.gains.max() > 0:
        by_hand += 5 * here.chance
        here = here.after(int(here.gains.argmax()))
    assert minutes_in_order(point) == pytest.approx(by_hand, rel=1e-4)


def test_no_machine_that_is_written_down_has_two_causes_that_exclude_each_other():
    network = Network(
        {"a": 0.2, "b": 0.2}, {"f": Finding(0.1, {"a": 0.9, "b": 0.9})}, (("a", "b"),)
    )
    told = Told({"f": True})
    machines = possible.possible(pose(network, told))

    assert not machines.there.all(axis=1).any()
    shares = dict(zip(machines.causes, machines.weight @ machines.there, strict=True))
    assert shares == pytest.approx(dict(rank(network, told).chances))


def test_a_reading_is_on_the_wrong_side_as_often_as_its_bells_overlap():
    """0.1 and 0.3, each ± 0.05: two deviations to the point between, 2.28 % (normal tables)."""
    machines = possible.possible(pose(NETWORK, Told({"tip": 0.2})))
    shows = shows_in(machines, ROCK_READ)

    assert (shows.min(), shows.max()) == pytest.approx((0.02275, 0.97725), abs=5e-6)


def test_many_signs_that_nothing_ties_together_do_not_contradict_each_other():
    """160 disjoint pairs: each cause by Bayes by hand;"""
    causes = {f"c{n}": 0.005 for n in range(160)}
    network = Network(causes, {f"f{n}": Finding(0.001, {f"c{n}": 0.8}) for n in range(160)})
    shows = 1 - 0.999 * 0.2
    found = rank(network, Told({f"f{n}": True for n in range(160)}))
    assert found.chances["c0"] == pytest.approx(0.005 * shows / (0.005 * shows + 0.995 * 0.001))


def test_few_causes_of_very_many_signs_are_ranked_exactly(monkeypatch):
    """Tables over 26 open signs hold too much; the sets of 12 causes are only 4096."""
    pick = random.Random(12)
    causes = {f"c{n}": pick.uniform(0.01, 0.3) for n in range(12)}
    signs = {
        f"f{n}": Finding(0.02, {c: pick.uniform(0.1, 0.9) for c in pick.sample(list(causes), 8)})
        for n in range(26)
    }
    network, told = Network(causes, signs), Told(dict.fromkeys(signs, True))
    found = rank(network, told)
    assert found.method == "exact"

    few = Told(dict.fromkeys(list(signs)[:8], True))
    by_tables = rank(network, few).chances
    monkeypatch.setattr(exact, "REACH", 0)
    assert rank(network, few).method == "exact"
    assert rank(network, few).chances == pytest.approx(dict(by_tables), abs=1e-12)


def test_so_many_signs_of_few_causes_that_each_machine_weighs_next_to_nothing():
    """400 signs seen that one cause brings on: of the other by Bayes, by hand."""
    signs = {f"f{n}": Finding(0.01, {"a": 0.1, "b": 0.001}) for n in range(400)}
    network = Network({"a": 0.05, "b": 0.05}, signs)

    machines = possible.possible(pose(network, Told(dict.fromkeys(signs, True))))

    assert machines.weight @ machines.there[:, 0] == pytest.approx(1)
    speaks = ((1 - 0.99 * 0.9 * 0.999) / (1 - 0.99 * 0.9)) ** 400
    other = 0.05 * speaks / (0.05 * speaks + 0.95)
    assert machines.weight @ machines.there[:, 1] == pytest.approx(other)


def test_past_what_tables_may_hold_no_steps_are_given():
    posed = pose(NETWORK, ROCKING)

    assert plan(posed).steps and plan(posed).cells > 1
    assert plan(posed, 1).steps == ()
    assert plan(posed, 1).alone == plan(posed).alone


def test_next_checks_says_cannot_be_as_its_docstring_does():
    network = Network(
        {"a": 0.1, "b": 0.1}, {"f": Finding(0.0, {"a": 1.0}), "g": Finding(0.01, {"b": 0.5})}
    )
    with pytest.raises(CannotBe):
        next_checks(
            network,
            Told({"f": False, "g": True}, {"a": True}),
            {"k": Check(5, confirms=("b",))},
            {},
        )


def test_a_reading_at_the_limit_hardly_brings_a_weak_cause_into_the_search():
    """By Bayes by hand: P(there and it shows by it | reading) 0.0105, it shows at all 0.0124."""
    reading = Finding(0.02, {"a": 0.1}, Spread(10, 4), Spread(26, 4))
    found = next_checks(
        Network({"a": 0.1}, {"f": reading}),
        Told({"f": 18.05}),
        {"k": Check(10, confirms=("a",))},
        {},
    )
    assert found.offers[0].finds == pytest.approx((0.0105 + 0.0124) / 2, abs=0.00005)


def test_a_drawn_ranking_raises_nothing_that_nothing_speaks_for():
    """Causes that no sign told is tied to stay at their prior, by definition."""
    pick = random.Random(1)
    tied = {f"c{n}": pick.uniform(0.005, 0.06) for n in range(60)}
    signs = {
        f"f{n}": Finding(
            0.01, {c: pick.choice((0.1, 0.4, 0.8)) for c in pick.sample(list(tied), 14)}
        )
        for n in range(40)
    }
    alone = {f"z{n}": 0.01 for n in range(100)}
    found = rank(Network(tied | alone, signs), Told(dict.fromkeys(signs, True)))
    assert found.method == "sampled"
    assert not set(found.raised) & set(alone)
