"""Edges of a search on a machine: what stands in the way, what goes before what, what is taken back."""

import pytest

from shimstock.workshop import acts
from shimstock.workshop.fault_search.checks import checks_at, engine_apart
from shimstock.workshop.looking import see
from shimstock.workshop.refused import Refused
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

    assert see("diesel").now.open_joints and engine_apart(see("diesel")) == ()


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
        f"{each.short} {each.says} ×{each.factor:.2g}" for each in strongest[:3]
    ]


def test_a_text_with_what_no_keyboard_types_is_refused(diesel):
    with pytest.raises(Refused):
        acts.begin_search(machine="diesel", who="Ida", about="white\0smoke")

    assert not diesel.searches.exists()


def test_what_was_found_and_taken_back_is_not_cleared_when_the_search_is_taken_up(diesel):
    begun({"fan-rocks": "seen"})
    found = acts.fault_found(machine="diesel", cause="linkage-slack", who="Ida", ends=True)
    acts.undo(entry_id=found.pk, who="Ida")
    acts.end_search(machine="diesel", who="Ida")

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
