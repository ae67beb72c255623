"""Edges of a search: what stands in the way, what goes before what, what is taken back."""

import pytest

from shimstock.trade.faults.why import factor_in_words
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.reach.whereabouts import engine_apart
from shimstock.workshop import acts
from shimstock.workshop.fault_search.checks import checks_at
from shimstock.workshop.looking import see
from shimstock.workshop.models import FaultSaid
from shimstock.workshop.refused import NotFound, Refused
from workshop.fault_shed import FAN, add_diesel, begun, look


@pytest.fixture
def diesel(db):
    return add_diesel()


def test_a_check_behind_a_heavy_part_needs_two(diesel):
    """Common practice, no source: a wheel or an axle is not lifted by one person."""
    seen = see("diesel")
    checks = checks_at(seen, seen.book.causes)
    heavy = {
        key: check
        for key, check in checks.can.items()
        if any(seen.book.parts[seen.book.joints[j].between[0]].heavy for j in checks.way[key])
    }

    assert heavy and all(check.hands >= 2 for check in heavy.values())


def read(figure, typed):
    acts.take_reading(machine="diesel", figure=figure, typed=typed, who="Ida")


def test_only_joints_that_the_engine_needs_shut_keep_it_from_running(diesel):
    joints = see("diesel").book.joints
    beside = next(
        key for key in checks_at(see("diesel"), see("diesel").book.causes).way["open:governor-gear"]
        if not joints[key].to_run
    )  # fmt: skip
    acts.open_joint(machine="diesel", joint=beside, who="Ida")

    assert see("diesel").now.open_joints and engine_apart(see("diesel").now) == ()


def test_a_link_that_was_measured_itself_goes_before_what_holding_made_of_it(diesel):
    """Scene 1 by holding: the governor mesh is over; on the tooth it reads as new."""
    begun({"fan-rocks": "seen"})
    train = see("diesel").book.trains["fan-drive"]
    figures = [train.figure, *(link.hold.figure for link in train.links[1:])]
    for figure, tip in zip(figures, ("0.35", "0.29", "0.09"), strict=True):
        read(figure, [tip] * 4)
    assert look().given.causes["governor-mesh-worn"] is True

    read("governor-mesh-lash", ["0.004"] * 4)

    assert look().given.causes["governor-mesh-worn"] is False


def test_the_line_under_a_cause_names_its_three_strongest(diesel):
    why = begun(FAN).why("governor-mesh-worn")
    strongest = [each for each in why.speaks if not each.says_nothing]

    assert len(strongest) >= 3
    assert why.line.split("; ") == [
        f"{each.short} {each.says} {factor_in_words(each.factor)}" for each in strongest[:3]
    ]


def test_a_cause_that_a_person_settled_is_told_in_words_and_not_by_a_factor(diesel):
    search = begun({**FAN, "linkage-slack": "cleared", "fan-bevels-worn": "there"})
    cleared, there = search.why("linkage-slack"), search.why("fan-bevels-worn")

    assert cleared.settled.startswith("cleared: it is not there (Ida, ")
    assert there.settled.startswith("confirmed: it is there (Ida, ")
    (line,) = [each.line for each in cleared.speaks if each.settles]
    assert line.endswith(", cleared: that settles it")
    assert "×" not in cleared.line.split("; ")[0]
    assert search.why("governor-mesh-worn").settled == ""


def test_a_cause_that_a_reading_settles_says_so(diesel):
    begun({"fan-rocks": "seen"})
    read("governor-mesh-lash", ["0.030"] * 4)

    assert look().why("governor-mesh-worn").settled == "confirmed: it is there (by a reading)"


@pytest.mark.parametrize(
    ("sign", "typed", "near"), [("S14", "35", "0.3500 in"), ("S17", "900", "90 psi")]
)
def test_a_number_that_its_figure_can_hardly_have_is_refused(diesel, sign, typed, near):
    """A finger that slips; a reading refuses the same numbers."""
    begun({})

    with pytest.raises(NotUnderstood, match="a slipped digit") as slip:
        acts.say_in_search(machine="diesel", said={sign: typed}, who="Ida")

    assert slip.value.typed == typed and near in slip.value.would_do
    assert "shimstock read MACHINE F0" in slip.value.would_do[-1]
    assert slip.value.would_do[-1].endswith("VALUE --meant")
    assert not look().row.ended and look().told == ()


def test_a_slip_that_was_written_down_earlier_stops_no_search(diesel):
    search = begun({"S14": "0.35"})
    FaultSaid.objects.filter(search=search.row.number).update(said="35")

    (rocks,) = look().told
    assert (rocks.says, rocks.said) == ("35", 35.0)
    assert look().ranking


@pytest.mark.parametrize("people", [-1, 0, 21, 999])
def test_so_many_people_are_refused(diesel, people):
    begun({})

    with pytest.raises(Refused, match=rf"{people} people .*; say how many"):
        acts.set_at_hand(machine="diesel", people=people, who="Ida")

    acts.set_at_hand(machine="diesel", people=20, who="Ida")


def test_a_tool_that_no_check_needs_is_answered_with_all_that_are_needed(diesel):
    with pytest.raises(NotFound, match=r"One of these would do: .*dial gauge, .*voltmeter"):
        acts.begin_search(machine="diesel", missing=["spanner"], who="Ida")


def test_a_text_with_what_no_keyboard_types_is_refused(diesel):
    with pytest.raises(Refused):
        acts.begin_search(machine="diesel", who="Ida", about="white\0smoke")

    assert not diesel.searches.exists()


def test_what_was_found_and_taken_back_is_not_cleared_when_the_search_is_taken_up(diesel):
    begun({"fan-rocks": "seen"})
    found = acts.fault_found(machine="diesel", cause="linkage-slack", who="Ida", ends=True)
    acts.undo(entry_id=found.pk, who="Ida")
    acts.end_search(machine="diesel", who="Ida", given_up=True)

    acts.take_up_search(machine="diesel", search=1, who="Ida")

    assert look().given.causes == {}


def test_a_prior_with_counts_behind_it_has_a_narrower_interval(diesel):
    """By docs/faults.md; 30 of 1000 is the book's own prior, so that only the width changes."""

    def width():
        span = look().spans["governor-mesh-worn"]
        return span.high - span.low

    begun({"fan-rocks": "seen"})
    before = width()
    counted = '{"governor-mesh-worn": {"confirmed": 300, "looked": 10000}}'
    acts.import_counts(
        label="others", text=f'{{"form": "shimstock fault counts 1", "causes": {counted}}}',
        who="Ida",
    )  # fmt: skip

    assert width() < 0.95 * before


def test_a_search_in_which_a_fault_was_found_is_not_undone_from_under_it(diesel):
    begin = acts.begin_search(machine="diesel", who="Ida")
    acts.fault_found(machine="diesel", cause="linkage-slack", who="Ida")

    with pytest.raises(Refused):
        acts.undo(entry_id=begin.pk, who="Ida")


def test_a_figure_read_again_after_the_repair_counts(diesel):
    begun({"overspeeds": "seen"})
    read("lost-motion", ["0.047"])
    assert look().given.causes["linkage-slack"] is True
    acts.fault_found(machine="diesel", cause="linkage-slack", who="Ida", ends=True)
    begun({"overspeeds": "seen"})
    assert "linkage-slack" not in look().given.causes

    read("lost-motion", ["0.055"])

    assert look().given.causes["linkage-slack"] is True
