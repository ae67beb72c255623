"""What speaks for and against a cause, on a network small enough to work out on paper."""

from dataclasses import replace
from itertools import product
from math import prod
from time import process_time

import pytest

from shimstock.trade.faults.network import CannotBe, Finding, Network, Told
from shimstock.trade.faults.of_book import network_of
from shimstock.trade.faults.ranking import rank
from shimstock.trade.faults.why import (
    Change,
    Speaks,
    factor_in_words,
    in_words,
    what_would_change,
    why,
)
from trade.faults.small_fan import HUNTS, NETWORK, PRIORS, ROCKING, ROCKS
from trade.scenes.diesel import starter

NAMES = {
    "rocks": "fan rocks",
    "hunts": "engine hunts",
    "hub": "loose hub",
    "bevel": "worn bevels",
    "mesh": "worn mesh",
    "tip": "play at the tip",
}


def odds(chance):
    return chance / (1 - chance)


def speaks_of(network, told, cause):
    return {each.told: each for each in why(network, told, cause).speaks}


def said(network, told, cause, key):
    return in_words(speaks_of(network, told, cause)[key], NAMES)


def test_one_sign_alone_does_all_there_is_between_prior_and_chance():
    found = why(NETWORK, ROCKING, "bevel")

    assert found.prior == PRIORS["bevel"]
    (rocks,) = found.speaks
    assert rocks.factor == pytest.approx(odds(found.chance) / odds(found.prior), rel=1e-9)
    assert rocks.grade == "speaks strongly for"


def test_a_factor_is_the_odds_with_it_over_the_odds_without():
    told = Told({"rocks": True, "hunts": False}, {"hub": False})
    without = Told({"rocks": True}, {"hub": False})
    with_it, less = (rank(NETWORK, each).chances["mesh"] for each in (told, without))

    factor = speaks_of(NETWORK, told, "mesh")["hunts"].factor

    assert factor == pytest.approx(odds(with_it) / odds(less), rel=1e-9)
    assert factor == pytest.approx(0.6, rel=1e-9)  # a sign of medium strength that is not there


def test_a_confirmed_cause_explains_a_sign_away():
    told = Told({"rocks": True}, {"hub": True})
    hub = speaks_of(NETWORK, told, "bevel")["hub"]

    assert hub.factor < 1 and hub.explains == ("rocks",)
    assert said(NETWORK, told, "bevel", "hub") == (
        "loose hub, confirmed: speaks strongly against; it explains already: fan rocks"
    )
    cleared = Told({"rocks": True}, {"hub": False})
    assert said(NETWORK, cleared, "bevel", "hub") == (
        "loose hub, cleared: speaks weakly for; something else must explain: fan rocks"
    )


def test_a_sign_of_another_cause_explains_one_away():
    told = Told({"rocks": True, "hunts": True})
    assert said(NETWORK, told, "bevel", "hunts") == (
        "engine hunts, seen: speaks against; it speaks for another cause of: fan rocks"
    )
    told = Told({"rocks": True, "hunts": False})
    assert said(NETWORK, told, "bevel", "hunts") == (
        "engine hunts, not seen: speaks weakly for; it speaks against another cause of: fan rocks"
    )


def test_a_sign_not_seen_is_not_explained_by_anything():
    told = Told({"rocks": False}, {"hub": True})
    hub = speaks_of(NETWORK, told, "bevel")["hub"]

    assert hub.explains == ()
    assert in_words(hub, NAMES) == "loose hub, confirmed: says nothing"


def test_a_reading_that_is_good_is_not_explained_by_anything():
    both = replace(NETWORK.findings["tip"], weights={"hub": 0.5, "bevel": 1.0})
    network = replace(NETWORK, findings={"tip": both})

    good, bad = (
        speaks_of(network, Told({"tip": read}, {"hub": True}), "bevel")["hub"]
        for read in (0.05, 0.35)
    )

    assert good.explains == ()
    assert bad.explains == ("tip",)


def test_only_what_both_bring_on_is_explained_already():
    told = Told({"rocks": True, "tip": 0.3, "oil": True}, {"hub": True})
    speaks = speaks_of(NETWORK, told, "bevel")

    assert speaks["hub"].explains == ("rocks",)
    assert [speaks[key].direct for key in ("rocks", "tip", "oil")] == [True, True, False]


def test_causes_that_exclude_each_other():
    network = Network(PRIORS, {"rocks": ROCKS}, (("hub", "bevel"),))
    told = Told({"rocks": True}, {"hub": True})

    assert said(network, told, "bevel", "hub") == (
        "loose hub, confirmed: speaks strongly against; the two cannot be there together"
    )


@pytest.mark.parametrize(("reading", "words"), [(0.3, "strongly for"), (0.1, "strongly against")])
def test_a_reading_speaks_in_its_own_words(reading, words):
    told = Told({"rocks": True, "tip": reading})

    assert said(NETWORK, told, "bevel", "tip") == (
        f"play at the tip, read as {reading:g}: speaks {words}"
    )


def test_the_strongest_comes_first_and_what_says_nothing_last():
    told = Told({"oil": False, "hunts": False, "rocks": True})
    speaks = why(NETWORK, told, "mesh").speaks

    assert [each.told for each in speaks] == ["rocks", "hunts", "oil"]
    assert speaks[-1].nothing


@pytest.mark.parametrize(
    ("factor", "grade"),
    [
        (10, "speaks strongly for"),
        (9.9, "speaks for"),
        (3, "speaks for"),
        (2.9, "speaks weakly for"),
        (1.02, "speaks weakly for"),
        (1.01, "says nothing"),
        (1 / 1.01, "says nothing"),
        (1 / 2.9, "speaks weakly against"),
        (1 / 3.1, "speaks against"),
        (0.1, "speaks strongly against"),
        (0.0, "speaks strongly against"),
    ],
)
def test_grades(factor, grade):
    assert Speaks("rocks", True, False, factor).grade == grade


@pytest.mark.parametrize(
    ("factor", "words"),
    [
        (6.9e11, "×1000 or more"),
        (1000, "×1000 or more"),
        (999, "×1000"),
        (160, "×160"),
        (4.04, "×4"),
        (0.012, "×0.012"),
        (0.001, "×0.001"),
        (0.00099, "less than ×0.001"),
        (2.18e-11, "less than ×0.001"),
        (0.0, "less than ×0.001"),
    ],
)
def test_a_factor_is_told_as_people_read_it(factor, words):
    assert factor_in_words(factor) == words


@pytest.mark.parametrize(("there", "words"), [(True, "confirmed"), (False, "cleared")])
def test_what_is_said_of_the_cause_itself_settles_it(there, words):
    told = Told({"rocks": True}, {"hub": there})

    assert said(NETWORK, told, "hub", "hub") == f"loose hub, {words}: that settles it"
    assert not speaks_of(NETWORK, told, "bevel")["hub"].settles


def test_a_settled_cause_is_what_it_was_called():
    hub = speaks_of(NETWORK, Told({"rocks": True}, {"hub": True}), "hub")["hub"]
    assert hub.grade == "speaks strongly for"
    hub = speaks_of(NETWORK, Told({"rocks": True}, {"hub": False}), "hub")["hub"]
    assert hub.grade == "speaks strongly against"


def test_a_name_that_is_not_there():
    with pytest.raises(CannotBe, match="no cause 'fan'"):
        why(NETWORK, ROCKING, "fan")
    with pytest.raises(CannotBe, match="no finding 'fan'"):
        what_would_change(NETWORK, ROCKING, ["fan"])


def chance_of(network, told, key):
    """How likely a finding is to show, every machine tried; without groups and readings."""
    shows = total = 0.0
    for there in product((False, True), repeat=len(network.causes)):
        machine = dict(zip(network.causes, there, strict=True))
        weight = prod(
            float(told.causes[c] == machine[c]) if c in told.causes else p if machine[c] else 1 - p
            for c, p in network.causes.items()
        )
        chances = {
            name: 1 - (1 - f.leak) * prod(1 - w for c, w in f.weights.items() if machine[c])
            for name, f in network.findings.items()
        }
        for name, seen in told.findings.items():
            weight *= chances[name] if seen else 1 - chances[name]
        total += weight
        shows += weight * chances[key]
    return shows / total


def test_what_would_put_another_cause_first():
    changes = what_would_change(NETWORK, ROCKING, ["rocks", "hunts", "oil"])

    seen = chance_of(NETWORK, ROCKING, "hunts")
    bevel = rank(NETWORK, ROCKING).chances["bevel"]
    assert changes == (
        Change("bevel", True, False, pytest.approx(1 - bevel), "hub"),
        Change("hunts", False, True, pytest.approx(seen), "mesh"),
    )


def test_each_change_is_what_the_ranking_then_says():
    told = Told({"rocks": True}, {"hub": False})
    for change in what_would_change(NETWORK, told, ["hunts", "oil"]):
        assert change.first != "bevel"
        if change.is_cause:
            then = Told(told.findings, {**told.causes, change.asked: False})
        else:
            then = Told({**told.findings, change.asked: change.seen}, told.causes)
        assert next(c for c in rank(NETWORK, then).chances if c not in then.causes) == change.first


def test_clearing_the_last_suspect_leaves_none():
    told = Told({"rocks": True}, {"hub": False, "mesh": False})

    assert [each.first for each in what_would_change(NETWORK, told, [])] == [""]


def test_a_result_that_would_leave_nothing_to_suspect():
    """Worn bevels always show at the tip: without it, only the leak is left."""
    told = Told({"rocks": True}, {"hub": False, "mesh": False})
    bevel = rank(NETWORK, told).chances["bevel"]

    cleared, sound = what_would_change(NETWORK, told, ["tip"])

    assert (sound.asked, sound.seen, sound.first) == ("tip", False, "")
    assert cleared.chance == pytest.approx(1 - bevel)
    assert sound.chance == pytest.approx(1 - bevel)


def test_a_second_fault_elsewhere_changes_nothing():
    """Oil on the paint points to a breather, which says nothing of why the fan rocks."""
    clear = Finding(0.001, {"breather": 0.99})
    network = Network(PRIORS, {"rocks": ROCKS, "oil": clear})
    assert rank(network, Told({"rocks": True, "oil": True})).chances["breather"] > 0.9

    assert [each.asked for each in what_would_change(network, ROCKING, ["oil"])] == ["bevel"]


@pytest.mark.parametrize("cause", ["hub", "mesh"])
def test_causes_as_likely_as_each_other_do_not_overtake(cause):
    """Hub and mesh are as likely; oil parts them in the eleventh digit."""
    oil = Finding(0.05, {cause: 1e-12})
    network = Network(PRIORS, {"rocks": ROCKS, "oil": oil})
    told = Told({"rocks": True}, {"bevel": False})
    chances = rank(network, told).chances
    assert chances["hub"] == pytest.approx(chances["mesh"], abs=1e-12)

    changes = what_would_change(network, told, ["oil"])

    assert [each.is_cause for each in changes] == [True]


def test_what_cannot_be_is_no_result():
    """Only the mesh makes it hunt here, and it is cleared: hunting cannot be seen."""
    network = Network(PRIORS, {"rocks": ROCKS, "hunts": Finding(0.0, HUNTS.weights)})
    told = Told({"rocks": True}, {"mesh": False})

    changes = what_would_change(network, told, ["hunts"])

    assert [each.asked for each in changes] == ["bevel"]


def test_nothing_seen_leaves_nothing_to_change():
    assert what_would_change(NETWORK, Told(), NETWORK.findings) == ()
    assert what_would_change(NETWORK, Told({"rocks": False}), NETWORK.findings) == ()


def test_it_is_quick_on_a_whole_book():
    """Every sign of the diesel weighed; it takes a tenth of this."""
    book = starter("two-cylinder-diesel")
    network = network_of(book)
    told = Told({"fan-rocks": True, "hunts": True, "overspeeds": False, "knock": False})

    begun = process_time()
    what_would_change(network, told, network.findings)

    assert process_time() - begun < 1.0
