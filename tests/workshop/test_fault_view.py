"""A search as it stands: readings and what was said, joints as they are, who is there, in words."""

from datetime import timedelta

import pytest

from shimstock.trade.faults.network import Told
from shimstock.workshop import acts
from shimstock.workshop.fault_search.pick import (
    brought_on_by_word,
    found_by_word,
    nearest_by_word,
    picking,
)
from shimstock.workshop.fault_search.trail import trail
from shimstock.workshop.fault_search.view import see_search
from shimstock.workshop.fault_search.words import find_about, find_sign
from shimstock.workshop.looking import see
from shimstock.workshop.models import FaultSaid
from shimstock.workshop.refused import NotFound
from workshop.fault_shed import FAN, add_diesel, begun, chances, look
from workshop.shed_book import MONDAY

MESH = "governor-mesh-worn"
MEASURED_TURNING = ("compression-low", "low-oil-pressure", "volts-fall-cranking")
BOTH_COVERS = ("crankcase-cover", "governor-side-cover")


@pytest.fixture
def diesel(db):
    return add_diesel()


def offer(search, check):
    return next(each for each in search.offers if each.check == check)


def told(search, about):
    return [each for each in search.told if each.about == about]


def read(figure, typed, **more):
    acts.take_reading(machine="diesel", figure=figure, typed=typed, who="Ida", **more)


# Rankings worked apart from this program, on the starter's invented weights, to three digits.
# The trade pack's worked rankings, scenes 1, 9 and 10: exact noisy-OR, to three digits.
def test_scene_1_ranked_from_findings_only(diesel):
    search = begun(FAN)

    assert [each.mark for each in search.ranking[:4]] == ["C31", "C30", "C27", "C01"]
    assert chances(search, MESH, "fan-bevels-worn", "linkage-slack", "air-in-fuel") == [
        0.347, 0.340, 0.228, 0.226,
    ]  # fmt: skip


def test_scene_1_cheap_checks_come_before_the_likeliest(diesel):
    """By chance per minute: C27 (5), C33 (5), C01 (10), C34 (10); C30 45 and C31 90 after them."""
    search = begun(FAN)
    checks = [each.mark for each in search.offers if each.kind == "cause"]

    assert checks[:4] == ["C27", "C33", "C01", "C34"]
    takes = {each.mark: each.minutes + each.opening for each in search.offers}
    assert (takes["C27"], takes["C33"], takes["C30"], takes["C31"]) == (5, 5, 45, 90)


def test_scene_9_idle_too_high(diesel):
    search = begun({"overspeeds": "seen", "hunts": "seen", "fan-rocks": "not seen"})

    assert chances(search, "linkage-slack", "idle-stop-wrong") == [0.578, 0.324]


def test_scene_9_readings_settle_without_being_typed_again(diesel):
    begun({"overspeeds": "seen", "hunts": "seen", "fan-rocks": "not seen"})
    read("lost-motion", "0.047")

    found = look()

    (from_reading,) = told(found, "cause:linkage-slack")
    assert (from_reading.says, from_reading.comes_from) == ("there", "reading")
    assert from_reading.figure == "lost-motion"
    assert "worn out" in from_reading.source
    assert found.ranking[0].key == "linkage-slack" and found.ranking[0].said == "there"
    assert "cause:linkage-slack" not in [each.check for each in found.offers]

    read("lost-motion", "0.009", stage="as finished")
    assert [each.says for each in told(look(), "cause:linkage-slack")] == ["cleared"]


def test_scene_10_brake_pulls(diesel):
    search = begun({"brake-pulls": "seen", "steering-loose": "not seen"})

    assert chances(search, "brake-oily", "brake-worn") == [0.526, 0.363]
    assert [each.mark for each in search.offers if each.kind == "cause"][:1] == ["C57"]


def test_a_worn_mesh_that_was_read_confirms_its_cause_and_a_good_one_clears_it(diesel):
    begun(FAN)
    read("governor-mesh-lash", ["0.030", "0.031", "0.029", "0.030"])
    assert [each.says for each in told(look(), f"cause:{MESH}")] == ["there"]
    assert look().given.causes == {MESH: True}

    read("governor-mesh-lash", ["0.005"] * 4, stage="as finished")
    assert look().given.causes == {MESH: False}
    assert MESH not in [each.key for each in look().ranking]


def test_what_was_said_goes_before_a_reading_and_what_is_typed_before_both(diesel):
    begun({**FAN, MESH: "cleared"})
    read("governor-mesh-lash", ["0.030", "0.031", "0.029", "0.030"])

    said, reading = told(look(), f"cause:{MESH}")
    assert (said.comes_from, said.says, said.counts) == ("search", "cleared", True)
    assert (reading.comes_from, reading.says, reading.counts) == ("reading", "there", False)

    seen = see("diesel")
    typed = see_search(seen, look().row, Told({}, {MESH: True}))
    assert typed.given.causes == {MESH: True}
    assert [each.comes_from for each in told(typed, f"cause:{MESH}")] == [
        "now", "search", "reading",
    ]  # fmt: skip


def test_a_number_that_was_said_speaks_by_the_figure(diesel):
    wide, tight = begun({"fan-rocks": "0.40 in"}), None
    acts.say_in_search(machine="diesel", said={"fan-rocks": "0.12 in"}, who="Ida")
    tight = look()

    assert wide.given.findings == {"fan-rocks": 0.40}
    assert wide.ranked.chances[MESH] > 0.15 > tight.ranked.chances[MESH]


def test_a_number_that_its_figure_no_longer_takes_counts_no_more(diesel):
    """As when a corrected book reads the figure in another kind of unit."""
    begun({"fan-rocks": "0.40 in", "hunts": "seen"})
    FaultSaid.objects.filter(about="sign:fan-rocks").update(said="40 psi")

    assert look().given.findings == {"hunts": True}


def test_what_is_open_costs_nothing(diesel):
    """Scene 1: C31 costs 90 minutes with the covers on, 20 with both off."""
    begun(FAN)
    shut = offer(look(), f"cause:{MESH}")
    for joint in BOTH_COVERS:
        acts.open_joint(machine="diesel", joint=joint, path=True, who="Ida")
    bare = offer(look(), f"cause:{MESH}")

    assert (shut.minutes, shut.opening) == (20, 70)
    assert [joint.key for joint in shut.joints] == [
        "bonnet", "fuel-bowl", "tank", "crankcase-cover", "governor-side-cover",
    ]  # fmt: skip
    assert (bare.minutes, bare.opening, bare.joints) == (20, 0, ())
    assert bare.expected < shut.expected


def test_what_is_in_the_way_counts_too(diesel):
    """The book's check of the bevels names the side cover alone; the bonnet is in its way."""
    bevels = offer(begun(FAN), "cause:fan-bevels-worn")

    assert [joint.key for joint in bevels.joints] == ["bonnet", "governor-side-cover"]
    assert bevels.opening == sum(joint.minutes for joint in bevels.joints) == 25


def test_opening_up_is_offered_only_where_there_is_something_to_open(diesel):
    begun(FAN)
    gear = offer(look(), "open:governor-gear")
    assert (gear.kind, gear.opening, gear.settles) == ("open", 160, (MESH,))

    for joint in gear.joints:
        acts.open_joint(machine="diesel", joint=joint.key, who="Ida")
    assert "open:governor-gear" not in [each.check for each in look().offers]


def test_an_opening_settles_what_is_not_settled_yet(diesel):
    """The control rod bears two causes: C06, a stuck rack, and C27, a slack linkage."""
    both = offer(begun(FAN), "open:control-rod")
    acts.say_in_search(machine="diesel", said={"C27": "cleared"}, who="Ida")

    assert both.settles == ("rack-stuck", "linkage-slack")
    assert offer(look(), "open:control-rod").settles == ("rack-stuck",)


def test_an_offer_has_the_words_of_the_book_and_where_its_result_is_typed(diesel):
    search = begun(FAN, people=2)
    bevels = offer(search, "cause:fan-bevels-worn")
    loose = offer(search, "cause:gear-loose")

    assert bevels.do == "side cover off, hold the driving bevel and rock the fan"
    assert bevels.points_to == "most of the rock is still there"
    assert (bevels.figure, loose.figure) == ("fan-bevel-lash", "")
    assert loose.needs == ("paint and brush",)
    assert 0 < bevels.finds < 1 and bevels.expected > bevels.minutes


def test_cautions_are_those_of_the_check_and_of_the_joints_to_be_opened(diesel):
    search = begun(FAN)
    bleed, mesh = offer(search, "cause:air-in-fuel"), offer(search, f"cause:{MESH}")
    book = search.seen.book

    names = {danger for caution in bleed.cautions for danger in caution.dangers}
    assert set(book.causes["air-in-fuel"].check.dangers) <= names
    assert book.causes[MESH].check.dangers == ()
    assert [caution.name for caution in mesh.cautions] == [
        caution.name for caution in book.cautions.values() if "fuel" in caution.dangers
    ]
    assert all(caution.do and caution.never for caution in bleed.cautions)


def test_a_helper_under_age_is_not_offered_what_can_hurt(diesel):
    grown = begun(FAN)
    acts.set_at_hand(machine="diesel", young=True, who="Ida")
    young = look()

    assert "cause:air-in-fuel" in [each.check for each in grown.offers]
    assert young.offers and all(not each.cautions for each in young.offers)
    reasons = {each.check: each.reason for each in young.not_offered}
    assert reasons["cause:air-in-fuel"].startswith("not for a helper under age: ")
    assert reasons[f"cause:{MESH}"].startswith("not for a helper under age: Fuel")  # of a joint


def test_tools_and_hands_that_are_not_there_are_named(diesel):
    begun(FAN, missing=["dial gauge"])
    reasons = {each.check: each.reason for each in look().not_offered}

    assert reasons[f"cause:{MESH}"] == "needs what is not at hand: dial gauge"
    assert reasons["open:camshaft-gear"] == "needs 2 people"


def test_questions_cost_nothing_and_were_not_answered_yet(diesel):
    search = begun({"fan-rocks": "seen"})
    keys = [each.key for each in search.questions]

    assert "hunts" in keys and "fan-rocks" not in keys
    assert "compression-low" not in keys  # it takes a gauge and half an hour
    assert all(each.where for each in search.questions)


def test_only_raised_causes_are_shown_each_with_its_interval_and_prior(diesel):
    search = begun(FAN)

    assert "clutch-lining-worn" not in [each.key for each in search.ranking]
    for each in search.ranking:
        assert each.low is not None and each.low <= each.chance <= each.high
        assert each.chance > each.prior and each.stand_in
    assert search.ranking[0].prior_says == "occasional, 0.03 (stand-in)"
    assert search.ranking[0].part_name == search.seen.book.parts["governor-gear"].name


def test_why_names_each_sign_and_its_factor(diesel):
    why = begun({**FAN, "gear-loose": "there"}).why(MESH)

    rocks = next(each for each in why.speaks if each.about == "sign:fan-rocks")
    loose = next(each for each in why.speaks if each.about == "cause:gear-loose")
    assert rocks.factor > 1 > loose.factor
    assert "S14" in loose.explains[0] and "it explains already" in loose.line
    assert why.prior_working == ("p = 0.03; the book's prior",)


def test_what_would_change_the_order_names_the_cause_that_would_be_first(diesel):
    changes = {each.about: each for each in begun(FAN).would_change}

    assert changes[f"cause:{MESH}"].first.startswith("Fan bevels worn")
    assert changes[f"cause:{MESH}"].chance == pytest.approx(1 - 0.347, abs=0.0005)


def test_a_search_that_is_resumed_after_a_month_stands_as_it_did(diesel):
    acts.begin_search(machine="diesel", who="Ida", about="fan rocks", at=MONDAY)
    acts.say_in_search(machine="diesel", said=FAN, who="Ida", at=MONDAY)
    before = look()
    acts.end_search(machine="diesel", who="Ida", given_up=True, at=MONDAY)
    acts.take_up_search(machine="diesel", search=1, who="Ben", at=MONDAY + timedelta(days=31))

    after = look()

    assert [(each.key, each.chance) for each in after.ranking] == [
        (each.key, each.chance) for each in before.ranking
    ]
    assert {each.source for each in after.told} == {"Ida, 2 Mar 2026"}
    assert [each.entry.act for each in trail(diesel, 1, 10)][::-1] == [
        "begin search", "say in search", "end search", "take up search",
    ]  # fmt: skip


def test_nothing_told_ranks_nothing_and_offers_nothing(diesel):
    search = see_search(see("diesel"), None)

    assert not search.begun
    assert (search.told, search.ranking, search.offers, search.questions) == ((), (), (), ())
    assert (search.not_offered, search.would_change, search.spans) == ((), (), {})


def test_what_cannot_be_is_said_instead_of_a_ranking(diesel, monkeypatch):
    from shimstock.trade.faults import ranking
    from shimstock.trade.faults.network import CannotBe

    def cannot(*_):
        raise CannotBe("a and b exclude each other; both are called confirmed")

    monkeypatch.setattr(ranking, "rank", cannot)
    search = begun(FAN)

    assert search.cannot_be.startswith("a and b exclude each other")
    assert (search.ranked, search.ranking, search.offers) == (None, (), ())


def test_a_page_of_it_asks_at_most_twelve_questions(diesel, django_assert_max_num_queries):
    begun(FAN)

    with django_assert_max_num_queries(12):
        search = look()
        assert search.ranking and search.offers and search.questions and search.would_change
        assert search.why(MESH)


def test_signs_are_picked_where_they_show(diesel):
    book = see("diesel").book
    groups = {each.group: [sign.key for sign in each.signs] for each in picking(book)}

    assert sum(len(keys) for keys in groups.values()) == len(book.signs)
    assert "fan-rocks" in groups[book.parts["fan"].group]
    order = list(dict.fromkeys(part.group for part in book.parts.values()))
    assert list(groups) == [group for group in order if group in groups]


def test_signs_are_found_by_every_word_in_any_order(diesel):
    book = see("diesel").book

    def keys(text):
        return [sign.key for sign in found_by_word(book, text)]

    assert keys("finger wag") == ["fan-rocks"]
    assert keys("S14") == ["fan-rocks"]
    assert set(keys("SMOKE")) >= {"black-smoke", "blue-smoke", "white-smoke-hard-start"}
    assert keys("no such sign") == keys("  ") == []
    assert keys("gears") == keys("gear") != []
    assert keys("knocking") == keys("knock") != []


def test_what_a_person_writes_finds_the_nearest_signs(diesel):
    book = see("diesel").book

    def keys(text):
        return [sign.key for sign in nearest_by_word(book, text)]

    assert keys("smokes white, will not catch")[0] == "white-smoke-hard-start"
    assert keys("she knocks out of third")[0] == "jumps-out-of-gear"
    assert keys("it is so") == keys("") == keys("zzzz") == []


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("knocks when hot under load", "knock"),
        ("knocks under load", "knock"),
        ("heavy thumping from the bottom end", "knock"),
        ("clatters at idle", "knock"),
        ("runs hot", "overheats"),
        ("steam", "overheats"),
        ("it gets hot and steams after an hour of ploughing", "overheats"),
        ("keeps running", "will-not-stop"),
        ("won’t shut off", "will-not-stop"),
        ("oil looks like mayonnaise", "loses-water"),
        ("emulsion on the dipstick", "loses-water"),
        ("vibrates", "miss-when-warm"),
        ("leaks oil", "oil-outside"),
        ("grey smoke", "miss-when-warm"),
        ("no smoke", "no-smoke-no-fire"),
    ],
)
def test_signs_are_found_by_everyday_words(diesel, typed, first):
    """As people said it who knew no sign's name."""
    book = see("diesel").book

    found = found_by_word(book, typed) or nearest_by_word(book, typed)
    assert found[0].key == first


def test_what_is_without_smoke_is_not_found_by_smoke(diesel):
    book = see("diesel").book

    assert "no-smoke-no-fire" not in {sign.key for sign in found_by_word(book, "grey smoke")}
    assert "no-smoke-no-fire" not in {sign.key for sign in found_by_word(book, "smoke")}


def test_a_word_that_two_signs_have_finds_both(diesel):
    found = {sign.key for sign in found_by_word(see("diesel").book, "squeal")}

    assert found == {"gears-crash", "brake-pulls"}


def test_a_sign_whose_whole_name_is_typed_is_found_among_those_that_fit_in_part(diesel):
    found = [sign.key for sign in nearest_by_word(see("diesel").book, "knocks and hunts up a bank")]

    assert {"knock", "hunts"} <= set(found)
    said = "clatters, and creamy mayonnaise, an emulsion and sludge in it"
    found = [sign.key for sign in nearest_by_word(see("diesel").book, said)]
    assert found == ["knock", "loses-water"]


def test_a_sign_is_meant_where_only_one_is_said_whole(diesel):
    book = see("diesel").book

    assert find_sign(book, "knocks under load") == "knock"
    assert find_sign(book, "an awful clatter at idle") == "knock"
    with pytest.raises(NotFound, match=r"Did you mean: Engine .*\(S10\); Overheats \(S15\)\?"):
        find_sign(book, "stops when hot and boiling, then it keeps running")
    with pytest.raises(NotFound, match=r"Did you mean: .*Clutch slips"):
        find_sign(book, "clutch smells of fish")


def test_a_cause_is_meant_by_its_name_though_a_sign_has_a_word_of_it(diesel):
    book = see("diesel").book

    for key, cause in book.causes.items():
        assert find_about(book, cause.name) == f"cause:{key}"
    for key, sign in book.signs.items():
        assert find_about(book, sign.name) == f"sign:{key}"


def test_what_can_hurt_with_what_shows_is_said_before_any_check(diesel):
    assert [each.name for each in begun({"will-not-stop": "seen"}).cautions] == ["Runaway diesel"]
    assert begun({"low-oil-pressure": "seen"}).cautions == ()  # its dangers stand with its check


def test_words_of_a_cause_find_what_it_brings_on(diesel):
    book = see("diesel").book

    found = {sign.key for sign in brought_on_by_word(book, "shift fork")}

    assert found == {key for key, sign in book.signs.items() if "shift-fork-worn" in sign.causes}
    assert found == {sign.key for sign in brought_on_by_word(book, "C53")}
    assert found and not brought_on_by_word(book, " ") and not brought_on_by_word(book, "xyz")


def test_a_reading_of_something_else_does_not_lead_the_search_away(diesel):
    """Tonight the brake pulls; beside it the fan was rocked."""
    before = begun({"brake-pulls": "seen", "steering-loose": "not seen"})
    read("fan-rock", ["0.36"] * 4)

    brake = look()

    assert brake.unlisted == pytest.approx(before.unlisted, abs=0.02)
    assert [each.check for each in brake.offers] == [each.check for each in before.offers]

    assert chances(brake, "brake-oily", "brake-worn") == [0.526, 0.363]
    keys = {each.key for each in brake.ranking}
    assert keys <= set(diesel_book().signs["brake-pulls"].causes)
    assert "Fan bevels worn or wrongly shimmed" in brake.besides
    assert {key for each in brake.offers for key in each.settles} <= keys
    assert not {each.key for each in brake.questions} & {"hunts"}
    assert all("fan" not in each.line.lower() for each in brake.would_change)


def test_with_nothing_told_a_reading_in_the_book_speaks_for_itself(diesel):
    for piece in ("1", "2"):
        read("compression", "240 psi", piece=piece)

    search = begun({})

    assert search.about == {"compression-low"}
    assert search.ranking[0].mark == "C10" and search.offers
    assert search.besides == ()
    about_fan = begun({"fan-rocks": "seen"})
    assert about_fan.about == {"fan-rocks"} and len(about_fan.besides) > 1


def diesel_book():
    return see("diesel").book


def test_a_cause_that_is_there_and_explains_what_was_seen_is_said_first(diesel):
    begun(FAN)
    assert look().explained == ()
    read("governor-mesh-lash", ["0.030", "0.031", "0.029", "0.030"])

    ((cause, signs),) = look().explained

    assert cause.key == MESH
    assert signs == "Fan rocks too far, or a rattle at the governor; Engine hunts or surges"


def test_an_engine_that_is_apart_is_neither_run_nor_asked(diesel):
    smoke = {"white-smoke-hard-start": "seen"}
    whole = begun(smoke)
    assert "cause:cranks-slowly" in [each.check for each in whole.offers]

    acts.open_joint(machine="diesel", joint="final-bowl", who="Ida")

    apart = look()
    assert "cause:cranks-slowly" not in [each.check for each in apart.offers]
    reasons = {each.check: each.reason for each in apart.not_offered}
    assert reasons["cause:cranks-slowly"].startswith("the engine must turn or run, and is")
    assert "J05" in reasons["cause:cranks-slowly"]
    assert "cause:fuel-stale" in [each.check for each in apart.offers]
    assert not {each.key for each in apart.questions} & {"hunts", "black-smoke", "knock"}
    (held,) = [each for each in apart.held_back if "turn or run, and is open at" in each.reason]
    assert "J05" in held.reason
    assert {each.check for each in held.checks} == {
        check for check, reason in reasons.items() if reason == held.reason
    }
    assert len(held.checks) > 1 and "Cranks too slowly" in held.line
    assert (apart.mostly_held_back, whole.mostly_held_back) == (apart.unlisted > 0.5, False)


def test_the_likeliest_offered_is_not_called_held_back(diesel):
    """Its mesh was found worn: what is left is little, and the likeliest of it can be checked."""
    begun(FAN)
    read("fan-rock", ["0.36", "0.34", "0.36", "0.34"])
    acts.say_in_search(machine="diesel", said={"cause:governor-mesh-worn": "there"}, who="Ida")
    found = look()
    offered = {cause for each in found.offers for cause in each.settles}

    assert found.unlisted > 0.5 and found.not_offered
    assert next(c.key for c in found.ranking if c.key not in found.given.causes) in offered
    assert not found.mostly_held_back


def test_the_likeliest_held_back_is_said(diesel):
    """A slow starter: what is likely is looked for while cranking, and the engine is apart."""
    begun({"slow-starter": "seen"})
    assert not look().mostly_held_back

    acts.open_joint(machine="diesel", joint="final-bowl", who="Ida")

    assert look().mostly_held_back


def test_what_has_a_standing_way_is_offered_so_on_an_engine_that_is_apart(diesel):
    """The bath of the air cleaner has its level whether the engine runs or not."""
    running = offer(begun({"black-smoke": "seen"}), "cause:air-cleaner-choked")
    acts.open_joint(machine="diesel", joint="final-bowl", who="Ida")
    standing = offer(look(), "cause:air-cleaner-choked")

    assert "run" in running.do and [each.name for each in running.cautions]
    assert "run" not in standing.do and "level of the bath" in standing.do
    assert standing.cautions == () and standing.minutes == running.minutes
    assert standing.points_to != running.points_to


def test_while_it_will_not_stop_nothing_that_is_offered_or_asked_turns_the_engine(diesel):
    """Common practice, no source: no second start until the cause is found."""
    search = begun({"will-not-stop": "seen"})

    book, checks = search.seen.book, search.offers
    assert checks[0].check == "cause:air-cleaner-choked" and "level of the bath" in checks[0].do
    for each in checks:
        assert not any("Running engine" in caution.name for caution in each.cautions)
        assert "run" not in each.do.split() and "crank" not in each.do
    assert {book.signs[each.key].when for each in search.questions} <= {None}
    (line,) = search.must_not
    assert line == (
        "the engine must not turn or run while Engine will not stop, or runs away (S10) is seen; "
        "it may run away again, and cranking is enough to start it"
    )
    reasons = {each.check: each.reason for each in search.not_offered}
    assert reasons["cause:rings-or-bore-worn"] == line


def test_with_a_knock_the_oil_is_looked_at_first_and_then_the_engine_may_run(diesel):
    search = begun({"knock": "seen", "hunts": "not seen"})
    assert search.offers[0].check == "cause:oil-wrong"
    assert "cause:rod-bearing-worn" not in {each.check for each in search.offers}
    assert (
        "until Oil low, thinned by fuel, or of the wrong grade (C23) is cleared"
        in (search.must_not[0])
    )

    acts.say_in_search(machine="diesel", said={"oil-wrong": "cleared"}, who="Ida")
    assert look().must_not == ()
    assert "cause:rod-bearing-worn" in {each.check for each in look().offers}

    acts.say_in_search(machine="diesel", said={"rod-bearing-worn": "there"}, who="Ida")
    assert "it takes the crankshaft with it" in look().must_not[0]
    acts.fault_found(machine="diesel", cause="rod-bearing-worn", who="Ida")
    assert look().must_not == ()  # put right


def test_oil_that_was_put_right_lets_the_engine_run(diesel):
    begun({"knock": "seen", "oil-wrong": "there"})
    assert len(look().must_not) == 2

    acts.fault_found(machine="diesel", cause="oil-wrong", who="Ida")

    assert look().must_not == ()


def test_with_milk_in_the_oil_only_what_is_looked_at_standing_is_offered(diesel):
    search = begun({"loses-water": "seen", "overheats": "seen"})

    offered = {each.check: each.do for each in search.offers}
    assert "cause:casting-cracked" in offered
    assert "filler cap" in offered["cause:head-gasket-blown"]
    assert offered["cause:water-pump-worn"].startswith("cold")
    assert "cause:thermostat-stuck" not in offered


def test_a_free_sign_that_is_asked_has_its_caution(diesel):
    asked = {each.key: each for each in begun({"hunts": "seen"}).questions}

    assert [each.name for each in asked["overspeeds"].cautions] == ["Runaway diesel"]
    assert all(
        bool(each.cautions) == bool(diesel_book().signs[key].dangers) for key, each in asked.items()
    )


def test_opening_up_is_worth_a_line_where_it_finds_the_cause_one_time_in_ten(diesel):
    search = begun({"black-smoke": "seen", "low-power": "seen"})

    shown = [each for each in search.offers if each.worth_showing]
    seldom = [each for each in search.offers if not each.worth_showing]
    assert seldom and all(each.kind == "open" and each.finds < 0.1 for each in seldom)
    assert all(each.kind != "open" or each.finds >= 0.1 for each in shown)


def test_what_an_engine_in_pieces_cannot_show_is_not_to_be_read(diesel):
    acts.open_joint(machine="diesel", joint="final-bowl", who="Ida")
    begun({"white-smoke-hard-start": "seen", "knock": "seen", "low-power": "seen"})

    offered = {each.check for each in look().offers}
    assert not offered & {f"sign:{key}" for key in MEASURED_TURNING}
    assert {f"sign:{key}" for key in MEASURED_TURNING} & {e.check for e in look().not_offered}


def test_links_that_were_parted_by_holding_count_without_being_measured(diesel):
    """Scene 1: 0.350 in all, 0.290 with the camshaft held, 0.090 with the bevel held."""
    begun({"fan-rocks": "seen"})
    train = diesel_book().trains["fan-drive"]
    for figure, tip in zip(
        [train.figure, *(link.hold.figure for link in train.links[1:])], ["0.35", "0.29", "0.09"],
        strict=True,
    ):  # fmt: skip
        read(figure, [tip] * 4)

    settled = look().given.causes

    assert settled[MESH] is True
    assert settled["fan-bevels-worn"] is False


def test_what_was_put_right_is_there_no_more_until_it_is_read_again(diesel):
    begun({"fan-rocks": "seen"})
    read("governor-mesh-lash", ["0.030", "0.031", "0.029", "0.030"])
    acts.fault_found(machine="diesel", cause=MESH, how="a new pair", ends=True, who="Ida")

    again = begun({"fan-rocks": "seen"})
    assert MESH not in again.given.causes

    read("governor-mesh-lash", ["0.030"] * 4, stage="as finished")
    assert look().given.causes[MESH] is True


def test_nothing_that_can_hurt_on_a_running_engine_is_offered_on_one_in_pieces(diesel):
    seen = {"knock": "seen", "black-smoke": "seen", "overheats": "seen", "low-power": "seen"}
    whole = begun({**seen, "brake-pulls": "seen", "oil-outside": "seen"})
    assert {"running"} <= {word for check in whole._checks.can.values() for word in check.dangers}

    acts.open_joint(machine="diesel", joint="upper-pipe", path=True, who="Ida")

    dangers = {word for check in look()._checks.can.values() for word in check.dangers}
    assert dangers and not dangers & {"running", "driving"}
    can = set(look()._checks.can)
    assert {"cause:exhaust-blocked", "cause:breather-blocked", "cause:brake-worn"} <= can


def test_a_part_that_is_not_in_the_shed_is_neither_checked_nor_opened_for(diesel):
    seen = {"overheats": "seen"}
    assert {"cause:thermostat-stuck", "open:thermostat"} <= set(begun(seen)._checks.can)
    acts.move_piece(machine="diesel", part="thermostat", to="wanted", who="Ida")

    reasons = {each.check: each.reason for each in look().not_offered}

    says = f"Thermostat ({diesel_book().parts['thermostat'].mark}) is wanted"
    assert reasons["cause:thermostat-stuck"] == reasons["open:thermostat"] == says


def test_of_several_pieces_one_that_is_there_can_be_looked_at(diesel):
    begun({"knock": "seen"})
    acts.move_piece(machine="diesel", part="piston-pin", piece="1", to="wanted", who="Ida")

    reasons = {each.check: each.reason for each in look().not_offered}

    assert reasons["cause:piston-pin-worn"].endswith("is wanted")  # it is checked running
    assert "is wanted" not in reasons.get("open:piston-pin", "")


def test_a_part_that_is_off_is_checked_on_the_bench_unless_it_must_be_fitted(diesel):
    """The spring is measured on the bench; the fan is rocked on the machine or not at all."""
    begun({**FAN, "hunts": "seen"})
    for part in ("governor-spring", "fan-shaft"):
        acts.move_piece(machine="diesel", part=part, to="off", who="Ida")

    search = look()

    assert "cause:governor-spring-wrong" in search._checks.can
    reasons = {each.check: each.reason for each in search.not_offered}
    assert reasons["cause:gear-loose"].endswith("is off the machine")


def test_nothing_is_filled_bled_or_rocked_while_its_joints_are_open(diesel):
    begun({**FAN, "loses-water": "seen", "no-smoke-no-fire": "seen"})
    checks = {"cause:fuel-stale", "cause:air-in-fuel", "cause:casting-cracked", "cause:gear-loose"}
    assert checks <= set(look()._checks.can)

    for joint in ("fuel-bowl", "upper-pipe", "fan-hub"):
        acts.open_joint(machine="diesel", joint=joint, path=True, who="Ida")

    reasons = {each.check: each.reason for each in look().not_offered}
    assert {check: reasons[check][:14] for check in checks} == dict.fromkeys(
        checks, "it is open at "
    )
    assert "Fan hub" in reasons["cause:gear-loose"]


DRIVEN = {"clutch-slips", "gears-crash", "jumps-out-of-gear", "lift-sinks", "brake-pulls"}


def asked(search):
    from shimstock.workshop.fault_search.checks import cannot_show

    return {key for key in search.seen.book.signs if not cannot_show(search.seen, key)}


def test_what_shows_on_a_machine_that_runs_is_not_asked_of_one_in_pieces(diesel):
    shown = {*DRIVEN, "steering-loose", "overheats", "slow-starter", "white-smoke-hard-start"}
    assert shown <= asked(begun({"brake-pulls": "seen"}))

    acts.open_joint(machine="diesel", joint="final-bowl", who="Ida")

    assert not asked(look()) & shown
    assert {"oil-outside", "fan-rocks", "loses-water"} <= asked(look())
    assert not {each.key for each in look().questions} & shown
    assert chances(look(), "brake-oily")[0] > 0.4  # what was noticed before still counts


def test_a_wheel_that_is_off_keeps_it_from_being_driven_not_from_running(diesel):
    acts.open_joint(machine="diesel", joint="left-wheel", path=True, who="Ida")
    search = begun({"brake-pulls": "seen"})

    assert not asked(search) & {"clutch-slips", "brake-pulls", "steering-loose"}
    assert {"overheats", "knock", "slow-starter"} <= asked(search)


def test_a_sign_at_a_part_that_is_away_is_not_asked(diesel):
    assert "fan-rocks" in asked(begun({"hunts": "seen"}))

    acts.move_piece(machine="diesel", part="fan", to="wanted", who="Ida")

    assert "fan-rocks" not in asked(look())
